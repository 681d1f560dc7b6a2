"""When two entries tell of one frame, and what becomes of it."""

from datetime import date, timedelta
from typing import Any

import pytest
from msgspec.structs import replace

from sitegen.build.work.contradictions import contradiction_problems
from sitegen.diary import same_frame
from sitegen.diary.entry import Entry
from sitegen.diary.frame_origin import FrameOrigin
from sitegen.diary.same_frame import camera_stretches, exposing_together, is_same_frame, same_frames
from sitegen.diary.sub import Sub
from sitegen.diary.target import Target
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import facts_of
from sitegen.facts.views import EntryView
from tests.diaries import HILL, RIG, SCULPTOR, diary, entry, run, sub

NIGHT = "2026-09-12T12:00:00"


def camera(serial: str | None) -> FrameOrigin:
    return FrameOrigin(camera_id=serial)


@pytest.mark.parametrize(
    ("change", "same"),
    [
        ({}, True),
        ({"start": 0.49}, True),
        ({"start": -0.49}, True),
        ({"start": 0.5}, False),
        ({"exposure_s": 300.2}, True),
        ({"exposure_s": 301.0}, False),
        ({"rig": "twin"}, False),
        ({"filter": "Ha", "kept": False, "target": None}, True),
    ],
)
def test_a_frame_is_known_by_camera_exposure_and_start(change: dict[str, Any], same: bool) -> None:
    """Starts less than half a second apart, exposures alike to a thousandth, one rig; what is said of it does not matter.
    Common practice, no source: logs of one frame differ by rounding."""
    one = sub(NIGHT)
    moved = {**change, "start": one.start + timedelta(seconds=change.get("start", 0.0))}
    other = replace(one, **moved)
    assert is_same_frame(one, other) is same
    assert is_same_frame(other, one) is same


@pytest.mark.parametrize(
    ("rigs", "serials", "same"),
    [
        (("long", "twin"), ("A1", "A1"), True),
        (("long", "long"), ("A1", "B2"), False),
        (("long", "long"), ("A1", None), True),
        (("long", "twin"), ("A1", None), False),
        (("long", "twin"), ("", ""), False),
    ],
)
def test_a_serial_number_says_more_than_a_rig(rigs: tuple[str, str], serials: tuple[str | None, str | None], same: bool) -> None:
    """One camera whose rig was renamed is one camera; two cameras fired together are two, whatever the rig is called."""
    one, other = (sub(NIGHT, rig=rig, origin=camera(serial)) for rig, serial in zip(rigs, serials, strict=True))
    assert is_same_frame(one, other) is same


def test_short_frames_find_their_own_partners() -> None:
    """Ten frames of 20 ms in half a second, and the same ten by a log that is a tenth of a second late: ten pairs, in order."""
    burst = run(NIGHT, 10, 0.02, gap_s=0.03)
    late = [replace(one, start=one.start + timedelta(seconds=0.1)) for one in burst]
    assert same_frames(burst, burst) == [(place, place) for place in range(10)]
    pairs = same_frames(burst, late)
    assert sorted(first for first, _ in pairs) == list(range(10))
    assert sorted(second for _, second in pairs) == list(range(10))


def test_rounded_starts_of_a_burst_are_each_taken_once() -> None:
    """A log of whole seconds gives four frames of one second the same start: four frames, not sixteen."""
    burst = run(NIGHT, 4, 0.02, gap_s=0.03)
    rounded = [replace(one, start=burst[0].start) for one in burst]
    assert [first for first, _ in same_frames(burst, rounded)] == [0, 1, 2, 3]


def comparisons(count: int, monkeypatch: pytest.MonkeyPatch, late_s: float) -> int:
    compared: list[int] = []
    judge = is_same_frame
    ones = run(NIGHT, count, 10.0, gap_s=1.0)
    others = [replace(one, start=one.start + timedelta(seconds=late_s)) for one in ones]
    with monkeypatch.context() as patch:
        patch.setattr(same_frame, "is_same_frame", lambda *pair: (compared.append(1), judge(*pair))[1])
        assert len(same_frame.same_frames(ones, others)) == count
    return len(compared)


@pytest.mark.parametrize("late_s", [0.0, 0.3])
def test_the_work_grows_with_the_frames_not_with_their_square(monkeypatch: pytest.MonkeyPatch, late_s: float) -> None:
    """Ten times the frames are ten times the comparisons."""
    few, many = comparisons(100, monkeypatch, late_s), comparisons(1000, monkeypatch, late_s)
    assert few <= 200
    assert many <= 10 * few


def test_only_entries_of_the_same_hours_are_asked() -> None:
    """By rig or by serial number; an hour apart, or another camera, and nobody is asked."""
    first = run(NIGHT, 3)
    rows = {
        "first": first,
        "again": first,
        "renamed": [replace(one, rig="new", origin=camera("A1")) for one in first],
        "serial": [replace(one, rig="third", origin=camera("A1")) for one in first],
        "next-night": run("2026-09-13T12:00:00", 3),
        "over-midnight": [sub("2026-09-14T23:59:59.8"), sub("2026-09-14T22:00:00")][::-1],
        "other-side": [sub("2026-09-15T00:00:00.1")],
    }
    together = exposing_together((slug, camera_stretches(subs)) for slug, subs in rows.items())
    assert together == {
        "first": {"again"},
        "again": {"first"},
        "renamed": {"serial"},
        "serial": {"renamed"},
        "over-midnight": {"other-side"},
        "other-side": {"over-midnight"},
    }


# --- who owns a frame ---------------------------------------------------------------------------------------------------------

PROGRESS = entry(run(NIGHT, 4), slug="progress", published=date(2026, 9, 20))
FINAL = entry([*run(NIGHT, 4), *run("2026-09-13T12:00:00", 2)], slug="final", published=date(2026, 10, 20))


def views(*entries: Entry) -> dict[str, EntryView]:
    whole = diary(*entries)
    return {view.entry.slug: view for view in views_of(whole, whole.entries)}


def shared_s(*entries: Entry) -> dict[str, float]:
    return {slug: facts_of(view).integration.shared_s for slug, view in views(*entries).items()}


def test_the_entry_published_later_owns_what_both_tell() -> None:
    """All of the progress entry's frames count in the final one, whose own total stays whole."""
    found = views(PROGRESS, FINAL)
    assert [light.later for light in found["progress"].lights] == [("final",)] * 4
    assert [light.earlier for light in found["final"].lights] == [("progress",)] * 4 + [()] * 2
    assert shared_s(PROGRESS, FINAL) == {"progress": 0, "final": 4 * 300}
    assert facts_of(found["final"]).integration.total_s == 6 * 300


def test_on_the_same_day_the_name_decides() -> None:
    """Somebody must own it; it is the one whose name comes later, in whatever order the entries are read."""
    twins = [replace(PROGRESS, slug=slug) for slug in ("b", "a")]
    assert shared_s(*twins) == shared_s(*twins[::-1]) == {"a": 0, "b": 1200}


def test_three_tellers_are_one_owner() -> None:
    """The newest of three owns; each of the others is told of once."""
    third = replace(PROGRESS, slug="third", published=date(2026, 11, 1))
    found = views(PROGRESS, FINAL, third)
    assert found["progress"].lights[0].later == ("final", "third")
    assert (found["final"].lights[0].earlier, found["final"].lights[0].later) == (("progress",), ("third",))
    assert shared_s(PROGRESS, FINAL, third) == {"progress": 0, "final": 1200, "third": 1200}


def test_an_unlisted_entry_owns_nothing() -> None:
    """It is not published, so it takes nothing from who is."""
    assert shared_s(replace(PROGRESS, unlisted=True), FINAL)["final"] == 0


def test_calibration_frames_are_no_matter() -> None:
    """Two entries may name the same darks."""
    darks = run(NIGHT, 4, kind="dark", filter=None)
    assert shared_s(replace(PROGRESS, subs=tuple(darks)), replace(FINAL, subs=tuple(darks))) == {"progress": 0, "final": 0}


def test_an_entry_without_a_target_borrows_it() -> None:
    """A later entry about focus owns the frames, and their light still falls on the galaxy."""
    gear = replace(PROGRESS, slug="gear", published=date(2026, 12, 1), targets=(), subs=tuple(run(NIGHT, 4, target=None)))
    assert [light.targets for light in views(PROGRESS, gear)["gear"].lights] == [("ngc-253",)] * 4


# --- contradictions -----------------------------------------------------------------------------------------------------------


def warnings(later: list[Sub], **changes: Any) -> list[str]:
    found = views(PROGRESS, replace(FINAL, subs=tuple(replace(one, source="logs/b.csv") for one in later), **changes))["final"]
    return [str(problem) for problem in contradiction_problems(found, lambda name: f"content/{name}")]


def test_two_verdicts_are_told_with_both_logs() -> None:
    """Once for the pair of entries, with the first frame, how many, and what to write where."""
    subs = run(NIGHT, 4, kept=False)
    assert warnings([*subs[:3], replace(subs[3], kept=True)]) == [
        "content/entries/final.md:1:1: warning: the frame of 2026-09-12 12:00:00 UTC is discarded here and kept in the entry "
        "'progress', and 2 more differ so; lists count what this entry says; write the same under 'kept' in content/logs/b.csv "
        "and content/"
    ]


def test_two_filters_and_two_targets_are_two_warnings() -> None:
    """Each kind of difference has its own cure."""
    other = Target("ngc-300", "NGC 300", 13.72, -37.68, "galaxy")
    told = warnings(run(NIGHT, 1, filter="Ha"), targets=(other,))
    assert [line.partition("warning: ")[2] for line in told] == [
        "the frame of 2026-09-12 12:00:00 UTC has the filter 'Ha' here and 'L' in the entry 'progress'; lists count what this "
        "entry says; write the same under 'filter' in content/logs/b.csv and content/",
        "the frame of 2026-09-12 12:00:00 UTC has the target 'NGC 300' here and 'NGC 253' in the entry 'progress'; lists count "
        "what this entry says; name one target for both: 'target' in content/entries/final.md and content/entries/progress.md",
    ]


def test_what_is_not_said_contradicts_nothing() -> None:
    """An entry without a target, about gear, may name the same log."""
    assert warnings(run(NIGHT, 4, target=None), targets=()) == []


# --- the targets in a frame ---------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("apart_deg", "inside"), [(0.80, True), (0.82, False)])
def test_a_second_target_in_the_field_is_lit_too(apart_deg: float, inside: bool) -> None:
    """Within half the diagonal: 28.26 mm at 1000 mm are 1.619° from corner to corner (2·atan(28.26 ÷ 2000)), half of it 0.81°."""
    near = Target("near", "Near", SCULPTOR.ra_deg, (SCULPTOR.dec_deg or 0.0) - apart_deg)
    found = views(entry(run(NIGHT, 1), targets=(SCULPTOR, near)))["five-nights"]
    assert found.lights[0].targets == (("ngc-253", "near") if inside else ("ngc-253",))


def test_the_train_of_the_evening_has_the_field() -> None:
    """Shortened to 800 mm on 20 September, the same rig sees a target 0.9° away."""
    near = Target("near", "Near", SCULPTOR.ra_deg, (SCULPTOR.dec_deg or 0.0) - 0.9)
    subs = [sub("2026-09-19T13:00:00"), sub("2026-09-20T13:00:00")]
    found = views(entry(subs, targets=(SCULPTOR, near)))["five-nights"]
    assert [light.targets for light in found.lights] == [("ngc-253",), ("ngc-253", "near")]


def test_what_has_no_place_is_lit_by_its_own_frames_only() -> None:
    """A comet shares no field, and none is shared with it."""
    comet = Target("comet", "A comet", None, None, "moving")
    subs = [sub("2026-09-12T13:00:00", target=0), sub("2026-09-12T14:00:00", target=1)]
    found = views(entry(subs, targets=(comet, SCULPTOR)))["five-nights"]
    assert [light.targets for light in found.lights] == [("comet",), ("ngc-253",)]


def test_identical_cameras_fired_together_stay_apart() -> None:
    """Two rigs, one trigger: eight frames, nothing shared."""
    twin = replace(RIG, slug="twin")
    second = replace(PROGRESS, slug="second", published=date(2026, 10, 1), subs=tuple(run(NIGHT, 4, rig="twin")))
    whole = replace(diary(PROGRESS, second, site=HILL), rigs={"long": RIG, "twin": twin})
    assert [facts_of(view).integration.shared_s for view in views_of(whole, whole.entries)] == [0, 0]
