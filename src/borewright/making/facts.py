"""Figures of making by name, one short word at the place where they are used."""

from __future__ import annotations

from collections.abc import Callable

from borewright.reference.library import Tables


def best_of(tables: Tables, table: str) -> Callable[[str], float]:
    """The best value of a row of a table of ranges, by its id.

    >>> from borewright.reference import tables
    >>> best_of(tables(), "stub_facts")("slits_few")
    4.0
    """
    return lambda name: tables.ranged(table, name).best
