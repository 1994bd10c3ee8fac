"""What a cold trial at the lathe found and the plan must not do again."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.jobs_made import turning, wheel_job
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.answer.records import Question, Verdict
from borewright.cutting.base import feed_for
from borewright.cutting.schedule import planned_cuts
from borewright.job.interrupted import Keyway
from borewright.job.records import BoreReading, Finished, Job, Machine, MandrelNote
from borewright.job.tools import OwnPress
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.report.terminal import plan_text
from borewright.service import planned as service

TABLES = Tables()


def planned(job: Job) -> Plan:
    return plan(job, source_tables=TABLES)


def asked(job: Job, name: str) -> Question:
    return next(q for q in planned(job).questions if q.id == name)


def work_of(job: Job, **said: object) -> Job:
    return replace(job, work=replace(job.work, **said))


def step(answer: Plan, title: str) -> str:
    return next(s.text for s in answer.steps if s.title == title)


def casting(finished: float) -> Job:
    job = wheel_job(0.1, material="gray-iron-30")
    return work_of(job, blank="casting", finished=Finished(finished))


@pytest.mark.parametrize("stock", [1.0e-3, 1.35e-3, 1.6e-3, 2.2e-3, 3.1e-3])
def test_the_first_cut_on_a_casting_gets_under_its_skin(stock: float) -> None:
    cuts = [c for c in planned_cuts(casting(0.1 - 2 * stock), TABLES, 0.5) if c.kind == "turn"]
    assert cuts[0].depth >= TABLES.allowance("skin_depth").low
    assert sum(c.depth * c.passes for c in cuts) == pytest.approx(stock)


def test_roughing_is_never_lighter_than_finishing() -> None:
    for share in (1.0, 0.5, 0.25):
        cuts = {c.id: c.depth for c in planned_cuts(wheel_job(), TABLES, share)}
        assert cuts["rough"] > cuts["finish"]


def test_a_feed_a_hair_above_the_wanted_is_taken_and_a_coarse_one_is_not() -> None:
    lathe = Machine(feeds=(0.05e-3, 0.1016e-3, 0.2e-3))
    assert feed_for(0.0991e-3, lathe) == 0.1016e-3
    assert feed_for(0.09e-3, lathe) == 0.05e-3


def test_no_arm_is_left_on_the_work_when_the_cut_starts() -> None:
    text = step(planned(wheel_job()), "Proof load")
    assert text.endswith("turn once by hand.")
    assert "take arm, weight and cord off" in text


def test_a_batch_is_told_which_pieces_to_prove() -> None:
    assert "Prove the first" in step(planned(work_of(wheel_job(), quantity=6)), "Proof load")


def test_a_bore_far_from_every_mandrel_is_said_in_one_sentence_and_not_tried() -> None:
    answer = planned(work_of(wheel_job(), bore=replace(wheel_job().work.bore, size=0.03)))
    assert answer.verdict is Verdict.NO
    assert "no mandrel on the shelf is near this bore" in answer.headline
    assert answer.questions == ()
    assert {c.verdict for c in answer.candidates} == {Verdict.NO}
    assert "mm past" not in plan_text(answer)


def test_where_form_or_a_flaw_decides_the_margin_is_theirs() -> None:
    oval = (BoreReading(0.01, 0.016006, "a"), BoreReading(0.01, 0.01613, "b"))
    question = asked(wheel_job(readings=oval), "bore")
    assert question.verdict is not Verdict.YES
    assert question.margin < 1
    flawed = asked(work_of(wheel_job(material="gray-iron-30"), flaws="seen"), "crack")
    assert (flawed.verdict, flawed.margin) == (Verdict.NO, 0.0)


def test_an_oval_bore_is_not_sent_to_a_stub() -> None:
    oval = (BoreReading(0.01, 0.016006, "a"), BoreReading(0.01, 0.01633, "b"))
    answer = service.plan(wheel_job(readings=oval), source_tables=TABLES)
    rows = {c.way: c for c in reversed(answer.candidates)}
    assert "oval" in rows["turned-stub"].reason
    assert answer.chosen is not None
    assert answer.chosen.way in ("four-jaw", "faceplate")


def test_a_runout_that_is_only_assumed_never_forbids_and_a_stated_one_can() -> None:
    chuck = replace(wheel_job(cuts=turning()), driven_by="three-jaw")
    assert asked(chuck, "true").verdict is Verdict.CARE
    assert any(a.what == "runout of rim to bore" for a in planned(chuck).assumed)
    strict, loose = (work_of(chuck, finished=Finished(runout=r)) for r in (10e-6, 0.2e-3))
    assert asked(strict, "true").verdict is Verdict.NO
    assert asked(loose, "true").verdict is Verdict.YES


def test_warmth_is_said_as_a_difference_and_a_flame_is_forbidden() -> None:
    heat = asked(wheel_job(), "heat")
    assert heat.reason.count("warmer") == 3
    assert "never by a flame" in heat.changes_it


def test_a_vice_is_told_its_opening_and_its_tube_the_length() -> None:
    answer = planned(wheel_job(press="bench vice"))
    assert "It must open" in step(answer, "Support under the hub")
    assert any("tube" in ready and "long or more" in ready for ready in answer.have_ready)


def test_keyway_edges_are_stoned_before_anything_slides() -> None:
    keyed = work_of(wheel_job(material="steel-1018"), keyway=Keyway(0.004, 0.002))
    assert "Stone the burr" in step(planned(keyed), "Check the bore")


def test_a_press_keeps_the_name_its_owner_gave_it() -> None:
    own = OwnPress("the old one", "arbor press 1 ton")
    shelf = replace(wheel_job().shelf, presses=(own,), press=own.called)
    ready = "; ".join(planned(replace(wheel_job(), shelf=shelf)).have_ready)
    assert "the old one (one-ton arbor press)" in ready


def test_a_soft_mandrel_gets_no_caution_of_a_hard_one() -> None:
    def ids(hardness: str) -> set[str]:
        notes = (MandrelNote(0.016, hardness=hardness),)
        return {c.id for c in planned(wheel_job(mandrels=notes)).cautions}

    assert "hard-mandrel" in ids("hard") & ids("unknown")
    assert "hard-mandrel" not in ids("soft")


def test_without_a_mandrel_nothing_is_said_of_pressing_or_of_dogs() -> None:
    ids = {c.id for c in planned(wheel_job(mandrels=())).cautions}
    assert "chuck-key" in ids
    assert not ids & {"dog-sweeps", "press-stand-clear", "hard-mandrel", "center-warms"}


def test_a_bore_that_a_full_length_would_strain_is_not_filled_for_its_own_sake() -> None:
    def share_that_bears(material: str) -> float:
        job = wheel_job(0.023, 0.036, material=material, cuts=turning(0.1e-3, 0.05e-3))
        job = replace(job, shelf=replace(job.shelf, press="arbor press 3 ton"))
        bears = next(f for f in asked(job, "seat").figures if f.name == "contact_length")
        return bears.best / 0.036

    soft, strong = share_that_bears("bronze-sae-660"), share_that_bears("al-6061-t6")
    assert soft < 0.75 < strong


def test_a_pencil_sum_gets_the_digits_it_needs() -> None:
    show = Show("inch")
    assert show.pencil(3.3e-6, "m", "small") == "0.0001299 in"
    assert show.pencil(0.0254 * 5 / 8, "m", "length").startswith("5/8 in")
