"""A ring squeezed by the jaws of a chuck: how far out of round it goes, and how hard it is bent.

Answers what n equal jaws, evenly spaced, each pressing inwards with P on the outside, do to a ring
of mean radius R, wall t and width b, and what a bore turned round in them does when they let go.
With θ = π / n (from a jaw to half-way), s = sin θ, c = cos θ, e = R - t / ln(r_o / r_i) the shift
of the neutral line, A = b t, α = e / R, β = (12/5) (1 + ν) α, k1 = 1 - α + β, k2 = 1 - α:
    at a jaw, inwards   P R² / (2 E A e) · (k1 (θ - s c) / (2 s²) + k2 c / s - k2² / θ)
    between, outwards   P R² / (2 E A e) · (k1 (s - θ c) / (2 s²) - k2 / s + k2² / θ)
    bending at a jaw    P R / 2 · (k2 / θ - c / s)      greatest; opens it, tension at the bore
    bending between     P R / 2 · (k2 / θ - 1 / s)      below 0: closes it
Units: N, m, Pa, N·m, as floats or arrays that broadcast; a change of radius is + outwards.
Range: two jaws or more, and a wall of at most 0.4 of the arc θ R; OutsideModel beyond. Measured
against plane finite elements of the ring under narrow jaws, the out-of-round of the bore is right
within 1 % for a wall of a tenth of that arc, 6 % high for a quarter and 10 to 15 % high at the
limit, always on the safe side; beyond it the work is a disc, and the jaws mostly dent it. (The
thin-ring limit α = β = 0 is low instead, by a fifth at the limit.) The tension at the bore under a
jaw is high too, by at most 4 %, 10 % and 22 %.
Weakness: jaws as lines across the whole width, all alike, that neither hold by friction nor spread
the load: pie jaws and a tight ring of soft jaws do far less harm.
Source: Roark's Formulas for Stress and Strain, circular rings under equally spaced radial loads,
with its correction for thick rings (from memory; derived again here by Castigliano's theorem);
checked against the integral of the strain energy and against finite elements.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Num
from borewright.mechanics.rings import Elastic
from borewright.quantities.si import Ratio

THICKEST: Final[Ratio] = 0.4
"""Largest wall over the arc from a jaw to half-way: there the out-of-round is 15 % high."""


@dataclass(frozen=True, slots=True, eq=False)
class HeldRing:
    """A plain ring: inside and outside diameter (m), width along the axis (m), and its metal.

    As it stands at the last pass: metal that has been turned away no longer springs.
    """

    inside: Num
    outside: Num
    width: Num
    metal: Elastic

    def __post_init__(self) -> None:
        above_zero("inside of the ring", self.inside, "m")
        above_zero("width of the ring", self.width, "m")
        above_zero("modulus", self.metal.modulus, "Pa")
        thick = np.greater(self.outside, self.inside)
        refuse_unless(thick, "outside of the ring", self.outside, "m", "more than its inside")

    @property
    def wall(self) -> Num:
        return (self.outside - self.inside) / 2

    @property
    def mean_radius(self) -> Num:
        return (self.outside + self.inside) / 4

    @property
    def shift(self) -> Num:
        """How far (m) the neutral line of bending lies inside the mean radius.

        R - t / ln(r_o / r_i) by ln(r_o / r_i) = 2 artanh(t / 2R): a thin wall keeps its digits.
        """
        half = self.wall / (2 * self.mean_radius)
        return self.mean_radius * (1 - half / np.arctanh(half))


def move_at_jaws(force: Num, jaws: Num, ring: HeldRing) -> Num:
    """Change of radius (m) under each jaw, + outwards, so below 0; force (N) of one jaw.

    >>> iron = HeldRing(0.090, 0.110, 0.020, Elastic(100e9, 0.26))
    >>> round(float(move_at_jaws(1000.0, 3, iron)) * 1e6, 1)
    -14.6
    """
    th, s, c = _angles(force, jaws, ring)
    k1, k2 = _thick(ring)
    shape = k1 * (th - s * c) / (2 * s**2) + k2 * c / s - k2**2 / th
    return -_scale(force, ring) * shape


def move_between(force: Num, jaws: Num, ring: HeldRing) -> Num:
    """Change of radius (m) half-way between jaws, + outwards; inputs as for `move_at_jaws`.

    A thick ring under many jaws shrinks there too.

    >>> iron = HeldRing(0.090, 0.110, 0.020, Elastic(100e9, 0.26))
    >>> round(float(move_between(1000.0, 3, iron)) * 1e6, 1)
    10.3
    """
    th, s, c = _angles(force, jaws, ring)
    k1, k2 = _thick(ring)
    shape = k1 * (s - th * c) / (2 * s**2) - k2 / s + k2**2 / th
    return _scale(force, ring) * shape


def out_of_round(force: Num, jaws: Num, ring: HeldRing) -> Num:
    """Greatest radius less the least (m) while squeezed; the same is left after release.

    >>> iron = HeldRing(0.090, 0.110, 0.020, Elastic(100e9, 0.26))
    >>> round(float(out_of_round(1000.0, 3, iron)) * 1e6, 1)
    24.9
    """
    return move_between(force, jaws, ring) - move_at_jaws(force, jaws, ring)


def left_after_release(force: Num, jaws: Num, ring: HeldRing) -> tuple[Num, Num]:
    """What a bore turned round while squeezed is left with (m): at the jaws, and between.

    + is a larger radius. The negative of the squeeze: every point of the metal goes back to where
    it came from. Force and ring as they stand at the last pass, the ring free of stress of its own.

    >>> iron = HeldRing(0.090, 0.110, 0.020, Elastic(100e9, 0.26))
    >>> at_jaws, between = left_after_release(1000.0, 3, iron)
    >>> bool(at_jaws > 0 > between)
    True
    """
    return -move_at_jaws(force, jaws, ring), -move_between(force, jaws, ring)


def force_for_out_of_round(allowed: Num, jaws: Num, ring: HeldRing) -> Num:
    """Force (N) of one jaw that leaves a ring out of round by `allowed` (m).

    >>> iron = HeldRing(0.090, 0.110, 0.020, Elastic(100e9, 0.26))
    >>> round(float(force_for_out_of_round(out_of_round(500.0, 3, iron), 3, iron)), 6)
    500.0
    """
    not_below_zero("out-of-round", allowed, "m")
    return allowed / out_of_round(1.0, jaws, ring)


def jaw_bending(force: Num, jaws: Num, ring: HeldRing) -> Num:
    """Greatest bending moment (N·m), under each jaw; it opens the ring there.

    >>> thin = HeldRing(0.0999, 0.1001, 0.020, Elastic(100e9, 0.26))
    >>> round(float(jaw_bending(1000.0, 2, thin)), 3)  # P R / π
    15.915
    """
    th, s, c = _angles(force, jaws, ring)
    return force * ring.mean_radius / 2 * (_thick(ring)[1] / th - c / s)


def bending_between(force: Num, jaws: Num, ring: HeldRing) -> Num:
    """Bending moment (N·m) half-way between jaws, below 0: it closes the ring there.

    >>> thin = HeldRing(0.0999, 0.1001, 0.020, Elastic(100e9, 0.26))
    >>> round(float(bending_between(1000.0, 2, thin)), 3)
    -9.085
    """
    th, s, _ = _angles(force, jaws, ring)
    return force * ring.mean_radius / 2 * (_thick(ring)[1] / th - 1 / s)


def bore_tension(force: Num, jaws: Num, ring: HeldRing) -> Num:
    """Hoop tension (Pa) at the bore under a jaw: bending of a curved bar less the hoop pressure.

    >>> iron = HeldRing(0.090, 0.110, 0.020, Elastic(100e9, 0.26))
    >>> round(float(bore_tension(1000.0, 3, iron)) / 1e6, 1)
    28.6
    """
    _, s, c = _angles(force, jaws, ring)
    inside, area, e = ring.inside / 2, ring.wall * ring.width, ring.shift
    lever = (ring.mean_radius - e - inside) / (area * e * inside)
    return jaw_bending(force, jaws, ring) * lever - force * c / (2 * s * area)


def _angles(force: Num, jaws: Num, ring: HeldRing) -> tuple[Num, Num, Num]:
    """θ, sin θ, cos θ, once force, jaws and wall have been found to be within the model."""
    not_below_zero("force of a jaw", force, "N")
    refuse_unless(np.greater_equal(jaws, 2), "jaws", jaws, "", "2 or more")
    theta = np.pi / jaws
    limit = THICKEST * theta * ring.mean_radius
    few = np.less_equal(ring.wall, limit)
    least = f"at most {THICKEST:g} of the arc from a jaw to half-way"
    refuse_unless(few, "wall of the ring", ring.wall, "m", least)
    return theta, np.sin(theta), np.cos(theta)


def _thick(ring: HeldRing) -> tuple[Num, Num]:
    """k1, k2: what shear and the hoop force add to bending; 1, 1 for a ring without thickness."""
    alpha = ring.shift / ring.mean_radius
    beta = 12 / 5 * (1 + ring.metal.poisson) * alpha
    return 1 - alpha + beta, 1 - alpha


def _scale(force: Num, ring: HeldRing) -> Num:
    area = ring.wall * ring.width
    return force * ring.mean_radius**2 / (2 * ring.metal.modulus * area * ring.shift)
