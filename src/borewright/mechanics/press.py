"""Pressing a bore along a taper: the push on, the push off, and the force behind a push.

On a taper T (on diameter) the surface is tilted by T/2, so with normal force N and friction μ
    on   N (μ + T/2) / (1 - μ T/2)        off   N (μ - T/2) / (1 + μ T/2).
Source: equilibrium of a wedge, closed form. Weakness: Coulomb friction, the least known number.
"""

from __future__ import annotations

from borewright.mechanics.num import Num
from borewright.quantities.si import Joule, Metre, MetrePerMetre


def push_on_force(normal: Num, friction: Num, taper: MetrePerMetre) -> Num:
    """Force (N) that presses the work further on.

    >>> round(push_on_force(10e3, 0.12, 0.0005), 1)
    1202.5
    """
    return normal * (friction + taper / 2) / (1 - friction * taper / 2)


def push_off_force(normal: Num, friction: Num, taper: MetrePerMetre) -> Num:
    """Force (N) that starts the work off; below zero it comes off by itself.

    >>> push_off_force(10e3, 0.00025, 0.0005)
    0.0
    """
    return normal * (friction - taper / 2) / (1 + friction * taper / 2)


def normal_from_push(push: Num, friction: Num, taper: MetrePerMetre) -> Num:
    """Normal force (N) behind a measured push-on force (N).

    >>> round(normal_from_push(push_on_force(10e3, 0.12, 0.0005), 0.12, 0.0005), 6)
    10000.0
    """
    return push * (1 - friction * taper / 2) / (friction + taper / 2)


def torque_from_push(push: Num, diameter: Num, slip_ratio: Num) -> Num:
    """Slip torque (N·m) that a push (N) proves: push × half the bore × (μ_slip / μ_on).

    Modulus, wall, roughness, bore error and the level of friction cancel; only the ratio stays.

    >>> round(torque_from_push(400 * 4.4482216, 0.625 * 0.0254, 1.0) / 0.1129848, 0)
    125.0
    """
    return push * diameter / 2 * slip_ratio


def pressing_work(half_way: Num, at_end: Num, travel: Metre) -> Num:
    """Work (J) of pressing over a travel (m) from no push, the push half way and at the end (N).

    Simpson's rule, exact for a push that grows with the travel or its square.

    >>> round(pressing_work(500.0, 1000.0, 0.03), 6), round(pressing_work(250.0, 1000.0, 0.03), 6)
    (15.0, 10.0)
    """
    return (4 * half_way + at_end) / 6 * travel


def blow_travel(energy: Joule, push: Num) -> Num:
    """How far (m) a blow of this energy (J) moves the work against a push (N).

    >>> blow_travel(5.0, 2500.0)
    0.002
    """
    return energy / push
