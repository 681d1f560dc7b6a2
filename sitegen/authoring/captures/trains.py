"""Which optical train took a frame, by what its header says of focal length, pixels, frame and colour."""

from collections import Counter
from collections.abc import Iterable, Sequence

from msgspec import Struct

from sitegen.authoring.captures.record import Frame, FrameRecord
from sitegen.diary.rig import Rig
from sitegen.reading.capture_logs.standing_train import (
    Disagreement,
    focal_length_disagrees,
    frame_disagrees,
    inferred_binning,
    pixel_disagrees,
    train_at,
)

FOCAL_TOLERANCE, PIXEL_TOLERANCE, FRAME_TOLERANCE = 0.05, 0.03, 0.01


class HeaderTrain(Struct, frozen=True):
    """A train as headers tell it; None where they do not. Pixel and frame are binned. `processed` frames may have been cropped or
    resampled, so that their pixels say nothing."""

    focal_length_mm: float | None
    pixel_um: float | None
    binning: int | None
    width_px: int | None
    height_px: int | None
    colour: bool | None
    camera_id: str
    processed: bool

    def __str__(self) -> str:
        binning = self.binning or 1
        parts = [f"{self.focal_length_mm:g} mm" if self.focal_length_mm else "",
                 f"{self.pixel_um / binning:g} µm pixels" if self.pixel_um else "",
                 f"{self.width_px * binning} × {self.height_px * binning} px" if self.width_px and self.height_px else "",
                 "colour" if self.colour else ""]  # fmt: skip
        return ", ".join(part for part in parts if part) or "a train that headers do not tell"


def header_train(record: FrameRecord) -> HeaderTrain:
    calibration = record.kind not in (None, "light")
    return HeaderTrain(
        None if calibration else record.focal_length_mm, record.pixel_um, record.binning, record.width_px, record.height_px,
        record.colour, record.camera_id, record.is_processed or (record.inputs or 1) > 1,
    )  # fmt: skip


def same_train(train: HeaderTrain, other: HeaderTrain) -> bool:
    """Whether nothing that both tell contradicts. One camera's serial number is proof; two different ones are, too."""
    if not _near(train.focal_length_mm, other.focal_length_mm, FOCAL_TOLERANCE):
        return False
    if train.camera_id and other.camera_id:
        return train.camera_id == other.camera_id
    if train.processed or other.processed:
        return True
    return _same_pixels(train, other) and _same_frame(train, other) and _same_colour(train, other)


def _same_pixels(train: HeaderTrain, other: HeaderTrain) -> bool:
    """Most programs write the binned pixel, some the unbinned."""
    if not train.pixel_um or not other.pixel_um:
        return True
    ways = ((train.pixel_um / first, other.pixel_um / second)
            for first in {1, train.binning or 1} for second in {1, other.binning or 1})  # fmt: skip
    return any(_near(first, second, PIXEL_TOLERANCE) for first, second in ways)


def _same_frame(train: HeaderTrain, other: HeaderTrain) -> bool:
    sizes = [sorted((sized.width_px * (sized.binning or 1), sized.height_px * (sized.binning or 1)))
             for sized in (train, other) if sized.width_px and sized.height_px]  # fmt: skip
    return len(sizes) < 2 or all(_near(first, second, FRAME_TOLERANCE) for first, second in zip(*sizes, strict=True))


def _same_colour(train: HeaderTrain, other: HeaderTrain) -> bool:
    """A raw frame of a colour camera tells its colour pattern, one of a monochrome camera has nothing to tell."""
    return bool(train.colour) == bool(other.colour)


def _near(length: float | None, other: float | None, tolerance: float) -> bool:
    return not length or not other or abs(length - other) <= tolerance * max(length, other)


def disagreements(train: HeaderTrain, rig: Rig, frame: Frame) -> tuple[Disagreement, ...]:
    """What speaks against the rig as it stood that evening, as the readers of FITS and of camera files word it."""
    standing = train_at(rig, None, frame.start)
    binning = train.binning or inferred_binning(train.pixel_um, standing.camera.pixel_um) or 1
    colour: tuple[Disagreement, ...] = ()
    if train.colour and not train.processed and standing.camera.colour == "mono":
        remedy = f"correct 'colour' in rigs/{rig.slug}.yaml, or add the change of that evening to 'changes'"
        colour = ((f"the header tells a colour camera, that of '{rig.slug}' was monochrome that evening", remedy),)
    is_fits = frame.record.source == "fits"
    focal_length = focal_length_disagrees("FOCALLEN" if is_fits else "FocalLength", train.focal_length_mm, rig, standing)
    if train.processed:
        return tuple(focal_length)
    return (
        *focal_length,
        *pixel_disagrees("XPIXSZ", train.pixel_um, binning, rig, standing),
        *frame_disagrees("NAXIS1 × NAXIS2" if is_fits else "the frame", (train.width_px, train.height_px), binning, rig, standing,
                         any_way_up=not is_fits),
        *colour,
    )  # fmt: skip


class TrainSorting(Struct, frozen=True):
    """By the frame's number: those of another train, with that train; and what speaks against the rig for those that stay."""

    others: dict[int, HeaderTrain]
    against: dict[int, tuple[Disagreement, ...]]


def sort_trains(frames: Sequence[Frame], rig: Rig | None, taken_in: Sequence[Frame] = ()) -> TrainSorting:
    """The train is the rig's, as it stood that evening, where any frame agrees with it; else that of most frames, of those taken
    in earlier where there are some."""
    trains = [header_train(frame.record) for frame in frames]
    against = _against(trains, frames, rig)
    agreeing = {number for number, _ in enumerate(frames) if not against.get(number, ())} if rig is not None else set()
    lights = [number for number in agreeing if frames[number].kind == "light" and _tells(trains[number])]
    if lights:
        others = {number: trains[number] for number in range(len(frames)) if number not in agreeing}
        main = Counter(trains[number] for number in lights)
        kept = {number for number, train in others.items() if any(_surely_same(train, taken) for taken in main)}
        return TrainSorting({number: train for number, train in others.items() if number not in kept}, against)
    earlier = _of_most([header_train(frame.record) for frame in taken_in], taken_in)
    main_train = earlier or _of_most(trains, frames)
    alike = {train: main_train is None or same_train(train, main_train) for train in set(trains)}
    others = {number: train for number, train in enumerate(trains) if not alike[train] and number not in agreeing}
    return TrainSorting(others, {number: wrong for number, wrong in against.items() if number not in others})


def _surely_same(train: HeaderTrain, agreeing: HeaderTrain) -> bool:
    """A part of the frame read out by a camera whose serial number is known."""
    return bool(train.camera_id) and train.camera_id == agreeing.camera_id and same_train(train, agreeing)


def _tells(train: HeaderTrain) -> bool:
    return bool(train.focal_length_mm or train.pixel_um or train.camera_id)


def _against(trains: Sequence[HeaderTrain], frames: Sequence[Frame], rig: Rig | None) -> dict[int, tuple[Disagreement, ...]]:
    if rig is None:
        return {}
    by_train: dict[tuple[HeaderTrain, object, str], tuple[Disagreement, ...]] = {}
    against = {}
    for number, (train, frame) in enumerate(zip(trains, frames, strict=True)):
        key = train, id(train_at(rig, None, frame.start)), frame.record.source
        if key not in by_train:
            by_train[key] = disagreements(train, rig, frame)
        if by_train[key]:
            against[number] = by_train[key]
    return against


def _of_most(trains: Sequence[HeaderTrain], frames: Sequence[Frame]) -> HeaderTrain | None:
    """The train with most light frames, trains that nothing parts counted together."""
    counted = Counter(train for train, frame in zip(trains, frames, strict=True) if frame.kind == "light" and _tells(train))
    if not counted:
        return None
    return max(counted, key=lambda train: (_together(train, counted), counted[train], str(train)))


def _together(train: HeaderTrain, counted: Counter[HeaderTrain]) -> int:
    return sum(count for other, count in counted.items() if same_train(train, other))


def trains_told(trains: Iterable[HeaderTrain]) -> list[tuple[HeaderTrain, int]]:
    """Trains that nothing parts drawn together, with their numbers, the most frequent first."""
    groups: list[tuple[HeaderTrain, int]] = []
    for train, count in sorted(Counter(trains).items(), key=lambda pair: (-pair[1], str(pair[0]))):
        place = next((place for place, (first, _) in enumerate(groups) if same_train(train, first)), None)
        if place is None:
            groups.append((train, count))
        else:
            groups[place] = groups[place][0], groups[place][1] + count
    return groups
