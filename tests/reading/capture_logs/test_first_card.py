"""The first card of a FITS unit says what the file is (FITS Standard 4.0, sections 4.4.1.1 and 4.4.1.2)."""

from pathlib import Path

import pytest

from sitegen.reading.capture_logs.fits_header import read_header
from sitegen.reading.capture_logs.log_problems import ValueProblem

NO_FITS = r"^does not say SIMPLE = T, so it is no FITS file by its own words$"


def unit(*cards: str) -> bytes:
    text = "".join(f"{card:80}" for card in (*cards, "END"))
    return (text + " " * (-len(text) % 2880)).encode("ascii")


def image(first: str) -> bytes:
    return unit(first, "BITPIX  = 16", "NAXIS   = 0", "DATE-OBS= '2026-04-18T21:03:12'", "EXPTIME = 300.0")


@pytest.mark.parametrize("first", ["SIMPLE  =                    T", "SIMPLE  = T / fits", "SIMPLE  =T"])
def test_a_file_that_says_it_is_fits(tmp_path: Path, first: str) -> None:
    """In column 30, as the standard has it, or anywhere else, as some write it."""
    (tmp_path / "frame.fits").write_bytes(image(first))
    assert read_header(tmp_path / "frame.fits").number(b"EXPTIME ") == 300.0


@pytest.mark.parametrize("first", ["SIMPLE  =                    F", "SIMPLE", "SIMPLE  = 'T'", "SIMPLE  = 1", "SIMPLE    T"])
def test_a_file_that_says_it_is_not(tmp_path: Path, first: str) -> None:
    """F means that the file departs from the standard; anything else means that it is something else."""
    (tmp_path / "frame.fits").write_bytes(image(first))
    with pytest.raises(ValueProblem, match=NO_FITS):
        read_header(tmp_path / "frame.fits")


@pytest.mark.parametrize(("second", "seconds"), [("XTENSION= 'IMAGE   '", 60.0), ("XTENSION= T", None), ("XTENSION", None)])
def test_the_second_unit_names_its_kind(tmp_path: Path, second: str, seconds: float | None) -> None:
    """One without a name is no extension, and the first unit is all there is."""
    first = unit("SIMPLE  =                    T", "BITPIX  = 8", "NAXIS   = 0", "EXTEND  =                    T")
    (tmp_path / "frame.fits").write_bytes(first + unit(second, "BITPIX  = 16", "NAXIS   = 0", "EXPTIME = 60.0"))
    assert read_header(tmp_path / "frame.fits").number(b"EXPTIME ") == seconds
