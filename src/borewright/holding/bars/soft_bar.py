"""A soft bar between its own centers: what all its kinds need, how it is centered and drawn."""

from __future__ import annotations

from borewright.answer.held import HEAD_FACE, OUTSIDE, TAIL_FACE, line
from borewright.answer.held_picture import HeldNote, HeldPicture, HeldRing, Role
from borewright.answer.records import Need, Step
from borewright.holding.bars.between_centers import centers_picture, span_of
from borewright.holding.owned import bar_at_least, made, needed
from borewright.holding.part import Part
from borewright.quantities.si import Metre

WAY = "soft-mandrel"
"""Id of the way."""

ALL_ROUND = (OUTSIDE, TAIL_FACE, HEAD_FACE)


def bar_needs(
    part: Part, made_here: str, fact: str, *tools: str, drawn: Metre | None = None
) -> tuple[Need, ...]:
    """Bar, dog, center, indicator and `tools`; `drawn`: size (m) of a bar that is used as it is."""
    job, tables = part.job, part.tables
    usual = ("dog", "tail-center", "indicator", *tools)
    bar = (
        bar_at_least(job, tables, part.bore, "soft bar")
        if drawn is None
        else needed(job, tables, "bar-stock", drawn, f"{part.show.length(drawn)} drawn bar")
    )
    return (
        bar,
        *(needed(job, tables, tool) for tool in usual),
        made(made_here, tables.holding_fact(fact).best),
    )


def centered(part: Part) -> Step:
    span = part.show.length(span_of(part, part.length))
    return line(
        "Center the bar",
        f"Soft bar {span} long or a little more, both ends faced and center drilled, a flat filed for the dog at one end: it "
        "always goes the same way round. Between centers, oiled.",
    )


def bar_picture(part: Part, across: Metre, said: str) -> HeldPicture:
    span = span_of(part, part.length)
    return centers_picture(
        part,
        "A",
        span,
        (HeldRing(Role.MANDREL, 0.0, span, across / 2),),
        (HeldNote(Role.MANDREL, said), HeldNote(Role.DOG, "dog on a flat")),
        across / 2,
    )
