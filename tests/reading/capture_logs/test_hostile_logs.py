"""Logs made to exhaust a reader: each ends in a problem line, with bounded work whatever the file claims.

No clock is watched here (tests/bench does that); what is watched is how much was read, unpacked or told.
"""

import gzip
import io
import zlib

import pytest

from sitegen.reading.capture_logs import exif_tags, fits_header
from sitegen.reading.capture_logs.gzip_bytes import unpacking
from sitegen.reading.capture_logs.log_problems import MOST_PROBLEMS

HEAD = "start,exposure_s,filter\n"


def test_a_line_of_100_mb_is_not_even_read(read, tmp_path):
    """The file is refused by its size."""
    with (tmp_path / "a.csv").open("wb") as file:
        file.truncate(100_000_000)
    assert [problem.wrong for problem in read("a.csv").problems] == ["is larger than 16 MB"]


def test_rows_without_end_are_not_all_read(read):
    """Reading stops soon after the most frames that a log may hold."""
    rows = "2026-04-18T21:00:00Z,60,L\n" * 100_002
    assert [problem.wrong for problem in read("a.csv", HEAD + rows).problems] == ["holds more than 100000 frames"]


def test_as_many_different_mistakes_as_rows(read):
    """Two hundred are told, the others counted."""
    rows = "".join(f"2026-04-18T21:00:00Z,60,x{number}\n" for number in range(5000))
    problems = read("a.csv", HEAD + rows).problems
    assert len(problems) == MOST_PROBLEMS + 1
    assert problems[-1].wrong == "4800 more errors like these follow"


def test_warnings_without_end_stay_warnings(read):
    """A log that was never wrong does not become so by its length."""
    problems = read("a.csv", "kepa," * 490 + "start,exposure_s\n", rig=None).problems
    assert {problem.severity for problem in problems} == {"warning"}
    assert problems[-1].wrong == "290 more warnings like these follow"


def test_a_heading_line_of_thousands_of_cells(read):
    """Is refused before anything is compared."""
    (problem,) = read("a.csv", ",".join(["kep"] * 20_000)).problems
    assert (problem.wrong, problem.remedy) == ("the heading line has 20000 cells", "a table has at most 500 columns")


def test_a_gzip_bomb_is_unpacked_as_far_as_a_header_goes(read):
    """A gigabyte of nothing behind a megabyte: only what a header may hold is ever unpacked."""
    packer = zlib.compressobj(9, wbits=31)
    first = b"SIMPLE  =                    T".ljust(80)
    bomb = packer.compress(first + b" " * (2880 - 80)) + packer.compress(b" " * 50_000_000) + packer.flush()
    assert len(bomb) < 60_000
    (problem,) = read("a.fits.gz", bomb).problems
    assert problem.wrong == "has no END card in its first 500 blocks"
    tap = unpacking(io.BytesIO(b"").read, bomb)
    assert max(len(tap(1000)) for _ in range(100)) <= 1000


def test_a_header_without_end_is_read_as_far_as_500_blocks(read, monkeypatch):
    """However long the file."""
    asked, really = [], fits_header.os.read
    monkeypatch.setattr(fits_header.os, "read", lambda opened, count: asked.append(count) or really(opened, count))
    read("a.fits", b"SIMPLE  =                    T".ljust(80) + b" " * 4_000_000)
    assert sum(asked) <= 503 * fits_header.BLOCK


@pytest.mark.parametrize("claim", [b"\xff\xff\xff\xff", b"\xff\xff\xff\x7f"])
def test_exif_that_claims_gigabytes(read, claim):
    """A text of four billion characters is read as far as the file goes."""
    entry = b"\x0f\x01\x02\x00" + claim + b"\x08\x00\x00\x00"
    assert read("a.tif", b"II*\0\x08\0\0\0\x01\0" + entry + b"\0" * 4000).problems


def test_exif_in_circles_is_left(read, monkeypatch):
    """Thousands of tags with thousands of values each: the reading stops at its allowance."""
    counted = []
    really = exif_tags._LimitedReader.read
    monkeypatch.setattr(exif_tags._LimitedReader, "read", lambda self, count=-1: counted.append(1) or really(self, count))
    entry = b"\x03\x90\x05\x00\xe7\x03\x00\x00\x08\x00\x00\x00"
    (problem,) = read("a.tif", b"II*\0\x08\0\0\0\xff\xff" + entry * 65_535).problems
    assert problem.wrong == "its EXIF is damaged"
    assert len(counted) <= exif_tags.MOST_READS + 1


def test_a_gzip_of_something_else(read):
    """Packed nonsense is no FITS either."""
    assert [problem.wrong for problem in read("a.fits.gz", gzip.compress(b"x" * 9000)).problems] == ["is not FITS"]
