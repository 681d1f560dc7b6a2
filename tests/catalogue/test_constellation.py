"""Constellations of directions, against two other implementations and the directions that Roman printed."""

import astropy.units as u
import numpy as np
import pytest
from astropy.coordinates import FK5, ICRS, get_constellation
from skyfield.api import load_constellation_map, load_constellation_names, position_of_radec

from sitegen.catalogue.constellation import constellation_of
from tests.published_values.record import published_rows

# astropy 8.0.2's own table of names has four slips; the spellings here are the IAU's.
SPELT_BY_ASTROPY = {
    "Ophiucus": "Ophiuchus",
    "Chamaleon": "Chamaeleon",
    "Pisces Austrinus": "Piscis Austrinus",
    "Crux ": "Crux",
}


def random_directions(count: int) -> tuple[np.ndarray, np.ndarray]:
    """Evenly over the sphere, in degrees."""
    draw = np.random.default_rng(1930)
    return draw.uniform(0.0, 360.0, count), np.degrees(np.arcsin(draw.uniform(-1.0, 1.0, count)))


def near_a_boundary(ra_deg: float, dec_deg: float) -> bool:
    """Within 36 arcseconds of another constellation: astropy's answer includes 20 arcseconds of aberration."""
    step = 0.01
    wide = step / max(np.cos(np.radians(dec_deg)), 1e-3)
    around = {constellation_of((ra_deg + x * wide) % 360.0, dec_deg + y * step) for x in (-1, 1) for y in (-1, 1)}
    return len(around) > 1


@pytest.mark.parametrize(("frame", "ra", "dec", "expected", "source"), published_rows("catalogue_constellations.csv").rows)
def test_published_directions(frame: str, ra: str, dec: str, expected: str, source: str) -> None:
    """The directions that Roman (1987) and two libraries' tests print lie in the constellations printed with them."""
    place = FK5(float(ra) * u.hour, float(dec) * u.deg, equinox=frame).transform_to(ICRS())
    assert constellation_of(place.ra.deg, place.dec.deg) == expected, source


@pytest.mark.filterwarnings("ignore:.*dubious year")
def test_two_thousand_directions_against_astropy() -> None:
    """astropy.get_constellation agrees on 2,000 random directions, but within aberration's reach of a boundary."""
    ra, dec = random_directions(2000)
    astropys = get_constellation(FK5(ra * u.deg, dec * u.deg, equinox="J2000").transform_to(ICRS()))
    theirs = [SPELT_BY_ASTROPY.get(name, name) for name in astropys]
    ours = [constellation_of(float(a), float(d)) for a, d in zip(ra, dec, strict=True)]
    differing = [i for i in range(2000) if ours[i] != theirs[i]]
    assert len(differing) < 10
    assert all(near_a_boundary(ra[i], dec[i]) for i in differing)
    assert len(set(ours)) > 80


def test_two_thousand_directions_against_skyfield() -> None:
    """Skyfield's constellation map, which leaves aberration out too, agrees on 2,000 random directions."""
    ra, dec = random_directions(2000)
    full = dict(load_constellation_names()) | {"Boo": "Boötes"}
    theirs = load_constellation_map()(position_of_radec(ra / 15.0, dec))
    differing = [i for i in range(2000) if constellation_of(float(ra[i]), float(dec[i])) != full[theirs[i]]]
    assert differing == []
