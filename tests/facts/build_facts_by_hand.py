"""The night of tests/facts/test_published_facts.py by Skyfield and DE421: prints what stands in tests/published_values/facts.py.

    python -m tests.facts.build_facts_by_hand

Shares no line with the engine (tests/sky/independent_sky.py). Airmass, moonlight and sunlight are written out here again from the
papers that the values name.
"""

import math
from datetime import UTC, datetime
from typing import Any

import numpy as np
from skyfield.almanac import find_discrete, fraction_illuminated, moon_phase, moon_phases
from skyfield.api import Star, wgs84

from tests.sky.independent_sky import IndependentSky

LATITUDE_DEG, LONGITUDE_DEG, ELEVATION_M = -32.6, 139.0, 300.0
RA_DEG, DEC_DEG = 11.888, -25.288
NOON = datetime(2026, 9, 20, 12, tzinfo=UTC).timestamp() - 240.0 * LONGITUDE_DEG
EXTINCTION_MAG, DARK_SKY_MAG = 0.22, 21.4
SUBS = (("2026-09-20T12:00:00", 300.0), ("2026-09-20T16:30:00", 300.0))


class Night:
    def __init__(self) -> None:
        self.sky = IndependentSky()
        self.observer = self.sky.bodies["earth"] + wgs84.latlon(LATITUDE_DEG, LONGITUDE_DEG, ELEVATION_M)
        self.star = Star(ra_hours=RA_DEG / 15, dec_degrees=DEC_DEG)

    def crossings(self, body: str, limit_deg: float | None) -> list[tuple[str, bool]]:
        events = self.sky.events(self.observer, body, limit_deg, NOON, 0.0)["crossings"]
        return [(_utc(when), up) for when, up, _ in events]

    def altaz(self, body: Any, unix_s: Any) -> Any:
        return self.observer.at(self.sky.time(unix_s)).observe(body).apparent().altaz()

    def target_altitude(self, unix_s: Any) -> Any:
        return self.altaz(self.star, unix_s)[0].degrees

    def moon_altitude(self, unix_s: Any) -> Any:
        return self.altaz(self.sky.bodies["moon"], unix_s)[0].degrees

    def sun_altitude(self, unix_s: Any) -> Any:
        return self.altaz(self.sky.bodies["sun"], unix_s)[0].degrees


def _utc(unix_s: float) -> str:
    return datetime.fromtimestamp(round(unix_s, 1), UTC).isoformat(timespec="milliseconds")


def airmass(airless_deg: float) -> float:
    """Kasten & Young (1989) at the altitude lifted by Saemundsson's refraction (Meeus eq. 16.4)."""
    lifted = airless_deg + 1.02 / math.tan(math.radians(airless_deg + 10.3 / (airless_deg + 5.11))) / 60
    return 1 / (math.sin(math.radians(lifted)) + 0.50572 * (lifted + 6.07995) ** -1.6364)


def brightening_mag(separation: float, phase_angle: float, moon_altitude: float, target_altitude: float) -> float:
    """Krisciunas & Schaefer (1991), equations 1, 2, 3, 15 and 20; 16 and 18, numbers from memory."""
    path = lambda altitude: (1 - 0.96 * math.cos(math.radians(altitude)) ** 2) ** -0.5  # noqa: E731
    moon_light = 10 ** (-0.4 * (3.84 + 0.026 * phase_angle + 4e-9 * phase_angle**4))
    scattering = 10**5.36 * (1.06 + math.cos(math.radians(separation)) ** 2) + 10 ** (6.15 - separation / 40)
    k = EXTINCTION_MAG
    moon = scattering * moon_light * 10 ** (-0.4 * k * path(moon_altitude)) * (1 - 10 ** (-0.4 * k * path(target_altitude)))
    zenith = 34.08 * math.exp(20.7233 - 0.92104 * DARK_SKY_MAG)
    dark = zenith * 10 ** (-0.4 * k * (path(target_altitude) - 1)) * path(target_altitude)
    return 2.5 * math.log10(1 + moon / dark)


def phase_angle_deg(night: Night, unix_s: float) -> float:
    """Sun-Moon-Earth, geocentric."""
    at = night.sky.bodies["earth"].at(night.sky.time(unix_s))
    moon, sun = (at.observe(night.sky.bodies[body]).apparent().position.km for body in ("moon", "sun"))
    to_earth, to_sun = -moon, sun - moon
    cosine = np.dot(to_earth, to_sun) / np.linalg.norm(to_earth) / np.linalg.norm(to_sun)
    return float(np.degrees(np.arccos(cosine)))


def tell_night(night: Night) -> None:
    for name, body, limit in (("sunset/sunrise", "sun", -50 / 60), ("nautical", "sun", -12.0), ("dark", "sun", -18.0),
                              ("moon limb", "moon", None), ("moon centre", "moon", 0.0)):  # fmt: skip
        print(name, night.crossings(body, limit))
    set_, rise = (datetime.fromisoformat(when).timestamp() for when, _ in night.crossings("sun", -50 / 60))
    middle = (set_ + rise) / 2
    print("middle", _utc(middle))
    time = night.sky.time(middle)
    print("illuminated", fraction_illuminated(night.sky.bodies, "moon", time))
    print("elongation", moon_phase(night.sky.bodies, time).degrees)
    start, end = night.sky.time(middle - 32 * 86400), night.sky.time(middle)
    times, kinds = find_discrete(start, end, moon_phases(night.sky.bodies))
    new = [when.utc_datetime().timestamp() for when, kind in zip(times, kinds, strict=True) if kind == 0][-1]
    print("age_days", (middle - new) / 86400, _utc(new))
    dark_start, dark_end = (datetime.fromisoformat(when).timestamp() for when, _ in night.crossings("sun", -18.0))
    grid = np.arange(dark_start, dark_end, 1.0)
    altitude = night.target_altitude(grid)
    print("max altitude in the dark", altitude.max(), "airmass", airmass(float(altitude.max())))
    whole = np.arange(NOON, NOON + 86400, 5.0)
    hour_angle = np.array(night.observer.at(night.sky.time(whole)).observe(night.star).apparent().hadec()[0].hours)
    index = int(np.argmin(np.abs(hour_angle)))
    fine = np.arange(whole[index] - 10, whole[index] + 10, 0.1)
    hours = np.array(night.observer.at(night.sky.time(fine)).observe(night.star).apparent().hadec()[0].hours)
    print("transit", _utc(float(fine[np.argmin(np.abs(hours))])))
    up = np.array(night.moon_altitude(grid)) > 0
    print("up share of dark", up.mean(), "dark and moonless s", float((~up).sum()), "dark s", dark_end - dark_start)


def tell_subs(night: Night) -> None:
    for start, exposure_s in SUBS:
        middle = datetime.fromisoformat(start).replace(tzinfo=UTC).timestamp() + exposure_s / 2
        target, moon = float(night.target_altitude(middle)), float(night.moon_altitude(middle))
        here = night.observer.at(night.sky.time(middle))
        star, lunar = here.observe(night.star).apparent(), here.observe(night.sky.bodies["moon"]).apparent()
        separation = float(star.separation_from(lunar).degrees)
        angle = phase_angle_deg(night, middle)
        print(start, "target", target, "airmass", airmass(target), "moon", moon, "separation", separation,
              "illuminated", (1 + math.cos(math.radians(angle))) / 2, "sun", float(night.sun_altitude(middle)),
              "brightening", brightening_mag(separation, angle, moon, target) if moon > 0 else 0.0)  # fmt: skip


if __name__ == "__main__":
    tonight = Night()
    tell_night(tonight)
    tell_subs(tonight)
