"""Every way out for what is wrong, in one order."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import isnan

from borewright.answer.records import Verdict
from borewright.answer.rescue import WayOut
from borewright.planning.rescue.accept_or_scrap import accept, scrap
from borewright.planning.rescue.bush import bonded_bush, bush
from borewright.planning.rescue.case import (
    CRACKED,
    FORMS,
    OF_THE_BORE,
    OUT_OF_SQUARE,
    SCORED,
    Case,
)
from borewright.planning.rescue.held_out import (
    SET_TRUE,
    bonded,
    expanding,
    fresh_stub,
    otherwise,
    set_true,
)
from borewright.planning.rescue.mend import dress_mandrel, polish
from borewright.planning.rescue.other_mandrel import other_mandrel
from borewright.planning.rescue.parted import FREE_IT, LOOK, NOT_ON_A_DOUBT, free_it, look
from borewright.planning.rescue.reaming import next_reamer, to_size
from borewright.planning.rescue.wanted import Whose

RANKED_BY = (
    "what stops the job first (a doubt, work that slipped); then what can be done with what is here or made here, then what "
    "must be bought for, then what is a no; then, where the drawing's limits were stated, whether they still hold: yes, ask, no; "
    "then risk: yes before with care; then whether the drawing holds; then time; then name; giving the piece up is always last"
)
"""The order of the ways out, in words; printed with them."""

HOLDING: tuple[Callable[[Case], WayOut], ...] = (
    other_mandrel,
    fresh_stub,
    expanding,
    bonded,
    set_true,
    otherwise,
)
"""Ways that hold the bore as it is."""

CUTTING: tuple[Callable[[Case], WayOut], ...] = (next_reamer, bush, bonded_bush)
"""Ways that change the bore."""

CURED_BY_SIZE = ("too-big", "too-small", *FORMS, OUT_OF_SQUARE, SCORED)
"""What taking the bore out to its size cures, or, being too big already, does not."""

MENDING: tuple[Callable[[Case], WayOut | None], ...] = (free_it, dress_mandrel, polish, look)
"""Ways that only some troubles ask for."""


def ways_out(case: Case) -> tuple[WayOut, ...]:
    """All of them, best first."""
    held = tuple(way(case) for way in HOLDING)
    cut = tuple(way(case) for way in CUTTING) if case.has(*OF_THE_BORE) else ()
    sized = (to_size(case),) if case.has(*CURED_BY_SIZE) else ()
    mended = tuple(found for way in MENDING if (found := way(case)) is not None)
    as_it_is = tuple(w for w in held if not (w.id == SET_TRUE and case.worn_oval))
    every = (accept(case, as_it_is), *held, *sized, *cut, *mended, scrap(case))
    if case.has(CRACKED):
        every = tuple(map(_not_on_a_doubt, every))
    limits = case.wanted.whose is Whose.DRAWING
    return tuple(sorted(every, key=lambda way: _key(way, limits=limits)))


def _not_on_a_doubt(way: WayOut) -> WayOut:
    """With a crack suspected nothing is done but looking, or giving it up."""
    if way.id == LOOK or way.last:
        return way
    bare = replace(way, needs=(), figures=(), steps=(), cautions=())
    return replace(bare, verdict=Verdict.NO, reason=NOT_ON_A_DOUBT)


def _key(way: WayOut, *, limits: bool) -> tuple[bool, bool, bool, bool, int, int, int, float, str]:
    time = 1e9 if isnan(way.takes.best) else round(way.takes.best)
    first, no = way.id in (LOOK, FREE_IT), way.verdict is Verdict.NO
    drawing = way.drawing.rank
    asked, risk = (drawing if limits else 0), way.verdict.rank
    return way.last, not first, no, way.bought, asked, risk, drawing, time, way.id


def keeps(way: WayOut) -> bool:
    """Whether a way keeps the piece: looking for a crack keeps nothing yet."""
    return not way.last and way.id != LOOK


def best_of(ways: tuple[WayOut, ...]) -> WayOut | None:
    """The best that keeps the piece; None where none does."""
    return next((w for w in ways if keeps(w) and w.verdict is not Verdict.NO), None)
