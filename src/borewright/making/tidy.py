"""Lengths that nothing hangs on, rounded to what a rule shows."""

from __future__ import annotations

from typing import Final

from borewright.quantities.si import Metre

MARK: Final = {"inch": 0.0254 / 64, "mm": 5e-4}
"""Ours: the finest mark of a rule that is still read."""


def tidy(length: Metre, units: str) -> Metre:
    """The nearest mark of a rule (m), at least one.

    >>> round(tidy(0.01448, "mm") * 1e3, 3), round(tidy(0.01448, "inch") / 0.0254 * 64)
    (14.5, 36)
    """
    mark = MARK[units]
    return mark * max(1, round(length / mark))
