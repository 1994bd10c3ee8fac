"""Blanks in a gang: how many, what one of them has against the cut, when it is no gang."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from tests.jobs_made import wheel_job

from borewright.answer.held import Held
from borewright.answer.held_picture import Role
from borewright.answer.records import Have, Verdict
from borewright.holding.ways.gang import Gang
from borewright.job.records import Bore, Finished, Job, Machine, MandrelNote, Piece
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables
from borewright.service.planned import plan

TABLES = Tables()


def blanks(quantity: int = 20, thick: float = 0.008, bore: float = 0.015008) -> Job:
    job = wheel_job(outside=0.064, length=thick, bore=bore, material="steel-1018", uncertainty=5e-6)
    shelf = replace(
        job.shelf,
        mandrels=(MandrelNote(0.015, small_end=0.01499, ground_length=0.1, overall_length=0.14),),
        machine=Machine(swing_over_cross_slide=0.15, between_centers=0.5),
    )
    finished = Finished(0.063, 0.05e-3)
    return replace(job, shelf=shelf, work=replace(job.work, quantity=quantity, finished=finished))


def on_a_bed(between: float) -> Job:
    job = blanks()
    machine = replace(job.shelf.machine, between_centers=between)
    return replace(job, shelf=replace(job.shelf, machine=machine))


def offered(job: Job) -> tuple[Held, ...]:
    return Gang().offer(job, TABLES)


def numbers(job: Job) -> list[int]:
    return [int(h.tool.split()[2]) for h in offered(job)]


def test_loads_are_as_even_as_they_come_and_none_is_longer_than_four_bores() -> None:
    """4 x 15.008 mm takes 7 of 8 mm: 20 in 3 loads of 7; half and a quarter of it: 3, 2."""
    assert numbers(blanks()) == [7, 3, 2]
    assert numbers(blanks(quantity=8)) == [4, 3, 2]
    assert numbers(blanks(quantity=2)) == [2]


def test_a_short_bed_takes_fewer() -> None:
    assert max(numbers(on_a_bed(0.085))) < 7


def test_a_cut_on_one_has_no_more_than_the_shoulder_and_never_less_for_a_wider_blank() -> None:
    """12 mm nut, 10 kN, friction 0.12, ring 15.008 to 24.0128 mm: 0.12 x 10 kN x 39.0208 / 4 mm."""
    grip = offered(blanks())[0].grip
    assert grip is not None
    assert likely(grip.torque) == pytest.approx(0.12 * 10e3 * 39.0208e-3 / 4, rel=1e-4)


def test_a_longer_gang_runs_out_more() -> None:
    runouts = [likely(h.grip.runout) for h in offered(blanks()) if h.grip]
    assert np.all(np.diff(runouts) < 0)


def test_every_load_costs_its_nutting_up() -> None:
    each = TABLES.holding_fact("gang_load").best
    assert [h.handling for h in offered(blanks())] == [3 * each, 7 * each, 10 * each]


@pytest.mark.parametrize(
    ("job", "said"),
    [
        (blanks(quantity=1), "only one"),
        (blanks(thick=0.04), "sits square"),
        (on_a_bed(0.07), "no room"),
        (replace(blanks(), work=replace(blanks().work, blank="casting")), "Castings"),
        (
            replace(
                blanks(),
                work=replace(
                    blanks().work,
                    pieces=(Piece(0.0, 0.02, 0.03), Piece(0.005, 0.015, 0.06, 0.03)),
                ),
            ),
            "flat blanks",
        ),
    ],
)
def test_what_does_not_stack_is_refused_for_its_own_reason(job: Job, said: str) -> None:
    (only,) = offered(job)
    assert said in only.cannot


def test_gear_blanks_alike_go_in_a_gang_and_those_that_differ_go_singly() -> None:
    together = plan(blanks(), source_tables=TABLES)
    assert together.verdict is Verdict.YES
    assert together.chosen is not None
    assert together.chosen.way == "gang"
    job = blanks()
    loose = Bore(job.work.bore.size, 25e-6, "caliper", "reamed")
    apart = plan(replace(job, work=replace(job.work, bore=loose)), source_tables=TABLES)
    gangs = [c for c in apart.candidates if c.way == "gang"]
    assert all(c.verdict is not Verdict.YES for c in gangs)
    assert apart.chosen is None or apart.chosen.way != "gang"


def test_blanks_up_to_half_their_outside_are_ganged_and_pay_for_their_second_faces() -> None:
    """64 mm outside: 32 mm at most; a bore of 25 mm, one and a half bores: 37.5 mm."""
    assert "sits square" in offered(blanks(thick=0.0321))[0].cannot
    wide = blanks(thick=0.0319, bore=0.025)
    assert not offered(wide)[0].cannot
    assert not offered(blanks(thick=0.0374, bore=0.025))[0].cannot
    assert offered(blanks(thick=0.0376, bore=0.025))[0].cannot
    each, face = (TABLES.holding_fact(f).best for f in ("gang_load", "second_face"))
    three = blanks(quantity=3, thick=0.025, bore=0.0159)
    assert numbers(three) == [2]
    assert offered(three)[0].handling == pytest.approx(2 * each + 3 * face)


def test_more_than_one_load_has_its_own_step_and_a_short_one_a_collar() -> None:
    three = offered(blanks(quantity=3, thick=0.025, bore=0.0159))[0]
    assert [s.title for s in three.release] == ["Off they come", "Next load"]
    assert "2 loads" in three.release[1].text
    assert "last load is 1 only" in three.release[1].text
    even = offered(blanks(quantity=4, thick=0.025, bore=0.0159))[0]
    assert "collar" not in even.release[1].text
    once = offered(blanks(quantity=2))[0]
    assert [s.title for s in once.release] == ["Off they come"]


def test_thin_wide_discs_have_cheeks_nearly_their_finished_size_that_are_made_and_drawn() -> None:
    """63 mm finished: cheeks 61.74 mm; past the shoulder of 24.01 mm that is 18.86 mm, a quarter of
    it 4.716 mm: a disc of 4.7 mm is thin, one of 4.75 mm is not."""
    thin, thick = offered(blanks(thick=0.0047))[0], offered(blanks(thick=0.00475))[0]
    assert "cheeks" in thin.do_it
    assert "cheeks" not in thick.do_it
    assert any(s.title == "Two cheeks" for s in thin.mount)
    assert any(n.what.startswith("two cheeks") and n.have is Have.MAKE for n in thin.needs)
    assert thin.making > thick.making
    assert thin.picture is not None
    first, last = (r for r in thin.picture.rings if r.role is Role.PLATE)
    discs = [r for r in thin.picture.rings if r.role is Role.WORK]
    assert first.end == pytest.approx(min(r.start for r in discs))
    assert last.start == pytest.approx(max(r.end for r in discs))
    assert 2 * first.outer == pytest.approx(0.98 * 0.063)
    washer = next(r for r in thin.picture.rings if r.role is Role.WASHER)
    assert washer.start == pytest.approx(last.end)
    assert "cheek" in [n.words for n in thin.picture.notes]


def test_a_disc_on_a_large_bore_wants_no_cheeks() -> None:
    assert "cheeks" not in offered(blanks(thick=0.003, bore=0.033))[0].do_it
