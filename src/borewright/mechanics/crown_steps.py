"""A crown stepped off by hand: stairs at equal steps of the saddle, in whole divisions of a dial.

Each cut runs between the face's edge and a stop. The first stops nearest the middle and is the
shallowest; every later one stops nearer the edge and is deeper, so that the cross slide's dial is
only ever turned inwards. No stair is deeper than the crown at its stop but for the rounding; the
ridges between the stairs are filed away. Source: geometry. Weakness: the tool's nose, backlash
and spring are left out.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from borewright.errors import OutsideModel
from borewright.mechanics.allowed import above_zero
from borewright.mechanics.num import Floats, Ints, Num
from borewright.quantities.si import Metre

MOST_STEPS = 200
"""More stairs in one half than anyone turns by hand."""


@dataclass(frozen=True, slots=True)
class Stairs:
    """The cuts of one half, in the order they are made; arrays of shape (k,), lengths in m.

    `stops`: from the edge; `wanted`: how far the crown lies below the middle there; `divisions`:
    what the dial says, in whole divisions in from where the tool touches the middle; `depths`: that
    on radius; `ridges`: what stands above the crown at the outer end of each stair.
    """

    stops: Floats
    wanted: Floats
    divisions: Ints
    depths: Floats
    ridges: Floats

    @property
    def rounding(self) -> Metre:
        """The most that a stair is off its depth, either way, by the dial's divisions."""
        return float(np.max(np.abs(self.depths - self.wanted)))

    @property
    def cusp(self) -> Metre:
        """The highest ridge, that of the middle itself at the first stop included."""
        return max(float(np.max(self.ridges)), float(self.wanted[0]))


def stairs(
    fall: Callable[[Floats], Num], face: Metre, step: Metre, division: Metre, per_radius: int = 1
) -> Stairs:
    """The stairs of one half of a crown whose `fall` (m) is given at places from the middle (m).

    `step` of the saddle from the edge inwards, `division` of the cross slide's dial; `per_radius`
    is 1 where the dial counts radius and 2 where it counts diameter. A cut that would repeat the
    dial of the one before it is left out. OutsideModel unless all are above 0, there is at least
    one cut and at most 200 steps.

    >>> made = stairs(lambda z: 0.02 * z, 0.04, 0.005, 0.02e-3)
    >>> [round(float(x) * 1e3, 1) for x in made.stops], made.divisions.tolist()
    ([15.0, 10.0, 5.0], [5, 10, 15])
    >>> round(made.cusp * 1e3, 3), round(made.rounding * 1e3, 3)
    (0.1, 0.0)
    """
    stops = _stops(face, step)
    above_zero("division of the dial", division, "m")
    wanted = np.asarray(fall(face / 2 - stops), dtype=np.float64)
    # Half up, not half to even: a hand rounds 2.5 divisions to 3.
    turned = np.floor(per_radius * wanted / division + 0.5 + 1e-9).astype(np.intp)
    new = turned > np.concatenate([[0], turned[:-1]])
    if not new.any():
        deepest = f"{float(wanted.max()):.4g} m"
        raise OutsideModel(
            "crown at the first step", deepest, "at least half a division of the dial"
        )
    kept, depths = turned[new], turned[new] * division / per_radius
    outer = np.append(stops[new][1:], 0.0)
    ridges = np.asarray(fall(face / 2 - outer), dtype=np.float64) - depths
    return Stairs(stops[new], wanted[new], kept, depths, ridges)


def _stops(face: Metre, step: Metre) -> Floats:
    """Distances (m) from the edge at which cuts stop, nearest the middle first."""
    above_zero("width of the face", face, "m")
    above_zero("step of the saddle", step, "m")
    rows = math.floor(face / 2 / step * (1 + 1e-9))
    # A stop in the middle itself cuts nothing.
    rows -= rows * step >= face / 2 * (1 - 1e-9)
    if not 1 <= rows <= MOST_STEPS:
        raise OutsideModel("steps in half the face", rows, f"1 to {MOST_STEPS}")
    return step * np.arange(rows, 0, -1, dtype=np.float64)
