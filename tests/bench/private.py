"""Non-interference, many pairs: python tests/bench/private.py [--pairs 100] [--hidden 20] [--seed 1]

Each pair is a whole rebuild of a diary that differs from the first only in what is private, compared byte by byte.
"""

import argparse
import sys
import tempfile
from pathlib import Path
from random import Random

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from tests.trust.hidden_things import MIDDLE, hidden, neighbour  # noqa: E402 # run as a script
from tests.trust.test_private_stays_private import built, differing  # noqa: E402 # run as a script


def main() -> None:
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("--pairs", type=int, default=100)
    words.add_argument("--hidden", type=int, default=20)
    words.add_argument("--seed", type=int, default=1)
    asked = words.parse_args()
    wrong = 0
    with tempfile.TemporaryDirectory() as folder:
        base = Path(folder)
        for name, first, other, count in (
            ("rounded", MIDDLE, neighbour, asked.pairs),
            ("hidden", hidden(Random(0)), hidden, asked.hidden),
        ):
            reference, told = built(base / name, first), 0
            for number in range(count):
                found = differing(reference, built(base / "another", other(Random(f"{asked.seed}/{number}"))))
                wrong += bool(found)
                told += 1
                if found:
                    print(f"{name}, pair {number}: {found}", flush=True)
            print(f"{name}: {told} pairs compared, {len(reference)} files each", flush=True)
    print(f"{wrong} pairs differ")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
