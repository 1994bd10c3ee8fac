"""Will the bore crack or yield: margins of strength over stress.

Brittle work (grey iron, unknown castings) is judged by its largest tension, with a factor for the
sharp edge of the bore, because castings crack from it. Ductile work is judged by von Mises stress
against yield. Weakness: a crack already there is not in these numbers; a keyway or
cross hole only as the one factor that it is given.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.num import Num


def crack_margin(
    tensile: Num, tension: Num, edge_factor: Num = 1.0, notch_factor: Num = 1.0
) -> Num:
    """Tensile strength (Pa) over the raised tension (Pa); infinite where there is no tension.

    >>> round(float(crack_margin(200e6, 50e6, 1.4)), 3)
    2.857
    """
    return _over(tensile, tension * edge_factor * notch_factor)


def yield_margin(yield_strength: Num, equivalent: Num) -> Num:
    """Yield strength (Pa) over von Mises stress (Pa); infinite where there is none."""
    return _over(yield_strength, equivalent)


def von_mises_plane(hoop: Num, radial: Num) -> Num:
    """Von Mises stress (Pa) of two principal stresses in a plane state.

    >>> float(von_mises_plane(3.0, 0.0))
    3.0
    """
    return np.sqrt(hoop * hoop - hoop * radial + radial * radial)


def _over(strength: Num, stress: Num) -> Num:
    stress = np.asarray(stress, dtype=np.float64)
    safe = np.where(stress > 0, stress, 1.0)
    return np.where(stress > 0, strength / safe, np.inf)
