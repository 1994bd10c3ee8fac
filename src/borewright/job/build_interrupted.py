"""From the checked `keyway`, `cross_hole` and `spokes` of `[work]` to their records."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

from borewright.errors.tree import RefusedInput
from borewright.job.interrupted import CrossHole, Keyway, Spokes
from borewright.job.records import Piece
from borewright.job.typed import Reader, maybe
from borewright.job.web import MEETS, between, on_bore
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

FINEST = 0.2e-3
"""No keyway, hole or spoke is smaller (m; ours)."""

if TYPE_CHECKING:
    from borewright.job.schema import CrossHoleTable, KeywayTable, SpokesTable


def build_keyway(
    table: KeywayTable | None, pieces: Sequence[Piece], bore: Metre, reader: Reader
) -> Keyway | None:
    """The keyway; RefusedInput where it is wider than half of the bore or goes through the hub."""
    if table is None:
        return None
    width = reader.length(table.width, "work.keyway.width")
    depth = reader.length(table.depth, "work.keyway.depth")
    wall = (min(p.outside for p in on_bore(pieces, bore)) - bore) / 2
    if width > bore / 2:
        _refuse(reader, "work.keyway.width", width, "up to half of the bore", bore / 2)
    _not_a_hair(reader, "work.keyway.width", width)
    _not_a_hair(reader, "work.keyway.depth", depth)
    if depth >= wall:
        _refuse(reader, "work.keyway.depth", depth, "from the bore's surface, below the wall", wall)
    return Keyway(width, depth)


def build_cross_hole(
    table: CrossHoleTable | None, pieces: Sequence[Piece], bore: Metre, reader: Reader
) -> CrossHole | None:
    """The cross hole; RefusedInput where it is as wide as the bore or leaves the work at a face."""
    if table is None:
        return None
    diameter = reader.length(table.diameter, "work.cross_hole.diameter")
    at = maybe(reader.length, table.at, "work.cross_hole.at")
    length = max(p.end for p in pieces)
    if diameter >= bore:
        _refuse(reader, "work.cross_hole.diameter", diameter, "below the bore", bore)
    _not_a_hair(reader, "work.cross_hole.diameter", diameter)
    if diameter >= length:
        _refuse(reader, "work.cross_hole.diameter", diameter, "below the length", length)
    if at is not None and not diameter / 2 <= at <= length - diameter / 2:
        band = Show("mm").band(diameter / 2, length - diameter / 2, "length")
        found, allowed = Show("mm").length(at), f"the hole's middle within the work, {band}"
        raise RefusedInput(reader.at("work.cross_hole.at"), found, allowed)
    return CrossHole(diameter, at)


def build_spokes(
    table: SpokesTable | None, pieces: Sequence[Piece], bore: Metre, reader: Reader
) -> Spokes | None:
    """The spokes; RefusedInput where the rings leave no one place for them, or they do not fit."""
    if table is None:
        return None
    place = _place(pieces, bore, reader)
    width = reader.length(table.width, "work.spokes.width")
    _not_a_hair(reader, "work.spokes.width", width)
    thickness = place.end - place.start
    if table.thickness is not None:
        stated = reader.length(table.thickness, "work.spokes.thickness")
        if abs(stated - thickness) > MEETS:
            show = Show("mm")
            found, allowed = show.length(stated), f"that of their ring, {show.length(thickness)}"
            raise RefusedInput(reader.at("work.spokes.thickness"), found, allowed)
        thickness = stated
    room = math.pi * (place.inside or bore) / table.number
    if width >= room:
        _refuse(reader, "work.spokes.width", width, "below each one's share of the hub", room)
    return Spokes(table.number, width, thickness)


def _place(pieces: Sequence[Piece], bore: Metre, reader: Reader) -> Piece:
    """The one ring between hub and rim."""
    found = between(pieces, bore)
    if len(found) == 1:
        return found[0]
    many = "no ring" if not found else f"{len(found)} rings"
    allowed = "spokes that are the one ring between a hub and a rim"
    raise RefusedInput(reader.at("work.spokes"), f"{many} between hub and rim", allowed)


def _not_a_hair(reader: Reader, place: str, size: Metre) -> None:
    """RefusedInput for a size that no tool leaves: a slip of the unit."""
    if size < FINEST:
        allowed = f"a size from {Show('mm').length(FINEST)} up"
        raise RefusedInput(reader.at(place), Show("mm").small(size), allowed)


def _refuse(reader: Reader, place: str, found: Metre, limit: str, size: Metre) -> None:
    show = Show("mm")
    raise RefusedInput(reader.at(place), show.length(found), f"a size {limit}, {show.length(size)}")
