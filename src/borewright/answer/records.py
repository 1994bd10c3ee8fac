"""What borewright says, as frozen records. Lengths, forces … in SI.

`Figure` is the number that travels: a table row becomes a figure, the figure reaches the screen,
the JSON and the paper, and its sources go with it.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from borewright.answer.figure import Assumption, Caution, Figure, Input
from borewright.mechanics.num import Floats
from borewright.quantities.si import (
    Metre,
    MetrePerSecond,
    Newton,
    NewtonMetre,
    NewtonPerMetre,
    Radian,
    Ratio,
    RevPerSecond,
)

__all__ = [
    "PRESSING",
    "Assumption",
    "Candidate",
    "Caution",
    "Cut",
    "Demand",
    "Draws",
    "Figure",
    "Gives",
    "Have",
    "Input",
    "Need",
    "ProofLoad",
    "PushAdvice",
    "Question",
    "Step",
    "TaperGrip",
    "ToothSpace",
    "Verdict",
]

PRESSING = ("seat", "bore", "push", "crack")  # they decide whether it goes on its mandrel at all

Draws = Floats
"""Shape (n,): element 0 is the likely case, the others are the drawn cases, in one common order."""


class Verdict(StrEnum):
    """The three answers, in words."""

    YES = "yes"
    CARE = "with care"
    NO = "no"

    @property
    def rank(self) -> int:
        """0 for yes, 1 for with care, 2 for no."""
        return (Verdict.YES, Verdict.CARE, Verdict.NO).index(self)


@dataclass(frozen=True, slots=True)
class Question:
    """One of the plan's questions, answered. Margins are capability over demand, likely and low."""

    id: str
    verdict: Verdict
    margin: float
    margin_low: float
    reason: str
    changes_it: str
    figures: tuple[Figure, ...] = ()
    sources: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class TaperGrip:
    """What one hold on a taper can give at one setting, as draws, the likely case first.

    `pressed_force` is the normal force while pressing; `normal_force` the less that is left when
    the work runs warm under the cut. `edge_pressure` is near the leading face with no peaks
    flattened, `pressed_pressure` the largest with them flattened.
    """

    way: str
    setting: Metre
    diameter: Metre
    normal_force: Draws
    pressed_force: Draws
    holding_friction: Draws
    push_on: Draws
    push_off: Draws
    tension: Draws
    equivalent_stress: Draws
    contact_length: Draws
    edge_pressure: Draws
    pressed_pressure: Draws
    growth: Draws
    taper: float

    @property
    def friction_force(self) -> Draws:
        """The largest resultant the joint carries, μ_slip N."""
        return self.holding_friction * self.normal_force


@dataclass(frozen=True, slots=True, eq=False)
class Demand:
    """What one cut asks of the hold. `axial` is + towards the large end, which tightens.

    `power` (W) is that at the tool; `grip_left` the share of the grip that the cut itself leaves,
    because cutting teeth softens the ring; `goes_round` where its forces go round the work. Where a
    positive drive takes the torque, `torque` is 0, `drive_asked` what it takes and `drive_gives`
    what it could (N·m).
    """

    cut: str
    torque: Draws
    axial: Draws
    radial: Draws
    tangential: Draws
    radius: Metre
    power: Draws
    grip_left: float = 1.0
    goes_round: bool = True
    drive_asked: Draws | None = None
    drive_gives: Draws | None = None

    @property
    def whole_torque(self) -> Draws:
        """The torque of the cut (N·m), whatever carries it."""
        return self.torque if self.drive_asked is None else self.drive_asked


@dataclass(frozen=True, slots=True)
class ToothSpace:
    """The space between two teeth of a gear, and the disc cutter that mills it."""

    teeth: int
    module: Metre
    whole_depth: Metre
    pressure_angle: Radian
    root_width: Metre
    cutter_diameter: Metre
    cutter_teeth: int


@dataclass(frozen=True, slots=True)
class Cut:
    """One cut as the bench sheet prints it.

    `kind` is turn, face, groove, crown, edge, grind or gear.

    `length` is how far the tool goes in the metal in one pass (0 where not settled), `leaves` the
    diameter behind it, `span` where it begins and ends from face A, where not the whole. With a
    `spring_pass` it is gone over once more untouched. For groove, `depth` is the width of one
    plunge and `passes` counts plunges. For crown, `depth` is that of one pass at the edge of the
    face and `passes` counts both halves. For edge, `depth` is the leg of one plunge at 45 degrees
    and `passes` counts plunges into all its edges.

    For grind, `depth` is the infeed on radius, `feed` the traverse a turn of the work, and both
    speeds are the work's. For gear, `depth` is that of one pass, `feed` is a tooth of the cutter,
    both speeds are the cutter's, and `passes` counts every pass through every space.
    """

    id: str
    kind: str
    name: str
    diameter: Metre
    depth: Metre
    feed: Metre
    passes: int
    cutting_speed: MetrePerSecond
    spindle_speed: RevPerSecond
    edge_angle: Radian
    nose_radius: Metre
    direction: str
    seat_effect: str
    wheel_speed: MetrePerSecond | None = None
    coolant: bool = False
    space: ToothSpace | None = None
    length: Metre = 0.0
    leaves: Metre | None = None
    spring_pass: bool = False
    span: tuple[Metre, Metre] | None = None

    @property
    def on_lathe(self) -> bool:
        """True for a cut that a lathe tool takes."""
        return self.kind in ("turn", "face", "groove", "crown", "edge")


@dataclass(frozen=True, slots=True)
class Step:
    """One line of the bench sheet, in the order a hand does it. `blanks` are values to write in."""

    number: int
    title: str
    text: str
    figures: tuple[Figure, ...] = ()
    blanks: tuple[str, ...] = ()


class Have(StrEnum):
    """Where a thing comes from: the shelf, being made in the plan, or a shop that sells it."""

    OWN = "own"
    MAKE = "make"
    BUY = "buy"


@dataclass(frozen=True, slots=True)
class Need:
    """One thing that a way needs. `minutes` is what making it takes, once for the batch.

    `taken`: nobody stated it, and it is taken as owned because most shops have it.
    """

    what: str
    have: Have
    minutes: float = 0.0
    taken: bool = False


@dataclass(frozen=True, slots=True)
class Gives:
    """What one hold gives, likely case: torque with no thrust; thrust towards the headstock and
    away from it with no torque, infinite where a shoulder takes it; stiffness at the tool; strength
    of the work over what the holding asks; how far out of round it springs when it is let go.
    """

    torque: NewtonMetre
    thrust_in: Newton
    thrust_out: Newton
    stiffness: NewtonPerMetre
    strength: Ratio
    springs: Metre = 0.0


@dataclass(frozen=True, slots=True)
class Candidate:
    """One way of holding that was weighed, with the one reason that decides its row.

    `decided_by`: id of the question that decides, empty where all are yes, "cannot" where it cannot
    be done at all. `runout` is the likely one, `minutes` those of the batch with what must be made.
    `gives`: its capacities, None where it cannot be done; `marks`: what it leaves on the work.
    """

    way: str
    tool: str
    leading_face: str
    verdict: Verdict | None
    reason: str
    computed: bool = True
    decided_by: str = ""
    runout: Metre | None = None
    minutes: float = 0.0
    needs: tuple[Need, ...] = ()
    gives: Gives | None = None
    marks: str = ""


@dataclass(frozen=True, slots=True)
class ProofLoad:
    """A weight on an arm that proves the grip: `force` hangs at `arm` from the axis.

    `by_hand`: so little is asked that a hand's twist of the rim proves it, and no weight is hung.
    `by_cord`: the work is too small or too thin to clamp an arm to, so that a cord pulls its rim.
    """

    torque: NewtonMetre
    arm: Metre
    force: Newton
    rim_radius: Metre
    rim_force: Newton
    factor: float
    by_hand: bool = False
    by_cord: bool = False


@dataclass(frozen=True, slots=True)
class PushAdvice:
    """The push to look for at the chosen travel, and what it proves; `by_blows`: none is felt."""

    expected: Figure
    look_for: Figure
    stop_at: Figure
    proves_torque: Figure
    ratio_low: float
    ratio_high: float
    by_blows: bool = False
