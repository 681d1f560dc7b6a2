"""What one more hour adds: worked by hand, and against noise that is really drawn."""

import math

import numpy as np
import pytest

from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.integration_dark_equivalent import sub_worths_s
from sitegen.facts.integration_growth import HOUR_S, best_weight, next_hour_gain
from sitegen.facts.views import EntryView
from tests.diaries import diary, entry, sub

BRIGHT, DARK = "2026-09-20", "2026-09-12"
"""The Moon is up in the evening of the first (66 % lit), and new on the second."""
PIXELS = 200_000


def view(*subs: object) -> EntryView:
    one = entry(list(subs))  # type: ignore[arg-type]
    return views_of(diary(one), (one,))[0]


def test_the_best_night_is_the_one_with_the_most_weight() -> None:
    """Not the one with the most hours; narrowband and thrown-away subs tell nothing of it."""
    both = view(sub(f"{BRIGHT} 12:00"), sub(f"{BRIGHT} 12:10"), sub(f"{BRIGHT} 12:20"), sub(f"{DARK} 13:00"),
                sub(f"{DARK} 13:10", kept=False), sub(f"{DARK} 13:20", filter="Ha"))  # fmt: skip
    dark = view(sub(f"{DARK} 13:00"))
    assert best_weight(both, sub_worths_s(both)) == pytest.approx(best_weight(dark, sub_worths_s(dark)))
    bright = view(sub(f"{BRIGHT} 12:00"))
    assert best_weight(bright, sub_worths_s(bright)) < 0.5 * best_weight(dark, sub_worths_s(dark))  # type: ignore[operator]


NOTHING = {
    "no sub": (),
    "narrowband": (sub(f"{DARK} 13:00", filter="Ha"),),
    "thrown away": (sub(f"{DARK} 13:00", kept=False),),
    "by day": (sub(f"{DARK} 01:00"),),
}


@pytest.mark.parametrize("what", NOTHING)
def test_without_light_that_counts_nothing_is_said(what: str) -> None:
    """No number is made up."""
    assert next_hour_gain(view(*NOTHING[what])) is None


def test_an_hour_more_of_the_same() -> None:
    """Twelve subs of 300 s on a dark night are an hour: another one gives the root of two."""
    hour = view(*(sub(f"{DARK} {13 + minute // 60}:{minute % 60:02}") for minute in range(0, 60, 5)))
    worth_s = math.fsum(worth_s or 0.0 for worth_s in sub_worths_s(hour))
    assert next_hour_gain(hour) == pytest.approx(math.sqrt(1 + HOUR_S * best_weight(hour, sub_worths_s(hour)) / worth_s) - 1)  # type: ignore[operator]
    assert next_hour_gain(hour) == pytest.approx(math.sqrt(2) - 1, rel=0.01)


def test_noise_falls_as_the_weights_say() -> None:
    """Subs of unequal sky and transparency, each weighted by its worth: the noise of half the difference of two half stacks falls
    by the predicted gain when more are added, within 3 %."""
    draws = np.random.default_rng(7)
    sky, passed = draws.uniform(100.0, 900.0, 48), draws.uniform(0.6, 1.0, 48)
    noise, before = _half_stack_noise(sky, passed, draws), _half_stack_noise(sky[:24], passed[:24], draws)
    weights = passed**2 / sky
    assert before / noise == pytest.approx(math.sqrt(weights.sum() / weights[:24].sum()), rel=0.03)


def _half_stack_noise(sky: np.ndarray, passed: np.ndarray, draws: np.random.Generator) -> float:
    """Of a star's flux, over many pixels: each half is the mean of flux over transparency, weighted by transparency² over sky."""
    frames = draws.poisson(sky[:, None], (len(sky), PIXELS)) - sky[:, None]
    weights = passed**2 / sky
    odd, even = (np.average(frames[half::2] / passed[half::2, None], axis=0, weights=weights[half::2]) for half in (0, 1))
    return float(np.std((odd - even) / 2))
