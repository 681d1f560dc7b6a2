"""How many marks a panel holds, and which of them never go."""

import random
from datetime import UTC, date, datetime, timedelta
from statistics import median

import pytest

from sitegen.charts.plot import Dots, Line, Plot, Triangles
from sitegen.charts.quality_panel import moving_median
from sitegen.charts.quality_values import QualityNight, QualitySub, QualityValues
from sitegen.charts.sub_quality import CHART
from sitegen.charts.thinning import MOST_A_NIGHT, MOST_A_PANEL, Marks, apart, evenly, merged, shortened, thinned
from tests.charts.speaking import VOICE

Point = tuple[float, float]


def same(point: Point) -> Point:
    return point


def night(subs: int, day: int = 12, thrown_every: int = 50, seed: int = 1) -> QualityNight:
    """Ten hours of short subs around 2.5 arcseconds; one in a hundred is far off, every so manieth discarded."""
    chance = random.Random(seed)
    start = datetime(2026, 10, day, 10, tzinfo=UTC)
    widths = [chance.gauss(2.5, 0.05) + (chance.random() < 0.01) * chance.uniform(0.5, 1.5) for _ in range(subs)]
    return QualityNight(
        date(2026, 10, day),
        tuple(
            QualitySub(start + timedelta(hours=10) * place / subs, width, None, place % thrown_every > 0)
            for place, width in enumerate(widths)
        ),
    )


def plot_of(*nights: QualityNight) -> Plot:
    drawing = CHART.draw(QualityValues(nights, "Australia/Adelaide"), VOICE)[0].figure
    assert isinstance(drawing, Plot)
    return drawing


def units_of(drawing: Plot, points: tuple[Point, ...]) -> list[Point]:
    return [(drawing.x.place(x), drawing.y.place(y)) for x, y in points]


def marks_of(drawing: Plot, hollow: bool) -> list[Point]:
    """Places of dots in units; of discarded subs with those at the edges."""
    points = [point for mark in drawing.marks if isinstance(mark, Dots) and mark.hollow is hollow for point in mark.points]
    edges = [point for mark in drawing.marks if isinstance(mark, Triangles) for point in mark.points]
    return units_of(drawing, (*points, *(edges if hollow else ())))


def is_covered(place: Point, marks: list[Point], reach: float) -> bool:
    return any(abs(place[0] - x) <= reach and abs(place[1] - y) <= reach for x, y in marks)


def test_up_to_the_limit_every_sub_is_a_mark() -> None:
    """Four hundred subs are four hundred marks."""
    drawing = plot_of(night(MOST_A_NIGHT))
    assert len(marks_of(drawing, hollow=False)) + len(marks_of(drawing, hollow=True)) == MOST_A_NIGHT


@pytest.mark.parametrize("subs", [401, 2_000, 20_000])
def test_a_night_holds_no_more_marks_than_its_limit(subs: int) -> None:
    """And uses it: most of the marks are there."""
    drawing = plot_of(night(subs))
    shown = len(marks_of(drawing, hollow=False)) + len(marks_of(drawing, hollow=True))
    assert 0.9 * MOST_A_NIGHT <= shown <= MOST_A_NIGHT
    assert max(len(mark.points) for mark in drawing.marks if isinstance(mark, Line)) <= MOST_A_NIGHT


def test_all_nights_hold_no_more_than_a_panel() -> None:
    """Twenty nights of a thousand subs; their lines share as many points."""
    drawing = plot_of(*(night(1_000, day, seed=day) for day in range(1, 21)))
    shown = len(marks_of(drawing, hollow=False)) + len(marks_of(drawing, hollow=True))
    assert 0.9 * MOST_A_PANEL <= shown <= MOST_A_PANEL
    assert sum(len(mark.points) for mark in drawing.marks if isinstance(mark, Line)) <= MOST_A_PANEL


def test_every_discarded_sub_and_every_outlier_is_covered_by_a_mark() -> None:
    """By one within a unit in 5,000 subs, of which 50 lie far off and 100 were discarded: less than half of a dot."""
    subs = night(5_000).subs
    drawing = plot_of(night(5_000))
    start = datetime(2026, 10, 12, 13, 30, tzinfo=UTC)  # midnight in Adelaide, UTC+10:30
    placed = [((sub.start - start).total_seconds() / 3600, sub.fwhm_arcsec or 0.0, sub.kept) for sub in subs]
    low, top = drawing.y.low, drawing.y.high
    thrown = units_of(drawing, tuple((x, min(max(y, low), top)) for x, y, kept in placed if not kept))
    off = units_of(drawing, tuple((x, y) for x, y, kept in placed if kept and y > 2.9))
    assert len(thrown) == 100 and len(off) > 30
    assert all(is_covered(place, marks_of(drawing, hollow=True), 1.0) for place in thrown)
    assert all(is_covered(place, marks_of(drawing, hollow=False), 1.0) for place in off)


def test_an_outlier_is_three_spreads_from_the_moving_median() -> None:
    """Distances of 0.01 in the middle are a spread of 0.0148 (Rousseeuw & Croux 1993): 0.04 is ordinary, 0.05 is not."""
    heights = [0.01, -0.01, 0.04, -0.01, 0.05, 0.01, -0.05]
    points = [(float(place), 2.0 + height) for place, height in enumerate(heights)]
    marks = apart(points, [2.0] * 7)
    assert [x for x, _ in marks.outliers] == [4.0, 6.0]
    assert [x for x, _ in marks.plain] == [0.0, 1.0, 2.0, 3.0, 5.0]


def test_marks_in_one_square_are_one() -> None:
    """The first of them stands for all; squares grow only where too many are left."""
    points = [(0.1, 0.1), (0.9, 0.9), (1.1, 0.5), (3.5, 0.5)]
    assert merged(points, same, 3) == [(0.1, 0.1), (1.1, 0.5), (3.5, 0.5)]
    assert merged(points, same, 2) == [(0.1, 0.1), (3.5, 0.5)]
    assert merged(points, same, 1) == [(0.1, 0.1)]


def test_discarded_subs_leave_room_for_the_others() -> None:
    """However many there are, a quarter of the marks are ordinary subs."""
    plain, rest = [(float(place), 9.0) for place in range(500)], [(float(place), 1.0) for place in range(5_000)]
    marks = thinned(Marks(plain, rest, rest), same, 400)
    assert len(marks.plain) >= 100
    assert len(marks.outliers) <= 150 and len(marks.discarded) <= 150


def test_others_are_taken_evenly() -> None:
    """From the first on, in equal distances."""
    assert evenly(range(10), 4) == [0, 2, 5, 7]
    assert evenly(range(3), 4) == [0, 1, 2]


def test_a_long_line_has_a_point_for_each_stretch() -> None:
    """Its middle's place, the median of its heights."""
    points = [(float(place), float(place * place)) for place in range(9)]
    assert shortened(points, 3) == [(1.0, 1.0), (4.0, 16.0), (7.0, 49.0)]
    assert shortened(points, 9) == points


def test_the_moving_median_is_that_of_every_nine() -> None:
    """The window that moves along holds what the textbook's does (statistics.median of each nine), ends and ties included."""
    chance = random.Random(3)
    for length in (0, 1, 4, 5, 9, 60):
        values = [chance.choice((1.0, 1.5, 2.0, 7.0)) for _ in range(length)]
        assert moving_median(values) == [median(values[max(0, at - 4) : at + 5]) for at in range(length)]
