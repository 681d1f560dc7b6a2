"""The content-addressed store: files of the site, records and folders of files under digests. What is missing or damaged is made
again; nothing else is lost.

Everything that was made before lies below one root, so that forgetting it is to delete one folder.
"""

import hashlib
import os
import shutil
from collections.abc import Callable, Iterable
from contextlib import suppress
from pathlib import Path
from typing import Any, TypeVar

from msgspec import Struct

from sitegen.artifact import Artifact
from sitegen.build.records import dump, load
from sitegen.build.stamps import stamps_in
from sitegen.file_moves import move, write_whole

Made = TypeVar("Made")
FILES, RECORDS, FOLDERS = "files", "records", "folders"
"""Of the site, by the digest of their bytes; of this program, by the digest of their bytes or of what they were made from; of
pictures, by the digest of what they were made from."""
RESULT = "result"
"""In each folder: what was given back by who made it, and the sizes and times of the files beside it."""
CHECKSUM_BYTES = 20
UNREADABLE = (OSError, ValueError, TypeError, LookupError)
"""What a missing, damaged or foreign record brings about."""
Sizes = dict[str, tuple[int, int]]


class CacheMiss(Exception):
    """A record is missing or damaged: what depends on it must be made from the beginning."""


class Output(Struct, frozen=True, gc=False):
    """A file of the site. `path` in the site, `kept` below the root of the store. Size and time tell damage without reading."""

    path: str
    kept: str
    size: int
    mtime_ns: int

    def artifact(self, root: str) -> Artifact:
        digest = self.kept.rpartition("/")[2] if self.kept.startswith(f"{FILES}/") else ""
        return Artifact(self.path, f"{root}/{self.kept}", (self.size, self.mtime_ns), digest)


class Store:
    """Names of records and folders are paths below `root`."""

    def __init__(self, root: Path) -> None:
        self.root = root

    def put_file(self, path: str, content: bytes) -> Output:
        """A file of the site, kept once whatever its path."""
        kept = sharded(FILES, hash_bytes(content))
        file = self.root / kept
        if not _holds(file, content):
            write_whole(file, content)
        return Output(path, kept, len(content), file.stat().st_mtime_ns)

    def output_of(self, path: str, file: Path) -> Output:
        """A file of the site that lies already in a folder of the store."""
        stat = file.stat()
        return Output(path, file.relative_to(self.root).as_posix(), stat.st_size, stat.st_mtime_ns)

    def put(self, record: Any) -> str:
        """Keeps a record under the digest of its bytes; gives its name."""
        body = dump(record)
        name = sharded(RECORDS, hash_bytes(body))
        if not _holds_checked(self.root / name, body):
            write_checked(self.root / name, body)
        return name

    def get(self, name: str, kind: type[Made]) -> Made:
        """A record of this type. Raises CacheMiss where it is missing or damaged."""
        try:
            return load(read_checked(self.root / name), kind)
        except UNREADABLE as trouble:
            raise CacheMiss(name) from trouble

    def made_by(self, version: str) -> "Cache":
        return Cache(self, version)


class Cache:
    """What code of one version made from its inputs: results of other versions are never used.

    `used` names every record and folder asked for.
    """

    def __init__(self, store: Store, version: str) -> None:
        self.store, self.version = store, version
        self.used: set[str] = set()

    def name_of(self, inputs: Any) -> str:
        """Of the record of these inputs."""
        return sharded(RECORDS, key_of(self.version, inputs))

    def value(self, inputs: Any, kind: Any, make: Callable[[], Made]) -> Made:
        """The value of this type made from these inputs: the kept one, else one made and kept now."""
        name = self.name_of(inputs)
        self.used.add(name)
        path = self.store.root / name
        with suppress(*UNREADABLE):
            kept: Made = load(read_checked(path), kind)
            return kept
        value = make()
        write_checked(path, dump(value))
        return value

    def folder(self, inputs: Any, kind: Any, make: Callable[[Path], Made]) -> tuple[Path, Made]:
        """A folder of files made from these inputs, and what `make` gave back, which writes into the folder given."""
        name = f"{FOLDERS}/{key_of(self.version, inputs)}"
        self.used.add(name)
        path = self.store.root / name
        with suppress(*UNREADABLE):
            kept, sizes = load(read_checked(path / RESULT), tuple[kind, Sizes])
            if _sizes(path) == sizes:
                result: Made = kept
                return path, result
        working = path.with_name(f"{path.name}.{os.getpid()}.making")
        shutil.rmtree(working, ignore_errors=True)
        working.mkdir(parents=True)
        try:
            result = make(working)
            write_checked(working / RESULT, dump((result, _sizes(working))))
            shutil.rmtree(path, ignore_errors=True)
            move(working, path)
        finally:
            shutil.rmtree(working, ignore_errors=True)
        return path, result

    @property
    def scratch(self) -> Path:
        """A folder for files in the making."""
        return self.store.root / FOLDERS

    def taken_used(self) -> tuple[str, ...]:
        """Names asked for since this was asked last, sorted."""
        used = tuple(sorted(self.used))
        self.used.clear()
        return used


def sharded(kind: str, digest: str) -> str:
    return f"{kind}/{digest[:2]}/{digest}"


def are_whole(outputs: Iterable[Output], root: Path) -> bool:
    """None of them is missing or was changed since it was kept."""
    base = os.fspath(root)
    try:
        for output in outputs:
            stat = os.stat(f"{base}/{output.kept}")  # noqa: PTH116 # thousands of them in every rebuild: paths as text
            if stat.st_size != output.size or stat.st_mtime_ns != output.mtime_ns:
                return False
    except OSError:
        return False
    return True


def hash_bytes(content: bytes) -> str:
    return hashlib.blake2b(content, digest_size=20).hexdigest()


def key_of(*inputs: Any) -> str:
    """Hash of the inputs' text (`repr`): equal for equal values, on every machine and in every process."""
    return hash_bytes(repr(inputs).encode("utf-8", "surrogatepass"))


def digest_of(record: Any) -> str:
    """Hash of the record's bytes, quicker than `key_of`. Equal records may hash differently, as sets have no order; that costs
    an unneeded task and no more."""
    return hash_bytes(dump(record))


def hash_of_file(path: Path) -> str:
    with path.open("rb") as file:
        return hashlib.file_digest(file, lambda: hashlib.blake2b(digest_size=20)).hexdigest()


def write_checked(path: Path, body: bytes) -> None:
    """With a checksum in front, so that damage shows."""
    write_whole(path, hashlib.blake2b(body, digest_size=CHECKSUM_BYTES).digest() + body)


def read_checked(path: Path) -> bytes:
    """What `write_checked` wrote. Raises ValueError for what was damaged since, OSError for what is not there."""
    content = path.read_bytes()
    body = content[CHECKSUM_BYTES:]
    if hashlib.blake2b(body, digest_size=CHECKSUM_BYTES).digest() != content[:CHECKSUM_BYTES]:
        raise ValueError(f"{path.name} is damaged")
    return body


def _holds(path: Path, content: bytes) -> bool:
    try:
        return path.stat().st_size == len(content) and path.read_bytes() == content
    except OSError:
        return False


def _holds_checked(path: Path, body: bytes) -> bool:
    try:
        return read_checked(path) == body
    except (OSError, ValueError):
        return False


def _sizes(folder: Path) -> Sizes:
    return {name: (stamp.size, stamp.mtime_ns) for name, stamp in stamps_in(folder).items() if name != RESULT}
