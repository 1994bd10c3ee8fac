"""Which shrinkage is taken: the shop's own figure, its first casting, or the middle of the books."""

from __future__ import annotations

from borewright.answer.made_casting import Shrink
from borewright.errors import OutsideModel, RefusedInput
from borewright.making.blank.casting_asked import CastingAsked
from borewright.mechanics.cast_metal import shrinkage_measured
from borewright.reference.library import Tables

MOST = 0.05
"""No metal cast in sand shrinks a twentieth: such a figure was meant otherwise."""


def shrink_of(material: str, asked: CastingAsked, tables: Tables) -> Shrink:
    """The shrinkage of a material. RefusedInput where two are stated, or one no metal has.

    >>> from borewright.reference import tables
    >>> found = shrink_of("al-scrap-cast", CastingAsked(), tables())
    >>> found.taken, round(found.low * 12, 5), round(found.high * 12, 5)
    (0.015625, 0.15625, 0.21875)
    """
    said = tables.shrinkages(material)
    low, high = said[0].shrinkage, said[-1].shrinkage
    if asked.shrinkage is not None and asked.measured is not None:
        raise RefusedInput("--shrinkage", "a figure beside a first casting", "one of the two")
    if asked.shrinkage is not None:
        return Shrink(_allowed(asked.shrinkage, "--shrinkage"), low, high, "own figure", "")
    if asked.measured is not None:
        try:
            own = shrinkage_measured(*asked.measured)
        except OutsideModel as outside:
            found = f"{outside.quantity} {outside.value}"
            raise RefusedInput("--pattern-measured", found, outside.allowed) from None
        return Shrink(_allowed(own, "--pattern-measured"), low, high, "first casting", "")
    if low == high:
        return Shrink(low, low, high, "books", said[0].source)
    return Shrink(round((low + high) / 2, 12), low, high, "middle of the books", "ours")


def _allowed(shrinkage: float, where: str) -> float:
    if not 0.0 <= shrinkage <= MOST:
        raise RefusedInput(where, f"{shrinkage:.2%}", f"0 to {MOST:.0%}")
    return shrinkage
