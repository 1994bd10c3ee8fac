"""How many mandrels a size needs, and which bores each of them takes.

One mandrel takes a band of bores that grows with its length; the lathe, and how thin it may be for
its length, say how long. As few as that allows share the band of the size evenly.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

from borewright.answer.made_mandrel import MadeMandrel
from borewright.answer.made_set import MandrelSet, SetSize
from borewright.errors import OutsideModel
from borewright.making.mandrel.asked import MandrelAsked
from borewright.making.mandrel.design import SEVERAL, made_mandrel
from borewright.making.mandrel.form import longest_of, row_for
from borewright.mechanics.mandrel_zone import Band
from borewright.quantities.show import Show, inch_number
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
    made = tuple(_size(size, asked, tables) for size in sizes)
    return MandrelSet(asked.units, _told_apart(made), longest_of(asked, tables), asked.grinder)


def _size(size: SizeAsked, asked: MandrelAsked, tables: Tables) -> SetSize:
    limited = replace(asked, longest=_longest(size, asked, tables))
    why = ""
    for count in range(1, MOST + 1):
        made = _shared(size, count, limited, tables)
        if made and all(m.fits for m in made):
            return SetSize(size.name, size.bores, _one_takes(made), _named(made))
        reasons = [m.why for m in made if not m.fits]
        why = reasons[0] if reasons else why
    return SetSize(size.name, size.bores, 0.0, (), _why_none(size, limited, why, tables))


def _why_none(size: SizeAsked, asked: MandrelAsked, why: str, tables: Tables) -> str:
    """Why not even many of them share the band, without the advice to make a set of them."""
    show = Show(asked.units)
    said = why.replace(SEVERAL, "").strip() or "no taper that can be made here is long enough."
    thin = ""
    if (
        asked.longest is not None
        and asked.longest < longest_of(replace(asked, longest=None), tables) - 1e-9
    ):
        thin = f" Longer than {show.length(asked.longest)} it would be too thin for its length, or for the lathe."
    band = show.small(size.bores[1] - size.bores[0])
    return f"not even {MOST} of them share a band of {band}. {said}{thin}"


def _told_apart(sizes: tuple[SetSize, ...]) -> tuple[SetSize, ...]:
    """Stamps that tell each mandrel: where two sizes have one name, both get their bore's own size."""
    names = [m.stamp for size in sizes for m in size.mandrels]
    twice = {name for name in names if names.count(name) > 1}
    return tuple(
        replace(size, mandrels=tuple(_by_bore(m) if m.stamp in twice else m for m in size.mandrels))
        for size in sizes
    )


def _by_bore(made: MadeMandrel) -> MadeMandrel:
    middle = sum(made.wanted) / 2 if made.wanted else made.form.nominal
    said = f"{inch_number(middle):.4f}" if made.units == "inch" else f"{1000 * middle:.3f}"
    return replace(made, stamp=said)


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
