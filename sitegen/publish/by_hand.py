"""Pages that the author changed in the output itself: they are made anew, and the author's version is kept beside the output."""

import filecmp
import shutil
from hashlib import blake2b
from itertools import count
from pathlib import Path

from sitegen.publish.scan import FileStat

SUFFIX = "-by-hand"
ByHand = tuple[str, str]
"""Path in the output, and where the author's version is kept, from the folder in which the output lies."""


def is_changed(file: Path, stat: FileStat, mark: str) -> bool:
    """Whether the file is no longer what was put there; never where its mark is unknown. A mark is a digest (hexadecimal, of any
    length); versions before the record marked pictures by size and time."""
    if not mark:
        return False
    if "-" in mark:
        return f"{stat.size}-{stat.mtime_ns}" != mark
    return file.is_symlink() or blake2b(file.read_bytes(), digest_size=len(mark) // 2).hexdigest() != mark


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
