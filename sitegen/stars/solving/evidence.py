"""Evidence: how often chance alone would have matched as many stars.

The number of false alarms, as the a-contrario method defines it (Desolneux, Moisan & Morel 2000, IJCV 40,
7): placements tried, times the probability that one placement of a picture without any relation to the
catalogue matches as many stars. It bounds the expected number of chance solutions a picture, so the
accepted limit *is* the stated false-positive rate.

The order of brightness is a second, independent test: stars met by chance stand in any order. Where the order of the matched ones
is as good as one chance order in 20 (Kendall 1938, Biometrika 30, 81), the probability is a twentieth; both ways of judging, with
the test and without, count as tries.

The control is the same search, on the same stars, with the picture's other parity. A picture shows the
sky either right or mirrored, never both, so at least one of the two searches meets nothing but chance,
among the same crowding, decoys and gaps. Both are tried as equals, and the better one must leave the
other, whichever that is, behind.
"""

from collections.abc import Sequence
from functools import cache
from math import factorial, lgamma, log, log10

from msgspec import Struct

FALSE_ALARMS_LIMIT_LOG10 = -4.0
"""Accepted: at most one chance solution in 10,000 pictures of unknown fields."""

CONTROL_LIMIT_LOG10 = -2.0
"""The other parity must look like chance: otherwise something else than the sky is being matched."""

MATCHES_AT_LEAST = 4

ORDER_LEVEL = 1 / 20
_ORDERED_AT_MOST = 12
"""More stars need no second test."""

_WAYS = 2


class Evidence(Struct, frozen=True):
    """What speaks for one placement of a picture on the sky.

    matched of predicted catalogue stars (those that fall into the frame) were found within tolerance_px
    among the compared brightest detections; chance alone would find by_chance of them. The logarithms are
    of the number of false alarms; control_* belong to the other parity.
    """

    matched: int
    predicted: int
    compared: int
    tolerance_px: float
    by_chance: float
    false_alarms_log10: float
    control_matched: int = 0
    control_false_alarms_log10: float = 0.0

    @property
    def convinces(self) -> bool:
        """Whether chance is ruled out: by the count of false alarms, and by the other parity as the control."""
        return (self.matched >= MATCHES_AT_LEAST
                and self.false_alarms_log10 <= FALSE_ALARMS_LIMIT_LOG10
                and self.control_false_alarms_log10 >= CONTROL_LIMIT_LOG10
                and self.matched > self.control_matched)


def chance_log10(matched: int, by_chance: float) -> float:
    """log10 of an upper bound on the probability of at least matched hits where by_chance are expected.

    Two bounds hold for a sum of independent hits of unequal probability, and the lower one is taken: Chernoff's (Hoeffding 1963,
    JASA 58, 13), and by_chance**matched / matched!, the sum over all sets of so many hits (Boole's inequality), which is nearer
    to the truth where few are expected. 0 where chance suffices.
    """
    if matched <= by_chance or matched == 0:
        return 0.0
    chernoff = matched * (1 + log(by_chance / matched)) - by_chance
    return min(chernoff, matched * log(by_chance) - lgamma(matched + 1)) / log(10)


def false_alarms_log10(placements: int, matched: int, by_chance: float, spent: int, in_order: bool = False) -> float:
    """log10 of the number of false alarms, with `spent` of the matches used up to make the placement."""
    tries = log10(_WAYS * max(placements, 1))
    return tries + chance_log10(matched - spent, by_chance) + (log10(ORDER_LEVEL) if in_order else 0.0)


def is_in_order(ranks: Sequence[int]) -> bool:
    """Whether few orders of so many things are as good: ranks in the picture, by falling brightness in the catalogue."""
    count = len(ranks)
    if not MATCHES_AT_LEAST <= count <= _ORDERED_AT_MOST:
        return False
    inversions = sum(earlier > later for place, later in enumerate(ranks) for earlier in ranks[:place])
    return sum(_orders(count)[: inversions + 1]) <= ORDER_LEVEL * factorial(count)


@cache
def _orders(count: int) -> tuple[int, ...]:
    """How many orders of so many things have 0, 1, 2, … inversions."""
    if count == 1:
        return (1,)
    fewer = _orders(count - 1)
    return tuple(sum(fewer[max(0, k - count + 1): k + 1]) for k in range(count * (count - 1) // 2 + 1))
