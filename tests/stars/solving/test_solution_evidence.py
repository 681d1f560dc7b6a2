"""The evidence: the bound is above the exact probability, and what it promises holds on random pictures."""

from itertools import permutations

import numpy as np
import pytest
from scipy.stats import binom, kendalltau

from sitegen.stars.solving.detection import DetectedStars
from sitegen.stars.solving.evidence import ORDER_LEVEL, Evidence, chance_log10, false_alarms_log10, is_in_order
from sitegen.stars.solving.scene import SolvePrior
from sitegen.stars.solving.solution import NotSolved
from sitegen.stars.solving.solver import solve

CONVINCING = {"matched": 9, "predicted": 12, "compared": 27, "tolerance_px": 1.0, "by_chance": 0.01,
              "false_alarms_log10": -9.0, "control_matched": 3, "control_false_alarms_log10": 1.5}


@pytest.mark.parametrize(("matched", "tries", "chance"), [(3, 10, 0.01), (6, 40, 0.05), (20, 100, 0.1), (2, 5, 0.3)])
def test_the_bound_is_above_the_exact_probability(matched: int, tries: int, chance: float) -> None:
    """The lower of the two bounds never flatters, and is within 1.5 decades of scipy's exact binomial tail."""
    exact = np.log10(binom.sf(matched - 1, tries, chance))
    assert exact <= chance_log10(matched, tries * chance) <= min(exact + 1.5, 0)


def test_the_bound_is_near_where_little_is_expected() -> None:
    """Two of two stars, each one chance in 100,000: within 0.35 decades of the exact probability (Chernoff's: 0.87)."""
    assert -10.0 <= chance_log10(2, 2e-5) <= -9.65


@pytest.mark.parametrize(("matched", "by_chance"), [(0, 0.5), (2, 2.0), (1, 3.0)])
def test_what_chance_gives_anyway_is_no_evidence(matched: int, by_chance: float) -> None:
    """As many as expected, or fewer: probability one."""
    assert chance_log10(matched, by_chance) == 0.0


def test_every_placement_tried_counts_against() -> None:
    """A thousand times as many placements cost three decades; the two stars spent on a placement prove nothing."""
    assert false_alarms_log10(10**6, 8, 0.01, 2) == pytest.approx(false_alarms_log10(10**3, 8, 0.01, 2) + 3)
    assert false_alarms_log10(10, 2, 0.01, 2) == pytest.approx(np.log10(20)), "two ways of judging"


@pytest.mark.parametrize("ranks", [*permutations(range(4)), *permutations((2, 7, 8, 11, 30))])
def test_an_order_counts_that_one_chance_order_in_20_reaches(ranks: tuple[int, ...]) -> None:
    """Four stars and five in every order: as scipy's exact probability of Kendall's tau says (scipy 1.17, `kendalltau`)."""
    chance = kendalltau(range(len(ranks)), ranks, alternative="greater", method="exact").pvalue
    assert is_in_order(ranks) is bool(chance <= ORDER_LEVEL + 1e-9)


def test_an_order_is_worth_a_factor_of_20() -> None:
    """The probability of the order is that of an independent test; three stars, or very many, are not asked for theirs."""
    assert false_alarms_log10(10, 6, 0.01, 2, in_order=True) == pytest.approx(false_alarms_log10(10, 6, 0.01, 2) - np.log10(20))
    assert not is_in_order((0, 1, 2))
    assert not is_in_order(tuple(range(13)))


@pytest.mark.parametrize(("change", "convinces"), [
    ({}, True),
    ({"matched": 4}, True),
    ({"matched": 3, "control_matched": 2}, False),
    ({"false_alarms_log10": -3.9}, False),
    ({"control_matched": 9}, False),
    ({"control_false_alarms_log10": -2.1}, False),
])
def test_all_of_the_evidence_is_needed(change: dict[str, float], convinces: bool) -> None:
    """Matches, false alarms, and a control that saw nothing but chance: one amiss, and nothing is accepted."""
    assert Evidence(**(CONVINCING | change)).convinces is convinces


@pytest.mark.parametrize("clumped", [False, True])
def test_random_skies_are_refused(clumped: bool) -> None:
    """Ten random pictures before random catalogues, evenly strewn or all in clusters: none is solved."""
    luck = np.random.default_rng(7)
    accepted = 0
    for _ in range(5):
        x, y = strewn(luck, 60, clumped)
        ra, dec = strewn(luck, 200, clumped)
        detected = DetectedStars(x * 1500, y * 1000, luck.random(60))
        prior = SolvePrior(100.0, 0.0, 7.2, centre_tolerance_deg=1.5)
        answer = solve(detected, 1500, 1000, 97 + 6 * ra, 6 * dec - 3, luck.uniform(5, 10, 200), prior)
        accepted += not isinstance(answer, NotSolved)
    assert accepted == 0


def strewn(luck: np.random.Generator, count: int, clumped: bool) -> np.ndarray:
    """Places in the unit square: anywhere, or in five clusters."""
    if not clumped:
        return luck.random((2, count))
    return np.clip(luck.random((2, 5))[:, luck.integers(0, 5, count)] + luck.normal(0, 0.02, (2, count)), 0, 1)
