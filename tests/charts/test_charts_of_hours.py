"""Hours by filter, year, month and Moon, and the use of dark hours: what is drawn is what was given."""

from datetime import date, timedelta

from sitegen.charts import dark_hours_used, hours_by_month, hours_by_moon, hours_by_year, light_gathered
from sitegen.charts.chart import Chart, drawn
from sitegen.charts.columns import Column
from sitegen.charts.dark_hours_used import UsedNight
from sitegen.charts.light_gathered import FilterLight
from sitegen.charts.plot import Bar, Dots, Line, Plot, Rules, Words
from tests.charts.speaking import VOICE

HOUR = 3600.0


def plot_of(chart: Chart[object], values: object) -> Plot:
    (panel,) = chart.draw(values, VOICE)
    assert isinstance(panel.figure, Plot)
    return panel.figure


def bars_in(drawing: Plot) -> list[Bar]:
    return [mark for mark in drawing.marks if isinstance(mark, Bar)]


def words_in(drawing: Plot, *anchors: str) -> list[str]:
    marks = [mark for mark in drawing.marks if isinstance(mark, Words)]
    return [mark.text.replace("\u202f", " ") for mark in marks if mark.anchor in anchors]


def test_a_bar_is_as_long_as_its_hours() -> None:
    """Two hours gathered end at 2 h on night ground; a wish of one more is hollow behind them."""
    lights = [FilterLight("R", "Red", ("635-broad",), 2 * HOUR, HOUR), FilterLight("L", "Clear", (), 4 * HOUR)]
    drawing = plot_of(light_gathered.CHART, lights)
    lengths = [(bar.corner[0], bar.far[0], bar.role, bar.hollow) for bar in bars_in(drawing)]
    assert lengths == [
        (0.0, 2.0, "night", False), (0.0, 2.0, "nm635-broad", False), (2.0, 3.0, "dim", True),
        (0.0, 4.0, "night", False), (0.0, 4.0, "nm", False),
    ]  # fmt: skip
    assert words_in(drawing, "start") == ["2.0 h, 1.0 h to go", "4.0 h"]
    assert words_in(drawing, "end") == ["R", "L"]


def test_two_passbands_share_a_bar() -> None:
    """Red above blue-green, both as long as the night ground that they lie on, neither outside it."""
    ground, red, blue = bars_in(plot_of(light_gathered.CHART, [FilterLight("HO", "Duo", ("656-line", "501-line"), HOUR)]))
    assert ground.far[0] == red.far[0] == blue.far[0] == 1.0
    assert (ground.corner[1], ground.far[1]) == (-light_gathered.BAR / 2, light_gathered.BAR / 2)
    assert ground.corner[1] <= red.corner[1] < red.far[1] < blue.corner[1] < blue.far[1] <= ground.far[1]


def test_the_words_fit_behind_the_longest_bar() -> None:
    """However long the words, the bar's end leaves them room in the panel."""
    drawing = plot_of(light_gathered.CHART, [FilterLight("Ha", "Hα", ("656-line",), 1111 * HOUR, 222 * HOUR)])
    assert drawing.x.start < drawing.x.place(1333.0) < drawing.x.end - 20 * 8


def test_filters_without_light_draw_nothing() -> None:
    """No subs, no chart."""
    assert drawn(light_gathered.CHART, [FilterLight("R", "Red", ("635-broad",), 0.0, HOUR)], VOICE) is None


def test_narrowband_stands_on_broadband() -> None:
    """The column's height is the sum, and its number says so."""
    drawing = plot_of(hours_by_year.CHART, [Column("2025", 3 * HOUR, HOUR), Column("2026", 0.0, 12 * HOUR)])
    heights = [(bar.role, bar.corner[1], bar.far[1]) for bar in bars_in(drawing)]
    assert heights == [("broad", 0.0, 3.0), ("narrow", 3.0, 4.0), ("narrow", 0.0, 12.0)]
    assert [text for text in words_in(drawing, "middle") if text.endswith("h")] == ["4 h", "12 h"]


def test_years_too_many_to_be_named_beside_each_other_are_named_in_steps() -> None:
    """Ten columns have room for every second name, the last year's among them; six for all."""
    years = [Column(str(2012 + place), HOUR, 0.0) for place in range(10)]
    assert words_in(plot_of(hours_by_year.CHART, years), "middle") == ["2013", "2015", "2017", "2019", "2021"]
    assert len([text for text in words_in(plot_of(hours_by_year.CHART, years[:6]), "middle") if "h" not in text]) == 6


def test_the_year_with_most_light_is_the_title() -> None:
    """And a diary of one year says only that."""
    years = [Column("2025", HOUR, 0.0), Column("2026", 0.0, 2 * HOUR)]
    assert hours_by_year.title(years, VOICE) == "2026 gave the most light: 2\u202fh"
    assert hours_by_year.title(years[:1], VOICE) == "2025 gave 1\u202fh of light"


def test_months_are_letters_and_the_table_names_them() -> None:
    """Twelve columns, January first."""
    months = [Column(name, HOUR * place, 0.0) for place, name in enumerate(hours_by_month.NAMES)]
    assert "".join(words_in(plot_of(hours_by_month.CHART, months), "middle")) == "JFMAMJJASOND"
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
    drawing = plot_of(dark_hours_used.CHART, NIGHTS)
    (dots,) = (mark for mark in drawing.marks if isinstance(mark, Dots))
    assert list(dots.points) == [(night.evening.toordinal(), night.share) for night in NIGHTS]
    first, second = (mark.points for mark in drawing.marks if isinstance(mark, Line))
    assert [y for _, y in (*first, *second)] == [0.25, 0.25, 0.5, 0.5]
    new_year = date(2026, 1, 1).toordinal()
    assert first[1][0] == second[0][0] == new_year
    assert Rules("x", (new_year,)) in drawing.marks


def test_within_one_year_months_are_named() -> None:
    """A first season shows its months."""
    assert words_in(plot_of(dark_hours_used.CHART, NIGHTS[:2]), "middle") == ["1 Nov", "1 Dec"]


def test_the_table_of_many_nights_tells_the_years() -> None:
    """Two hundred nights have a row each, more of them a row a year: its dark hours, and the share of them."""
    many = [UsedNight(date(2024, 1, 1) + timedelta(days=3 * step), 0.5, 6 * HOUR) for step in range(201)]
    table = dark_hours_used.table(many, VOICE)
    assert table.rows == (("2024", "732\u202fh", "50\u202f%"), ("2025", "474\u202fh", "50\u202f%"))
    assert table.heads[0] == "Year"
    assert len(dark_hours_used.table(many[:200], VOICE).rows) == 200


def test_one_night_is_no_chart() -> None:
    """A single dot answers nothing."""
    assert drawn(dark_hours_used.CHART, NIGHTS[:1], VOICE) is None
