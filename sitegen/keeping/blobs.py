"""Files under the hash of their own bytes: the same page is kept once, and a damaged one is never handed out."""

from hashlib import blake2b
from pathlib import Path
from typing import NamedTuple

from sitegen.file_moves import write_whole

FOLDER = "files"


class Blob(NamedTuple):
    """A kept file. Size and time tell a damaged one without reading it."""

    name: str
    size: int
    mtime_ns: int


class Blobs:
    def __init__(self, keep: Path) -> None:
        self.folder = keep / FOLDER

    def put(self, content: bytes) -> Blob:
        """Keeps the bytes; what already stands there is trusted only after reading it."""
        name = blake2b(content, digest_size=20).hexdigest()
        path = self.folder / name[:2] / name
        if not _holds(path, content):
            write_whole(path, content)
        return Blob(name, len(content), path.stat().st_mtime_ns)

    def relative(self, blob: Blob) -> str:
        """Its path inside the folder of kept things."""
        return f"{FOLDER}/{blob.name[:2]}/{blob.name}"


def _holds(path: Path, content: bytes) -> bool:
    try:
        return path.stat().st_size == len(content) and path.read_bytes() == content
    except OSError:
        return False
