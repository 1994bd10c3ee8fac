"""A mandrel between centers bent by a nut that bears on one side.

Answers how far work is thrown off the line of the centers when the faces that a nut clamps are out
of parallel. They wedge by an angle w. To close them the mandrel must kink by w over the clamped
length l; it takes the moment E I w / l. The nut gives at most F e, where e is how far off the axis
its force settles. So, with span L, work from a to b, l = b - a, its middle at m:
    kink    k = min(w, F e l / (E I))
    slope at the first center    s = k (L - m) / L
    bow     y = s (a + l (L - m) / (2 L)), the largest between a and b
    several wedges in one gang, turned as they come:  w = w_1 sqrt(n + 1) over n + 1 joints
Work turned true on a bowed mandrel has its bore off center by the bow when it is let go: twice that
is the whole reading. Units: m, N, N·m², rad, as floats or arrays that broadcast. Range: 0 <= a < b
<= L, all else 0 or more and E I above 0; OutsideModel otherwise.
Source: own derivation from the bending of a beam under an even moment (any textbook on strength of
materials). Weakness: the work does not stiffen the mandrel; the wedges lie in one plane; what a nut
settles by itself on its thread is only in e.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Num
from borewright.quantities.si import Metre


def gang_wedge(wedge: Num, joints: float) -> Num:
    """Wedge (rad) of so many joints, each this much (rad) out, turned as they come.

    >>> round(float(gang_wedge(1e-4, 4)), 9)
    0.0002
    """
    not_below_zero("wedge", wedge, "rad")
    above_zero("joints", joints)
    return wedge * float(np.sqrt(joints))


def kink(wedge: Num, force: Num, off_axis: Num, length: Metre, bending: float) -> Num:
    """Angle (rad) by which the mandrel is bent over the clamped length (m); E I in N·m².

    >>> round(float(kink(1e-3, 10e3, 0.5e-3, 0.02, 500.0)), 9)  # 5 N·m closes no more
    0.0002
    >>> round(float(kink(1e-4, 10e3, 0.5e-3, 0.02, 500.0)), 9)  # closed: no more to bend
    0.0001
    """
    for name, value, unit in (
        ("wedge", wedge, "rad"),
        ("clamp force", force, "N"),
        ("distance off the axis", off_axis, "m"),
    ):
        not_below_zero(name, value, unit)
    above_zero("clamped length", length, "m")
    above_zero("bending stiffness", bending, "N·m²")
    return np.minimum(wedge, force * off_axis * length / bending)


def bow(bent: Num, span: Metre, start: Metre, end: Metre) -> Num:
    """The largest distance (m) of the bent mandrel from the line of its centers within the work.

    `bent`: angle (rad) that is spread evenly from `start` to `end`, m from the first center.

    >>> round(float(bow(4e-4, 0.2, 0.09, 0.11)) * 1e6, 3)  # k (L / 4 - l / 8)
    19.0
    """
    not_below_zero("kink", bent, "rad")
    not_below_zero("start of the work", start, "m")
    refuse_unless(np.greater(end, start), "end of the work", end, "m", "beyond its start")
    refuse_unless(np.less_equal(end, span), "end of the work", end, "m", "within the span")
    rest = (span - (start + end) / 2) / span
    return bent * rest * (start + (end - start) * rest / 2)
