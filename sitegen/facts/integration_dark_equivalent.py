"""What the broadband hours would have been worth under a dark sky."""

from sitegen.facts.fact import Fact
from sitegen.facts.views import EntryView
from sitegen.sky.dark_equivalent import dark_equivalent_s as worth_s


def sub_worths_s(view: EntryView) -> tuple[float | None, ...]:
    """Of each light frame the dark-sky seconds that it is worth; 0 for one that does not count (discarded, or narrowband), None
    where the sky's brightening is not known."""
    columns = zip(view.lights, view.sub_sky.sky_brightening_mag, strict=True)
    return tuple(
        worth_s([light.sub.exposure_s], [brightening_mag]) if light.sub.kept and not light.narrow else 0.0
        for light, brightening_mag in columns
    )


def dark_equivalent_s(view: EntryView) -> float | None:
    """Sum over kept broadband frames of exposure × 10^(−0.4 × brightening); None where any part is not known."""
    counted = [
        (light.sub.exposure_s, float(brightening_mag))
        for light, brightening_mag in zip(view.lights, view.sub_sky.sky_brightening_mag, strict=True)
        if light.sub.kept and not light.narrow
    ]
    return worth_s([exposure_s for exposure_s, _ in counted], [brightening_mag for _, brightening_mag in counted])


FACTS: tuple[Fact[EntryView], ...] = (
    Fact(
        "dark_equivalent_s",
        "Worth in dark sky",
        "s",
        dark_equivalent_s,
        "Each broadband sub counted as exposure × 10^(−0.4 × the Moon's brightening of the sky at the target): the dark-sky time"
        " that would have met the same sky-limited noise.",
        "K. Krisciunas & B. E. Schaefer, PASP 103, 1033 (1991), V band; good to 8–23 % of the brightness",
        1,
    ),
)
