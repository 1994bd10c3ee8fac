"""The riser: how large it must be for the heaviest section, and where one so large may stand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from borewright.answer.made_casting import Place, Riser, Section, Wheel
from borewright.job.records import Piece
from borewright.job.web import MEETS, between, on_bore
from borewright.mechanics.cast_metal import riser_height
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True)
class _Round:
    """What stands round the axis (m): the hub or body, its hole as cast, how far it is to the rim
    on radius (None without one), how far it stands out past web and rim."""

    outside: Metre
    hole: Metre
    gap: Metre | None
    out: Metre

    @property
    def wall(self) -> Metre:
        return (self.outside - self.hole) / 2


def riser_of(
    sections: Sequence[Section], pieces: Sequence[Piece], wheel: Wheel, hole: Metre, tables: Tables
) -> Riser:
    """The riser. On a solid hub it stands over the middle; beside a core it needs wall or room."""
    fact = tables.casting_fact
    need = fact("riser_over").best * sections[0].modulus
    size = fact("riser_share").best * need
    round_ = _round_of(pieces, wheel, hole)
    name = sections[0].name
    if name in ("hub", "body"):
        if hole == 0.0:
            return _over_the_middle(need, size, round_.outside, tables)
        return _beside_the_core(size, round_, name, tables)
    if name == "rim":
        return _by_the_rim(size, pieces, round_, tables)
    return _plain(size, "web", (round_.gap or 0.0) - 2 * fact("riser_sand").best)


def _round_of(pieces: Sequence[Piece], wheel: Wheel, hole: Metre) -> _Round:
    bore = wheel.bore.size
    hub = min(on_bore(pieces, bore), key=lambda p: p.outside)
    larger = [p for p in pieces if p.outside > hub.outside + MEETS]
    webs = between(pieces, bore)
    outs = (
        max(min(p.start for p in webs) - hub.start, hub.end - max(p.end for p in webs))
        if webs
        else 0.0
    )
    gap = min((w.outside - (w.inside or bore)) / 2 for w in webs) if webs else None
    return _Round(hub.outside, hole, gap if larger else None, outs)


def _plain(size: Metre, place: Place, room: Metre) -> Riser:
    """As high as thick, on metal or sand with room (m) for it."""
    return Riser(size, size, place, room, size <= room + MEETS)


def _necked(size: Metre, place: Place, room: Metre, meets: Metre, tables: Tables) -> Riser:
    """As high as thick, led in by a neck on metal so thick (m)."""
    neck = tables.casting_fact("neck_share").best * meets
    long = tables.casting_fact("neck_long").best * neck
    return Riser(size, size, place, room, True, neck, long)


def _over_the_middle(need: Metre, size: Metre, outside: Metre, tables: Tables) -> Riser:
    """On the solid hub: as it is, or as wide as the hub and taller, or wider and necked in."""
    if size <= outside + MEETS:
        return _plain(size, "middle", outside)
    if outside > 4 * need + MEETS:
        tall = riser_height(outside, need)
        if tall <= tables.casting_fact("riser_tall").best * outside:
            return Riser(outside, tall, "middle", outside)
    return _necked(size, "middle", outside, outside, tables)


def _beside_the_core(size: Metre, round_: _Round, name: str, tables: Tables) -> Riser:
    """On the wall beside the print; else at the side, where no rim is in the way."""
    sand = tables.casting_fact("riser_sand").best
    on_wall = _plain(size, "wall", max(0.0, round_.wall - sand))
    if on_wall.fits:
        return on_wall
    if name == "body":
        return _necked(size, "rim outside", size, round_.wall, tables)
    beside = (round_.gap or 0.0) - 2 * sand
    if beside >= size - MEETS and round_.out > MEETS:
        return _necked(size, "beside", beside, min(round_.wall, round_.out), tables)
    return on_wall


def _by_the_rim(size: Metre, pieces: Sequence[Piece], round_: _Round, tables: Tables) -> Riser:
    """Within the rim where the hub leaves room, else beside its outside."""
    rim = max(pieces, key=lambda p: p.outside)
    thick = min((rim.outside - (rim.inside or round_.hole)) / 2, rim.end - rim.start)
    room = (round_.gap or 0.0) - 2 * tables.casting_fact("riser_sand").best
    place: Place = "rim inside" if size <= room + MEETS else "rim outside"
    return _necked(size, place, room if place == "rim inside" else size, thick, tables)
