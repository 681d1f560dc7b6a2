"""Edits of the same length within one tick of a disk's coarse clock, each just after a rebuild: is every one noticed?

    python tests/bench/coarse_clock.py [--tries 100] [--ticks 1 2] [--slower 20] [--disk]

The rebuild is made to see a disk that counts whole seconds, or every second one, and clocks that go slower, so that there is time
for a rebuild within a tick. With `--disk` a real one is tried, too, where it may be mounted: ext4 with inodes of 128 bytes, whose
tick is one second by the wall clock. A try whose two edits did not fall into one tick does not count. "Missed" must be 0.
"""

import argparse
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from tests.bench.kill import Rebuild, load_libraries  # noqa: E402 # run as a script
from tests.systems import lacking  # noqa: E402 # run as a script
from tests.trust.tiny import Wishes, lay_out  # noqa: E402 # run as a script

DISK_BYTES = 48_000_000
LATE_NS = 200_000_000
"""A slow clock has gone so far in its tick when the first edit is made."""


class Coarse(Rebuild):
    """`machine` as in `lacking.become`."""

    def __init__(self, folder: Path, machine: str) -> None:
        self.machine = machine
        super().__init__(folder)

    def _child(self, folder: Path, limit_bytes: int | None, loaded: Path | None) -> int:
        lacking.become(self.machine)
        return super()._child(folder, limit_bytes, loaded)


@contextmanager
def coarse_disk(base: Path) -> Iterator[Path | None]:
    """A folder on ext4 that counts whole seconds; None where none may be mounted."""
    image, place = base / "image", base / "disk"
    place.mkdir()
    with image.open("wb") as file:
        file.truncate(DISK_BYTES)
    steps = (["mkfs.ext4", "-q", "-I", "128", str(image)], ["mount", "-o", "loop", str(image), str(place)])
    try:
        mounted = all(subprocess.run(step, capture_output=True, check=False).returncode == 0 for step in steps)
    except FileNotFoundError:
        mounted = False
    try:
        yield place if mounted else None
    finally:
        if mounted:
            subprocess.run(["umount", str(place)], check=True)


def one_try(folder: Path, number: int, tick_s: int, slower: int | None) -> str:
    """'missed', 'noticed' or 'not in one tick'. `slower` None: the disk's own clock."""
    tick_ns = tick_s * 1_000_000_000
    page = folder / "output/entries/first/index.html"
    if slower is None:
        time.sleep((tick_ns - time.time_ns() % tick_ns) / 1e9 + 0.01)
    began_ns = time.time_ns() - (slower or 0) * LATE_NS - 10_000_000
    machine = f"tick={tick_s}:{slower}:{began_ns}" if slower else ""
    lay_out(folder, Wishes(body=f"Night {number:04d} was early."))
    Coarse(folder, machine).ended()
    lay_out(folder, Wishes(body=f"Night {number:04d} was later."))
    if time.time_ns() - began_ns > tick_ns * (slower or 1):
        return "not in one tick"
    code, told = Coarse(folder, machine).ended()
    if code:
        raise SystemExit(told)
    return "noticed" if f"Night {number:04d} was later." in page.read_text("utf-8") else "missed"


def tries(folder: Path, count: int, tick_s: int, slower: int | None) -> Counter[str]:
    folder.mkdir()
    lay_out(folder)
    Coarse(folder, "").ended()
    seen: Counter[str] = Counter()
    for number in range(3 * count):
        seen[one_try(folder, number, tick_s, slower)] += 1
        if seen["missed"] + seen["noticed"] == count:
            break
    return seen


def main() -> None:
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("--tries", type=int, default=100)
    words.add_argument("--ticks", type=int, nargs="+", choices=(1, 2), default=(1, 2))
    words.add_argument("--slower", type=int, default=20)
    words.add_argument("--disk", action="store_true")
    asked = words.parse_args()
    load_libraries()
    missed = 0
    for tick_s in asked.ticks:
        with tempfile.TemporaryDirectory() as base:
            seen = tries(Path(base) / "diary", asked.tries, tick_s, asked.slower)
        missed += seen["missed"]
        print(f"a tick of {tick_s} s: {dict(seen)}", flush=True)
    if asked.disk:
        with tempfile.TemporaryDirectory() as base, coarse_disk(Path(base)) as disk:
            seen = tries(disk / "diary", asked.tries, 1, None) if disk else Counter({"not mounted": 1})
        missed += seen["missed"]
        print(f"a real disk: {dict(seen)}", flush=True)
    sys.exit(1 if missed else 0)


if __name__ == "__main__":
    main()
