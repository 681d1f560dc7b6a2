"""Where the author's frames lie: files, folders and patterns, anywhere on this machine."""

import glob
import os
from collections.abc import Iterable, Iterator
from pathlib import Path

from msgspec import Struct

from sitegen.problems import Problem
from sitegen.reading.capture_logs.fits_log import SUFFIXES as FITS
from sitegen.reading.capture_logs.registry import is_log

# A capture folder also holds snapshots and notes; of what lies in one, only what a camera alone can have made is a frame.
RAW = (".dng", ".cr2", ".nef", ".nrw", ".arw", ".orf", ".pef")
IN_FOLDERS = (*FITS, *RAW)


class FoundLogs(Struct, frozen=True):
    """`paths` in the order of the words, sorted within each, every file once."""

    paths: tuple[Path, ...]
    problems: tuple[Problem, ...]


def find_logs(words: Iterable[str]) -> FoundLogs:
    paths: dict[str, Path] = {}
    problems = []
    for word in words:
        found = list(_named_by(word))
        if not found:
            problems.append(_nothing(word))
        for path in found:
            paths.setdefault(os.path.realpath(path), path)
    return FoundLogs(tuple(paths.values()), tuple(problems))


def _named_by(word: str) -> Iterator[Path]:
    path = Path(word)
    if path.is_dir():
        yield from _in_folder(path)
    elif path.exists():
        yield path
    elif glob.has_magic(word):
        for found in sorted(glob.glob(word, recursive=True)):  # noqa: PTH207 - a Path matches no absolute pattern
            yield from _in_folder(Path(found)) if Path(found).is_dir() else _if_log(Path(found))


def _in_folder(folder: Path) -> Iterator[Path]:
    """Frames in it and in its folders, hidden ones left out."""
    for inside, folders, files in os.walk(folder):
        folders[:] = sorted(name for name in folders if not name.startswith("."))
        for name in sorted(files):
            if name.casefold().endswith(IN_FOLDERS) and not name.startswith("."):
                yield Path(inside, name)


def _if_log(path: Path) -> Iterator[Path]:
    if path.is_file() and is_log(path.name):
        yield path


def _nothing(word: str) -> Problem:
    if Path(word).is_dir():
        return Problem(word, 1, 1, "holds no frames", f"frames end in {' '.join(FITS)} or a camera's own ending")
    if glob.has_magic(word):
        return Problem(word, 1, 1, "matches no log", "put the pattern in quotes, and '**' where folders lie between")
    return Problem(word, 1, 1, "does not exist", "name a frame, a table, a folder or a pattern")
