"""Number types: models take floats or float64 arrays that broadcast, and give the like back."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    import numpy.typing as npt

    Floats = npt.NDArray[np.float64]
    Ints = npt.NDArray[np.intp]
    Bools = npt.NDArray[np.bool_]
    Num = float | Floats
else:
    # numpy.typing costs a tenth of a start-up and is of no use while running.
    Floats = Ints = Bools = np.ndarray
    Num = float | np.ndarray


def distinct(values: Iterable[float]) -> Floats:
    """The different values in rising order, shape (k,).

    Instead of numpy.unique, which loads masked arrays at its first call.

    >>> distinct([2.0, 1.0, 2.0]).tolist()
    [1.0, 2.0]
    """
    return np.array(sorted({float(v) for v in values}), dtype=np.float64)
