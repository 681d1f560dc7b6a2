"""A file of the published site, before it is written."""

from pathlib import Path

from msgspec import Struct


class Artifact(Struct, frozen=True):
    """`path` is relative to the site, POSIX, without '..'; `content` is the bytes, or a kept file to copy; `told` the size and
    time (ns) of a kept file that was looked at a moment ago, None where it was not."""

    path: str
    content: bytes | Path
    told: tuple[int, int] | None = None

    @staticmethod
    def text(path: str, content: str) -> "Artifact":
        return Artifact(path, content.encode("utf-8"))
