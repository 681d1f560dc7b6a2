"""Star width and guiding through the night."""

from datetime import UTC, date, datetime, timedelta

import pytest

from sitegen.charts.plain_letters import as_written
from sitegen.charts.sub_quality import (
    CHART,
    MEASURES,
    QualityNight,
    QualitySub,
    QualityValues,
    hours_past_midnight,
    moving_median,
    night_median,
    offsets_of,
    quality_chart,
    title,
)
from tests.charts.speaking import VOICE

EVENING = date(2026, 10, 12)


def night(widths: list[float | None], evening: date = EVENING, thrown: tuple[int, ...] = ()) -> QualityNight:
    start = datetime(evening.year, evening.month, evening.day, 11, tzinfo=UTC)
    subs = (QualitySub(start + timedelta(minutes=5 * n), width, None, n not in thrown) for n, width in enumerate(widths))
    return QualityNight(evening, tuple(subs))


def values(*nights: QualityNight) -> QualityValues:
    return QualityValues(nights, "Australia/Adelaide")


def test_no_measurement_is_no_chart() -> None:
    """A log without star widths and guiding, or with two of them, shows nothing."""
    assert quality_chart([night([None] * 9)], "Australia/Adelaide", VOICE, "q") is None
    assert quality_chart([night([2.0, 2.1, None])], "Australia/Adelaide", VOICE, "q") is None
    assert quality_chart([], "Australia/Adelaide", VOICE, "q") is None


def test_only_thrown_subs_is_no_chart() -> None:
    """Where nothing was kept there is no line to draw."""
    assert quality_chart([night([2.0] * 6, thrown=tuple(range(6)))], "Australia/Adelaide", VOICE, "q") is None


def test_a_panel_for_each_measure_that_is_told() -> None:
    """Star widths alone give one panel."""
    assert len(CHART.draw(values(night([2.0] * 5)), VOICE)) == 1


def test_hours_are_the_sites() -> None:
    """11:00 UTC in October is 21:30 in Adelaide, which keeps summer time (UTC+10:30) from the month's first Sunday."""
    (offset,) = offsets_of(values(night([2.0] * 3)))
    assert offset == timedelta(hours=10, minutes=30)
    assert hours_past_midnight(datetime(2026, 10, 12, 11, tzinfo=UTC), EVENING, offset) == -2.5


def test_clocks_that_were_changed_between_nights_both_stand_under_the_chart() -> None:
    """Summer time begins there on 4 October 2026 (tz database): one sky, two rows of local hours, and UTC."""
    panel = CHART.draw(values(night([2.0] * 30, date(2026, 9, 28)), night([2.5] * 30, date(2026, 10, 12))), VOICE)[0]
    written = [as_written(text.get_text()) for text in panel.figure.axes[0].texts]
    assert {"+9:30", "+10:30", "UTC"} <= set(written)


def test_thrown_subs_do_not_count() -> None:
    """The median is over kept subs only."""
    assert night_median(MEASURES[0], night([2.0, 9.0, 2.4, 9.0, 2.2], thrown=(1, 3))) == 2.2


def test_a_thrown_sub_beyond_the_plot_is_a_mark_at_its_edge() -> None:
    """It does not flatten what was kept."""
    panel = CHART.draw(values(night([2.0, 2.1, 2.2, 30.0, 2.1], thrown=(3,))), VOICE)[0]
    axes = panel.figure.axes[0]
    top = axes.get_ylim()[1]
    assert top < 4.0
    assert [list(line.get_ydata()) for line in axes.lines if line.get_marker() == "^"] == [[top]]


def test_the_line_is_the_moving_median_of_nine() -> None:
    """One outlier moves nothing; at the ends fewer subs count."""
    assert moving_median([1.0, 1.0, 1.0, 50.0, 1.0, 1.0]) == [1.0] * 6
    assert moving_median([1.0, 2.0, 3.0]) == [2.0, 2.0, 2.0]


@pytest.mark.parametrize(
    ("widths", "sentence"),
    [
        ([2.0] * 4 + [2.3] * 4 + [3.0] * 4, "Stars grew from 2.0″ to 3.0″ through the night of 12 October 2026"),
        ([3.0] * 4 + [2.3] * 4 + [2.0] * 4, "Stars shrank from 3.0″ to 2.0″ through the night of 12 October 2026"),
        ([2.0] * 4 + [2.1] * 8, "Stars stayed near 2.1″ through the night of 12 October 2026"),
    ],
)
def test_one_night_tells_how_it_went(widths: list[float], sentence: str) -> None:
    """From its first third to its last, by more than a tenth or not."""
    assert title(values(night(list(widths))), VOICE) == sentence


def test_several_nights_name_the_best_and_the_worst() -> None:
    """By their medians."""
    nights = values(night([2.5] * 5), night([2.0] * 5, date(2026, 10, 13)), night([3.1] * 5, date(2026, 10, 18)))
    assert title(nights, VOICE) == "Stars were sharpest on 13 Oct, 2.0″ wide, and softest on 18 Oct, 3.1″"


def test_two_trains_at_once_are_told_apart() -> None:
    """One evening, two lines, each named with its train in the table."""
    long, short = (QualityNight(EVENING, night([width] * 5).subs, train) for width, train in ((2.0, "long"), (4.0, "short")))
    table = CHART.table(values(long, short), VOICE)
    assert [row[0] for row in table.rows] == ["12 October 2026, long", "12 October 2026, short"]
