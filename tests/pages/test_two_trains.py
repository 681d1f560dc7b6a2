"""Two trains on one target in one night: lanes, totals and facts of each, and one entry."""

from datetime import date

from msgspec.structs import replace

from sitegen.diary.diary import Diary
from sitegen.diary.settings import Settings
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import as_json, facts_of
from sitegen.pages.drawing import LANE_PX, heights
from sitegen.pages.ribbon import night_span, ribbon_of
from tests.diaries import HILL, RIG, entry, run

SHORT = replace(RIG, slug="short", name="The short train")
BOTH = entry([
    *run("2026-09-12 12:00", 4), *run("2026-09-12 13:00", 2, filter="Ha"), *run("2026-09-12 14:00", 1, kept=False),
    *run("2026-09-12 12:00", 3, 600.0, rig="short"),
])  # fmt: skip
BANDS = {"L": (), "Ha": (656,)}
DIARY = Diary(Settings("A diary"), {"hill": HILL}, {"long": RIG, "short": SHORT}, (BOTH,))


def test_each_train_has_its_own_lanes() -> None:
    """By the trains' slugs, then in the filters' order; the first lane of each says so. Small ribbons keep one lane a filter."""
    (night,) = views_of(DIARY, (BOTH,))[0].nights
    span = night_span(night)
    assert span is not None
    lanes = ribbon_of(night, span, BANDS, "k").lanes
    assert [(lane.rig, lane.short, lane.subs, lane.heads) for lane in lanes] == [
        ("long", "L", 5, True), ("long", "Ha", 2, False), ("short", "L", 3, True),
    ]  # fmt: skip
    small = ribbon_of(night, span, BANDS, "k", named=False).lanes
    assert [(lane.rig, lane.short, lane.subs, lane.heads) for lane in small] == [("", "L", 8, False), ("", "Ha", 2, False)]


def test_one_train_needs_no_name() -> None:
    """Lanes as ever, and no row for a name."""
    alone = entry(run("2026-09-12 12:00", 4))
    (night,) = views_of(DIARY, (alone,))[0].nights
    span = night_span(night)
    assert span is not None
    ribbon = ribbon_of(night, span, BANDS, "k")
    assert [(lane.rig, lane.heads) for lane in ribbon.lanes] == [("", False)]
    assert heights(ribbon).axis == 180 + 4 + LANE_PX


def test_a_train_s_name_takes_a_row_of_its_own() -> None:
    """Three lanes and two names: five rows, and no lane lies on a name."""
    (night,) = views_of(DIARY, (BOTH,))[0].nights
    span = night_span(night)
    assert span is not None
    rows = heights(ribbon_of(night, span, BANDS, "k"))
    assert rows.axis == 180 + 4 + 5 * LANE_PX
    assert [lane - rows.lanes[0] for lane in rows.lanes] == [0, LANE_PX, 3 * LANE_PX]
    assert rows.heads[2] - rows.lanes[1] > LANE_PX


def test_the_facts_tell_what_each_gathered() -> None:
    """Worked by hand: 4 × 300 s of L and 2 × 300 s of Ha with one, 3 × 600 s of L with the other; together the entry's total."""
    facts = as_json(facts_of(views_of(DIARY, (BOTH,))[0]))
    rows = {row["rig"]: row for row in facts["optics"]}
    assert rows["long"]["by_filter"] == {
        "L": {"total_s": 1200, "kept": 4, "discarded": 1},
        "Ha": {"total_s": 600, "kept": 2, "discarded": 0},
    }
    assert rows["short"]["by_filter"] == {"L": {"total_s": 1800, "kept": 3, "discarded": 0}}
    assert (rows["long"]["integration_s"], rows["short"]["integration_s"]) == (1800, 1800)
    assert facts["integration"]["total_s"] == 3600
    assert list(facts["integration"]["by_night"]) == [date(2026, 9, 12).isoformat()]
