"""How many blocks a lane holds, and what each of them says."""

import pytest
from msgspec.structs import replace

from sitegen.diary.sub import Sub
from sitegen.facts.diary_in_sky import views_of
from sitegen.pages.drawing import sub_words
from sitegen.pages.lanes import MOST_IN_A_LANE, Block, Lane, joined, marks_of
from sitegen.pages.ribbon import night_span, ribbon_of
from tests.charts.speaking import VOICE, WORDS
from tests.diaries import diary, entry, run

BANDS = {"L": ("550-broad",), "Ha": ("656-line",)}


def lane_of(*subs: Sub, named: bool = True) -> Lane:
    (view,) = views_of(whole := diary(entry(list(subs))), whole.entries)
    (night,) = view.nights
    span = night_span(night)
    assert span is not None
    (lane,) = ribbon_of(night, span, BANDS, "k", named).lanes
    return lane


def short_subs(count: int, thrown_every: int) -> list[Sub]:
    """Of ten seconds, one after the other from 21:30 on the hill, 11:00 UTC; every so manieth discarded for clouds."""
    every = enumerate(run("2026-10-12T11:00:00", count, 10.0, gap_s=2.0))
    first = min(5, thrown_every - 1)
    return [replace(sub, kept=False, reason="clouds") if place % thrown_every == first else sub for place, sub in every]


def words_of(lane: Lane, block: Block) -> str:
    return sub_words(lane, block, WORDS, VOICE.numbers).replace("\u202f", " ")


def test_up_to_the_limit_every_sub_is_a_block() -> None:
    """Four hundred subs, which speak for themselves."""
    lane = lane_of(*short_subs(MOST_IN_A_LANE, 100))
    assert len(lane.blocks) == lane.subs == MOST_IN_A_LANE
    assert words_of(lane, lane.blocks[0]) == "L · 11:00–11:00 UTC · 10 s · kept"
    assert words_of(lane, lane.blocks[5]) == "L · 11:01–11:01 UTC · 10 s · discarded: clouds"


@pytest.mark.parametrize("thrown_every", [7, 100])
def test_a_lane_holds_no_more_blocks_than_its_limit(thrown_every: int) -> None:
    """Two thousand subs: none is left out, kept and discarded ones never join, and each lies within its block."""
    lane = lane_of(*short_subs(2_000, thrown_every))
    assert len(lane.blocks) <= MOST_IN_A_LANE
    assert lane.subs == sum(len(block.lights) for block in lane.blocks) == 2_000
    assert all(light.sub.kept is block.kept for block in lane.blocks for light in block.lights)
    assert sum(len(block.lights) for block in lane.blocks if not block.kept) == 2_000 // thrown_every + (2_000 % thrown_every > 5)


def test_a_discarded_sub_alone_stays_a_block_of_its_own() -> None:
    """Twenty of two thousand, each hollow over the kept ones, after them in the order of drawing."""
    lane = lane_of(*short_subs(2_000, 100))
    discarded = [block for block in lane.blocks if not block.kept]
    assert len(discarded) == 20 and {len(block.lights) for block in discarded} == {1}
    assert [block.x for block in lane.blocks] == sorted(block.x for block in lane.blocks)


def test_a_run_says_how_many_it_is_and_from_when_to_when() -> None:
    """Two thousand of twelve seconds each are 6 h 40 min."""
    lane = lane_of(*run("2026-10-12T11:00:00", 2_000, 10.0, gap_s=2.0))
    assert [words_of(lane, block) for block in lane.blocks] == ["L · 2000 subs · 11:00–17:40 UTC · kept"]


def test_discarded_runs_name_the_reason_that_all_of_them_had() -> None:
    """Where reasons differ, none is said for all."""
    lane = lane_of(*short_subs(10, 2))
    clouds, kept = lane.blocks[5].lights, lane.blocks[0].lights
    assert words_of(lane, Block(0.0, 1.0, False, clouds * 2)).endswith("discarded: clouds")
    assert words_of(lane, Block(0.0, 1.0, False, clouds + kept)).endswith("discarded")


def test_pauses_that_are_joined_grow_only_as_they_must() -> None:
    """Four blocks for three: the shortest pause goes; for two, the next; kept and discarded ones each for themselves."""
    blocks = [Block(0.0, 1.0, True), Block(1.1, 1.0, True), Block(2.3, 1.0, True), Block(9.0, 1.0, True)]
    assert joined(blocks, 3) == (Block(0.0, 2.1, True), Block(2.3, 1.0, True), Block(9.0, 1.0, True))
    assert joined(blocks, 2) == (Block(0.0, 3.3, True), Block(9.0, 1.0, True))
    mixed = [Block(0.0, 1.0, True), Block(1.0, 1.0, False), Block(2.0, 1.0, True)]
    assert joined(mixed, 2) == (Block(0.0, 3.0, True), Block(1.0, 1.0, False))
    apart = [Block(0.0, 1.0, True), Block(1.0, 1.0, True), Block(5.0, 1.0, False), Block(9.0, 1.0, True)]
    assert [block.x for block in joined(apart, 3)] == [0.0, 5.0, 9.0]


def test_subs_in_a_row_are_one_mark_of_a_small_ribbon() -> None:
    """A pause too short to be seen joins, a longer one parts."""
    assert marks_of([Block(10.0, 1.0, True), Block(11.1, 1.0, True), Block(14.0, 0.5, True)]) == (
        "M10.00 0H12.10V1H10.00ZM14.00 0H14.50V1H14.00Z"
    )


def test_a_small_ribbon_names_no_sub() -> None:
    """Its blocks would hold the whole night for nothing."""
    lane = lane_of(*run("2026-10-12T11:00:00", 20, 60.0), named=False)
    assert {block.lights for block in lane.blocks} == {()}
    assert words_of(lane, lane.blocks[0]) == ""
