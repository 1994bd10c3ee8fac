"""Sums over tables that a shop may have made itself: a sum that fails is the folder's fault."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from borewright.errors import RefusedInput
from borewright.reference.library import Tables


@contextmanager
def sums_over(used: Tables) -> Iterator[None]:
    """Nothing is said of division by nought inside; RefusedInput where own tables break a sum."""
    import numpy as np

    try:
        with np.errstate(all="ignore"):
            yield
    except ArithmeticError:
        if not used.has_own:
            raise
        raise RefusedInput(
            "folder of tables", "values that the sums cannot use", "values that a shop could have"
        ) from None
