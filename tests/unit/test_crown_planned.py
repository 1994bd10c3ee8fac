"""A job that asks for a crown: read, written, refused, and planned as a step."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.chuck_jobs import hubbed
from tests.jobs_made import turning, wheel_job
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.answer.records import Step
from borewright.errors import RefusedInput, UnknownName
from borewright.job import CrownWish, Finished, Job, parse_job
from borewright.job.crown_wish import crowned_face
from borewright.job.finished_form import FinishedForm, FinishedStep
from borewright.job.write import job_text
from borewright.service.planned import plan as planned

TEXT = """units = "inch"
[work]
material = "al-6061-t6"
bore = "7/8in"
outside = "5 1/8in"
length = "2in"
[work.finished]
outside = "5in"
crown = {}
"""


def wish_of(stated: str) -> CrownWish | None:
    return parse_job(TEXT.format(stated), "wheel.toml").work.finished.form.crown


# Read


@pytest.mark.parametrize(
    ("stated", "wish"),
    [
        ("true", CrownWish()),
        ("{}", CrownWish()),
        ("false", None),
        ('"iso-22"', CrownWish(rule="iso-22")),
        ('{rule = "dooley", flat = "1/4in"}', CrownWish(rule="dooley", flat=0.00635)),
        ('{height = "0.02in", shape = "arc"}', CrownWish(0.000508, shape="arc")),
    ],
)
def test_a_crown_is_read_as_stated_and_written_as_it_reads(
    stated: str, wish: CrownWish | None
) -> None:
    job = parse_job(TEXT.format(stated), "wheel.toml")
    assert job.work.finished.form.crown == wish
    assert parse_job(job_text(job), "again.toml") == job


@given(
    height=st.one_of(st.none(), st.floats(1e-5, 5e-3)),
    rule=st.sampled_from(["", "iso-22", "face/24", "true", "a rule of ours"]),
    shape=st.sampled_from(["taper", "arc"]),
    flat=st.one_of(st.just(0.0), st.floats(1e-5, 0.04)),
)
def test_any_crown_that_a_file_can_say_reads_back(height, rule, shape, flat) -> None:
    wish = CrownWish(
        height, "" if height else rule, shape, 0.0 if shape == "arc" else round(flat, 9)
    )
    job = parse_job(TEXT.format("true"), "wheel.toml")
    form = replace(job.work.finished.form, crown=wish)
    work = replace(job.work, finished=replace(job.work.finished, form=form))
    asked = replace(job, work=work)
    assert parse_job(job_text(asked), "again.toml") == asked


@pytest.mark.parametrize(
    ("stated", "said"),
    [
        ("3", "wheel.toml: work.finished.crown: found 3; allowed is true, the name of a rule"),
        ('""', "work.finished.crown: found ''"),
        ('{height = "0.02in", rule = "x"}', "found both `height` and `rule`"),
        ('{height = "1in"}', "work.finished.crown.height: found 1.000 in"),
        ('{shape = "arc", flat = "1mm"}', "work.finished.crown.flat: found an arc with a flat"),
        ('{flat = "2in"}', "work.finished.crown.flat: found 2 in"),
        ('{shape = "round"}', "allowed is 'taper' or 'arc'"),
        ('{hight = "1mm"}', "allowed is 'height'"),
    ],
)
def test_what_is_no_crown_is_refused_with_its_place(stated: str, said: str) -> None:
    with pytest.raises(RefusedInput, match=re.escape(said)):
        wish_of(stated)


def test_a_crown_on_an_outside_that_is_all_turned_down_is_refused() -> None:
    text = TEXT.format("true") + 'steps = [{from = "0in", to = "2in", outside = "3in"}]\n'
    with pytest.raises(RefusedInput, match="whose largest outside is all turned down"):
        parse_job(text, "wheel.toml")


# The face that gets it


def test_the_face_is_the_rim_less_what_is_faced_off_and_stepped_down() -> None:
    work = wheel_job(length=0.040).work
    assert crowned_face(work) == pytest.approx(0.040)
    shorter = FinishedForm(length=0.036)
    assert crowned_face(formed(work, shorter)) == pytest.approx(0.036)
    stepped = FinishedForm(0.036, steps=(FinishedStep(0.0, 0.010, 0.050),))
    assert crowned_face(formed(work, stepped)) == pytest.approx(0.026)
    both = FinishedForm(
        0.036, steps=(FinishedStep(0.0, 0.010, 0.05), FinishedStep(0.02, 0.024, 0.05))
    )
    assert crowned_face(formed(work, both)) == pytest.approx(0.012)
    assert crowned_face(hubbed().work) == pytest.approx(0.025), "the rim's, not the hub's"


def formed(work, form: FinishedForm):
    return replace(work, finished=replace(work.finished, form=form))


# Planned


def pulley(wish: CrownWish | None, job: Job | None = None, dial: str = "unknown") -> Job:
    """The iron wheel of 63 mm, 25 mm wide, to finish at 62 with this crown."""
    bare = job or wheel_job(material="gray-iron-30", cuts=turning(0.3e-3))
    machine = replace(bare.shelf.machine, dial=dial)
    finished = Finished(0.062, form=FinishedForm(crown=wish))
    work = replace(bare.work, finished=finished)
    return replace(bare, work=work, shelf=replace(bare.shelf, machine=machine))


def crown_step(answer: Plan) -> Step:
    (step,) = (s for s in answer.steps if s.title == "Crown")
    return step


def test_without_a_wish_there_is_no_crown() -> None:
    answer = plan(pulley(None))
    assert not [s for s in answer.steps if s.title == "Crown"]
    assert "crown-file" not in {c.id for c in answer.cautions}


def test_on_a_mandrel_the_crown_follows_the_finishing_cut_and_is_measured_over_the_middle() -> None:
    answer = plan(pulley(CrownWish()))
    titles = [s.title for s in answer.steps]
    at = titles.index("Crown")
    assert titles.index("Cut, in the order of the table") < at < titles.index("Press off")
    step = answer.steps[at]
    assert "iso-22: 0.3 mm" in step.text
    assert "the middle stays at the finished size" in step.text
    assert "Feed both halves towards the headstock" in step.text
    assert step.blanks == ("middle of the face",)


def test_the_top_slide_is_set_by_the_height_over_half_the_face() -> None:
    """0.3 mm in 12.5 mm: 1.375 degrees; 25 mm of slide then reads 0.600 mm."""
    text = crown_step(plan(pulley(CrownWish()))).text
    assert "Top slide over by 1.37°" in text or "Top slide over by 1.38°" in text
    assert "25 mm (0.98 in) of it reads 0.600 mm" in text


def test_the_rules_disagreement_stands_beside_the_one_taken() -> None:
    """On radius over 12.5 mm: 1/16 in per ft to 1/24 of the face."""
    low, high = 12.5 / 192, 25 / 24
    text = crown_step(plan(pulley(CrownWish()))).text
    assert f"the rules run from {low:.3f} to {high:.3f} mm" in text


def test_an_arc_lists_its_stops_in_the_dials_own_readings() -> None:
    on_radius = crown_step(plan(pulley(CrownWish(0.5e-3, shape="arc"), dial="radius"))).text
    on_diameter = crown_step(plan(pulley(CrownWish(0.5e-3, shape="arc"), dial="diameter"))).text
    assert "stop, dial (mm): 10, 0.02; " in on_radius
    lists = (t.partition("(mm): ")[2].partition(". File")[0] for t in (on_radius, on_diameter))
    first, second = (re.findall(r"(\d+), ([\d.]+)", stops) for stops in lists)
    assert len(first) >= 8
    assert [s for s, _ in first] == [s for s, _ in second][-len(first) :]
    radius = (12.5**2 + 0.5**2) / (2 * 0.5)
    for stop, reading in second:
        z = 12.5 - float(stop)
        wanted = 2 * (radius - (radius**2 - z**2) ** 0.5)
        assert float(reading) == pytest.approx(wanted, abs=0.0101), "half a division of 0.02"


def test_held_in_a_chuck_the_crown_is_cut_too() -> None:
    job = pulley(CrownWish(rule="dooley"), wheel_job(material="gray-iron-30"))
    answer = planned(job, use="turned stub")
    step = crown_step(answer)
    assert "dooley-three-quarter: 3/4 in per ft" in step.text
    assert "Feed both halves" not in step.text, "no seat to tighten"
    assert "crown-file" in {c.id for c in answer.cautions}


def test_a_rule_that_is_not_there_is_refused_with_the_nearest() -> None:
    with pytest.raises(UnknownName, match="crown rule: found 'iso-23'; allowed is 'iso-22'"):
        plan(pulley(CrownWish(rule="iso-23")))


def test_its_figures_carry_the_rules_source() -> None:
    height = next(
        f for f in crown_step(plan(pulley(CrownWish()))).figures if f.name == "crown_height"
    )
    assert (height.best, height.sources) == (pytest.approx(0.3e-3), ("iso-22-memory",))
    stated = crown_step(plan(pulley(CrownWish(0.2e-3)))).figures[0]
    assert stated.sources == ("stated",)
