"""Panels of a mosaic: named, or found where frames were pointed; and what is none."""

import random
from collections.abc import Sequence
from typing import Any

import pytest
from msgspec.structs import replace

from sitegen.diary.diary import Diary
from sitegen.diary.frame_origin import FrameOrigin
from sitegen.diary.panel import Panel
from sitegen.diary.rig import Telescope
from sitegen.diary.settings import Settings
from sitegen.diary.sub import Sub
from sitegen.diary.target import Target
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import as_json, facts_of
from sitegen.facts.mosaic_field import turned
from sitegen.facts.views import EntryView, PanelView, PointedPicture
from sitegen.stars.solving.solution import Solution
from tests.diaries import HILL, LONG, RIG, SCULPTOR, entry, run
from tests.published_values.record import Numbers

# Of the train before 20 September: 1.346° × 0.9° (tests/published_values/facts.py has the same geometry, for 800 mm).
RA, DEC = 11.888, -25.288
Place = tuple[float, float]
BY_HAND = "worked by hand: 2 · atan(half of 6248 or 4176 × 3.76 µm over 1000 mm, or 800 mm); 1° more beside each other"
CURVE = "the sky's curve takes some 1e-4 degrees at the corners"


def pointed(place: Place | None, start: str, count: int = 4, jitter_deg: float = 0.0, **changes: Any) -> list[Sub]:
    """A run at one place; `jitter_deg`: dither, the same each time the tests run."""
    chance = random.Random(start)
    subs = run(start, count, **changes)
    if place is None:
        return subs
    off = lambda: chance.uniform(-jitter_deg, jitter_deg)  # noqa: E731 # two words
    return [replace(sub, origin=FrameOrigin(ra_deg=(place[0] + off()) % 360, dec_deg=place[1] + off())) for sub in subs]


def view(subs: Sequence[Sub], **changes: Any) -> EntryView:
    wide = replace(RIG, slug="wide", trains=(replace(LONG, telescope=Telescope("lens", 50.0, None, 200.0)),))
    mosaic = entry(subs, **changes)
    book = Diary(Settings("A diary"), {"hill": HILL}, {"long": RIG, "wide": wide}, (mosaic,))
    return views_of(book, (mosaic,))[0]


def panels(subs: Sequence[Sub], **changes: Any) -> dict[str, tuple[int, int]]:
    """By name, frames kept and discarded; nothing for what is no mosaic."""
    mosaic = view(subs, **changes).mosaic
    every = mosaic.panels if mosaic is not None else ()
    return {panel.name: (sum(row.kept for row in panel.light), sum(row.discarded for row in panel.light)) for panel in every}


def elsewhere(subs: Sequence[Sub], **changes: Any) -> int:
    mosaic = view(subs, **changes).mosaic
    assert mosaic is not None
    return sum(row.kept for row in mosaic.elsewhere)


def test_two_clusters_are_two_panels_in_the_order_in_which_they_were_begun() -> None:
    """0.7° apart in a field 0.9° high, each dithered by a tenth of a field; hours and rejects of each, and its middle."""
    subs = [*pointed((RA, DEC - 0.7), "2026-09-12 12:00", 5, 0.04), *pointed((RA, DEC), "2026-09-12 13:00", 7, 0.04),
            *pointed((RA, DEC), "2026-09-12 15:00", 2, 0.04, kept=False)]  # fmt: skip
    assert panels(subs) == {"1": (5, 0), "2": (7, 2)}
    mosaic = view(subs).mosaic
    assert mosaic is not None
    assert [panel.source for panel in mosaic.panels] == ["pointings", "pointings"]
    assert (mosaic.panels[1].ra_deg, mosaic.panels[1].dec_deg) == pytest.approx((RA, DEC), abs=0.04)


@pytest.mark.parametrize(
    ("apart_deg", "count"),
    [(0.1, 0), (0.3, 0), (0.42, 0), (0.48, 2), (0.85, 2), (3.0, 2)],
)
def test_less_than_half_a_field_apart_is_one_field(apart_deg: float, count: int) -> None:
    """The shorter side is 0.9°: another night's framing is no panel, common practice, no source."""
    subs = [*pointed((RA, DEC), "2026-09-12 12:00"), *pointed((RA, DEC + apart_deg), "2026-09-13 12:00")]
    assert len(panels(subs)) == count


def test_a_single_field_is_no_mosaic() -> None:
    """However far it drifted, and with frames that tell nothing."""
    drift = [sub for step in range(40) for sub in pointed((RA, DEC + 0.05 * step), f"2026-09-12 12:{step:02d}", 1)]
    assert panels(drift) == {}
    assert panels([*pointed((RA, DEC), "2026-09-12 12:00"), *pointed(None, "2026-09-12 13:00")]) == {}
    assert panels(pointed(None, "2026-09-12 12:00")) == {}
    assert panels([]) == {}


def test_a_slip_is_no_panel() -> None:
    """One or two frames elsewhere are counted apart; of a single field they make no mosaic."""
    slip = pointed((RA + 2, DEC), "2026-09-12 17:00", 2)
    one, two = pointed((RA, DEC), "2026-09-12 12:00"), pointed((RA, DEC + 0.8), "2026-09-12 13:00")
    assert panels([*one, *slip]) == {}
    assert panels([*one, *two, *slip]) == {"1": (4, 0), "2": (4, 0)}
    assert elsewhere([*one, *two, *slip]) == 2


def test_a_mosaic_over_the_pole_and_over_zero_hours() -> None:
    """Right ascension 0 and 359.9 are neighbours, and so are all hours at the pole."""
    subs = [*pointed((359.6, 10.0), "2026-09-12 12:00", 6, 0.03), *pointed((0.4, 10.0), "2026-09-12 13:00", 6, 0.03)]
    assert panels(subs) == {"1": (6, 0), "2": (6, 0)}
    polar = [*pointed((20.0, 89.95), "2026-09-12 12:00"), *pointed((200.0, 89.95), "2026-09-12 13:00")]
    assert panels(polar) == {}


def test_frames_that_name_their_panel_need_no_pointing() -> None:
    """In the order of their names, one frame is enough; spelling does not part them; frames without a name join by place."""
    subs = [*pointed((RA, DEC), "2026-09-12 12:00", 2, panel="10"), *pointed((RA, DEC + 0.3), "2026-09-12 13:00", 3, panel="2"),
            *pointed(None, "2026-09-12 14:00", 1, panel="North West"), *pointed(None, "2026-09-12 14:30", 2, panel="north west"),
            *pointed((RA, DEC + 0.29), "2026-09-12 15:00", 1), *pointed(None, "2026-09-12 16:00", 1)]  # fmt: skip
    assert panels(subs) == {"2": (4, 0), "10": (2, 0), "north west": (3, 0)}
    assert elsewhere(subs) == 1
    mosaic = view(subs).mosaic
    assert mosaic is not None
    assert {panel.source for panel in mosaic.panels} == {"frames"}
    assert mosaic.panels[2].ra_deg is None


def test_one_name_alone_is_no_mosaic() -> None:
    """A first panel of which the others are still to come."""
    assert panels(pointed((RA, DEC), "2026-09-12 12:00", panel="1")) == {}


def test_names_of_one_place_are_no_panels() -> None:
    """'P1' and 'P2' may be two plans of one field."""
    first, second = (pointed((RA, DEC + 0.1 * plan), f"2026-09-12 1{plan}:00", panel=str(plan)) for plan in (1, 2))
    assert panels([*first, *second]) == {}


def test_a_cluster_beside_named_panels_is_one_more() -> None:
    """With the next number that is free."""
    named = [*pointed((RA, DEC), "2026-09-12 12:00", panel="1"), *pointed((RA, DEC + 0.8), "2026-09-12 13:00", panel="2")]
    assert panels([*named, *pointed((RA, DEC - 0.8), "2026-09-12 14:00")]) == {"1": (4, 0), "2": (4, 0), "3": (4, 0)}


def test_the_author_s_panels_win() -> None:
    """In the order as written; a log's name before the pointing; what lies in none is elsewhere, and no panel is added."""
    own = (Panel("south", RA, DEC - 0.8), Panel("north", RA, DEC + 0.8), Panel("planned", RA + 2, DEC))
    subs = [*pointed((RA, DEC + 0.7), "2026-09-12 12:00", 3), *pointed((RA, DEC - 0.9), "2026-09-12 13:00", 1),
            *pointed((RA, DEC + 0.8), "2026-09-12 14:00", 2, panel="South"),
            *pointed((RA, DEC + 3), "2026-09-12 15:00", 5)]  # fmt: skip
    assert panels(subs, panels=own) == {"south": (3, 0), "north": (3, 0), "planned": (0, 0)}
    assert elsewhere(subs, panels=own) == 5
    assert view(subs, panels=()).mosaic is None


def test_overlapping_panels_take_a_frame_once() -> None:
    """The nearer middle has it, and every frame is in one panel or elsewhere."""
    own = (Panel("a", RA, DEC), Panel("b", RA, DEC + 0.2))
    subs = [*pointed((RA, DEC + 0.09), "2026-09-12 12:00", 2), *pointed((RA, DEC + 0.11), "2026-09-12 13:00", 3)]
    assert panels(subs, panels=own) == {"a": (2, 0), "b": (3, 0)}


def test_a_wide_field_over_all_panels_is_none_of_them() -> None:
    """A lens of 200 mm beside 1000 mm, pointed at the middle."""
    narrow = [*pointed((RA, DEC - 0.4), "2026-09-12 12:00"), *pointed((RA, DEC + 0.4), "2026-09-12 13:00")]
    both = [*narrow, *pointed((RA, DEC), "2026-09-12 12:00", 9, rig="wide")]
    assert panels(both) == {"1": (4, 0), "2": (4, 0)}
    assert elsewhere(both) == 9
    own = (Panel("south", RA, DEC - 0.4), Panel("north", RA, DEC + 0.4))
    assert panels(both, panels=own) == {"south": (4, 0), "north": (4, 0)}


def test_two_rigs_on_the_same_panels_share_them() -> None:
    """Side by side with the same field: two panels, not four."""
    twin = replace(RIG, slug="twin", trains=(LONG,))
    subs = [*pointed((RA, DEC - 0.4), "2026-09-12 12:00"), *pointed((RA, DEC + 0.4), "2026-09-12 13:00"),
            *pointed((RA, DEC - 0.39), "2026-09-12 12:00", rig="twin"),
            *pointed((RA, DEC + 0.41), "2026-09-12 13:00", rig="twin")]  # fmt: skip
    mosaic = entry(subs)
    book = Diary(Settings("A diary"), {"hill": HILL}, {"long": RIG, "twin": twin}, (mosaic,))
    facts = as_json(facts_of(views_of(book, (mosaic,))[0]))
    assert [(panel["name"], panel["kept"]) for panel in facts["panels"]] == [("1", 8), ("2", 8)]


def test_what_moves_is_no_mosaic() -> None:
    """A comet's pointings follow it; a mount's zeros are no place."""
    comet = (Target("comet", "A comet", None, None, "moving"),)
    subs = [*pointed((RA, DEC), "2026-09-12 12:00"), *pointed((RA, DEC + 2), "2026-09-13 12:00")]
    assert panels(subs, targets=comet) == {}
    assert panels([*pointed((RA, DEC), "2026-09-12 12:00"), *pointed((0.0, 0.0), "2026-09-13 12:00")]) == {}


def test_the_second_target_s_frames_are_no_panel() -> None:
    """They were pointed at something else."""
    both = (SCULPTOR, Target("ngc-288", "NGC 288", 13.188, -26.583))
    subs = [*pointed((RA, DEC), "2026-09-12 12:00"), *pointed((13.188, -26.583), "2026-09-12 14:00", target=1)]
    assert panels(subs, targets=both) == {}


def test_every_frame_is_counted_once() -> None:
    """Panels and what lies elsewhere add up to the entry's total, over 40 scattered logs."""
    chance = random.Random(7)
    for _ in range(40):
        subs: list[Sub] = []
        for number in range(chance.randint(1, 9)):
            place = (RA + chance.uniform(-2, 2), DEC + chance.uniform(-2, 2)) if chance.random() < 0.8 else None
            start = f"2026-09-{10 + number:02d} 12:00"
            subs += pointed(place, start, chance.randint(1, 6), 0.05, kept=chance.random() < 0.8,
                            panel=chance.choice([None, None, "1", "2", "A"]))  # fmt: skip
        facts = as_json(facts_of(view(subs)))
        if facts["mosaic"] is None:
            assert facts["panels"] == []
            continue
        total_s = sum(panel["integration_s"] for panel in facts["panels"]) + facts["mosaic"]["elsewhere_s"]
        assert total_s == facts["integration"]["total_s"]
        by_filter_s = sum(row["total_s"] for panel in facts["panels"] for row in panel["by_filter"].values())
        assert by_filter_s + facts["mosaic"]["elsewhere_s"] == facts["integration"]["total_s"]


def mosaic_facts(own: tuple[Panel, ...], subs: Sequence[Sub]) -> Any:
    return as_json(facts_of(view(subs, panels=own)))


def test_the_field_of_the_whole_follows_the_camera() -> None:
    """On the celestial equator, where right ascension and angle agree: one beside the other by 1°. Turned by 90° the sides change
    places."""
    subs = [*run("2026-09-12 12:00", 1, panel="a"), *run("2026-09-12 13:00", 1, panel="b")]
    upright = mosaic_facts((Panel("a", 50.0, 0.0, 0.0), Panel("b", 51.0, 0.0, 0.0)), subs)["mosaic"]
    assert Numbers((2.34595, 0.89972), 4e-4, BY_HAND, CURVE).agrees(upright["field_deg"])
    east_up = mosaic_facts((Panel("a", 50.0, 0.0, 90.0), Panel("b", 51.0, 0.0, 90.0)), subs)["mosaic"]
    assert Numbers((1.34595, 1.89972), 4e-4, BY_HAND, CURVE).agrees(east_up["field_deg"])
    assert (upright["turned_by"], east_up["turned_by"]) == ("author", "author")
    unknown = mosaic_facts((Panel("a", 50.0, 0.0), Panel("b", 51.0, 0.0, 90.0)), subs)["mosaic"]
    assert unknown["turned_by"] == "north-up"


def test_without_a_place_the_whole_is_unknown() -> None:
    """One panel of which neither the author nor a frame says where it lies."""
    subs = [*run("2026-09-12 12:00", 1, panel="a"), *run("2026-09-12 13:00", 1, panel="b")]
    facts = mosaic_facts((Panel("a", 50.0, 0.0, 0.0), Panel("b")), subs)
    assert facts["mosaic"]["field_deg"] is None
    assert facts["panels"][1]["ra_deg"] is None


def test_a_solved_picture_of_the_rig_turns_the_panels() -> None:
    """The picture that measured the train, not another; the author's own angle stays."""
    subs = [*pointed((RA, DEC), "2026-09-12 12:00"), *pointed((RA, DEC + 0.8), "2026-09-12 13:00")]
    whole = view(subs, panels=(Panel("a", RA, DEC, 10.0), Panel("b", RA, DEC + 0.8)))
    east_up = Solution(6248, 4176, RA, DEC, 3123.5, 2087.5, ((0.0, -2e-4), (2e-4, 0.0)))
    picture = PointedPicture("p.jpg", 6248, 4176, east_up, "stars", None)
    optics = [replace(row, measured_by="p.jpg") for row in whole.optics]
    done = turned(whole.mosaic, optics, [picture])
    assert done is not None
    assert [(panel.rotation_deg, panel.turned_by) for panel in done.panels] == [(10.0, "author"), (90.0, "picture")]
    others = turned(whole.mosaic, whole.optics, [picture])
    assert others is not None
    assert [panel.turned_by for panel in others.panels] == ["author", None]


def test_the_panel_s_field_is_that_of_the_evening() -> None:
    """A reducer from 20 September on: the train that gathered most of the panel tells."""
    subs = [*pointed((RA, DEC), "2026-09-12 12:00", 2), *pointed((RA, DEC), "2026-09-25 12:00", 3),
            *pointed((RA, DEC + 0.8), "2026-09-12 13:00", 3)]  # fmt: skip
    mosaic = view(subs).mosaic
    assert mosaic is not None
    widths = [panel.field_deg[0] if panel.field_deg else 0.0 for panel in mosaic.panels]
    assert Numbers((1.68239, 1.34595), 1e-4, BY_HAND, "four digits published").agrees(widths)


def test_a_hundred_thousand_frames_are_few_places() -> None:
    """A four-panel mosaic of a season, dithered each time, takes seconds at most: the clustering counts places, not frames."""
    subs = [sub for number in range(4) for sub in pointed((RA, DEC + 0.8 * number), f"2026-0{number + 5}-01 12:00", 5_000, 0.05)]
    assert panels(subs) == {str(number): (5_000, 0) for number in (1, 2, 3, 4)}


def _kinds(every: Sequence[PanelView]) -> list[str]:
    return [panel.source for panel in every]


def test_panels_of_an_entry_without_frames() -> None:
    """A plan: the panels stand there with nothing gathered."""
    mosaic = view([], panels=(Panel("a", RA, DEC), Panel("b", RA, DEC + 0.8))).mosaic
    assert mosaic is not None
    assert _kinds(mosaic.panels) == ["author", "author"]
    assert [panel.field_deg for panel in mosaic.panels] == [None, None]


