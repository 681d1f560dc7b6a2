"""What the broadband hours would have been worth under a dark sky."""

import math
from collections.abc import Sequence

import numpy as np

from sitegen.facts.fact import Fact
from sitegen.facts.views import EntryView, SubInSky
from sitegen.sky.arrays import Floats
from sitegen.sky.dark_equivalent import dark_sky_weight


def sub_worths_s(view: EntryView) -> tuple[float | None, ...]:
    """What each of the view's lights adds to `dark_equivalent_s`: exposure × weight; None where it is not known.

    0.0 for a light that does not count, one discarded or narrowband.
    """
    return tuple(_worth_s(light, float(weight)) for light, weight in zip(view.lights, _weights(view), strict=True))


def _worth_s(light: SubInSky, weight: float) -> float | None:
    if light.narrow or not light.sub.kept:
        return 0.0
    return None if math.isnan(weight) else light.sub.exposure_s * weight


def _weights(view: EntryView) -> Floats:
    """Of every light, NaN where unknown; extinction and dark sky are those of the light's own public site."""
    sites = {night.site.slug: night.site for night in view.nights}
    skies = {slug: math.nan if site.sky_mag_arcsec2 is None else site.sky_mag_arcsec2 for slug, site in sites.items()}
    sky = view.sub_sky
    return dark_sky_weight(
        sky.sun_altitude_deg,
        sky.target_altitude_deg,
        sky.sky_brightening_mag,
        np.array([sites[light.sub.site].extinction_mag for light in view.lights], float),
        np.array([skies[light.sub.site] for light in view.lights], float),
    )


def dark_equivalent_s(view: EntryView) -> float | None:
    """Sum of the lights' worths; None where any of them is not known, 0.0 without broadband frames."""
    return total_worth_s(sub_worths_s(view))


def total_worth_s(worths_s: Sequence[float | None]) -> float | None:
    known_s = [worth_s for worth_s in worths_s if worth_s is not None]
    return math.fsum(known_s) if len(known_s) == len(worths_s) else None


DARK_EQUIVALENT_S: Fact[EntryView] = Fact(
    "Broadband, the same under a moonless, fully dark sky",
    "s",
    dark_equivalent_s,
    (
        "The hours that a moonless, fully dark sky with the target overhead would have needed for the same noise. Haze, blurred"
        " air, the brighter sky low down and the camera's own noise are not counted, nor the Moon's distance; every filter is"
        " treated as the V band. Good to about 20 % in moonlight and 30 % in twilight. Each kept broadband sub counts as exposure"
        " × 10^(−0.4 Δ) × 10^(−0.8 k (X − 1)): Δ is by how many magnitudes moonlight and twilight"
        " together brightened the dark sky at the target, k the extinction"
        " per airmass, X the airmass; it counts 0 with the Sun above −6° or the target below the horizon."
    ),
    (
        "K. Krisciunas & B. E. Schaefer, PASP 103, 1033 (1991); F. Patat, O. S. Ugolnikov & O. V. Postylyakov, A&A 455, 385"
        " (2006); F. Kasten & A. T. Young, Applied Optics 28, 4735 (1989); the twilight's numbers from transcriptions"
    ),
    1,
)
