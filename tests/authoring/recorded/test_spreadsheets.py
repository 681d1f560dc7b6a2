"""Spreadsheets: .xlsx written by openpyxl, .ods by odfpy (build_ods.py); values as they are kept, whatever they look like."""

import sys
import zipfile
from datetime import date, datetime, time
from pathlib import Path

import openpyxl
import pytest

from sitegen.authoring.recorded import spreadsheet
from sitegen.authoring.recorded.shapes import ShapeMemory
from sitegen.authoring.recorded.spreadsheet import HOW_TO_GET, read_spreadsheet
from sitegen.authoring.recorded.table_by_example import RecordedReading, read_table_by_example
from sitegen.reading.capture_logs.log_problems import LogProblems
from sitegen.reading.capture_logs.request import LogRequest
from tests.authoring.conftest import TODAY

FILES = Path(__file__).parent / "files"
SECOND = datetime(2026, 5, 1, 21, 3, 12)  # noqa: DTZ001 - a cell has no zone
NIGHT = [("18 21:36:00", 300.5, "Ha"), ("18 21:41:00", 300.5, "Ha"), ("18 23:50:00", 300, "OIII"), ("19 00:10:00", 300, "OIII")]


def read(path: Path) -> RecordedReading:
    request = LogRequest(path, path.name, path.name, None, None, None, None, None, (path.name, 1, 1), TODAY)
    return read_table_by_example(request, {}, ShapeMemory(None))


def told(reading: RecordedReading) -> list[tuple[str, float, str | None]]:
    return [(f"{sub.start:%d %H:%M:%S}", sub.exposure_s, sub.filter) for sub in reading.subs]


@pytest.fixture
def workbook(tmp_path: Path) -> Path:
    """Merged dates, clock cells, a sum row, and a second sheet with a date and time in one cell."""
    book = openpyxl.Workbook()
    sheet = book.active
    for row in (["Datum", "Beginn", "Filter", "Belichtung (s)", "Anzahl"],
                [date(2026, 4, 18), time(21, 36), "Ha", 300.5, 2],
                [None, time(23, 50), "OIII", 300, 1],
                [None, time(0, 10), "OIII", 300, 1], ["Summe", None, None, None, 4]):  # fmt: skip
        sheet.append(row)
    sheet.merge_cells("A2:A4")
    second = book.create_sheet("May")
    second.append(["Start", "Exposure", "Filter"])
    second.append([SECOND, 120, "L"])
    path = tmp_path / "night.xlsx"
    book.save(path)
    return path


def test_a_workbook_with_two_sheets(workbook: Path) -> None:
    """The hour after midnight is of the next day; a second that is kept as 0.99999 of itself is whole."""
    reading = read(workbook)
    assert reading.problems == ()
    assert told(reading) == [*NIGHT, ("01 21:03:12", 120, "L")]
    assert "1 sum row left out (line 5)" in reading.told


def test_an_open_document(tmp_path: Path) -> None:
    """Covered and repeated cells, decimals with commas only in their looks, a million empty rows below."""
    reading = read(FILES / "night.ods")
    assert reading.problems == ()
    assert told(reading) == NIGHT


def test_without_the_library_a_line_says_what_to_do(workbook: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Which extra to install, or what to save it as."""
    monkeypatch.setitem(sys.modules, "openpyxl", None)
    reading = read(workbook)
    assert [(problem.wrong, problem.remedy) for problem in reading.problems] == [
        ("is a spreadsheet of a kind that needs the library openpyxl", HOW_TO_GET)
    ]


@pytest.mark.parametrize("content", [b"", b"no zip", b"PK\x03\x04 cut"])
@pytest.mark.parametrize("ending", ["xlsx", "ods"])
def test_a_damaged_one_is_a_line(content: bytes, ending: str, tmp_path: Path) -> None:
    """Not a traceback."""
    path = tmp_path / f"night.{ending}"
    path.write_bytes(content)
    assert [problem.wrong for problem in read(path).problems] == ["is a damaged spreadsheet, or none"]


def test_one_cell_far_away_is_no_bomb(tmp_path: Path) -> None:
    """A stray value in the last row of a sheet, and one that stands for a million rows."""
    book = openpyxl.Workbook()
    book.active.append(["Start", "Exposure", "Filter"])
    book.active.append([SECOND, 120, "L"])
    book.active.cell(row=1_048_576, column=3, value="x")
    book.save(tmp_path / "far.xlsx")
    assert len(read(tmp_path / "far.xlsx").subs) == 1
    with zipfile.ZipFile(FILES / "night.ods") as sound, zipfile.ZipFile(tmp_path / "far.ods", "w") as far:
        for name in sound.namelist():
            content = sound.read(name).replace(b'number-columns-repeated="3"', b'number-columns-repeated="3000000"')
            far.writestr(name, content.replace(b"<table:table-row>", b'<table:table-row table:number-rows-repeated="99000000">'))
    assert [problem.wrong for problem in read(tmp_path / "far.ods").problems] == ["is larger than any log"]


def test_what_unpacks_to_too_much_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """By what the archive itself declares; the library reads no further than that."""
    monkeypatch.setattr(spreadsheet, "LARGEST_UNPACKED", 1_000)
    problems = LogProblems("night.ods")
    assert read_spreadsheet(FILES / "night.ods", problems) is None
    assert [problem.wrong for problem in problems.all()] == ["is larger than any log"]
