"""One table's rows -> the cells of each by what they say: sum rows left out, cells that were merged filled from above."""

from collections.abc import Mapping, Sequence

from msgspec import Struct

from sitegen.authoring.recorded.asked_columns import AskedColumns
from sitegen.authoring.recorded.grid import GridRow
from sitegen.authoring.recorded.numbers import decimal_mark, plain_number, pointed
from sitegen.authoring.recorded.sections import Column, Section
from sitegen.reading.capture_logs.columns import NOTHING
from sitegen.reading.nodes import quoted

SUM_WORDS = ("total", "totals", "sum", "sums", "subtotal", "grand total", "overall", "all", "Σ", "∑", "summe", "summen", "gesamt",
             "insgesamt", "zwischensumme", "gesamtsumme", "endsumme", "total:", "summe:", "gesamt:", "average", "mean", "mittel",
             "mittelwert", "durchschnitt")  # fmt: skip
NUMBERS = ("exposure_s", "count", "good", "bad", "binning", "gain", "sensor_c", "fwhm", "elongation", "eccentricity",
           "guiding_rms_arcsec", "gap_s", "stars")  # fmt: skip
OF_NIGHT = ("date", "evening")
FILLED = ("exposure_s", "filter", "object")
DITTO = ('"', "''", "″", "dto", "dto.", "ditto", "s.o.", "idem")


class CellRow(Struct):
    """`cells` by key, '' absent; `group` numbers the date cell from which the row's own was filled."""

    row: GridRow
    cells: dict[str, str]
    group: int = 0


def cell_rows(section: Section, asked: AskedColumns, separator: str) -> tuple[tuple[CellRow, ...], tuple[str, ...]]:
    """Rows that tell of frames, and what was told of the others. Numbers have points. Raises AskedFor."""
    remarks: list[str] = []
    rows = [CellRow(row, _of_row(row, section.columns)) for row in section.rows]
    rows = [row for row in rows if row.cells]
    left = [row for row in rows if not _is_sum(row, rows, section)]
    if len(left) < len(rows):
        lines = ", ".join(str(row.row.line) for row in rows if row not in left)
        remarks.append(f"{_counted(len(rows) - len(left), 'sum row')} left out (line {lines})")
    remarks += _fill(left, section)
    mark = _mark(left, asked, separator, remarks)
    for row in left:
        row.cells |= {key: pointed(cell, mark) for key, cell in row.cells.items() if key in NUMBERS}  # type: ignore[arg-type]
    return tuple(left), tuple(remarks)


def _of_row(row: GridRow, columns: Mapping[str, Column]) -> dict[str, str]:
    cells = {key: row.cell(column.index) for key, column in columns.items()}
    return {key: cell for key, cell in cells.items() if cell and cell.casefold() not in NOTHING}


def _is_sum(row: CellRow, rows: Sequence[CellRow], section: Section) -> bool:
    """It says so, or has no time of its own and the count of all rows above it."""
    first = next((cell for cell in row.row.cells if cell), "").casefold().rstrip(" :.")
    if first in SUM_WORDS and "start" not in row.cells:
        return True
    if "start" in row.cells or any(key in row.cells for key in OF_NIGHT) or "count" not in row.cells:
        return False
    above = [plain_number(other.cells.get("count", "")) for other in rows[: rows.index(row)]]
    return bool(above) and plain_number(row.cells["count"]) == sum(number or 0.0 for number in above)


def _fill(rows: Sequence[CellRow], section: Section) -> list[str]:
    """An empty date is that of the row above; an empty filter, exposure or object too, within one date."""
    filled: dict[str, int] = {}
    night = next((key for key in OF_NIGHT if key in section.columns), None)
    above: dict[str, str] = {}
    group = 0
    for number, row in enumerate(rows):
        begins = night is None or (night in row.cells and row.cells[night] != above.get(night) and row.cells[night] not in DITTO)
        if night is not None and night in row.cells and row.cells[night] not in DITTO:
            group = number
        row.group = group
        keys = (*OF_NIGHT, *(FILLED if not begins else ("exposure_s",)))
        for key in keys:
            wanted = key in section.columns and (key not in row.cells or row.cells[key] in DITTO)
            if wanted and key in above and (key != "filter" or "kind" not in row.cells or _is_light(row.cells["kind"])):
                row.cells[key] = above[key]
                filled[key] = filled.get(key, 0) + 1
        above = above | row.cells
    return [f"an empty {quoted(section.columns[key].heading)} is that of the row above ({_counted(count, 'row')})"
            for key, count in filled.items()]  # fmt: skip


def _is_light(kind: str) -> bool:
    return "light" in kind.casefold()


def _mark(rows: Sequence[CellRow], asked: AskedColumns, separator: str, remarks: list[str]) -> str:
    if "decimal" in asked:
        return asked["decimal"].heading
    mark, shown = decimal_mark((row.cells[key] for row in rows for key in NUMBERS if key in row.cells), separator)
    if mark == "comma":
        remarks.append(f"{shown} has a decimal comma")
    return mark


def _counted(count: int, what: str) -> str:
    return f"{count} {what}{'' if count == 1 else 's'}"
