"""Work in the jaws of a chuck: how hard they press, what that holds, and how far it springs.

A hand pulls the key up firmly on stout work. On a ring it pulls lighter, until the spring takes
only its share of the tolerance and the strain only its share of the strength, but no lighter than
can be set and trusted. Torque and the
pull out of the jaws are friction; inwards the work stands against the jaws. A tilt unseats it when
the force of a jaw has moved to a third of its length from the end (the edge opens) and the work
slides along the jaws: both hold together.
Sources: `ring_ovality` and `ring_lobes` in mechanics; Coulomb friction. Weakness: narrow jaws
pressing outwards are worked as their mirror image inwards, and jaws that bear on most of the round
by the share that a thin ring under even patches keeps (ours); the force is a hand's.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import numpy as np

from borewright.answer.held import Grip
from borewright.answer.records import Draws, Figure, Input
from borewright.answer.streams import Stream
from borewright.errors import OutsideModel
from borewright.holding.figured import drawn_figure
from borewright.holding.jaws.grasp import Grasp
from borewright.holding.part import Part, endless, none_at_all
from borewright.mechanics.ring_lobes import ThinRing, lobe_bending, lobe_height
from borewright.mechanics.ring_ovality import HeldRing, bending_between, jaw_bending, out_of_round
from borewright.mechanics.spread import likely
from borewright.quantities.si import Metre, NewtonPerMetre

ANY_RING = ThinRing(0.100, 0.102, 0.010, 1e11)
"""Shares of spring and bending that are left do not depend on the ring."""

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


SCROLL = Jaws(3, "scroll_jaw_force")
INDEPENDENT = Jaws(4, "four_jaw_force")

HALF = 0.5
"""Share of a firm pull below which a hand pulls lightly (ours)."""


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
    def held_back(self) -> bool:
        """True where the hand must not pull as firmly as it can."""
        return self.pull < 0.99

    @property
    def lightly(self) -> bool:
        """True where it pulls less than half of that."""
        return self.pull < HALF


def jawed(part: Part, grasp: Grasp, jaws: Jaws, squeeze_counts: bool = True) -> Jawed:
    """This grasp in these jaws; `squeeze_counts` False where nothing round is cut in them."""
    unit = spring_of(grasp.ring, jaws) if squeeze_counts else none_at_all()
    stress = _stress_of(grasp.strained, jaws)
    pull = _pull(part, jaws, likely(unit), stress)
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
        np.asarray(part.strength / (stress * force)) if stress > 0 else endless(),
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


@cache
def spread_keeps(jaws: Jaws) -> float:
    """Share of the spring of narrow jaws that is left when they bear on more of the round."""
    if jaws.bears == 0:
        return 1.0
    wide = lobe_height(ANY_RING, 1.0, jaws.number, jaws.bears * np.pi / jaws.number)
    return wide / lobe_height(ANY_RING, 1.0, jaws.number)


@cache
def bending_keeps(jaws: Jaws) -> float:
    """The same of the greatest bending, under a jaw or half-way between two."""
    if jaws.bears == 0:
        return 1.0
    places = np.array([0.0, np.pi / jaws.number])
    half = jaws.bears * np.pi / jaws.number
    wide, narrow = (
        float(np.abs(lobe_bending(ANY_RING, 1.0, jaws.number, places, h)).max())
        for h in (half, 0.0)
    )
    return wide / narrow


def _pull(part: Part, jaws: Jaws, spring: float, stress: float) -> float:
    """Share of a firm pull on the key that the hand gives; `spring` and `stress` are of 1 N."""
    fact = part.tables.holding_fact
    firm = fact(jaws.force).best
    most = [firm]
    if spring > 0:
        usual = part.tables.allowance("usual_tolerance").best
        tolerance = part.work.finished.tolerance or usual
        most.append(fact("jaw_spring_share").best * tolerance / spring)
    if stress > 0:
        most.append(likely(part.strength) / (fact("jaw_reserve").best * stress))
    return max(min(most), fact("light_jaw_force").best) / firm


def _stress_of(ring: HeldRing | None, jaws: Jaws) -> float:
    """Greatest stress (Pa) in a ring for each newton on one jaw; 0 where it is stout."""
    if ring is None:
        return 0.0
    try:
        under = float(jaw_bending(1.0, jaws.number, ring))
        between = -float(bending_between(1.0, jaws.number, ring))
    except OutsideModel:
        return 0.0
    hoop = 1 / (2 * np.sin(np.pi / jaws.number) * float(ring.wall * ring.width))
    bent = max(under, between) * bending_keeps(jaws)
    return 6 * bent / float(ring.width * ring.wall**2) + float(hoop)


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
