"""Headers of instruments and surveys that astropy and photutils ship, card by card against astropy's own parser."""

from datetime import UTC, datetime
from pathlib import Path

import astropy
import photutils
import pytest
from astropy.io import fits

from sitegen.reading.capture_logs.fits_header import read_header
from sitegen.reading.capture_logs.log_problems import ValueProblem

ASTROPY, PHOTUTILS = Path(astropy.__file__).parent, Path(photutils.__file__).parent
SHIPPED = sorted(
    path
    for top in (ASTROPY, PHOTUTILS)
    for path in top.rglob("*.fit*")
    if path.name.endswith((".fits", ".fits.gz")) and "invalid" not in path.parts
)
# A text file of another program, whatever its name.
NOT_BY_THEIR_OWN_WORDS = {"header_with_time.fits", "header_with_time_wcslib71.fits"}  # SIMPLE = F
NOT_FITS = {"idcompspec.fits"}


def cards_by_astropy(path: Path) -> dict[str, object]:
    """The first card of each keyword of the first unit, without what has no value."""
    with fits.open(path, disable_image_compression=True, ignore_missing_simple=True) as units:
        header = units[0].header
        found: dict[str, object] = {}
        for card in header.cards:
            if card.keyword in found or len(card.keyword) > 8 or card.keyword in ("", "COMMENT", "HISTORY", "CONTINUE"):
                continue
            try:
                found[card.keyword] = card.value
            except fits.VerifyError:
                found[card.keyword] = None
        return found


def test_the_packages_still_ship_their_files():
    """So that the comparison below compares something."""
    assert len(SHIPPED) > 40


@pytest.mark.filterwarnings("ignore::astropy.io.fits.verify.VerifyWarning", "ignore::astropy.utils.exceptions.AstropyUserWarning")
@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.name)
def test_cards_agree_with_astropy(path):
    """Every string, number and logical of the first header."""
    if path.name in NOT_FITS:
        with pytest.raises(ValueProblem, match="is not FITS"):
            read_header(path)
        return
    if path.name in NOT_BY_THEIR_OWN_WORDS:
        with pytest.raises(ValueProblem, match="does not say SIMPLE = T"):
            read_header(path)
        return
    header = read_header(path)
    first = header.first_unit or header
    compared = 0
    for keyword, value in cards_by_astropy(path).items():
        told = first.value(keyword.encode().ljust(8))
        if isinstance(value, bool):
            assert told is value, keyword
        elif isinstance(value, int | float):
            assert told == pytest.approx(value, rel=1e-12), keyword
        elif isinstance(value, str) and "&" not in value and len(value) < 60:
            assert told == value.rstrip(), keyword
        else:
            continue
        compared += 1
    assert compared >= 3


def test_an_amateur_cameras_header(read):
    """sip-wcs.fits: its date, exposure, filter and temperature, and not its observer's place."""
    path = ASTROPY / "nddata/tests/data/sip-wcs.fits"
    reading = read("a.fits", path.read_bytes(), rig=None)
    header = fits.getheader(path)
    (sub,) = reading.subs
    assert sub.start.replace(tzinfo=None).isoformat() == header["DATE-OBS"].strip()
    assert (sub.exposure_s, sub.filter, sub.sensor_c) == (header["EXPTIME"], header["FILTER"].strip(), header["CCD-TEMP"])
    assert reading.header_targets == ()
    private = [text for keyword in ("SITELAT", "SITELONG", "OBSERVER") if (text := str(header.get(keyword, "")).strip())]
    assert private
    assert not [text for text in private if text in repr(reading)]


@pytest.mark.parametrize("name", ["m13", "m13_gzip", "m13_rice", "m13_hcomp", "m13_plio"])
def test_compressed_variants_tell_the_same(name):
    """The tile-compressed variants of one frame, whose real header stands in the second unit."""
    folder = ASTROPY / "io/fits/hdu/compressed/tests/data"
    header, plain = read_header(folder / f"{name}.fits"), fits.getheader(folder / "m13.fits")
    for keyword in ("CRVAL1", "CRPIX2", "CTYPE1", "OBJECT"):
        if keyword in plain:
            assert header.value(keyword.encode().ljust(8)) == plain[keyword]
    assert "CTYPE1" in plain


def test_an_old_plate(read):
    """A survey plate with the date form of its time, 11/03/76, and a separate UT card: readable, and worth a word."""
    path = ASTROPY / "wcs/tests/data/dss.14.29.56-62.41.05.fits.gz"
    reading = read("a.fits.gz", path.read_bytes(), rig=None)
    assert [sub.start for sub in reading.subs] == [datetime(1976, 3, 11, 17, 38, tzinfo=UTC)]
    assert [problem.wrong for problem in reading.problems] == ["starts in 1976, before 1990"]
