"""How many mandrels a size needs, and which bores each of them takes.

One mandrel takes a band of bores that grows with its length; the lathe, and how thin it may be for
its length, say how long. As few as that allows share the band of the size evenly.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import ceil
from typing import Final

from borewright.answer.made_mandrel import MadeMandrel
from borewright.answer.made_set import MandrelSet, SetSize
from borewright.errors import OutsideModel
from borewright.making.mandrel.asked import MandrelAsked
from borewright.making.mandrel.design import made_mandrel
from borewright.making.mandrel.form import longest_of, row_for
from borewright.mechanics.mandrel_zone import Band
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

MOST: Final = 12
"""More of one size than this is not a set but a wrong tolerance (ours)."""


@dataclass(frozen=True, slots=True)
class SizeAsked:
    """A size of the list as typed, with its smallest and largest bore (m)."""

    name: str
    bores: Band


def mandrel_set(sizes: tuple[SizeAsked, ...], asked: MandrelAsked, tables: Tables) -> MandrelSet:
    """The set; `asked` says what all of them share: length of bore, travel, steel, grinder, lathe."""
    return MandrelSet(
        asked.units,
        tuple(_size(size, asked, tables) for size in sizes),
        longest_of(asked, tables),
        asked.grinder,
    )


def _size(size: SizeAsked, asked: MandrelAsked, tables: Tables) -> SetSize:
    limited = replace(asked, longest=_longest(size, asked, tables))
    for count in range(1, MOST + 1):
        made = _shared(size, count, limited, tables)
        if made and all(m.fits for m in made):
            return SetSize(size.name, size.bores, _one_takes(made), _named(made))
    show = Show(asked.units)
    why = made[0].why if made else "no mandrel of this size can be made."
    band = show.small(size.bores[1] - size.bores[0])
    return SetSize(
        size.name, size.bores, 0.0, (), f"a band of {band} asks for more than {MOST}: {why}"
    )


def _longest(size: SizeAsked, asked: MandrelAsked, tables: Tables) -> Metre:
    """What the lathe allows, and how long one this thick may be; never shorter than the chart's."""
    row = row_for(sum(size.bores) / 2, tables, asked.units)
    stiff = tables.making_fact("long_and_thin").high * row.nominal
    lathe = longest_of(asked, tables)
    return min(lathe, max(stiff, row.overall_length, asked.overall_length or 0.0))


def _shared(
    size: SizeAsked, count: int, asked: MandrelAsked, tables: Tables
) -> tuple[MadeMandrel, ...]:
    """The mandrels where `count` of them share the band; none where one cannot be drawn."""
    low, high = size.bores
    step = (high - low) / count
    try:
        return tuple(
            made_mandrel(
                replace(asked, nominal=None, bores=(low + k * step, low + (k + 1) * step)), tables
            )
            for k in range(count)
        )
    except OutsideModel:
        return ()


def _one_takes(made: tuple[MadeMandrel, ...]) -> Metre:
    return min(m.takes[1] - m.takes[0] for m in made if m.takes)


def _named(made: tuple[MadeMandrel, ...]) -> tuple[MadeMandrel, ...]:
    """Stamped with their number where several share a size."""
    if len(made) == 1:
        return made
    return tuple(replace(m, stamp=f"{made[0].stamp}-{k}") for k, m in enumerate(made, 1))


def least_count(band: Metre, one_takes: Metre) -> int:
    """How many mandrels that each take a band this wide (m) share a wider one.

    >>> least_count(18e-6, 20e-6), least_count(43e-6, 20e-6)
    (1, 3)
    """
    return max(1, ceil(band / one_takes - 1e-9))


def making_order(whole: MandrelSet) -> tuple[MadeMandrel, ...]:
    """Largest first: one that came out under size is bar for the next smaller.

    Those of one length stand together, because one set-over serves them.
    """
    return tuple(
        sorted(
            whole.mandrels,
            key=lambda m: (
                (-round(m.form.overall_length, 6), -m.form.large_end)
                if not whole.grinder
                else (0.0, -m.form.large_end)
            ),
        )
    )
