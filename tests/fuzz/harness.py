"""Feeds mutated files to every reader and counts: inputs, refusals, failures, the slowest answer, the memory.

    python tests/fuzz/harness.py [--inputs 10000] [--seed 1] [--target csv --target exif] [--failures FOLDER] [--coverage]
    python tests/fuzz/harness.py --total 1000000     # spread over all readers by their shares, told every 50,000

A failure is any exception that is not the reader's own answer, an answer that takes more than five seconds, or a file written
anywhere but in the fuzzer's own folder. It is kept in the folder of failures, and should become a test. `--coverage` lets atheris
(an optional package) choose the mutations by the branches that they reach; it takes one target.
"""

import argparse
import os
import resource
import signal
import sys
import tempfile
import time
import traceback
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from hashlib import blake2b
from pathlib import Path
from random import Random
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from tests.fuzz.targets import TARGETS, Target  # noqa: E402 # run as a script

HANG_S, ASLEEP_S = 5.0, 60.0
"""Five seconds of work are a hang; so is a minute by the clock, whoever else keeps the machine busy."""
WRITES = os.O_WRONLY | os.O_RDWR | os.O_CREAT
MAKING = frozenset({"os.mkdir", "os.rename", "os.link", "os.symlink", "os.remove", "os.rmdir", "os.truncate"})


class Hang(BaseException):
    """The five seconds are over; no reader's `except Exception` may catch this."""


class Guard:
    """Sees every file that Python opens for writing, makes or removes (PEP 578). A hook stays for ever; this one sleeps."""

    def __init__(self) -> None:
        self.inside: str | None = None
        self.seen: list[str] = []
        sys.addaudithook(self.hook)

    def hook(self, event: str, args: tuple[Any, ...]) -> None:
        if self.inside is None or not (event in MAKING or (event == "open" and isinstance(args[2], int) and args[2] & WRITES)):
            return
        paths = [os.fsdecode(arg) for arg in args[:2] if isinstance(arg, (str, bytes, os.PathLike))]
        for path in paths[:1] if event == "open" else paths:
            if not self._allowed(os.path.realpath(_base(event, args) / path)):
                self.seen.append(f"{event} {path}")

    def _allowed(self, path: str) -> bool:
        return path.startswith((str(self.inside), "/dev/null", "/dev/fd", "/proc/self")) or "__pycache__" in path

    @contextmanager
    def only(self, folder: Path) -> Iterator[list[str]]:
        self.inside, self.seen = os.path.realpath(folder), []
        try:
            yield self.seen
        finally:
            self.inside = None


def _base(event: str, args: tuple[Any, ...]) -> Path:
    """The open folder that a relative path begins in."""
    inside = args[-1] if event in MAKING and event != "os.truncate" and isinstance(args[-1], int) else -1
    return Path(f"/proc/self/fd/{inside}").readlink() if inside >= 0 else Path()


GUARD = Guard()


@dataclass
class Tally:
    """What one target answered."""

    target: str
    answers: Counter[str] = field(default_factory=Counter)
    slowest_s: float = 0.0
    failures: list[str] = field(default_factory=list)

    @property
    def inputs(self) -> int:
        return sum(self.answers.values())

    def __str__(self) -> str:
        told = ", ".join(f"{count} {answer}" for answer, count in sorted(self.answers.items()))
        return f"{self.target:>14}: {self.inputs:>8} inputs ({told}); slowest {self.slowest_s:.2f} s"


def one_input(target: Target, content: bytes, folder: Path, tally: Tally) -> str | None:
    """What went wrong with it, None if nothing did."""
    since = time.process_time()
    wrong, answer = None, "failed"
    _watch(HANG_S, ASLEEP_S)
    try:
        with GUARD.only(folder) as written:
            answer = target.answer(content, folder)
        wrong = f"wrote outside: {written}" if written else None
    except Hang:
        asleep = time.process_time() - since < HANG_S
        wrong = f"more than {ASLEEP_S:.0f} s by the clock" if asleep else f"more than {HANG_S:.0f} s of work"
    except Exception:
        wrong = traceback.format_exc()
    finally:
        _watch(0, 0)
    tally.slowest_s = max(tally.slowest_s, time.process_time() - since)
    tally.answers["failed" if wrong else answer] += 1
    if wrong:
        tally.failures.append(wrong)
    return wrong


def fuzz(
    target: Target, inputs: int, seed: int, folder: Path, failures: Path | None = None, so_far: Tally | None = None
) -> Tally:
    """`inputs` of one target, the same for the same seed; after those that are counted already."""
    tally = so_far or Tally(target.name)
    _listen()
    for number in range(tally.inputs, tally.inputs + inputs):
        content = target.make(Random(f"{seed}/{target.name}/{number}"))
        wrong = one_input(target, content, folder, tally)
        if wrong and failures is not None:
            keep(failures, target, content, wrong)
    return tally


def spread(total: int, seed: int, folder: Path, failures: Path) -> list[Tally]:
    """Round by round, so that a run cut short has asked every reader in proportion."""
    tallies = {target: Tally(target.name) for target in TARGETS}
    for done in range(1_000, total + 1_000, 1_000):
        for target, tally in tallies.items():
            fuzz(target, target.share, seed, folder, failures, tally)
        if done % 50_000 == 0:
            tell(list(tallies.values()))
    return list(tallies.values())


def tell(tallies: list[Tally]) -> None:
    peak_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    failed, count = sum(len(tally.failures) for tally in tallies), sum(tally.inputs for tally in tallies)
    lines = [*map(str, tallies), f"{count} inputs, {failed} failures, at most {peak_mb:.0f} MB of memory"]
    sys.stdout.write("\n".join(lines) + "\n")
    sys.stdout.flush()


def keep(failures: Path, target: Target, content: bytes, wrong: str) -> None:
    """Each kind of failure once."""
    kind = blake2b(wrong.encode(), digest_size=6).hexdigest()
    place = failures / f"{target.name.replace(' ', '-')}-{kind}"
    if not place.exists():
        failures.mkdir(parents=True, exist_ok=True)
        place.write_bytes(content)
        place.with_suffix(".txt").write_text(wrong)


def _over(*_: object) -> None:
    raise Hang


def _listen() -> None:
    for alarm in (signal.SIGALRM, signal.SIGPROF):
        signal.signal(alarm, _over)


def _watch(working_s: float, clock_s: float) -> None:
    signal.setitimer(signal.ITIMER_PROF, working_s)
    signal.setitimer(signal.ITIMER_REAL, clock_s)


def by_coverage(target: Target, inputs: int, seed: int, folder: Path, failures: Path) -> None:
    """libFuzzer asks for inputs; a mutation is the target's own, or a plain one."""
    import atheris

    tally = Tally(target.name)
    _listen()

    def one(content: bytes) -> None:
        wrong = one_input(target, content, folder, tally)
        if wrong:
            keep(failures, target, content, wrong)
        if tally.inputs == inputs:
            sys.stdout.write(f"{tally}\n")

    def mutated(content: bytes, most: int, number: int) -> bytes:
        chance = Random(number)
        found = target.mutate(content, chance) if chance.random() < 0.7 else atheris.Mutate(content, most)
        return bytes(found[:most])

    corpus = folder / "corpus"
    corpus.mkdir()
    for number, seed_bytes in enumerate(target.seeds()):
        (corpus / str(number)).write_bytes(seed_bytes)
    atheris.instrument_all()
    words = [sys.argv[0], f"-runs={inputs}", f"-seed={seed}", "-max_len=30000", "-rss_limit_mb=0", "-verbosity=0", str(corpus)]
    atheris.Setup(words, one, custom_mutator=mutated)
    atheris.Fuzz()


def main() -> None:
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("--inputs", type=int, default=10_000, help="of each target")
    words.add_argument("--total", type=int, help="over all targets, by their shares")
    words.add_argument("--seed", type=int, default=1)
    words.add_argument("--target", action="append", choices=[target.name for target in TARGETS])
    words.add_argument("--failures", type=Path, default=Path("fuzz-failures"))
    words.add_argument("--coverage", action="store_true")
    asked = words.parse_args()
    chosen = [target for target in TARGETS if not asked.target or target.name in asked.target]
    memory = Path("/dev/shm")
    with tempfile.TemporaryDirectory(dir=memory if memory.is_dir() else None) as folder:
        if asked.coverage:
            by_coverage(chosen[0], asked.inputs, asked.seed, Path(folder), asked.failures)
            return
        if asked.total:
            tallies = spread(asked.total, asked.seed, Path(folder), asked.failures)
        else:
            tallies = [fuzz(target, asked.inputs, asked.seed, Path(folder), asked.failures) for target in chosen]
    tell(tallies)
    sys.exit(1 if any(tally.failures for tally in tallies) else 0)


if __name__ == "__main__":
    main()
