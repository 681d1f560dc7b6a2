"""What is drawn over a picture, against astropy's own spherical geometry."""

import astropy.units as u
import numpy as np
import pytest
from astropy.coordinates import SkyCoord
from known_headers import TURNS, read, turned

from sitegen.stars.solving.grid import GridLine, compass, grid_lines, scale_bar_px, sky_extent
from sitegen.stars.solving.placing import SkyObject, place_objects
from sitegen.stars.solving.transforms import flipped_left_right, resized


def all_points(line: GridLine) -> np.ndarray:
    return np.array([point for part in line.parts for point in part])


@pytest.mark.parametrize(("angle", "parity"), TURNS)
def test_grid_lines_lie_where_they_say(angle: int, parity: int) -> None:
    """Every point of every line has the line's coordinate; chords of 1/250 of the frame leave under 0.1 px."""
    solution = read(turned(angle, parity))
    for line in grid_lines(solution):
        points = all_points(line)
        ra, dec = solution.to_sky(points[:, 0], points[:, 1])
        off = (ra - line.value_deg) * np.cos(np.radians(dec)) if line.axis == "ra" else dec - line.value_deg
        assert np.abs(off).max() * 3600 / solution.scale_arcsec_px < 0.1


@pytest.mark.parametrize(("angle", "parity"), TURNS)
def test_grid_lines_end_on_the_edges(angle: int, parity: int) -> None:
    """Lines stop at the frame's outer edges: no point beyond, both ends of each part on one (none ends inside here)."""
    solution = read(turned(angle, parity))
    for part in (part for line in grid_lines(solution) for part in line.parts):
        x, y = np.array(part).T
        assert x.min() >= -0.501
        assert y.min() >= -0.501
        assert x.max() <= solution.width_px - 0.499
        assert y.max() <= solution.height_px - 0.499
        for end in (0, -1):
            edges = (x[end] + 0.5, solution.width_px - 0.5 - x[end], y[end] + 0.5, solution.height_px - 0.5 - y[end])
            assert min(edges) == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize(("angle", "parity"), TURNS)
def test_a_circle_has_no_direction(angle: int, parity: int) -> None:
    """Which way a circle's longer axis points is chance; half a turn is none."""
    solution = read(turned(angle, parity))
    (circle,) = place_objects(solution, [SkyObject("round", 210.7, 54.3, 12.0)])
    assert circle.angle_deg == 0.0


@pytest.mark.parametrize("last_bit", [-1e-13, 0.0, 1e-13])
def test_half_a_turn_is_none(last_bit: float) -> None:
    """An outline along the rows is at 0 degrees, on whichever side of it the last bit falls."""
    solution = read(turned(0, -1, 210.8, 0.0) | {"CRPIX1": 1500.5, "CRPIX2": 1000.5})
    (oblong,) = place_objects(solution, [SkyObject("oblong", 210.8, 0.0, 12.0, 4.0, 90.0 + last_bit)])
    assert oblong.angle_deg == 0.0


def test_grid_of_a_degree_has_round_labels() -> None:
    """1 x 0.67 degrees from 14h 00m 26s to 14h 07m 21s and from 53.98 to 54.65: every two minutes of time, ten of arc."""
    labels = [line.label for line in grid_lines(read(turned(0, -1)))]
    assert labels == ["14h 02m", "14h 04m", "14h 06m", "+54° 00′", "+54° 10′", "+54° 20′", "+54° 30′"]


def test_grid_passes_the_first_meridian() -> None:
    """Where right ascension starts again the lines go on, labelled from 23h to 0h."""
    labels = [line.label for line in grid_lines(read(turned(0, -1, 0.0, 0.0))) if line.axis == "ra"]
    assert labels == ["23h 59m", "00h 00m", "00h 01m", "00h 02m"]


def test_grid_around_a_pole_is_spokes_and_rings() -> None:
    """With the pole in the frame the right ascensions go all round and the declinations end at 90."""
    solution = read(turned(25, -1, 40.0, 90.0) | {"LONPOLE": 180.0})
    (ra_low, ra_high), (_, dec_high) = sky_extent(solution)
    assert (ra_high - ra_low, dec_high) == (pytest.approx(360), 90.0)
    lines = grid_lines(solution)
    assert [line.label for line in lines if line.axis == "ra"] == ["00h", "06h", "12h", "18h"]
    assert all(all_points(line).size for line in lines)


@pytest.mark.parametrize("lines_at_most", [3, 6, 12])
@pytest.mark.parametrize("size_px", [100, 3000])
def test_lines_stay_few(lines_at_most: int, size_px: int) -> None:
    """However large the field, there are at most the lines asked for, and at least one of each axis."""
    solution = resized(read(turned(10, 1)), size_px, size_px * 2 // 3).with_frame(3000, 2000)
    for axis in ("ra", "dec"):
        count = sum(line.axis == axis for line in grid_lines(solution, lines_at_most))
        assert 1 <= count <= lines_at_most


@pytest.mark.parametrize(("angle", "parity"), TURNS)
def test_compass_points_along_the_sky(angle: int, parity: int) -> None:
    """North and east arrows are astropy's steps towards position angles 0 and 90, to a hundredth of a degree."""
    solution = read(turned(angle, parity))
    arrows = compass(solution, 500, 300)
    here = SkyCoord(*solution.to_sky(500, 300), unit="deg")
    for arrow, angle_deg in ((arrows.north, 0), (arrows.east, 90)):
        there = here.directional_offset_by(angle_deg * u.deg, 1.2 * u.arcsec)
        x, y = solution.to_pixel(there.ra.deg, there.dec.deg)
        assert np.hypot(x - 500 - arrow[0], y - 300 - arrow[1]) < 2e-3


@pytest.mark.parametrize(("angle", "parity"), TURNS)
def test_an_outline_follows_position_angle_and_size(angle: int, parity: int) -> None:
    """Both ends of both axes of a thin object lie where astropy's offsets put them, within 0.5 px of 500."""
    solution = read(turned(angle, parity))
    thin = SkyObject("thin", 210.5, 54.2, 20.0, 4.0, 37.0)
    (placed,) = place_objects(solution, [thin])
    here = SkyCoord(thin.ra_deg, thin.dec_deg, unit="deg")
    for half_px, half_arcmin, turn in ((placed.semi_major_px, 10, 0), (placed.semi_minor_px, 2, 90)):
        direction = np.radians(placed.angle_deg + turn)
        ends = {(round(placed.x_px + side * half_px * np.cos(direction)), round(placed.y_px + side * half_px * np.sin(direction)))
                for side in (1, -1)}
        for towards in (37.0 + turn, 217.0 + turn):
            there = here.directional_offset_by(towards * u.deg, half_arcmin * u.arcmin)
            x, y = solution.to_pixel(there.ra.deg, there.dec.deg)
            assert min(np.hypot(x - end[0], y - end[1]) for end in ends) < 1.5


def test_outlines_follow_flip_and_resize() -> None:
    """Of the mirrored picture at half the size, the outline is mirrored and half as large."""
    solution = read(turned(10, -1))
    thing = SkyObject("thing", 210.5, 54.2, 20.0, 4.0, 37.0)
    (before,) = place_objects(solution, [thing])
    (after,) = place_objects(resized(flipped_left_right(solution), 1500, 1000), [thing])
    assert after.angle_deg == pytest.approx(180 - before.angle_deg)
    assert after.semi_major_px == pytest.approx(before.semi_major_px / 2)
    assert after.x_px == pytest.approx((2999 - before.x_px + 0.5) / 2 - 0.5)


def test_only_what_can_be_seen_is_placed() -> None:
    """A large object whose middle is outside stays while its outline reaches in; a small one there, and one behind, go."""
    solution = read(turned(0, -1))
    ra, dec = (float(value) for value in solution.to_sky(-300, 1000))
    objects = [SkyObject("large", ra, dec, 20.0), SkyObject("small", ra, dec, 5.0), SkyObject("point", ra, dec),
               SkyObject("behind", 30.8, -54.35, 60.0), SkyObject("star", 210.8, 54.35)]
    placed = place_objects(solution, objects)
    assert [(each.name, each.inside, each.semi_major_px is None) for each in placed] == [
        ("large", False, False), ("star", True, True)]


def test_without_position_angle_an_outline_is_a_circle() -> None:
    """An unknown direction is not made up: the circle of the major axis is drawn."""
    (placed,) = place_objects(read(turned(0, -1)), [SkyObject("round", 210.8, 54.35, 12.0, 3.0, None)])
    assert placed.semi_minor_px == pytest.approx(placed.semi_major_px, rel=1e-6)
    assert placed.semi_major_px == pytest.approx(6 * 60 / 1.2, rel=1e-5)


def test_scale_bar() -> None:
    """Ten arcminutes at 1.2 arcsec a pixel are 500 pixels."""
    assert scale_bar_px(read(turned(77, 1)), 10) == pytest.approx(500, rel=1e-4)
