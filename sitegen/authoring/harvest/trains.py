"""Which set-up of telescope and camera took each frame, and which set-ups follow each other as one rig."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime, timedelta

from msgspec import Struct, field
from msgspec.structs import replace

from sitegen.authoring.captures.record import Frame, FrameRecord
from sitegen.authoring.captures.trains import HeaderTrain, disagreements, header_train, same_train
from sitegen.diary.rig import Rig

HALF_A_DAY = timedelta(hours=12)
Names = tuple[str, str]
"""Of telescope and camera, as headers have them, in lower case; '' where they have none."""


class SetUp(Struct, eq=False):
    """Frames that nothing parts: telescope, camera and what headers tell of them, the most frequent first in `trains`."""

    names: Names
    trains: Counter[HeaderTrain] = field(default_factory=Counter)
    filters: Counter[str] = field(default_factory=Counter)
    spelt: tuple[str, str] = ("", "")
    first: Frame | None = None
    last: Frame | None = None

    @property
    def main(self) -> HeaderTrain:
        """A raw frame speaks for the camera, an unbinned one for its pixels."""
        return min(self.trains, key=lambda train: (train.processed, train.binning or 1, -self.trains[train], str(train)))

    @property
    def tells(self) -> bool:
        return bool(self.names[0] or self.main.focal_length_mm or self.main.pixel_um or self.main.camera_id)

    def lies_before(self, other: "SetUp") -> bool:
        return self.last is not None and other.first is not None and self.last.start < other.first.start


def names_of(record: FrameRecord) -> Names:
    return record.telescope.casefold(), record.camera.casefold()


class SetUps:
    """All set-ups of a disk, and by the number of a frame the one that took it."""

    def __init__(self, frames: Sequence[Frame], also: Sequence[Frame] = ()) -> None:
        self.set_ups: list[SetUp] = []
        self._of: dict[tuple[Names, HeaderTrain], SetUp] = {}
        every = (*frames, *also)
        keys = [(names_of(frame.record), header_train(frame.record)) for frame in every]
        counted: Counter[tuple[Names, HeaderTrain]] = Counter()
        for frame, key in zip(every, keys, strict=True):
            counted[key] += frame.kind == "light"
        for key, count in sorted(counted.items(), key=_surest_first):
            set_up = self._of[key] = self._fitting(*key) or self._begin(key[0])
            set_up.trains[key[1]] += count
        set_ups = tuple(self._of[key] for key in keys)
        self.of_frame = set_ups[: len(frames)]
        processed = []
        for frame, set_up in zip(every, set_ups, strict=True):
            if frame.record.is_processed or (frame.record.inputs or 1) > 1:
                processed.append((frame, set_up))
            else:
                _met(set_up, frame)
        without_raw = [set_up for set_up in self.set_ups if set_up.first is None]
        for frame, set_up in processed:
            if set_up in without_raw:
                _met(set_up, frame)

    def _fitting(self, names: Names, train: HeaderTrain) -> SetUp | None:
        """A telescope without a name is the only one that fits, if anything speaks for it: a raw file may tell no more than that
        it is coloured."""
        fitting = [set_up for set_up in self.set_ups if _may_be(names, set_up.names) and same_train(train, set_up.main)]
        named = [set_up for set_up in fitting if set_up.names[0] == names[0]]
        if named:
            return min(named, key=lambda set_up: set_up.names[1] != names[1])
        return fitting[0] if len(fitting) == 1 and _have_in_common(names, train, fitting[0]) else None

    def _begin(self, names: Names) -> SetUp:
        self.set_ups.append(SetUp(names))
        return self.set_ups[-1]


def _surest_first(pair: tuple[tuple[Names, HeaderTrain], int]) -> tuple[bool, bool, int, str]:
    """Named telescopes before others, raw frames before those whose pixels say nothing, many before few."""
    (names, train), count = pair
    return not names[0], train.processed, -count, f"{names} {train}"


def _may_be(names: Names, others: Names) -> bool:
    """By the telescope's name; programs spell one camera in many ways, so that it counts only where neither names a telescope."""
    if names[0] or others[0]:
        return not (names[0] and others[0]) or names[0] == others[0]
    return not (names[1] and others[1]) or names[1] == others[1]


def _have_in_common(names: Names, train: HeaderTrain, set_up: SetUp) -> bool:
    """Whether both tell of a telescope, a camera or a number, which then agree."""
    pairs = zip((*names, *_numbers(train)), (*set_up.names, *_numbers(set_up.main)), strict=True)
    return any(name and other for name, other in pairs)


def _numbers(train: HeaderTrain) -> tuple[float | str | None, ...]:
    return train.focal_length_mm, train.pixel_um, train.width_px, train.camera_id


def _met(set_up: SetUp, frame: Frame) -> None:
    if frame.kind != "light":
        return
    if not set_up.spelt[0]:
        set_up.spelt = frame.record.telescope, frame.record.camera
    set_up.filters[frame.record.filter_words] += 1
    if set_up.first is None or frame.start < set_up.first.start:
        set_up.first = frame
    if set_up.last is None or frame.start > set_up.last.start:
        set_up.last = frame


CALLED = "# In headers this telescope is called: "
"""A line of a rig's file that harvest wrote."""


def called_in(texts: Mapping[str, str]) -> dict[str, str]:
    """By slug, what headers call the telescope of a rig that harvest described, in lower case."""
    lines = ((slug, line) for slug, text in texts.items() for line in text.splitlines() if line.startswith(CALLED))
    return {slug: line.removeprefix(CALLED).strip().casefold() for slug, line in lines}


def rig_of(set_up: SetUp, rigs: Iterable[Rig], called: Mapping[str, str]) -> Rig | None:
    """The diary's rig that nothing of the set-up contradicts, on its first and its last evening; of several the one that bears
    the telescope's name. None where none or several are left."""
    frames = [frame for frame in (set_up.first, set_up.last) if frame is not None]
    agreeing = [rig for rig in rigs if all(_agrees(set_up.main, rig, frame) for frame in frames)]
    named = [rig for rig in agreeing if bears_name(rig, set_up, called)]
    unnamed = [rig for rig in agreeing if rig.slug not in called or not set_up.names[0]]
    fitting = named or unnamed
    return fitting[0] if len(fitting) == 1 else None


def _agrees(train: HeaderTrain, rig: Rig, frame: Frame) -> bool:
    """On the evening before or after as well: a change is dated by the evening of a place, which this frame may not tell."""
    moved = (replace(frame, start=frame.start + shift) for shift in (timedelta(0), HALF_A_DAY, -HALF_A_DAY))
    return any(not disagreements(train, rig, near) for near in moved)


def bears_name(rig: Rig, set_up: SetUp, called: Mapping[str, str]) -> bool:
    telescope = set_up.names[0]
    return bool(telescope) and (called.get(rig.slug) == telescope or telescope in rig.name.casefold())


def in_chains(set_ups: Iterable[SetUp]) -> list[list[SetUp]]:
    """Set-ups of one telescope (of one camera where it has no name) that follow each other are one rig that changed; those that
    were used side by side are rigs of their own."""
    chains: list[list[SetUp]] = []
    for set_up in sorted(set_ups, key=_first_start):
        chain = next((chain for chain in chains if _one_rig(chain[-1], set_up)), None)
        if chain is None:
            chains.append([set_up])
        else:
            chain.append(set_up)
    return chains


def _one_rig(before: SetUp, after: SetUp) -> bool:
    names = before.names[0] or before.names[1], after.names[0] or after.names[1]
    return bool(names[0]) and names[0] == names[1] and before.lies_before(after)


def _first_start(set_up: SetUp) -> datetime:
    assert set_up.first is not None
    return set_up.first.start
