"""Ellipses and the vectors that stand for them: what can be averaged, unlike an angle.

The shape vector of an ellipse with axes a ≥ b at angle t is e = (a - b)/(a + b) · (cos 2t, sin 2t): zero for a circle, the
same at t and t + 180°, and (1 + |e|)/(1 - |e|) is the elongation a/b.
"""

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
ROUND = 0.004  # a shape vector shorter than this (elongation 1.008) has no direction worth naming


def axes_of(wxx: Floats, wxy: Floats, wyy: Floats) -> tuple[Floats, Floats, Floats]:
    """Semi-axes a ≥ b and angle (radians) of the ellipse wxx·x² + 2·wxy·x·y + wyy·y² = 1."""
    mean, half = (wxx + wyy) / 2, np.hypot((wxx - wyy) / 2, wxy)
    angle = 0.5 * np.arctan2(-2 * wxy, wyy - wxx)
    return 1 / np.sqrt(mean - half), 1 / np.sqrt(mean + half), angle


def vector_of(a: Floats, b: Floats, angle: Floats) -> tuple[Floats, Floats]:
    """The shape vector (e1, e2) of ellipses with semi-axes a, b at `angle` (radians)."""
    size = (a - b) / (a + b)
    return size * np.cos(2 * angle), size * np.sin(2 * angle)


def elongation_of(e1: float, e2: float) -> float:
    """Major over minor axis, ≥ 1."""
    size = float(np.hypot(e1, e2))
    return (1 + size) / (1 - size)


def angle_deg_of(e1: float, e2: float) -> float | None:
    """Of the major axis, counter-clockwise from +x, [0, 180); None for what is as good as round."""
    if np.hypot(e1, e2) < ROUND:
        return None
    return float(np.degrees(0.5 * np.arctan2(e2, e1)) % 180)


def scatter_of(values: Floats) -> float:
    """One standard deviation from the median absolute deviation (× 1.4826, exact for a Gaussian)."""
    return float(1.4826 * np.median(np.abs(values - np.median(values))))
