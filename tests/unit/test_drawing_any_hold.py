"""Work of any proportion, held in any way that can: labels apart, on the plate, off every edge."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.unit.test_drawing_labels import off_the_plate, overlapping, run_through, struck

from borewright.answer.plan import Plan
from borewright.drawing import draw_plan
from borewright.holding.registry import WAYS
from borewright.job.records import Bore, Job, Piece, Shelf, Work
from borewright.service.planned import plan

METALS = ("al-6061-t6", "gray-iron-30", "steel-1018", "bronze-sae-660")


def pieces(kind: str, bore: float, outside: float, length: float) -> tuple[Piece, ...]:
    """A plain disc or bush, a wheel with a hub on one side, or hub, web and rim."""
    if kind == "plain" or outside < 3 * bore:
        return (Piece(0.0, length, outside),)
    if kind == "hub":
        return (Piece(0.0, length, 1.6 * bore), Piece(0.3 * length, 0.7 * length, outside))
    inside = 0.85 * outside
    return (
        Piece(0.0, length, 1.8 * bore),
        Piece(0.4 * length, 0.6 * length, inside),
        Piece(0.1 * length, 0.9 * length, outside, inside),
    )


@st.composite
def jobs(draw: st.DrawFn) -> Job:
    bore = draw(st.floats(4e-3, 60e-3))
    outside, length = bore * draw(st.floats(1.15, 12.0)), bore * draw(st.floats(0.2, 3.0))
    shape = pieces(draw(st.sampled_from(("plain", "hub", "webbed"))), bore, outside, length)
    hole = Bore(bore, 3e-6, "plug gauge", draw(st.sampled_from(("reamed", "drilled"))))
    work = Work(draw(st.sampled_from(METALS)), shape, hole, "bar")
    return Job("A part", work, draw(st.sampled_from(("inch", "mm"))), Shelf((), True, ""))


def drawn(answer: Plan) -> bool:
    return answer.held is not None and answer.goes_on


@pytest.mark.parametrize("way", WAYS)
@settings(max_examples=12, derandomize=True, deadline=None)
@given(job=jobs())
def test_whatever_is_held_is_drawn_without_a_clash(way: str, job: Job) -> None:
    answer = plan(job, use=way)
    if not drawn(answer):
        return
    scene = draw_plan(answer)
    assert overlapping(scene) == []
    assert off_the_plate(scene) == []
    assert struck(scene) == []
    assert run_through(scene) == []
    assert scene.height < 100, "the sheet keeps room for words"
