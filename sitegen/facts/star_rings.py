"""How far the shadow in a defocused star sits from the middle of its disc, frame by frame."""

from msgspec import Struct

from sitegen.diary.entry import PictureType
from sitegen.facts.fact import COMMON_PRACTICE, Fact, Quantity, Text
from sitegen.facts.utc_text import utc_text
from sitegen.facts.views import EntryView, RingView


class FrameRing(Struct, frozen=True):
    """One defocused star; the direction in degrees from the row towards the top, None where the offset is below its error."""

    file: str
    type: PictureType
    taken: Text
    outer_px: float | int
    inner_px: float | int
    offset_px: float | int
    offset_percent: float | int
    direction_deg: Quantity
    uncertainty_px: float | int
    signal_to_noise: float | int
    warnings: tuple[str, ...]


def star_rings(view: EntryView) -> tuple[FrameRing, ...]:
    """One object a frame that the entry names in `star_rings`, in its order."""
    return tuple(_ring(ring) for ring in view.rings)


def _ring(view: RingView) -> FrameRing:
    ring, taken = view.frame.ring, view.frame.taken
    return FrameRing(
        file=view.frame.file,
        type=view.type,
        taken=utc_text(taken) if taken else None,
        outer_px=ring.outer_px,
        inner_px=ring.inner_px,
        offset_px=ring.offset_px,
        offset_percent=ring.offset_percent,
        direction_deg=ring.direction_deg,
        uncertainty_px=ring.uncertainty_px,
        signal_to_noise=ring.signal_to_noise,
        warnings=ring.warnings,
    )


STAR_RINGS: Fact[EntryView] = Fact(
    "Rings of a defocused star",
    "",
    star_rings,
    (
        "Two circles fitted to the disc and to the shadow inside it: the distance of their centres, in px and in percent of the "
        "disc's diameter, and the shadow's direction from the row towards the top; null where the offset is below its error. "
        "The error is one standard error: what noise leaves open, what the disc's sectors disagree about, and by how much the "
        "offset changes once diffraction rings are allowed for. A single disc cannot tell rings that lie off its middle from a "
        "shadow that does. A "
        "frame is an observation unless its author calls it something else (`type`)."
    ),
    COMMON_PRACTICE,
    3,
)
