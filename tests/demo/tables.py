"""Frames written as the tables a capture program leaves: CSV by hand, ECSV by astropy."""

import csv
import io
from collections.abc import Callable, Iterable
from datetime import UTC, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

from astropy.table import Table
from frames import Frame

Clock = Callable[[datetime], str]

UNITS = {"exposure_s": "s", "sensor_c": "deg_C", "fwhm_arcsec": "arcsec", "guiding_rms_arcsec": "arcsec", "gap_s": "s"}
MEASURED = ("binning", "gain", "sensor_c", "fwhm_arcsec", "elongation", "guiding_rms_arcsec")
LIGHTS = ("start", "exposure_s", "filter", "kept", "reason", *MEASURED)
WITH_CALIBRATION = ("start", "exposure_s", "filter", "kind", "kept", "reason", *MEASURED, "count", "gap_s")
RUNS = (*LIGHTS, "count", "gap_s", "note")


def bare(when: datetime) -> str:
    """UTC that does not say so: ``2025-03-28T11:10:21``."""
    return when.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%S")


def zulu(when: datetime) -> str:
    """UTC that says so."""
    return bare(when) + "Z"


def wall_clock(zone: str) -> Clock:
    """Civil time without an offset, as on the shed's wall clock."""
    return lambda when: when.astimezone(ZoneInfo(zone)).strftime("%Y-%m-%d %H:%M:%S")


def with_offset(zone: str) -> Clock:
    """Civil time that carries its offset: ``2026-04-05T02:15:00+10:30``."""
    return lambda when: when.astimezone(ZoneInfo(zone)).isoformat(timespec="seconds")


def minutes(seconds: float) -> str:
    """``5m`` for 300, ``90 s`` for what is not whole minutes."""
    return f"{seconds / 60:g}m" if seconds % 60 == 0 else f"{seconds:g} s"


def row(frame: Frame, clock: Clock, exposure: Callable[[float], str]) -> dict[str, str]:
    """One frame as text, by canonical column."""
    values = {name: "" if (value := getattr(frame, name)) is None else f"{value:g}" for name in (*MEASURED, "count", "gap_s")}
    return values | {
        "start": clock(frame.start),
        "exposure_s": exposure(frame.exposure_s),
        "filter": frame.filter,
        "kind": frame.kind,
        "kept": "yes" if frame.kept else "no",
        "reason": frame.reason,
        "note": frame.note,
    }


def write_csv(
    path: Path,
    frames: Iterable[Frame],
    columns: tuple[str, ...],
    clock: Clock,
    headings: dict[str, str] | None = None,
    exposure: Callable[[float], str] = "{:g}".format,
) -> None:
    """A comma-separated table; ``headings`` renames the canonical columns."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow([(headings or {}).get(name, name) for name in columns])
    for frame in frames:
        values = row(frame, clock, exposure)
        writer.writerow([values[name] for name in columns])
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text.getvalue(), encoding="utf-8", newline="\n")


def write_ecsv(path: Path, frames: list[Frame], columns: tuple[str, ...], about: dict[str, str]) -> None:
    """The same table with units in its head, in the form astropy gives it."""
    table = Table(meta=about)
    for name in columns:
        table[name] = [_cell(frame, name) for frame in frames]
        if name in UNITS:
            table[name].unit = UNITS[name]
    path.parent.mkdir(parents=True, exist_ok=True)
    table.write(path, format="ascii.ecsv", delimiter=",", overwrite=True)


def _cell(frame: Frame, name: str) -> object:
    value = zulu(frame.start) if name == "start" else getattr(frame, name)
    return ("yes" if value else "no") if name == "kept" else value


def runs(frames: Iterable[Frame]) -> list[Frame]:
    """Equal frames in a row drawn together, with the mean pause between them."""
    groups: list[list[Frame]] = []
    for frame in frames:
        if not groups or not _continues(groups[-1], frame):
            groups.append([])
        groups[-1].append(frame)
    return [_drawn_together(group) for group in groups]


def _continues(group: list[Frame], frame: Frame) -> bool:
    last = group[-1]
    same = (last.filter, last.kind, last.kept, last.reason) == (frame.filter, frame.kind, frame.kept, frame.reason)
    return same and len(group) < 24 and (frame.start - last.end).total_seconds() < 60


def _drawn_together(group: list[Frame]) -> Frame:
    first, last, number = group[0], group[-1], len(group)
    if number == 1:
        return first
    pause = (last.start - first.start).total_seconds() / (number - 1) - first.exposure_s
    return Frame(
        start=first.start,
        exposure_s=first.exposure_s,
        filter=first.filter,
        kind=first.kind,
        kept=first.kept,
        reason=first.reason,
        binning=first.binning,
        gain=first.gain,
        sensor_c=_mean(group, "sensor_c", 1),
        fwhm_arcsec=_mean(group, "fwhm_arcsec", 2),
        elongation=_mean(group, "elongation", 2),
        guiding_rms_arcsec=_mean(group, "guiding_rms_arcsec", 2),
        count=number,
        gap_s=int(pause * 10) / 10,
    )


def _mean(group: list[Frame], name: str, digits: int) -> float:
    return round(sum(getattr(frame, name) for frame in group) / len(group), digits)
