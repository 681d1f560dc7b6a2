"""Takes away what no rebuild has asked for lately, so that what is kept does not grow for ever."""

import shutil
from collections.abc import Collection, Mapping
from pathlib import Path

IDLE_REBUILDS = 10
"""A product unused by so many rebuilds in a row is taken away; an edit taken back soon finds its products still there."""


def sweep(keep: Path, kinds: Mapping[str, Collection[str]], idle: Mapping[str, int]) -> dict[str, int]:
    """`kinds`: by folder inside `keep`, the names in use. `idle`: how long each other product has been unused.

    Gives the same for the next time. A folder of files in shards of two letters is one kind like any other.
    """
    left: dict[str, int] = {}
    for kind, used in kinds.items():
        for path in _products(keep / kind):
            if path.name in used:
                continue
            name = path.relative_to(keep).as_posix()
            age = idle.get(name, 0) + 1
            if age > IDLE_REBUILDS:
                _remove(path)
            else:
                left[name] = age
    return left


def _products(folder: Path) -> list[Path]:
    if not folder.is_dir():
        return []
    inside = sorted(folder.iterdir())
    return [path for each in inside for path in (sorted(each.iterdir()) if each.is_dir() and len(each.name) == 2 else [each])]


def _remove(path: Path) -> None:
    if path.is_dir():
        shutil.rmtree(path, ignore_errors=True)
    else:
        path.unlink(missing_ok=True)
