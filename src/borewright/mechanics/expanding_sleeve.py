"""A slit sleeve pushed along a cone: what a push becomes in the bore, and what holds then.

The cone has a taper T on diameter, so its surface leans by α with tan α = T / 2. Radial forces are
summed round: N on the bore, Q_s what opens the empty sleeve, and Q = N + Q_s on the cone.
    push      F = Q (μ_c + T/2) / (1 - μ_c T/2) + μ_b N     the sleeve moves up the cone
    release   F = Q (μ_c - T/2) / (1 + μ_c T/2) + μ_b N     and down it; below zero by itself
    torque    bore μ_b N d / 2;  cone Q (d_c / 2) cos α sqrt(μ_c² - (T/2)²), or μ_c Q d_c / 2 while
              the push stays on (a little low, so safe); the weaker of the two is the joint's
μ_b is 0 in F where the work moves with the sleeve; where a stop holds the work it is the bore's.
Held by itself the cone's friction already carries Q T/2 along, so only the rest is left to turn.
Source: equilibrium of a wedge and Coulomb's friction, closed form. Weakness: grip as even along and
round; fingers that touch on lines, and a sleeve that bears at one end only, are not in it.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Bools, Num
from borewright.mechanics.press import push_off_force, push_on_force
from borewright.mechanics.slip import slip_torque
from borewright.quantities.si import MetrePerMetre, Ratio


def expansion(travel: Num, taper: MetrePerMetre) -> Num:
    """Growth on diameter (m) of the sleeve over a travel (m) along the cone: T × travel.

    OutsideModel unless the taper is above 0.

    >>> round(expansion(0.004, 1 / 16) * 1e3, 3)
    0.25
    """
    above_zero("taper of the cone", taper)
    return travel * taper


def travel_to_touch(bore: Num, sleeve: Num, taper: MetrePerMetre) -> Num:
    """Travel (m) that opens a sleeve of this size (m) to this bore (m).

    OutsideModel where the sleeve does not go in, or the taper is not above 0.

    >>> round(travel_to_touch(0.0201, 0.02, 1 / 16) * 1e3, 6)
    1.6
    """
    above_zero("taper of the cone", taper)
    not_below_zero("bore less the size of the sleeve", np.subtract(bore, sleeve))
    return (bore - sleeve) / taper


def sleeve_push(
    normal: Num, opening: Num, friction: Num, taper: MetrePerMetre, bore_friction: Num = 0.0
) -> Num:
    """Push (N) behind a radial force `normal` (N) on the bore; `opening` (N) opens the sleeve.

    `friction` is the cone's; `bore_friction` only where the work is held back by a stop.
    OutsideModel where a force or friction is below 0, the taper not above 0, or the cone jams.

    >>> round(sleeve_push(10e3, 0.0, 0.1, 0.06), 1), round(sleeve_push(9e3, 1e3, 0.1, 0.06), 1)
    (1303.9, 1303.9)
    """
    _usable(normal, opening, friction, taper, bore_friction)
    return push_on_force(normal + opening, friction, taper) + bore_friction * normal


def normal_on_bore(
    push: Num, opening: Num, friction: Num, taper: MetrePerMetre, bore_friction: Num = 0.0
) -> Num:
    """Radial force (N) that a push (N) leaves for the bore; 0 where the sleeve takes all of it.

    Inputs and refusals as in `sleeve_push`.

    >>> round(float(normal_on_bore(sleeve_push(9e3, 1e3, 0.1, 0.06), 1e3, 0.1, 0.06)), 6)
    9000.0
    """
    _usable(push, opening, friction, taper, bore_friction)
    per_radial = push_on_force(1.0, friction, taper)
    left = np.maximum(0.0, push - opening * per_radial)
    return np.asarray(left / (per_radial + bore_friction), dtype=np.float64)


def share_to_open(push: Num, opening: Num, friction: Num, taper: MetrePerMetre) -> Num:
    """Share of a push (N) that only opens the sleeve, at most 1. OutsideModel unless push > 0.

    >>> push = sleeve_push(9e3, 1e3, 0.1, 0.06)
    >>> round(float(share_to_open(push, 1e3, 0.1, 0.06)), 6)
    0.1
    """
    above_zero("push", push)
    _usable(push, opening, friction, taper, 0.0)
    share = push_on_force(opening, friction, taper) / push
    return np.asarray(np.minimum(1.0, share), dtype=np.float64)


def release_push(
    normal: Num, opening: Num, friction: Num, taper: MetrePerMetre, bore_friction: Num = 0.0
) -> Num:
    """Force (N) that starts the sleeve back down the cone; below 0 it lets go by itself.

    Inputs and refusals as in `sleeve_push`.

    >>> round(release_push(10e3, 0.0, 0.1, 0.06), 1), round(release_push(10e3, 0.0, 0.1, 0.3), 1)
    (697.9, -492.6)
    """
    _usable(normal, opening, friction, taper, bore_friction)
    return push_off_force(normal + opening, friction, taper) + bore_friction * normal


def holds_itself(friction: Num, taper: MetrePerMetre) -> Bools:
    """Whether the cone stays when the push is gone, the bore's friction left out: μ_c > T / 2.

    >>> bool(holds_itself(0.1, 1 / 16)), bool(holds_itself(0.1, 0.25))
    (True, False)
    """
    return np.asarray(np.greater(friction, np.divide(taper, 2)), dtype=np.bool_)


def cone_torque(
    radial: Num, friction: Num, cone: Num, taper: MetrePerMetre, *, push_stays: bool = False
) -> Num:
    """Torque (N·m) at which the sleeve turns on a cone of mean diameter `cone` (m).

    `radial` (N) is on the cone, N + Q_s. With the push taken away OutsideModel unless it holds
    itself.

    >>> round(float(cone_torque(10e3, 0.1, 0.02, 0.12)), 4)
    7.9856
    >>> float(cone_torque(10e3, 0.1, 0.02, 0.12, push_stays=True))
    10.0
    """
    _usable(radial, 0.0, friction, taper, 0.0)
    above_zero("diameter of the cone", cone)
    if push_stays:
        return slip_torque(radial, friction, cone)
    refuse_unless(
        holds_itself(friction, taper), "friction on the cone", friction, "", "above half its taper"
    )
    lean = np.square(np.divide(taper, 2))
    around = np.sqrt((np.square(friction) - lean) / (1 + lean))
    return np.asarray(slip_torque(radial, around, cone), dtype=np.float64)


def sleeve_torque(
    normal: Num,
    opening: Num,
    frictions: tuple[Num, Num],
    diameters: tuple[Num, Num],
    taper: MetrePerMetre,
    *,
    push_stays: bool = False,
) -> Num:
    """Torque (N·m) of the weaker of bore and cone; `frictions` and `diameters` (m) in that order.

    Refusals as in `cone_torque`.

    >>> round(float(sleeve_torque(10e3, 1e3, (0.1, 0.1), (0.02, 0.015), 1 / 16)), 3)
    7.833
    """
    in_bore = slip_torque(normal, frictions[0], diameters[0])
    on_cone = cone_torque(
        normal + opening, frictions[1], diameters[1], taper, push_stays=push_stays
    )
    return np.asarray(np.minimum(in_bore, on_cone), dtype=np.float64)


def bearing_round(slots: int, width: Num, diameter: Num) -> Ratio | Num:
    """The most of the round that can bear: what the slots of this width (m) leave.

    Counted along the round. OutsideModel where there are no slots or they leave nothing.

    >>> round(float(bearing_round(4, 0.0015, 0.02)), 4)
    0.9045
    """
    above_zero("number of slots", slots)
    not_below_zero("width of a slot", width)
    above_zero("diameter", diameter)
    left = np.asarray(1 - slots * np.divide(width, np.pi * diameter), dtype=np.float64)
    refuse_unless(left > 0, "share of the round that bears", left, "", "above 0")
    return left


def _usable(force: Num, opening: Num, friction: Num, taper: Num, bore_friction: Num) -> None:
    not_below_zero("force on the sleeve", force)
    not_below_zero("force to open the sleeve", opening)
    not_below_zero("friction on the cone", friction)
    not_below_zero("friction in the bore", bore_friction)
    above_zero("taper of the cone", taper)
    lean = np.multiply(friction, taper) / 2
    refuse_unless(lean < 1, "friction × half the taper", lean, "", "below 1; past it the cone jams")
