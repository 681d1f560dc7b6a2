"""Where the author's frames lie: files, folders and patterns, anywhere on this machine. Each file is stat'ed once."""

import glob
import os
import stat
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from hashlib import blake2b
from pathlib import Path

from msgspec import Struct, field

from sitegen.authoring.captures.record import FrameFile
from sitegen.authoring.gather_answer import SeenFile, seen_file, unseen
from sitegen.problems import Problem
from sitegen.reading.capture_logs.exif_log import RAW
from sitegen.reading.capture_logs.exif_log import SUFFIXES as PICTURES
from sitegen.reading.capture_logs.fits_log import SUFFIXES as FITS
from sitegen.reading.capture_logs.log_problems import system_reason
from sitegen.reading.capture_logs.registry import is_log

# A capture folder also holds snapshots and notes; of what lies in one, only what a camera alone can have made is a frame.
IN_FOLDERS = (*FITS, *RAW)
_FRAMES = (*FITS, *PICTURES)
RECORDED = (".csv", ".ecsv", ".tsv", ".tab", ".txt", ".log", ".xlsx", ".xlsm", ".ods")
_NAME_SOMETHING = "name a frame, a table, a folder or a pattern"


class FoundFiles(Struct, frozen=True):
    """`frames` in the order of the words, sorted within each, every file once; `tables` likewise. `passed_over` counts the other
    files of the folders by their ending.

    `scopes` says of which folders all is known now: by the folder's name in a log, what a path below it begins with. It is empty
    where any folder could not be listed: what is not seen then may still be there. `seen` are all files of the folders
    but the hidden ones, which are counted.
    """

    frames: tuple[FrameFile, ...]
    tables: tuple[Path, ...]
    passed_over: Mapping[str, int]
    scopes: Mapping[str, str]
    problems: tuple[Problem, ...]
    seen: tuple[SeenFile, ...] = ()
    hidden: int = 0

    @property
    def paths(self) -> tuple[Path, ...]:
        return (*(Path(file.path) for file in self.frames), *self.tables)

    @property
    def is_empty(self) -> bool:
        return not (self.frames or self.tables or self.passed_over)


def find_files(words: Iterable[str]) -> FoundFiles:
    search = _Search()
    for word in words:
        before = search.found
        try:
            search.take(word)
        except OSError as trouble:
            search.miss(word, trouble)
        if search.found == before:
            search.problems.append(_nothing(word))
    search.passed_over.update(ending for file, ending in search.pictures.items() if file not in search.frames)
    return FoundFiles(
        tuple(search.frames.values()), tuple(search.tables.values()), dict(sorted(search.passed_over.items())),
        {} if search.is_part_unseen else search.scopes, tuple(search.problems), tuple(search.seen),
        search.hidden,
    )  # fmt: skip


def folder_name(real_path: str) -> str:
    """The folder's own name, and a short hash of where it lies, so that the same name on another disk is another folder."""
    return f"{_legible(os.path.basename(real_path))}-{blake2b(os.fsencode(real_path), digest_size=4).hexdigest()}"  # noqa: PTH119


def _seen(entry: "os.DirEntry[str]") -> SeenFile:
    try:
        return seen_file(entry)
    except OSError:
        return unseen(entry.path)


def _files_in(entry: "os.DirEntry[str]") -> int:
    """Of a hidden file itself, of a hidden folder all below it."""
    if not entry.is_dir(follow_symlinks=False):
        return 1
    return sum(len(files) for _, _, files in os.walk(entry.path))


def _legible(name: str) -> str:
    """Old disks have names that are no UTF-8, and a log is: their odd bytes are spelt out."""
    return name if name.isascii() else os.fsencode(name).decode("utf-8", "backslashreplace")


class _Search(Struct):
    """`pictures` of folders are passed over unless a pattern names them, too."""

    frames: dict[tuple[str, str], FrameFile] = field(default_factory=dict)
    tables: dict[str, Path] = field(default_factory=dict)
    passed_over: Counter[str] = field(default_factory=Counter)
    pictures: dict[tuple[str, str], str] = field(default_factory=dict)
    scopes: dict[str, str] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    seen: list[SeenFile] = field(default_factory=list)
    again: int = 0
    hidden: int = 0
    is_part_unseen: bool = False

    @property
    def found(self) -> int:
        """Frames, tables, those named twice, and what is wrong."""
        return len(self.frames) + len(self.tables) + self.again + len(self.problems)

    def miss(self, shown: str, trouble: OSError) -> None:
        """A folder that cannot be listed: nobody knows what lies in it."""
        self.is_part_unseen = True
        self.problems.append(Problem(shown, 1, 1, system_reason(trouble), "its frames are not counted until it can be read"))

    def take(self, word: str) -> None:
        path = Path(word)
        if path.is_dir():
            self._folder(word)
        elif path.exists():
            self._file(path, path.parent)
        elif glob.has_magic(word):
            fixed = Path(*_before_magic(path))
            for matched in sorted(glob.glob(word, recursive=True)):  # noqa: PTH207 - a Path matches no absolute pattern
                if Path(matched).is_dir():
                    self._folder(matched)
                elif is_log(matched) or matched.casefold().endswith(RECORDED):
                    self._file(Path(matched), fixed)

    def _folder(self, word: str) -> None:
        """Frames in it and in its folders, hidden ones left out."""
        real = os.path.realpath(word)
        folder = folder_name(real)
        self.scopes[folder] = ""
        for parent in Path(real).parents:
            self.scopes.setdefault(folder_name(str(parent)), _legible(f"{Path(real).relative_to(parent).as_posix()}/"))
        waiting = [(word.rstrip("/") or "/", "", real)]
        while waiting:
            shown, below, directory = waiting.pop()
            self.scopes[folder_name(directory)] = ""
            inside = self._directory(shown, below, directory, folder)
            waiting += sorted(inside, reverse=True)

    def _directory(self, shown: str, below: str, directory: str, folder: str) -> list[tuple[str, str, str]]:
        """Takes the frames of one directory; gives the directories in it."""
        inside = []
        try:
            with os.scandir(directory) as listed:
                entries = sorted(listed, key=lambda entry: entry.name)
        except OSError as trouble:
            self.miss(shown, trouble)
            self.seen.append(unseen(directory))
            return []
        for entry in entries:
            name = entry.name
            if name.startswith("."):
                self.hidden += _files_in(entry)
                continue
            if entry.is_dir(follow_symlinks=False):
                inside.append((f"{shown}/{name}", f"{below}{name}/", f"{directory}/{name}"))
                continue
            self.seen.append(_seen(entry))
            if name.casefold().endswith(IN_FOLDERS):
                path = entry.path if shown == directory else f"{shown}/{name}"  # one text for both, of many files
                self._frame(path, f"{below}{name}", folder, directory, entry)
            elif name.casefold().endswith(PICTURES):
                self.pictures[directory, name] = _ending(name)
            else:
                self.passed_over[_ending(name)] += 1
        return inside

    def _frame(self, path: str, below: str, folder: str, directory: str, entry: "os.DirEntry[str]") -> None:
        name = entry.name
        if entry.is_symlink():
            directory, _, name = os.path.realpath(path).rpartition("/")
        if (directory, name) in self.frames:
            self.again += 1
            return
        try:
            status = entry.stat()
            mark = (status.st_size, status.st_mtime_ns, status.st_ctime_ns, status.st_ino)
            if not stat.S_ISREG(status.st_mode):  # a pipe of such a name would be waited for for ever
                self.passed_over[_ending(name)] += 1
                return
        except OSError:
            mark = (-1, 0, 0, 0)
        self.frames[directory, name] = FrameFile(path, _legible(below), folder, _legible(directory), *mark)

    def _file(self, path: Path, folder: Path) -> None:
        if not path.is_file():
            self.problems.append(Problem(str(path), 1, 1, "is neither a file nor a folder", _NAME_SOMETHING))
            return
        real = os.path.realpath(path)
        directory, _, name = real.rpartition("/")
        if (directory, name) in self.frames or real in self.tables:
            self.again += 1
        elif not path.name.casefold().endswith(_FRAMES):
            self.tables[real] = path
        else:
            below, status = path.relative_to(folder).as_posix() if path.is_relative_to(folder) else path.name, path.stat()
            self.frames[directory, name] = FrameFile(
                str(path), _legible(below), folder_name(os.path.realpath(folder)), _legible(directory),
                status.st_size, status.st_mtime_ns, status.st_ctime_ns, status.st_ino,
            )  # fmt: skip


def _before_magic(path: Path) -> Iterator[str]:
    """The part of a pattern that is a folder's own name."""
    for part in path.parts[:-1]:
        if glob.has_magic(part):
            return
        yield part


def _ending(name: str) -> str:
    return os.path.splitext(name)[1].casefold() or "no ending"  # noqa: PTH122 - there are many


def _nothing(word: str) -> Problem:
    if Path(word).is_dir():
        return Problem(word, 1, 1, "holds no frames", f"frames end in {' '.join(FITS)} or a camera's own ending")
    if glob.has_magic(word):
        return Problem(word, 1, 1, "matches no log", "put the pattern in quotes, and '**' where folders lie between")
    return Problem(word, 1, 1, "does not exist", _NAME_SOMETHING)
