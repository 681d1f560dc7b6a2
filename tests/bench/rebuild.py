"""A rebuild of a diary of any size beside the bare library calls it cannot avoid, and the cases of everyday work.

    python tests/bench/rebuild.py [--entries 1000] [--pictures 0] [--fits 0] [--jobs 2] [--headers 20000] [--folder F] [--cases]

Each figure is processor time of the process and its children (user + system), so that a busy machine does not blur it; wall time
stands beside it, and the load of the machine at the end. The bare calls read the same files, draw as many panels, render as many
templates. Everyday cases are run several times, and the quietest run counts. README.md holds the table.
"""

import argparse
import json
import os
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from tests.bench.bare import bare_look, bare_on  # noqa: E402 # the path must be known first
from tests.bench.make_diary import Size, make_diary  # noqa: E402

RUNS = 3
COMPILED = Path(tempfile.gettempdir()) / "sitegen-bench-compiled"
"""Python's compiled modules, as an installed package has them; the checkout stays as it is."""


@dataclass(frozen=True)
class Spent:
    """Seconds of processor and of wall clock, and the largest process in megabytes."""

    cpu_s: float
    wall_s: float
    megabytes: float
    report: dict


def rebuilt(folder: Path, *options: str) -> Spent:
    """One `sitegen rebuild --json` as an author runs it, in a process of its own."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    start = time.perf_counter()
    script = "from sitegen.cli import main\nfrom tests.bench.peak import tell_peak\ntry:\n main()\nfinally:\n tell_peak()"
    surroundings = {**os.environ, "PYTHONPATH": str(ROOT), "PYTHONPYCACHEPREFIX": str(COMPILED)}
    surroundings.pop("PYTHONDONTWRITEBYTECODE", None)
    told = subprocess.run(
        [sys.executable, "-c", script, "rebuild", "--json", *options],
        cwd=folder, capture_output=True, text=True, env=surroundings,
    )  # fmt: skip
    if told.returncode:
        raise SystemExit(told.stdout + told.stderr)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    cpu_s = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    peak = float(told.stderr.strip().splitlines()[-1]) / 1024
    return Spent(cpu_s, time.perf_counter() - start, peak, json.loads(told.stdout))


def changed(path: Path, old: str, new: str) -> None:
    path.write_text(path.read_text("utf-8").replace(old, new), "utf-8")
    time.sleep(0.05)


def quietest(runs: Iterable[Spent]) -> Spent:
    found = list(runs)
    most = max(one.report.get("changed", 0) for one in found)
    return Spent(min(one.cpu_s for one in found), min(one.wall_s for one in found), max(one.megabytes for one in found),
                 {"changed": most})  # fmt: skip


def there_and_back(folder: Path, path: Path, old: str, new: str) -> Iterator[Spent]:
    """Rebuilds after an edit, and after the edit taken back, several times."""
    for number in range(2 * RUNS):
        changed(path, *((old, new) if number % 2 == 0 else (new, old)))
        yield rebuilt(folder)


def sub_by_sub(folder: Path, log: Path) -> Iterator[Spent]:
    """Rebuilds after the last row of a log is taken away, and after it is put back, several times."""
    whole = log.read_text("utf-8")
    for number in range(2 * RUNS):
        log.write_text(whole if number % 2 else whole.rstrip("\n").rpartition("\n")[0] + "\n", "utf-8")
        time.sleep(0.05)
        yield rebuilt(folder)


def away_and_back(folder: Path, entry: Path) -> Iterator[Spent]:
    """Rebuilds without an entry, and with it as a new one, several times."""
    aside = folder / entry.name
    for number in range(2 * RUNS):
        entry.rename(aside) if number % 2 == 0 else aside.rename(entry)
        time.sleep(0.05)
        yield rebuilt(folder)


def cases(folder: Path, entries: int) -> Iterator[tuple[str, Spent, str]]:
    """(case, what it took, at most) of everyday work on a diary that stands."""
    slug = f"night-work-{entries // 2:05d}"
    rebuilt(folder)
    looks, still = zip(*((bare_look(folder), rebuilt(folder)) for _ in range(2 * RUNS)), strict=True)
    look_s = min(looks)
    most = f"{max(0.3, 2 * look_s):.2f} s (0.3, or twice the bare look of {look_s:.2f}), 60 MB"
    yield "nothing changed", quietest(still), most
    entry = folder / "content" / "entries" / f"{slug}.md"
    yield "one sentence changed", quietest(there_and_back(folder, entry, "In all", "Altogether")), "1.0 s"
    log = min((folder / "content" / "logs").glob(f"{slug}-*.csv"))
    yield "one log changed", quietest(there_and_back(folder, log, ",-10,", ",-11,")), "2.0 s"
    least = "2 times one sentence, and 1.5 s"
    yield "title changed", quietest(there_and_back(folder, entry, "title: Night", "title: Long night")), least
    yield "one sub more or fewer", quietest(sub_by_sub(folder, log)), least
    yield "an entry more or fewer", quietest(away_and_back(folder, entry)), least


def headers(count: int) -> None:
    """First sight of FITS headers beside their blocks read bare; seen again they are not opened (tests/build)."""
    from tests.bench import logs

    with tempfile.TemporaryDirectory() as made:
        paths = logs.write_headers(Path(made), count)
        asked = [logs.request(path) for path in paths]
        logs.show("FITS headers", count, *logs.fastest(lambda: logs.read_all(asked, count), lambda: logs.bare_blocks(paths)))


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    for name, usual in (("entries", 1000), ("pictures", 0), ("fits", 0), ("jobs", 2), ("headers", 20_000)):
        parser.add_argument(f"--{name}", type=int, default=usual)
    parser.add_argument("--folder", type=Path, help="use this diary, made before; it is built first where it was not")
    parser.add_argument("--cases", action="store_true", help="only the everyday cases, on a diary that stands")
    told = parser.parse_args()
    with tempfile.TemporaryDirectory() as once:
        folder = told.folder or Path(once) / "whole"
        if not (folder / "content").exists():
            make_diary(folder / "content", Size(told.entries, pictures=told.pictures, fits=told.fits))
        if not told.cases:
            time.sleep(0.1)
            spent = rebuilt(folder, "--fresh", "--jobs", str(told.jobs))
            _print_cold(spent, folder, told.entries, told.jobs)
            _print_growth(spent, told, Path(once) / "tenth")
        for name, spent, most in cases(folder, told.entries):
            print(f"  {name:44} {spent.cpu_s:8.2f} s cpu {spent.wall_s:8.2f} s wall {spent.megabytes:6.0f} MB "
                  f"{spent.report.get('changed', 0):4} files   at most {most}")
    if told.headers and not told.cases:
        headers(told.headers)
    print(f"load of the machine: {', '.join(f'{load:.1f}' for load in os.getloadavg())} on {os.cpu_count()} cores")


def _print_growth(whole: Spent, told: argparse.Namespace, folder: Path) -> None:
    """What an entry costs in this diary, beside what it costs in one of a tenth of its size."""
    size = Size(told.entries // 10, pictures=told.pictures // 10, fits=told.fits // 10)
    make_diary(folder / "content", size)
    time.sleep(0.1)
    tenth = rebuilt(folder, "--fresh", "--jobs", str(told.jobs))
    each, before = whole.cpu_s / told.entries, tenth.cpu_s / size.entries
    print(f"  an entry among {told.entries} takes {each / before:.2f} times what it takes among {size.entries} (at most 1.1)")


def _print_cold(spent: Spent, folder: Path, entries: int, jobs: int) -> None:
    print(f"{entries} entries from nothing: {spent.cpu_s:.1f} s cpu, {spent.wall_s:.1f} s wall, {spent.megabytes:.0f} MB the "
          f"largest process, {1000 * spent.cpu_s / entries:.0f} ms cpu an entry")  # fmt: skip
    for step, seconds in spent.report["seconds"].items():
        print(f"  step {step:39} {seconds:8.2f} s wall")
    total = 0.0
    for name, seconds in bare_on(jobs, folder):
        total += seconds
        print(f"  bare {name:60} {seconds:8.2f} s cpu")
    print(f"  all bare calls {total:.1f} s cpu; {spent.cpu_s / total:.2f} times as much is spent (at most 1.3)")
    print(f"  over {jobs} cores {total / jobs:.1f} s; it took {spent.wall_s * jobs / total:.2f} times as long", flush=True)



if __name__ == "__main__":
    main()
