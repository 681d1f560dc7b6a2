"""AVM: 12 angles and both parities, with pyavm (its to_wcs; from_wcs is wrong by degrees) as the independent reader."""

import numpy as np
import pytest
from astropy.coordinates import SkyCoord
from astropy.wcs import WCS
from known_headers import TURNS, frame_points, read, turned, whole_sip_frame
from msgspec.structs import replace
from pyavm import AVM

from sitegen.stars.solving.avm import avm_spatial, from_avm, straight
from sitegen.stars.solving.distortion import Distortion
from sitegen.stars.solving.solution import NotSolved, Solution
from sitegen.stars.solving.transforms import resized


def through_pyavm(keywords: dict[str, object], x: np.ndarray, y: np.ndarray, height_px: int) -> SkyCoord:
    """Sky places of picture pixels as pyavm reads them: it counts rows from the bottom."""
    avm = AVM()
    for key, value in keywords.items():
        setattr(avm.Spatial, key.removeprefix("Spatial."), value)
    return avm.to_wcs().pixel_to_world(x, height_px - 1 - y)


@pytest.mark.parametrize(("angle", "parity"), TURNS)
def test_an_independent_reader_finds_every_place(angle: int, parity: int) -> None:
    """pyavm reads each keyword set as the solution's own sky, to a few hundredths of this picture's pixels of 1.2 arcsec: what
    the numbers' last digits leave."""
    solution = read(turned(angle, parity))
    x, y = frame_points(solution)
    read_back = through_pyavm(avm_spatial(solution, 3000, 2000), x, y, 2000)
    assert SkyCoord(*solution.to_sky(x, y), unit="deg").separation(read_back).arcsec.max() < 0.01


@pytest.mark.parametrize(("angle", "parity"), TURNS)
def test_round_trip_at_another_size(angle: int, parity: int) -> None:
    """Written for a picture half as large, and read for one of a quarter: still the same places."""
    solution = read(turned(angle, parity))
    again = from_avm(avm_spatial(solution, 1500, 1000), 750, 500)
    assert isinstance(again, Solution)
    small = resized(solution, 750, 500)
    x, y = frame_points(small)
    assert SkyCoord(*again.to_sky(x, y), unit="deg").separation(SkyCoord(*small.to_sky(x, y), unit="deg")).arcsec.max() < 0.01
    assert (again.width_px, again.height_px, again.mirrored) == (750, 500, solution.mirrored)


@pytest.mark.parametrize(("angle", "parity"), TURNS)
def test_packets_of_another_writer_are_read_with_their_signs(angle: int, parity: int) -> None:
    """pyavm writes CDELT and CROTA2 (Calabretta & Greisen 2002, section 6.2), whose signs may be any two; astropy.wcs, from which
    it wrote them, tells each place. To 0.01 arcsec: its numbers are floats that went through no text."""
    wcs = WCS(turned(angle, parity))
    written = AVM.from_wcs(wcs, shape=(2000, 3000)).Spatial
    keywords = {f"Spatial.{name}": getattr(written, name) for name in
                ("ReferenceValue", "ReferencePixel", "ReferenceDimension", "Scale", "Rotation")}
    assert written.CDMatrix is None
    solution = from_avm({key: list(value) if isinstance(value, tuple) else value for key, value in keywords.items()}, 3000, 2000)
    assert isinstance(solution, Solution)
    x, y = frame_points(solution)
    there = wcs.pixel_to_world(x, 1999 - y)
    assert SkyCoord(*solution.to_sky(x, y), unit="deg").separation(there).arcsec.max() < 0.01


def test_the_half_turn_of_the_signs_is_kept() -> None:
    """Scale [+, -] with Rotation 143 is [-, +] with 323: the case that was read upside down."""
    plain = avm_spatial(read(turned(10, -1)), 3000, 2000) | {"Spatial.Rotation": 323.0}
    half = plain | {"Spatial.Scale": [-value for value in plain["Spatial.Scale"]], "Spatial.Rotation": 143.0}
    one, other = from_avm(plain, 3000, 2000), from_avm(half, 3000, 2000)
    assert np.allclose(one.to_sky([0, 2999], [0, 1999]), other.to_sky([0, 2999], [0, 1999]), rtol=0, atol=1e-9)


@pytest.mark.parametrize(("parity", "has_matrix"), [(-1, False), (1, True)])
def test_scale_and_rotation_suffice_where_they_can(parity: int, has_matrix: bool) -> None:
    """The deprecated CDMatrix is only given where Scale and Rotation cannot say that a picture is mirrored."""
    assert ("Spatial.CDMatrix" in avm_spatial(read(turned(30, parity)), 3000, 2000)) is has_matrix


@pytest.mark.parametrize(("angle", "parity"), TURNS)
def test_no_number_has_more_digits_than_it_means(angle: int, parity: int) -> None:
    """A last bit of a processor's arithmetic is not written: places to 1e-6 degrees, pixels to 1e-3, scales to 7 digits."""
    keywords = avm_spatial(read(turned(angle, parity)), 3000, 2000)
    written = [value for values in keywords.values() if isinstance(values, list) for value in values]
    assert max(len(f"{abs(value):.16g}".lstrip("0.").replace(".", "")) for value in written) <= 9
    assert keywords["Spatial.Rotation"] == round(float(str(keywords["Spatial.Rotation"])), 5)


def test_rotation_of_north_up_is_nought() -> None:
    """A picture with north up and east left: Rotation 0, Scale negative then positive, rows counted from below."""
    header = turned(180, -1)
    keywords = avm_spatial(read(header), 3000, 2000)
    assert np.sin(np.radians(keywords["Spatial.Rotation"] / 2)) == pytest.approx(0, abs=1e-12)
    assert keywords["Spatial.Scale"] == pytest.approx([-1.2 / 3600, 1.2 / 3600])
    assert keywords["Spatial.ReferencePixel"] == pytest.approx([header["CRPIX1"], 2000 - header["CRPIX2"] + 1])


def test_a_bent_solution_becomes_the_nearest_straight_one() -> None:
    """AVM knows no distortion: over a real SIP frame what is left is clearly less than by dropping it."""
    bent = read(whole_sip_frame())
    x, y = frame_points(bent)
    errors = []
    for solution in (straight(bent), replace(bent, distortion=None)):
        there = solution.to_pixel(*bent.to_sky(x, y))
        errors.append(np.hypot(there[0] - x, there[1] - y).max())
    assert errors[0] < errors[1] * 0.75
    assert straight(bent).distortion is None


def test_quality_says_whether_the_corners_are_right() -> None:
    """AVM 1.2, Spatial.Quality: Full, or Position where only the middle can be relied on. A fitted solution that is unsure of its
    corners says so, and one so bent that the straight terms miss them by more than a pixel (the limit of narrow fields)."""
    plain = read(turned(30, -1))
    solutions = [replace(plain, corner_arcsec=arcsec) for arcsec in (None, 1.0, 2.0)]  # a pixel, as looked at, is 1.5 arcsec
    qualities = [avm_spatial(solution, 3000, 2000)["Spatial.Quality"] for solution in solutions]
    assert qualities == ["Full", "Full", "Position"]
    middle = 1500 - plain.reference_x_px, 1000 - plain.reference_y_px
    for share, quality in ((1e-10, "Full"), (1e-8, "Position")):  # of the distance cubed: 0.6 px and 58 px in the corner
        around = (middle[0] - 1500, middle[0] + 1500, middle[1] - 1000, middle[1] + 1000)
        lens = Distortion(((1, 2, share), (3, 0, share)), ((0, 3, share), (2, 1, share)), around)
        assert avm_spatial(replace(plain, distortion=lens), 3000, 2000)["Spatial.Quality"] == quality


def test_values_may_be_text() -> None:
    """XMP holds text; numbers in it are numbers."""
    written = avm_spatial(read(turned(30, 1)), 3000, 2000)
    as_text = {key: [repr(part) for part in value] if isinstance(value, list) else str(value) for key, value in written.items()}
    assert from_avm(as_text, 3000, 2000) == from_avm(written, 3000, 2000)


@pytest.mark.parametrize(("change", "reason"), [
    ({"Spatial.ReferenceValue": None}, "the picture carries no place in AVM (Spatial.ReferenceValue)"),
    ({"Spatial.ReferencePixel": None}, "AVM's Spatial.ReferencePixel is not 2 numbers: None"),
    ({"Spatial.Scale": [0.0, 0.0], "Spatial.CDMatrix": None}, "AVM's scale is zero along one direction"),
    ({"Spatial.Rotation": "left", "Spatial.CDMatrix": None}, "AVM's Spatial.Rotation is not a number: left"),
    ({"Spatial.CoordinateFrame": "GAL"}, "AVM's places are in GAL; ICRS and FK5 are read"),
    ({"Spatial.CoordsystemProjection": "CAR"}, "AVM's projection CAR is not read; TAN is"),
    ({"Spatial.CoordinateFrame": "FK5", "Spatial.Equinox": "B1950"}, "AVM's equinox is B1950; 2000 is read"),
    ({"Spatial.ReferenceDimension": [3000, 3000]},
     "AVM describes a picture of 3000 x 3000, not of this one's shape, 3000 x 2000"),
    ({"Spatial.ReferenceDimension": [0, 0]}, "AVM's Spatial.ReferenceDimension is not a size: 0 x 0"),
])
def test_what_avm_cannot_say_is_said(change: dict[str, object], reason: str) -> None:
    """Keywords that give no usable place are refused with the reason."""
    assert from_avm(avm_spatial(read(turned(10, 1)), 3000, 2000) | change, 3000, 2000) == NotSolved(reason)
