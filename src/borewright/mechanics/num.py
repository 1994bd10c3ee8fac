"""Number types: models take floats or float64 arrays that broadcast, and give the like back."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Num = float | Floats
