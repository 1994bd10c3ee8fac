"""make set: a list of bores -> how many mandrels, their sizes, order of making, steel to buy."""

from __future__ import annotations

import re
from typing import Any, Final

from borewright.answer.made_set import MandrelSet
from borewright.errors import RefusedInput
from borewright.job.bore_text import bore_size
from borewright.making.mandrel.asked import MandrelAsked
from borewright.making.mandrel.drawn import drawn_mandrel
from borewright.making.mandrel_set.design import SizeAsked, mandrel_set
from borewright.making.mandrel_set.papers import set_papers
from borewright.making.mandrel_set.steel import SteelBar, steel_for
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.service.making.outputs import Made

MANDREL_BORE: Final[Metre] = 0.0005 * 0.0254
"""Either way: what a bore for mandrel work is held to (US Navy NAVEDTRA 14076)."""

MOST_SIZES: Final = 60

SAME: Final[Metre] = 1e-7
"""Bores this alike are one size."""

WIDEST_SHARE: Final = 0.1
"""A band over a tenth of the size was meant otherwise (ours)."""

_CLASS = re.compile(r"[A-Za-z]{1,2}\s*\d{1,2}")


def sizes_asked(
    text: str, code: str | None, band: Metre | None, bare: Any, where: str = "--bores"
) -> tuple[SizeAsked, ...]:
    """The list as typed: sizes, classes or bands, parted by commas.

    A plain size gets the class `code`, else `band` (m, its whole width, about the size), else what
    a bore for mandrel work is held to.

    >>> [round(1e3 * b, 3) for b in sizes_asked("16mm", "H7", None, None)[0].bores]
    [16.0, 16.018]
    """
    names = [part.strip() for part in text.split(",")]
    if not all(names):
        raise RefusedInput(where, "an empty size", "sizes parted by commas, none empty")
    if len(names) > MOST_SIZES:
        raise RefusedInput(
            where, f"{len(names)} sizes", f"1 to {MOST_SIZES} sizes parted by commas"
        )
    if code is not None and not _CLASS.fullmatch(code.strip()):
        raise RefusedInput("--class", repr(code), "a hole class such as H7")
    sizes = tuple(_size(name, code, band, bare, where) for name in names)
    for k, size in enumerate(sizes):
        same = [
            s.name
            for s in sizes[:k]
            if max(abs(a - b) for a, b in zip(s.bores, size.bores, strict=True)) < SAME
        ]
        if same:
            raise RefusedInput(
                where, f"{same[0]} and {size.name}, one size twice", "each size once"
            )
    return sizes


def _size(name: str, code: str | None, band: Metre | None, bare: Any, where: str) -> SizeAsked:
    size, limits = bore_size(name, where, bare)
    if limits is not None:
        return SizeAsked(name, (limits.low, limits.high))
    if code is not None:
        typed = f"{name}{'' if any(c.isalpha() or c == chr(34) for c in name) else (bare or '').replace('inch', 'in')} {code}"
        _, by_code = bore_size(typed, "--class", bare)
        if by_code is None:
            raise RefusedInput("--class", repr(code), "a hole class such as H7")
        return SizeAsked(f"{name} {code}", (by_code.low, by_code.high))
    half = MANDREL_BORE if band is None else band / 2
    if half > WIDEST_SHARE * size / 2:
        show = Show("inch" if bare == "inch" else "mm")
        found, most = show.length(2 * half), show.length(WIDEST_SHARE * size)
        raise RefusedInput("--band", found, f"at most {most}, a tenth of {name}")
    return SizeAsked(name, (size - half, size + half))


def make_set(
    sizes: tuple[SizeAsked, ...], asked: MandrelAsked, bar_length: Metre, tables: Tables
) -> Made:
    """The set with its papers and one drawing for each mandrel.

    >>> from borewright.reference import tables
    >>> made = make_set(sizes_asked("16mm", "H7", None, None), MandrelAsked(), 1.0, tables())
    >>> made.numbers["mandrels"][0]["stamp"]
    '16'
    """
    whole = mandrel_set(sizes, asked, tables)
    steel = steel_for(whole, bar_length, tables)
    done = whole.whole and all(bar.cuts.whole for bar in steel)
    papers = set_papers(whole, steel, bar_length, tables)
    parts = tuple(drawn_mandrel(m, tables) for m in whole.mandrels) if done else ()
    return Made(papers, parts, _numbers(whole, steel, bar_length), (), done)


def _numbers(whole: MandrelSet, steel: tuple[SteelBar, ...], bar_length: Metre) -> dict[str, Any]:
    return {
        "whole": whole.whole and all(bar.cuts.whole for bar in steel),
        "longest_m": whole.longest,
        "grinder": whole.grinder,
        "sizes": [
            {
                "name": size.name,
                "bores_m": {"low": size.bores[0], "high": size.bores[1]},
                "one_takes_m": size.one_takes,
                "mandrels": len(size.mandrels),
                "why_not": size.why,
            }
            for size in whole.sizes
        ],
        "mandrels": [
            {
                "stamp": m.stamp,
                "a_smallest_m": m.form.zone.near_large[0],
                "a_largest_m": m.form.zone.near_large[1],
                "b_smallest_m": m.form.zone.near_small[0],
                "b_largest_m": m.form.zone.near_small[1],
                "overall_length_m": m.form.overall_length,
                "ground_length_m": m.form.ground_length,
                "tailstock_set_over_m": m.settings.set_over,
                "bores_taken_m": None
                if m.takes is None
                else {"low": m.takes[0], "high": m.takes[1]},
                "bar": m.stock.bar.size,
                "bar_length_m": m.stock.bar_length,
            }
            for m in whole.mandrels
        ],
        "bar_length_m": bar_length,
        "steel": [
            {
                "bar": bar.size,
                "steel": bar.steel,
                "diameter_m": bar.diameter,
                "bars": sum(cut.count for cut in bar.cuts.bars),
                "proved": bar.cuts.proved,
                "missing": sum(count for _, count in bar.cuts.missing),
            }
            for bar in steel
        ],
    }
