"""The sky by Skyfield and JPL's DE421, asked case by case: the authority the engine is held against.

It shares no line with the engine: another library, another ephemeris, and events found by bisection on exact altitudes.
"""

import json
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

import numpy as np
import skyfield_data
from skyfield.almanac import fraction_illuminated
from skyfield.api import Star, load, wgs84
from skyfield.jpllib import SpiceKernel
from skyfield.searchlib import find_discrete

STORED = Path(__file__).with_name("skyfield_de421_answers.jsonl")
SUN_LIMITS_DEG = (-50 / 60, -12.0, -18.0)
MOON_RADIUS_KM = 1737.4
DAY_S = 86400.0


class IndependentSky:
    """Skyfield with DE421 from the skyfield-data package and Skyfield's own built-in Earth-rotation table."""

    def __init__(self) -> None:
        self.scale = load.timescale(builtin=True)
        # By path: the package's own opener warns that another of its files, unused here, has aged.
        self.bodies = SpiceKernel(str(Path(skyfield_data.__file__).parent / "data" / "de421.bsp"))

    def time(self, unix_s: Any) -> Any:
        """Skyfield's time at UTC unix seconds, scalar or array; by days, since Skyfield's seconds count leap seconds."""
        days, seconds = np.divmod(np.asarray(unix_s, float), DAY_S)
        return self.scale.utc(1970, 1, 1 + days, 0, 0, seconds)

    def answer(self, case: dict[str, Any]) -> dict[str, Any]:
        """What a case of `random_cases` looks like: angles at its moment, events of its day from noon to noon."""
        ground = wgs84.latlon(case["latitude_deg"], case["longitude_deg"], case["elevation_m"])
        observer = self.bodies["earth"] + ground
        here = observer.at(self.time(case["moment_s"]))
        star = here.observe(Star(ra_hours=case["ra_deg"] / 15.0, dec_degrees=case["dec_deg"])).apparent()
        moon, sun = (here.observe(self.bodies[name]).apparent() for name in ("moon", "sun"))
        return case | {
            "target_altitude_deg": round(float(star.altaz()[0].degrees), 6),
            "moon_altitude_deg": round(float(moon.altaz()[0].degrees), 6),
            "sun_altitude_deg": round(float(sun.altaz()[0].degrees), 6),
            "moon_separation_deg": round(float(star.separation_from(moon).degrees), 6),
            "moon_illuminated": round(float(fraction_illuminated(self.bodies, "moon", self.time(case["moment_s"]))), 6),
            "sun_events": [self.events(observer, "sun", limit, case["noon_s"], 3600.0) for limit in SUN_LIMITS_DEG],
            "moon_limb_events": self.events(observer, "moon", None, case["noon_s"], 0.0),
            "moon_centre_events": self.events(observer, "moon", 0.0, case["noon_s"], 0.0),
        }

    def height(self, observer: Any, body: str, limit_deg: float | None, time: Any) -> Any:
        """Degrees of the body's centre above a limit; without a limit, of its refracted upper limb above 0."""
        altitude, _, distance = observer.at(time).observe(self.bodies[body]).apparent().altaz()
        if limit_deg is not None:
            return altitude.degrees - limit_deg
        return altitude.degrees + 34 / 60 + np.degrees(np.arcsin(MOON_RADIUS_KM / distance.km))

    def events(self, observer: Any, body: str, limit_deg: float | None, noon_s: float, margin_s: float) -> dict[str, Any]:
        """Whether the body is up at the start; for each crossing [unix seconds, up after it, its speed in degrees a minute]."""

        def up(time: Any) -> Any:
            return self.height(observer, body, limit_deg, time) > 0.0

        up.step_days = 0.015  # type: ignore[attr-defined]
        start, end = self.time(noon_s - margin_s), self.time(noon_s + DAY_S + margin_s)
        times, states = find_discrete(start, end, up, epsilon=0.05 / DAY_S)
        found = [self.event(observer, body, limit_deg, t, bool(s)) for t, s in zip(times, states, strict=True)]
        return {"up_at_start": bool(up(start)), "crossings": found}

    def event(self, observer: Any, body: str, limit_deg: float | None, time: Any, state: bool) -> list[Any]:
        """One crossing: its UTC unix seconds, the state after it, how fast the body moves in height."""
        unix_s = (time.utc_datetime() - datetime(1970, 1, 1, tzinfo=UTC)).total_seconds()
        before, after = self.height(observer, body, limit_deg, self.time([unix_s - 30.0, unix_s + 30.0]))
        return [round(unix_s, 2), state, round(abs(float(after - before)), 5)]


def random_cases(count: int, seed: int) -> list[dict[str, Any]]:
    """Sites at latitudes -80 to 80, nights of 1995 to 2035, targets and moments; from the seed alone."""
    rng = np.random.default_rng(seed)
    first, last = date(1995, 1, 1).toordinal(), date(2035, 12, 31).toordinal()
    return [random_case(rng, date.fromordinal(int(rng.integers(first, last)))) for _ in range(count)]


def random_case(rng: np.random.Generator, evening: date) -> dict[str, Any]:
    """One case; the target is uniform over the sphere, the moment within nine hours of mean midnight."""
    longitude = round(float(rng.uniform(-180, 180)), 4)
    noon_s = datetime(evening.year, evening.month, evening.day, 12, tzinfo=UTC).timestamp() - 240.0 * longitude
    return {
        "latitude_deg": round(float(rng.uniform(-80, 80)), 4),
        "longitude_deg": longitude,
        "elevation_m": round(float(rng.uniform(0, 3000)), 1),
        "evening": evening.isoformat(),
        "noon_s": round(noon_s, 3),
        "ra_deg": round(float(rng.uniform(0, 360)), 5),
        "dec_deg": round(float(np.degrees(np.arcsin(rng.uniform(-1, 1)))), 5),
        "moment_s": round(noon_s + float(rng.uniform(3, 21)) * 3600.0, 2),
    }


def stored_answers() -> list[dict[str, Any]]:
    """The committed raw answers; `build_skyfield_answers.py` beside this file writes them."""
    return [json.loads(line) for line in STORED.read_text(encoding="utf-8").splitlines()]
