"""A file of the published site, before it is written."""

from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True)
class Artifact:
    """`path` is relative to the site, POSIX, without '..'; `content` is the bytes, or a kept file to copy."""

    path: str
    content: bytes | Path

    @staticmethod
    def text(path: str, content: str) -> "Artifact":
        return Artifact(path, content.encode("utf-8"))
