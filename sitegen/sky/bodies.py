"""The Moon and the planets as targets: where they are, how large, how far from the Sun, how much of them is lit.

Planets are ERFA plan94 (J. L. Simon et al., Astron. Astrophys. 282, 663, 1994): over 1900 to 2100 off by up to 4 arcsec
(Mercury), 5 (Venus), 17 (Mars), 71 (Jupiter), 81 (Saturn), 86 (Uranus), 11 (Neptune), as seen from the Sun. The Moon is that of
`moon.py`. Radii are equatorial.
"""

import erfa
import numpy as np

from sitegen.sky.answer import BodyLooks
from sitegen.sky.arrays import Floats, Indices
from sitegen.sky.body import Body, PlaceTable
from sitegen.sky.earth_rotation import terrestrial_time
from sitegen.sky.moon import MOON_RADIUS_KM, angle_deg, illuminated_fraction, phase_angle_deg
from sitegen.sky.night_ephemeris import NightEphemeris
from sitegen.sky.sun import AU_KM, SPEED_OF_LIGHT_AU_DAY

MOON = "moon"
PLANETS = {"mercury": 1, "venus": 2, "mars": 4, "jupiter": 5, "saturn": 6, "uranus": 7, "neptune": 8}
"""Their numbers in plan94."""
RADIUS_KM = {
    MOON: MOON_RADIUS_KM, "mercury": 2440.53, "venus": 6051.8, "mars": 3396.19, "jupiter": 71492.0, "saturn": 60268.0,
    "uranus": 25559.0, "neptune": 24764.0,
}  # fmt: skip
"""B. A. Archinal et al., Celest. Mech. Dyn. Astr. 130, 22 (2018)."""
LIGHT_STEPS = 3


def planet_km(body: str, tt: tuple[float, Floats]) -> Floats:
    """Geocentric astrometric place in km, ICRS axes, light-time included; shape (..., 3)."""
    epoch, days = tt
    earth = erfa.epv00(epoch, days)[0]["p"]
    travel_days = np.zeros_like(days)
    for _ in range(LIGHT_STEPS):
        seen = erfa.plan94(epoch, days - travel_days, PLANETS[body])["p"] - earth
        travel_days = np.linalg.norm(seen, axis=-1) / SPEED_OF_LIGHT_AU_DAY
    return np.asarray(seen * AU_KM)


def table_place(table: PlaceTable, unix_s: Floats) -> Floats:
    """Unit vectors (T, 3), ICRS: on the chord between the two places around each time, NaN outside the table. Where the body's
    motion turns by an angle within a step, the place is off by up to an eighth of what that turns."""
    ra, dec = np.radians(table.ra_deg), np.radians(table.dec_deg)
    places = np.stack([np.cos(dec) * np.cos(ra), np.cos(dec) * np.sin(ra), np.sin(dec)], axis=-1)
    columns = [np.interp(unix_s, table.times_s, places[:, axis], np.nan, np.nan) for axis in range(3)]
    between = np.stack(columns, axis=-1)
    return np.asarray(between / np.linalg.norm(between, axis=-1, keepdims=True))


def body_seen(ephemeris: NightEphemeris, night: Indices, unix_s: Floats, body: Body) -> Floats:
    """Topocentric apparent place on the meridian's axes, in km; (..., 3) for night and unix_s of one shape. From a table, whose
    distances nobody knows, a geocentric unit vector."""
    if isinstance(body, PlaceTable):
        return ephemeris.to_meridian(night, unix_s, ephemeris.direction(night, table_place(body, unix_s)))
    if body == MOON:
        apparent = ephemeris.moon(night, unix_s)
    else:
        geocentric = planet_km(body, terrestrial_time(unix_s))
        distance = np.linalg.norm(geocentric, axis=-1, keepdims=True)
        apparent = ephemeris.direction(night, geocentric / distance) * distance
    return ephemeris.from_observer(night, unix_s, apparent)


def body_looks(ephemeris: NightEphemeris, night: int, unix_s: float, body: Body) -> BodyLooks | None:
    """At one moment of that night; None outside a table."""
    which, moment = np.array([night]), np.array([unix_s])
    sun = ephemeris.sun(which, moment)[0] @ ephemeris.to_cirs[night]
    place = _geocentric_km(ephemeris, which, moment, body)
    if np.isnan(place).any():
        return None
    ra_rad, dec_rad = erfa.c2s(place)
    return BodyLooks(
        ra_deg=float(np.degrees(ra_rad) % 360),
        dec_deg=float(np.degrees(dec_rad)),
        size_arcsec=_size_arcsec(body, place),
        elongation_deg=float(angle_deg(place, sun)),
        illuminated=float(illuminated_fraction(phase_angle_deg(place, sun))) if isinstance(body, str) else None,
    )


def _size_arcsec(body: Body, place_km: Floats) -> float | None:
    if isinstance(body, PlaceTable):
        return None
    return float(2 * np.degrees(np.arcsin(RADIUS_KM[body] / np.linalg.norm(place_km))) * 3600)


def _geocentric_km(ephemeris: NightEphemeris, which: Indices, moment: Floats, body: Body) -> Floats:
    """On ICRS axes; a unit vector from a table."""
    if isinstance(body, PlaceTable):
        return np.asarray(table_place(body, moment)[0])
    if body == MOON:
        return np.asarray(ephemeris.moon(which, moment)[0] @ ephemeris.to_cirs[int(which[0])])
    return np.asarray(planet_km(body, terrestrial_time(moment))[0])
