"""Nights that two entries share: how the time of a rebuild from nothing grows with their number.

    python tests/bench/shared_nights.py [--nights 25,50,100,200] [--subs 20] [--times 2] [--jobs 1]

Both entries have the same evenings, and as many subs on each. Processor time (children included), the least of several runs, and
how many times that of the fewest nights.
"""

import argparse
import os
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from tests.bench.make_diary import Size, make_diary  # noqa: E402 # run as a script
from tests.bench.rebuild import rebuilt  # noqa: E402

MOST = 8.5
"""Times 25 nights, for 200."""


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--nights", default="25,50,100,200")
    for name, usual in (("subs", 20), ("times", 2), ("jobs", 1)):
        parser.add_argument(f"--{name}", type=int, default=usual)
    options = parser.parse_args()
    fewest_s = None
    for nights in map(int, options.nights.split(",")):
        seconds = least_s(nights, options.subs, options.times, str(options.jobs))
        fewest_s = fewest_s or seconds
        print(f"{nights:4} shared nights {seconds:7.2f} s of processor, {seconds / fewest_s:5.2f} times the fewest "
              f"(200 at most {MOST} times 25)", flush=True)  # fmt: skip
    print(f"load of the machine: {', '.join(f'{load:.1f}' for load in os.getloadavg())} on {os.cpu_count()} cores")


def least_s(nights: int, subs: int, times: int, jobs: str) -> float:
    with tempfile.TemporaryDirectory() as folder:
        make_diary(Path(folder) / "content", Size(2, nights=nights, subs=subs, share_nights=True))
        time.sleep(0.1)
        return min(rebuilt(Path(folder), "--fresh", "--jobs", jobs).cpu_s for _ in range(times))


if __name__ == "__main__":
    main()
