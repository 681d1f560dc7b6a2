"""A file of the site that lies ready among what is kept."""

import os
from collections.abc import Iterable
from pathlib import Path

from msgspec import Struct

from sitegen.artifact import Artifact
from sitegen.keeping.blobs import FOLDER, Blobs

BLOBS = f"{FOLDER}/"
"""What is kept there has its digest for a name."""


class Product(Struct, frozen=True, gc=False):
    """`path` in the site; `kept` relative to the folder of kept things. Size and time tell damage without reading."""

    path: str
    kept: str
    size: int
    mtime_ns: int

    def artifact(self, keep: str) -> Artifact:
        digest = self.kept.rpartition("/")[2] if self.kept.startswith(BLOBS) else ""
        return Artifact(self.path, f"{keep}/{self.kept}", (self.size, self.mtime_ns), digest)


def keep_bytes(path: str, content: bytes, blobs: Blobs) -> Product:
    """Keeps the bytes of a file of the site."""
    blob = blobs.put(content)
    return Product(path, blobs.relative(blob), blob.size, blob.mtime_ns)


def product_of(path: str, kept: str, keep: Path) -> Product:
    """A file that lies already among what is kept."""
    told = (keep / kept).stat()
    return Product(path, kept, told.st_size, told.st_mtime_ns)


def all_whole(products: Iterable[Product], keep: Path) -> bool:
    """None of them is missing or was changed since it was kept."""
    root = os.fspath(keep)
    try:
        for product in products:
            told = os.stat(f"{root}/{product.kept}")  # noqa: PTH116 # thousands of them in every rebuild: paths as text
            if told.st_size != product.size or told.st_mtime_ns != product.mtime_ns:
                return False
    except OSError:
        return False
    return True
