"""How far the shadow in a defocused star sits from the middle of its disc, frame by frame."""

from typing import Any

from sitegen.facts.fact import COMMON_PRACTICE, Fact
from sitegen.facts.views import EntryView, RingView

RING_KEYS = ("outer_px", "inner_px", "offset_px", "offset_percent", "direction_deg", "uncertainty_px", "signal_to_noise")


def star_rings(view: EntryView) -> list[dict[str, Any]]:
    """One object a frame that the entry names in `star_rings`, in its order."""
    return [_ring(one) for one in view.rings]


def _ring(one: RingView) -> dict[str, Any]:
    measured = {key: getattr(one.frame.ring, key) for key in RING_KEYS}
    return {"file": one.frame.file, "taken": one.frame.taken, **measured, "warnings": list(one.frame.ring.warnings)}


FACTS: tuple[Fact[EntryView], ...] = (
    Fact(
        "star_rings",
        "Rings of a defocused star",
        "",
        star_rings,
        "Two circles fitted to the disc and to the shadow inside it: the distance of their centres, in px and in percent of the "
        "disc's diameter, and the shadow's direction from the row towards the top; null where the offset is below its error.",
        COMMON_PRACTICE,
        3,
    ),
)
