"""Rebuilds of a small diary, killed at random moments or on a full disk: is the site that stands always a whole one?

    python tests/bench/kill.py [--kills 300] [--full 20] [--seed 1]

Two versions of one diary take turns. After each death every file of the site is compared with the old and with the new version,
built undisturbed. "Anything else" must be 0. Every so often a rebuild runs to its end, which must succeed by itself.
"""

import argparse
import contextlib
import importlib
import os
import random
import resource
import signal
import subprocess
import sys
import tempfile
import time
import traceback
from collections import Counter
from dataclasses import replace
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from sitegen.cli import main as sitegen  # noqa: E402 # run as a script
from tests.trust.tiny import Wishes, lay_out, site_of  # noqa: E402 # run as a script

OLD = Wishes(title="The old version", body="Once. " * 400, owner="old")
NEW = replace(OLD, title="The new version", body="Twice. " * 400, owner="new")


class Rebuild:
    """A real process, forked from this one so that it need not load the libraries again. `limit_bytes` is the largest file that
    it may write, the nearest thing to a full disk without being root."""

    def __init__(self, folder: Path, limit_bytes: int | None = None, loaded: Path | None = None) -> None:
        self.told, self.seconds = Path(tempfile.mkstemp(prefix="told-")[1]), 0.0
        self.number = os.fork()
        if self.number == 0:
            try:
                os._exit(self._child(folder, limit_bytes, loaded))
            finally:
                os._exit(71)

    def _child(self, folder: Path, limit_bytes: int | None, loaded: Path | None) -> int:
        os.dup2(os.open(self.told, os.O_WRONLY), 2)
        os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
        os.chdir(folder)
        if limit_bytes is not None:
            signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
            resource.setrlimit(resource.RLIMIT_FSIZE, (limit_bytes, limit_bytes))
        try:
            sitegen(["rebuild", "--jobs", "1", "--themes", str(ROOT / "themes")])
        except SystemExit as ended:
            if loaded is not None:
                loaded.write_text("\n".join(sys.modules))
            return int(ended.code or 0)
        except BaseException:
            traceback.print_exc()
        return 70

    def killed_after(self, seconds: float) -> bool:
        """Whether the signal came before the end."""
        since = time.monotonic()
        over = None
        while over is None and self.seconds < seconds:
            time.sleep(0.005)
            over = os.waitid(os.P_PID, self.number, os.WEXITED | os.WNOHANG | os.WNOWAIT)
            self.seconds = time.monotonic() - since
        os.kill(self.number, signal.SIGKILL)
        return self.ended()[0] < 0

    def ended(self) -> tuple[int, str]:
        """Exit status (negative: the signal) and what was written to standard error, when it is over."""
        status = os.waitstatus_to_exitcode(os.waitpid(self.number, 0)[1])
        told = self.told.read_text()
        self.told.unlink()
        return status, told


def whole(folder: Path, loaded: Path | None = None) -> dict[str, bytes]:
    """The site after an undisturbed rebuild, which must succeed."""
    code, told = Rebuild(folder, None, loaded).ended()
    if code != 0:
        raise SystemExit(f"a rebuild did not recover by itself: {told}")
    return site_of(folder / "output")


def load_libraries() -> None:
    """What a rebuild loads, found by one that nobody disturbs; nothing of it has run in this process before the forks."""
    with tempfile.TemporaryDirectory() as folder:
        lay_out(Path(folder), OLD)
        whole(Path(folder), Path(folder) / "loaded")
        for name in (Path(folder) / "loaded").read_text().split():
            with contextlib.suppress(Exception):
                importlib.import_module(name)


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
    """Half of the moments anywhere in the rebuild, half about its end, where it is published. One that was over before the
    signal came does not count."""
    seen: Counter[str] = Counter()
    timed(versions)
    while (number := seen["killed"]) < count:
        lay_out(versions.folder, versions.next)
        process = Rebuild(versions.folder)
        first, last = (0.0, 1.0) if number % 2 else (0.7, 1.2)
        killed = process.killed_after(versions.seconds * chance.uniform(first, last))
        versions.seconds = versions.seconds if killed else process.seconds
        seen["killed" if killed else "over before"] += 1
        seen[versions.verdict() if killed else f"over before, {versions.verdict()}"] += 1
        if killed and number % 25 == 24:
            timed(versions)
            print(number + 1, "of", count, dict(seen), f"{versions.seconds:.2f} s a rebuild", flush=True)
    return seen


def fill_disk(versions: Versions, count: int, chance: random.Random) -> Counter[str]:
    """On a small file system that is nearly full where one can be mounted (`main` did), else with files cut at a limit. One that
    had room enough does not count."""
    seen: Counter[str] = Counter()
    mounted = os.path.ismount(versions.folder)
    while seen["stopped"] < count:
        lay_out(versions.folder, versions.next)
        ballast = versions.folder / "ballast"
        if mounted:
            told = os.statvfs(versions.folder)
            left = chance.randrange(0, 60_000)
            ballast.write_bytes(bytes(max(0, told.f_bavail * told.f_frsize - left)))
        code, told_lines = Rebuild(versions.folder, None if mounted else chance.randrange(100, 40_000)).ended()
        seen["stopped" if code else "had room"] += 1
        seen["without a line that says why"] += code != 0 and ": error: the site could not be written: " not in told_lines
        ballast.unlink(missing_ok=True)
        seen[f"{versions.verdict()}{'' if code else ', had room'}"] += 1
    seen["recovered afterwards"] = int(whole(versions.folder) in versions.sites.values())
    return seen


def main() -> None:
    words = argparse.ArgumentParser(description=__doc__)
    words.add_argument("--kills", type=int, default=300)
    words.add_argument("--full", type=int, default=20)
    words.add_argument("--seed", type=int, default=1)
    asked = words.parse_args()
    chance = random.Random(asked.seed)
    load_libraries()
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
