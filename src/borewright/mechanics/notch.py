"""What a keyway takes from a bore: bearing round it, and wall over it.

Source: geometry. Weakness: the width is taken along the round of the bore, not across its chord
(1 part in 100 for a keyway a quarter of the bore wide); the hub is softer beside a keyway, which is
left out.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.num import Num
from borewright.quantities.si import Metre


def bearing_share(width: Metre, bore: Metre) -> Num:
    """Share of the round of a bore (m) that bears beside a keyway of this width (m).

    >>> round(float(bearing_share(0.25, 1.0)), 4)
    0.9204
    """
    return 1 - width / (np.pi * bore)


def share_beside_hole(diameter: Metre, bore: Metre, length: Metre) -> Num:
    """Share of a bore's surface (m) that bears beside a cross hole through both walls.

    >>> round(float(share_beside_hole(0.004, 0.016, 0.025)), 4)
    0.98
    """
    return 1 - 2 * (np.pi * diameter**2 / 4) / (np.pi * bore * length)


def wall_over_keyway(outside: Metre, bore: Metre, depth: Metre) -> Metre:
    """Metal (m) left over the bottom of a keyway; `depth` (m) from the surface of the bore.

    >>> round(wall_over_keyway(0.050, 0.020, 0.005), 6)
    0.01
    """
    return (outside - bore) / 2 - depth
