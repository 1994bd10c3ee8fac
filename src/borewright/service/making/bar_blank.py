"""make blank --by bar: the blanks of a batch from bar, with the cutting list."""

from __future__ import annotations

import re
from typing import Any, Final, Literal

from borewright.answer.made_bar import BarBlanks
from borewright.errors import RefusedInput
from borewright.job.records import Job
from borewright.making.bars.bar_blanks import BarAsked, Bars, bar_blanks
from borewright.making.bars.bar_papers import bar_papers, drawn_bar_blank
from borewright.quantities.read import read_length
from borewright.reference.library import Tables
from borewright.service.making.outputs import Made

MOST_BARS: Final = 200
_TIMES = re.compile(r"(\d{1,4})\s*[x×]\s*(.+)")


def make_bar(job: Job, asked: BarAsked, tables: Tables) -> Made:
    """The blanks with their papers; not done where the bars stated do not give them all."""
    made = bar_blanks(job, asked, tables)
    parts = (drawn_bar_blank(made),) if made.whole else ()
    return Made(bar_papers(made, tables), parts, _numbers(made), (), made.whole)


def bars_typed(text: str, bare: Literal["inch", "mm"] | None, where: str = "--bars") -> Bars:
    """Bars that are there, as typed: `3m, 2 x 600mm`.

    >>> [(name, count) for name, _, count in bars_typed("3m, 2 x 600mm", None)]
    [('3m', 1), ('600mm', 2)]
    """
    entries = [part.strip() for part in text.split(",")]
    found = []
    for entry in entries:
        times = _TIMES.fullmatch(entry)
        count, size = (int(times[1]), times[2].strip()) if times else (1, entry)
        if not 1 <= count <= MOST_BARS:
            raise RefusedInput(where, repr(entry), f"1 to {MOST_BARS} bars of a length")
        found.append((size, read_length(size, where, bare=bare), count))
    if sum(count for _, _, count in found) > MOST_BARS:
        raise RefusedInput(where, f"{len(entries)} entries", f"at most {MOST_BARS} bars")
    return tuple(found)


def _numbers(made: BarBlanks) -> dict[str, Any]:
    return {
        "by": "bar",
        "whole": made.whole,
        "quantity": made.quantity,
        "missing": made.missing,
        "finished_outside_m": made.outside,
        "finished_length_m": made.length,
        "bar": made.bar_size,
        "bar_diameter_m": made.bar,
        "cut": made.cut,
        "piece_length_m": made.piece,
        "kerf_m": made.kerf,
        "bar_end_m": made.end,
        "order_m": made.order,
        "order_kg": made.mass,
        "proved": made.proved,
        "bars": [
            {
                "name": lot.name,
                "length_m": lot.length,
                "bars": lot.count,
                "pieces_from_each": lot.pieces,
                "left_of_each_m": lot.left,
            }
            for lot in made.lots
        ],
    }
