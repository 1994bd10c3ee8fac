"""What the readings of a bore show: its ends, and how far it is oval, tapered or bell-mouthed."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

from borewright.answer.rescue import FoundTrouble
from borewright.holding.bores.bore_shape import bore_shape, out_of_round
from borewright.job.records import Bore
from borewright.planning.rescue.wanted import Wanted, Whose
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

MOST_UNSEEN = 25e-6
"""Two readings further apart than this (m) differ, whatever read them: one gauge repeats better
than it measures (ours)."""


@dataclass(frozen=True, slots=True)
class AsFound:
    """Least and largest size read; how far it is out (m), 0 where no reading shows it.

    `oval`: two directions at one depth; `taper`: between the ends; `bell`: an end over the middle;
    `barrel`: the middle over the wider end.
    """

    least: Metre
    largest: Metre
    oval: Metre = 0.0
    taper: Metre = 0.0
    bell: Metre = 0.0
    barrel: Metre = 0.0


def as_found(bore: Bore, half_band: Metre) -> AsFound:
    """What the readings show beyond what the gauge, known to half a band (m), can make of nothing.

    >>> from borewright.job.records import BoreReading
    >>> sizes = ((0.0, 0.01603), (0.012, 0.016), (0.025, 0.01602))
    >>> found = as_found(Bore(0.016, readings=tuple(BoreReading(*r) for r in sizes)), 5e-6)
    >>> round(found.bell * 1e6), found.taper, found.oval
    (30, 0.0, 0.0)
    """
    sizes = [bore.size, *(r.size for r in bore.readings)]
    seen = min(sqrt(2) * half_band, MOST_UNSEEN)
    round_out = out_of_round(bore)
    taper, bell, barrel = _along(bore, seen)
    oval = round_out if round_out > seen else 0.0
    return AsFound(min(sizes), max(sizes), oval, taper, bell, barrel)


def _along(bore: Bore, seen: Metre) -> tuple[Metre, Metre, Metre]:
    """Taper, bell and barrel (m): an end stands over the middle and the other end not under it, or
    the middle stands over both ends."""
    sizes = bore_shape(bore, 0.0, "A").sizes
    near, far, middle = float(sizes[0]), float(sizes[-1]), float(sizes[1:-1].min(initial=1e9))
    hollow = float(sizes[1:-1].max(initial=0.0)) - max(near, far)
    barrel = hollow if hollow > seen else 0.0
    belled = max(near, far) - middle
    if len(sizes) > 2 and belled > seen and min(near, far) > middle - seen:
        return 0.0, belled, barrel
    return abs(near - far) if abs(near - far) > seen else 0.0, 0.0, barrel


def troubles_of(
    found: AsFound, wanted: Wanted, said: tuple[str, ...], show: Show, tables: Tables
) -> tuple[FoundTrouble, ...]:
    """What was said and what the readings show, the one that matters most first."""
    shown = _shown(found, wanted, show)
    all_of = {tables.trouble(word).id: False for word in said} | dict.fromkeys(shown, True)
    rows = sorted((tables.trouble(name) for name in all_of), key=lambda t: t.order)
    return tuple(
        FoundTrouble(row.id, f"{row.found}{shown.get(row.id, '')}", all_of[row.id]) for row in rows
    )


def _shown(found: AsFound, wanted: Wanted, show: Show) -> dict[str, str]:
    """Each trouble that the readings show, with by how much."""
    top = found.least if wanted.whose is Whose.MANDREL else found.largest
    out = {
        "too-big": (top - wanted.high, f": {show.bore(top)}, "),
        "too-small": (wanted.low - found.least, f": {show.bore(found.least)}, "),
    }
    shown = {
        name: f"{at}{show.small(by)} {'over' if name == 'too-big' else 'under'} {wanted.said}"
        for name, (by, at) in out.items()
        if by > 0
    }
    forms = {
        "oval": found.oval,
        "tapered": found.taper,
        "bell-mouthed": found.bell,
        "barrelled": found.barrel,
    }
    return shown | {name: f" by {show.small(by)}" for name, by in forms.items() if by > 0}
