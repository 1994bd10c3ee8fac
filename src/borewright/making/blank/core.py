"""Cored, left open for sand to stand in, or solid."""

from __future__ import annotations

from dataclasses import dataclass
from math import floor

from borewright.answer.made_casting import Core, Wheel
from borewright.errors import RefusedInput
from borewright.job.records import Job
from borewright.making.blank.casting_asked import CastingAsked
from borewright.making.shop_sizes import up_to_rule
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True)
class Hole:
    """The hole as cast and why: a core, or `sand` (m) left open in the pattern, or neither."""

    core: Core | None
    sand: Metre
    why: str

    @property
    def size(self) -> Metre:
        """Its diameter (m), 0 where there is none."""
        return self.core.diameter if self.core else self.sand


@dataclass(frozen=True, slots=True)
class _Wish:
    """A core that the bore allows: `room` (m) before it is stepped down to a core box."""

    smallest: Metre
    room: Metre
    size: Metre
    long: Metre


def hole_of(
    job: Job, wheel: Wheel, stock: Metre, long: Metre, asked: CastingAsked, tables: Tables
) -> Hole:
    """The hole of a casting so long (m). RefusedInput for a core that is asked for and cannot be."""
    fact, show = tables.casting_fact, Show(job.units)
    limits = wheel.bore.limits
    smallest = limits.low if limits else wheel.bore.size
    step = fact(f"core_step_{job.units}").best
    room = smallest - 2 * stock
    wish = _Wish(smallest, room, floor(room / step + 1e-6) * step, long)
    if asked.bore == "solid":
        return Hole(None, 0.0, "as asked")
    least = fact("core_least").best
    if asked.bore is None and smallest < least:
        said = f"the bore's smallest, {show.bore(smallest)}, is below {show.length(least)}, and is drilled sooner than cored"
        return Hole(None, 0.0, said)
    if asked.bore is None and _stands_in_sand(wish, job, tables):
        wide = fact("sand_hole_wide").best
        said = f"at {wide:g} times its length or more sand stands in it, and no core is made"
        return Hole(None, wish.size, said)
    reason = _too_thin_or_long(wish, show, tables)
    if reason:
        if asked.bore == "cored":
            raise RefusedInput("--core", "cored", f"solid: {reason}")
        return Hole(None, 0.0, reason)
    return Hole(_core(wish, job, tables), 0.0, _why(wish, asked, show, tables))


def _stands_in_sand(wish: _Wish, job: Job, tables: Tables) -> bool:
    """Whether it is so wide and shallow that the mould's own sand stands in it."""
    if tables.foundry_metal(job.work.material).family == "magnesium":
        return False
    return wish.room >= tables.casting_fact("sand_hole_wide").best * wish.long


def _too_thin_or_long(wish: _Wish, show: Show, tables: Tables) -> str:
    """Why a core cannot be, in words; empty where it can.

    By the room that the bore leaves: stepping down to a core box is not what breaks the rule.
    """
    thin, slender = tables.casting_fact("core_thin").best, tables.casting_fact("core_slender")
    bore = show.bore(wish.smallest)
    if wish.room <= 0.0:
        return f"the stock on both sides takes up the whole of a bore of {bore}"
    if wish.room < thin:
        return (
            f"a core for a bore of {bore} has room to be {show.depth(wish.room)} thick; below {show.length(thin)} it breaks, "
            "burns in or cannot be vented"
        )
    if wish.long > slender.high * wish.room:
        return (
            f"a core for a bore of {bore} has room to be {show.depth(wish.room)} thick, and {show.length(wish.long)} is more than "
            f"{slender.high:g} times that: it sags or breaks"
        )
    return ""


def _core(wish: _Wish, job: Job, tables: Tables) -> Core:
    fact = tables.casting_fact
    prints = max(fact("print_least").best, fact("print_share").best * wish.size)
    return Core(wish.size, up_to_rule(min(prints, fact("print_most").best), job.units), wish.long)


def _why(wish: _Wish, asked: CastingAsked, show: Show, tables: Tables) -> str:
    least, slender = tables.casting_fact("core_least").best, tables.casting_fact("core_slender")
    why = "as asked" if asked.bore else f"a bore of {show.length(least)} or more is worth a core"
    if wish.long <= slender.best * wish.room:
        return why
    return (
        f"{why}; with care: over {slender.best:g} times as long as thick it wants a wire in it, both prints snug, and a metal "
        "that runs in quietly"
    )
