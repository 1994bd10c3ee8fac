"""A rim that turns: the hoop tension of its own weight.

Source: thin rotating ring, σ = ρ v² (any textbook); checked against Singer, Strength of Materials,
Prob. 139. Weakness: a thin free ring; spokes and a thick rim change it, and a casting's flaws more.
"""

from __future__ import annotations

from borewright.mechanics.num import Num
from borewright.quantities.si import KilogramPerCubicMetre, MetrePerSecond, Pascal


def rim_tension(density: KilogramPerCubicMetre, rim_speed: Num) -> Num:
    """Hoop tension (Pa) in a thin ring whose middle moves at this speed (m/s).

    >>> rim_tension(7200.0, 10.0)
    720000.0
    """
    return density * rim_speed**2


def rim_speed_for(tension: Pascal, density: KilogramPerCubicMetre) -> MetrePerSecond:
    """Rim speed (m/s) at which a thin ring has this hoop tension (Pa).

    >>> rim_speed_for(720000.0, 7200.0)
    10.0
    """
    return float((tension / density) ** 0.5)
