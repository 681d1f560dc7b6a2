"""What a harvest did, as counts: every file in exactly one of eight kinds."""

from collections import Counter
from collections.abc import Iterable, Mapping
from datetime import date

from msgspec import Struct

from sitegen.authoring.captures.sorting import LeftOut
from sitegen.authoring.harvest.questions import Question
from sitegen.problems import Problem

_OTHER = "passed over"


class ProjectReport(Struct, frozen=True):
    """`target` is the name that the target's page bears; `nights` are evenings, also of discarded frames. `new` counts frames
    that its log did not have; `is_begun` where its entry is new; `panels` of its
    mosaic, 0 for a single field and for a log that was there already."""

    entry: str
    target: str | None
    rig: str
    site: str
    nights: tuple[date, ...]
    kept: int
    discarded: int
    total_s: float
    new: int
    judged_anew: int
    gone: int
    is_begun: bool
    panels: int = 0


class KindReason(Struct, frozen=True):
    """So many files of one kind, and why."""

    kind: str
    why: str
    count: int


class Harvest(Struct, frozen=True):
    """`written` are paths inside content/, also those that a dry run would write; `kinds` add up to `files`."""

    files: int
    kinds: Mapping[str, int]
    reasons: tuple[KindReason, ...]
    questions: tuple[Question, ...]
    projects: tuple[ProjectReport, ...]
    written: tuple[str, ...]
    problems: tuple[Problem, ...]


class Counts(Struct, frozen=True):
    """What `kinds_of` adds up. `left_out` are no subs; `unclear` those that wait for an answer."""

    counted: int
    discarded: int
    calibration: int
    left_out: tuple[LeftOut, ...]
    set_aside: int
    passed_over: Mapping[str, int]
    hidden: int
    unreadable: Mapping[str, int]
    unclear: int
    discarded_by: Mapping[str, int]


def kinds_of(counts: Counts) -> dict[str, int]:
    other = sum(1 for left_out in counts.left_out if left_out.kind == _OTHER)
    return {
        "counted": counts.counted,
        "discarded": counts.discarded,
        "calibration": counts.calibration,
        "derived": len(counts.left_out) - other,
        "set_aside": counts.set_aside,
        "other": other + sum(counts.passed_over.values()) + counts.hidden,
        "unreadable": sum(counts.unreadable.values()),
        "unclear": counts.unclear,
    }


def reasons_of(counts: Counts) -> tuple[KindReason, ...]:
    derived = Counter(_reason(left_out) for left_out in counts.left_out if left_out.kind != _OTHER)
    other = Counter(left_out.why for left_out in counts.left_out if left_out.kind == _OTHER)
    other.update({f"a file that ends in {ending}": count for ending, count in counts.passed_over.items()})
    other.update({"hidden": counts.hidden} if counts.hidden else {})
    aside = {"left out by an answer in diary.yaml": counts.set_aside} if counts.set_aside else {}
    groups: tuple[tuple[str, Mapping[str, int]], ...] = (
        ("discarded", counts.discarded_by), ("derived", derived), ("set_aside", aside), ("other", other),
        ("unreadable", counts.unreadable),
    )  # fmt: skip
    return tuple(KindReason(kind, why, count) for kind, group in groups for why, count in sorted(group.items()))


def _reason(left_out: LeftOut) -> str:
    what = f"{left_out.kind}, {left_out.what}" if left_out.what else left_out.kind
    return f"{what}: {left_out.why}"


def waiting(questions: Iterable[Question]) -> int:
    return sum(question.files for question in questions)
