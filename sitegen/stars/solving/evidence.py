"""Evidence: how often chance alone would have matched as many stars.

The number of false alarms, as the a-contrario method defines it (Desolneux, Moisan & Morel 2000, IJCV 40,
7): placements tried, times the probability that one placement of a picture without any relation to the
catalogue matches as many stars. It bounds the expected number of chance solutions a picture, so the
accepted limit *is* the stated false-positive rate.

The control is the same search, on the same stars, with the picture's other parity. A picture shows the
sky either right or mirrored, never both, so at least one of the two searches meets nothing but chance,
among the same crowding, decoys and gaps. Both are tried as equals, and the better one must leave the
other, whichever that is, behind.
"""

from math import log, log10

from msgspec import Struct

FALSE_ALARMS_LIMIT_LOG10 = -5.0
"""Accepted: at most one chance solution in 100,000 pictures of unknown fields."""

CONTROL_LIMIT_LOG10 = -2.0
"""The other parity must look like chance: otherwise something else than the sky is being matched."""

MATCHES_AT_LEAST = 5


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
    """log10 of Chernoff's upper bound on the probability of at least matched hits where by_chance are expected.

    Holds for a sum of independent hits of unequal probability (Hoeffding 1963, JASA 58, 13); 0 where
    chance suffices.
    """
    if matched <= by_chance or matched == 0:
        return 0.0
    return (matched * (1 + log(by_chance / matched)) - by_chance) / log(10)


def false_alarms_log10(placements: int, matched: int, by_chance: float, spent: int) -> float:
    """log10 of the number of false alarms, with `spent` of the matches used up to make the placement."""
    return log10(max(placements, 1)) + chance_log10(matched - spent, by_chance)
