"""The outlook's hours against astroplan, a planning library that shares no code with this project."""

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from sitegen.diary.public_position import PublicSite
from sitegen.diary.settings import MoonRule
from sitegen.diary.target import Target
from sitegen.facts.outlook import Wish, length_s, outlook_of

CASES = json.loads((Path(__file__).parent / "outlook_astroplan.json").read_text("utf-8"))
# Our own limit, no source. The answers were counted in steps of 2 minutes, so up to 2 of these 5 are theirs.
TOLERANCE_S = 300.0


def night_of(case: dict[str, Any]) -> Any:
    site = PublicSite(
        "s", "S", case["latitude_deg"], case["longitude_deg"], case["elevation_m"], "UTC", None, 0.25, None, None,
        tuple((azimuth, altitude) for azimuth, altitude in case["horizon"]),
    )  # fmt: skip
    wish = Wish("e", "E", Target("t", "T", case["ra_deg"], case["dec_deg"]), ())
    (night,) = outlook_of(wish, site, date.fromisoformat(case["evening"]), 1, case["minimum_altitude_deg"], MoonRule()).nights
    return night


def test_there_are_fifty_cases_and_they_say_something() -> None:
    """Both hemispheres, high and low latitudes, with profiles and without, most with hours to get wrong."""
    assert len(CASES) == 50
    assert sum(case["latitude_deg"] < 0 for case in CASES) > 15
    assert sum(bool(case["horizon"]) for case in CASES) > 15
    assert sum(case["target_min"] > 60 for case in CASES) > 15
    assert sum(0 < case["moonless_min"] < case["target_min"] for case in CASES) >= 5


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case['evening']} at {case['latitude_deg']}")
def test_hours_agree(case: dict[str, Any]) -> None:
    """Dark, with the target above limit and horizon, and without the Moon, each within five minutes."""
    night = night_of(case)
    dark = night.hours_kind == "dark"
    assert night.dark_s == pytest.approx(60 * case["dark_min"], abs=TOLERANCE_S)
    assert (night.target_s if dark else 0) == pytest.approx(60 * case["target_min"], abs=TOLERANCE_S)
    assert (night.moonless_s if dark else 0) == pytest.approx(60 * case["moonless_min"], abs=TOLERANCE_S)
    assert length_s(night.target) == night.target_s
