"""Capability over demand, as draws. The only place where a Grip meets a Demand."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Demand, Draws, Grip
from borewright.holding.facts import Facts
from borewright.mechanics.slip import axial_on_friction, friction_demand, slip_margin, slip_radius
from borewright.mechanics.strength import crack_margin, yield_margin


def slip_margins(grip: Grip, demand: Demand) -> Draws:
    """What friction can carry over what the cut asks of it."""
    held = grip.friction_force * demand.grip_left
    return np.asarray(slip_margin(held, demand_on_joint(grip, demand)))


def demand_on_joint(grip: Grip, demand: Demand) -> Draws:
    """Resultant (N) of the cut's torque and signed axial force on the joint."""
    normal = grip.normal_force * demand.grip_left
    axial = axial_on_friction(demand.axial, normal, grip.taper)
    return np.asarray(friction_demand(demand.torque, grip.diameter, axial))


def demand_on_uncut(grip: Grip, demand: Demand) -> Draws:
    """The same (N), asked of work whose teeth are still uncut: what a push or proof load must show.

    More than `demand_on_joint` by the grip that cutting the teeth will cost.
    """
    return demand_on_joint(grip, demand) / demand.grip_left


def slip_radii(grip: Grip, demand: Demand) -> Draws:
    """Radius (m) at which this cut would just slip."""
    axial = axial_on_friction(demand.axial, grip.normal_force, grip.taper)
    return np.asarray(slip_radius(grip.friction_force, grip.diameter, demand.tangential, axial))


def bore_margins(grip: Grip, facts: Facts) -> Draws:
    """Strength over stress at the bore: tension for brittle work, von Mises for ductile."""
    if facts.brittle:
        return np.asarray(crack_margin(facts.strength, grip.tension))
    return np.asarray(yield_margin(facts.strength, grip.equivalent_stress))
