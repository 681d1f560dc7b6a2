"""The map of all targets and the map of one."""

from xml.etree.ElementTree import fromstring

import numpy as np
import pytest
from matplotlib.patches import Circle, Ellipse, Polygon
from matplotlib.path import Path

from sitegen.charts import finder_map, sky_map
from sitegen.charts.chart import drawn
from sitegen.charts.finder_map import finder_chart
from sitegen.charts.finder_values import CameraField, FinderValues
from sitegen.charts.lettering import Lettering
from sitegen.charts.sky_map import SkyTarget
from tests.charts.speaking import VOICE

SCULPTOR = SkyTarget("NGC 253", 11.888, -25.288, 40_000.0, "../targets/ngc-253/index.html")
CARINA = SkyTarget("NGC 3372", 161.265, -59.867, 10_000.0, "../targets/ngc-3372/index.html")
VEIL = SkyTarget("NGC 6992", 314.079, 31.717, 0.0, "../targets/ngc-6992/index.html")
EQUATOR = SkyTarget("M 42", 83.822, -5.391, 10_000.0, "../targets/m-42/index.html")


def rings(panel_index: int, *targets: SkyTarget) -> dict[str | None, Circle]:
    axes = sky_map.draw(targets, VOICE)[panel_index].figure.axes[0]
    return {ring.get_url(): ring for ring in axes.patches if isinstance(ring, Circle) and ring.get_url()}


def test_the_half_with_more_targets_comes_first() -> None:
    """A southern diary opens on the southern sky."""
    labels = [panel.label for panel in sky_map.draw((SCULPTOR, CARINA, VEIL), VOICE)]
    assert labels == ["The sky around the south pole", "The sky around the north pole"]
    assert sky_map.draw((VEIL,), VOICE)[0].label == "The sky around the north pole"


def test_the_sky_is_seen_from_inside() -> None:
    """Around the south pole 0 h is up and hours run to the left: NGC 253 (0.8 h) stands up and a little left, NGC 3372 (10.8 h)
    down and to the left. Around the north pole 0 h is down, and NGC 6992 (20.9 h) stands down and to the right."""
    south = rings(0, SCULPTOR, CARINA)
    x, y = south[SCULPTOR.address].center
    assert -60 < x < 0 < y
    x, y = south[CARINA.address].center
    assert x < 0 and y < 0
    x, y = rings(0, VEIL)[VEIL.address].center
    assert x > 0 and y < 0


def test_areas_grow_with_the_light() -> None:
    """Four times the light, twice as much radius above the least."""
    found = rings(0, SCULPTOR, CARINA)
    assert found[SCULPTOR.address].radius - 4.0 == pytest.approx(2 * (found[CARINA.address].radius - 4.0))


def test_what_lies_near_the_equator_is_in_both_halves() -> None:
    """Each disc reaches a little beyond it."""
    assert EQUATOR.address in rings(0, EQUATOR)
    assert EQUATOR.address in rings(1, EQUATOR)


def test_the_whole_map_is_linked() -> None:
    """Mark and label are one link, named after the target."""
    found = drawn(sky_map.CHART, (SCULPTOR, CARINA), VOICE, "map")
    assert found is not None
    links = list(fromstring(found.svgs[0]).iter("a"))
    assert [(link.get("href"), link[0].text) for link in links] == [(one.address, one.name) for one in (SCULPTOR, CARINA)]
    assert all(link.find("text") is not None for link in links)


@pytest.mark.parametrize(
    ("targets", "sentence"),
    [
        ((SCULPTOR, VEIL), "1 of 2 targets lie south of the celestial equator"),
        ((SCULPTOR, CARINA), "All 2 targets lie south of the celestial equator"),
        ((VEIL,), "The only target lies north of the celestial equator"),
    ],
)
def test_the_title_counts_the_halves(targets: tuple[SkyTarget, ...], sentence: str) -> None:
    """Where most of the work lies."""
    assert sky_map.title(targets, VOICE) == sentence


def test_a_name_is_shown_as_it_is_written() -> None:
    """No sign of it is taken for a formula or for markup."""
    target = SkyTarget("A $b$ & <c>", 11.888, -25.288, 1.0, "a/index.html")
    found = drawn(sky_map.CHART, (target,), VOICE, "map")
    assert found is not None
    assert [text.text for link in fromstring(found.svgs[0]).iter("a") for text in link.iter("text")] == ["A $b$ & <c>"]


def test_no_target_is_no_map() -> None:
    """An empty sky is not drawn."""
    assert drawn(sky_map.CHART, (), VOICE) is None


FIELD = CameraField("long train", 0.9, 0.6, 30.0)


def finder(*fields: CameraField, size: tuple[float, float] | None = (27.5, 6.8)) -> FinderValues:
    return FinderValues("NGC 253", 11.888, -25.288, size, fields)


def test_the_field_is_to_scale() -> None:
    """The close map is 2.6 diagonals wide; the box's sides have the field's ratio."""
    axes = finder_map.draw(finder(FIELD), VOICE)[1].figure.axes[0]
    _frame, box = (patch for patch in axes.patches if isinstance(patch, Polygon))
    corners = box.get_xy()[:-1:8]
    width, height = (((corners[a] - corners[b]) ** 2).sum() ** 0.5 for a, b in ((1, 2), (0, 1)))
    assert width / height == pytest.approx(1.5, rel=1e-3)
    assert width == pytest.approx(400 * 0.9 / (2.6 * FIELD.diagonal_deg), rel=1e-3)


ALONG = [  # position angle, where the northern end of the longer axis lies, as a part of its length: x to the right, y up
    (0.0, (0.0, 1.0)),
    (52.0, (-0.788, 0.616)),
    (90.0, (-1.0, 0.0)),
    (170.0, (0.174, 0.985)),
]


@pytest.mark.parametrize(("angle", "end"), ALONG)
def test_a_galaxy_lies_as_it_does_on_the_sky(angle: float, end: tuple[float, float]) -> None:
    """From north (up) through east (left): at 52° the upper end leans to the left, at 170° to the right. Sines and cosines worked
    by hand, to their last digit; the axes are those of the size, in the scale of the map, to 0.1 % (a degree of it is curved)."""
    values = FinderValues("NGC 253", 11.888, -25.288, (27.5, 6.8), (FIELD,), angle)
    axes = finder_map.draw(values, VOICE)[1].figure.axes[0]
    (ellipse,) = (patch for patch in axes.patches if isinstance(patch, Ellipse) and not isinstance(patch, Circle))
    outline = np.concatenate(ellipse.get_path().transformed(ellipse.get_patch_transform()).to_polygons())
    farthest = outline[np.hypot(*outline.T).argmax()]
    length = np.hypot(*farthest)
    upper = farthest / length * (1 if np.dot(farthest, end) > 0 else -1)
    assert upper == pytest.approx(np.array(end), abs=0.02)
    per_deg = 400 / (2.6 * FIELD.diagonal_deg)
    assert length == pytest.approx(per_deg * 27.5 / 120, rel=1e-3)
    assert np.hypot(*outline.T).min() == pytest.approx(per_deg * 6.8 / 120, rel=1e-3)


@pytest.mark.parametrize(("size", "angle"), [((27.5, 6.8), None), ((27.5, 27.5), 52.0), ((0.5, 0.2), 52.0)])
def test_without_a_direction_a_target_is_a_circle(size: tuple[float, float], angle: float | None) -> None:
    """Where the catalogue knows none, where the object is round, and where it is too small for it to be seen."""
    axes = finder_map.draw(FinderValues("NGC 253", 11.888, -25.288, size, (FIELD,), angle), VOICE)[1].figure.axes[0]
    assert [type(patch) for patch in axes.patches if isinstance(patch, Ellipse)] in ([Circle], [])


def test_the_direction_stands_in_the_table() -> None:
    """With the size; and the words for who cannot see the map name the shape."""
    turned = finder_chart(FinderValues("NGC 253", 11.888, -25.288, (27.5, 6.8), [FIELD], 52.0), VOICE, "f")
    assert ("Size", "28′ × 6.8′, the longer axis 52° east of north") in turned.table.rows
    assert "an ellipse of the size and direction of the target" in str(turned.svgs[1])
    plain = finder_chart(FinderValues("NGC 253", 11.888, -25.288, (27.5, 6.8), [FIELD]), VOICE, "f")
    assert ("Size", "28′ × 6.8′") in plain.table.rows
    assert "a circle as wide as the target is long" in str(plain.svgs[1])


def test_an_unknown_turn_is_two_circles() -> None:
    """One the camera never leaves and one it always covers, dashed, and the note says so."""
    axes = finder_map.draw(finder(CameraField("long train", 0.8, 0.6)), VOICE)[1].figure.axes[0]
    dashed = [patch for patch in axes.patches if isinstance(patch, Circle) and patch.get_linestyle() != "solid"]
    outer, inner = (circle.radius for circle in dashed)
    assert inner / outer == pytest.approx(0.6, rel=1e-3)
    unknown = finder_chart(FinderValues("NGC 253", 11.888, -25.288, None, [CameraField("long train", 0.8, 0.6)]), VOICE, "f")
    known = finder_chart(FinderValues("NGC 253", 11.888, -25.288, None, [FIELD]), VOICE, "f")
    assert unknown.note is not None and "not known" in unknown.note
    assert known.note is None


def test_a_field_that_a_simulation_tells_says_so() -> None:
    """Below the map, and in its table; one that a camera saw does not, and an unknown turn still says that it is unknown."""
    simulated = CameraField("long train", 0.9, 0.6, 30.0, is_simulated=True)
    made = finder_chart(FinderValues("NGC 253", 11.888, -25.288, None, [simulated, CameraField("lens", 0.8, 0.6)]), VOICE, "f")
    assert made.note is not None and made.note.endswith(
        "long train: the field lies as in a simulated picture, not as a camera saw it."
    )
    assert made.note.startswith("Dashed:")
    assert made.table.rows[-2] == ("long train", "54′ × 36′, its up 30° east of north in a simulated picture")
    seen = finder_chart(FinderValues("NGC 253", 11.888, -25.288, None, [FIELD]), VOICE, "f")
    assert seen.table.rows[-1] == ("long train", "54′ × 36′, its up 30° east of north")


@pytest.mark.parametrize(
    ("values", "panels", "sentence"),
    [
        (finder(FIELD), 2, "NGC 253 lies in Sculptor; it is 28′ across in a field of 54′ × 36′"),
        (finder(FIELD, size=None), 2, "NGC 253 lies in Sculptor, in a field of 54′ × 36′"),
        (finder(size=None), 1, "NGC 253 lies in Sculptor"),
        (finder(CameraField("lens", 36.0, 24.0)), 1, "NGC 253 lies in Sculptor; it is 28′ across in a field of 36.0° × 24.0°"),
    ],
)
def test_panels_and_title_follow_what_is_known(values: FinderValues, panels: int, sentence: str) -> None:
    """Constellation by Roman (1987), through the catalogue; a field as wide as the wide map needs no second one."""
    assert len(finder_map.draw(values, VOICE)) == panels
    assert finder_map.title(values, VOICE) == sentence


NORTH, SOUTH = (CameraField(name, 0.9, 0.6, 0.0, 11.888, dec) for name, dec in (("north", -24.988), ("south", -25.588)))


def mosaic(*panels: CameraField, whole: tuple[float, float] | None = (0.9, 1.2)) -> FinderValues:
    return FinderValues("NGC 253", 11.888, -25.288, None, (), panels=panels, whole_deg=whole)


def boxes(values: FinderValues) -> list[Polygon]:
    """Of the close map, without the frame around it."""
    axes = finder_map.draw(values, VOICE)[1].figure.axes[0]
    return [patch for patch in axes.patches if isinstance(patch, Polygon)][1:]


def test_each_panel_lies_in_its_place() -> None:
    """Two fields one above the other, edge to edge, inside a map 1.7 times as wide as they reach, each with its name in it."""
    values = mosaic(NORTH, SOUTH)
    north, south = (box.get_xy() for box in boxes(values))
    assert north[:, 1].min() == pytest.approx(0.0, abs=0.3)
    assert south[:, 1].max() == pytest.approx(0.0, abs=0.3)
    assert abs(north[:, 1]).max() < finder_map.HEIGHT / 2
    axes = finder_map.draw(values, VOICE)[1].figure.axes[0]
    heights = {text.get_text(): text.get_position()[1] for text in axes.texts}
    assert heights["south"] < 0 < heights["north"]


@pytest.mark.parametrize("rotation_deg", [0.0, 20.0, 45.0, 90.0, 160.0])
def test_a_panel_s_name_stands_clear_of_its_sides(rotation_deg: float) -> None:
    """However it is turned, the middle of its name is at least twelve units inside every side."""
    values = mosaic(CameraField("north", 0.9, 0.6, rotation_deg, 11.888, -24.888))
    edge = np.asarray(boxes(values)[0].get_xy())
    name = next(text for text in finder_map.draw(values, VOICE)[1].figure.axes[0].texts if text.get_text() == "north")
    starts, ends, place = edge[:-1], edge[1:], np.array(name.get_position())
    along = (ends - starts) / np.linalg.norm(ends - starts, axis=1)[:, None]
    away = np.abs(along[:, 0] * (place - starts)[:, 1] - along[:, 1] * (place - starts)[:, 0])
    assert away.min() >= 12
    assert Path(edge).contains_point(place)


def test_panels_of_an_unknown_turn_are_dashed_and_say_so() -> None:
    """Drawn with north up, as the note tells."""
    unknown = CameraField("north", 0.9, 0.6, None, 11.888, -24.988)
    assert [box.get_linestyle() == "solid" for box in boxes(mosaic(unknown, SOUTH))] == [False, True]
    chart = finder_chart(mosaic(unknown, SOUTH), VOICE, "f")
    assert chart.note == "Dashed: how the camera was turned is not known. These panels are drawn with north up."
    assert finder_chart(mosaic(NORTH, SOUTH), VOICE, "f").note is None


def test_a_mosaic_says_how_many_panels_and_how_large() -> None:
    """In its title; each panel's field in its table."""
    assert finder_map.title(mosaic(NORTH, SOUTH), VOICE) == "NGC 253 lies in Sculptor, in a mosaic of 2 panels, 54′ × 72′"
    assert finder_map.title(mosaic(NORTH, whole=None), VOICE) == "NGC 253 lies in Sculptor, in a mosaic of one panel"
    assert finder_map.table(mosaic(NORTH, SOUTH), VOICE).rows[-1] == ("Panel south", "54′ × 36′, its up 0° east of north")


def test_a_mosaic_wider_than_the_wide_map_is_on_it_whole() -> None:
    """Panels 30° apart: one map, which reaches to both."""
    far = (CameraField(name, 0.9, 0.6, 0.0, 11.888, dec) for name, dec in (("n", -10.288), ("s", -40.288)))
    (panel,) = finder_map.draw(mosaic(*far), VOICE)
    axes = panel.figure.axes[0]
    corners = [patch.get_xy() for patch in axes.patches if isinstance(patch, Polygon)][1:]
    assert len(corners) == 2
    assert all(abs(box[:, 1]).max() < finder_map.HEIGHT / 2 for box in corners)


@pytest.mark.parametrize(("ra_deg", "dec_deg"), [(0.0, 90.0), (0.01, -89.9), (359.99, 0.0), (180.0, 10.0)])
def test_any_place_can_be_drawn(ra_deg: float, dec_deg: float) -> None:
    """At the poles and across 0 h too."""
    assert len(finder_chart(FinderValues("Somewhere", ra_deg, dec_deg, None, [FIELD]), VOICE, "f").svgs) == 2


def test_names_give_way() -> None:
    """A second name takes the next free place or is left out; none leaves the panel or covers a mark."""
    lettering = Lettering((0.0, 0.0, 200.0, 40.0))
    assert lettering.find(10.0, 20.0, "Long name", 4.0) == (14.0, 20.0, "left")
    assert lettering.find(10.0, 20.0, "Long name", 4.0) is None
    assert lettering.find(190.0, 20.0, "Name", 4.0) == (186.0, 20.0, "right")
    lettering.keep_clear(120.0, 20.0, 5.0)
    assert lettering.first_free([(120.0, 22.0, "center"), (100.0, 20.0, "left")], "A") == (100.0, 20.0, "left")
