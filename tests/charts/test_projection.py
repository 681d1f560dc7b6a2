"""Maps held against WCSLIB, which knows nothing of this project, through astropy."""

import numpy as np
import pytest
from astropy.coordinates import SkyCoord
from astropy.wcs import WCS

from sitegen.charts.finder_map import outline
from sitegen.charts.finder_values import CameraField, FinderValues
from sitegen.charts.projection import SkyMap, from_tangent


def wcs_of(kind: str, ra_deg: float, dec_deg: float) -> WCS:
    """One degree a pixel, north up, east left, the centre at pixel 0."""
    wcs = WCS(naxis=2)
    wcs.wcs.ctype = [f"RA---{kind}", f"DEC--{kind}"]
    wcs.wcs.crval = [ra_deg, dec_deg]
    wcs.wcs.crpix = [1.0, 1.0]
    wcs.wcs.cdelt = [-1.0, 1.0]
    wcs.wcs.lonpole = 180.0  # also at the poles, where `ra_deg` then points down in the north and up in the south
    return wcs


@pytest.mark.parametrize(("ra_deg", "dec_deg"), [(11.9, -25.3), (161.3, -59.9), (350.0, 80.0), (0.0, 90.0), (0.0, -90.0)])
def test_the_map_is_the_standards_zenithal_equal_area(ra_deg: float, dec_deg: float) -> None:
    """Paper II's ZEA, to a millionth of a degree (both are closed formulas in double precision)."""
    random = np.random.default_rng(7)
    ra, dec = random.uniform(0, 360, 200), np.degrees(np.arcsin(random.uniform(-1, 1, 200)))
    sky = SkyMap(ra_deg, dec_deg, 1.0)
    near = sky.distance_deg(ra, dec) < 150
    x, y = sky.place(ra[near], dec[near])
    expected = wcs_of("ZEA", ra_deg, dec_deg).wcs_world2pix(np.column_stack([ra[near], dec[near]]), 0)
    np.testing.assert_allclose(np.column_stack([x, y]), expected, atol=1e-6)


def test_distance_is_the_great_circle() -> None:
    """astropy's separation, to a millionth of a degree."""
    random = np.random.default_rng(8)
    ra, dec = random.uniform(0, 360, 100), random.uniform(-90, 90, 100)
    expected = SkyCoord(83.8, -5.4, unit="deg").separation(SkyCoord(ra, dec, unit="deg")).deg
    np.testing.assert_allclose(SkyMap(83.8, -5.4, 1.0).distance_deg(ra, dec), expected, atol=1e-6)


def test_a_radius_is_that_of_a_point_at_its_distance() -> None:
    """A circle around the middle goes through the places that far away."""
    sky = SkyMap(100.0, 20.0, 4.0)
    x, y = sky.place([100.0], [65.0])
    assert float(np.hypot(x, y)[0]) == pytest.approx(sky.radius(45.0), abs=1e-9)


def test_the_tangent_plane_is_the_standards() -> None:
    """Paper II's TAN, to a millionth of a degree."""
    east, north = np.array([3.0, -8.0, 0.0, 15.0]), np.array([2.0, 5.0, -9.0, -11.0])
    ra, dec = from_tangent(201.7, -47.5, east, north)
    expected = wcs_of("TAN", 201.7, -47.5).wcs_pix2world(np.column_stack([-east, north]), 0)
    np.testing.assert_allclose(np.column_stack([ra % 360, dec]), expected, atol=1e-6)


@pytest.mark.parametrize("rotation_deg", [0.0, 35.0, 180.0, 300.0])
def test_the_field_is_turned_as_the_camera_was(rotation_deg: float) -> None:
    """Its up lies at the given position angle, its left a quarter turn further through east, each half a field away
    (astropy's position angles, to a ten-thousandth of a degree)."""
    target = FinderValues("T", 161.3, -59.9, None, ())
    ra, dec = outline(target, CameraField("c", 3.0, 2.0), rotation_deg)
    edge, middle = SkyCoord(ra, dec, unit="deg"), SkyCoord(161.3, -59.9, unit="deg")
    up, left = edge[12], edge[20]  # halfway along the second side and the third: eight steps a side
    assert np.cos(middle.position_angle(up).rad - np.radians(rotation_deg)) == pytest.approx(1.0, abs=1e-9)
    assert np.cos(middle.position_angle(left).rad - np.radians(rotation_deg + 90)) == pytest.approx(1.0, abs=1e-9)
    assert middle.separation(up).deg == pytest.approx(1.0, abs=1e-4)
    assert middle.separation(left).deg == pytest.approx(1.5, abs=1e-4)
