"""logs/NAME.ecsv: what frames lying elsewhere tell, without the frames. What is private in it is never published."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import datetime
from math import isclose
from operator import attrgetter
from pathlib import Path
from typing import Any

from msgspec import Struct
from msgspec.structs import asdict

from sitegen.authoring.captures.reading import to_milliseconds
from sitegen.authoring.captures.record import Frame
from sitegen.authoring.gathered_rows import FilterName, KnownRow, known_rows
from sitegen.authoring.log_table import LogTable, new_table, parse_table
from sitegen.authoring.new_files import refuse
from sitegen.authoring.panel_names import panel_called
from sitegen.diary.frame_origin import FrameOrigin
from sitegen.diary.sub import Sub
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems, errors_in
from sitegen.reading.capture_logs.filter_names import NO_FILTER_WORDS
from sitegen.reading.capture_logs.registry import read_log
from sitegen.reading.capture_logs.request import LogRequest
from sitegen.reading.diary_config import DiaryConfig

MARK = "# meta: {written_by: sitegen gather}"
_WRITTEN_BY_US = "written_by: sitegen gather"
Column = tuple[str, str, str]
"""Name, ECSV type, unit."""
ALWAYS: tuple[Column, ...] = (
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
MEASURED: tuple[Column, ...] = (
    ("fwhm_arcsec", "float64", "arcsec"),
    ("elongation", "float64", ""),
    ("guiding_rms_arcsec", "float64", "arcsec"),
    ("stars", "int64", ""),
    ("panel", "string", ""),
    ("note", "string", ""),
)
PRIVATE: tuple[Column, ...] = (
    ("file", "string", ""),
    ("folder", "string", ""),
    ("object", "string", ""),
    ("ra_deg", "float64", "deg"),
    ("dec_deg", "float64", "deg"),
    ("filter_told", "string", ""),
    ("focal_length_mm", "float64", "mm"),
    ("pixel_um", "float64", "um"),
    ("width_px", "int64", ""),
    ("height_px", "int64", ""),
    ("latitude_deg", "float64", "deg"),
    ("longitude_deg", "float64", "deg"),
    ("camera_id", "string", ""),
    ("discarded_by", "string", ""),
    ("clock", "string", ""),
)
_OWN = (*(column[0] for column in (*ALWAYS, *MEASURED)), "clock")
_NOTHING = FrameOrigin()
COLUMNS = {column[0]: column for column in (*ALWAYS, *MEASURED, *PRIVATE)}


class GatheredLog(Struct, frozen=True):
    """The log as it is on the disk: its text, '' where there is none, its table and what its rows say. `relative` is its path
    inside content/."""

    relative: str
    path: Path
    shown: str
    text: str
    table: LogTable
    rows: tuple[KnownRow, ...]

    @property
    def subs(self) -> tuple[Sub, ...]:
        return tuple(sub for row in self.rows for sub in row.subs)


def read_gathered(relative: str, diary: DiaryConfig) -> GatheredLog:
    """Raises DiaryProblems for a log that gather did not write, or that cannot be read without a loss."""
    path, shown = diary.folder.path(relative), diary.folder.shown(relative)
    if not path.exists():
        return GatheredLog(relative, path, shown, "", new_table(ALWAYS, MARK), ())
    try:
        text = path.read_bytes().decode("utf-8", "replace")
    except OSError as trouble:
        raise refuse(shown, f"cannot be read: {trouble.strerror or 'the system refuses'}") from trouble
    if not is_written_by_us(text):
        raise refuse(shown, "was not written by 'sitegen gather'", "give it another name, or gather under another one")
    reading = read_log(LogRequest(path, shown, path.name, None, None, None, None, None, (shown, 1, 1), diary.today))
    if errors_in(reading.problems):
        raise DiaryProblems(reading.problems)
    table = parse_table(text)
    return GatheredLog(relative, path, shown, text, table, known_rows(table, reading.subs))


def is_written_by_us(text: str) -> bool:
    return _WRITTEN_BY_US in text


def sub_of(frame: Frame, filter_name: FilterName, kept: bool, reason: str | None, by: str | None, with_names: bool) -> Sub:
    """The frame as a row of the log. The rig's own short name for its filter where that is known, else the header's words."""
    record, file = frame.record, frame.file if with_names else None
    words = record.filter_words if record.filter_words.casefold() not in NO_FILTER_WORDS else ""
    listed = frame.listed
    measured = {name: getattr(listed, name) for name, _, _ in MEASURED} if listed is not None else {}
    if frame.kind == "light" and not measured.get("panel"):
        measured["panel"] = panel_called(record.object, frame.file.with_folder if frame.file else "") or None
    origin = FrameOrigin(
        file=file.below if file else None,
        folder=file.folder if file else None,
        object=record.object or None,
        ra_deg=record.ra_deg,
        dec_deg=record.dec_deg,
        filter_told=record.filter_words or None,
        focal_length_mm=record.focal_length_mm,
        pixel_um=record.pixel_um,
        width_px=record.width_px,
        height_px=record.height_px,
        latitude_deg=record.latitude_deg,
        longitude_deg=record.longitude_deg,
        camera_id=record.camera_id or None,
        discarded_by=by,
    )
    return Sub(
        frame.start, frame.exposure_s, "", "", filter=filter_name(words or None), kind=frame.kind, kept=kept, reason=reason,
        binning=record.binning, gain=record.gain, sensor_c=record.sensor_c, clock=frame.clock, origin=origin, **measured,
    )  # fmt: skip


def texts_of(subs: Sequence[Sub]) -> dict[str, list[str]]:
    """By column, the text of each sub, '' for what is not known; without the columns of which nothing is known."""
    origins = [sub.origin or _NOTHING for sub in subs]
    own = ((name, list(map(attrgetter(name), subs))) for name in _OWN)
    of_origin = ((name, list(map(attrgetter(name), origins))) for name in FrameOrigin.__struct_fields__)
    texts = ((name, _texts_of(values)) for name, values in (*own, *of_origin))
    return {name: column for name, column in texts if any(column)}


def _texts_of(values: Sequence[object]) -> list[str]:
    """Each value is written once: of thousands of frames most say the same, and often all."""
    written = {value: cell_text(value) for value in set(values)}
    return [written[value] for value in values] if len(written) != 1 else [*written.values()] * len(values)


def changed_cells(row: KnownRow, sub: Sub) -> dict[str, str]:
    """The private cells that the header now says otherwise; what it leaves open stays."""
    if row.origin == sub.origin:
        return {}
    before, now = asdict(row.origin), asdict(sub.origin or FrameOrigin())
    return {name: cell_text(value) for name, value in now.items()
            if name != "discarded_by" and value is not None and not _is_equal(before[name], value)}  # fmt: skip


def _is_equal(before: object, value: object) -> bool:
    if isinstance(before, float | int) and isinstance(value, float | int):
        return isclose(before, value, rel_tol=1e-9, abs_tol=1e-9)
    return before == value


def missing_columns(table: LogTable, names: Iterable[str]) -> tuple[Column, ...]:
    """Of those of these names, in their order."""
    needed = set(names) - table.columns.keys()
    return tuple(column for name, column in COLUMNS.items() if name in needed)


def cell_text(value: Any) -> str:
    write = _WRITERS.get(type(value))
    return write(value) if write is not None else ""


def _moment(moment: datetime) -> str:
    return to_milliseconds(moment).isoformat(timespec="milliseconds" if moment.microsecond else "seconds").replace("+00:00", "Z")


def _float(number: float) -> str:
    """A zero has no sign."""
    return f"{number + 0.0:.10g}"


_WRITERS: Mapping[type, Callable[[Any], str]] = {datetime: _moment, bool: str, float: _float, int: str, str: str}


def log_path(name: str) -> str:
    return f"logs/{name}.ecsv"


def is_gathered_name(name: str, folders: Folders) -> bool:
    """Whether a log of that name was gathered before."""
    path = folders.content / log_path(name)
    return path.is_file() and is_written_by_us(path.read_text("utf-8", "replace"))
