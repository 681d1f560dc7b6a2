"""What the broadband hours would have been worth under a dark sky."""

from sitegen.facts.fact import Fact
from sitegen.facts.views import EntryView
from sitegen.sky.dark_equivalent import dark_equivalent_s as worth_s


def dark_equivalent_s(view: EntryView) -> float | None:
    """Sum over kept broadband frames of exposure × 10^(−0.4 × brightening); None where any part is not known."""
    counted = [
        (light.sub.exposure_s, float(brightening_mag))
        for light, brightening_mag in zip(view.lights, view.sub_sky.sky_brightening_mag, strict=True)
        if light.sub.kept and not light.narrow
    ]
    return worth_s([exposure_s for exposure_s, _ in counted], [brightening_mag for _, brightening_mag in counted])


DARK_EQUIVALENT_S: Fact[EntryView] = Fact(
    "Worth in dark sky",
    "s",
    dark_equivalent_s,
    (
        "Each broadband sub counted as exposure × 10^(−0.4 × the Moon's brightening of the sky at the target): the dark-sky time"
        " that would have met the same sky-limited noise."
    ),
    "K. Krisciunas & B. E. Schaefer, PASP 103, 1033 (1991), V band; good to 8–23 % of the brightness",
    1,
)
