"""Writes the raw answers of Skyfield and DE421 that `test_against_skyfield.py` reads. A few minutes:

python -m tests.sky.build_skyfield_answers
"""

import json

from tests.sky.independent_sky import STORED, IndependentSky, random_cases

COUNT, SEED = 600, 20261125


def build() -> None:
    """Ask every case and write one JSON line each."""
    sky = IndependentSky()
    lines = [json.dumps(sky.answer(case), separators=(",", ":")) for case in random_cases(COUNT, SEED)]
    STORED.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    build()
