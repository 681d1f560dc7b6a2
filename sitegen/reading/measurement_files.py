"""Measurements as small files: written by `--save`, named by an entry in place of the frame, and read back strictly.

YAML or, by the file's ending, JSON. What a file holds came from the pixels and from when they were taken; no place, no name of a
person and no path goes into it. The pattern is not saved: it follows from the zones and is worked out again.
"""

import json
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

import yaml
from msgspec import Struct
from msgspec.structs import asdict

from sitegen.problems import Problem
from sitegen.reading.capture_logs.log_problems import ValueProblem
from sitegen.reading.capture_logs.moments import read_moment
from sitegen.reading.content_folder import ContentFolder
from sitegen.reading.diagnostics import Diagnostics, Place
from sitegen.reading.measurement_model import RING, RINGS, SCHEMA, STAR_SURVEY, SURVEY
from sitegen.reading.nodes import MapNode, TextNode, quoted
from sitegen.reading.text_file import read_text
from sitegen.reading.value_types.group import Group, Values
from sitegen.reading.yaml_text import read_yaml
from sitegen.stars.measured import RingedFrame, SurveyedFrame
from sitegen.stars.pattern import field_pattern
from sitegen.stars.records import Rejected, StarRing, StarSurvey, Zone
from sitegen.stars.zones import COLUMNS, ROWS

SAVED_ENDINGS = (".yaml", ".yml", ".json")
FIGURES = 7
AS_SAVED = "keep the file as it was saved"
USE_OF = {STAR_SURVEY: "star_survey", RING: "star_rings"}
COMMENT = "# Measured by sitegen. An entry can name this file in '{key}' in place of the frame.\n"

Surveyed = tuple[SurveyedFrame | None, tuple[Problem, ...]]
Ringed = tuple[RingedFrame | None, tuple[Problem, ...]]


def is_saved(name: str) -> bool:
    """Whether a file is taken for a saved measurement rather than a frame."""
    return name.lower().endswith(SAVED_ENDINGS)


def saved_name(frame: str, kind: str) -> str:
    """What a measurement is called beside its frame: 'field.fits.fz' -> 'field.survey.yaml'."""
    return f"{Path(frame).name.partition('.')[0]}.{'survey' if kind == STAR_SURVEY else 'ring'}.yaml"


def survey_as_dict(frame: SurveyedFrame) -> dict[str, Any]:
    return {**_head(STAR_SURVEY, frame), **_plain(unfolded(frame.survey))}


def ring_as_dict(frame: RingedFrame) -> dict[str, Any]:
    size = {"width_px": frame.width_px, "height_px": frame.height_px}
    return {**_head(RING, frame), **size, **_plain(unfolded(frame.ring))}


def unfolded(value: Any) -> Any:
    """Records as dictionaries, all the way down."""
    if isinstance(value, Struct):
        return {name: unfolded(inner) for name, inner in asdict(value).items()}
    return tuple(map(unfolded, value)) if isinstance(value, tuple) else value


def save(content: dict[str, Any], path: Path) -> None:
    """Raises OSError."""
    path.write_text(as_text(content, json_wanted=path.suffix.lower() == ".json"), "utf-8", newline="\n")


def as_text(content: dict[str, Any], json_wanted: bool) -> str:
    if json_wanted:
        return json.dumps(content, ensure_ascii=False, indent=1) + "\n"
    body: str = yaml.safe_dump(content, sort_keys=False, allow_unicode=True, default_flow_style=None, width=200)
    return COMMENT.format(key=USE_OF[content["measures"]]) + body


def read_survey(path: Path, shown: str, file: str) -> Surveyed:
    """`shown` is the path as problem lines show it, `file` as the author of an entry wrote it."""
    values, problems = _read(path, shown, SURVEY, STAR_SURVEY)
    if values is None:
        return None, problems
    zones = tuple(item.value.into(Zone) for item in values.items_of("zones"))
    survey = StarSurvey(**{name: values.get(name) for name in _SURVEY_ONLY},
                        rejected=values.get("rejected").into(Rejected), zones=zones)  # fmt: skip
    frame = SurveyedFrame(file, _moment(values), values.get("binning"), survey, field_pattern(survey))
    return frame, problems


def read_ring(path: Path, shown: str, file: str) -> Ringed:
    values, problems = _read(path, shown, RINGS, RING)
    if values is None:
        return None, problems
    warnings = tuple(item.value for item in values.items_of("warnings"))
    ring = StarRing(**{name: values.get(name) for name in _RING_ONLY}, warnings=warnings)
    size = values.get("width_px"), values.get("height_px")
    return RingedFrame(file, _moment(values), values.get("binning"), *size, ring), problems


_SURVEY_ONLY = tuple(name for name in StarSurvey.__struct_fields__ if name not in ("rejected", "zones"))
_RING_ONLY = tuple(name for name in StarRing.__struct_fields__ if name != "warnings")


def _head(kind: str, frame: SurveyedFrame | RingedFrame) -> dict[str, Any]:
    taken = frame.taken.strftime("%Y-%m-%dT%H:%M:%SZ") if frame.taken else None
    name = Path(frame.file).name
    return {"schema": int(SCHEMA), "measures": kind, "frame": name, "taken": taken, "binning": frame.binning}


def _plain(value: Any) -> Any:
    """Plain numbers with the figures that mean something."""
    if isinstance(value, dict):
        return {key: _plain(inner) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(inner) for inner in value]
    return float(f"{value:.{FIGURES}g}") if isinstance(value, float) else value


def _read(path: Path, shown: str, group: Group, kind: str) -> tuple[Values | None, tuple[Problem, ...]]:
    """None after an error."""
    diagnostics = Diagnostics(shown, ContentFolder(path.parent, "", {}, frozenset(), frozenset()), date.max)
    values = diagnostics.until_full(lambda: _values(path, diagnostics, group, kind))
    return (values if diagnostics.clean else None), tuple(diagnostics.problems)


def _values(path: Path, diagnostics: Diagnostics, group: Group, kind: str) -> Values | None:
    text = read_text(path, diagnostics)
    node = read_yaml(text, diagnostics) if text is not None else None
    if node is None:
        if diagnostics.clean:
            diagnostics.error(Place(), "is empty", "name a frame, or what 'sitegen survey --save' wrote")
        return None
    if isinstance(node, MapNode) and _is_of_another_kind(node, kind, diagnostics):
        return None
    values = group.read(node, "the measurement", diagnostics)
    if values is not None:
        _check(values, diagnostics)
    return values


def _is_of_another_kind(node: MapNode, kind: str, diagnostics: Diagnostics) -> bool:
    """A ring named as a survey would be a page of unknown keys."""
    measures = node.get("measures")
    other = next(other_kind for other_kind in USE_OF if other_kind != kind)
    if not isinstance(measures, TextNode) or measures.text != other:
        return False
    diagnostics.error(measures, f"this file measures {quoted(other)}, not {quoted(kind)}", f"name it in '{USE_OF[other]}'")
    return True


def _check(values: Values, diagnostics: Diagnostics) -> None:
    """What no single key can know."""
    taken = values.get("taken")
    if taken is not None:
        try:
            read_moment(taken)
        except ValueProblem as doubt:
            diagnostics.error(values.place("taken"), f"'taken' is {quoted(taken)}, {doubt.wrong}", doubt.remedy)
    zones = values.values.get("zones")
    if zones is not None and diagnostics.clean and len(zones) != COLUMNS * ROWS:
        diagnostics.error(values.place("zones"), f"'zones' has {len(zones)} items, not {COLUMNS * ROWS}", AS_SAVED)
    for zone in values.items_of("zones"):
        _check_zone(zone.value, diagnostics)


def _check_zone(zone: Values, diagnostics: Diagnostics) -> None:
    """Measured or not: nothing in between."""
    needed = ("fwhm_px", "elongation", "scatter_px", "scatter_e")
    given = [name for name in needed if zone.get(name) is not None]
    if given and len(given) < len(needed):
        missing = next(name for name in needed if name not in given)
        diagnostics.error(zone.node, f"'{missing}' is missing in a zone that has '{given[0]}'", AS_SAVED)


def _moment(values: Values) -> datetime | None:
    taken = values.get("taken")
    if taken is None:
        return None
    moment = read_moment(taken)
    return moment.astimezone(UTC) if moment.tzinfo else moment.replace(tzinfo=UTC)
