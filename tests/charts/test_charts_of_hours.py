"""Hours by filter, year, month and Moon, and the use of dark hours: what is drawn is what was given."""

from datetime import date

import pytest
from matplotlib.axes import Axes

from sitegen.charts import dark_hours_used, hours_by_month, hours_by_moon, hours_by_year, light_gathered
from sitegen.charts.chart import Chart, drawn
from sitegen.charts.columns import Column
from sitegen.charts.dark_hours_used import UsedNight
from sitegen.charts.light_gathered import FilterLight
from sitegen.charts.plain_letters import as_written
from tests.charts.speaking import VOICE

HOUR = 3600.0


def axes_of(chart: Chart[object], values: object) -> Axes:
    (panel,) = chart.draw(values, VOICE)
    return panel.figure.axes[0]


def words_in(axes: Axes) -> list[str]:
    return [as_written(text.get_text()).replace("\u202f", " ") for text in axes.texts]


def test_a_bar_is_as_long_as_its_hours() -> None:
    """Two hours gathered end at 2 h; a wish of one more is hollow behind them."""
    lights = [FilterLight("R", "Red", (635,), 2 * HOUR, HOUR), FilterLight("L", "Clear", (), 4 * HOUR)]
    axes = axes_of(light_gathered.CHART, lights)
    filled = [bar for bar in axes.patches if bar.get_fill()]
    hollow = [bar for bar in axes.patches if not bar.get_fill()]
    assert [bar.get_width() for bar in filled] == [2.0, 4.0]
    assert [(bar.get_x(), bar.get_width()) for bar in hollow] == [(2.0, 1.0)]
    assert words_in(axes) == ["2.0 h, 1.0 h to go", "4.0 h"]


def test_two_passbands_share_a_bar() -> None:
    """Side by side, each half as high, both as long."""
    first, second = axes_of(light_gathered.CHART, [FilterLight("HO", "Duo", (656, 501), HOUR)]).patches
    assert first.get_height() == second.get_height() == pytest.approx(light_gathered.BAR / 2)
    assert first.get_width() == second.get_width() == 1.0
    assert second.get_y() == pytest.approx(first.get_y() + first.get_height())


def test_the_words_fit_behind_the_longest_bar() -> None:
    """However long the words, the bar's end leaves them room in the panel."""
    axes = axes_of(light_gathered.CHART, [FilterLight("Ha", "Hα", (656,), 1111 * HOUR, 222 * HOUR)])
    end = axes.transData.transform((1333.0, 0.0))[0]
    assert 0 < end - axes.bbox.x0 < axes.bbox.width - 20 * 8


def test_filters_without_light_draw_nothing() -> None:
    """No subs, no chart."""
    assert drawn(light_gathered.CHART, [FilterLight("R", "Red", (635,), 0.0, HOUR)], VOICE) is None


def test_narrowband_stands_on_broadband() -> None:
    """The column's height is the sum, and its number says so."""
    axes = axes_of(hours_by_year.CHART, [Column("2025", 3 * HOUR, HOUR), Column("2026", 0.0, 12 * HOUR)])
    broad, narrow = (list(container) for container in axes.containers)
    assert [(bar.get_y(), bar.get_height()) for bar in broad] == [(0.0, 3.0), (0.0, 0.0)]
    assert [(bar.get_y(), bar.get_height()) for bar in narrow] == [(3.0, 1.0), (0.0, 12.0)]
    assert words_in(axes)[:2] == ["4 h", "12 h"]


def test_the_year_with_most_light_is_the_title() -> None:
    """And a diary of one year says only that."""
    years = [Column("2025", HOUR, 0.0), Column("2026", 0.0, 2 * HOUR)]
    assert hours_by_year.title(years, VOICE) == "2026 gave the most light: 2\u202fh"
    assert hours_by_year.title(years[:1], VOICE) == "2025 gave 1\u202fh of light"


def test_months_are_letters_and_the_table_names_them() -> None:
    """Twelve columns, January first."""
    months = [Column(name, HOUR * place, 0.0) for place, name in enumerate(hours_by_month.NAMES)]
    labels = [as_written(label.get_text()) for label in axes_of(hours_by_month.CHART, months).figure.texts]
    assert "".join(label for label in labels if label.isalpha()) == "JFMAMJJASOND"
    assert [row[0] for row in hours_by_month.table(months, VOICE).rows] == list(hours_by_month.NAMES)


def test_a_class_of_the_moon_holds_its_lower_bound() -> None:
    """A quarter lit belongs to the second class, half to the third; the full Moon to the last."""
    nights = [(0.2499, HOUR, 0.0), (0.25, 2 * HOUR, 0.0), (0.5, 0.0, HOUR), (1.0, 0.0, 5 * HOUR)]
    columns = hours_by_moon.classes(nights)
    assert [(c.broad_s / HOUR, c.narrow_s / HOUR) for c in columns] == [(1.0, 0.0), (2.0, 0.0), (0.0, 1.0), (0.0, 5.0)]
    assert [c.label for c in columns] == ["0–25\u202f%", "25–50\u202f%", "50–75\u202f%", "75–100\u202f%"]


def test_the_moon_is_told_for_both_kinds() -> None:
    """Shares of each kind's own hours under a Moon at least half lit."""
    nights = [(0.1, 3 * HOUR, HOUR), (0.9, HOUR, 3 * HOUR)]
    assert hours_by_moon.title(nights, VOICE) == (
        "Under a Moon at least half lit came 75\u202f% of the narrowband hours and 25\u202f% of the broadband ones"
    )
    assert hours_by_moon.title([(0.9, HOUR, 0.0), (0.1, HOUR, 0.0)], VOICE) == (
        "50\u202f% of the hours came under a Moon at least half lit"
    )


NIGHTS = (
    UsedNight(date(2025, 11, 3), 1.0, 2 * HOUR),
    UsedNight(date(2025, 12, 3), 0.0, 6 * HOUR),
    UsedNight(date(2026, 1, 3), 0.5, 8 * HOUR),
)


def test_long_nights_weigh_more() -> None:
    """Two used hours of eight dark ones are a quarter, whatever the nights' own shares."""
    assert dark_hours_used.yearly(NIGHTS) == {2025: 0.25, 2026: 0.5}
    assert dark_hours_used.title(NIGHTS, VOICE) == "38\u202f% of the dark hours were used in 3 nights"


def test_each_night_is_a_dot_at_its_share() -> None:
    """By date across, by share up; each year's mean is a line over its own stretch."""
    axes = axes_of(dark_hours_used.CHART, NIGHTS)
    (points,) = axes.patches
    assert [tuple(point) for point in points.get_path().vertices[::2]] == [(n.evening.toordinal(), n.share) for n in NIGHTS]
    lines = [line for line in axes.lines if line.get_ydata()[0] == line.get_ydata()[1]]
    assert [line.get_ydata()[0] for line in lines] == [0.25, 0.5]
    assert lines[0].get_xdata()[1] == lines[1].get_xdata()[0] == date(2026, 1, 1).toordinal()


def test_within_one_year_months_are_named() -> None:
    """A first season shows its months."""
    axes = axes_of(dark_hours_used.CHART, NIGHTS[:2])
    written = [as_written(text.get_text()) for text in axes.figure.texts]
    assert [text for text in written if not text.endswith("%")] == ["1 Nov", "1 Dec"]


def test_one_night_is_no_chart() -> None:
    """A single dot answers nothing."""
    assert drawn(dark_hours_used.CHART, NIGHTS[:1], VOICE) is None
