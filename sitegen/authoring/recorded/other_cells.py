"""The cells of a row beside its time, exposure and count -> what a sub says of them."""

from collections.abc import Callable, Mapping
from typing import Any

from sitegen.authoring.recorded.cells import CellRow
from sitegen.authoring.recorded.numbers import number_in
from sitegen.authoring.recorded.sections import Section
from sitegen.diary.frame_origin import FrameOrigin
from sitegen.problems import hint_for
from sitegen.reading.capture_logs.frame_kind import KINDS, frame_kind
from sitegen.reading.capture_logs.log_problems import LogProblems, ValueProblem
from sitegen.reading.nodes import quoted


def _number(least: float, most: float) -> Callable[[str], float]:
    return lambda cell: number_in(cell, least, most)


def _whole(cell: str) -> int:
    number = number_in(cell, 0, 1e7)
    if not number.is_integer():
        raise ValueProblem("not a whole number")
    return int(number)


def _binning(cell: str) -> int:
    first, _, second = cell.casefold().replace("×", "x").partition("x")
    if second and first.strip() != second.strip():
        raise ValueProblem("not the same on both sides")
    number = number_in(first.strip(), 1, 16)
    if not number.is_integer():
        raise ValueProblem("not a whole number")
    return int(number)


def _kind(cell: str) -> str:
    kind = frame_kind(cell)
    if kind is None:
        raise ValueProblem("no kind of frame", hint_for(cell, KINDS))
    return kind


def elongation_of_eccentricity(cell: str) -> float:
    """Longer over shorter axis of an ellipse: 1 / sqrt(1 − e²)."""
    return float((1.0 - number_in(cell, 0, 0.9999) ** 2) ** -0.5)


READERS: Mapping[str, tuple[str, Callable[[str], Any]]] = {
    "filter": ("filter", str),
    "kind": ("kind", _kind),
    "binning": ("binning", _binning),
    "gain": ("gain", _number(0, 1e6)),
    "sensor_c": ("sensor_c", _number(-273.15, 100)),
    "elongation": ("elongation", _number(1, 100)),
    "eccentricity": ("elongation", elongation_of_eccentricity),
    "guiding_rms_arcsec": ("guiding_rms_arcsec", _number(0, 3600)),
    "stars": ("stars", _whole),
    "reason": ("reason", str),
    "panel": ("panel", str),
    "note": ("note", str),
}


def other_values(row: CellRow, section: Section, problems: LogProblems) -> dict[str, Any] | None:
    """By the name of a sub's field; None after an error."""
    values: dict[str, Any] = {}
    readers = dict(READERS)
    if "fwhm" in section.columns and section.columns["fwhm"].unit == "arcsec":
        readers["fwhm"] = ("fwhm_arcsec", _number(0, 600))
    for key, (name, read) in readers.items():
        if key not in row.cells:
            continue
        try:
            values[name] = read(row.cells[key])
        except ValueProblem as doubt:
            column = section.columns[key]
            wrong = f"{quoted(column.heading)} is {quoted(row.cells[key])}, {doubt.wrong}"
            problems.error(wrong, doubt.remedy, row.row.place_of(column.index))
            return None
    if "object" in row.cells:
        values["origin"] = FrameOrigin(object=row.cells["object"])
    return values
