"""What the last gathering would say again: told at once while neither frames, nor diary, nor the words typed have changed.

Light to load: this is looked at before anything else is.
"""

import marshal
import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import suppress
from hashlib import blake2b
from pathlib import Path

import msgspec
from msgspec import Struct

from sitegen import __version__
from sitegen.file_moves import write_whole
from sitegen.folders import Folders
from sitegen.problems import Problem

FOLDER = "answers"
COARSE_CLOCK_NS = 2_000_000_000
_WITHOUT_REFERENCES = 2
"""The form of `marshal` whose bytes hang on the values alone; a fifth of the time of `repr`."""
_AUTHORS_FOLDERS = ("rigs", "sites")
_NAMED_FOLDERS = ("entries", "logs")


SeenFile = tuple[str, int, int, int, int]
"""Path, size, times of content and of any change, inode."""


class Answer(Struct, frozen=True):
    """Lines for standard output, problems for standard error."""

    lines: tuple[str, ...]
    problems: tuple[Problem, ...]


class _Kept(Struct, frozen=True):
    state: str
    answer: Answer


def state_of(
    words: Sequence[str], name: str, logs: Sequence[str], folders: Folders, began_ns: int, seen: Iterable[SeenFile] | None = None
) -> str | None:
    """A digest of all that an answer depends on: the code, the words typed, every file below the folders named as the system
    knows it, and the diary's own files by content. None where a file is so new that it may still change unseen, or a pattern or a
    single file is named. `seen`: these files as somebody saw them who has walked through the folders."""
    if not all(os.path.isdir(log) for log in logs):  # noqa: PTH112 - light to load
        return None
    files = sorted(set(seen if seen is not None else (file for log in logs for file in _files_below(log))))
    if any(file[2] >= began_ns - COARSE_CLOCK_NS for file in files):
        return None
    digest = blake2b(repr((__version__, _code_version(), tuple(words))).encode("utf-8", "surrogatepass"), digest_size=20)
    digest.update(marshal.dumps(files, _WITHOUT_REFERENCES))
    for path in _diary_files(name, folders.content):
        digest.update(repr(path.name).encode("utf-8", "surrogatepass"))
        digest.update(blake2b(path.read_bytes()).digest())
    for folder in _NAMED_FOLDERS:
        digest.update(repr(_names_in(folders.content / folder)).encode("utf-8", "surrogatepass"))
    return digest.hexdigest()


def kept_answer(state: Callable[[], str | None], name: str, folders: Folders) -> Answer | None:
    """The state is asked for only where there is an answer: it takes a look at every frame."""
    if folders.keep is None:
        return None
    try:
        kept = msgspec.msgpack.decode(_path(folders.keep, name).read_bytes(), type=_Kept)
    except (OSError, msgspec.MsgspecError, ValueError):
        return None
    return kept.answer if kept.state == state() else None


def keep_answer(state: str | None, name: str, folders: Folders, answer: Answer) -> None:
    """Quietly nothing where it cannot be kept."""
    if state is None or folders.keep is None:
        return
    with suppress(OSError):
        write_whole(_path(folders.keep, name), msgspec.msgpack.encode(_Kept(state, answer)))


def _path(keep: Path, name: str) -> Path:
    return keep / FOLDER / name


def seen_file(entry: "os.DirEntry[str]") -> SeenFile:
    """Raises OSError where the system does not tell."""
    status = entry.stat(follow_symlinks=entry.is_symlink() and os.path.exists(entry.path))  # noqa: PTH110 - light to load
    return entry.path, status.st_size, status.st_mtime_ns, status.st_ctime_ns, status.st_ino


def unseen(path: str) -> SeenFile:
    """A folder that could not be listed, or a file of which nothing is known."""
    return path, -1, 0, 0, 0


def _files_below(folder: str) -> Iterator[SeenFile]:
    """Every file, hidden ones left out."""
    waiting = [os.path.realpath(folder)]
    while waiting:
        directory = waiting.pop()
        try:
            with os.scandir(directory) as entries:
                for entry in entries:
                    if entry.name.startswith("."):
                        continue
                    if entry.is_dir(follow_symlinks=False):
                        waiting.append(entry.path)
                    else:
                        yield seen_file(entry)
        except OSError:
            yield unseen(directory)


def _diary_files(name: str, content: Path) -> Iterator[Path]:
    yield from (path for path in (content / "diary.yaml", content / f"entries/{name}.md", content / f"logs/{name}.ecsv")
                if path.is_file())  # fmt: skip
    for folder in _AUTHORS_FOLDERS:
        yield from (content / folder / file for file in _names_in(content / folder) if (content / folder / file).is_file())


def _names_in(folder: Path) -> list[str]:
    try:
        return sorted(os.listdir(folder))  # noqa: PTH208 - light to load
    except OSError:
        return []


def _code_version() -> tuple[int, ...]:
    """Of an installed package its folder's own times: another version is other files."""
    package = Path(__file__).parent
    folders = (package, package / "captures", package.parent / "reading" / "capture_logs", package.parent / "cli")
    return tuple(file.stat().st_mtime_ns for folder in folders for file in sorted(folder.glob("*.py")))
