"""What a machinist asked for: the gate at touch, ovals, thin walls, skin, the order of the proof."""

from dataclasses import replace

import pytest
from tests.jobs_made import wheel_job
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.answer.records import Question, Step, Verdict
from borewright.errors import RefusedInput
from borewright.job.records import BoreReading, Finished, Job
from borewright.mechanics.taper import touch_position
from borewright.reference.library import Tables
from borewright.service.answers import Answers, job_from, read_bore

TABLES = Tables()


def planned(job: Job) -> Plan:
    return plan(job, source_tables=TABLES)


def question(job: Job, name: str) -> Question:
    return next(q for q in planned(job).questions if q.id == name)


def step(job: Job, title: str) -> Step:
    return next(s for s in planned(job).steps if s.title == title)


def gate(job: Job) -> tuple[float, float]:
    near, far = (
        f.best for f in step(job, "Oil and touch").figures if f.name.startswith("touch_gate")
    )
    return near, far


def test_pressing_from_either_end_of_the_gate_ends_at_a_line_of_the_window() -> None:
    """Touch at the gate's near end is the largest bore that fits, at its far end the smallest."""
    job = wheel_job()
    answer = planned(job)
    assert answer.layout is not None
    assert answer.bore_window is not None
    layout = answer.layout
    ends = layout.ground_length + layout.end_length
    hand = next(f for f in answer.figures if f.name == "press_distance").inputs[1].value
    for reading, bore in zip(gate(job), reversed(answer.bore_window), strict=True):
        touched = ends - reading - hand
        assert float(touch_position(bore, layout.small_end, 0.0005)) == pytest.approx(
            touched, abs=2e-4
        )


def test_the_gate_does_not_depend_on_how_well_the_bore_is_known() -> None:
    sure, loose = (gate(wheel_job(uncertainty=u)) for u in (3e-6, 60e-6))
    assert sure == pytest.approx(loose)


def test_a_loose_reading_is_told_to_ask_the_mandrel_first() -> None:
    answer = planned(wheel_job(uncertainty=60e-6))
    assert answer.verdict is Verdict.CARE
    assert "the mandrel can" in answer.headline
    assert "cannot say where" in step(wheel_job(uncertainty=60e-6), "Oil and touch").text


def test_power_is_off_and_the_dog_is_on_before_the_proof_load() -> None:
    titles = [s.title for s in planned(wheel_job()).steps]
    assert titles.index("Between centers") < titles.index("Proof load") < titles.index("Indicator")
    assert step(wheel_job(), "Proof load").text.startswith("Power off")


@pytest.mark.parametrize(
    ("oval", "verdict"), [(2e-6, Verdict.YES), (13e-6, Verdict.CARE), (60e-6, Verdict.NO)]
)
def test_an_oval_bore_is_judged_by_the_squeeze_it_has(oval: float, verdict: Verdict) -> None:
    readings = (BoreReading(0.01, 0.016004), BoreReading(0.01, 0.016004 + oval))
    asked = question(wheel_job(bore=0.016004, readings=readings), "bore")
    assert asked.verdict is verdict
    assert ("two lines" in asked.reason) == (verdict is not Verdict.YES)


def test_cuts_that_leave_no_wall_are_a_no() -> None:
    job = wheel_job(outside=0.03)
    thin = replace(job, work=replace(job.work, finished=Finished(0.0175)))
    asked = question(thin, "crack")
    assert asked.verdict is Verdict.NO
    assert "wall" in asked.reason


def test_a_thin_wall_is_cut_in_shallow_passes() -> None:
    wall = (0.0225 - 0.016006) / 2
    depths = [c.depth for c in planned(wheel_job(outside=0.0225)).cuts]
    assert max(depths) <= TABLES.allowance("wall_share").best * wall * (1 + 1e-9)


def test_stock_is_not_invented_and_passes_add_up_to_what_is_stated() -> None:
    job = wheel_job(outside=0.063)
    stated = replace(job, work=replace(job.work, finished=Finished(0.060)))
    turned = sum(c.depth * c.passes for c in planned(stated).cuts if c.kind == "turn")
    assert turned == pytest.approx((0.063 - 0.060) / 2)
    assert "stop at your size" in next(c for c in planned(job).cuts if c.kind == "turn").name
    untouched = replace(job, work=replace(job.work, finished=Finished(0.063)))
    assert {c.kind for c in planned(untouched).cuts} == {"face"}


def test_a_casting_is_never_roughed_within_its_skin() -> None:
    job = wheel_job(outside=0.2, material="gray-iron-30")
    cast = replace(job, work=replace(job.work, blank="casting"))
    rough = next(c for c in planned(cast).cuts if c.id == "rough")
    assert rough.depth >= TABLES.allowance("skin_depth").low


def test_a_vice_is_told_how_to_stand_it() -> None:
    assert step(wheel_job(press="bench vice"), "Support under the hub").text.startswith(
        "In the vice"
    )


def test_a_way_is_insisted_on_by_any_name_the_trade_has_for_it() -> None:
    answer = plan(wheel_job(), use="Strapped to the faceplate", source_tables=TABLES)
    assert {c.way for c in answer.candidates} == {"faceplate"}


def test_the_proof_arm_is_one_a_shop_has() -> None:
    arms = {}
    for units in ("inch", "mm"):
        proof = planned(replace(wheel_job(), units=units)).proof
        assert proof is not None
        arms[units] = proof.arm
    assert arms == pytest.approx({"inch": 0.3048, "mm": 0.3})


@pytest.mark.parametrize(
    ("said", "gauge", "made"),
    [
        ("0.501in by caliper", "caliper", "unknown"),
        ("3/4in reamed", "reamer-size", "reamed"),
        ("1 1/4 in, drilled, vernier", "caliper", "drilled"),
        ('5/8" bored with telescoping gauge', "telescoping-gauge", "bored"),
        ("16mm", "unknown", "unknown"),
    ],
)
def test_a_bore_is_said_in_shop_words(said: str, gauge: str, made: str) -> None:
    bore = read_bore(said, TABLES)
    assert (bore.measured_with, bore.made_by) == (gauge, made)


@pytest.mark.parametrize(
    "question_name", ["bore", "outside", "length", "material", "blank", "shelf"]
)
def test_every_question_may_be_skipped_and_says_what_it_took(question_name: str) -> None:
    answers = {
        "bore": "16.006mm plug gauge",
        "outside": "63mm",
        "length": "25mm",
        "material": "6061",
        "blank": "bar",
        "shelf": "16mm",
    }
    full = job_from(Answers(**answers), TABLES)
    asked = job_from(Answers(**{**answers, question_name: "don't know"}), TABLES)
    assert not full.taken
    assert len(asked.taken) >= 1
    assert planned(asked.job).headline


@pytest.mark.parametrize(
    ("question_name", "answer", "says"),
    [
        ("bore", "wide", "bore"),
        ("bore", "0.5in with a laser", "measured with"),
        ("outside", "1in", "more than the bore"),
        ("length", "long", "length"),
        ("material", "unobtainium", "material"),
        ("blank", "plastic", "bar or casting"),
        ("shelf", "some", "mandrels"),
    ],
)
def test_an_answer_that_cannot_be_used_is_refused(
    question_name: str, answer: str, says: str
) -> None:
    answers = {"bore": "1in by caliper", "outside": "3in", question_name: answer}
    with pytest.raises(RefusedInput, match=says):
        job_from(Answers(**answers), TABLES)


def test_a_hammer_counts_blows_and_never_stalls_where_a_hand_would() -> None:
    asked = question(wheel_job(press="soft hammer"), "push")
    assert asked.verdict is Verdict.YES
    assert "blows" in asked.reason
    assert "blows" in step(wheel_job(press="soft hammer"), "Support under the hub").text
