"""What a user states, as frozen records in SI units. None means "not stated".

Nothing here reads a file or fills a gap: `job.file` reads, `planning` assumes (and says so).
Depth along the work, `z`, runs from **face A**, the face the job file calls zero.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from borewright.job.finished_form import FinishedForm
from borewright.job.interrupted import Chamfers, CrossHole, Keyway, Spokes
from borewright.job.tools import (
    OwnBoringBar,
    OwnDog,
    OwnDrill,
    OwnGauge,
    OwnHammer,
    OwnHolding,
    OwnPress,
    OwnReamer,
    OwnVice,
)
from borewright.quantities.si import (
    Metre,
    MetrePerMetre,
    MetrePerSecond,
    Newton,
    Radian,
    RevPerSecond,
    Watt,
)


@dataclass(frozen=True, slots=True)
class Piece:
    """A ring of the work along z; `inside` is None where it begins at the bore."""

    start: Metre
    end: Metre
    outside: Metre
    inside: Metre | None = None


@dataclass(frozen=True, slots=True)
class BoreReading:
    """One measured diameter of the bore at a depth from face A, in a named direction or none."""

    depth: Metre
    size: Metre
    direction: str = ""


@dataclass(frozen=True, slots=True)
class BoreLimits:
    """Smallest and largest size that the bore may have, where that is all that is stated.

    `code` and `nominal` are those of a class such as 15 H7, with the tables' `sources`; empty where
    the two sizes themselves were stated.
    """

    low: Metre
    high: Metre
    code: str = ""
    nominal: Metre | None = None
    sources: tuple[str, ...] = ()

    @property
    def middle(self) -> Metre:
        return (self.low + self.high) / 2

    @property
    def half_band(self) -> Metre:
        return (self.high - self.low) / 2


@dataclass(frozen=True, slots=True)
class BoreThread:
    """A thread in the bore: as typed, its nominal diameter and pitch, and its hand."""

    text: str
    size: Metre
    pitch: Metre
    left: bool = False


@dataclass(frozen=True, slots=True)
class Bore:
    """The hole: its size, the readings behind it, how it was measured and made.

    With `limits`, `size` is the middle of them and `uncertainty` half their band. With a `thread`,
    `size` is that of the hole in which it was cut.
    """

    size: Metre
    uncertainty: Metre | None = None
    measured_with: str = "unknown"
    made_by: str = "unknown"
    readings: tuple[BoreReading, ...] = ()
    limits: BoreLimits | None = None
    thread: BoreThread | None = None


@dataclass(frozen=True, slots=True)
class Finished:
    """The size wanted when done; `tolerance` is a band on diameter, `runout` a whole reading.

    `service_speed`: how fast it turns where it is used. `form`: length, steps, grooves and edges.
    """

    outside: Metre | None = None
    tolerance: Metre | None = None
    runout: Metre | None = None
    form: FinishedForm = field(default_factory=FinishedForm)
    service_speed: RevPerSecond | None = None


@dataclass(frozen=True, slots=True)
class Work:
    """The part as it stands now.

    `flaws` of the casting at the bore, as far as looked for: none, suspected, seen or unknown.
    `casting_runout`: how much its outside runs out as cast, a whole reading.
    """

    material: str
    pieces: tuple[Piece, ...]
    bore: Bore
    blank: str = "unknown"
    finished: Finished = Finished()
    quantity: int = 1
    keyway: Keyway | None = None
    cross_hole: CrossHole | None = None
    spokes: Spokes | None = None
    flaws: str = "unknown"
    chamfers: Chamfers = field(default_factory=Chamfers)
    casting_runout: Metre | None = None

    @property
    def length(self) -> Metre:
        """From face A to face B along the bore's axis."""
        return max(p.end for p in self.pieces) - min(p.start for p in self.pieces)

    @property
    def outside(self) -> Metre:
        """The largest diameter."""
        return max(p.outside for p in self.pieces)


@dataclass(frozen=True, slots=True)
class Mandrel:
    """A plain taper mandrel. `x` runs from the small end of its ground length.

    `stations`: (x, diameter) as measured, x rising; empty where it is taken as a straight taper.
    Then `small_end` and `taper` are those of the straight taper nearest to them. `hole`: diameter
    of its own bore, from end to end; 0 where it is solid.
    """

    name: str
    nominal: Metre
    small_end: Metre
    taper: MetrePerMetre
    ground_length: Metre
    overall_length: Metre
    end_diameter: Metre
    end_length: Metre
    material: str = "mandrel-steel-hard"
    origin: str = "stated"
    sources: tuple[str, ...] = ()
    stations: tuple[tuple[Metre, Metre], ...] = ()
    station_uncertainty: Metre = 0.0
    hole: Metre = 0.0

    @property
    def large_end(self) -> Metre:
        return self.small_end + self.taper * self.ground_length


@dataclass(frozen=True, slots=True)
class MandrelNote:
    """What a user said of one mandrel on the shelf: a size, and perhaps more.

    `hardness` is hard, soft or unknown; `flats`, where the dog bears: small, large, both, none or
    unknown. `marks`, `condition` and `place` (where it is kept) are the owner's own words.
    `stations` are (x, diameter) as measured, x from either end of the ground length. `hole`: the
    diameter of its own bore; not stated, it is solid.
    """

    nominal: Metre
    name: str = ""
    small_end: Metre | None = None
    large_end: Metre | None = None
    taper: MetrePerMetre | None = None
    ground_length: Metre | None = None
    overall_length: Metre | None = None
    marks: str = ""
    hardness: str = "unknown"
    flats: str = "unknown"
    condition: str = ""
    place: str = ""
    stations: tuple[tuple[Metre, Metre], ...] = ()
    station_uncertainty: Metre | None = None
    hole: Metre | None = None


@dataclass(frozen=True, slots=True)
class Machine:
    """The lathe, as far as stated.

    `power_by_gear` is the power at each of the `speeds`, in their order; `dial` says what the cross
    slide's dial counts: radius, diameter or unknown.
    """

    name: str = ""
    speeds: tuple[RevPerSecond, ...] = ()
    feeds: tuple[Metre, ...] = ()
    swing_over_cross_slide: Metre | None = None
    between_centers: Metre | None = None
    power: Watt | None = None
    power_by_gear: tuple[Watt, ...] = ()
    dial: str = "unknown"


@dataclass(frozen=True, slots=True)
class Shelf:
    """What the shop owns. `stated` False: the owner did not say, which is not the same as none.

    `machine` is the lathe to be used, one of `lathes` where several are listed; `press` and
    `press_force` are those of the press to be used, the first of `presses` where they are listed.
    `holding`: what else holds work, beside what most shops have; `have_not`: what of that is not
    there.
    `lathe_wished` and `press_wished`: the user insists on that one, so no other is tried.
    """

    mandrels: tuple[MandrelNote, ...] = ()
    stated: bool = False
    press: str = ""
    press_force: Newton | None = None
    machine: Machine = field(default_factory=Machine)
    lathes: tuple[Machine, ...] = ()
    presses: tuple[OwnPress, ...] = ()
    vice: OwnVice | None = None
    hammer: OwnHammer | None = None
    dogs: tuple[OwnDog, ...] = ()
    reamers: tuple[OwnReamer, ...] = ()
    gauges: tuple[OwnGauge, ...] = ()
    holding: tuple[OwnHolding, ...] = ()
    have_not: tuple[str, ...] = ()
    drills: tuple[OwnDrill, ...] = ()
    boring_bar: OwnBoringBar | None = None
    lathe_wished: bool = False
    press_wished: bool = False


@dataclass(frozen=True, slots=True)
class CutWish:
    """A cut the user insists on; what is None is left to the plan.

    `kind` is turn, face, grind (`depth` is the infeed on radius, `feed` the traverse a turn of the
    work, `speed` that of the work) or gear (`depth` is that of one pass, `feed` is a tooth of the
    cutter, `speed` the cutter's; one of `module` and `diametral_pitch` is stated).
    """

    kind: str = "turn"
    depth: Metre | None = None
    feed: Metre | None = None
    speed: MetrePerSecond | None = None
    spindle_speed: RevPerSecond | None = None
    edge_angle: Radian | None = None
    nose_radius: Metre | None = None
    wheel_speed: MetrePerSecond | None = None
    coolant: bool | None = None
    teeth: int | None = None
    module: Metre | None = None
    diametral_pitch: float | None = None
    cutter_diameter: Metre | None = None
    cutter_teeth: int | None = None


@dataclass(frozen=True, slots=True)
class Job:
    """One part to be held and cut. `units` is inch or mm: how sizes are shown first.

    `driven_by`: what turns the mandrel's large end: dog, collet or three-jaw.
    """

    title: str
    work: Work
    units: Literal["inch", "mm"] = "inch"
    shelf: Shelf = field(default_factory=Shelf)
    use: str = "any"
    lubrication: str = "oiled"
    driven_by: str = "dog"
    pressed_before: bool = False
    cuts: tuple[CutWish, ...] = ()
