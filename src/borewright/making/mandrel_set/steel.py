"""The steel to buy for a set: every bar size, and what is cut from which bar."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from borewright.answer.made_set import MandrelSet
from borewright.making.bars.cutting_list import CutList, cut_list
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True)
class SteelBar:
    """One size of bar of one steel, and how it is cut."""

    steel: str
    size: str
    diameter: Metre
    cuts: CutList


def steel_for(whole: MandrelSet, bar_length: Metre, tables: Tables) -> tuple[SteelBar, ...]:
    """Every bar size with its cutting list, thickest first."""
    kerf, end = tables.making_fact("kerf").best, tables.making_fact("bar_end").best
    return tuple(
        SteelBar(
            steel,
            size,
            diameter,
            cut_list(pieces, [(size, bar_length, None)], kerf, end),
        )
        for (steel, size, diameter), pieces in sorted(
            _pieces(whole), key=lambda entry: (-entry[0][2], entry[0][0])
        )
    )


Bar = tuple[str, str, Metre]


def _pieces(whole: MandrelSet) -> Iterator[tuple[Bar, list[tuple[str, Metre, int]]]]:
    found: dict[Bar, list[tuple[str, Metre, int]]] = {}
    for made in whole.mandrels:
        bar = made.stock.bar
        key = made.stock.steel.name, bar.size, bar.diameter
        found.setdefault(key, []).append((made.stamp, made.stock.bar_length, 1))
    yield from found.items()
