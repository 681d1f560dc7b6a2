"""Random edits of every kind, a rebuild after each, compared byte for byte with a rebuild from nothing.

    python tests/bench/random_edits.py [--edits 200] [--seed 1] [--every 1]

Edits are those of `tests/build/small_diary.py`, and some of the diary's folder as a whole: moved, copied, restored as it was
some edits before, checked out anew beside an output that stays, its memory thrown away. "Differ" must be 0.
"""

import argparse
import random
import shutil
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from sitegen.folders import Folders  # noqa: E402 # run as a script
from sitegen.problems import DiaryProblems  # noqa: E402 # run as a script
from sitegen.rebuild import rebuild  # noqa: E402 # run as a script
from tests.build.small_diary import EDITS, bytes_of, entries, lay_out, settle  # noqa: E402 # run as a script
from tests.conftest import TODAY  # noqa: E402 # run as a script

PARTS = ("content", "themes", "output", "kept")
LEAST_ENTRIES, MOST_ENTRIES = 3, 9
Place = Callable[[Path, random.Random], Path]


def folders_in(root: Path) -> Folders:
    return Folders(*(root / part for part in PARTS))


def moved(root: Path, chance: random.Random) -> Path:
    """Another path, the same files and inodes."""
    return root.rename(root.with_name(f"moved-{chance.randrange(10**9)}"))


def copied(root: Path, chance: random.Random) -> Path:
    """Other inodes; the times of the files go along or not."""
    new = root.with_name(f"copied-{chance.randrange(10**9)}")
    shutil.copytree(root, new, symlinks=True, copy_function=chance.choice((shutil.copy, shutil.copy2)))
    shutil.rmtree(root)
    return new


def backed_up(root: Path, chance: random.Random) -> Path:
    """What `restored` brings back; nothing changes."""
    backup = root.with_name("backup")
    shutil.rmtree(backup, ignore_errors=True)
    shutil.copytree(root, backup, symlinks=True)
    return root


def restored(root: Path, chance: random.Random) -> Path:
    """All as it was at the last backup, or only what the author writes."""
    backup = root.with_name("backup")
    if backup.is_dir():
        for part in PARTS if chance.random() < 0.5 else PARTS[:2]:
            shutil.rmtree(root / part, ignore_errors=True)
            if (backup / part).is_dir():
                shutil.copytree(backup / part, root / part, symlinks=True)
    return root


def checked_out(root: Path, chance: random.Random) -> Path:
    """The author's files anew beside an output that stays: nothing is remembered beside it."""
    shutil.rmtree(root / "kept", ignore_errors=True)
    for path in (root / "content").rglob("*"):
        path.touch()
    return root


PLACES: tuple[Place, ...] = (moved, copied, backed_up, restored, checked_out)


def edited(root: Path, name: str, chance: random.Random) -> Path:
    places = {place.__name__: place for place in PLACES}
    if name in places:
        return places[name](root, chance)
    count = len(entries(root / "content"))
    if (name == "remove" and count <= LEAST_ENTRIES) or (name == "add" and count >= MOST_ENTRIES):
        return root
    next(edit for edit in EDITS if edit.__name__ == name)(folders_in(root), chance)
    return root


def compared(root: Path, base: Path) -> list[str]:
    """Paths that differ between the output and a fresh one."""
    fresh = base / "fresh"
    shutil.rmtree(fresh, ignore_errors=True)
    given = folders_in(root)
    rebuild(Folders(given.content, given.themes, fresh, None), TODAY, jobs=1)
    one, other = bytes_of(given.output), bytes_of(fresh)
    return sorted(path for path in {*one, *other} if one.get(path) != other.get(path))


def main() -> None:
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("--edits", type=int, default=200)
    words.add_argument("--seed", type=int, default=1)
    words.add_argument("--every", type=int, default=1, help="compare after every so many edits")
    asked = words.parse_args()
    chance, count = random.Random(asked.seed), Counter[str]()
    kinds = [edit.__name__ for edit in (*EDITS, *PLACES)]
    since = time.monotonic()
    with tempfile.TemporaryDirectory() as name:
        base = Path(name)
        lay_out(base / "diary")
        root = base / "diary"
        rebuild(folders_in(root), TODAY, jobs=1)
        for number in range(1, asked.edits + 1):
            kind = chance.choice(kinds) if number > len(kinds) else kinds[number - 1]
            settle()
            sound = base / "sound"
            shutil.rmtree(sound, ignore_errors=True)
            shutil.copytree(root, sound, symlinks=True)
            try:
                root = edited(root, kind, chance)
                settle()
                rebuild(folders_in(root), TODAY, jobs=1)
            except (DiaryProblems, AssertionError, IndexError, ValueError) as refused:
                # an edit that breaks the diary (a link to an entry that went), or finds nothing to edit
                shutil.rmtree(root)
                shutil.copytree(sound, root, symlinks=True)
                count[f"edits taken back ({type(refused).__name__})"] += 1
                settle()
                rebuild(folders_in(root), TODAY, jobs=1)
            count[kind] += 1
            if number % asked.every == 0 or number == asked.edits:
                differing = compared(root, base)
                count["compared"] += 1
                if differing:
                    count["differ"] += 1
                    print(f"after edit {number} ({kind}): {len(differing)} files differ: {differing[:5]}", flush=True)
    print(f"{asked.edits} edits in {time.monotonic() - since:.0f} s: {dict(sorted(count.items()))}, {count['differ']} differ")
    sys.exit(1 if count["differ"] else 0)


if __name__ == "__main__":
    main()
