"""Rings of light about the disc's middle and about the shadow's: diffraction and uneven figure, whatever their run.

Each is a sum of tents over the radius, so that it stays linear. They are added to the model of the disc (`ring_model`), held near
nought by a prior, and take part in its covariance: what rings could pass for is then no longer sure.
"""

import numpy as np

from sitegen.stars.shapes import Floats

TENT_PX = 1.5  # from one tent to the next
STRENGTH = 0.15  # of the disc's brightness: how strong rings are expected to be, 1 sigma
EDGES = 5.0  # softnesses: how far past its edge the disc's, and inside of its edge the shadow's, rings go on


def tents(distance: Floats, step: float, least: float, most: float) -> Floats:
    """(tents, pixels): 1 at a tent's own distance, 0 from the next ones on."""
    count = max(2, int(np.ceil((most - least) / step)) + 1)
    places = (distance - least) / step
    return np.asarray(np.maximum(0.0, 1.0 - np.abs(places - np.arange(count)[:, None])))
