"""How sharp the stars were, and how steady the guiding, sub by sub through the night."""

from collections.abc import Iterator, Sequence
from datetime import UTC, date, datetime, timedelta
from statistics import median

from sitegen.charts.chart import Chart, Drawn, Localizer, Panel, Table, drawn
from sitegen.charts.quality_panel import night_name, quality_panel
from sitegen.charts.quality_values import (
    Measure,
    QualityNight,
    QualitySub,
    QualityValues,
    kept_values,
    night_median,
    ranked,
    told,
)

MOST_NIGHTS = 12
CHANGED = 0.1  # a tenth more or less from the night's first third to its last is worth a sentence


def quality_chart(nights: Sequence[QualityNight], time_zone: str, voice: Localizer, key: str) -> Drawn | None:
    """The chart of an entry's nights, None where no log tells star width or guiding. `key` starts its ids in the page."""
    return drawn(CHART, QualityValues(tuple(nights), time_zone), voice, key)


def draw(values: QualityValues, voice: Localizer) -> tuple[Panel, ...]:
    return tuple(quality_panel(measure, values, voice) for measure in told(values))


def title(values: QualityValues, voice: Localizer) -> str:
    measure = told(values)[0]
    by_width = ranked(measure, values)
    if len(by_width) > 1:
        best, worst = by_width[0], by_width[-1]
        sharp, soft = (night_name(night, voice) for night in (best, worst))
        least, most = (_width(measure, night, voice) for night in (best, worst))
        return voice.say(f"quality.{measure.name}_nights", best=sharp, least=least, worst=soft, most=most)
    return _one_night(measure, by_width[0], voice)


def _width(measure: Measure, night: QualityNight, voice: Localizer) -> str:
    return voice.numbers.quantity(night_median(measure, night), "″")


def _one_night(measure: Measure, night: QualityNight, voice: Localizer) -> str:
    """Whether it grew, shrank or stayed, from the first third of the night to the last."""
    widths_arcsec = kept_values(measure, night)
    third = max(1, len(widths_arcsec) // 3)
    first, last = median(widths_arcsec[:third]), median(widths_arcsec[-third:])
    change = "grew" if last > first * (1 + CHANGED) else "shrank" if last < first * (1 - CHANGED) else "stayed"
    told_as = {"first": first, "last": last, "middle": median(widths_arcsec)}
    widths = {name: voice.numbers.quantity(value, "″") for name, value in told_as.items()}
    return voice.say(f"quality.{measure.name}_{change}", day=voice.numbers.day(night.evening), **widths)


def table(values: QualityValues, voice: Localizer) -> Table:
    """One row a sub would be long: one row a night and measure, its median and range over the kept subs. Of more nights than
    `MOST_NIGHTS` the sharpest and the softest have rows, those between them one together."""
    heads = tuple(voice.say(f"quality.{name}") for name in ("evening", "measure", "subs", "median", "least", "most"))
    if len(values.nights) > MOST_NIGHTS:
        return Table(heads, tuple(row for measure in told(values) for row in _extremes(measure, values, voice)))
    measured = [(measure, night) for night in values.nights for measure in told(values)]
    rows = [_row(measure, night, voice) for measure, night in measured if night_median(measure, night) is not None]
    return Table(heads, tuple(rows))


def _extremes(measure: Measure, values: QualityValues, voice: Localizer) -> Iterator[tuple[str, ...]]:
    nights, half = ranked(measure, values), MOST_NIGHTS // 2
    between = nights[half:-half]
    yield from (_row(measure, night, voice) for night in nights[:half])
    if between:
        widths_arcsec = [width for night in between for width in kept_values(measure, night)]
        yield _numbers(voice.say("quality.between", n=len(between)), measure, widths_arcsec, voice)
    yield from (_row(measure, night, voice) for night in nights[half:][-half:])


def _row(measure: Measure, night: QualityNight, voice: Localizer) -> tuple[str, ...]:
    when = ", ".join(part for part in (voice.numbers.day(night.evening), night.train) if part)
    return _numbers(when, measure, kept_values(measure, night), voice)


def _numbers(when: str, measure: Measure, widths_arcsec: Sequence[float], voice: Localizer) -> tuple[str, ...]:
    extent = (median(widths_arcsec), min(widths_arcsec), max(widths_arcsec))
    numbers = [voice.numbers.quantity(value, "″") for value in extent]
    return (when, voice.say(f"quality.{measure.name}"), str(len(widths_arcsec)), *numbers)


def _example_night(evening: date, worse: float) -> QualityNight:
    start = datetime(evening.year, evening.month, evening.day, 10, tzinfo=UTC)
    subs = []
    for step in range(70):
        fwhm_arcsec = 2.2 + worse + 0.01 * step + 0.1 * (step * 7 % 5)
        subs.append(QualitySub(start + timedelta(minutes=6 * step), fwhm_arcsec, 0.5 + 0.04 * (step * 3 % 7), step % 9 > 0))
    return QualityNight(evening, tuple(subs))


EXAMPLE = QualityValues((_example_night(date(2026, 10, 12), 0.0), _example_night(date(2026, 10, 18), 0.6)), "Australia/Adelaide")

CHART: Chart[QualityValues] = Chart(
    name="sub_quality",
    question="Did the stars stay sharp through the night?",
    enough=lambda values: bool(told(values)),
    draw=draw,
    title=title,
    table=table,
    example=EXAMPLE,
)
