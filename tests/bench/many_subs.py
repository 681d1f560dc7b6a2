"""One entry of very many short subs, beside its table read bare and the ERFA calls for its subs.

    python tests/bench/many_subs.py [--subs 1000,100000,1000000] [--nights 10] [--times 1] [--jobs 1]

Every size has the same nights: what differs is how short the subs are. Each night has seven hours, one sub in 40 is discarded.
Processor time of a rebuild from nothing (children included), the least of several runs; the largest process; the entry's page,
whole and gzipped; its facts.json. The bare side is csv.reader over the logs, and one vectorised call of epv00, moon98, apco13,
atciqz and atioq for all subs, as in sky.py.
"""

import argparse
import csv
import gzip
import os
import sys
import tempfile
import time
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from datetime import UTC, date, datetime, timedelta
from multiprocessing import get_context
from pathlib import Path

import numpy as np
from msgspec import structs

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from tests.bench.bare import cpu_s  # noqa: E402 # run as a script
from tests.bench.make_diary import Size, make_diary  # noqa: E402 # run as a script
from tests.bench.rebuild import rebuilt  # noqa: E402

SLUG = "night-work-00000"
FIRST = date(2024, 1, 3)
HOURS = 7


def write_diary(content: Path, subs: int, nights: int) -> None:
    """The entry of a made diary, with logs of its own, a file a night."""
    make_diary(content, Size(1, nights=1))
    for log in (content / "logs").iterdir():
        log.unlink()
    for night in range(nights):
        evening = FIRST + timedelta(days=night)
        rows = "".join(night_s_rows(evening, subs // nights))
        (content / "logs" / f"{SLUG}-{evening}.csv").write_text(f"start,exposure_s,filter,kept,reason\n{rows}", "utf-8")


def night_s_rows(evening: date, subs: int) -> Iterator[str]:
    begin, step_s = datetime(evening.year, evening.month, evening.day, 18, tzinfo=UTC), HOURS * 3600 / subs
    for number in range(subs):
        start = begin + timedelta(seconds=round(number * step_s, 3))
        short = ("L", "R", "G", "B")[number * 4 // subs]
        verdict = "no,cloud" if number % 40 == 17 else "yes,"
        yield f"{start:%Y-%m-%dT%H:%M:%S}.{start.microsecond // 1000:03},{0.9 * step_s:.4g},{short},{verdict}\n"


def bare_s(content: Path) -> float:
    """In a process of its own, so that what it needs of memory stays there."""
    with ProcessPoolExecutor(1, get_context("spawn")) as pool:
        return pool.submit(bare, content).result()


def bare(content: Path) -> float:
    """The tables read by csv.reader, and the bare ERFA calls of sky.py for their subs."""
    from tests.bench.sky import bare_calls, ten_year_diary

    starts: list[str] = []
    request = ten_year_diary()
    seconds = cpu_s(lambda: starts.extend(_starts(content)))
    moments = np.array(starts, "datetime64[ms]").astype(float) / 1000
    first = np.zeros(moments.size, int)
    same = structs.replace(request, sub_mid_s=moments, sub_night=first, sub_direction=first)
    calls = {name: cpu_s(call) for name, call in bare_calls(same).items()}
    return seconds + sum(calls.values()) - calls["Sun (epv00)"]


def _starts(content: Path) -> Iterator[str]:
    for path in sorted((content / "logs").glob("*.csv")):
        with path.open(newline="") as file:
            rows = csv.reader(file)
            next(rows)
            yield from (row[0] for row in rows)


def measured(folder: Path, subs: int, options: argparse.Namespace) -> tuple[float, float, float, int, int, int]:
    write_diary(folder / "content", subs, options.nights)
    time.sleep(0.1)
    runs = [rebuilt(folder, "--fresh", "--jobs", str(options.jobs)) for _ in range(options.times)]
    entry = folder / "output" / "entries" / SLUG
    page = (entry / "index.html").read_bytes()
    sizes = len(page), len(gzip.compress(page, 9)), (entry / "facts.json").stat().st_size
    return (min(run.cpu_s for run in runs), max(run.megabytes for run in runs), bare_s(folder / "content"), *sizes)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--subs", default="1000,100000,1000000")
    for name, usual in (("nights", 10), ("times", 1), ("jobs", 1)):
        parser.add_argument(f"--{name}", type=int, default=usual)
    options = parser.parse_args()
    first = 0
    for subs in map(int, options.subs.split(",")):
        with tempfile.TemporaryDirectory() as folder:
            cpu_s, megabytes, bare_calls_s, page, packed, facts = measured(Path(folder), subs, options)
        first = first or page
        print(f"{subs:8} subs in {options.nights} nights {cpu_s:7.2f} s of processor, {cpu_s / bare_calls_s:5.2f} times the "
              f"{bare_calls_s:.2f} s of the bare side (at most 2); {megabytes:5.0f} MB (500)")  # fmt: skip
        print(f"         page {page / 1e3:.1f} kB, {packed / 1e3:.1f} gzipped, {page / first:.2f} times the first (at most 1.5); "
              f"facts.json {facts / 1e6:.2f} MB", flush=True)  # fmt: skip
    print(f"load of the machine: {', '.join(f'{load:.1f}' for load in os.getloadavg())} on {os.cpu_count()} cores")


if __name__ == "__main__":
    main()
