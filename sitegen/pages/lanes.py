"""The subs of a night as blocks in lanes, a lane for each filter: percents of the ribbon's width.

A lane holds no more blocks than the eye can part. Up to the limit every sub is a block of its own. Beyond it, kept subs in a row
are one block, and so are discarded ones: first where the pause between them could not be seen, then over pauses twice, four times
and eight times as long, until no more than the limit are left. Kept and discarded subs never join, and a discarded one is on top:
every one of them is seen. The full list of an entry's subs is its subs.ecsv.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import datetime

from msgspec import Struct
from msgspec.structs import replace

from sitegen.facts.views import SubInSky

SHORTEST_MARK = 0.12
MOST_IN_A_LANE = 400


class Block(Struct, frozen=True):
    """Subs in a row, as a rule a single one: x, width, and which subs of the night they are; none in the small ribbons of lists,
    which name no sub."""

    x: float
    width: float
    kept: bool
    lights: tuple[SubInSky, ...] = ()

    @property
    def end(self) -> float:
        return self.x + self.width


class Lane(Struct, frozen=True):
    """The subs of one filter; `bands` are its passbands as `filter_colour` names them, empty for no hue. `marks` and `gone`: the
    kept and the discarded subs as SVG path data, a unit high. `rig` is its train where those of several have lanes of their
    own; `heads`: it is the first of them."""

    short: str
    bands: tuple[str, ...]
    blocks: tuple[Block, ...]
    subs: int
    marks: str = ""
    gone: str = ""
    rig: str = ""
    heads: bool = False


Across = Callable[[datetime], float]


def lanes_of(lights: Sequence[SubInSky], x_of: Across, bands: Mapping[str, tuple[str, ...]], named: bool) -> tuple[Lane, ...]:
    """In the order of the filters' passbands. `x_of` places a moment; `named`: its blocks know their subs, and each train has
    lanes of its own."""
    rigs = sorted({light.sub.rig for light in lights}) if named else []
    if len(rigs) < 2:
        return _lanes_of_train(lights, x_of, bands, named)
    of_rigs = ((rig, _lanes_of_train([light for light in lights if light.sub.rig == rig], x_of, bands, named)) for rig in rigs)
    return tuple(replace(lane, rig=rig, heads=index == 0) for rig, lanes in of_rigs for index, lane in enumerate(lanes))


def _lanes_of_train(
    lights: Sequence[SubInSky], x_of: Across, bands: Mapping[str, tuple[str, ...]], named: bool
) -> tuple[Lane, ...]:
    return tuple(
        _lane(short, passbands, [_block(light, x_of, named) for light in lights if light.filter_key == short])
        for short, passbands in bands.items()
        if any(light.filter_key == short for light in lights)
    )


def _lane(short: str, bands: tuple[str, ...], subs: Sequence[Block]) -> Lane:
    blocks = joined(subs)
    kept, gone = (marks_of(block for block in blocks if block.kept is wanted) for wanted in (True, False))
    return Lane(short, bands, blocks, len(subs), kept, gone)


def _block(light: SubInSky, x_of: Across, named: bool) -> Block:
    x, end = x_of(light.sub.start), x_of(light.sub.end)
    return Block(round(x, 2), round(max(end - x, SHORTEST_MARK), 2), light.sub.kept, (light,) if named else ())


def joined(subs: Sequence[Block], most: int = MOST_IN_A_LANE) -> tuple[Block, ...]:
    """As many blocks as the eye can part."""
    blocks, pause = tuple(subs), SHORTEST_MARK
    while len(blocks) > most:
        runs = [_join(run) for kept in (True, False) for run in _runs((block for block in blocks if block.kept is kept), pause)]
        blocks = tuple(sorted(runs, key=lambda block: (block.x, not block.kept)))
        pause *= 2
    return blocks


def marks_of(blocks: Iterable[Block]) -> str:
    """Subs in a row are one mark: a pause that the eye could not see is none."""
    spans = ((run[0].x, max(block.end for block in run)) for run in _runs(blocks, SHORTEST_MARK))
    return "".join(f"M{start:.2f} 0H{end:.2f}V1H{start:.2f}Z" for start, end in spans)


def _runs(blocks: Iterable[Block], pause: float) -> list[list[Block]]:
    """Blocks that follow each other with no longer pause, in time order."""
    runs: list[list[Block]] = []
    reach = 0.0
    for block in sorted(blocks, key=lambda block: block.x):
        if runs and block.x - reach <= pause:
            runs[-1].append(block)
            reach = max(reach, block.end)
        else:
            runs.append([block])
            reach = block.end
    return runs


def _join(run: list[Block]) -> Block:
    start, end = run[0].x, max(block.end for block in run)
    return Block(start, round(end - start, 2), run[0].kept, tuple(light for block in run for light in block.lights))
