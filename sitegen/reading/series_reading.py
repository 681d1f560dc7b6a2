"""Tables of instruments -> what they read during each exposure.

Apart from `entry_series`, as it needs arrays, whose library takes as long to load as an entry to read.
"""

import math
from collections.abc import Iterable, Sequence
from zoneinfo import ZoneInfo

import numpy as np
from msgspec import Struct

from sitegen.diary.readings import Readings
from sitegen.problems import Problem
from sitegen.reading.capture_logs.log_problems import LogProblems
from sitegen.reading.entry_series import Exposure, SeriesReading, SeriesRequest
from sitegen.reading.series_table import GUIDING, IN_PIXELS, WEATHER, SeriesTable, read_series
from sitegen.sky.arrays import Floats
from sitegen.sky.guiding import GAP_IN_CADENCES, LEAST_COVERED, covered_share, guiding_of

HALF_HOUR_S = 1800.0
MOST_HALF_HOURS = 28
"""The clocks of the Earth's zones lie up to 14 hours from UTC."""
SAME_NIGHT_S = 6 * 3600.0
SOME_MISSED, NEARLY_ALL = 0.9, 0.95
"""Of a night's exposures: a guider that covers fewer than the first is asked about its clock, if another would have it cover as
many as the second."""
NONE_COVERED = "the series covers none of this entry's subs"
SLOW_CADENCE_S = 900.0
"""A weather station may read once in a quarter of an hour: what it read holds until then."""
EMPTY = Readings()


class Series(Struct, frozen=True):
    """One quantity (or both axes of the guiding) in the order of time; no NaN. `values` has one row an axis."""

    times_s: Floats
    values: Floats

    def during(self, exposure: Exposure) -> tuple[Floats, Floats]:
        first, last = np.searchsorted(self.times_s, (exposure.start_s, exposure.end_s))
        return self.times_s[first:last], self.values[:, first:last]


def read_all_series(requests: Sequence[SeriesRequest], exposures: Sequence[Exposure]) -> SeriesReading:
    """Every table of the entry; what several of them tell of one time counts together."""
    problems: list[Problem] = []
    read: list[tuple[SeriesRequest, SeriesTable]] = []
    for request in requests:
        tables = [table for path, shown in request.files if (table := _table(request, path, shown, problems)) is not None]
        _tell_a_wrong_clock(request, tables, exposures, problems)
        read += [(request, table) for table in tables]
    guiding = {on_sky: _guiding(read, on_sky) for on_sky in (True, False)}
    weather = {name: _together(_weather(read, name)) for name in WEATHER}
    return SeriesReading(tuple(_readings(exposure, guiding, weather) for exposure in exposures), tuple(problems))


def _table(request: SeriesRequest, path: object, shown: str, problems: list[Problem]) -> SeriesTable | None:
    zone = ZoneInfo(request.time_zone) if request.time_zone else None
    of_table = LogProblems(shown)
    table = read_series(path, request.columns, zone, of_table)  # type: ignore[arg-type] # a path
    if table is not None and request.scale_arcsec_px is None and set(IN_PIXELS) & table.columns.keys():
        of_table.in_entry(request.item_place, "the guider's errors are in pixels, and its image scale is not told",
                       "add 'scale_arcsec_px' to the item")  # fmt: skip
        table = None
    problems += of_table.all()
    return table


def _guiding(read: Iterable[tuple[SeriesRequest, SeriesTable]], on_sky: bool) -> Series:
    parts = []
    for request, table in read:
        if request.ra_on_sky is on_sky and (errors := _errors(request, table)) is not None:
            parts.append((table.times_s, errors))
    return _together(parts)


def _errors(request: SeriesRequest, table: SeriesTable) -> Floats | None:
    """Both axes in arcsec; None for a table without them."""
    if set(GUIDING) <= table.columns.keys():
        return np.stack([table.columns[name] for name in GUIDING])
    if set(IN_PIXELS) <= table.columns.keys() and request.scale_arcsec_px:
        return request.scale_arcsec_px * np.stack([table.columns[name] for name in IN_PIXELS])
    return None


def _weather(read: Iterable[tuple[SeriesRequest, SeriesTable]], name: str) -> list[tuple[Floats, Floats]]:
    return [(table.times_s, table.columns[name][None]) for _, table in read if name in table.columns]


def _together(parts: Sequence[tuple[Floats, Floats]]) -> Series:
    if not parts:
        return Series(np.array([]), np.zeros((2, 0)))
    times_s, values = np.concatenate([part[0] for part in parts]), np.concatenate([part[1] for part in parts], axis=1)
    filled = np.flatnonzero(~np.isnan(values).any(axis=0))
    order = filled[np.argsort(times_s[filled], kind="stable")]
    return Series(times_s[order], values[:, order])


def _readings(exposure: Exposure, guiding: dict[bool, Series], weather: dict[str, Series]) -> Readings | None:
    means = {name: _mean(series, exposure) for name, series in weather.items()}
    readings = Readings(**_guided(exposure, guiding), **means)
    return None if readings == EMPTY else readings


def _guided(exposure: Exposure, guiding: dict[bool, Series]) -> dict[str, float]:
    """Errors told in hour angle are turned into those on the sky, where the declination is known."""
    factors = {True: 1.0, False: None if exposure.dec_deg is None else math.cos(math.radians(exposure.dec_deg))}
    for on_sky, series in guiding.items():
        factor = factors[on_sky]
        times_s, errors = series.during(exposure)
        if factor is not None and len(times_s):
            reduced = guiding_of(times_s, factor * errors[0], errors[1], exposure.start_s, exposure.end_s)
            if reduced is not None:
                return {
                    "guiding_ra_rms_arcsec": round(reduced.ra_rms_arcsec, 3),
                    "guiding_dec_rms_arcsec": round(reduced.dec_rms_arcsec, 3),
                    "guiding_drift_arcsec_min": round(reduced.drift_arcsec_min, 3),
                }
    return {}


def _mean(series: Series, exposure: Exposure) -> float | None:
    """Of what was read during it; where it is shorter than the pauses between readings, of the straight line between the two
    around its middle. None where too little of it is covered."""
    times_s, values = series.during(exposure)
    if len(times_s) > 1 and covered_share(times_s, exposure.start_s, exposure.end_s) >= LEAST_COVERED:
        return round(float(values[0].mean()), 2)
    middle_s = (exposure.start_s + exposure.end_s) / 2
    after = int(np.searchsorted(series.times_s, middle_s))
    around_s, around = series.times_s[max(after - 1, 0) : after + 1], series.values[0][max(after - 1, 0) : after + 1]
    if len(around_s) < 2 or around_s[1] - around_s[0] > GAP_IN_CADENCES * SLOW_CADENCE_S:
        return None
    return round(float(np.interp(middle_s, around_s, around)), 2)


def _tell_a_wrong_clock(
    request: SeriesRequest, tables: Sequence[SeriesTable], exposures: Sequence[Exposure], problems: list[Problem]
) -> None:
    """Tables that cover no exposure at all were written at another time, or by another clock; so was a guider's that misses some
    of its nights' exposures and would cover them all by another one. Weather goes on when nobody exposes, and tells less."""
    spans = [(table.times_s[0], table.times_s[-1]) for table in tables if len(table.times_s)]
    if not spans or not exposures:
        return
    middles_s = np.array([(exposure.start_s + exposure.end_s) / 2 for exposure in exposures])
    of_nights = middles_s[_inside([(first - SAME_NIGHT_S, last + SAME_NIGHT_S) for first, last in spans], middles_s)]
    near_s = of_nights if len(of_nights) else middles_s
    covered, is_guiding = int(_inside(spans, near_s).sum()), any(_errors(request, table) is not None for table in tables)
    if covered and not (is_guiding and covered < SOME_MISSED * len(near_s)):
        return
    steps = range(-MOST_HALF_HOURS, MOST_HALF_HOURS + 1)
    by_shift = {step: int(_inside(spans, near_s - step * HALF_HOUR_S).sum()) for step in steps}
    step = min(by_shift, key=lambda step: (-by_shift[step], abs(step)))
    if covered and by_shift[step] < NEARLY_ALL * len(near_s):
        return
    wrong = f"the series covers {covered} of the {len(near_s)} subs of its nights" if covered else NONE_COVERED
    remedy = f"with its times moved by {step / 2:+g} h it would cover {by_shift[step]} of them: does 'time_zone' fit?"
    problems.append(Problem(*request.item_place, wrong, remedy if by_shift[step] else "are these its nights?", "warning"))


def _inside(spans: Sequence[tuple[float, float]], times_s: Floats) -> np.ndarray:
    """Which of the times lie in one of the spans."""
    inside: np.ndarray = np.any([(times_s >= first) & (times_s <= last) for first, last in spans], axis=0)
    return inside
