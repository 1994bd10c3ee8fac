"""Refusing what a model has no answer for: one check, for one number or for many.

Source: ours. Weakness: of several numbers that are outside only the first is named.
"""

from __future__ import annotations

import numpy as np

from borewright.errors import OutsideModel
from borewright.mechanics.num import Bools, Num


def above(quantity: str, value: Num, floor: float = 0.0) -> None:
    """OutsideModel unless every value is finite and above the floor.

    >>> above("bore", 0.016)
    >>> above("bore", -0.5)
    Traceback (most recent call last):
    borewright.errors.tree.OutsideModel: bore is -0.5; allowed is above 0
    """
    numbers = np.asarray(value, dtype=np.float64)
    inside(quantity, numbers, np.isfinite(numbers) & (numbers > floor), f"above {floor:g}")


def not_below(quantity: str, value: Num, floor: float = 0.0) -> None:
    """OutsideModel unless every value is finite and at or above the floor."""
    numbers = np.asarray(value, dtype=np.float64)
    inside(quantity, numbers, np.isfinite(numbers) & (numbers >= floor), f"{floor:g} or more")


def inside(quantity: str, value: Num, holds: Bools | bool, allowed: str) -> None:
    """OutsideModel, naming the first value for which `holds` is false; both broadcast."""
    numbers, kept = np.broadcast_arrays(np.asarray(value, dtype=np.float64), np.asarray(holds))
    wrong = numbers[~kept]
    if wrong.size:
        raise OutsideModel(quantity, f"{float(wrong.flat[0]):.6g}", allowed)
