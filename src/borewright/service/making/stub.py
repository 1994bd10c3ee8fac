"""make stub: a stub turned in the chuck to one bore, plain or expanding, with its papers."""

from __future__ import annotations

from typing import Any

from borewright.answer.drawn_part import DrawnPart
from borewright.answer.figure import Assumption
from borewright.answer.papers import Papers
from borewright.holding.bars.stub import Stub
from borewright.holding.no_middle import no_middle
from borewright.holding.part import Part
from borewright.making.cannot import Cannot
from borewright.making.facts import best_of
from borewright.making.stub.asked import Plug, StubAsked
from borewright.making.stub.drawn import Head, plug_drawn, stub_drawn, washer_drawn
from borewright.making.stub.figures import stub_numbers
from borewright.making.stub.papers import stub_papers
from borewright.making.stub.sizes import Clamp, StubSizes, stub_sizes
from borewright.making.stub.slit import Slit, no_control, slit_of
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.service.making.bored_work import BoredWork, band_of, check_bore
from borewright.service.making.outputs import Made

TITLE = "Stub"


def make_stub(work: BoredWork, tables: Tables, plug: Plug | None = None) -> Made:
    """The stub for a work; slit and opened by a `plug` where one is named.

    RefusedInput for a bore beyond 1 to 150 mm. The answer no, with its reason, where a stub is not
    the way: `done` is False then.

    >>> from borewright.reference import tables
    >>> from borewright.service.making.bored_work import WorkTyped, work_typed
    >>> typed = WorkTyped(0.016, None, 0.02, None, "", "bore-gauge", "mm")
    >>> made = make_stub(work_typed(typed, tables()), tables())
    >>> made.numbers["screw"], round(made.numbers["shoulder_diameter_m"] * 1e3, 2)
    ('M8', 22.0)
    """
    part = Part(work.job, tables)
    check_bore(part)
    asked = stub_asked(part, plug)
    lost = no_middle(part, "a round stub")
    if lost:
        return not_made(TITLE, Cannot(lost, "Bore it true first."), asked.units, work.assumed)
    stub = stub_sizes(asked, tables)
    if isinstance(stub, Cannot):
        return not_made(TITLE, stub, asked.units, work.assumed)
    slit = slit_of(asked, stub, tables) if plug else None
    if isinstance(slit, Cannot):
        return not_made("Expanding stub", slit, asked.units, work.assumed)
    care = _care(asked, stub, slit, tables)
    return Made(
        papers=stub_papers(asked, stub, slit, care, tables),
        parts=(
            stub_drawn(asked, stub, slit, _head(tables)),
            *(_clamp_parts(stub.clamp, asked) if stub.clamp else ()),
            *(_plug_parts(slit, asked) if slit else ()),
        ),
        numbers={
            "verdict": "with care" if care else "yes",
            "reason": care,
            **stub_numbers(asked, stub, slit, tables),
            **said_assumed(work.assumed),
        },
    )


def _head(tables: Tables) -> Head:
    fact = best_of(tables, "stub_facts")
    return Head(fact("head_across"), fact("head_high"))


def _clamp_parts(clamp: Clamp, asked: StubAsked) -> tuple[DrawnPart, ...]:
    return (washer_drawn(clamp.screw, clamp.washer_thick, clamp.washer_outside, asked),)


def _plug_parts(slit: Slit, asked: StubAsked) -> tuple[DrawnPart, ...]:
    washer = washer_drawn(
        slit.screw, slit.washer_thick, slit.washer_outside, asked, "Washer of the plug"
    )
    return plug_drawn(slit, asked), washer


def stub_asked(part: Part, plug: Plug | None) -> StubAsked:
    """What is asked, from the work: the face with the wider hub meets the shoulder, as planned."""
    stub = Stub(part, max("BA", key=lambda face: part.ring_at(face).outside))
    low, high, batch = band_of(part)
    return StubAsked(
        bore=low,
        bore_high=high,
        half_band=0.0 if batch else part.bore_band,
        batch=batch,
        length=part.length,
        shoulder_room=part.clear_of_tool(stub.leading),
        washer_room=part.clear_of_tool(stub.trailing),
        face_inside=stub.inside,
        material=part.work.material,
        units=part.job.units,
        plug=plug,
        wall=(min(part.ring_at(face).outside for face in "AB") - low) / 2,
    )


def _care(asked: StubAsked, stub: StubSizes, slit: Slit | None, tables: Tables) -> str:
    """Why the answer is with care; empty where it is a plain yes."""
    sprung = _sprung(asked, tables) if slit else ""
    return " ".join(filter(None, (sprung, _other_care(asked, stub, slit, tables))))


def _sprung(asked: StubAsked, tables: Tables) -> str:
    """Why thin work needs care on fingers; empty where it is thick, or nobody said its outside."""
    share, show = best_of(tables, "stub_facts")("thin_ring"), Show(asked.units)
    if asked.wall is None or asked.wall >= share * asked.bore:
        return ""
    return (
        f"its wall of {show.length(asked.wall)} is under {share:g} of the bore: the fingers spring a thin ring, and what is turned "
        "round on them is no longer round when let go. Take a plain stub with a washer, or open it no more than just holds and cut "
        "lightly."
    )


def _other_care(asked: StubAsked, stub: StubSizes, slit: Slit | None, tables: Tables) -> str:
    show = Show(asked.units)
    if stub.overhang_ratio > stub.overhang_most:
        head = "the screw's head"
        return (
            f"the work reaches {stub.overhang_ratio:.1f} bores from the jaws, {stub.overhang_most:g} is the usual "
            f"most: a center hole in {head}, the tailstock brought up, light cuts."
        )
    least = best_of(tables, "stub_facts")("expand_least_length")
    if slit is not None and asked.length < least * asked.bore:
        return f"work {show.length(asked.length)} long does not sit square on fingers by itself: push it against the shoulder."
    if slit is not None and no_control(slit, tables):
        return (
            f"from snug the largest bore needs {slit.turns_needed:.3f} of a turn of the screw, and {slit.turns_most:.2f} is all that "
            "the fingers bear: so steep a plug gives no control, the usual taper does."
        )
    if asked.batch and slit is None and stub.shake > tables.holding_fact("gang_alike").best * 2:
        return (
            f"the largest bore of the batch shakes on it by {show.small(stub.shake)}: sort the pieces by size and turn the "
            "stub down for the smaller ones last, or take an expanding stub."
        )
    return ""


def not_made(title: str, cannot: Cannot, units: Any, assumed: tuple[Assumption, ...]) -> Made:
    """The answer no: nothing to draw, a headline that says why and what else."""
    papers = Papers(title, cannot.words, units, ())
    numbers = {"verdict": "no", "reason": cannot.words, **said_assumed(assumed)}
    return Made(papers, (), numbers, done=False)


def said_assumed(assumed: tuple[Assumption, ...]) -> dict[str, Any]:
    """What was taken where nothing was said, as JSON."""
    taken = [{"what": a.what, "taken": a.taken, "source": a.source} for a in assumed]
    return {"assumed": taken}
