"""Work in the jaws of a chuck: how hard they press, what that holds, and how far it springs.

A hand pulls the key up firmly on stout work. On a free ring it pulls lighter, until the spring
takes only its share of the tolerance, but no lighter than can be set and trusted. Torque and the
pull out of the jaws are friction; inwards the work stands against the jaws. A tilt unseats it when
the force of a jaw has moved to a third of its length from the end (the edge opens), or when the
work slides along the jaws: both are counted together.
Sources: `ring_ovality` and `ring_lobes` in mechanics; Coulomb friction. Weakness: narrow jaws
pressing outwards are worked as their mirror image inwards, and jaws that bear on most of the round
by the share that a thin ring under even patches keeps (ours); the force is a hand's.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.answer.held import Grip
from borewright.answer.records import Draws, Figure, Input
from borewright.answer.streams import Stream
from borewright.errors import OutsideModel
from borewright.holding.clamped import drawn_figure
from borewright.holding.grasp import Grasp
from borewright.holding.part import Part, endless, none_at_all
from borewright.mechanics.ring_lobes import ThinRing, lobe_height
from borewright.mechanics.ring_ovality import HeldRing, bending_between, jaw_bending, out_of_round
from borewright.mechanics.spread import likely
from borewright.quantities.si import Metre, NewtonPerMetre

KERN = 6.0
"""The force of a jaw may move a sixth of its length from the middle before its edge opens."""


@dataclass(frozen=True, slots=True)
class Jaws:
    """Jaws of one kind: how many, the row of holding_facts with the force of one, and the share of
    the round that they bear on together (0: narrow ones).
    """

    number: int
    force: str
    bears: float = 0.0


@dataclass(frozen=True, slots=True, eq=False)
class Jawed:
    """A grasp in these jaws: force of one jaw (N) as draws, share of a firm pull that the hand
    gives, and what it holds (N·m, N), springs (m) and leaves of the strength (a margin).
    """

    force: Draws
    pull: float
    torque: Draws
    slide: Draws
    tilt: Draws
    springs: Draws
    strength: Draws
    figures: tuple[Figure, ...]

    @property
    def lightly(self) -> bool:
        """True where the hand must hold back."""
        return self.pull < 0.99


def jawed(part: Part, grasp: Grasp, jaws: Jaws, squeeze_counts: bool = True) -> Jawed:
    """This grasp in these jaws; `squeeze_counts` False where nothing round is cut in them."""
    unit = spring_of(grasp.ring, jaws) if squeeze_counts else none_at_all()
    pull = _pull(part, jaws, likely(unit))
    force = part.fact(jaws.force, Stream.CLAMPING) * pull
    friction = part.fact("jaw_friction", Stream.FRICTION)
    slide = np.asarray(jaws.number * force * friction)
    torque = np.asarray(slide * grasp.diameter / 2)
    across = grasp.length / KERN + friction * grasp.diameter / 2
    springs = np.asarray(unit * force)
    return Jawed(
        force,
        pull,
        torque,
        slide,
        np.asarray(jaws.number / 2 * force * across),
        springs,
        _strength(part, grasp.ring, force, jaws),
        _figures(grasp, jaws, force, friction, torque, springs),
    )


def grip_of(
    part: Part, held: Jawed, runout: Draws, stiffness: NewtonPerMetre, *, stands_back: bool = True
) -> Grip:
    """The grip record; `stands_back` False where nothing but friction stops the work inwards."""
    return Grip(
        torque=held.torque,
        thrust_in=endless() if stands_back else held.slide,
        thrust_out=held.slide,
        tilt=held.tilt,
        runout=runout,
        strength=held.strength,
        springs=held.springs,
        stiffness=stiffness,
        half_warm=endless(),
        brittle=part.brittle,
    )


def chuck_stiffness(part: Part, arm: Metre) -> NewtonPerMetre:
    """At the tool, `arm` (m) beyond the jaws or plate: what chuck and spindle give; stout work."""
    turn = part.tables.holding_fact("stub_root_turn").best
    give = part.tables.holding_fact("stub_root_give").best
    return float(1 / (1 / give + arm**2 / turn))


def spring_of(ring: HeldRing | None, jaws: Jaws) -> Draws:
    """Out of round (m) for each newton on one jaw; nothing where no free ring is pressed on."""
    if ring is None:
        return none_at_all()
    try:
        narrow = out_of_round(1.0, jaws.number, ring)
    except OutsideModel:  # so thick that it is a disc: jaws only dent it
        return none_at_all()
    return np.asarray(narrow * spread_keeps(jaws) * np.ones(len(none_at_all())))


def spread_keeps(jaws: Jaws) -> float:
    """Share of the spring of narrow jaws that is left when they bear on more of the round."""
    if jaws.bears == 0:
        return 1.0
    thin = ThinRing(0.100, 0.102, 0.010, 1e11)  # any: the share does not depend on it
    half = jaws.bears * np.pi / jaws.number
    return lobe_height(thin, 1.0, jaws.number, half) / lobe_height(thin, 1.0, jaws.number)


def _pull(part: Part, jaws: Jaws, unit: float) -> float:
    """Share of a firm pull on the key that the hand gives."""
    fact, firm = part.tables.holding_fact, part.tables.holding_fact(jaws.force).best
    if unit <= 0:
        return 1.0
    tolerance = part.work.finished.tolerance or part.tables.allowance("usual_tolerance").best
    spared = fact("jaw_spring_share").best * tolerance / (unit * firm)
    return float(min(1.0, max(spared, fact("light_jaw_force").best / firm)))


def _strength(part: Part, ring: HeldRing | None, force: Draws, jaws: Jaws) -> Draws:
    """Margin of the ring's strength over its greatest stress, jaws taken as narrow."""
    if ring is None:
        return endless()
    try:
        bent = np.maximum(
            jaw_bending(force, jaws.number, ring), -bending_between(force, jaws.number, ring)
        )
    except OutsideModel:
        return endless()
    hoop = force / (2 * np.sin(np.pi / jaws.number) * ring.wall * ring.width)
    stress = 6 * bent / (ring.width * ring.wall**2) + hoop
    return np.asarray(part.strength / stress)


def _figures(
    grasp: Grasp, jaws: Jaws, force: Draws, friction: Draws, torque: Draws, springs: Draws
) -> tuple[Figure, ...]:
    one = Input("force of one jaw", likely(force), "N")
    held = (
        Input("friction", likely(friction), ""),
        Input("jaws", jaws.number, ""),
        one,
        Input("diameter", grasp.diameter, "m"),
    )
    found = (
        drawn_figure("jaw_force", force, "N", "force", "", (), "ours"),
        drawn_figure("jaw_torque", torque, "N·m", "torque", "jaw_torque", held, "ours-derived"),
    )
    ring = grasp.ring
    if ring is None or likely(springs) <= 0:
        return found
    sprung = (
        one,
        Input("jaws", jaws.number, ""),
        Input("spread", spread_keeps(jaws), ""),
        Input("inside", float(ring.inside), "m"),
        Input("outside", float(ring.outside), "m"),
        Input("width", float(ring.width), "m"),
        Input("modulus", likely(np.asarray(ring.metal.modulus)), "Pa"),
        Input("ratio", float(ring.metal.poisson), ""),
    )
    spring = drawn_figure(
        "jaw_springs", springs, "m", "small", "jaw_springs", sprung, "roark-memory"
    )
    return (*found, spring)
