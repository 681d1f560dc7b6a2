"""Star width and guiding through the night."""

from datetime import UTC, date, datetime, timedelta

import pytest

from sitegen.charts.plot import Dots, Line, Plot, Triangles, Words
from sitegen.charts.quality_panel import moving_median
from sitegen.charts.quality_values import (
    MEASURES,
    QualityNight,
    QualitySub,
    QualityValues,
    hours_past_midnight,
    night_median,
    offsets_of,
)
from sitegen.charts.sub_quality import CHART, quality_chart, title
from tests.charts.speaking import VOICE

EVENING = date(2026, 10, 12)


def night(widths: list[float | None], evening: date = EVENING, thrown: tuple[int, ...] = ()) -> QualityNight:
    start = datetime(evening.year, evening.month, evening.day, 11, tzinfo=UTC)
    subs = (QualitySub(start + timedelta(minutes=5 * n), width, None, n not in thrown) for n, width in enumerate(widths))
    return QualityNight(evening, tuple(subs))


def values(*nights: QualityNight) -> QualityValues:
    return QualityValues(nights, "Australia/Adelaide")


def plot_of(shown: QualityValues) -> Plot:
    drawing = CHART.draw(shown, VOICE)[0].figure
    assert isinstance(drawing, Plot)
    return drawing


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
    drawing = plot_of(values(night([2.0] * 30, date(2026, 9, 28)), night([2.5] * 30, date(2026, 10, 12))))
    rows = {mark.text: mark.place[1] for mark in drawing.marks if isinstance(mark, Words) and mark.place[0] == 0.0}
    assert list(rows)[:3] == ["+9:30", "+10:30", "UTC"]
    assert rows["+9:30"] < rows["+10:30"] < rows["UTC"] < drawing.height


def test_thrown_subs_do_not_count() -> None:
    """The median is over kept subs only."""
    assert night_median(MEASURES[0], night([2.0, 9.0, 2.4, 9.0, 2.2], thrown=(1, 3))) == 2.2


def test_a_thrown_sub_beyond_the_plot_is_a_mark_at_its_edge() -> None:
    """It does not flatten what was kept."""
    drawing = plot_of(values(night([2.0, 2.1, 2.2, 30.0, 2.1], thrown=(3,))))
    top = drawing.y.high
    assert top < 4.0
    (marks,) = (mark for mark in drawing.marks if isinstance(mark, Triangles))
    assert [y for _, y in marks.points] == [top] and not marks.downward


def test_a_thrown_sub_below_the_plot_is_a_mark_at_its_foot() -> None:
    """A sub that measured too sharp to be true was clipped away before."""
    drawing = plot_of(values(night([4.0, 4.1, 4.2, 0.3, 4.1], thrown=(3,))))
    (marks,) = (mark for mark in drawing.marks if isinstance(mark, Triangles))
    assert [y for _, y in marks.points] == [drawing.y.low] and marks.downward
    assert drawing.y.low > 0.3


def test_a_dot_a_sub_hollow_where_it_was_thrown_away() -> None:
    """Each at its hour and width: 21:30, 21:35 and so on."""
    drawing = plot_of(values(night([2.0, 2.1, 2.2, 2.3], thrown=(2,))))
    kept, thrown = (mark for mark in drawing.marks if isinstance(mark, Dots))
    assert kept.points == ((-2.5, 2.0), (pytest.approx(-2.5 + 5 / 60), 2.1), (-2.25, 2.3))
    assert thrown.hollow and [y for _, y in thrown.points] == [2.2]


def test_a_pause_breaks_the_line() -> None:
    """Two hours without a sub: two lines, of the subs before and after."""
    early, late = night([2.0] * 3), night([2.0] * 4).subs
    moved = tuple(QualitySub(sub.start + timedelta(hours=2, minutes=15), sub.fwhm_arcsec, None) for sub in late)
    drawing = plot_of(values(QualityNight(EVENING, early.subs + moved)))
    assert [len(mark.points) for mark in drawing.marks if isinstance(mark, Line)] == [3, 4]


def test_guiding_that_only_discarded_subs_tell_is_no_panel() -> None:
    """There is nothing to scale it by; the star widths are drawn all the same."""
    subs = [QualitySub(sub.start, 2.0, None if place else 0.5, bool(place)) for place, sub in enumerate(night([2.0] * 9).subs)]
    thrown = [QualitySub(sub.start + timedelta(hours=2), None, 0.9, False) for sub in subs[:3]]
    assert len(CHART.draw(values(QualityNight(EVENING, (*subs, *thrown))), VOICE)) == 1


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


def test_the_table_holds_a_dozen_nights_and_all_between_them_in_one_row() -> None:
    """Up to twelve nights each has its row, by its day; of thirty the six sharpest and the six softest have, and the other
    eighteen one together, with their own range."""
    few = CHART.table(values(*(night([2.0 + 0.1 * day] * 3, EVENING + timedelta(days=day)) for day in range(12))), VOICE)
    assert [row[0] for row in few.rows] == [VOICE.numbers.day(EVENING + timedelta(days=day)) for day in range(12)]
    days = [day * 7 % 30 for day in range(30)]
    nights = (night([2.0 + 0.1 * rank] * 3, EVENING + timedelta(days=day)) for day, rank in enumerate(days))
    many = CHART.table(values(*nights), VOICE)
    named = [VOICE.numbers.day(EVENING + timedelta(days=days.index(rank))) for rank in (*range(6), *range(24, 30))]
    assert [row[0] for row in many.rows] == [*named[:6], "All nights between these (18)", *named[6:]]
    assert many.rows[6][2:] == ("54", "3.5″", "2.6″", "4.3″")


def test_one_night_more_than_a_dozen_is_a_row_as_well() -> None:
    """Twelve rows of nights and one of the one between."""
    table = CHART.table(values(*(night([2.0 + 0.1 * day] * 3, EVENING + timedelta(days=day)) for day in range(13))), VOICE)
    assert len(table.rows) == 13
    assert table.rows[6][2:] == ("3", "2.6″", "2.6″", "2.6″")
