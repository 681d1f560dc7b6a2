"""What is laid over a solved picture: in its place under crop, flip and resize, with names that find room."""

from math import cos, hypot, radians, sin

import pytest
from msgspec.structs import replace

from sitegen.build.records import dump
from sitegen.diary.entry import PointingSolution
from sitegen.diary.target import Target
from sitegen.facts.views import MosaicView, PanelView
from sitegen.pages.overlay import DESK_PX, LETTER_PX, LINE_PX, Overlay, overlay_of
from sitegen.pages.panel_outlines import panel_outlines
from sitegen.pictures.pointing import stated_solution
from sitegen.stars.solving.transforms import cropped, flipped_left_right, resized, turned_clockwise

SCULPTOR = Target("ngc-253", "NGC 253", 11.888, -25.288, "galaxy", (26.8, 4.6))
FIELD = stated_solution(PointingSolution(11.9, -25.3, 4.0, 20.0), 1500, 1000)


def target_in(overlay: Overlay) -> tuple[float, float]:
    one = next(marked for marked in overlay.objects if marked.is_target)
    return one.x, one.y


def test_the_target_stays_on_its_pixel() -> None:
    """Where the solution has it; mirrored, cropped and resized with the picture."""
    x, y = target_in(overlay_of(FIELD, (SCULPTOR,)))
    wanted_x, wanted_y = FIELD.to_pixel(SCULPTOR.ra_deg, SCULPTOR.dec_deg)
    assert (x, y) == pytest.approx(((float(wanted_x) + 0.5) / 1500, (float(wanted_y) + 0.5) / 1000), abs=1e-5)
    assert target_in(overlay_of(flipped_left_right(FIELD), (SCULPTOR,))) == pytest.approx((1 - x, y), abs=1e-5)
    assert target_in(overlay_of(resized(FIELD, 300, 200), (SCULPTOR,))) == pytest.approx((x, y), abs=1e-5)
    part = overlay_of(cropped(FIELD, 300, 200, 900, 600), (SCULPTOR,))
    assert target_in(part) == pytest.approx(((1500 * x - 300) / 900, (1000 * y - 200) / 600), abs=1e-5)
    assert target_in(overlay_of(turned_clockwise(FIELD), (SCULPTOR,))) == pytest.approx((1 - y, x), abs=1e-5)


def test_north_is_where_the_author_turned_it() -> None:
    """Up is 20° from north to east: north lies 20° to the right of up, east 90° to its left; mirrored, to its right."""
    across, down = sin(radians(20)), cos(radians(20))
    plain = overlay_of(FIELD, ())
    assert plain.north == pytest.approx((across, -down), abs=2e-3)  # 0.1°, which nobody sees
    assert plain.east == pytest.approx((-down, -across), abs=2e-3)
    mirrored = overlay_of(flipped_left_right(FIELD), ())
    assert mirrored.east == pytest.approx((down, -across), abs=2e-3)


def test_the_target_bears_the_author_s_name_and_every_name_it_has() -> None:
    """So that its letters lead to the target's page however the catalogue calls it."""
    called = replace(SCULPTOR, name="The Silver Coin", slug="the-silver-coin", aliases=("NGC 253",))
    marked = overlay_of(FIELD, (called,)).objects[0]
    assert marked.letters.text == "The Silver Coin"
    assert marked.slugs[0] == "the-silver-coin"
    assert "ngc-253" in marked.slugs
    names = [one.letters.text for one in overlay_of(FIELD, (called,)).objects]
    assert "NGC 253" not in names


def test_no_name_stands_in_a_corner_that_is_not_vouched_for() -> None:
    """A solution that is unsure of its corners names what is near the middle, and nothing beyond 0.6 of the way to a corner."""
    sure = replace(stated_solution(PointingSolution(161.3, -59.87, 5.7, 0.0), 2200, 1470), corner_arcsec=5.0)
    unsure = replace(sure, corner_arcsec=50.0)
    away_px = [max(hypot(2200 * (marked.x - 0.5), 1470 * (marked.y - 0.5)) for marked in overlay_of(each, ()).objects)
               for each in (sure, unsure)]
    assert away_px[0] > 0.7 * hypot(1100, 735)
    assert away_px[1] <= 0.601 * hypot(1100, 735)


def test_no_two_names_lie_on_each_other() -> None:
    """In a crowded field, on a picture shown 1000 px wide."""
    overlay = overlay_of(stated_solution(PointingSolution(161.3, -59.87, 5.7, 0.0), 2200, 1470), ())
    boxes = []
    for letters in (*overlay.grid_letters, *(marked.letters for marked in overlay.objects)):
        length = LETTER_PX * len(letters.text)
        left = letters.x * DESK_PX + letters.dx - {"start": 0, "middle": length / 2, "end": length}[letters.anchor]
        base = letters.y * DESK_PX * 1470 / 2200 + letters.dy
        boxes.append((left, base - LINE_PX + 4, left + length, base + 4))
    named = boxes[len(overlay.grid_letters) :]
    assert len(named) > 5
    touching = [(one, other) for place, one in enumerate(named) for other in boxes[: len(overlay.grid_letters) + place]
                if one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]]  # fmt: skip
    assert touching == []


def test_a_slanted_outline_bears_its_name_at_its_upper_end() -> None:
    """The letters stand above the uppermost point of the ellipse, not above its middle."""
    marked = overlay_of(FIELD, (SCULPTOR,)).objects[0]
    assert marked.outline is not None
    assert marked.letters.y < marked.y
    assert abs(marked.letters.x - marked.x) > 0.02


def test_a_name_in_wide_letters_is_given_its_room() -> None:
    """A target's name that ends before another's begins leaves it standing; in square letters, as long again by more than half,
    it does not."""
    solution = stated_solution(PointingSolution(161.3, -59.87, 5.7, 0.0), 2200, 1470)
    neighbour = next(marked.letters for marked in overlay_of(solution, ()).objects if marked.letters.anchor == "start")
    start_px = neighbour.x * DESK_PX + neighbour.dx - 10 * LETTER_PX - 25  # ten Latin letters and 15 px of free sky
    ra_deg, dec_deg = solution.to_sky(start_px * 2.2 - 0.5, neighbour.y * 1470 - 0.5)

    def named(letter: str) -> list[str]:
        target = Target("one", 10 * letter, float(ra_deg), float(dec_deg), "nebula")
        return [marked.letters.text for marked in overlay_of(solution, (target,)).objects]

    assert neighbour.text in named("M")
    assert neighbour.text not in named("星")
    assert named("星")[0] == 10 * "星"


def panel(name: str, ra_deg: float | None, dec_deg: float | None, rotation_deg: float | None = 20.0) -> PanelView:
    return PanelView(name, "author", ra_deg, dec_deg, "long", (1.0, 0.5), rotation_deg, None, ())


def test_a_panel_turned_as_the_picture_has_sides_like_the_picture() -> None:
    """A field of 1° × 0.5° at 4″ a pixel, turned as the picture: 900 × 450 pixels, upright, around its middle; on the tangent
    plane, so that its sides are a thousandth of a degree longer at most."""
    outlines = panel_outlines(MosaicView((panel("1", FIELD.ra_deg, FIELD.dec_deg),), ()), FIELD)
    points = [tuple(map(float, point.split(","))) for point in outlines[0].points.split(" ")]
    across, down = [x for x, _ in points], [y for _, y in points]
    assert (max(across) - min(across), max(down) - min(down)) == pytest.approx((900, 450), abs=0.5)
    assert ((max(across) + min(across)) / 2, (max(down) + min(down)) / 2) == pytest.approx((750, 500), abs=0.2)
    assert outlines[0].at == pytest.approx((0.5, 0.5 - 0.46 * 450 / 1000), abs=1e-3)
    assert outlines[0].is_turned
    assert dump(outlines)  # plain numbers: a page is kept by what stands in it


def test_only_panels_that_reach_into_the_picture_are_drawn() -> None:
    """Neither one next to it, nor one behind the observer, nor one without a place; one of which only a corner is seen is,
    without a name where no place for it is inside."""
    corner = FIELD.to_sky(-200.0, -100.0)
    outlines = panel_outlines(MosaicView((
        panel("corner", float(corner[0]), float(corner[1])), panel("beside", FIELD.ra_deg, FIELD.dec_deg + 3),
        panel("behind", FIELD.ra_deg + 180, -FIELD.dec_deg), panel("nowhere", None, None),
    ), ()), FIELD)  # fmt: skip
    assert [(outline.name, outline.at) for outline in outlines] == [("corner", None)]
    assert panel_outlines(None, FIELD) == ()


def test_a_panel_of_an_unknown_turn_says_so() -> None:
    """It is drawn with north up, and told apart."""
    assert not panel_outlines(MosaicView((panel("1", FIELD.ra_deg, FIELD.dec_deg, None),), ()), FIELD)[0].is_turned
