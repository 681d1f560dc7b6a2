"""Collects garbage: what the manifest has not reached for some time leaves the store, so that it does not grow for ever."""

import os
import shutil
from collections.abc import Callable, Collection, Iterator
from pathlib import Path

from msgspec import Struct, field, json

from sitegen.build.store import FILES, FOLDERS, RECORDS, read_checked, write_checked

COLLECT_EVERY = 5
"""Looking through the store takes as long as drawing a page: not every rebuild does it."""
IDLE_COLLECTIONS = 2
"""What was not reached in so many collections in a row is removed by the next: an edit that is taken back soon finds what it
needs still there."""
NOTE = "garbage"


class _Note(Struct):
    """Rebuilds since the last collection, and in how many each name was found unreached."""

    rebuilds: int = 0
    idle: dict[str, int] = field(default_factory=dict)


def collect_garbage(root: Path, reached: Callable[[], Collection[str]]) -> None:
    """Called when the site has been published. `reached` gives the names of all that the manifest leads to, as paths below
    `root`; of a file in a folder, the folder is reached."""
    note = _read(root / NOTE)
    note.rebuilds += 1
    if note.rebuilds >= COLLECT_EVERY:
        note = _Note(0, removed(root, reached(), note.idle))
    write_checked(root / NOTE, json.encode(note))


def removed(root: Path, reached: Collection[str], idle: dict[str, int]) -> dict[str, int]:
    """Removes what was idle for too long; gives how long each other name has been."""
    left: dict[str, int] = {}
    for name in _names(root):
        if name in reached:
            continue
        collections = idle.get(name, 0) + 1
        if collections > IDLE_COLLECTIONS:
            _remove(root / name)
        else:
            left[name] = collections
    return left


def folder_or_file(kept: str) -> str:
    """What is kept whole: 'folders/KEY' of any file in it, else the file itself."""
    return "/".join(kept.split("/")[:2]) if kept.startswith(f"{FOLDERS}/") else kept


def _read(path: Path) -> _Note:
    try:
        return json.decode(read_checked(path), type=_Note)
    except (OSError, ValueError):
        return _Note()


def _names(root: Path) -> Iterator[str]:
    """As text: there are many."""
    yield from _inside(root, FOLDERS)
    for kind in (FILES, RECORDS):
        for shard in _inside(root, kind):
            yield from _inside(root, shard)


def _inside(root: Path, folder: str) -> list[str]:
    try:
        with os.scandir(f"{root}/{folder}") as entries:
            return [f"{folder}/{entry.name}" for entry in entries]
    except OSError:
        return []


def _remove(path: Path) -> None:
    if path.is_dir():
        shutil.rmtree(path, ignore_errors=True)
    else:
        path.unlink(missing_ok=True)
