"""Which tables of instruments an entry names, and what it says about them."""

import math
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from sitegen.diary.readings import Readings
from sitegen.diary.sub import Sub
from sitegen.diary.target import Target
from sitegen.problems import Problem
from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.value_types.group import Values


class SeriesRequest(Struct, frozen=True):
    """Tables of one item: files as (path, as problem lines show it), `sources` the same inside content/, `columns` as
    `reading.series_table` wants them.
    `time_zone` None for UTC. `scale_arcsec_px` is that of the guider. `item_place`: path, line and column of the item."""

    files: tuple[tuple[Path, str], ...]
    sources: tuple[str, ...]
    columns: Mapping[str, str]
    time_zone: str | None
    scale_arcsec_px: float | None
    ra_on_sky: bool
    item_place: tuple[str, int, int]

    @property
    def shaping(self) -> tuple[object, ...]:
        """All that shapes what is read, wherever the diary lies and the item stands in its entry."""
        return self.sources, sorted(self.columns.items()), self.time_zone, self.scale_arcsec_px, self.ra_on_sky


class Exposure(Struct, frozen=True, gc=False):
    """UTC unix seconds; `dec_deg` of what it was pointed at, None where that is not known."""

    start_s: float
    end_s: float
    dec_deg: float | None


class SeriesReading(Struct, frozen=True):
    """`readings` one an exposure, in their order."""

    readings: tuple[Readings | None, ...] = ()
    problems: tuple[Problem, ...] = ()


ReadSeries = Callable[[Sequence[SeriesRequest], Sequence[Exposure]], SeriesReading]


def series_requests(values: Values, diagnostics: Diagnostics) -> tuple[SeriesRequest, ...]:
    return tuple(_request(item.value, item.line, item.column, diagnostics) for item in values.items_of("series"))


def _request(own: Values, line: int, column: int, diagnostics: Diagnostics) -> SeriesRequest:
    sources = dict.fromkeys(name for files in own.items_of("files") for name in files.value)
    return SeriesRequest(
        tuple((diagnostics.content.path(source), diagnostics.content.shown(source)) for source in sources),
        tuple(sources),
        own.get("columns").values if own.get("columns") else {},
        own.get("time_zone"),
        own.get("scale_arcsec_px"),
        own.get("ra_on_sky") is not False,
        (diagnostics.shown, line, column),
    )


def series_files(values: Values) -> set[str]:
    """Inside content/."""
    return {name for item in values.items_of("series") for files in item.value.items_of("files") for name in files.value}


def with_readings(sub: Sub, readings: Readings | None) -> Sub:
    """What the log itself tells of guiding stays."""
    if readings is None:
        return sub
    axes = readings.guiding_ra_rms_arcsec, readings.guiding_dec_rms_arcsec
    if sub.guiding_rms_arcsec is not None or None in axes:
        return replace(sub, readings=readings)
    return replace(sub, readings=readings, guiding_rms_arcsec=round(math.hypot(*axes), 3))  # type: ignore[arg-type] # neither is None


def exposures_of(subs: Sequence[Sub], targets: Sequence[Target]) -> tuple[Exposure, ...]:
    return tuple(Exposure(sub.start.timestamp(), sub.end.timestamp(), _dec_deg(sub, targets)) for sub in subs)


def _dec_deg(sub: Sub, targets: Sequence[Target]) -> float | None:
    return None if sub.target is None else targets[sub.target].dec_deg
