"""Spreadsheets -> their rows as text: .xlsx by openpyxl, an extra of this package; .ods, which is XML in a zip, by the standard
library.

OpenDocument 1.3 (OASIS, 2021), part 3, 9.1: tables, rows and cells, each of which may stand for several. Values are taken as they
are kept, not as they look: dates have no order to guess, numbers have points.
"""

import re
import warnings
import zipfile
from collections.abc import Iterable, Iterator, Sequence
from datetime import date, datetime, time, timedelta
from pathlib import Path
from xml.etree import ElementTree

from sitegen.authoring.recorded.grid import Grid, GridRow, grid_row, sheet_place
from sitegen.lazy_module import LazyModule
from sitegen.reading.capture_logs.log_problems import LogProblems, system_reason

SPREADSHEETS = (".xlsx", ".xlsm", ".ods")
LARGEST_BYTES, LARGEST_UNPACKED = 32_000_000, 256_000_000
MOST_ROWS, MOST_COLUMNS, MOST_EMPTY = 100_000, 500, 10_000
HOW_TO_GET = "install it with the extra 'spreadsheets' of sitegen, or save the sheet as CSV"
_TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
_OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
_TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
_DURATION = re.compile(r"P(?:(\d+)D)?T?(?:(\d+)H)?(?:(\d+)M)?(?:(\d+(?:[.,]\d+)?)S)?")


_openpyxl = LazyModule("openpyxl")


class _TooLarge(Exception):
    """More than any night's table holds."""


def read_spreadsheet(path: Path, problems: LogProblems) -> Grid | None:
    """Every sheet, one below the other; None after an error."""
    try:
        _look_at_size(path)
        sheets = _ods_sheets(path) if path.suffix.casefold() == ".ods" else _xlsx_sheets(path)
        rows = tuple(_rows(sheets))
    except OSError as trouble:
        problems.error(system_reason(trouble))
    except ModuleNotFoundError:
        problems.error("is a spreadsheet of a kind that needs the library openpyxl", HOW_TO_GET)
    except _TooLarge:
        problems.error("is larger than any log", "save the sheet with the log alone")
    except Exception:  # the libraries raise whatever a damaged file leads them to
        problems.error("is a damaged spreadsheet, or none", "open it in its program, and save it as CSV")
    else:
        return Grid(rows, (), "")
    return None


def _look_at_size(path: Path) -> None:
    if path.stat().st_size > LARGEST_BYTES:
        raise _TooLarge
    with zipfile.ZipFile(path) as archive:
        if sum(part.file_size for part in archive.infolist()) > LARGEST_UNPACKED:
            raise _TooLarge


def _rows(sheets: Iterable[Iterable[Sequence[str]]]) -> Iterator[GridRow]:
    total = 0
    for sheet in sheets:
        for number, cells in enumerate(sheet, start=1):
            if not any(cells):
                continue
            total += 1
            if total > MOST_ROWS or len(cells) > MOST_COLUMNS:
                raise _TooLarge
            yield grid_row(number, cells, sheet_place(number))


def _xlsx_sheets(path: Path) -> Iterator[Iterator[Sequence[str]]]:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # of styles and extensions that say nothing of values
        book = _openpyxl.load_workbook(path, read_only=True, data_only=True)
        try:
            for sheet in book.worksheets:
                yield _xlsx_rows(sheet.iter_rows(max_col=MOST_COLUMNS, values_only=True))
        finally:
            book.close()


def _xlsx_rows(rows: Iterable[Sequence[object]]) -> Iterator[Sequence[str]]:
    empty = 0
    for row in rows:
        cells = _trimmed([_text_of(value) for value in row])
        empty = 0 if cells else empty + 1
        if empty > MOST_EMPTY:
            return
        yield cells


def _text_of(value: object) -> str:
    """As an author would have typed it, with ISO dates."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, datetime):
        whole = _to_second(value)
        return whole.date().isoformat() if whole.time() == time() else whole.isoformat(sep=" ")
    if isinstance(value, time):
        return _clock_text(value.hour * 3600 + value.minute * 60 + value.second + round(value.microsecond / 1e6))
    if isinstance(value, timedelta):
        return _clock_text(round(value.total_seconds()))
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, float):
        return f"{value:.10g}" if value.is_integer() is False else str(int(value))
    return str(value)


def _to_second(moment: datetime) -> datetime:
    """A day is kept as a fraction, whose last bit makes 21:03:12 into 21:03:11.999996."""
    nearest = (moment + timedelta(milliseconds=5)).replace(microsecond=0)
    return nearest if abs(nearest - moment) < timedelta(milliseconds=5) else moment


def _clock_text(seconds: int) -> str:
    return f"{seconds // 3600:02d}:{seconds // 60 % 60:02d}:{seconds % 60:02d}"


def _trimmed(cells: list[str]) -> list[str]:
    while cells and not cells[-1].strip():
        cells.pop()
    return cells


def _ods_sheets(path: Path) -> Iterator[Iterator[Sequence[str]]]:
    with zipfile.ZipFile(path) as archive, archive.open("content.xml") as content:
        rows: list[Sequence[str]] = []
        for _, element in ElementTree.iterparse(content, events=("end",)):
            if element.tag == f"{_TABLE}table-row":
                cells = _trimmed(list(_ods_cells(element)))
                repeated = int(element.get(f"{_TABLE}number-rows-repeated", "1"))
                rows += [cells] * (min(repeated, MOST_ROWS + 1) if cells else min(repeated, MOST_EMPTY))
                element.clear()
                if len(rows) > 2 * MOST_ROWS:
                    raise _TooLarge
            elif element.tag == f"{_TABLE}table":
                yield iter(rows)
                rows = []
                element.clear()


def _ods_cells(row: ElementTree.Element) -> Iterator[str]:
    count = 0
    for cell in row:
        if cell.tag not in (f"{_TABLE}table-cell", f"{_TABLE}covered-table-cell"):
            continue
        text = _ods_text(cell)
        repeated = int(cell.get(f"{_TABLE}number-columns-repeated", "1"))
        for _ in range(min(repeated, MOST_COLUMNS + 1)):
            count += 1
            if count > MOST_COLUMNS:
                if text:
                    raise _TooLarge
                return
            yield text


def _ods_text(cell: ElementTree.Element) -> str:
    kind = cell.get(f"{_OFFICE}value-type", "")
    if kind == "date":
        moment = cell.get(f"{_OFFICE}date-value", "").replace("T", " ")
        return moment.removesuffix(" 00:00:00")
    if kind == "time" and (parts := _DURATION.fullmatch(cell.get(f"{_OFFICE}time-value", ""))):
        days, hours, minutes, seconds = (float((part or "0").replace(",", ".")) for part in parts.groups())
        return _clock_text(round(days * 86_400 + hours * 3600 + minutes * 60 + seconds))
    if kind in ("float", "currency", "percentage"):
        return _text_of(float(cell.get(f"{_OFFICE}value", "nan")))
    if kind == "boolean":
        return "yes" if cell.get(f"{_OFFICE}boolean-value") == "true" else "no"
    return " ".join("".join(paragraph.itertext()) for paragraph in cell.iter(f"{_TEXT}p"))
