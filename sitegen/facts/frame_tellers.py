"""What several entries tell of one frame: who tells it, whose word counts in lists, and where they contradict each other.

Of the listed entries that tell of a frame, the one published later (by `published`, then by name) owns it in every list total.
"""

from collections.abc import Iterable, Sequence
from datetime import date

from msgspec import Struct, field

from sitegen.diary.entry import Entry
from sitegen.diary.same_frame import same_frames
from sitegen.diary.sub import Sub
from sitegen.facts.contradiction import Contradiction
from sitegen.facts.field_targets import FieldTargets

Slugs = tuple[str, ...]


class Tellers(Struct):
    """By the place of a light frame in the entry: the entries published before (`earlier`) and after (`later`) this one that tell
    of the same frame. `pointed`: of a frame without a target here, the newest other entry that names one, and the place of its
    record there."""

    earlier: dict[int, Slugs] = field(default_factory=dict)
    later: dict[int, Slugs] = field(default_factory=dict)
    pointed: dict[int, tuple[Entry, Sub]] = field(default_factory=dict)
    contradictions: tuple[Contradiction, ...] = ()


def rank(entry: Entry) -> tuple[date, str]:
    """The greater one owns what both tell."""
    return entry.published, entry.slug


def tellers_of(entry: Entry, others: Iterable[Entry]) -> Tellers:
    """`others` are listed entries; those that tell of none of its frames do no harm."""
    tellers, contradictions = Tellers(), []
    lights = entry.lights
    for other in sorted(others, key=rank):
        before, theirs = rank(other) < rank(entry), other.lights
        pairs = _pairs(theirs, lights) if before else same_frames(lights, theirs)
        _note(other, pairs, lights, theirs, tellers, tellers.earlier if before else tellers.later)
        if before and pairs:
            contradictions += _contradictions(entry, other, [(lights[mine], theirs[its]) for mine, its in pairs])
    tellers.contradictions = tuple(contradictions)
    return tellers


def _pairs(earlier: Sequence[Sub], later: Sequence[Sub]) -> list[tuple[int, int]]:
    """Both entries must see the same pairs, so the earlier one's frames always look for the later one's."""
    return sorted((mine, its) for its, mine in same_frames(earlier, later))


def _note(
    other: Entry, pairs: Iterable[tuple[int, int]], lights: Sequence[Sub], theirs: Sequence[Sub], tellers: Tellers,
    side: dict[int, Slugs],
) -> None:  # fmt: skip
    for mine, its in pairs:
        side[mine] = (*side.get(mine, ()), other.slug)
        if lights[mine].target is None and theirs[its].target is not None:
            tellers.pointed[mine] = other, theirs[its]


def _contradictions(entry: Entry, other: Entry, pairs: Sequence[tuple[Sub, Sub]]) -> list[Contradiction]:
    differing: dict[str, list[tuple[Sub, Sub, str, str]]] = {}
    for mine, its in pairs:
        for what, here, there in _differences(mine, its, entry, other):
            differing.setdefault(what, []).append((mine, its, here, there))
    return [
        Contradiction(what, other.slug, rows[0][0].start, *rows[0][2:], (rows[0][0].source, rows[0][1].source), len(rows))
        for what, rows in sorted(differing.items())
    ]


def _differences(mine: Sub, its: Sub, entry: Entry, other: Entry) -> list[tuple[str, str, str]]:
    """What differs, and what both say. What is not said (no filter, no target) contradicts nothing."""
    differences = [] if mine.kept == its.kept else [("kept", _verdict(mine), _verdict(its))]
    if mine.filter is not None and its.filter is not None and mine.filter != its.filter:
        differences.append(("filter", mine.filter, its.filter))
    if mine.target is not None and its.target is not None:
        target, its_target = entry.targets[mine.target], other.targets[its.target]
        if target.slug != its_target.slug:  # a slug, since two entries may spell one name in two ways
            differences.append(("target", target.name, its_target.name))
    return differences


def _verdict(sub: Sub) -> str:
    return "kept" if sub.kept else "discarded"


def field_targets(tellers: Tellers) -> dict[str, FieldTargets]:
    """Of the entries whose targets some frames borrow."""
    return {other.slug: FieldTargets(other) for other, _ in tellers.pointed.values()}
