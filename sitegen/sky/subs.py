"""The sky above each sub at mid-exposure."""

from collections.abc import Sequence

import numpy as np

from sitegen.sky.airmass import airmass
from sitegen.sky.answer import SubSky
from sitegen.sky.arrays import Floats, Indices
from sitegen.sky.bodies import MOON, body_seen
from sitegen.sky.body import Body
from sitegen.sky.moon import angle_deg, illuminated_fraction, phase_angle_deg
from sitegen.sky.moonlight import brightening_mag
from sitegen.sky.night_ephemeris import HALF_SPAN_S, NightEphemeris
from sitegen.sky.place import Place
from sitegen.sky.request import NO_DIRECTION


def sub_sky(
    ephemeris: NightEphemeris,
    unix_s: Floats,
    night: Indices,
    direction: Indices,
    icrs: Floats,
    places: Sequence[Place],
    bodies: Sequence[tuple[int, Body]] = (),
) -> SubSky:
    """Columns (S,) for subs at unix_s in their nights; icrs unit vectors (D, 3), places one a night. `bodies`: (sub, what
    it shows) of those of what moves.

    Raises ValueError for a sub more than two hours outside its night.
    """
    refuse_strays(ephemeris, unix_s, night)
    moon = ephemeris.moon(night, unix_s)
    sun = ephemeris.sun(night, unix_s)
    phase_angle = phase_angle_deg(moon, sun)
    moon_seen = ephemeris.from_observer(night, unix_s, moon)
    moon_altitude = ephemeris.altitude_deg(night, moon_seen)
    target = target_seen(ephemeris, unix_s, night, direction, icrs)
    for body in dict.fromkeys(body for _, body in bodies):
        its_subs = np.array([sub for sub, its_body in bodies if its_body == body])
        target[its_subs] = body_seen(ephemeris, night[its_subs], unix_s[its_subs], body)
    sky = site_sky(places, night)
    altitude, separation = ephemeris.altitude_deg(night, target), angle_deg(target, moon_seen)
    brightening = brightening_mag(altitude, moon_altitude, separation, phase_angle, *sky)
    return SubSky(
        target_altitude_deg=altitude,
        airmass=airmass(altitude),
        moon_altitude_deg=moon_altitude,
        moon_separation_deg=separation,
        moon_illuminated=illuminated_fraction(phase_angle),
        sky_brightening_mag=_beside_the_moon(brightening, bodies),
        sun_altitude_deg=ephemeris.altitude_deg(night, ephemeris.from_observer(night, unix_s, sun)),
    )


def _beside_the_moon(brightening: Floats, bodies: Sequence[tuple[int, Body]]) -> Floats:
    """The model of moonlight knows no sky in front of the Moon itself."""
    on_moon = [sub for sub, body in bodies if body == MOON]
    brightening = np.array(brightening, float)
    brightening[on_moon] = np.nan
    return brightening


def refuse_strays(ephemeris: NightEphemeris, unix_s: Floats, night: Indices) -> None:
    """The night's polynomials say nothing about another day."""
    stray = np.nonzero(~(np.abs(unix_s - ephemeris.middle_s[night]) <= HALF_SPAN_S))[0]
    if stray.size:
        raise ValueError(f"{stray.size} subs lie outside their night, the first at index {stray[0]}")


def target_seen(ephemeris: NightEphemeris, unix_s: Floats, night: Indices, direction: Indices, icrs: Floats) -> Floats:
    """Apparent directions (S, 3) on the meridian's axes; NaN where a sub has none."""
    padded = np.vstack([icrs, np.full(3, np.nan)])
    fixed = ephemeris.direction(night, padded[np.where(direction == NO_DIRECTION, len(icrs), direction)])
    return ephemeris.to_meridian(night, unix_s, fixed)


def site_sky(places: Sequence[Place], night: Indices) -> tuple[Floats, Floats]:
    """Extinction and dark-sky brightness for each sub, NaN where the latter is unknown."""
    extinction = np.array([place.extinction_mag for place in places], float)
    sky = np.array([np.nan if p.sky_mag_arcsec2 is None else p.sky_mag_arcsec2 for p in places], float)
    return extinction[night], sky[night]
