"""ECSV tables written by astropy, which owns the format: units, delimiters, masks, quotes."""

from datetime import UTC, datetime

import astropy.units as u
import numpy as np
import pytest
from astropy.table import MaskedColumn, QTable, Table
from astropy.time import Time

START = datetime(2026, 4, 18, 21, tzinfo=UTC)


def lines_of(reading):
    return [str(problem) for problem in reading.problems]


@pytest.mark.parametrize("delimiter", [" ", ","])
def test_a_table_by_astropy_comes_back(read, tmp_path, delimiter):
    """Both delimiters of the format; quoted text; masked cells are unknown; booleans are words."""
    table = Table(
        {
            "start": ["2026-04-18T21:00:00Z", "2026-04-18T21:06:00Z"],
            "exposure_s": [300, 300],
            "filter": ["Ha", "OIII"],
            "kept": [True, False],
            "reason": ["", 'cloud, "thin" one'],
            "gain": MaskedColumn([100, 0], mask=[False, True]),
            "fwhm_arcsec": [2.5, np.nan],
        },
        meta={"comment": "two rows"},
    )
    table.write(tmp_path / "a.ecsv", format="ascii.ecsv", delimiter=delimiter)
    reading = read("a.ecsv")
    assert reading.problems == ()
    assert [(sub.filter, sub.kept, sub.reason, sub.gain, sub.fwhm_arcsec) for sub in reading.subs] == [
        ("Ha", True, None, 100.0, 2.5),
        ("OIII", False, 'cloud, "thin" one', None, None),
    ]
    assert reading.subs[0].start == START


def test_units_of_the_head_are_obeyed(read, tmp_path):
    """Minutes, arcminutes and kelvin, as astropy declares them, judged by astropy's own conversion."""
    table = QTable({"start": ["2026-04-18T21:00:00Z"], "filter": ["L"]})
    table["exposure_s"] = [5] * u.min
    table["gap_s"] = [0.25] * u.hour
    table["fwhm_arcsec"] = [0.04] * u.arcmin
    table["sensor_c"] = [263.15] * u.K
    table.write(tmp_path / "a.ecsv", format="ascii.ecsv")
    reading = read("a.ecsv")
    assert reading.problems == ()
    (sub,) = reading.subs
    assert sub.exposure_s == pytest.approx(table["exposure_s"].to_value(u.s)[0], abs=1e-9)
    assert sub.fwhm_arcsec == pytest.approx(table["fwhm_arcsec"].to_value(u.arcsec)[0], abs=1e-9)
    assert sub.sensor_c == pytest.approx(table["sensor_c"].to_value(u.deg_C, u.temperature())[0], abs=1e-9)


def test_times_of_astropy_are_read(read, tmp_path):
    """A Time column is written as ISO text in UTC."""
    table = QTable({"start": Time(["2026-04-18T21:00:00"]), "exposure_s": [60.0], "filter": ["L"]})
    table.write(tmp_path / "a.ecsv", format="ascii.ecsv")
    assert [sub.start for sub in read("a.ecsv").subs] == [START]


HEAD = (
    "# %ECSV 1.0\n# ---\n# datatype:\n# - {{name: start, datatype: string}}\n"
    "# - {{name: fwhm_arcsec, unit: {unit}, datatype: float64}}\n"
)


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            HEAD.format(unit="pix") + "start exposure_s filter fwhm_arcsec\n2026-04-18T21:00:00Z 60 L 3.1\n",
            "logs/a.ecsv:6:25: error: the column 'fwhm_arcsec' is in 'pix'; known: arcmin, arcsec, arcsecond, deg, degree, "
             "mas, ″",
        ),
        ("start,exposure_s\n", "logs/a.ecsv:1:1: error: does not begin as ECSV does; let its first line be '# %ECSV 1.0', "
         "or call it .csv"),
        ("# %ECSV 1.0\n# ---\n# {a: [\n", "logs/a.ecsv:4:3: error: the head is not YAML; "
         "let the program that wrote it write it again"),
        (
            "# %ECSV 1.0\n# ---\n# delimiter: ';'\nstart;exposure_s\n",
            "logs/a.ecsv:3:14: error: the delimiter is ';'; ECSV knows the comma and the blank",
        ),
        ("# %ECSV 1.0\n# ---\n", "logs/a.ecsv:1:1: error: is empty; begin it with a line of headings: start,exposure_s,filter"),
        (
            "# %ECSV 1.0\n# ---\n" + "# a: b\n" * 30_000,
            "logs/a.ecsv:2:1: error: the head is longer than 100,000 characters; leave out what is no column",
        ),
        (
            "# %ECSV 1.0\n# ---\n# " + "{a: " * 20_000 + "\n",
            "logs/a.ecsv:3:4003: error: the head is not YAML; let the program that wrote it write it again",
        ),
    ],
    ids=["unit", "no head", "yaml", "delimiter", "empty", "long head", "deep head"],
)
def test_mistakes_of_the_head(read, text, wanted):
    """Each at its place in the file."""
    assert lines_of(read("a.ecsv", text)) == [wanted]


def test_a_cell_of_a_blank_separated_table_is_pointed_at(read):
    """Also behind a quoted cell with blanks in it."""
    text = '# %ECSV 1.0\n# ---\nnote start exposure_s filter\n"a b c" 2026-04-18T21:00:00Z x L\n'
    assert [(problem.line, problem.column) for problem in read("a.ecsv", text).problems] == [(4, 30)]
