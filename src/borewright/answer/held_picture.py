"""The geometry of work held in any way: revolved rings seen from the side, marks seen from the end.

z runs from the headstock towards the tailstock; z = 0 is where the chuck, plate or center ends.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from borewright.quantities.si import Metre, Radian


class Role(StrEnum):
    """What a ring or a mark is; the drawing gives each its own look and name."""

    WORK = "work"
    SPINDLE = "spindle"
    JAW = "jaw"
    PLATE = "plate"
    MANDREL = "mandrel"
    SLEEVE = "sleeve"
    NUT = "nut"
    WASHER = "washer"
    SCREW = "screw"
    STRAP = "strap"
    CENTER = "center"
    BOND = "bond"
    WEIGHT = "weight"
    DOG = "dog"
    PIN = "pin"


@dataclass(frozen=True, slots=True)
class HeldRing:
    """A revolved piece in half section: from `start` to `end` along z, radii at both ends (m).

    `outer_end` and `inner_end` are those at `end`; None where the piece is plain.
    """

    role: Role
    start: Metre
    end: Metre
    outer: Metre
    inner: Metre = 0.0
    outer_end: Metre | None = None
    inner_end: Metre | None = None


@dataclass(frozen=True, slots=True)
class HeldMark:
    """One of `number` alike, evenly spaced round the axis, seen from the tailstock.

    Its middle at `radius` (m), `size` (m) across, the first at `angle` (rad, clockwise from the
    top).
    """

    role: Role
    radius: Metre
    size: Metre
    number: int = 1
    angle: Radian = 0.0


@dataclass(frozen=True, slots=True)
class HeldNote:
    """Words said beside the first ring or mark of a role."""

    role: Role
    words: str


@dataclass(frozen=True, slots=True)
class HeldPicture:
    """Everything that is drawn of one hold.

    `rings`: side view, the work among them; `marks`: end view; `tailstock`: a center supports the
    far end; `turned`: z of the ends (m) of what the tool reaches of the outside.
    """

    rings: tuple[HeldRing, ...]
    marks: tuple[HeldMark, ...] = ()
    notes: tuple[HeldNote, ...] = ()
    tailstock: bool = False
    turned: tuple[Metre, Metre] | None = None
