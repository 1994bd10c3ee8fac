"""The papers of something to be made: sheets of words, steps, tables and blanks to fill in.

One record, three ends: printed pages, the terminal and JSON. Words are shown quantities already.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.answer.figure import Caution, Figure


@dataclass(frozen=True, slots=True)
class Said:
    """A few sentences under a heading."""

    heading: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class RouteStep:
    """One step of a route: what is done, how, and what is measured and written down."""

    title: str
    lines: tuple[str, ...] = ()
    blanks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Route:
    """Steps in their order, each with a box to tick."""

    heading: str
    steps: tuple[RouteStep, ...]


@dataclass(frozen=True, slots=True)
class Grid:
    """A table. An empty cell is a blank to be filled in by hand."""

    heading: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Warned:
    """Cautions of the work, worst first."""

    cautions: tuple[Caution, ...]


Block = Said | Route | Grid | Warned


@dataclass(frozen=True, slots=True)
class Sheet:
    """One kind of paper: route, acceptance, cutting list. It begins on a page of its own."""

    title: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Papers:
    """Everything that is handed out for one thing to be made.

    `headline` is the answer in a sentence or two. `figures` are its numbers with rule, inputs and
    sources, printed last as pencil lines.
    """

    title: str
    headline: str
    units: Literal["inch", "mm"]
    sheets: tuple[Sheet, ...]
    figures: tuple[Figure, ...] = ()
