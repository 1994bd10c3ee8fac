"""What a body of revolution gives when its bore is pressed by cos φ: kept per unit of modulus."""

from __future__ import annotations

from dataclasses import dataclass, replace

from borewright.mechanics.num import Floats


@dataclass(frozen=True, slots=True, eq=False)
class TiltShape:
    """For unit modulus, lengths over d; n strips as `body_mesh.work_strips` has them.

    `sways` (n, n): mean outward movement of each strip at φ = 0 for a load p h cos φ on each.
    `warp` (n,): the same for a unit moment at the outside; `own`: how much that turns the outside.
    Divide all three by the modulus.
    """

    strips: Floats
    sways: Floats
    warp: Floats
    own: float


def tilt_turned_round(shape: TiltShape) -> TiltShape:
    """The same body seen from its other face: a moment that pressed one face presses the other.

    >>> import numpy as np
    >>> one = TiltShape(np.array([[0.0, 1.0], [1.0, 3.0]]), np.eye(2), np.array([1.0, -2.0]), 5.0)
    >>> tilt_turned_round(one).warp.tolist()
    [2.0, -1.0]
    """
    return TiltShape(
        -shape.strips[::-1, ::-1], shape.sways[::-1, ::-1], -shape.warp[::-1], shape.own
    )


def tilt_moved(shape: TiltShape, by: float) -> TiltShape:
    """The same body with `by` added to every z."""
    return replace(shape, strips=shape.strips + by)
