"""The geometry that is drawn: bands, rings, and the layout of work and mandrel."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.held_picture import HeldMark
from borewright.job.interrupted import CrossHole, Keyway, Spokes
from borewright.quantities.si import Metre


@dataclass(frozen=True, slots=True)
class Band:
    """Low, best and high of a position or size, in metres."""

    low: Metre
    best: Metre
    high: Metre


@dataclass(frozen=True, slots=True)
class Ring:
    """A ring of the drawn work: `start` and `end` from the leading face, inside ≥ the bore.

    `spoked`: only the spokes of it are metal.
    """

    start: Metre
    end: Metre
    outside: Metre
    inside: Metre
    spoked: bool = False


@dataclass(frozen=True, slots=True)
class Layout:
    """The geometry that is drawn. `x` runs from the small end of the ground length.

    The large end is towards the headstock, and drawings put the headstock on the left.
    `slip_radius` is where the planned cut would just slip: likely, and at the low end; None where
    it never slips on a radius worth drawing. `at_left` holds the large end; `turns` is False where
    the work stands still under a form cutter; `root_diameter` is that of a gear's teeth. The cross
    hole's `at` is from the leading face here. `driven_by`: dog, collet or three-jaw. `chamfers`:
    their legs at the leading and at the far edge of the bore, 0 for none. `grips`: the length that
    bears once the peaks have flattened, None where it is told by the interference alone. `drive`: a
    positive drive beside the mandrel.
    """

    mandrel_name: str
    small_end: Metre
    large_end: Metre
    ground_length: Metre
    overall_length: Metre
    end_diameter: Metre
    end_length: Metre
    bore: Metre
    work_length: Metre
    rings: tuple[Ring, ...]
    seat: Band
    touch: Band
    travel: Metre
    leading_face: str
    tool_limit_large: Metre
    tool_limit_small: Metre
    slip_radius: Metre | None
    slip_radius_low: Metre | None
    interference_z: tuple[Metre, ...]
    interference: tuple[Metre, ...]
    interference_kept: tuple[Metre, ...]
    at_left: str = "Headstock"
    turns: bool = True
    root_diameter: Metre | None = None
    keyway: Keyway | None = None
    cross_hole: CrossHole | None = None
    spokes: Spokes | None = None
    driven_by: str = "dog"
    chamfers: tuple[Metre, Metre] = (0.0, 0.0)
    grips: Metre | None = None
    drive: HeldMark | None = None
