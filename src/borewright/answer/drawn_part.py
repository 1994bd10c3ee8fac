"""A turned part as a workshop drawing shows it: its form, its sizes with limits, its notes. SI.

`x` runs along the axis from the part's left end; the part is drawn lying, its axis level. A part
with an inside is drawn in full section, one without from outside.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.quantities.si import Metre

Place = Literal["inside", "left", "right"]


@dataclass(frozen=True, slots=True)
class Stretch:
    """A ring or rod of the part: outside at its start, and at its end where it is a cone.

    `inside` is that of a ring of its own, such as a rim on a web; 0 where only `Hollow` says it.
    `inside_end` as `outside_end`.
    """

    start: Metre
    end: Metre
    outside: Metre
    outside_end: Metre | None = None
    inside: Metre = 0.0
    inside_end: Metre | None = None


@dataclass(frozen=True, slots=True)
class Hollow:
    """A hole along the axis, a cone where `size_end` differs; `thread` is drawn as one."""

    start: Metre
    end: Metre
    size: Metre
    size_end: Metre | None = None
    thread: bool = False


@dataclass(frozen=True, slots=True)
class CenterHole:
    """A center hole in the left or right end: pilot, cone, and bell where it is protected."""

    end: Literal["left", "right"]
    pilot: Metre
    cone: Metre
    bell: Metre | None
    depth: Metre


@dataclass(frozen=True, slots=True)
class Flat:
    """A flat on the outside, `depth` on radius, seen from the side as the line of its edges."""

    start: Metre
    end: Metre
    depth: Metre


@dataclass(frozen=True, slots=True)
class Slit:
    """A saw cut along the axis from one end of the part, through the wall.

    `hole`: what is drilled at its inner end, so that it ends there; 0 where nothing is.
    """

    start: Metre
    end: Metre
    width: Metre
    number: int
    hole: Metre = 0.0


@dataclass(frozen=True, slots=True)
class SpokeRing:
    """Spokes between two diameters: seen from the side, never cut; `width` round the wheel."""

    number: int
    start: Metre
    end: Metre
    inside: Metre
    outside: Metre
    width: Metre


@dataclass(frozen=True, slots=True)
class Limits:
    """A size with its two deviations; both 0 where the drawing's general tolerance rules.

    `prefix` stands before it, such as "R" or "M"; a size across gets its Ø by itself. `after`
    stands behind it, such as "thread" or "at A". `reference`: in brackets, for information only.
    `decimal`: in decimals even where it is a shop fraction.
    `finest`: all figures of the unit are said, as those of its fellow beside it are.
    """

    size: Metre
    lower: Metre = 0.0
    upper: Metre = 0.0
    prefix: str = ""
    after: str = ""
    reference: bool = False
    decimal: bool = False
    finest: bool = False


@dataclass(frozen=True, slots=True)
class Across:
    """A diameter. `inside` stands on the part itself with its words over it; else in a column."""

    at: Metre
    limits: Limits
    place: Place = "right"
    name: str = ""


@dataclass(frozen=True, slots=True)
class Along:
    """A length between two places on the axis, in a row below the part."""

    start: Metre
    end: Metre
    limits: Limits
    name: str = ""


@dataclass(frozen=True, slots=True)
class Pointed:
    """Words at the end of a line that points at a place: x, and its distance from the axis."""

    at: Metre
    radius: Metre
    text: str
    name: str = ""


@dataclass(frozen=True, slots=True)
class DrawnPart:
    """All that one drawing shows. `notes` stand in a list on the sheet, `material` in its block.

    `general` is the general tolerance in words. `end_view`: which end is looked at, none where "".
    `phantom` are further outlines that are not part of it, drawn double-dotted: the finished part
    within a casting, the casting within its pattern's allowance.
    """

    title: str
    material: str
    stretches: tuple[Stretch, ...]
    hollows: tuple[Hollow, ...] = ()
    centers: tuple[CenterHole, ...] = ()
    flats: tuple[Flat, ...] = ()
    slits: tuple[Slit, ...] = ()
    spokes: SpokeRing | None = None
    across: tuple[Across, ...] = ()
    along: tuple[Along, ...] = ()
    pointed: tuple[Pointed, ...] = ()
    notes: tuple[str, ...] = ()
    treatment: str = ""
    general: str = ""
    end_view: Literal["left", "right", ""] = ""
    phantom: tuple[Stretch, ...] = ()
    quantity: int = 1
