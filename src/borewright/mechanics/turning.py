"""Spindle speed, power and metal removed in turning. Closed forms."""

from __future__ import annotations

import math

from borewright.mechanics.num import Num
from borewright.quantities.si import Metre, MetrePerSecond, RevPerSecond


def spindle_speed(surface: MetrePerSecond, diameter: Metre) -> RevPerSecond:
    """Revolutions per second for a surface speed (m/s) on a diameter (m): v / (π d).

    In shop units rpm = fpm / (0.2618 D): US War Department TM 1-420 C1, para 8.

    >>> round(spindle_speed(100 * 0.3048 / 60, 0.0254) * 60, 1)
    382.0
    """
    return surface / (math.pi * diameter)


def surface_speed(spindle: RevPerSecond, diameter: Metre) -> MetrePerSecond:
    """Surface speed (m/s) at a diameter (m)."""
    return math.pi * diameter * spindle


def cutting_power(force: Num, surface: MetrePerSecond) -> Num:
    """Power at the cut (W): cutting force × speed at the outside."""
    return force * surface


def removal_rate(diameter: Metre, depth: Metre, feed: Metre, spindle: RevPerSecond) -> float:
    """Metal removed (m³/s), taken at the mean diameter of the cut: π (D - a) a f n."""
    return math.pi * (diameter - depth) * depth * feed * spindle


def next_speed_at_or_below(
    wanted: RevPerSecond, speeds: tuple[RevPerSecond, ...]
) -> RevPerSecond | None:
    """The fastest of the lathe's speeds that is not above the wanted one; None if all are above.

    Source: US Army OD1645 (1988): the next slower one.

    >>> next_speed_at_or_below(10.0, (4.0, 8.0, 12.0))
    8.0
    """
    return max((s for s in speeds if s <= wanted * (1 + 1e-9)), default=None)
