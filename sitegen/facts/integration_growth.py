"""What one more hour would add to the broadband picture."""

import math
from collections.abc import Sequence

from sitegen.facts.fact import Fact
from sitegen.facts.integration_dark_equivalent import sub_worths_s, total_worth_s
from sitegen.facts.views import EntryView

HOUR_S = 3600.0


def next_hour_gain(view: EntryView) -> float | None:
    """Relative rise of signal to noise by one more broadband hour of a night like the best; it grows with the root of the
    weighted hours. None where what a sub is worth is not known, or where nothing is worth anything."""
    worths_s = sub_worths_s(view)
    worth_s, best = total_worth_s(worths_s), best_weight(view, worths_s)
    if not worth_s or best is None:
        return None
    return math.sqrt(1.0 + HOUR_S * best / worth_s) - 1.0


def best_weight(view: EntryView, worths_s: Sequence[float | None]) -> float | None:
    """Mean weight of the kept broadband light, of the night with the greatest; None without such light. `worths_s` of its lights,
    in their order."""
    by_light = {id(light): worth_s for light, worth_s in zip(view.lights, worths_s, strict=True)}
    weights = []
    for night in view.nights:
        counted = [light for light in night.kept if not light.narrow]
        total_s = math.fsum(light.sub.exposure_s for light in counted)
        if total_s:
            weights.append(math.fsum(by_light[id(light)] or 0.0 for light in counted) / total_s)
    return max(weights, default=None)


NEXT_HOUR_GAIN: Fact[EntryView] = Fact(
    "Signal to noise from one more hour",
    "fraction",
    next_hour_gain,
    (
        "By how much one more broadband hour of a night like the best would raise signal over noise: the root of the hours that"
        " count with it, over the root of those that count without it. Each hour counts as in the line of the same under a"
        " moonless, fully dark sky, and leaves out the same."
    ),
    "noise of added photons: S. B. Howell, Handbook of CCD Astronomy, 2nd ed. (CUP 2006), sec. 4.4, from memory",
    3,
)
