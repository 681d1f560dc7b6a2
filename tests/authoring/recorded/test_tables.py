"""Tables by example: understood from the whole column and told, or refused with the line that answers; never a wrong date
unsaid."""

from pathlib import Path

import pytest

from sitegen.authoring.recorded.asked_columns import read_asked
from sitegen.authoring.recorded.shapes import ShapeMemory
from sitegen.authoring.recorded.table_by_example import RecordedReading, read_table_by_example
from sitegen.diary.sub import Sub
from sitegen.reading.capture_logs.request import LogRequest
from tests.authoring.conftest import TODAY
from tests.authoring.recorded.cases import TABLES, Row, Table


def read(table: Table, folder: Path, memory: ShapeMemory | None = None) -> RecordedReading:
    path = folder / table.name
    path.write_bytes(table.text if isinstance(table.text, bytes) else table.text.encode("utf-8"))
    request = LogRequest(path, table.name, table.name, None, None, None, None, table.zone, (table.name, 1, 1), TODAY)
    return read_table_by_example(request, read_asked(table.asked), memory or ShapeMemory(None))


def _text(sub: Sub) -> str:
    return sub.start.isoformat(timespec="seconds").removesuffix("+00:00").removesuffix(":00")


def first_and_last(subs: tuple[Sub, ...], rows: tuple[Row, ...]) -> tuple[Row, ...]:
    """The subs cut into as many frames as each expected row has."""
    cut, at = [], 0
    for row in rows:
        inside = subs[at : at + row.count]
        at += row.count
        alike = {(sub.exposure_s, sub.filter, sub.kept) for sub in inside}
        assert len(alike) == 1, f"{row}: {alike or 'no frame is left'}"
        cut.append(Row(len(inside), _text(inside[0]), _text(inside[-1]), inside[0].exposure_s, inside[0].filter, inside[0].kept))
    assert at == len(subs), f"{len(subs)} frames, {at} expected"
    return tuple(cut)


@pytest.mark.parametrize("name", TABLES)
def test_a_table_is_understood_or_refused(name: str, tmp_path: Path) -> None:
    """Every start, exposure, filter and verdict, or the one line that says what is open; common practice, no source."""
    table = TABLES[name]
    reading = read(table, tmp_path)
    lines = [str(problem) for problem in reading.problems]
    if table.refused:
        assert len(lines) == 1 and lines[0].endswith(table.refused), lines
        assert reading.subs == ()
        return
    assert lines == []
    assert first_and_last(reading.subs, table.rows) == table.rows
    assert [line for line in table.told if line not in reading.told] == [], reading.told
