"""The cuts on a hold with one of the faces towards the headstock: which way each then pushes."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from borewright.answer.records import Cut
from borewright.cutting.directions import LOOSENS, TIGHTENS
from borewright.job.finished_edges import walls_of
from borewright.job.records import Work


def led(cuts: Iterable[Cut], work: Work, leading: str) -> tuple[Cut, ...]:
    """Edges on the side of the `leading` face, A or B, loosen the seat; so does a step that a tool
    enters from that side only, because a shoulder walls it off from the tailstock.

    >>> from borewright.job.records import Bore, Piece
    >>> led((), Work("steel", (Piece(0, 0.03, 0.05),), Bore(0.02)), "A")
    ()
    """
    return tuple(_led(cut, work, leading) for cut in cuts)


def _led(cut: Cut, work: Work, leading: str) -> Cut:
    if cut.kind == "edge":
        own = cut.id.endswith(f"-{leading.lower()}")
        return replace(cut, seat_effect=LOOSENS if own else TIGHTENS)
    if cut.kind == "turn" and cut.span is not None and _from_the_head(cut, work, leading):
        return replace(cut, seat_effect=LOOSENS, direction=AWAY)
    return cut


AWAY = "away from the headstock"


def _from_the_head(cut: Cut, work: Work, leading: str) -> bool:
    """Whether a step is open towards the headstock and walled off towards the tailstock."""
    assert cut.span is not None
    at_a, at_b = walls_of(work, *cut.span)
    head, tail = (at_a, at_b) if leading == "A" else (at_b, at_a)
    return tail and not head
