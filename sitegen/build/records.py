"""Records as bytes, and back without running what is in them: a pickle may only name records of this project and plain values.

A folder of kept things may come from anywhere: with somebody's diary out of an archive, from a shared disk. Python's own reader
would call whatever function such a file names.
"""

import io
import pickle
from collections.abc import Callable
from enum import Enum
from functools import cache
from typing import Any
from zoneinfo import ZoneInfo

from msgspec import Struct

PLAIN = frozenset({
    ("datetime", "date"), ("datetime", "datetime"), ("datetime", "timedelta"), ("datetime", "timezone"), ("datetime", "time"),
    ("zoneinfo", "ZoneInfo"), ("pathlib", "PosixPath"), ("pathlib", "WindowsPath"), ("pathlib", "PurePosixPath"),
    ("collections", "OrderedDict"), ("collections", "Counter"), ("builtins", "set"), ("builtins", "frozenset"),
    ("markupsafe", "Markup"),
    ("numpy", "dtype"), ("numpy", "ndarray"), ("numpy._core.numeric", "_frombuffer"), ("numpy.core.numeric", "_frombuffer"),
    ("numpy._core.multiarray", "_reconstruct"), ("numpy.core.multiarray", "_reconstruct"),
    ("numpy._core.multiarray", "scalar"), ("numpy.core.multiarray", "scalar"),
})  # fmt: skip
"""Whose making does nothing but make them."""


def dump(value: Any) -> bytes:
    return pickle.dumps(value, protocol=5)


def pickle_into(value: Any, write: Callable[[bytes], object]) -> None:
    """Hands the bytes over as they come, and remembers no object: a record of a hundred
    megabytes takes no more memory than it has. Not to be read back: it would lose what is one object in two places."""
    pickler = pickle.Pickler(_HashWriter(write), protocol=5)
    pickler.fast = True
    pickler.dump(value)


class _HashWriter:
    def __init__(self, write: Callable[[bytes], object]) -> None:
        self.write = write


def load(body: bytes) -> Any:
    """Raises UnpicklingError for a pickle that names anything else, and whatever a damaged one brings about."""
    return _Reader(io.BytesIO(body)).load()


class _Reader(pickle.Unpickler):
    def find_class(self, module_name: str, global_name: str, /) -> Any:
        if (module_name, global_name) == ("builtins", "getattr"):
            return _rebuilt_zone  # how a time zone is pickled
        if (module_name, global_name) in PLAIN:
            return super().find_class(module_name, global_name)
        if module_name.startswith("sitegen.") and "." not in global_name:
            found = super().find_class(module_name, global_name)
            if _is_record(found, module_name):
                return found
        raise pickle.UnpicklingError(f"{module_name}.{global_name} is no record")


@cache
def _is_record(found: Any, module_name: str) -> bool:
    if not isinstance(found, type) or found.__module__ != module_name:
        return False
    return bool(issubclass(found, Struct | Enum) or (issubclass(found, tuple) and hasattr(found, "_fields")))


def _rebuilt_zone(owner: object, name: str) -> Any:
    if owner is ZoneInfo and name == "_unpickle":
        return ZoneInfo._unpickle  # type: ignore[attr-defined]
    raise pickle.UnpicklingError(f"{name} of {owner!r} is no record")
