"""What a log may tell of each sub's stars and guiding, night by night."""

from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta
from statistics import median
from zoneinfo import ZoneInfo

from msgspec import Struct

FEWEST = 3  # subs that tell a measure, for it to be drawn


class QualitySub(Struct, frozen=True):
    """`start` is aware; a measurement that the log does not give is None."""

    start: datetime
    fwhm_arcsec: float | None
    guiding_rms_arcsec: float | None
    kept: bool = True


class QualityNight(Struct, frozen=True):
    """Subs in time order. `train` tells apart what was imaged at once with several trains, '' where there was one."""

    evening: date
    subs: tuple[QualitySub, ...]
    train: str = ""


class QualityValues(Struct, frozen=True):
    """Nights in order; `time_zone` the site's, an IANA name."""

    nights: tuple[QualityNight, ...]
    time_zone: str


class Measure(Struct, frozen=True):
    """One thing that a log may tell of each sub."""

    name: str
    of: Callable[[QualitySub], float | None]


MEASURES = (Measure("fwhm", lambda sub: sub.fwhm_arcsec), Measure("guiding", lambda sub: sub.guiding_rms_arcsec))


def told(values: QualityValues) -> tuple[Measure, ...]:
    """The measures that at least three subs give, of which one was kept."""
    subs = [sub for night in values.nights for sub in night.subs]
    return tuple(measure for measure in MEASURES if _is_told(measure, subs))


def _is_told(measure: Measure, subs: list[QualitySub]) -> bool:
    kept = [sub.kept for sub in subs if measure.of(sub) is not None]
    return len(kept) >= FEWEST and any(kept)


def offsets_of(values: QualityValues) -> list[timedelta]:
    """The site's distances from UTC over these nights; more than one where the clocks were changed between them."""
    zone = ZoneInfo(values.time_zone)
    offsets = [sub.start.astimezone(zone).utcoffset() or timedelta() for night in values.nights for sub in night.subs[:1]]
    return list(dict.fromkeys(offsets))


def hours_past_midnight(moment: datetime, evening: date, offset: timedelta) -> float:
    """On a clock that far from UTC, negative before midnight. One offset for all nights keeps the sky's hours together."""
    midnight = datetime.combine(evening + timedelta(days=1), datetime.min.time(), UTC) - offset
    return (moment - midnight).total_seconds() / 3600


def kept_values(measure: Measure, night: QualityNight) -> list[float]:
    """Of the kept subs that tell it, in time order."""
    return [value for sub in night.subs if sub.kept and (value := measure.of(sub)) is not None]


def night_median(measure: Measure, night: QualityNight) -> float | None:
    """Over the kept subs that tell it."""
    widths = kept_values(measure, night)
    return median(widths) if widths else None


def ranked(measure: Measure, values: QualityValues) -> list[QualityNight]:
    """Nights with a median, the sharpest first."""
    medians = [(value, night) for night in values.nights if (value := night_median(measure, night)) is not None]
    return [night for _, night in sorted(medians, key=lambda item: item[0])]
