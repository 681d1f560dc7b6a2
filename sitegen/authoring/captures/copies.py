"""Files that show one exposure: calibrated, registered and backed-up copies, raw and JPEG. The rawest counts."""

import re
from collections.abc import Iterable, Sequence
from datetime import timedelta
from math import isclose

from msgspec import Struct

from sitegen.authoring.captures.record import Frame, FrameMeasures
from sitegen.authoring.captures.trains import header_train, same_train
from sitegen.reading.capture_logs.filter_names import NO_FILTER_WORDS
from sitegen.reading.capture_logs.filter_words import may_be_one_filter
from sitegen.reading.capture_logs.joining import SAME_START, SHORT_S, TRUNCATED_START

CALIBRATED, REGISTERED, BACKED_UP, PAIR, LISTED = "calibrated", "registered", "backed up", "raw and JPEG", "listed in a table"
_DERIVED = re.compile(
    r"(?:^|[_\-. ])(?:cal|calib|calibrated|reg|registered|aligned|debayered|copy|backup|bak|c|r|a|d|\(\d+\))(?=$|[_\-. ])", re.I
)
_SAYS_REGISTERED = re.compile(r"(?:^|[_\-. /])(?:reg|registered|aligned)(?=$|[_\-. /])", re.I)
_SAYS_CALIBRATED = re.compile(r"(?:^|[_\-. /])(?:cal|calib|calibrated|debayered)(?=$|[_\-. /])", re.I)


class Exposure(Struct, frozen=True):
    """One exposure: the frame that counts, and the other files that show it."""

    frame: Frame
    copies: tuple[Frame, ...] = ()

    @property
    def frames(self) -> tuple[Frame, ...]:
        return self.frame, *self.copies

    @property
    def measures(self) -> FrameMeasures | None:
        """Of the first of its files that a grading table has."""
        return next((frame.measures for frame in self.frames if frame.measures is not None), None)


def exposures_of(frames: Iterable[Frame]) -> tuple[Exposure, ...]:
    """Every frame in exactly one of them, in time order."""
    groups: list[list[Frame]] = []
    recent: list[list[Frame]] = []
    for frame in sorted(frames, key=lambda frame: frame.place_in_order):
        recent = [group for group in recent if frame.start - group[0].start <= TRUNCATED_START]
        group = next((group for group in recent if _same_moment(frame, group[0]) and any(is_one_exposure(frame, other)
                      for other in group)), None)  # fmt: skip
        if group is None:
            group = []
            groups.append(group)
            recent.append(group)
        group.append(frame)
    return tuple(_exposure(group) for group in groups)


def _exposure(frames: Sequence[Frame]) -> Exposure:
    if len(frames) == 1:
        return Exposure(frames[0])
    rawest, *copies = sorted(frames, key=_rawness)
    return Exposure(rawest, tuple(copies))


def is_one_exposure(frame: Frame, other: Frame) -> bool:
    """Same start, exposure, kind and camera: by its serial number where both tell it, else by the train and a filter that does
    not contradict."""
    if not _same_moment(frame, other) or not isclose(frame.exposure_s, other.exposure_s, rel_tol=1e-3, abs_tol=1e-3):
        return False
    if frame.kind != other.kind or (frame.exposure_s < SHORT_S and frame.start != other.start):
        return False
    serials = frame.record.camera_id, other.record.camera_id
    if all(serials):
        return serials[0] == serials[1]
    if "table" in (frame.record.source, other.record.source):
        return _same_filter(frame, other)
    return same_train(header_train(frame.record), header_train(other.record)) and _same_filter(frame, other)


def _same_moment(frame: Frame, other: Frame) -> bool:
    """Within half a second; within the same second where one of them gives whole seconds."""
    apart = abs(frame.start - other.start)
    if apart < SAME_START:
        return True
    whole = not (frame.start.microsecond and other.start.microsecond)
    return whole and apart < timedelta(seconds=1) and frame.start.second == other.start.second


def _same_filter(frame: Frame, other: Frame) -> bool:
    first, second = frame.record.filter_words, other.record.filter_words
    said = first.casefold() not in NO_FILTER_WORDS and second.casefold() not in NO_FILTER_WORDS
    return not said or may_be_one_filter(first, second)


def _rawness(frame: Frame) -> tuple[object, ...]:
    """The least is the rawest. The header's words, then pixels, then the name; paths last, so that the answer is always one."""
    record, file = frame.record, frame.file
    stem, below = (file.stem, file.below) if file else ("", "")
    return (
        ("fits", "raw", "picture", "table").index(record.source) // 2,
        record.source == "table",
        (record.inputs or 1) > 1,
        bool(record.processed),
        record.float_pixels,
        len(_DERIVED.findall(stem)),
        len(_SAYS_CALIBRATED.findall(below)) + len(_SAYS_REGISTERED.findall(below)),
        below.count("/"),
        len(below),
        file.path if file else "",
    )


def kind_of_copy(copy: Frame, counted: Frame) -> str:
    record, below = copy.record, copy.file.below if copy.file else ""
    if record.source == "table":
        return LISTED
    if record.source == "picture" and counted.record.source != "picture":
        return PAIR
    if record.processed == "registered" or (record.is_processed and _SAYS_REGISTERED.search(below)):
        return REGISTERED
    if record.processed == "calibrated" or (record.float_pixels and not counted.record.float_pixels):
        return CALIBRATED
    if _SAYS_REGISTERED.search(below):
        return REGISTERED
    return CALIBRATED if _SAYS_CALIBRATED.search(below) else BACKED_UP
