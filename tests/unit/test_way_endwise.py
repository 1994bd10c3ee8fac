"""Clamped by the faces: what the bolts hold by a hand sum, and where it can be done."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.chuck_jobs import bored, thin_ring, with_bore, worn
from tests.jobs_made import wheel_job

from borewright.answer.held import OUTSIDE
from borewright.answer.records import Have, Verdict
from borewright.holding.ways.endwise import Endwise
from borewright.job.records import CutWish, Job, Piece
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables
from borewright.service import planned

TABLES = Tables()


def first(job: Job):  # type: ignore[no-untyped-def]
    return Endwise().offer(job, TABLES)[0]


def test_the_clamp_ring_stays_clear_of_the_tool_and_hardly_anything_is_sprung() -> None:
    found = first(thin_ring())
    assert found.reaches == (OUTSIDE,)
    clamp = next(r for r in found.picture.rings if r.role == "washer")
    assert clamp.outer < 0.112 / 2
    usual = TABLES.allowance("usual_tolerance").best
    assert 0 < likely(found.grip.springs) <= 0.05 * usual * (1 + 1e-9)


def test_a_wider_face_never_holds_less() -> None:
    torques = [likely(first(thin_ring(w)).grip.torque) for w in (0.0055, 0.006, 0.008, 0.012)]
    assert torques == sorted(torques)


def test_one_is_set_true_and_many_go_on_a_step() -> None:
    one = thin_ring()
    many = replace(one, work=replace(one.work, quantity=20))
    assert "indicator" in first(one).do_it
    assert "step" in first(many).do_it
    assert likely(first(many).grip.runout) < likely(first(one).grip.runout)
    making = [n for n in first(many).needs if n.have is Have.MAKE]
    assert making
    assert first(many).making > first(one).making > 0


def test_the_thin_ring_is_a_yes_and_comes_before_any_jaws() -> None:
    answer = planned.plan(thin_ring())
    assert answer.verdict is Verdict.YES
    ways = [c.way for c in answer.candidates]
    assert ways.index("endwise") < min(ways.index(w) for w in ("three-jaw", "four-jaw"))


@pytest.mark.parametrize(
    ("job", "said"),
    [
        (wheel_job(), "too small for bolts"),
        (thin_ring(0.003), "too narrow"),
        (worn(thin_ring()), "worn oval"),
        (with_bore(thin_ring(), bored("drilled", 0.100)), "not finished"),
    ],
)
def test_where_it_cannot_be_done(job: Job, said: str) -> None:
    assert said in first(job).cannot


def test_a_hub_that_lies_back_is_not_clamped() -> None:
    job = thin_ring()
    pieces = (Piece(0.01, 0.02, 0.12), Piece(0.0, 0.03, 0.2, 0.12))
    assert "lies back" in first(replace(job, work=replace(job.work, pieces=pieces))).cannot


def test_it_is_located_before_it_is_tightened_and_never_over_a_gap() -> None:
    titles = [s.title for s in first(thin_ring()).mount]
    assert titles.index("Locate it before tightening") < titles.index("Tighten across")
    assert "never tighten over a gap" in first(thin_ring()).mount[2].text


def test_a_face_that_the_clamp_covers_is_said_to_be_out_of_reach() -> None:
    job = replace(thin_ring(), cuts=(CutWish("face", 1e-4),))
    answer = planned.plan(job, use="endwise")
    assert answer.verdict is Verdict.NO
    assert any("can be reached" in c.reason for c in answer.candidates)


def test_long_work_is_not_bolted_endwise_and_thin_bolts_go_no_further_than_ten_diameters() -> None:
    """Bore 60 mm takes 8 mm bolts: 60 mm of work is as long as the bore; 100 mm of bore: 80 mm."""
    for bore, most in ((0.0254, 0.0254), (0.06, 0.06), (0.1, 0.08)):
        for length, refused in ((most * 0.99, False), (most * 1.01, True)):
            found = first(wheel_job(outside=bore + 0.03, length=length, bore=bore))
            assert ("rings and discs" in found.cannot) is refused


def test_a_single_ring_has_no_next_piece() -> None:
    job = thin_ring()
    assert [s.title for s in first(job).release] == ["Off it comes"]
    assert "batch" not in " ".join(s.text for s in first(job).mount)
    two = replace(job, work=replace(job.work, quantity=2))
    assert [s.title for s in first(two).release] == ["Next piece"]
