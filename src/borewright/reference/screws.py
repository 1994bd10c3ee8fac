"""Coarse screws with their drills; which set screw a hub and a bar have room for."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from borewright.quantities.si import Metre
from borewright.reference.drives import SetScrew
from borewright.reference.table import Row

SAME: float = 1e-9
"""Of its size: a screw of exactly the most that is allowed is allowed."""


@dataclass(frozen=True, slots=True)
class Screw:
    """A coarse thread: the drill before its tap, and the one that lets the screw through."""

    id: str
    system: str
    diameter: Metre
    pitch: Metre
    tap_drill: str
    tap_drill_size: Metre
    clearance_drill: str
    clearance: Metre
    source: str


@dataclass(frozen=True, slots=True)
class ScrewRoom:
    """What a set screw may measure (m): at most `most`, in a wall of `least_wall` to `most_wall`
    times its size."""

    most: Metre
    wall: Metre
    least_wall: float
    most_wall: float


def screw_of(row: Row) -> Screw:
    """The record in a row of the table `screws`."""
    return Screw(
        id=row.text("id"),
        system=row.text("system"),
        diameter=row.number("diameter"),
        pitch=row.number("pitch"),
        tap_drill=row.text("tap_drill"),
        tap_drill_size=row.number("tap_drill_size"),
        clearance_drill=row.text("clearance_drill"),
        clearance=row.number("clearance_size"),
        source=row.text("source"),
    )


def length_of(row: Row) -> Metre:
    """The length (m) in a row of the table `screw_lengths`."""
    return row.number("length")


def shortest_over(lengths: Iterable[Metre], least: Metre) -> Metre | None:
    """The shortest of at least this length (m); None where all are shorter.

    >>> shortest_over((0.016, 0.02, 0.025), 0.0191)
    0.02
    """
    return min((x for x in lengths if x >= least * (1 - SAME)), default=None)


def largest_within(screws: Iterable[Screw], most: Metre) -> Screw | None:
    """The largest of at most this diameter (m); None where all are larger."""
    fits = (s for s in screws if s.diameter <= most * (1 + SAME))
    return max(fits, key=lambda s: s.diameter, default=None)


def largest_set_screw(screws: Iterable[SetScrew], room: ScrewRoom) -> SetScrew | None:
    """The largest set screw that there is room for; None where none fits."""
    fits = (
        s
        for s in screws
        if s.diameter <= room.most
        and room.least_wall * s.diameter <= room.wall <= room.most_wall * s.diameter
    )
    return max(fits, key=lambda s: s.diameter, default=None)
