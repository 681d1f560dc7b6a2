"""A fault at every system call by which a rebuild changes the disk: does a whole site stand, old or new, each time?

    python tests/bench/faults.py [--kinds refused short slow killed] [--systems plain no-exchange no-link in-place] [--step 1]

Two versions of one diary take turns. A rebuild that nobody disturbs counts its calls; then each call in turn (every
`--step`-th) fails (`refused`: no space, input/output error, no permission), stops half-way through a write (`short`), takes its
time while the site is looked at (`slow`), or is the last thing that the process does (`killed`). Functions of Python's os module
stand for system calls. Wanted: "anything else", "traceback", "no single line" and "did not recover" 0 everywhere.
"""

import argparse
import builtins
import errno
import io
import os
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from tests.bench.kill import Rebuild, load_libraries  # noqa: E402 # run as a script
from tests.systems import lacking  # noqa: E402 # run as a script
from tests.trust.tiny import Wishes, lay_out, site_of  # noqa: E402 # run as a script

OLD = Wishes(title="The old version", body="Once. " * 400, owner="old")
NEW = replace(OLD, title="The new version", body="Twice. " * 400, owner="new")
CHANGING = "link symlink rename replace unlink remove mkdir rmdir chmod utime truncate sendfile open".split()
REFUSALS = (errno.ENOSPC, errno.EIO, errno.EACCES)
SLOW_S = 0.05
SYSTEMS = {"plain": "", "no-exchange": "no-exchange", "no-link": "link=ENOSYS", "in-place": ""}
KINDS = ("refused", "short", "slow", "killed")


class Faults:
    """Counts calls that change something below `folder`, but for the author's files; the `number`-th goes wrong by `kind`."""

    def __init__(self, folder: Path, kind: str, number: int) -> None:
        self.folder, self.kind, self.number = f"{folder}/", kind, number
        self.told, self.calls = folder.with_name("calls"), 0
        for name in CHANGING:
            if hasattr(os, name):
                setattr(os, name, self._counted(getattr(os, name), name))
        really = io.open
        io.open = builtins.open = lambda *asked, **named: self._opened(really, *asked, **named)  # type: ignore[assignment]

    def _counted(self, really: Callable[..., Any], name: str) -> Callable[..., Any]:
        def asked(*given: Any, **named: Any) -> Any:
            reads = name == "open" and not (len(given) > 1 and given[1] & (os.O_WRONLY | os.O_RDWR | os.O_CREAT))
            if not reads and self._concerns(given, name):
                self._go_wrong(given)
            return really(*given, **named)

        return asked

    def _concerns(self, given: tuple[Any, ...], name: str) -> bool:
        if name == "sendfile":
            return True
        paths = [os.path.abspath(path) for path in given[:2] if isinstance(path, str | os.PathLike)]  # noqa: PTH100
        return any(path.startswith(self.folder) and not path.startswith(f"{self.folder}content") for path in map(str, paths))

    def _go_wrong(self, given: tuple[Any, ...]) -> None:
        self.calls += 1
        if self.calls != self.number:
            return
        self.told.write_text("x")
        if self.kind == "killed":
            os.kill(os.getpid(), signal.SIGKILL)
        if self.kind == "slow":
            while self.told.exists():  # until it has been looked at
                time.sleep(0.002)
            return
        number = REFUSALS[self.number % len(REFUSALS)]
        raise OSError(number, os.strerror(number), os.fspath(given[0]) if isinstance(given[0], str | os.PathLike) else None)

    def _opened(self, really: Callable[..., Any], file: Any, mode: str = "r", *more: Any, **named: Any) -> Any:
        if not set(mode) & set("wxa+") or not isinstance(file, str | os.PathLike) or not self._concerns((file,), "open"):
            return really(file, mode, *more, **named)
        if self.kind != "short":
            self._go_wrong((file,))
            return really(file, mode, *more, **named)
        return _Short(really(file, mode, *more, **named), self) if "b" in mode else really(file, mode, *more, **named)


class _Short:
    """A file that takes half of what is written to it, and then says that the disk is full."""

    def __init__(self, file: Any, faults: Faults) -> None:
        self.file, self.faults = file, faults

    def write(self, content: Any) -> int:
        self.faults.calls += 1
        if self.faults.calls == self.faults.number:
            self.file.write(bytes(content)[: len(content) // 2])
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        written: int = self.file.write(content)
        return written

    def __getattr__(self, name: str) -> Any:
        return getattr(self.file, name)

    def __enter__(self) -> "_Short":
        return self

    def __exit__(self, *_: object) -> None:
        self.file.close()


class Disturbed(Rebuild):
    def __init__(self, folder: Path, system: str, kind: str, number: int) -> None:
        self.system, self.kind, self.fault = system, kind, number
        super().__init__(folder)

    def _child(self, folder: Path, limit_bytes: int | None, loaded: Path | None) -> int:
        lacking.become(self.system)
        faults = Faults(folder, self.kind, self.fault)
        code = super()._child(folder, limit_bytes, loaded)
        folder.with_name("count").write_text(str(faults.calls))
        return code


class Trial:
    """One system, in a folder of its own."""

    def __init__(self, name: str, base: Path) -> None:
        self.system, self.folder, self.base = SYSTEMS[name], base / "diary", base
        (self.folder / "output").mkdir(parents=True)
        self.mounted = name == "in-place"
        if self.mounted:
            subprocess.run(["mount", "-t", "tmpfs", "tmpfs", str(self.folder / "output")], check=True)
        self.sites = {}
        for wishes in (NEW, OLD):
            self.sites[wishes.title] = self.whole(wishes)
        self.stands = OLD

    def close(self) -> None:
        if self.mounted:
            subprocess.run(["umount", str(self.folder / "output")], check=True)

    def whole(self, wishes: Wishes) -> dict[str, bytes]:
        lay_out(self.folder, wishes)
        code, told = Disturbed(self.folder, self.system, "none", 0).ended()
        if code:
            raise SystemExit(f"a rebuild did not recover by itself: {told}")
        return site_of(self.folder / "output")

    def calls(self, kind: str) -> int:
        """How many there are to go wrong in a rebuild of a change."""
        self.next()
        Disturbed(self.folder, self.system, "short" if kind == "short" else "none", 0).ended()
        self.stands = NEW if self.stands is OLD else OLD
        return int((self.base / "count").read_text())

    def next(self) -> Wishes:
        wishes = NEW if self.stands is OLD else OLD
        lay_out(self.folder, wishes)
        return wishes

    def fault(self, kind: str, number: int) -> Counter[str]:
        seen: Counter[str] = Counter()
        wishes, signal_file = self.next(), self.base / "calls"
        signal_file.unlink(missing_ok=True)
        process = Disturbed(self.folder, self.system, kind, number)
        if kind == "slow":
            seen += self._while_it_waits(process, signal_file)
        code, told = process.ended()
        lines = [line for line in told.splitlines() if ": error: " in line]
        seen["traceback"] += "Traceback" in told
        seen["no single line"] += code > 0 and len(lines) != 1
        seen["refused" if code else "published all the same"] += 1
        verdict = self.verdict(wishes)
        seen["anything else"] += verdict == "anything else" and not (self.mounted and kind == "killed")
        seen[verdict] += verdict != "anything else"
        if self.whole(wishes) != self.sites[wishes.title]:
            seen["did not recover"] += 1
        self.stands = wishes
        if seen["traceback"] or seen["no single line"] or seen["anything else"] or seen["did not recover"]:
            print(kind, number, code, told[-400:], dict(seen), flush=True)
        return seen

    def verdict(self, wishes: Wishes) -> str:
        site = site_of(self.folder / "output")
        if site == self.sites[wishes.title]:
            return "new whole"
        return "old whole" if site == self.sites[self.stands.title] else "anything else"

    def _while_it_waits(self, process: Rebuild, signal_file: Path) -> Counter[str]:
        """What stands while the call has not come back. Between two renames there is nothing for a moment, where folders
        cannot be exchanged; published in place, files take their places one by one."""
        while not signal_file.exists() and os.waitid(os.P_PID, process.number, os.WEXITED | os.WNOHANG | os.WNOWAIT) is None:
            time.sleep(0.002)
        stands = self.verdict(NEW if self.stands is OLD else OLD)
        output = self.folder / "output"
        allowed = self.mounted or (bool(self.system) and not output.exists())
        signal_file.unlink(missing_ok=True)
        return Counter({"anything else": int(stands == "anything else" and not allowed), f"meanwhile {stands}": 1})


def main() -> None:
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("--kinds", nargs="+", choices=KINDS, default=KINDS)
    words.add_argument("--systems", nargs="+", choices=SYSTEMS, default=list(SYSTEMS))
    words.add_argument("--step", type=int, default=1)
    asked = words.parse_args()
    load_libraries()
    failed = 0
    for system in asked.systems:
        for kind in asked.kinds:
            with tempfile.TemporaryDirectory() as base:
                trial = Trial(system, Path(base))
                try:
                    calls = trial.calls(kind)
                    seen: Counter[str] = Counter()
                    for number in range(1, calls + 1, asked.step):
                        seen += trial.fault(kind, number)
                finally:
                    trial.close()
            wrong = sum(seen[word] for word in ("traceback", "no single line", "anything else", "did not recover"))
            failed += wrong
            print(f"{system}, {kind}: {calls} calls, {wrong} wrong, {dict(sorted(seen.items()))}", flush=True)
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
