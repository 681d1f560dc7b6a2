"""Records as bytes, and back: what is read are values of the type that was asked for, and nothing that could run.

A store may come from anywhere: with somebody's diary out of an archive, from a shared disk.
"""

from functools import cache
from pathlib import Path, PurePath
from typing import Any, TypeVar, get_origin
from zoneinfo import ZoneInfo

from msgspec import msgpack

from sitegen.lazy_module import LazyModule

np = LazyModule("numpy")

Record = TypeVar("Record")


def dump(record: Any) -> bytes:
    """Times that know their zone come back in UTC: no record may hold others."""
    return _ENCODER.encode(record)


def load(body: bytes, kind: type[Record]) -> Record:
    """Raises a ValueError of msgspec for what is damaged or of another type."""
    record: Record = _decoder(kind).decode(body)  # type: ignore[arg-type] # a type is hashable
    return record


@cache
def _decoder(kind: Any) -> "msgpack.Decoder[Any]":
    return msgpack.Decoder(kind, dec_hook=_from_plain)


def _to_plain(value: Any) -> Any:
    """What msgpack has no word for."""
    if isinstance(value, ZoneInfo):
        return value.key
    if isinstance(value, PurePath):
        return str(value)
    if isinstance(value, np.ndarray):
        return value.dtype.str, value.shape, value.tobytes()
    raise TypeError(f"{type(value).__name__} cannot be kept")


def _from_plain(kind: Any, value: Any) -> Any:
    if kind is ZoneInfo:
        return ZoneInfo(value)
    if kind is Path:
        return Path(value)
    if get_origin(kind) is np.ndarray:
        dtype, shape, content = value
        if np.dtype(dtype).hasobject:
            raise ValueError("an array of objects")
        return np.frombuffer(content, dtype).reshape(shape)
    raise TypeError(f"{kind} cannot be read")


_ENCODER = msgpack.Encoder(enc_hook=_to_plain)
