"""Every fact against a value worked out by hand, computed with another library, or printed by somebody."""

from datetime import date
from typing import Any

import pytest
from msgspec.structs import replace

from sitegen.diary.entry import NightNote
from sitegen.diary.panel import Panel
from sitegen.diary.readings import Readings
from sitegen.diary.recalled import Recalled
from sitegen.diary.target import Target
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import as_json, facts_of
from sitegen.facts.measured_scale import measured
from sitegen.facts.places import PLACES
from sitegen.facts.star_views import ring_view, survey_view
from sitegen.facts.views import PointedPicture
from sitegen.stars.solving.solution import Solution
from tests.diaries import HILL, RIG, diary, entry, run, sub
from tests.published_values.facts import FACTS_BY_HAND
from tests.stars.measured_frames import ringed, surveyed

PATHS = list(PLACES)
BESIDE = Readings(
    0.3, 0.4, 0.12, temperature_c=6.0, humidity_percent=62.0, wind_m_s=2.0, cloud_percent=10.0, sky_mag_arcsec2=20.91
)
NEAR = Target("ngc-253", "NGC 253", 11.888, -25.288, "galaxy", (26.8, 4.6), 7.1)
MARS = Target("mars", "Mars", None, None, "moving")
DEG_A_PIXEL, DEG_A_SIMULATED_PIXEL = 0.97 / 3600, 0.96 / 3600
EAST_UP = Solution(6248, 4176, 11.9, -25.3, 6247 / 2, 4175 / 2, ((0.0, -DEG_A_PIXEL), (DEG_A_PIXEL, 0.0)),
                   matched=42, rms_arcsec=0.4, corner_arcsec=0.9)  # fmt: skip
SIMULATED = replace(EAST_UP, cd=((0.0, -DEG_A_SIMULATED_PIXEL), (DEG_A_SIMULATED_PIXEL, 0.0)))
PICTURES = (
    PointedPicture("pictures/a.fits", 6248, 4176, EAST_UP, "header", None),
    PointedPicture("pictures/b.jpg", 400, 300, None, None, "too few stars", "simulation"),
    PointedPicture("pictures/c.jpg", 6248, 4176, SIMULATED, "stars", None, "simulation"),
)

MOSAIC = entry(
    [
        *run("2026-09-20 12:00", 2, panel="north"),
        sub("2026-09-20 12:20", panel="North", kept=False),
        sub("2026-09-20 13:00", 600.0, panel="south", filter="Ha"),
        sub("2026-09-20 14:00"),
    ],
    panels=(Panel("north", 11.888, -24.888, 0.0), Panel("south", 11.888, -25.688, 0.0)),
)


@pytest.fixture(scope="module")
def facts() -> dict[str, Any]:
    by_hand = entry(
        [
            sub("2026-09-20 12:00", fwhm_arcsec=2.8, elongation=1.08, stars=640, guiding_rms_arcsec=0.5, readings=BESIDE),
            sub("2026-09-20 12:10", kept=False, reason="cloud", readings=replace(BESIDE, temperature_c=4.0, wind_m_s=3.0)),
            sub("2026-09-20 16:30", filter="Ha", guiding_rms_arcsec=0.7),
            sub("2026-09-29 13:00", filter="Ha", target=1),
        ],
        slug="by-hand",
        title="Two nights by hand",
        stage="gathering",
        targets=(NEAR, MARS),
        wanted_hours={"L": 2.0},
        recalled=(Recalled(24000.0, "Ha", 40, 600.0), Recalled(12000.0, "OIII"), Recalled(600.0)),
        night_notes={date(2026, 9, 20): NightNote(temperature_c=-3.0, polar_error_arcmin=1.5)},
    )
    view = views_of(diary(by_hand), (by_hand,))[0]
    shapes = survey_view(surveyed(), by_hand, {"long": RIG}, {"hill": HILL})
    ring = ring_view(ringed(), by_hand, {"long": RIG}, {"hill": HILL})
    whole = replace(view, pictures=PICTURES, optics=measured(view.optics, PICTURES), surveys=(shapes,), rings=(ring,),
                    mosaic=views_of(diary(MOSAIC), (MOSAIC,))[0].mosaic)  # fmt: skip
    return as_json(facts_of(whole))


def test_every_fact_has_a_published_value() -> None:
    """A new fact needs its line in tests/published_values/facts.py; one that went takes its line along."""
    assert sorted(set(PATHS) ^ set(FACTS_BY_HAND)) == []


@pytest.mark.parametrize("path", PATHS)
def test_a_fact_agrees_with_its_published_value(path: str, facts: dict[str, Any]) -> None:
    """And is known: a fact that is always null agrees with nothing."""
    fact = FACTS_BY_HAND[path]
    value: Any = facts
    for key in fact.place:
        value = value[key]
    assert value is not None
    assert fact.expected.agrees(value), (value, fact.expected.source)
