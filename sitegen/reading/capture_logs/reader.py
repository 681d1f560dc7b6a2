"""The contract of a log reader: one file a format, ending in its READER, which the registry lists."""

from collections.abc import Callable

from msgspec import Struct

from sitegen.reading.capture_logs.request import LogReading, LogRequest


class Reader(Struct, frozen=True):
    """`suffixes` are lower-case ends of file names (`.fits.gz`); `read` never raises for what a file can hold."""

    name: str
    suffixes: tuple[str, ...]
    read: Callable[[LogRequest], LogReading]
