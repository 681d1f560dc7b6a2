"""A file of the published site, before it is written."""

from msgspec import Struct


class Artifact(Struct, frozen=True):
    """`path` is relative to the site, POSIX, without '..'; `content` is the bytes, or the path of a kept file to copy;
    `stamp` the size and time (ns) that the kept file must have, None where anything will do; `digest` the BLAKE2b (160 bits) of
    the content, '' where it would have to be computed."""

    path: str
    content: bytes | str
    stamp: tuple[int, int] | None = None
    digest: str = ""

    @staticmethod
    def text(path: str, content: str) -> "Artifact":
        return Artifact(path, content.encode("utf-8"))
