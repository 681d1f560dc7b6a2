"""Records as bytes, and back without running what is in them: a pickle may only name records of this project and plain values.

A folder of kept things may come from anywhere: with somebody's diary out of an archive, from a shared disk. Python's own reader
would call whatever function such a file names.
"""

import io
import pickle
from collections.abc import Callable
from dataclasses import fields, is_dataclass
from enum import Enum
from functools import cache
from operator import attrgetter
from typing import Any
from zoneinfo import ZoneInfo

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
    """A frozen record is written as its class and its values: the standard library's way for one with slots asks each object for
    its list of fields, which takes longer than all the rest."""
    body = io.BytesIO()
    _Writer(body, protocol=5).dump(value)
    return body.getvalue()


class _Writer(pickle.Pickler):
    def reducer_override(self, obj: Any, /) -> Any:
        kind: Any = type(obj)
        values = _values_of(kind)
        return NotImplemented if values is None else (kind, values(obj))


@cache
def _values_of(kind: type) -> Callable[[Any], tuple[Any, ...]] | None:
    """What gives a record's values in the order in which its class takes them; None for what is no such record."""
    if not is_dataclass(kind) or not hasattr(kind, "__slots__") or hasattr(kind, "__post_init__"):
        return None
    names = [field.name for field in fields(kind)]
    if not names or not all(field.init and not field.kw_only for field in fields(kind)):
        return None
    if len(names) == 1:
        return lambda record: (getattr(record, names[0]),)
    return attrgetter(*names)


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
    return bool(is_dataclass(found) or issubclass(found, Enum) or (issubclass(found, tuple) and hasattr(found, "_fields")))


def _rebuilt_zone(owner: object, name: str) -> Any:
    if owner is ZoneInfo and name == "_unpickle":
        return ZoneInfo._unpickle  # type: ignore[attr-defined]
    raise pickle.UnpicklingError(f"{name} of {owner!r} is no record")
