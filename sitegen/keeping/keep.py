"""A folder of products under the hash of their inputs. Whatever is missing or damaged is made again; nothing else is lost."""

import hashlib
import os
import shutil
from collections.abc import Callable
from pathlib import Path
from tempfile import mkdtemp
from typing import Any, TypeVar

from sitegen.file_moves import move, write_whole
from sitegen.keeping.footprint import marks_in
from sitegen.keeping.safe_pickle import dump, load, pour

Product = TypeVar("Product")
SAID = "said"
_CHECKED = 20


class Keep:
    """`folder` None keeps nothing. `version` is part of every key: another sitegen's products are never used.

    `used` names every product asked for, as 'kind/key'.
    """

    def __init__(self, folder: Path | None, version: str) -> None:
        self.folder, self.version = folder, version
        self.made, self.kept = 0, 0
        self.used: set[str] = set()

    def value(self, kind: str, inputs: Any, make: Callable[[], Product]) -> Product:
        """The value made from these inputs: kept if it is there, else made and kept."""
        if self.folder is None:
            return make()
        path = self._path(kind, inputs)
        found = read_pickle(path)
        if found is not None:
            self.kept += 1
            product: Product = found[0]
            return product
        product = make()
        self.made += 1
        write_pickle(path, product)
        return product

    def files(self, kind: str, inputs: Any, make: Callable[[Path], Product]) -> tuple[Path, Product]:
        """A folder of files made from these inputs, and what was said of them. `make` writes into the folder given."""
        base = self.folder or Path(mkdtemp(prefix="sitegen-"))
        path = base / kind / key_of(self.version, inputs)
        self.used.add(f"{kind}/{path.name}")
        found = read_pickle(path / SAID)
        if found is not None and _as_it_was(path, found[0][1]):
            self.kept += 1
            product: Product = found[0][0]
            return path, product
        working = path.with_name(f"{path.name}.{os.getpid()}.making")
        shutil.rmtree(working, ignore_errors=True)
        working.mkdir(parents=True)
        try:
            product = make(working)
            write_pickle(working / SAID, (product, _sizes(working)))
            shutil.rmtree(path, ignore_errors=True)
            move(working, path)
        finally:
            shutil.rmtree(working, ignore_errors=True)
        self.made += 1
        return path, product

    def _path(self, kind: str, inputs: Any) -> Path:
        key = key_of(self.version, inputs)
        self.used.add(f"{kind}/{key}")
        assert self.folder is not None
        return self.folder / kind / key


def key_of(*inputs: Any) -> str:
    """A name for these inputs: equal for equal values, on every machine and in every process."""
    return hashlib.blake2b(repr(inputs).encode("utf-8", "surrogatepass"), digest_size=20).hexdigest()


def digest_of(value: Any) -> str:
    """A quicker name for a record, however large: different for different records; now and then also for equal ones (sets have
    no order), which costs a making and no more."""
    name = hashlib.blake2b(digest_size=20)
    pour(value, name.update)
    return name.hexdigest()


def hash_of_file(path: Path) -> str:
    with path.open("rb") as file:
        return hashlib.file_digest(file, lambda: hashlib.blake2b(digest_size=20)).hexdigest()


def write_pickle(path: Path, product: Any) -> None:
    """With a checksum in front, so that damage shows."""
    write_checked(path, dump((product,)))


def put_pickle(folder: Path, product: Any) -> str:
    """Writes the product where it is not there yet; gives its name in the folder, its digest."""
    body = dump((product,))
    name = hashlib.blake2b(body, digest_size=20).hexdigest()
    if not _holds(folder / name, body):
        write_checked(folder / name, body)
    return name


def _holds(path: Path, body: bytes) -> bool:
    try:
        return read_checked(path) == body
    except (OSError, ValueError):
        return False


def read_pickle(path: Path) -> tuple[Any] | None:
    """None for what is missing or damaged: it will be made again."""
    try:
        found = load(read_checked(path))
    except Exception:  # a pickle of other code may raise anything at all
        return None
    return found if isinstance(found, tuple) and len(found) == 1 else None


def write_checked(path: Path, body: bytes) -> None:
    write_whole(path, hashlib.blake2b(body, digest_size=_CHECKED).digest() + body)


def read_checked(path: Path) -> bytes:
    """What `write_checked` wrote. Raises ValueError for what was damaged since, OSError for what is not there."""
    content = path.read_bytes()
    body = content[_CHECKED:]
    if hashlib.blake2b(body, digest_size=_CHECKED).digest() != content[:_CHECKED]:
        raise ValueError(f"{path.name} is damaged")
    return body


def _sizes(folder: Path) -> dict[str, tuple[int, int]]:
    return {name: (mark.size, mark.mtime_ns) for name, mark in marks_in(folder).items() if name != SAID}


def _as_it_was(folder: Path, sizes: dict[str, tuple[int, int]]) -> bool:
    try:
        return _sizes(folder) == sizes
    except OSError:
        return False
