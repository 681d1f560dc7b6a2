"""Writes outlook_astroplan.json: the hours of 50 random nights by astroplan, a library for planning observations that shares no
code with this project. Not part of the tests, since it takes minutes: `pip install astroplan`, then run this file."""

import json
import random
import warnings
from datetime import date, timedelta
from pathlib import Path

import astropy.units as u
import numpy as np
from astroplan import FixedTarget, Observer
from astropy.coordinates import EarthLocation, SkyCoord
from astropy.time import Time
from astropy.utils import iers

CASES, STEP_MIN, SEED = 50, 2, 90125
ANSWERS = Path(__file__).with_suffix("").parent / "outlook_astroplan.json"


def case(draw: random.Random) -> dict:
    corners = sorted(draw.sample(range(0, 360, 10), 6))
    return {
        "latitude_deg": round(draw.uniform(-62, 62), 3),
        "longitude_deg": round(draw.uniform(-179, 179), 3),
        "elevation_m": draw.randrange(0, 2500),
        "evening": str(date(2024, 1, 1) + timedelta(days=draw.randrange(0, 2400))),
        "ra_deg": round(draw.uniform(0, 360), 3),
        "dec_deg": round(draw.uniform(-75, 75), 3),
        "minimum_altitude_deg": draw.choice([15, 20, 30, 30, 30, 40]),
        "horizon": [[azimuth, draw.randrange(0, 45)] for azimuth in corners] if draw.random() < 0.5 else [],
    }


def answered(one: dict) -> dict:
    """Hours with the Sun's centre below -18°, with the target above limit and profile in them, and with the Moon down, too."""
    place = EarthLocation.from_geodetic(one["longitude_deg"], one["latitude_deg"], one["elevation_m"])
    observer = Observer(place, pressure=0 * u.hPa)
    target = FixedTarget(SkyCoord(one["ra_deg"] * u.deg, one["dec_deg"] * u.deg))
    noon = Time(f"{one['evening']}T12:00:00") - one["longitude_deg"] / 360 * u.day
    times = noon + (np.arange(0, 1440, STEP_MIN) + STEP_MIN / 2) * u.min
    dark = observer.sun_altaz(times).alt.deg < -18
    seen = observer.altaz(times, target)
    floor = np.full(len(times), float(one["minimum_altitude_deg"]))
    if one["horizon"]:
        azimuths, altitudes = np.array(one["horizon"], float).T
        floor = np.maximum(floor, np.interp(seen.az.deg, azimuths, altitudes, period=360))
    up = dark & (seen.alt.deg > floor)
    moonless = up & (observer.moon_altaz(times).alt.deg < 0)
    masks = {"dark": dark, "target": up, "moonless": moonless}
    return one | {f"{name}_min": int(mask.sum()) * STEP_MIN for name, mask in masks.items()}


def main() -> None:
    iers.conf.auto_download, iers.conf.auto_max_age = False, None
    warnings.simplefilter("ignore")
    draw = random.Random(SEED)
    rows = [answered(case(draw)) for _ in range(CASES)]
    ANSWERS.write_text("[\n" + ",\n".join(json.dumps(row) for row in rows) + "\n]\n", "utf-8")


if __name__ == "__main__":
    main()
