"""Cutting force from the size of the chip.

    F_c = k_c11 · b · h^(1 - m) · K      b, h in mm, k_c11 in N/mm², F_c in N
Chip width b is the engaged edge length, h = depth × feed / b its mean thickness; with a sharp
corner these are a_p / sin κ and f sin κ. κ is the tool cutting edge angle of ISO 3002: 90° is a
square shoulder, not its complement.
Source: O. Kienzle, 1952 (from memory). Near the nose the effective edge angle is that of the
chord over the engaged edge (L. V. Colwell, 1954, from memory).
Weakness: a fitted power law for a sharp tool; below h = 0.05 mm it is an extrapolation.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.errors import OutsideModel
from borewright.mechanics.num import Num
from borewright.quantities.si import Metre, Radian

_MM = 1e3


@dataclass(frozen=True, slots=True)
class Chip:
    """Engaged edge and mean thickness of the chip (m), effective edge angle (rad)."""

    width: Metre
    thickness: Metre
    effective_angle: Radian


def chip_of(depth: Metre, feed: Metre, edge_angle: Radian, nose_radius: Metre = 0.0) -> Chip:
    """The chip of a turning cut (m, rad). Raises OutsideModel for an edge angle not in (0°, 90°].

    >>> c = chip_of(1e-3, 0.2e-3, np.pi / 2)
    >>> round(c.width * 1e3, 6), round(c.thickness * 1e3, 6)
    (1.0, 0.2)
    """
    if not 0 < edge_angle <= np.pi / 2 * (1 + 1e-12):
        raise OutsideModel(
            "edge angle",
            f"{np.degrees(edge_angle):.4g} deg",
            "above 0 to 90 deg (90 is a square shoulder)",
        )
    width, reach = _engaged_edge(depth, feed, edge_angle, nose_radius)
    return Chip(width, depth * feed / width, float(np.arctan2(depth, reach)))


def kienzle_force(chip: Chip, kc11: Num, exponent: Num, correction: Num = 1.0) -> Num:
    """Cutting force (N); `kc11` in Pa, `correction` the product of the named factors.

    >>> round(kienzle_force(chip_of(1e-3, 1e-3, np.pi / 2), 1500e6, 0.25), 6)
    1500.0
    """
    return (
        kc11 / _MM**2 * (chip.width * _MM) * (chip.thickness * _MM) ** (1 - exponent) * correction
    )


def feed_and_passive(
    cutting: Num, chip: Chip, resultant_ratio: Num, least_passive: float = 0.0
) -> tuple[Num, Num]:
    """Feed and passive force (N) of a cutting force (N).

    `resultant_ratio`: their resultant over the cutting force; it is split by the effective edge
    angle. `least_passive`: the passive share of the cutting force that even a square edge shows.
    """
    together = resultant_ratio * cutting
    passive = np.maximum(together * np.cos(chip.effective_angle), least_passive * cutting)
    return together * np.sin(chip.effective_angle), passive


def _engaged_edge(depth: float, feed: float, angle: float, radius: float) -> tuple[float, float]:
    """Length of edge in the cut and its reach along the feed, both m."""
    trailing = min(feed / 2, radius)
    trail_arc = radius * float(np.arcsin(trailing / radius)) if radius > 0 else 0.0
    knee = radius * (1 - np.cos(angle))
    if depth <= knee:
        turn = float(np.arccos(1 - depth / radius))
        return radius * turn + trail_arc, radius * np.sin(turn) + trailing
    straight = (depth - knee) / np.sin(angle)
    reach = radius * np.sin(angle) + straight * np.cos(angle) + trailing
    return float(radius * angle + straight + trail_arc), float(reach)
