"""What a model's input may be: refused with the quantity and the first value that is not.

Answers whether every value of a float or an array may be used. Raises OutsideModel where one may
not; what is not a number or is without bound never may. A plain float is compared as one: that
is most of what is asked, and it is answered before an array would be made of it.
"""

from __future__ import annotations

import math

import numpy as np

from borewright.errors import OutsideModel
from borewright.mechanics.num import Bools, Num


def above_zero(quantity: str, values: Num, unit: str = "") -> None:
    """OutsideModel unless every value is above 0.

    >>> above_zero("radius", -0.002, "m")
    Traceback (most recent call last):
    borewright.errors.tree.OutsideModel: radius is -0.002 m; allowed is above 0
    """
    if isinstance(values, float) and 0.0 < values < math.inf:
        return
    refuse_unless(np.greater(values, 0), quantity, values, unit, "above 0")


def not_below_zero(quantity: str, values: Num, unit: str = "") -> None:
    """OutsideModel unless every value is 0 or more.

    >>> not_below_zero("friction", 0.0)
    """
    if isinstance(values, float) and 0.0 <= values < math.inf:
        return
    refuse_unless(np.greater_equal(values, 0), quantity, values, unit, "0 or more")


def refuse_unless(
    good: bool | Bools,
    quantity: str,
    values: Num,
    unit: str,
    allowed: str,
    *,
    endless: bool = False,
) -> None:
    """OutsideModel with the first value where `good` is not true; `values` broadcasts to `good`.

    `endless`: a value without bound may be used, as for what does not give way.

    >>> refuse_unless(np.array([True, False]), "force", np.array([1.0, 9.0]), "N", "at most 5 N")
    Traceback (most recent call last):
    borewright.errors.tree.OutsideModel: force is 9 N; allowed is at most 5 N
    """
    known = ~np.isnan(values) if endless else np.isfinite(values)
    may_be_used = np.asarray(good & known)
    if may_be_used.all():
        return
    # Which value it was is looked for only now: a plan asks some thousand times, and none is wrong.
    wrong = np.broadcast_to(np.asarray(values, dtype=np.float64), may_be_used.shape)[~may_be_used]
    raise OutsideModel(quantity, f"{wrong[0]:.4g} {unit}".strip(), allowed)
