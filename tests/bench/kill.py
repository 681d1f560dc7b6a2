"""Rebuilds of a small diary, killed at random moments or on a full disk: is the site that stands always a whole one?

    python tests/bench/kill.py [--kills 300] [--full 20] [--seed 1]

Two versions of one diary take turns. After each death every file of the site is compared with the old and with the new version,
built undisturbed. "Anything else" must be 0. Every so often a rebuild runs to its end, which must succeed by itself.
"""

import argparse
import os
import random
import resource
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from dataclasses import replace
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from tests.trust.tiny import Wishes, lay_out, site_of  # noqa: E402 # run as a script

OLD = Wishes(title="The old version", body="Once. " * 400, owner="old")
NEW = replace(OLD, title="The new version", body="Twice. " * 400, owner="new")


def start(folder: Path, limit_bytes: int | None = None) -> subprocess.Popen[bytes]:
    """A real process; `limit_bytes` is the largest file it may write, the nearest thing to a full disk without being root."""
    command = [sys.executable, "-m", "sitegen", "rebuild", "--jobs", "1", "--themes", str(ROOT / "themes")]
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    limit = None if limit_bytes is None else lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (limit_bytes, limit_bytes))
    quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.PIPE}
    return subprocess.Popen(command, cwd=folder, env=environment, preexec_fn=limit, **quiet)  # type: ignore[call-overload,no-any-return]


def whole(folder: Path) -> dict[str, bytes]:
    """The site after an undisturbed rebuild, which must succeed."""
    process = start(folder)
    told = process.communicate()[1]
    if process.returncode != 0:
        raise SystemExit(f"a rebuild did not recover by itself: {told.decode()}")
    return site_of(folder / "output")


class Versions:
    """The two sites, each as an undisturbed rebuild makes it, and the folder in which they take turns."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.sites = {}
        for wishes in (NEW, OLD):
            lay_out(folder, wishes)
            self.sites[wishes.title] = whole(folder)
        self.stands, self.seconds = OLD, 0.0

    @property
    def next(self) -> Wishes:
        return NEW if self.stands is OLD else OLD

    def verdict(self) -> str:
        """Which of the two stands now; whoever stands is old the next time."""
        found = site_of(self.folder / "output")
        if found == self.sites[self.next.title]:
            self.stands = self.next
            return "new whole"
        old = self.sites[self.stands.title]
        if found != old:
            print("differs from the old:", sorted(name for name in found.keys() | old.keys() if found.get(name) != old.get(name)))
        return "old whole" if found == old else "anything else"


def timed(versions: Versions) -> None:
    """How long an undisturbed rebuild of a change takes."""
    lay_out(versions.folder, versions.next)
    since = time.monotonic()
    whole(versions.folder)
    versions.seconds = time.monotonic() - since
    versions.verdict()


def kill_rebuilds(versions: Versions, count: int, chance: random.Random) -> Counter[str]:
    """Half of the moments anywhere in the rebuild, half about its end, where it is published."""
    seen: Counter[str] = Counter()
    timed(versions)
    for number in range(count):
        lay_out(versions.folder, versions.next)
        process = start(versions.folder)
        first, last = (0.0, 1.0) if number % 2 else (0.8, 1.3)
        time.sleep(versions.seconds * chance.uniform(first, last))
        process.send_signal(signal.SIGKILL)
        process.communicate()
        seen[versions.verdict()] += 1
        if number % 25 == 24:
            timed(versions)
    return seen


def fill_disk(versions: Versions, count: int, chance: random.Random) -> Counter[str]:
    """On a small file system that is nearly full where one can be mounted (`main` did), else with files cut at a limit."""
    seen: Counter[str] = Counter()
    mounted = os.path.ismount(versions.folder)
    for _ in range(count):
        lay_out(versions.folder, versions.next)
        ballast = versions.folder / "ballast"
        if mounted:
            told = os.statvfs(versions.folder)
            left = chance.randrange(0, 400_000)
            ballast.write_bytes(bytes(max(0, told.f_bavail * told.f_frsize - left)))
        process = start(versions.folder, None if mounted else chance.randrange(100, 40_000))
        told_lines = process.communicate()[1].decode()
        seen[f"exit {process.returncode}"] += 1
        seen["tracebacks"] += "Traceback" in told_lines
        ballast.unlink(missing_ok=True)
        seen[versions.verdict()] += 1
    seen["recovered afterwards"] = int(whole(versions.folder) in versions.sites.values())
    return seen


def main() -> None:
    words = argparse.ArgumentParser(description=__doc__)
    words.add_argument("--kills", type=int, default=300)
    words.add_argument("--full", type=int, default=20)
    words.add_argument("--seed", type=int, default=1)
    asked = words.parse_args()
    chance = random.Random(asked.seed)
    with tempfile.TemporaryDirectory() as one, tempfile.TemporaryDirectory() as other:
        if asked.kills:
            print("killed:", dict(kill_rebuilds(Versions(Path(one)), asked.kills, chance)), flush=True)
        if asked.full:
            mount = ["mount", "-t", "tmpfs", "-o", "size=4m", "tmpfs", other]
            mounted = subprocess.run(mount, capture_output=True, check=False).returncode == 0
            try:
                found = fill_disk(Versions(Path(other)), asked.full, chance)
            finally:
                if mounted:
                    subprocess.run(["umount", other], check=True)
            print("full file system" if mounted else "files cut short", dict(found), flush=True)


if __name__ == "__main__":
    main()
