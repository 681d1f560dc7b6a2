"""Rebuilds typed as an author types them, killed at random moments: does a whole site stand, and is nobody left who holds it?

    python tests/bench/kill_started.py [--kills 80] [--seed 1]

As `kill.py`, whose rebuilds are quicker since they are copies of it, and start no second process. "Anything else", "left"
(processes that are still there ten seconds after the death) and "kept waiting" (rebuilds that had to wait) must be 0.
"""

import argparse
import os
import random
import subprocess
import sys
import tempfile
import time
from collections import Counter
from dataclasses import replace
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from tests.processes import at_work, children_of  # noqa: E402 # run as a script
from tests.trust.tiny import Wishes, lay_out, site_of  # noqa: E402 # run as a script

OLD = Wishes(title="The old version", body="Once. " * 400, owner="old")
NEW = replace(OLD, title="The new version", body="Twice. " * 400, owner="new")
COMMAND = [sys.executable, "-m", "sitegen", "rebuild", "--quiet"]
UNDISTURBED_EVERY = 10
PATIENCE_S = 10.0


def started(folder: Path) -> "subprocess.Popen[str]":
    surroundings = {**os.environ, "PYTHONPATH": str(ROOT)}
    return subprocess.Popen(COMMAND, cwd=folder, env=surroundings, stderr=subprocess.PIPE, text=True)


def undisturbed(folder: Path, wishes: Wishes) -> tuple[dict[str, bytes], float, bool]:
    """The site, the seconds it took, and whether it had to wait for somebody."""
    lay_out(folder, wishes)
    since = time.perf_counter()
    process = started(folder)
    said = process.communicate(timeout=120)[1]
    if process.returncode:
        raise SystemExit(said)
    return site_of(folder / "output"), time.perf_counter() - since, "waiting" in said


def killed(folder: Path, wishes: Wishes, after_s: float) -> int:
    """How many processes outlive it."""
    lay_out(folder, wishes)
    time.sleep(0.03)
    process = started(folder)
    time.sleep(after_s)
    found = children_of(process.pid)
    process.kill()
    process.wait()
    until = time.monotonic() + PATIENCE_S
    while (left := at_work(found)) and time.monotonic() < until:
        time.sleep(0.02)
    return len(left)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--kills", type=int, default=80)
    parser.add_argument("--seed", type=int, default=1)
    told = parser.parse_args()
    chance, count = random.Random(told.seed), Counter[str]()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        versions = [undisturbed(folder, wishes)[0] for wishes in (OLD, NEW)]
        _, takes_s, _ = undisturbed(folder, OLD)
        stands = 0
        for number in range(1, told.kills + 1):
            count["left"] += killed(folder, (OLD, NEW)[1 - stands], takes_s * chance.random())
            site = site_of(folder / "output")
            if site == versions[1 - stands]:
                stands = 1 - stands
                count["the new site, whole"] += 1
            else:
                count["the old site, whole" if site == versions[stands] else "anything else"] += 1
            if number % UNDISTURBED_EVERY == 0:
                stands = 1 - stands
                site, _, waited = undisturbed(folder, (OLD, NEW)[stands])
                count["kept waiting"] += waited
                count["anything else"] += site != versions[stands]
    print(f"{told.kills} rebuilds of {takes_s:.1f} s killed: {dict(count)}")


if __name__ == "__main__":
    main()
