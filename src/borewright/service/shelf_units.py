"""Sizes on a shelf that look typed in one unit and meant in the other."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

INCH: Metre = 0.0254
NAMED = 4
"""As many places as one doubt names."""
SIZES = {
    "mandrel": {
        "nominal": "size",
        "small_end": "small end",
        "large_end": "large end",
        "ground_length": "ground length",
        "overall_length": "overall length",
    },
    "lathe": {
        "swing_over_cross_slide": "swing over cross slide",
        "between_centers": "between centers",
    },
    "press": {
        "daylight": "daylight",
        "throat": "throat",
        "ram_travel": "ram travel",
        "table_slot": "table slot",
    },
    "vice": {"opening": "opening"},
    "dog": {"smallest": "smallest", "largest": "largest"},
    "drill": {"size": "size", "smallest": "smallest", "largest": "largest"},
    "reamer": {"size": "size", "cuts": "cuts"},
    "gauge": {"uncertainty": "uncertainty", "smallest": "smallest", "largest": "largest"},
}
"""Fields of the records by tool, and what the table shelf_sizes calls them."""


def unit_doubts(
    kind: str, entries: Sequence[Any], labels: Sequence[str], tables: Tables, show: Show
) -> list[tuple[str, str]]:
    """(of what, why) for each size of a tool that the other unit would bring into its range.

    >>> from borewright.job.records import MandrelNote
    >>> from borewright.reference.library import tables
    >>> notes = [MandrelNote(0.0127), MandrelNote(0.32258)]
    >>> unit_doubts("mandrel", notes, ["line 2", "line 3"], tables(), Show("inch"))[0][1]
    '1 of 2 looks like mm read as inches: line 3 (12.7000 in (322.580 mm))'
    """
    said = []
    for field, name in SIZES[kind].items():
        stated = [
            (label, getattr(entry, field)) for label, entry in zip(labels, entries, strict=True)
        ]
        stated = [(label, value) for label, value in stated if value is not None]
        for way, slips in _slips(f"{kind} {name}", stated, tables).items():
            said.append((f"{name} of {kind}", _words(way, slips, len(stated), show)))
        said += _strange(kind, name, stated, tables, show)
    return said


FAR = 3.0
"""A size this many times beyond what is usual is doubted, though no unit slip explains it (ours)."""


def _strange(
    kind: str, name: str, stated: list[tuple[str, Metre]], tables: Tables, show: Show
) -> list[tuple[str, str]]:
    """Sizes far from anything usual, in either unit."""
    found = tables.table("shelf_sizes").row(f"{kind} {name}")
    low, high = found.number("smallest"), found.number("largest")
    usual = show.band(low, high, "length")
    return [
        (label, f"{name} {show.length(value)} is far from the usual {usual}")
        for label, value in stated
        if not slip_of(abs(value), low, high) and not low / FAR <= abs(value) <= FAR * high
    ]


def _slips(
    row: str, stated: list[tuple[str, Metre]], tables: Tables
) -> dict[str, list[tuple[str, Metre]]]:
    found = tables.table("shelf_sizes").row(row)
    low, high = found.number("smallest"), found.number("largest")
    slips: dict[str, list[tuple[str, Metre]]] = {}
    for label, value in stated:
        way = slip_of(abs(value), low, high)
        if way:
            slips.setdefault(way, []).append((label, value))
    return slips


def slip_of(value: Metre, low: Metre, high: Metre) -> str:
    """How a size outside a range was probably typed; empty where the other unit is no better.

    >>> slip_of(12.7 * 0.0254, 0.002, 0.08), slip_of(0.000625, 0.002, 0.08), slip_of(0.02, 0.002, 0.08)
    ('mm read as inches', 'inches read as mm', '')
    """
    if value > high and low <= value / (INCH / 1e-3) <= high:
        return "mm read as inches"
    if 0 < value < low and low <= value * (INCH / 1e-3) <= high:
        return "inches read as mm"
    return ""


def _words(way: str, slips: list[tuple[str, Metre]], stated: int, show: Show) -> str:
    named = ", ".join(f"{label} ({show.bore(value)})" for label, value in slips[:NAMED])
    more = f" and {len(slips) - NAMED} more" if len(slips) > NAMED else ""
    verb = "looks" if len(slips) == 1 else "look"
    return f"{len(slips)} of {stated} {verb} like {way}: {named}{more}"
