"""Pages that the author changed in the output itself: they are made anew, and the author's version is kept beside the output."""

import filecmp
import shutil
from hashlib import blake2b
from itertools import count
from pathlib import Path

from sitegen.writing.lay import Laid

SUFFIX = "-by-hand"
ByHand = tuple[str, str]
"""Path in the output, and where the author's version is kept, from the folder in which the output lies."""


def mark_of_text(content: bytes) -> str:
    """What is remembered of a page that sitegen put into the output."""
    return blake2b(content, digest_size=12).hexdigest()


def mark_of_file(laid: Laid) -> str:
    """The same of a picture or a tile as it lies there: its size and time, so that it need not be read."""
    return f"{laid.size}-{laid.mtime_ns}"


def is_changed(file: Path, laid: Laid, mark: str) -> bool:
    """Whether the file is no longer what was put there; never where nothing is remembered of it."""
    if not mark:
        return False
    if "-" in mark:
        return mark_of_file(laid) != mark
    return file.is_symlink() or mark_of_text(file.read_bytes()) != mark


def keep_by_hand(output: Path, paths: list[str]) -> tuple[ByHand, ...]:
    """Copies them to a folder beside the output, over nothing that lies there already."""
    return tuple((path, _kept(output, path)) for path in paths)


def _kept(output: Path, path: str) -> str:
    folder = output.with_name(output.name + SUFFIX)
    for number in count(1):
        target = folder / (path if number == 1 else f"{path}.{number}")
        if not target.exists() and not target.is_symlink():
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy2(output / path, target, follow_symlinks=False)
            break
        if target.is_file() and (output / path).is_file() and filecmp.cmp(target, output / path, shallow=False):
            break
    return target.relative_to(output.parent).as_posix()
