"""Which rig took a frame, by what its header says of focal length, pixels, frame and filter."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime

from msgspec import Struct

from sitegen.authoring.frame_hints import FrameHints
from sitegen.diary.rig import Rig
from sitegen.reading.capture_logs.filter_names import match_filter
from sitegen.reading.capture_logs.standing_train import (
    Disagreement,
    focal_length_disagrees,
    frame_disagrees,
    inferred_binning,
    pixel_disagrees,
    train_at,
)


class RigFit(Struct, frozen=True):
    """`sure` where headers told something, this rig agreed with all of it, and no other did."""

    rig: Rig
    sure: bool
    against: str = ""


def disagreements(hints: FrameHints, rig: Rig, start: datetime) -> tuple[Disagreement, ...]:
    """As the reader of FITS logs words them."""
    train = train_at(rig, None, start)
    binning = hints.binning or inferred_binning(hints.pixel_um, train.camera.pixel_um) or 1
    return (
        *focal_length_disagrees("FOCALLEN", hints.focal_length_mm, rig, train),
        *pixel_disagrees("XPIXSZ", hints.pixel_um, binning, rig, train),
        *frame_disagrees("NAXIS1 × NAXIS2", hints.frame_px, binning, rig, train),
    )


def rig_of(
    frames: Sequence[tuple[FrameHints | None, datetime]], filters: Iterable[str], rigs: Mapping[str, Rig]
) -> RigFit | None:
    """The rig with the least against it; None where the diary has none. `frames` are headers with their starts."""
    words = sorted({word for word in filters if word})
    judged = sorted((_against(frames, words, rig), slug) for slug, rig in rigs.items())
    if not judged:
        return None
    (against, why), slug = judged[0]
    told = bool(words) or any(hints and (hints.focal_length_mm or hints.pixel_um) for hints, _ in frames)
    alone = len(judged) == 1 or judged[1][0][0] > 0
    return RigFit(rigs[slug], sure=told and against == 0 and alone, against=why)


def _against(frames: Iterable[tuple[FrameHints | None, datetime]], words: Iterable[str], rig: Rig) -> tuple[int, str]:
    """How much, and the first of it in words."""
    found = [wrong for hints, start in frames if hints is not None for wrong, _ in disagreements(hints, rig, start)]
    unknown = [f"'{word}' is none of its filters" for word in words if match_filter(word, rig) is None]
    against = list(dict.fromkeys([*found, *unknown]))
    return len(against), against[0] if against else ""
