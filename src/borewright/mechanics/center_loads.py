"""What the two centers of a bar carry: a force across it, and the push of a bar that warms.

A force F at a from the first center loads it with F (1 - a/L) and the other with F a/L.
A plain center that is not eased stands in the way of a bar that warms. A bar of steps L_i, E A_i
between centers of stiffness k along the axis (both, the tailstock and the bed together) then gains
    dF/dT = α L / (Σ L_i / (E A_i) + 1 / k),
which for a bed that did not give would be E A α. Units: N, m, N/K.
Source: equilibrium, Hooke's law; closed form. Weakness: k of a lathe is hardly ever measured; the
bed is taken as cold. The push goes as the center is eased by as much as the bar grew.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, refuse_unless
from borewright.mechanics.num import Floats, Num
from borewright.quantities.si import Metre, PerKelvin


def loads_on_centers(span: Metre, place: Num, force: Num) -> tuple[Num, Num]:
    """Load (N) across the first and the second center of a force (N) at `place` (m) from the first.

    >>> loads_on_centers(0.2, 0.05, 100.0)
    (75.0, 25.0)
    """
    above_zero("length between centers", span, "m")
    refuse_unless(
        np.greater_equal(place, 0) & np.less_equal(place, span),
        "place between centers",
        place,
        "m",
        f"0 to {span:.6g} m",
    )
    share = place / span
    return force * (1 - share), force * share


def push_per_kelvin(lengths: Floats, stretch: Floats, expansion: PerKelvin, stiffness: Num) -> Num:
    """Push (N) that a plain center gains for each kelvin the bar warms over the bed.

    `lengths` (k,) m and `stretch` E A (k,) N of the steps; `stiffness` (N/m) of both centers and
    the bed along the axis, infinite where they do not give.

    >>> round(float(push_per_kelvin(np.array([0.1]), np.array([40e6]), 11.5e-6, np.inf)), 6)
    460.0
    """
    above_zero("length of a step", lengths, "m")
    above_zero("E A of a step", stretch, "N")
    stiff = np.greater(stiffness, 0)
    refuse_unless(stiff, "stiffness along the axis", stiffness, "N/m", "above 0", endless=True)
    grown, gives = expansion * float(lengths.sum()), float((lengths / stretch).sum())
    return grown / (gives + 1 / stiffness)
