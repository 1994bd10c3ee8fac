"""Blanks of a batch from bar: the next size sold, the length of a piece, the cutting list."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from typing import Literal

from borewright.answer.made_bar import BarBlanks, BarLot, Cut
from borewright.errors import OutsideModel, RefusedInput
from borewright.job.records import Job
from borewright.making.bars.cutting_list import CutList, cut_list
from borewright.making.shop_sizes import up_to_rule
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

Bars = tuple[tuple[str, Metre, int | None], ...]


@dataclass(frozen=True, slots=True)
class BarAsked:
    """What is stated beside the job; None is left to the tables.

    `bars`: what is there (name, length, how many; None for any number), empty for bars as bought.
    """

    bar: Metre | None = None
    cut: Cut | None = None
    bars: Bars = ()


def bar_blanks(job: Job, asked: BarAsked, tables: Tables) -> BarBlanks:
    """The blanks. RefusedInput for a bar too thin or too thick to be parted; OutsideModel for none.

    >>> from borewright.job import parse_job
    >>> from borewright.reference import tables
    >>> text = 'units="mm"\\nwork={material="steel-1018", bore=16, outside=63, length=20, quantity=7}'
    >>> made = bar_blanks(parse_job(text, "job.toml"), BarAsked(), tables())
    >>> made.bar_size, round(made.piece * 1e3, 1), made.whole
    ('65 mm', 22.3, True)
    """
    work, units = job.work, job.units
    outside = work.finished.outside or work.outside
    length = work.finished.form.length or work.length
    size, bar = _bar(outside, asked, units, tables)
    cut = asked.cut or _usual_cut(bar, tables)
    kerf, end = _losses(bar, cut, units, tables)
    piece = _piece(length, bar, cut, units, tables)
    bars = asked.bars or (("bar as bought", tables.bar_fact(f"bar_{units}").best, None),)
    found = cut_list([("blank", piece, work.quantity)], list(bars), kerf, end)
    order = work.quantity * (piece + kerf) + end
    density = tables.material_range(work.material, "density").best
    return BarBlanks(
        job.title,
        work.material,
        units,
        work.quantity,
        outside,
        length,
        size,
        bar,
        cut,
        piece,
        kerf,
        end,
        up_to_rule(order, units),
        _lots(found),
        sum(count for _, count in found.missing),
        found.proved,
        density * pi / 4 * bar**2 * order,
        _notes(outside, bar, cut, units, tables),
    )


def _bar(
    outside: Metre, asked: BarAsked, units: Literal["inch", "mm"], tables: Tables
) -> tuple[str, Metre]:
    over = tables.bar_fact("over_outside")
    if asked.bar is None:
        bar = tables.bar_for(outside + over.best, units)
        return bar.size, bar.diameter
    show = Show(units)
    if asked.bar < outside + over.low - 1e-9:
        found, least = show.length(asked.bar), show.length(outside + over.low)
        raise RefusedInput(
            "bar size", found, f"at least {least}, for {show.length(outside)} turned"
        )
    return show.length(asked.bar).partition(" (")[0], asked.bar


def _usual_cut(bar: Metre, tables: Tables) -> Cut:
    return "parted" if bar <= tables.bar_fact("parting_thickest").best + 1e-9 else "sawn"


def _losses(
    bar: Metre, cut: Cut, units: Literal["inch", "mm"], tables: Tables
) -> tuple[Metre, Metre]:
    """Width of a cut, and what stays in saw or chuck."""
    fact = tables.bar_fact
    if cut == "sawn":
        return fact("saw_kerf").best, fact("saw_end").best
    if bar > fact("parting_thickest").high:
        show = Show(units)
        allowed = f"sawn, or at most {show.length(fact('parting_thickest').high)}"
        raise RefusedInput("parted off", show.length(bar), allowed)
    wide = max(fact("parting_least").best, fact("parting_share").best * bar)
    grip = max(
        tables.holding_fact("bar_grip_share").best * bar,
        tables.holding_fact("bar_grip_least").best,
    )
    return min(wide, fact("parting_widest").best), grip


def _piece(
    length: Metre, bar: Metre, cut: Cut, units: Literal["inch", "mm"], tables: Tables
) -> Metre:
    """Length of a piece as it is cut: both faces, and what the saw runs off."""
    fact = tables.bar_fact
    skew = fact("saw_skew").best * bar if cut == "sawn" else 0.0
    return up_to_rule(length + 2 * fact("face_stock").best + skew, units)


def _over_the_next(outside: Metre, bar: Metre, units: Literal["inch", "mm"], tables: Tables) -> str:
    """A remark where a thinner size that is sold would do; empty where none is, or none so thin."""
    try:
        usual = tables.bar_for(outside + tables.bar_fact("over_outside").best, units)
    except OutsideModel:
        return ""
    if bar <= usual.diameter + 1e-9:
        return ""
    return (
        f"{usual.size} bar would do; this one is {Show(units).depth(bar - usual.diameter)} thicker."
    )


def _lots(found: CutList) -> tuple[BarLot, ...]:
    return tuple(
        BarLot(bar.name, bar.length, bar.count, sum(n for _, n in bar.pieces), bar.left)
        for bar in found.bars
    )


def _notes(
    outside: Metre, bar: Metre, cut: Cut, units: Literal["inch", "mm"], tables: Tables
) -> tuple[str, ...]:
    said, show = [], Show(units)
    over = _over_the_next(outside, bar, units, tables)
    if over:
        said.append(over)
    if bar - outside > 0.2 * outside:
        off = show.depth((bar - outside) / 2)
        said.append(
            f"{off} on a side goes into chips: ask for a size between, or a ring cut from plate."
        )
    if cut == "parted":
        said.append(
            "A bar thicker than the hole through the spindle is sawn into lengths that the chuck holds "
            "before anything is parted; each length costs an end of its own."
        )
    return tuple(said)
