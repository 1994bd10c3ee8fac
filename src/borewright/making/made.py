"""What comes of making something: an answer, its papers, its drawings, its numbers."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.answer.drawn_part import DrawnPart
from borewright.answer.figure import Assumption, Caution
from borewright.answer.papers import Papers, Warned
from borewright.reference.library import Tables

Answer = Literal["yes", "with care", "no"]
Numbers = dict[str, float | int | str]


@dataclass(frozen=True, slots=True)
class Cannot:
    """Why a thing is not made this way, and what does it instead: two sentences."""

    reason: str
    instead: str


@dataclass(frozen=True, slots=True)
class Made:
    """One thing to be made. `reason` says why with care or no; `numbers` are SI, unit in the key."""

    verdict: Answer
    reason: str
    papers: Papers
    parts: tuple[DrawnPart, ...]
    numbers: Numbers
    assumed: tuple[Assumption, ...] = ()

    def as_dict(self) -> dict[str, object]:
        """As JSON: one flat object of plain numbers and words, `assumed` apart."""
        return {
            "verdict": self.verdict,
            "reason": self.reason,
            **self.numbers,
            "assumed": [
                {"what": a.what, "taken": a.taken, "source": a.source} for a in self.assumed
            ],
        }


def not_made(
    title: str, cannot: Cannot, units: Literal["inch", "mm"], assumed: tuple[Assumption, ...]
) -> Made:
    """The answer no: nothing to draw, a headline that says why and what else."""
    papers = Papers(title, f"{cannot.reason} {cannot.instead}", units, ())
    return Made("no", f"{cannot.reason} {cannot.instead}", papers, (), {}, assumed)


def warned(tables: Tables, *tags: str, material: str = "") -> Warned:
    """The cautions of an operation and of a material, worst first."""
    called = tables.cautions(*tags, material=material)
    return Warned(tuple(Caution(h.id, h.text, h.source) for h in called))
