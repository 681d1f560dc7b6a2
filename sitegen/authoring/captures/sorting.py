"""Every frame file into exactly one kind, each with its evidence: counted, calibration, focus run, combined, copy, set aside."""

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import lru_cache, partial
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from sitegen.authoring.captures.combined import COUNTS_INPUTS, combined_by_header, combined_by_sum
from sitegen.authoring.captures.copies import Exposure, exposures_of, kind_of_copy
from sitegen.authoring.captures.discards import Discard, Discarding, discard_of
from sitegen.authoring.captures.focus_runs import KIND_SAYS_SO, SAYS_SO, STEPS, kind_says_focus, says_focus, stepping_runs
from sitegen.authoring.captures.places import Target, TargetSorting, field_deg, sort_targets
from sitegen.authoring.captures.reading import ReadFrames, Unreadable
from sitegen.authoring.captures.record import Frame, FrameFile
from sitegen.authoring.captures.trains import HeaderTrain, sort_trains
from sitegen.diary.rig import Rig
from sitegen.diary.sub import FrameKind
from sitegen.problems import Problem
from sitegen.reading.capture_logs.standing_train import Disagreement

LeftOutKind = Literal["copy", "combined", "focus run", "other target", "other train", "passed over"]
ONE_EXPOSURE = "start, exposure and camera of another frame"
OTHER_PLACE = "farther than a field from the target"
OTHER_TRAIN = "the header tells another train"
WITHOUT_DATE = "processed, and without a date or an exposure"
_FOLDERS: tuple[tuple[FrameKind, frozenset[str]], ...] = (
    ("dark-flat", frozenset({"darkflat", "darkflats", "flatdark", "flatdarks"})),
    ("dark", frozenset({"dark", "darks", "dunkelbild", "dunkelbilder"})),
    ("flat", frozenset({"flat", "flats", "hellbild", "hellbilder"})),
    ("bias", frozenset({"bias", "biases", "offset", "offsets", "biasframes"})),
)


class LeftOut(Struct, frozen=True):
    """A frame that is no sub of the log. `what` says which copy, which target, which train; `why` is the evidence."""

    frame: Frame | Unreadable
    kind: LeftOutKind
    what: str
    why: str
    train: HeaderTrain | None = None

    @property
    def file(self) -> FrameFile | None:
        return self.frame.file


class Counted(Struct, frozen=True):
    """An exposure of the log, and why it was thrown away, where it was."""

    exposure: Exposure
    discard: Discard | None = None

    @property
    def frame(self) -> Frame:
        return self.exposure.frame

    @property
    def kept(self) -> bool:
        """As files and tables have it."""
        return self.discard is None


class SortingRequest(Struct, frozen=True):
    """`targets` are what the log shows, none where that is to be found out; `taken_in` the light frames that it has already."""

    targets: tuple[Target, ...] = ()
    taken_in: tuple[Frame, ...] = ()
    rig: Rig | None = None
    discarding: Discarding = Discarding()


class SortedFrames(Struct, frozen=True):
    """`counted` are light frames, `calibration` darks, flats and their like, both in time order."""

    counted: tuple[Counted, ...]
    calibration: tuple[Counted, ...]
    left_out: tuple[LeftOut, ...]
    unreadable: tuple[Unreadable, ...]
    targets: TargetSorting
    against_rig: tuple[Problem, ...]


def sort_frames(read: ReadFrames, request: SortingRequest) -> SortedFrames:
    """From the surest evidence to the least sure: what an earlier step takes out does not confuse a later one."""
    left_out, unreadable = without_date(read.unreadable)
    frames = [_of_its_folder(frame) for frame in (*read.frames, *read.table_rows)]
    left_out += (_unknown_kind(frame) for frame in frames if frame.record.kind is None)
    exposures = exposures_of(frame for frame in frames if frame.record.kind is not None)
    left_out += _copies(exposures)
    against: dict[int, tuple[Disagreement, ...]] = {}
    steps: tuple[Callable[[Sequence[Exposure]], Taken], ...] = (
        partial(_by_words, language=request.discarding.language),
        _by_stepping,
        partial(_by_train, request=request, against=against),
        _by_sum,
    )
    for step in steps:
        taken = step(exposures)
        left_out += (taken[number] for number in sorted(taken))
        exposures = tuple(exposure for number, exposure in enumerate(exposures) if number not in taken)
    lights = [exposure for exposure in exposures if exposure.frame.kind == "light"]
    light_frames = [exposure.frame for exposure in lights]
    reach_deg = field_deg([*light_frames, *request.taken_in], request.rig)
    targets = sort_targets(light_frames, request.targets, request.taken_in, reach_deg)
    left_out += (LeftOut(light_frames[number], "other target", name, OTHER_PLACE) for number, name in targets.others.items())
    counted = [exposure for number, exposure in enumerate(lights) if number not in targets.others]
    calibration = [exposure for exposure in exposures if exposure.frame.kind != "light"]
    return SortedFrames(
        tuple(_judged(counted, request.discarding)),
        tuple(_judged(calibration, replace(request.discarding, kept_stems=None))),
        tuple(left_out), tuple(unreadable), targets, tuple(_against_rig([*counted, *calibration], against)),
    )  # fmt: skip


def sort_rig_frames(frames: Iterable[Frame], discarding: Discarding) -> tuple[list[Counted], list[Counted], list[LeftOut]]:
    """Of one rig's frames, whatever they show: lights, calibration, and what is no sub."""
    exposures = exposures_of(frames)
    left_out = list(_copies(exposures))
    for step in (partial(_by_words, language=discarding.language), _by_stepping, _by_sum):
        taken = step(exposures)
        left_out += (taken[number] for number in sorted(taken))
        exposures = tuple(exposure for number, exposure in enumerate(exposures) if number not in taken)
    lights = [exposure for exposure in exposures if exposure.frame.kind == "light"]
    calibration = [exposure for exposure in exposures if exposure.frame.kind != "light"]
    return list(_judged(lights, discarding)), list(_judged(calibration, discarding)), left_out


def kinds_told(frames: Iterable[Frame]) -> tuple[list[Frame], list[LeftOut]]:
    """Each with the kind that its folder tells where its header tells none; and those of no kind."""
    of_folder = [_of_its_folder(frame) for frame in frames]
    strange = [_unknown_kind(frame) for frame in of_folder if frame.record.kind is None]
    return [frame for frame in of_folder if frame.record.kind is not None], strange


def _of_its_folder(frame: Frame) -> Frame:
    """A header that names no kind leaves it to the folder: cameras write none."""
    if frame.record.kind_words or frame.file is None:
        return frame
    kind = _kind_of_folders(frame.file.with_folder.rpartition("/")[0])
    return frame if kind is None else replace(frame, record=replace(frame.record, kind=kind))


@lru_cache(maxsize=4_096)
def _kind_of_folders(path: str) -> FrameKind | None:
    folders = [re.sub(r"[\W_\d]+", "", part.casefold()) for part in path.split("/")]
    return next((kind for kind, words in _FOLDERS if any(folder in words for folder in folders)), None)


def without_date(unreadable: Iterable[Unreadable]) -> tuple[list[LeftOut], list[Unreadable]]:
    """A finished picture often has lost its date: that is no fault of the disk."""
    left_out: list[LeftOut] = []
    broken = []
    for file in unreadable:
        if (file.record.inputs or 1) > 1:
            left_out.append(LeftOut(file, "combined", "", COUNTS_INPUTS))
        elif file.record.is_processed:
            left_out.append(LeftOut(file, "passed over", "", WITHOUT_DATE))
        else:
            broken.append(file)
    return left_out, broken


def _unknown_kind(frame: Frame) -> LeftOut:
    if kind_says_focus(frame.record):
        return LeftOut(frame, "focus run", "", KIND_SAYS_SO)
    if why := combined_by_header(frame):
        return LeftOut(frame, "combined", "", why)
    return LeftOut(frame, "passed over", "", f"{frame.record.kind_words}, no kind of frame")


def _copies(exposures: Iterable[Exposure]) -> Iterator[LeftOut]:
    for exposure in exposures:
        for copy in exposure.copies:
            yield LeftOut(copy, "copy", kind_of_copy(copy, exposure.frame), ONE_EXPOSURE)


Taken = dict[int, LeftOut]
"""By the number of the exposure, why it is none of the log's."""


def _by_words(exposures: Sequence[Exposure], language: str) -> Taken:
    taken: Taken = {}
    for number, exposure in enumerate(exposures):
        frame = exposure.frame
        if why := combined_by_header(frame):
            taken[number] = LeftOut(frame, "combined", "", why)
        elif frame.kind == "light" and says_focus(frame, language):
            taken[number] = LeftOut(frame, "focus run", "", SAYS_SO)
    return taken


def _lights(exposures: Sequence[Exposure]) -> tuple[list[int], list[Frame]]:
    numbers = [number for number, exposure in enumerate(exposures) if exposure.frame.kind == "light"]
    return numbers, [exposures[number].frame for number in numbers]


def _by_stepping(exposures: Sequence[Exposure]) -> Taken:
    numbers, frames = _lights(exposures)
    return {numbers[place]: LeftOut(frames[place], "focus run", "", STEPS) for place in stepping_runs(frames)}


def _by_sum(exposures: Sequence[Exposure]) -> Taken:
    numbers, frames = _lights(exposures)
    return {numbers[place]: LeftOut(frames[place], "combined", "", why) for place, why in combined_by_sum(frames).items()}


def _by_train(
    exposures: Sequence[Exposure], request: SortingRequest, against: dict[int, tuple[Disagreement, ...]]
) -> Taken:
    """What speaks against the rig in frames that stay is put into `against`, by its identity."""
    trains = sort_trains([exposure.frame for exposure in exposures], request.rig, request.taken_in)
    stays = ((number, wrong) for number, wrong in trains.against.items() if number not in trains.others)
    against.update((id(exposures[number].frame), wrong) for number, wrong in stays)
    return {number: LeftOut(exposures[number].frame, "other train", str(train), OTHER_TRAIN, train)
            for number, train in trains.others.items()}  # fmt: skip


def _judged(exposures: Iterable[Exposure], discarding: Discarding) -> Iterator[Counted]:
    for exposure in exposures:
        discard = discard_of(exposure.frames, discarding) or _graded_as_discarded(exposure) or _listed_as_discarded(exposure)
        yield Counted(exposure, discard)


def _graded_as_discarded(exposure: Exposure) -> Discard | None:
    """By the table of measures; it may name a copy of the frame that counts."""
    verdicts = [frame.measures for frame in exposure.frames if frame.measures is not None and frame.measures.kept is False]
    return Discard(verdicts[0].reason, "the table of measures", is_by_table=True) if verdicts else None


def _listed_as_discarded(exposure: Exposure) -> Discard | None:
    """A table may say so of a frame whose file lies elsewhere."""
    listed = next((frame.listed for frame in exposure.frames if frame.listed is not None and not frame.listed.kept), None)
    return Discard(listed.reason or "", "tables that list them", is_by_table=True) if listed is not None else None


def _against_rig(exposures: Iterable[Exposure], against: Mapping[int, tuple[Disagreement, ...]]) -> Iterator[Problem]:
    for exposure in exposures:
        for wrong, remedy in against.get(id(exposure.frame), ()):
            shown = exposure.frame.file.path if exposure.frame.file else ""
            yield Problem(shown, 1, 1, wrong, remedy, "warning")
