"""The cautions of an operation and of a material, as a block of the papers."""

from __future__ import annotations

from borewright.answer.figure import Caution
from borewright.answer.papers import Warned
from borewright.reference.library import Tables


def cautioned(tables: Tables, *tags: str, material: str = "") -> Warned:
    """Those that apply, worst first.

    >>> from borewright.reference import tables
    >>> cautioned(tables(), "chuck").cautions[0].id
    'local-codes'
    """
    called = tables.cautions(*tags, material=material)
    return Warned(tuple(Caution(h.id, h.text, h.source) for h in called))
