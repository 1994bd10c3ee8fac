"""From the checked `chamfer` of `[work]` to its record, and whether the bore has metal for it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from borewright.errors.tree import RefusedInput
from borewright.job.interrupted import Chamfers
from borewright.job.records import Piece
from borewright.job.typed import Reader, Value
from borewright.job.web import MEETS
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

if TYPE_CHECKING:
    from borewright.job.schema import ChamferTable


def build_chamfers(
    table: ChamferTable | Value | None, pieces: Sequence[Piece], bore: Metre, reader: Reader
) -> Chamfers:
    """The chamfers; RefusedInput where the bore has no metal for one."""
    chamfers = read_chamfers(table, "work.chamfer", reader)
    check_chamfers(pieces, bore, chamfers.legs, reader.at("work.chamfer"))
    return chamfers


def read_chamfers(table: ChamferTable | Value | None, place: str, reader: Reader) -> Chamfers:
    """The legs at both ends as stated: one for both, or each its own."""
    if table is None:
        return Chamfers()
    if isinstance(table, str | int | float):
        leg = reader.length(table, place, zero=True)
        return Chamfers(leg, leg)
    a, b = (
        0.0 if leg is None else reader.length(leg, f"{place}.{face}", zero=True)
        for face, leg in (("a", table.a), ("b", table.b))
    )
    return Chamfers(a, b)


def check_chamfers(
    pieces: Sequence[Piece], bore: Metre, legs: tuple[Metre, Metre], where: str
) -> None:
    """RefusedInput for a leg (m) below 0 or with no metal for it: bearing, wall, counterbore."""
    if not any(legs):
        return
    from borewright.mechanics.chamfer import rooms  # numpy

    rings = [(p.start, p.end, p.outside, p.inside) for p in pieces]
    for leg, room in zip(legs, rooms(rings, bore, legs), strict=True):
        if leg < 0:
            raise RefusedInput(where, _say(leg), "a leg of 0 or more")
        if leg >= room.half - MEETS:
            _refuse(where, leg, "below half of the bore's bearing length there", room.half)
        if leg >= room.wall - MEETS:
            _refuse(where, leg, "below the wall at that face", room.wall)
        if room.step is not None and leg > room.step + MEETS:
            _refuse(where, leg, "up to the step of the counterbore", room.step)


def _refuse(where: str, leg: Metre, limit: str, size: Metre) -> None:
    raise RefusedInput(where, _say(leg), f"a leg {limit}, {_say(size)}")


def _say(leg: Metre) -> str:
    return Show("mm").length(leg)
