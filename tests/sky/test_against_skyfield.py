"""The engine against Skyfield and JPL's DE421: 600 stored random cases, and some asked anew.

Latitudes -80 to 80, years 1995 to 2035, sites to 3000 m. The stored file holds Skyfield's raw answers; its builder is
`build_skyfield_answers.py`. Tolerances are the limits that `sky_pass` states in sitegen/sky/engine.py.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from functools import cache
from itertools import pairwise
from typing import Any

import numpy as np
import pytest

from sitegen.sky.answer import NightSky, SkyAnswer
from sitegen.sky.engine import sky_pass
from sitegen.sky.place import Place
from sitegen.sky.request import SkyRequest
from tests.sky.independent_sky import IndependentSky, random_cases, stored_answers

DAY_S = 86400.0
SUN_TOLERANCE_S = 5.0
MOON_TOLERANCE_S = 20.0


@dataclass(frozen=True, slots=True)
class Compared:
    """Skyfield's cases and the engine's answer to them, in one order."""

    cases: list[dict[str, Any]]
    answer: SkyAnswer

    def column(self, name: str) -> np.ndarray:
        """Skyfield's value of each case."""
        return np.array([case[name] for case in self.cases])

    def pairs(self) -> Iterator[tuple[dict[str, Any], NightSky]]:
        """Case and night."""
        return zip(self.cases, self.answer.nights, strict=True)


def compare(cases: list[dict[str, Any]]) -> Compared:
    """Ask the engine for every case in one pass."""
    indices = np.arange(len(cases))
    request = SkyRequest(
        places=tuple(Place(c["latitude_deg"], c["longitude_deg"], c["elevation_m"]) for c in cases),
        nights=tuple((i, date.fromisoformat(c["evening"])) for i, c in enumerate(cases)),
        directions=tuple((c["ra_deg"], c["dec_deg"]) for c in cases),
        night_targets=tuple((i, i) for i in range(len(cases))),
        sub_mid_s=np.array([c["moment_s"] for c in cases]),
        sub_night=indices,
        sub_direction=indices,
    )
    return Compared(cases, sky_pass(request))


@cache
def stored() -> Compared:
    """The committed cases."""
    return compare(stored_answers())


@cache
def asked_anew() -> Compared:
    """Cases that no file has seen."""
    sky = IndependentSky()
    try:
        return compare([sky.answer(case) for case in random_cases(8, 7)])
    finally:
        sky.bodies.close()


BOTH = pytest.mark.parametrize("compared", [stored, asked_anew], ids=["stored", "asked anew"])


def test_enough_cases() -> None:
    """At least 500 cases are stored, spread over all latitudes and years."""
    latitudes, years = stored().column("latitude_deg"), np.array([c["evening"][:4] for c in stored().cases], int)
    assert len(latitudes) >= 500
    assert np.histogram(latitudes, bins=8, range=(-80, 80))[0].min() >= 30
    assert (years.min(), years.max()) == (1995, 2035)


@BOTH
@pytest.mark.parametrize(
    ("name", "tolerance"),
    [
        ("target_altitude_deg", 0.01),
        ("moon_altitude_deg", 0.01),
        ("sun_altitude_deg", 0.01),
        ("moon_separation_deg", 0.01),
        ("moon_illuminated", 0.001),
    ],
)
def test_angles(compared: Any, name: str, tolerance: float) -> None:
    """Altitudes and separation at a moment keep within 0.01 deg, the illuminated fraction within 0.001."""
    assert np.max(np.abs(getattr(compared().answer.subs, name) - compared().column(name))) <= tolerance


@BOTH
def test_a_targets_path(compared: Any) -> None:
    """The path a target's night is judged by has Skyfield's altitude at the moment, within 0.01 deg."""
    for case, target in zip(compared().cases, compared().answer.night_targets, strict=True):
        assert abs(target.path.altitude_deg(case["moment_s"]) - case["target_altitude_deg"]) <= 0.01, case


def down_interval(raw: dict[str, Any], noon_s: float) -> tuple[list[Any] | None, list[Any] | None] | None:
    """Skyfield's crossings that begin and end the Sun's absence nearest to mean midnight; None where it is never absent."""
    crossings = raw["crossings"]
    edges = [None if raw["up_at_start"] else "open", *crossings, None]
    midnight = noon_s + DAY_S / 2
    spans = []
    for before, after in pairwise(edges):
        down = before == "open" or (isinstance(before, list) and not before[1])
        if down:
            start, end = (before if isinstance(before, list) else None), after
            left = start[0] if start else noon_s - 3600.0
            right = end[0] if end else noon_s + DAY_S + 3600.0
            spans.append((max(left - midnight, midnight - right, 0.0), start, end))
    return min(spans, key=lambda span: span[0])[1:] if spans else None


def event_errors(compared: Compared) -> Iterator[tuple[str, float, str]]:
    """(which, seconds off, evening) for each end of each interval of the Sun; presence checked on the way."""
    for case, night in compared.pairs():
        noon = case["noon_s"]
        for raw, name, start, end in zip(
            case["sun_events"],
            ("sun", "nautical", "dark"),
            (night.sunset, night.nautical_start, night.dark_start),
            (night.sunrise, night.nautical_end, night.dark_end),
            strict=True,
        ):
            found = down_interval(raw, noon)
            yield from ends(found, start, end, name, case)


def ends(found: Any, start: Any, end: Any, name: str, case: dict[str, Any]) -> Iterator[tuple[str, float, str]]:
    """Both ends of one interval against Skyfield's, cut to the night as the engine cuts darkness."""
    noon = case["noon_s"]
    for moment, crossing, limit, sign in ((start, found and found[0], noon, 1), (end, found and found[1], noon + DAY_S, -1)):
        if found is None or (crossing is None and name == "sun"):
            assert moment is None, (name, case)
            continue
        assert moment is not None, (name, case)
        cut = crossing is None or (name != "sun" and sign * (crossing[0] - limit) < 0)
        if cut:
            assert abs(moment.timestamp() - limit) <= 1.0, (name, case)
        else:
            yield name, moment.timestamp() - crossing[0], case["evening"]


@BOTH
def test_sun_events(compared: Any) -> None:
    """Sunset, sunrise and both darknesses exist where Skyfield has them, and come within 5 s of it, creeping ones too."""
    errors = list(event_errors(compared()))
    assert len(errors) > 5 * len(compared().cases)
    assert [error for error in errors if abs(error[1]) > SUN_TOLERANCE_S] == []


def first(raw: dict[str, Any], rising: bool) -> list[Any] | None:
    """Skyfield's first crossing in one direction."""
    return next((crossing for crossing in raw["crossings"] if crossing[1] is rising), None)


@BOTH
def test_moonrise_and_moonset(compared: Any) -> None:
    """The first rise and set of each night exist where Skyfield has them, and come within 20 s of it."""
    seen = 0
    for case, night in compared().pairs():
        raw = case["moon_limb_events"]
        for moment, crossing in ((night.moon.rise, first(raw, True)), (night.moon.set, first(raw, False))):
            assert (moment is None) == (crossing is None), case
            if crossing:
                seen += 1
                assert abs(moment.timestamp() - crossing[0]) <= MOON_TOLERANCE_S, case
    assert seen > 1.5 * len(compared().cases)


def up_seconds(raw: dict[str, Any], start_s: float, end_s: float, noon_s: float) -> float:
    """Skyfield's time with the Moon's centre up between two moments."""
    edges = [noon_s, *(crossing[0] for crossing in raw["crossings"]), noon_s + DAY_S]
    states = [raw["up_at_start"], *(crossing[1] for crossing in raw["crossings"])]
    spans = zip(pairwise(edges), states, strict=True)
    return float(sum(max(0.0, min(b, end_s) - max(a, start_s)) for (a, b), up in spans if up))


@BOTH
def test_share_of_the_dark_hours(compared: Any) -> None:
    """The share of the dark hours with the Moon up keeps within 0.005 of Skyfield's, wherever those hours exist."""
    seen = 0
    for case, night in compared().pairs():
        if night.dark_s == 0.0:
            continue
        seen += 1
        start_s, end_s = skyfields_darkness(case)
        share = up_seconds(case["moon_centre_events"], start_s, end_s, case["noon_s"]) / (end_s - start_s)
        assert abs(night.moon.up_share_of_dark - share) <= 0.005, case
    assert seen > 0.7 * len(compared().cases)


def skyfields_darkness(case: dict[str, Any]) -> tuple[float, float]:
    """Skyfield's dark interval, cut to the night."""
    start, end = down_interval(case["sun_events"][2], case["noon_s"])  # type: ignore[misc]
    noon = case["noon_s"]
    return max(start[0] if start else noon, noon), min(end[0] if end else noon + DAY_S, noon + DAY_S)
