"""Solution: its two ways, and the terms of the field, against astropy.wcs (WCSLIB) as the independent authority."""

import numpy as np
import pytest
from astropy.coordinates import SkyCoord
from astropy.io import fits
from astropy.wcs import WCS
from known_headers import TURNS, frame_points, read, turned, whole_sip_frame

from sitegen.stars.solving.headers import from_header_keywords
from sitegen.stars.solving.solution import NotSolved
from tests.written_header import as_header


@pytest.mark.parametrize(("angle", "parity"), TURNS)
def test_pixels_and_sky_agree_with_wcslib(angle: int, parity: int) -> None:
    """Both ways agree with WCSLIB at all turns and parities to a millionth of an arcsecond and of a pixel (rounding)."""
    header = turned(angle, parity)
    solution, wcs = read(header), WCS(fits.Header(header))
    x, y = frame_points(solution)
    ra, dec = solution.to_sky(x, y)
    expected = wcs.pixel_to_world(x, y)
    assert SkyCoord(ra, dec, unit="deg").separation(expected).arcsec.max() < 1e-6
    back = solution.to_pixel(ra, dec)
    assert np.hypot(back[0] - x, back[1] - y).max() < 1e-6


@pytest.mark.parametrize("dec_deg", [-89.99, 0.0, 89.99])
@pytest.mark.parametrize("ra_deg", [0.0, 359.999])
def test_pixels_and_sky_agree_with_wcslib_near_poles_and_meridian(ra_deg: float, dec_deg: float) -> None:
    """The same holds beside either pole and where right ascension starts again."""
    header = turned(70, 1, ra_deg, dec_deg)
    solution, wcs = read(header), WCS(fits.Header(header))
    x, y = frame_points(solution)
    ra, dec = solution.to_sky(x, y)
    assert SkyCoord(ra, dec, unit="deg").separation(wcs.pixel_to_world(x, y)).arcsec.max() < 1e-6


def test_sip_agrees_with_wcslib_on_an_amateur_frame() -> None:
    """Distortion of a real SIP header (astropy's sip-wcs.fits) agrees with WCSLIB, which inverts by iteration too."""
    header = whole_sip_frame()
    solution, wcs = read(header), WCS(header)
    x, y = frame_points(solution)
    ra, dec = solution.to_sky(x, y)
    expected = wcs.all_pix2world(x, y, 0)
    assert SkyCoord(ra, dec, unit="deg").separation(SkyCoord(*expected, unit="deg")).arcsec.max() < 1e-5
    back = solution.to_pixel(ra, dec)
    assert np.hypot(back[0] - x, back[1] - y).max() < 1e-5


def test_sip_bends_in_the_amateur_frame() -> None:
    """The SIP frame would be visibly wrong without its distortion, so the agreement above is no accident."""
    header = whole_sip_frame()
    solution = read(header)
    straight = WCS(header).wcs_pix2world(0, 0, 0)
    ra, dec = solution.to_sky(0, 0)
    assert SkyCoord(ra, dec, unit="deg").separation(SkyCoord(*straight, unit="deg")).arcsec > 1


@pytest.mark.parametrize(("angle", "parity"), TURNS)
def test_rotation_is_the_position_angle_of_up(angle: int, parity: int) -> None:
    """rotation_deg is what astropy's position_angle says of a step up from the middle; 1e-6 deg for the step's rounding."""
    solution = read(turned(angle, parity))
    x, y = solution.centre_px
    here, above = (SkyCoord(*solution.to_sky(x, row), unit="deg") for row in (y, y - 1))
    difference = (here.position_angle(above).deg - solution.rotation_deg + 180) % 360 - 180
    assert difference == pytest.approx(0, abs=1e-3)


@pytest.mark.parametrize(("parity", "mirrored"), [(-1, False), (1, True)])
def test_parity_of_the_array_is_told(parity: int, mirrored: bool) -> None:
    """A FITS array of the sky as seen is mirrored when its first row is shown on top, and the other way round."""
    assert read(turned(20, parity)).mirrored is mirrored


def test_scale_and_field_are_those_of_the_header() -> None:
    """1.2 arcsec a pixel over 3000 x 2000 pixels: 1.0000 x 0.6667 degrees, less the plane's stretch of 2e-5."""
    solution = read(turned(33, 1))
    assert solution.scale_arcsec_px == pytest.approx(1.2, rel=1e-4)
    assert solution.field_deg == pytest.approx((1.0, 2 / 3), rel=1e-4)


def test_places_behind_are_nowhere() -> None:
    """The other side of the sky has no pixel."""
    assert np.isnan(read(turned(0, 1)).to_pixel(30.8, -54.35)).all()


@pytest.mark.parametrize("source", [turned(40, 1), turned(220, -1), whole_sip_frame()])
def test_a_header_comes_back_as_it_was_written(source: dict[str, object] | fits.Header) -> None:
    """as_header gives a header that WCSLIB and from_header_keywords read as the same places."""
    solution = read(source)
    written = as_header(solution)
    x, y = frame_points(solution)
    ra, dec = solution.to_sky(x, y)
    again = read(written).to_sky(x, y)
    assert np.array_equal(again, (ra, dec))
    by_wcslib = WCS(fits.Header(written)).all_pix2world(x, y, 0)
    assert SkyCoord(ra, dec, unit="deg").separation(SkyCoord(*by_wcslib, unit="deg")).arcsec.max() < 1e-5


def test_pc_with_cdelt_is_read_as_wcslib_reads_it() -> None:
    """PC times CDELT, the third way to state a scale."""
    header = turned(0, 1) | {"PC1_1": 0.8, "PC1_2": -0.6, "PC2_1": 0.6, "PC2_2": 0.8}
    del header["CROTA2"]
    solution = read(header)
    ra, dec = solution.to_sky(17, 1900)
    assert SkyCoord(ra, dec, unit="deg").separation(WCS(fits.Header(header)).pixel_to_world(17, 1900)).arcsec < 1e-6


@pytest.mark.parametrize(("change", "reason"), [
    ({"CTYPE1": None, "CTYPE2": None}, "the header has no CTYPE1 and CTYPE2, so no place on the sky"),
    ({"CTYPE1": "RA---SIN", "CTYPE2": "DEC--SIN"},
     "the projection RA---SIN and DEC--SIN is not read; RA---TAN and DEC--TAN, with -SIP or not, are"),
    ({"PV1_1": 1.0}, "the header bends TAN by PV keywords, which are not read"),
    ({"RADESYS": "FK4"}, "the header's places are in FK4; ICRS and FK5 are read"),
    ({"EQUINOX": 1950.0}, "the header's equinox is 1950; 2000 is read"),
    ({"CRPIX1": None}, "the header's CRPIX1 is missing"),
    ({"CRVAL2": "north"}, "the header's CRVAL2 is not a number: north"),
    ({"EQUINOX": "old"}, "the header's EQUINOX is not a number: old"),
    ({"CUNIT1": "arcsec", "CUNIT2": "arcsec"}, "the header's units are arcsec; deg is read"),
    ({"LONPOLE": 90.0}, "the header turns its plane by LONPOLE 90; 180 is read"),
    ({"CRVAL2": 90.0}, "the header turns its plane by LONPOLE 0; 180 is read"),
    ({"CDELT1": 0.0}, "the scale in the header (CD, or PC and CDELT) is zero along one direction"),
])
def test_what_a_header_cannot_say_is_said(change: dict[str, object], reason: str) -> None:
    """A header that gives no usable place is refused with the reason, never read halfway."""
    header = {key: value for key, value in (turned(10, 1) | change).items() if value is not None}
    assert from_header_keywords(header) == NotSolved(reason)


@pytest.mark.parametrize("dec_deg", [-90.0, 90.0])
def test_a_stated_turn_of_the_plane_is_read_at_the_poles(dec_deg: float) -> None:
    """LONPOLE 180, stated, means the same to WCSLIB and to us, at the very poles too."""
    header = turned(10, 1, 40.0, dec_deg) | {"LONPOLE": 180.0, "CUNIT1": "deg", "CUNIT2": "deg"}
    ra, dec = read(header).to_sky(100, 200)
    assert SkyCoord(ra, dec, unit="deg").separation(WCS(fits.Header(header)).pixel_to_world(100, 200)).arcsec < 1e-6
