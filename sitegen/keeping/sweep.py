"""Takes away what no rebuild has asked for lately, so that what is kept does not grow for ever."""

import os
import shutil
from collections.abc import Collection, Iterator, Mapping
from pathlib import Path

IDLE_SWEEPS = 2
"""A product unused in so many sweeps in a row is taken away by the next; an edit taken back soon finds its products
still there."""


def sweep(keep: Path, kinds: Mapping[str, Collection[str]], idle: Mapping[str, int]) -> dict[str, int]:
    """`kinds`: by folder inside `keep`, the names in use. `idle`: how long each other product has been unused.

    Gives the same for the next time. A folder of files in shards of two letters is one kind like any other.
    """
    left: dict[str, int] = {}
    for kind, used in kinds.items():
        for place in _products(f"{keep}/{kind}"):
            if place.rpartition("/")[2] in used:
                continue
            name = place[len(f"{keep}/") :]
            age = idle.get(name, 0) + 1
            if age > IDLE_SWEEPS:
                _remove(Path(place))
            else:
                left[name] = age
    return left


def _products(folder: str) -> Iterator[str]:
    """As text: there are many."""
    if not os.path.isdir(folder):  # noqa: PTH112 # as text
        return
    with os.scandir(folder) as inside:
        found = [(one.path, len(one.name) == 2 and one.is_dir()) for one in inside]
    for place, shard in found:
        yield from _products(place) if shard else (place,)


def _remove(path: Path) -> None:
    if path.is_dir():
        shutil.rmtree(path, ignore_errors=True)
    else:
        path.unlink(missing_ok=True)
