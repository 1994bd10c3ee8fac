"""What one way of holding makes of a job: its grip, what it needs, and what a hand does with it.

Every way of holding fills the same record, so that the plan can ask all of them the same questions
and rank them by one key.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from enum import StrEnum

import numpy as np

from borewright.answer.first_hold import JawPlace
from borewright.answer.held_picture import HeldMark, HeldPicture
from borewright.answer.records import Demand, Draws, Figure, Have, Need, Step
from borewright.quantities.si import Metre, NewtonPerMetre


@dataclass(frozen=True, slots=True)
class Check:
    """How well one thing stands: margins (1 is just enough), likely and low, and in words."""

    margin: float
    margin_low: float
    reason: str
    changes_it: str = "Nothing needs to."
    sources: tuple[str, ...] = ()
    figures: tuple[Figure, ...] = ()


class Joint(StrEnum):
    """How torque and thrust share a hold: one friction in two directions; a clamp that a thrust
    unloads; or each has its own."""

    FRICTION = "friction"
    CLAMP = "clamp"
    APART = "apart"


_TOGETHER: dict[Joint, Callable[[Draws, Draws], Draws]] = {
    Joint.FRICTION: np.hypot,
    Joint.CLAMP: np.add,
    Joint.APART: np.maximum,
}
_LEFT: dict[Joint, Callable[[Draws], Draws]] = {
    Joint.FRICTION: lambda along: np.sqrt(1.0 - along**2),
    Joint.CLAMP: lambda along: 1.0 - along,
    Joint.APART: np.ones_like,
}
"""What torque and thrust ask together, as shares; what a thrust's share leaves for torque."""


@dataclass(frozen=True, slots=True, eq=False)
class Grip:
    """What a hold can give, as draws of one common order.

    `torque` (N·m) with nothing along the axis; `thrust_in` and `thrust_out` (N) with no torque:
    towards the headstock and away from it, infinite where a shoulder takes it. `joint`: how torque
    and thrust share what there is, see `Joint`. `tilt` (N·m): moment across the
    axis that unseats the work. `stiffness` (N/m) at the tool; `runout` (m), rim to bore, whole
    reading; `throws`: its shares by name where there are several, which `runout` adds as a
    root-sum-square; `springs` (m): how much the work goes out of round when it is let go.
    `strength`: margin of the work against the holding, infinite where nothing strains it.
    `half_warm` (K): warmth of the work that takes half of the grip; infinite where none does.
    """

    torque: Draws
    thrust_in: Draws
    thrust_out: Draws
    tilt: Draws
    runout: Draws
    strength: Draws
    springs: Draws
    stiffness: NewtonPerMetre
    half_warm: Draws
    joint: Joint = Joint.FRICTION
    brittle: bool = False
    throws: tuple[tuple[str, Draws], ...] = ()

    def slip_margin(self, demand: Demand) -> Draws:
        """What the hold can give over what a cut asks; infinite where the cut asks nothing."""
        with np.errstate(divide="ignore", invalid="ignore"):
            turn = _share(np.abs(demand.torque), self.torque)
            asked = _TOGETHER[self.joint](turn, self._along(demand))
            return np.asarray(1.0 / asked)

    def _along(self, demand: Demand) -> Draws:
        """The share of the hold along the axis that a cut's thrust asks."""
        inwards = _share(np.maximum(demand.axial, 0.0), self.thrust_in)
        return inwards + _share(np.maximum(-demand.axial, 0.0), self.thrust_out)

    def slip_radius(self, demand: Demand) -> Draws:
        """Radius (m) at which the cut would just let go, its thrust as it is."""
        with np.errstate(divide="ignore", invalid="ignore"):
            along = self._along(demand)
        left = _LEFT[self.joint](np.minimum(along, 1.0))
        return np.asarray(self.torque * left / np.maximum(demand.tangential, 1e-9))


def _share(asked: Draws, gives: Draws) -> Draws:
    """Asked over given: 0 where nothing is asked, without end where something is and none given.

    Whoever asks lets the division by nothing pass.
    """
    return np.where(asked > 0, asked / gives, 0.0)


OUTSIDE, TAIL_FACE, HEAD_FACE = "outside", "tail-face", "head-face"
"""What a tool can reach while the work is held: the outside, the face away from the headstock, the
face that looks to it."""


@dataclass(frozen=True, slots=True, eq=False)
class Drilling:
    """The largest drill that works in a hold: its diameter (m), and its torque (N·m) as draws."""

    diameter: Metre
    torque: Draws
    figure: Figure


@dataclass(frozen=True, slots=True)
class InJaws:
    """Where a chuck with so many jaws takes hold of a casting whose bore is made in that hold."""

    place: JawPlace
    number: int


@dataclass(frozen=True, slots=True, eq=False)
class Held:
    """A job on one way of holding, one tool.

    `cannot`: the one reason why it cannot be done, empty where it can; then `grip` is there, and
    `tool`, `do_it` (what to do, as a clause that follows "Yes: "), `leading` (the face towards the
    headstock, A or B), `reaches`, `seat`, `fit` and `effort` (how it is located, whether the bore
    suits it, and what tightens it), `room` (m: the largest diameter that swings, and the length
    between centers, 0 where none is needed), `arm` (m: from where it is held to the farther face;
    0: the length of the work), `presses_bore`, what gives `more_grip`, what
    holds it `steadier` against tilt (empty: the usual words), what makes it `truer`, what
    `spares` the work, `marks`, `mount` and `release` (what a hand does
    before and after the cutting), `ready` (what to fetch), `caution_tags`, and the drawing.
    `faces_done`: both faces must be finished before, so that none is left to turn round for.
    `first`: cuts of its own, before those of the table; `last`: those of its own once the work is
    cool, before the last pass; `drilling`: what is drilled in it; `in_jaws`: see `InJaws`.
    `edges_hidden`: pieces stand against each other, so that no tool gets at their edges.
    `handling`: minutes for the batch beyond the usual ones of the way, such as several loads.
    """

    way: str
    cannot: str = ""
    tool: str = ""
    do_it: str = ""
    leading: str = ""
    grip: Grip | None = None
    needs: tuple[Need, ...] = ()
    reaches: tuple[str, ...] = (OUTSIDE, TAIL_FACE)
    seat: Check | None = None
    fit: Check | None = None
    effort: Check | None = None
    room: tuple[Metre, Metre] = (0.0, 0.0)
    arm: Metre = 0.0
    presses_bore: bool = False
    more_grip: str = "a positive drive"
    steadier: str = ""
    truer: str = "Cleaner faces; clock it and read again."
    spares: str = "Nothing needs to."
    marks: str = ""
    mount: tuple[Step, ...] = ()
    release: tuple[Step, ...] = ()
    first: tuple[Step, ...] = ()
    last: tuple[Step, ...] = ()
    drilling: Drilling | None = None
    in_jaws: InJaws | None = None
    ready: tuple[str, ...] = ()
    caution_tags: tuple[str, ...] = ()
    picture: HeldPicture | None = None
    bore_window: tuple[Metre, Metre] | None = None
    faces_done: bool = False
    edges_hidden: bool = False
    handling: float = 0.0
    figures: tuple[Figure, ...] = ()
    sources: tuple[str, ...] = ()
    notes: tuple[str, ...] = field(default=())

    @property
    def to_buy(self) -> tuple[Need, ...]:
        """What the shelf has not got and the plan does not make."""
        return tuple(n for n in self.needs if n.have is Have.BUY)

    @property
    def making(self) -> float:
        """Minutes of making what it needs, once for the batch."""
        return sum(n.minutes for n in self.needs if n.have is Have.MAKE)


@dataclass(frozen=True, slots=True, eq=False)
class Drive:
    """A positive drive beside a hold: it takes the torque (N·m, draws) off the friction.

    `cannot`: why it cannot be had, empty where it can; `mark`: where it is seen from the end.
    """

    id: str
    tool: str
    cannot: str = ""
    torque: Draws | None = None
    needs: tuple[Need, ...] = ()
    marks: str = ""
    mount: Step | None = None
    mark: HeldMark | None = None
    caution_tags: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()


def line(
    title: str, text: str, figures: tuple[Figure, ...] = (), blanks: tuple[str, ...] = ()
) -> Step:
    """A step whose number the plan gives."""
    return Step(0, title, text, figures, blanks)
