"""Rebuilds killed while processes work for them: is every one of those gone two seconds later?

    python tests/bench/killed_parent.py [--tries 100] [--seed 1] [--within 2.0]

Every second try ends the rebuild with SIGTERM, the others with SIGKILL, once it has started others and at a random moment after.
Every third try has no fork, so that all others are spawned. "Left" must be 0; the slowest end is told.
"""

import argparse
import os
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from tests.bench.make_diary import Size, make_diary  # noqa: E402 # run as a script
from tests.processes import at_work, descendants_of  # noqa: E402 # run as a script
from tests.systems.machines import HOOK  # noqa: E402 # run as a script

MOST_WAIT_S = 4.0


def killed(folder: Path, number: int, chance: random.Random, within_s: float) -> tuple[int, int, float]:
    """How many processes it had, how many are left, and how long the last of them took to end."""
    for name in ("output", ".sitegen"):
        shutil.rmtree(folder / name, ignore_errors=True)
    machine = "no-fork" if number % 3 == 0 else ""
    surroundings = {**os.environ, "PYTHONPATH": os.pathsep.join([str(HOOK), str(ROOT)]), "MACHINE": machine}
    command = [sys.executable, "-m", "sitegen", "rebuild", "--quiet", "--jobs", "2"]
    process = subprocess.Popen(command, cwd=folder, env=surroundings, stderr=subprocess.DEVNULL)
    while len(descendants_of(process.pid)) < 2 and process.poll() is None:
        time.sleep(0.01)
    time.sleep(chance.uniform(0.0, MOST_WAIT_S))
    others = descendants_of(process.pid)
    process.send_signal(signal.SIGTERM if number % 2 else signal.SIGKILL)
    process.wait()
    ended = time.monotonic()
    while (left := at_work(others)) and time.monotonic() < ended + within_s:
        time.sleep(0.01)
    return len(others), len(left), time.monotonic() - ended


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--tries", type=int, default=100)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--within", type=float, default=2.0)
    asked = parser.parse_args()
    chance, count, slowest_s = random.Random(asked.seed), Counter[str](), 0.0
    with tempfile.TemporaryDirectory() as name:
        make_diary(Path(name) / "content", Size(entries=60, nights=2, subs=20))
        for number in range(asked.tries):
            others, left, took_s = killed(Path(name), number, chance, asked.within)
            slowest_s = max(slowest_s, took_s)
            count.update({"others": others, "left": left, "tries with others left": int(left > 0), "tries": 1})
    print(f"{dict(count)}, the last gone after at most {slowest_s:.2f} s")
    sys.exit(1 if count["left"] else 0)


if __name__ == "__main__":
    main()
