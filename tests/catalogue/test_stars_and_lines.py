"""Star fields and the lines of the sky map."""

import numpy as np
import pytest

from sitegen.catalogue import star_field
from sitegen.catalogue.constellation import constellation_of
from sitegen.catalogue.lookup import separation_deg
from sitegen.catalogue.sky_lines import constellation_figures, milky_way
from sitegen.catalogue.star_field import stars_near


def test_the_brightest_star_of_a_field_is_where_simbad_has_it() -> None:
    """Castor's light leads its field, within 3 arcseconds of SIMBAD's J2000 place (stored in astropy's test_name_resolve.py),
    once 16 years of its proper motion, 0.24 arcseconds a year, are allowed for."""
    field = stars_near(113.64946, 31.88828, 0.2)
    assert 3600.0 * separation_deg(field.ra_deg[0], field.dec_deg[0], 113.64946, 31.88828) < 6.0
    assert field.magnitude[0] < 2.5


def test_colours_are_those_of_gaia() -> None:
    """Barnard's star is as bright and as red as Gaia DR3 has it: G 8.19, BP - RP 2.83 (from memory), at its place of 2016."""
    field = stars_near(269.4485, 4.7394, 0.01)
    assert len(field) == 1
    assert field.magnitude[0] == pytest.approx(8.19, abs=0.01)
    assert field.colour[0] == pytest.approx(2.83, abs=0.01)


def test_an_unknown_colour_is_no_number() -> None:
    """Vega comes from Hipparcos, which has no Gaia colour."""
    field = stars_near(279.235, 38.784, 0.02)
    assert field.magnitude[0] == pytest.approx(0.03, abs=0.1)
    assert np.isnan(field.colour[0])


def test_a_field_is_round_bright_first_and_no_fainter_than_asked() -> None:
    """Every star lies within the radius, also across 0 h and at the pole; the faintest limit holds."""
    for ra_deg, dec_deg in ((0.1, 20.0), (120.0, 89.5), (250.0, -60.0)):
        field = stars_near(ra_deg, dec_deg, 1.5, faintest=9.0)
        apart = [separation_deg(ra_deg, dec_deg, a, d) for a, d in zip(field.ra_deg, field.dec_deg, strict=True)]
        assert len(field) > 10
        assert max(apart) <= 1.5
        assert np.all(np.diff(field.magnitude) >= 0.0)
        assert field.magnitude[-1] <= 9.0
    across = stars_near(0.1, 20.0, 1.5)
    assert across.ra_deg.min() < 5.0
    assert across.ra_deg.max() > 355.0


@pytest.mark.parametrize(
    ("ra_deg", "dec_deg", "radius_deg", "faintest"),
    [(11.9, -25.3, 1.5, 10.0), (11.9, -25.0, 0.5, 10.0), (120.0, 89.9, 1.0, 9.0), (7.0, -90.0, 4.0, 9.5), (359.9, 0.0, 9.0, 6.5)],
)
def test_the_zones_miss_no_star(ra_deg: float, dec_deg: float, radius_deg: float, faintest: float) -> None:
    """As many as a look at each of the 482,176 stars finds: at a pole, on the edge of a zone, and among the bright ones alone."""
    stars = star_field._stars()
    inside = (separations(stars, ra_deg, dec_deg) <= radius_deg) & (stars["g"] <= faintest)
    assert len(stars_near(ra_deg, dec_deg, radius_deg, faintest)) == np.count_nonzero(inside) > 0


def separations(stars: np.ndarray, ra_deg: float, dec_deg: float) -> np.ndarray:
    """From the cosine of the angle between directions, in double precision: good to a ten-millionth of a degree."""
    first = directions(stars["ra"], stars["dec"])
    return np.degrees(np.arccos(np.clip(first @ directions(np.float64(ra_deg), np.float64(dec_deg)), -1.0, 1.0)))


def directions(ra_deg: np.ndarray, dec_deg: np.ndarray) -> np.ndarray:
    ra, dec = np.radians(ra_deg), np.radians(dec_deg)
    return np.stack([np.cos(dec) * np.cos(ra), np.cos(dec) * np.sin(ra), np.sin(dec)], axis=-1)


def test_star_counts_grow_as_the_sky_does() -> None:
    """A circle ten times as wide holds near a hundred times the stars away from the Milky Way (at the galactic pole)."""
    narrow, wide = len(stars_near(192.86, 27.13, 1.0)), len(stars_near(192.86, 27.13, 10.0))
    assert 50 < wide / narrow < 200


def test_each_constellation_has_its_figure_inside_it() -> None:
    """All 88 have a name, a label and a figure; of all the figures' points nine in ten lie inside their own boundaries.

    Figures share stars with neighbours (Alpheratz) and stars sit on boundaries, hence not all.
    """
    figures = constellation_figures()
    assert len(figures) == 88
    points = [(figure.name, point) for figure in figures for line in figure.lines for point in line]
    inside = [constellation_of(*point) == name for name, point in points]
    assert sum(inside) / len(inside) > 0.9
    assert all(
        constellation_of(*label) == figure.name for figure in figures for label in figure.labels[:1] if figure.prominence == 1
    )


def test_the_milky_way_lies_along_the_galactic_equator() -> None:
    """The bright levels hug the galactic equator, through Sagittarius and Cygnus; rings are closed."""
    levels = milky_way()
    assert [level.brightness for level in levels] == [1, 2, 3, 4, 5]
    assert all(ring[0] == ring[-1] for level in levels for ring in level.rings)
    bright = [point for level in levels[3:] for ring in level.rings for point in ring]
    # The galactic pole: Meeus, Astronomical Algorithms, chapter 13 (J2000 192.86, +27.13).
    latitudes = [90.0 - separation_deg(192.86, 27.13, *point) for point in bright]
    assert max(map(abs, latitudes)) < 20.0
    assert {"Sagittarius", "Cygnus"} <= {constellation_of(*point) for point in bright}
