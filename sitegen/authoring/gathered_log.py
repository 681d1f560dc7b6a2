"""logs/NAME.ecsv: what frames lying elsewhere tell, without the frames, their names or their place."""

import csv
import io
from collections.abc import Callable, Iterable
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Any

from msgspec.structs import replace

from sitegen.authoring.new_files import refuse
from sitegen.diary.sub import Sub
from sitegen.problems import DiaryProblems, errors_in
from sitegen.reading.capture_logs.registry import read_log
from sitegen.reading.capture_logs.request import LogRequest

MARK = "# meta: {written_by: sitegen gather}"
# Name, ECSV type, unit; those of the second part only where a row has them.
ALWAYS: tuple[tuple[str, str, str], ...] = (
    ("start", "string", ""),
    ("exposure_s", "float64", "s"),
    ("filter", "string", ""),
    ("kind", "string", ""),
    ("kept", "bool", ""),
    ("reason", "string", ""),
    ("binning", "int64", ""),
    ("gain", "float64", ""),
    ("sensor_c", "float64", "deg_C"),
)
WHERE_KNOWN: tuple[tuple[str, str, str], ...] = (
    ("fwhm_arcsec", "float64", "arcsec"),
    ("elongation", "float64", ""),
    ("guiding_rms_arcsec", "float64", "arcsec"),
    ("note", "string", ""),
)


def log_text(subs: Iterable[Sub]) -> str:
    """ECSV 1.0 (Astropy Proposal for Enhancement 6), in time order."""
    rows = sorted(subs, key=lambda sub: (sub.start, sub.kind, sub.filter or ""))
    columns = [*ALWAYS, *(each for each in WHERE_KNOWN if any(getattr(sub, each[0]) is not None for sub in rows))]
    head = ["# %ECSV 1.0", "# ---", "# datatype:"]
    head += [f"# - {{name: {name}, {f'unit: {unit}, ' if unit else ''}datatype: {kind}}}" for name, kind, unit in columns]
    head += [MARK, "# delimiter: ','", "# schema: astropy-2.0"]
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(name for name, _, _ in columns)
    writer.writerows([_cell(getattr(sub, name)) for name, _, _ in columns] for sub in rows)
    return "\n".join(head) + "\n" + text.getvalue()


def subs_gathered(path: Path, shown: str, today: date) -> tuple[Sub, ...]:
    """What an earlier gathering wrote, with all that its author added since; nothing where there is no such file.

    Raises DiaryProblems for one that gather did not write, or that cannot be read without a loss.
    """
    if not path.exists():
        return ()
    try:
        written_by_us = MARK in path.read_text("utf-8", "replace")
    except OSError as trouble:
        raise refuse(shown, f"cannot be read: {trouble.strerror or 'the system refuses'}") from trouble
    if not written_by_us:
        raise refuse(shown, "was not written by 'sitegen gather'", "give it another name, or gather under another one")
    reading = read_log(LogRequest(path, shown, path.name, None, None, None, None, None, (shown, 1, 1), today))
    if errors_in(reading.problems):
        raise DiaryProblems(reading.problems)
    return tuple(map(to_milliseconds, reading.subs))


def to_milliseconds(sub: Sub) -> Sub:
    """As exactly as a start is written, so that a frame is recognised by what was written of it."""
    start = sub.start.astimezone(UTC)
    milliseconds = round(start.microsecond / 1000)
    return replace(sub, start=start.replace(microsecond=0) + timedelta(milliseconds=milliseconds))


def _cell(value: Any) -> str:
    return next((write(value) for kind, write in _WRITERS if isinstance(value, kind)), "")


def _moment(moment: datetime) -> str:
    return moment.isoformat(timespec="milliseconds" if moment.microsecond else "seconds").replace("+00:00", "Z")


_WRITERS: tuple[tuple[type, Callable[[Any], str]], ...] = (
    (datetime, _moment),
    (bool, str),
    (float, lambda number: f"{number:.10g}"),
    (int, str),
    (str, str),
)
