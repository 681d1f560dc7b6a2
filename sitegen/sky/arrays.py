"""What the arrays of this room are called in its signatures; shapes stand in the docstrings."""

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Indices = NDArray[np.int64]
