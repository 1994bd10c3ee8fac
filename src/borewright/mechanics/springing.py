"""The size that a cut leaves on work that gives, and what a spring pass leaves of it.

The tool pushes the work away with the radial force F_r, and the force along the feed F_f, at the
radius R of the cut, bends the bar with the moment F_f R. With what gives under the tool at z
    size left on diameter   2 (F_r g(z) + F_f R t(z)),
F_f counted towards the end that z runs to: so the two ways of feeding differ. The largest less the
smallest along the cut is the taper error; the mean is what the dial takes out.
A further pass at the same setting meets only what the last one left. Where it left y on radius and
leaves y', it cuts y - y', with the force K_r (y - y') = k y', so
    y' = y K_r / (K_r + k).
Units: m, N, N·m, N/m. Source: our own derivation, equilibrium at the tool.
Weakness: the tool post, which gives too, is left out; a few thousandths of a millimetre are rubbed
rather than cut, by a dull tool least of all.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero
from borewright.mechanics.influence import UnderTool
from borewright.mechanics.num import Floats, Num


def size_left(give: UnderTool, radial: Num, moment: Num) -> Floats:
    """Size left on diameter (m) at each place (n,), or (m, n) for forces shaped (m, 1).

    `radial` (N) across the bar; `moment` (N·m): force along the feed times the radius of the cut.

    >>> give = UnderTool(np.array([1e-8, 2e-8]), np.array([1e-7, -1e-7]))
    >>> (1e6 * size_left(give, 100.0, 5.0)).round(6).tolist()
    [3.0, 3.0]
    """
    return np.asarray(2 * (radial * give.per_force + moment * give.per_moment))


def size_bounds(give: UnderTool, radial: Num, moment: Num) -> Floats:
    """What may be left at each place on diameter (m): (2n,), or (m, 2n) for forces shaped (m, 1).

    The first n: the radial force, and the thrust where it adds to it. The last n: the thrust alone
    where it pulls the work to the tool. So the largest of them never falls as either force grows,
    because what one takes off the other is not counted.

    >>> give = UnderTool(np.array([1e-8, 2e-8]), np.array([1e-7, -1e-7]))
    >>> (1e6 * size_bounds(give, 100.0, 5.0)).round(6).tolist()
    [3.0, 4.0, 0.0, 1.0]
    """
    pushed, turned = radial * give.per_force, moment * give.per_moment
    both = pushed + np.maximum(turned, 0.0), np.maximum(-turned, 0.0)
    return np.asarray(2 * np.concatenate(both, axis=-1))


def taper_error(line: Floats) -> Floats:
    """Largest less smallest (m) along the last axis of a line of sizes.

    >>> float(taper_error(np.array([2e-6, 5e-6, 3e-6])).round(9))
    3e-06
    """
    return np.asarray(line.max(axis=-1) - line.min(axis=-1))


def spring_pass_share(cutting_stiffness: Num, stiffness: Num) -> Num:
    """Share of the size error that a spring pass leaves: K_r / (K_r + k), both N/m.

    >>> float(spring_pass_share(1e6, 9e6))
    0.1
    """
    not_below_zero("radial force for each metre of depth", cutting_stiffness, "N/m")
    above_zero("stiffness at the tool", stiffness, "N/m")
    return cutting_stiffness / (cutting_stiffness + stiffness)
