"""What a gathering did, as counts: every file in exactly one kind, each kind with its evidence."""

from collections import Counter
from collections.abc import Iterable, Mapping
from datetime import date

from msgspec import Struct

from sitegen.authoring.captures.record import Frame
from sitegen.authoring.captures.sorting import SortedFrames
from sitegen.authoring.captures.trains import HeaderTrain, trains_told
from sitegen.authoring.gathered_changes import Gone
from sitegen.diary.sub import Sub
from sitegen.problems import Problem
from sitegen.sky.solar_time import evening_at


class NewOfNight(Struct, frozen=True):
    """`what` is a filter's name, or the kind of a calibration frame."""

    evening: date
    what: str
    count: int
    exposure_s: float


class KindCount(Struct, frozen=True):
    """So many files of one kind, and why; `what` says which copy, which target, which train."""

    kind: str
    what: str
    why: str
    count: int


class OtherTrain(Struct, frozen=True):
    train: HeaderTrain
    count: int


class Sorting(Struct, frozen=True):
    """The files of one run: `files` frame files and others of the folders, `rows` of tables; the kinds add up to both.

    `discarded_by` counts frames by the words, pattern or list that discarded them. `placeless` frames tell no place; `clockless`
    ones no clock, and were read in the zone `read_as`. `target` is what the log shows, '' where nothing names it.
    """

    files: int
    rows: int
    kept: int
    discarded: int
    calibration: int
    unreadable: int
    left_out: tuple[KindCount, ...]
    passed_over: Mapping[str, int]
    discarded_by: Mapping[str, int]
    other_targets: Mapping[str, int]
    other_trains: tuple[OtherTrain, ...]
    target: str
    placeless: int
    clockless: int
    read_as: str
    main_train: HeaderTrain | None = None

    def count(self, kind: str) -> int:
        return sum(left_out.count for left_out in self.left_out if left_out.kind == kind) + (
            sum(self.passed_over.values()) if kind == "passed over" else 0
        )

    @property
    def kinds(self) -> dict[str, int]:
        """All kinds, in the order in which they are told; together they are files and rows."""
        names = ("copy", "combined", "focus run", "other target", "other train", "passed over")
        counted = {"kept": self.kept, "discarded": self.discarded, "calibration": self.calibration}
        return counted | {name: self.count(name) for name in names} | {"unreadable": self.unreadable}


class Totals(Struct, frozen=True):
    """Of the whole log; kept and discarded are light frames."""

    kept: int
    discarded: int
    calibration: int


class Gathering(Struct, frozen=True):
    """`log` is the path inside content/. `named` tells whether the entry names it now, None where there is no entry. `told` says
    how tables and text logs were understood."""

    log: str
    sorting: Sorting
    totals: Totals
    new: tuple[NewOfNight, ...]
    new_count: int
    known_count: int
    judged_anew: Mapping[str, int]
    moved_clock: int
    removed: Mapping[str, int]
    gone: Gone
    named: bool | None
    problems: tuple[Problem, ...]
    strangers: int = 0
    without_names: bool = False
    told: tuple[str, ...] = ()

    @property
    def unreadable(self) -> int:
        return self.sorting.unreadable


def sorting_report(
    sorted_frames: SortedFrames, kept: Mapping[int, bool], files: int, rows: int, passed_over: Mapping[str, int], read_as: str
) -> Sorting:
    """`kept` by the identity of a counted frame, as the log has it in the end."""
    counted = sorted_frames.counted
    lights_kept = sum(kept.get(id(exposure.frame), exposure.kept) for exposure in counted)
    left_out = Counter((passed.kind, passed.what, passed.why) for passed in sorted_frames.left_out)
    frames: list[Frame] = [exposure.frame for exposure in (*counted, *sorted_frames.calibration)]
    discarded_by = Counter(exposure.discard.by for exposure in counted if exposure.discard is not None)
    others = Counter(sorted_frames.targets.others.values())
    trains = trains_told(passed.train for passed in sorted_frames.left_out if passed.train is not None)
    return Sorting(
        files=files + sum(passed_over.values()),
        rows=rows,
        kept=lights_kept,
        discarded=len(counted) - lights_kept,
        calibration=len(sorted_frames.calibration),
        unreadable=len(sorted_frames.unreadable),
        left_out=tuple(KindCount(*key, count) for key, count in sorted(left_out.items())),
        passed_over=passed_over,
        discarded_by=dict(sorted(discarded_by.items())),
        other_targets=dict(sorted(others.items(), key=lambda pair: (-pair[1], pair[0]))),
        other_trains=tuple(OtherTrain(train, count) for train, count in trains),
        target=sorted_frames.targets.target.name if sorted_frames.targets.target else "",
        placeless=sorted_frames.targets.placeless,
        clockless=sum(frame.clock is not None and not _is_gathered(frame) for frame in frames),
        read_as=read_as,
    )


def _is_gathered(frame: Frame) -> bool:
    """A row of a log gathered earlier: its clock was told of then."""
    origin = frame.listed.origin if frame.listed is not None else None
    return origin is not None and origin.file is not None


def totals_of(subs: Iterable[Sub]) -> Totals:
    counted = Counter((sub.kind == "light", sub.kept) for sub in subs)
    return Totals(counted[True, True], counted[True, False], counted[False, True] + counted[False, False])


def nights_of(subs: Iterable[Sub], longitude_deg: float) -> tuple[NewOfNight, ...]:
    """Kept frames counted by evening, filter or kind, and exposure."""
    counted = Counter((evening_at(sub.middle, longitude_deg), _what(sub), sub.exposure_s) for sub in subs if sub.kept)
    return tuple(NewOfNight(evening, what, count, each_s) for (evening, what, each_s), count in sorted(counted.items()))


def _what(sub: Sub) -> str:
    return (sub.filter or "light") if sub.kind == "light" else sub.kind
