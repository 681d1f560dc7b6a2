"""What headers said when they were read, so that gathering again opens no file that is known. Losing it costs only time."""

import os
import re
from collections.abc import Sequence
from contextlib import suppress
from hashlib import blake2b
from pathlib import Path

import msgspec
from msgspec import Struct, structs

from sitegen.authoring.captures.record import FrameFile, FrameRecord
from sitegen.authoring.captures.walk import folder_name
from sitegen.file_moves import write_whole

FOLDER = "frames"
_SHARDS = "0123456789abcdef"
_NAME_IN_LOG = re.compile(r".+-[0-9a-f]{8}")
VERSION = 7
"""To be raised whenever a header is read otherwise than before."""
COARSE_CLOCK_NS = 2_000_000_000
"""A file that changed this shortly before it was read may have changed again within the same tick of its disk's clock."""

Signature = tuple[int, int, int, int]
_Directory = dict[str, tuple[Signature, FrameRecord]]


class _Kept(Struct, frozen=True, array_like=True):
    version: int
    directories: dict[str, _Directory]


class FrameMemory:
    """Few files, each of many directories of frames, loaded when a frame of one is asked for: a night's folder has its own, and
    a file for each would cost more than what stands in it. `folder` None remembers nothing."""

    def __init__(self, folder: Path | None, began_ns: int) -> None:
        self.folder = folder / FOLDER if folder is not None else None
        self.began_ns = began_ns
        self.shards: dict[str, dict[str, _Directory]] = {}
        self.directories: dict[str, _Directory] = {}
        self.changed: set[str] = set()

    def record(self, file: FrameFile) -> FrameRecord | None:
        remembered = self._directory(file.directory).get(file.name)
        return remembered[1] if remembered is not None and remembered[0] == signature_of(file) else None

    def records(self, files: Sequence[FrameFile]) -> list[FrameRecord | None]:
        """In the order of the files. What was loaded for folders of which all is known is freed again, and what records have in
        common is held once: of hundreds of thousands there is no room for both."""
        remembered: list[FrameRecord | None] = [None] * len(files)
        by_directory: dict[str, list[int]] = {}
        for number, file in enumerate(files):
            by_directory.setdefault(file.directory, []).append(number)
        by_shard: dict[str, list[int]] = {}
        for directory, numbers in by_directory.items():
            by_shard.setdefault(_shard_of(directory), []).extend(numbers)
        pool: dict[object, object] = {}
        for shard, numbers in by_shard.items():
            for number in numbers:
                record = remembered[number] = self.record(files[number])
                if record is not None:
                    _share(record, pool)
            if all(remembered[number] is not None for number in numbers) and not self.changed:
                self._free(shard)
        return remembered

    def _free(self, shard: str) -> None:
        for directory in self.shards.pop(shard, {}):
            self.directories.pop(directory, None)

    def knows(self, directory: str) -> bool:
        return bool(self._directory(directory))

    def remember(self, file: FrameFile, record: FrameRecord) -> None:
        """Not what changed while, or shortly before, the gathering began: its signature alone cannot be trusted next time. Nor
        what the system refused: a share that was away for a moment changes no signature."""
        if not record.refused and file.size >= 0 and file.mtime_ns < self.began_ns - COARSE_CLOCK_NS:
            self._directory(file.directory)[file.name] = signature_of(file), record
            self.changed.add(file.directory)

    def folder_called(self, name: str) -> str | None:
        """The path of a folder that a log calls by this name, as far as frames below it are remembered."""
        for shard in _SHARDS:
            for directory in sorted(self._shard(shard)):
                for folder in (directory, *map(str, Path(directory).parents)):
                    if folder_name(folder) == name:
                        return folder
        return None

    def save(self) -> None:
        """Quietly nothing where the folder cannot be written."""
        if self.folder is not None:
            for shard in sorted({_shard_of(directory) for directory in self.changed}):
                with suppress(OSError):
                    write_whole(self.folder / shard, msgspec.msgpack.encode(_Kept(VERSION, self.shards[shard])))
        self.changed.clear()

    def forget(self) -> None:
        """Free what was loaded; it is loaded again where it is asked for."""
        self.shards.clear()
        self.directories.clear()

    def _directory(self, directory: str) -> _Directory:
        records = self.directories.get(directory)
        if records is None:
            records = self.directories[directory] = self._shard(_shard_of(directory)).setdefault(directory, {})
        return records

    def _shard(self, shard: str) -> dict[str, _Directory]:
        if shard not in self.shards:
            self.shards[shard] = self._loaded(shard)
        return self.shards[shard]

    def _loaded(self, shard: str) -> dict[str, _Directory]:
        try:
            kept = msgspec.msgpack.decode((self.folder / shard).read_bytes(), type=_Kept) if self.folder is not None else None
        except (OSError, msgspec.MsgspecError, ValueError):
            return {}
        return kept.directories if kept is not None and kept.version == VERSION else {}


_ALIKE = ("kind_words", "exposure_s", "filter_words", "gain", "object", "focal_length_mm", "pixel_um", "latitude_deg",
          "longitude_deg", "camera_id", "sign", "telescope", "camera")  # fmt: skip


def _share(record: FrameRecord, pool: dict[object, object]) -> None:
    """Texts and numbers that frames of one session have in common: decoding makes each anew."""
    for name in _ALIKE:
        value = getattr(record, name)
        if value:
            structs.force_setattr(record, name, pool.setdefault((type(value), value), value))


def _shard_of(directory: str) -> str:
    return blake2b(os.fsencode(directory), digest_size=1).hexdigest()[0]


def signature_of(file: FrameFile) -> Signature:
    return file.size, file.mtime_ns, file.ctime_ns, file.inode


def with_folders(words: Sequence[str], memory: FrameMemory) -> tuple[str, ...]:
    """What was typed, with the path of a folder in place of the name that a log has for it: `check` knows only that name, and
    the commands it gives are to work."""
    return tuple(_folder_meant(word, memory) for word in words)


def _folder_meant(word: str, memory: FrameMemory) -> str:
    if not _NAME_IN_LOG.fullmatch(word) or os.path.lexists(word):
        return word
    return memory.folder_called(word) or word


def unknown_to(memory: FrameMemory, files: Sequence[FrameFile]) -> Sequence[FrameFile]:
    """Those whose headers have to be read; all where nothing at all is remembered of their folders."""
    if not any(memory.knows(directory) for directory in {file.directory for file in files}):
        return files
    return tuple(file for file in files if memory.record(file) is None)
