"""Capability over demand, as draws. The only place where a grip meets a Demand."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from borewright.answer.records import Demand, Draws, TaperGrip
from borewright.holding.taper.facts import Facts
from borewright.holding.taper.plain_taper import TaperHold
from borewright.mechanics.rock import rocking_moment
from borewright.mechanics.slip import axial_on_friction, friction_demand, slip_margin, slip_radius
from borewright.mechanics.spread import likely
from borewright.mechanics.strength import crack_margin, yield_margin
from borewright.quantities.si import Metre


def slip_margins(grip: TaperGrip, demand: Demand) -> Draws:
    """What friction, and a positive drive where there is one, carry over what the cut asks."""
    held = grip.friction_force * demand.grip_left
    friction = np.asarray(slip_margin(held, demand_on_joint(grip, demand)))
    if demand.drive_asked is None or demand.drive_gives is None:
        return friction
    return np.asarray(np.minimum(friction, demand.drive_gives / demand.drive_asked))


def driven_by(demand: Demand, gives: Draws) -> Demand:
    """The demand with its torque taken by a positive drive that gives so much (N·m)."""
    nothing = np.zeros_like(demand.torque)
    return replace(demand, torque=nothing, drive_asked=demand.torque, drive_gives=gives)


def demand_on_joint(grip: TaperGrip, demand: Demand) -> Draws:
    """Resultant (N) of the cut's torque and signed axial force on the joint."""
    normal = grip.normal_force * demand.grip_left
    axial = axial_on_friction(demand.axial, normal, grip.taper)
    return np.asarray(friction_demand(demand.torque, grip.diameter, axial))


def demand_on_uncut(grip: TaperGrip, demand: Demand) -> Draws:
    """The same (N), asked of work whose teeth are still uncut: what a push or proof load must show.

    More than `demand_on_joint` by the grip that cutting the teeth will cost.
    """
    return demand_on_joint(grip, demand) / demand.grip_left


def slip_radii(grip: TaperGrip, demand: Demand) -> Draws:
    """Radius (m) at which this cut would just slip, or its positive drive let go."""
    if demand.drive_gives is not None:
        return np.asarray(demand.drive_gives / demand.tangential)
    axial = axial_on_friction(demand.axial, grip.normal_force, grip.taper)
    return np.asarray(slip_radius(grip.friction_force, grip.diameter, demand.tangential, axial))


def rock_margins(hold: TaperHold, grip: TaperGrip, demand: Demand) -> Draws:
    """The tilt that lifts a fifth of the grip over that of the cut times what is kept in hand."""
    asked = walk_of(hold.facts, demand) * tilt_of(demand, rock_arm(grip, hold.length))
    return np.asarray(hold.lift_moment(grip.setting) * demand.grip_left / asked)


def walk_of(facts: Facts, demand: Demand) -> Draws:
    """What is kept in hand where the load goes round the work and could let it walk; else 1."""
    return facts.walk_factor if demand.goes_round else np.ones(1)


def rock_arm(grip: TaperGrip, length: Metre) -> Metre:
    """From the middle of the grip to the farther face (m): the tool gets that far."""
    middle = likely(grip.contact_length) / 2
    return max(middle, length - middle)


def tilt_of(demand: Demand, arm: Metre) -> Draws:
    """Moment (N·m) of a cut about the middle of the grip."""
    return np.asarray(
        rocking_moment(demand.radial, demand.axial, demand.tangential, arm, demand.radius)
    )


def bore_margins(grip: TaperGrip, facts: Facts) -> Draws:
    """Strength over stress at the bore: tension for brittle work, von Mises for ductile."""
    if facts.brittle:
        return np.asarray(crack_margin(facts.strength, grip.tension))
    return np.asarray(yield_margin(facts.strength, grip.equivalent_stress))
