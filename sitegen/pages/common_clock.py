"""The clock that every stacked ribbon of a diary shares."""

import math

SHORTEST_CLOCK_H, LONGEST_CLOCK_H = 6.0, 12.0


def half_clock(longest_s: float) -> float:
    """Hours on either side of midnight that hold a night of that half length."""
    return min(max(math.ceil(longest_s / 1800) / 2 + 0.5, SHORTEST_CLOCK_H), LONGEST_CLOCK_H)
