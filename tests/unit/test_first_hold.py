"""The first hold of a casting: by what it is set true, where the jaws go, whether it cleans up.

The sums are done by hand here; what is set true and where the jaws go are the trade's answers
(common practice, no source).
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from jsonschema import validate
from tests.jobs_made import wheel_job

from borewright.answer.first_hold import FirstHold
from borewright.answer.plan import Plan
from borewright.answer.records import Figure, Verdict
from borewright.errors import RefusedInput
from borewright.job import Finished, Job, Piece, Spokes, parse_job
from borewright.job.write import job_text
from borewright.planning.steps.first_hold import first_hold
from borewright.reference.library import Tables
from borewright.report.explain import explain_text
from borewright.report.plan_json import plan_object
from borewright.report.schema import plan_schema
from borewright.report.terminal import plan_text
from borewright.service.planned import plan

TABLES = Tables()
INCH = 0.0254
THROW = 3 / 32 * INCH
SKIN = 0.5e-3  # allowances.csv: 0.4, 0.5, 0.8 mm
SUM = 1e-12  # metres: sums of a few sizes
FLYWHEEL = Path(__file__).resolve().parents[2] / "examples" / "twelve" / "04-flywheel.toml"

HUB, RIM = Piece(0.0, 0.030, 0.040), Piece(0.0, 0.030, 0.150, 0.130)
WEB = Piece(0.010, 0.020, 0.130, 0.040)
DISC = Piece(0.0, 0.020, 0.150)


def casting(*pieces: Piece, made_by: str = "as-cast", material: str = "gray-iron-30") -> Job:
    job = wheel_job(material=material)
    bore = replace(job.work.bore, made_by=made_by)
    work = replace(job.work, pieces=pieces or (DISC,), blank="casting", bore=bore)
    return replace(job, work=work)


def thrown(throw: float | None, finished: float | None, *pieces: Piece) -> Job:
    job = casting(*pieces)
    work = replace(job.work, casting_runout=throw, finished=Finished(finished))
    return replace(job, work=work)


def held(job: Job) -> FirstHold:
    found = first_hold(job, TABLES)
    assert found is not None
    return found


def figures(hold: FirstHold) -> dict[str, Figure]:
    return {f.name: f for f in hold.figures}


def flywheel(*changes: tuple[str, str]) -> Plan:
    text = FLYWHEEL.read_text(encoding="utf-8")
    for change in changes:
        assert text.count(change[0]) == 1
        text = text.replace(*change)
    return plan(parse_job(text, "flywheel"), source_tables=TABLES)


AS_CAST = ('made_by = "reamed"', 'made_by = "as-cast"')


# When there is one


@pytest.mark.parametrize("made_by", ["as-cast", "cast", "cored", "drilled", "unknown", "solid"])
def test_a_casting_still_to_be_bored_has_a_first_hold(made_by: str) -> None:
    assert held(casting(made_by=made_by)).steps


@pytest.mark.parametrize("made_by", ["reamed", "bored", "honed"])
def test_one_that_is_bored_has_none(made_by: str) -> None:
    assert first_hold(casting(made_by=made_by), TABLES) is None


def test_work_from_bar_has_none() -> None:
    job = casting()
    assert first_hold(replace(job, work=replace(job.work, blank="bar")), TABLES) is None


def test_one_that_is_bored_and_runs_out_is_only_asked_whether_it_cleans_up() -> None:
    job = thrown(0.001, 0.146)
    bored = replace(job, work=replace(job.work, bore=replace(job.work.bore, made_by="bored")))
    hold = held(bored)
    assert hold.cleans_up is Verdict.YES
    assert not hold.steps
    assert hold.jaws is None


# What is set true


def test_a_spoked_wheel_goes_by_the_inside_of_its_rim_and_its_spokes() -> None:
    job = casting(HUB, WEB, RIM)
    spoked = replace(job, work=replace(job.work, spokes=Spokes(6, 0.012, 0.010)))
    assert held(spoked).set_true_to == "the inside of the rim; for wobble the spokes near the rim"
    assert "what the eye sees" in held(spoked).why


def test_a_webbed_pulley_goes_by_the_inside_of_its_rim() -> None:
    assert held(casting(HUB, WEB, RIM)).set_true_to.startswith(
        "the inside of the rim; for wobble the web"
    )


def test_a_plain_disc_goes_by_its_outside() -> None:
    assert held(casting(DISC)).set_true_to.startswith("the outside")


# Where the jaws go


def test_the_jaws_open_inside_the_rim_beside_the_web() -> None:
    jaws = held(casting(HUB, WEB, RIM)).jaws
    assert jaws is not None
    assert (jaws.on, jaws.opened) == ("inside of the rim", True)
    assert (jaws.start, jaws.end, jaws.diameter) == (0.0, 0.010, 0.130)


def test_they_close_on_a_stout_boss_and_leave_the_rim_free() -> None:
    stout = Piece(0.0, 0.045, 0.060), Piece(0.010, 0.020, 0.130, 0.060), RIM
    jaws = held(casting(*stout)).jaws
    assert jaws is not None
    assert (jaws.on, jaws.opened, jaws.face_out) == ("boss", False, "A")
    assert (jaws.start, jaws.end, jaws.diameter) == (0.030, 0.045, 0.060)


def test_they_do_not_take_a_large_wheel_by_a_slight_boss() -> None:
    slight = Piece(0.0, 0.045, 0.030), Piece(0.010, 0.020, 0.130, 0.030), RIM
    jaws = held(casting(*slight)).jaws
    assert jaws is not None
    assert jaws.on == "inside of the rim"


def test_they_take_a_plain_disc_by_its_outside_and_its_rim_waits() -> None:
    hold = held(casting(DISC))
    assert hold.jaws is not None
    assert hold.jaws.on == "outside"
    assert "mandrel" in hold.steps[-1].text


def test_five_spokes_and_four_jaws_do_not_divide_alike_and_eight_do() -> None:
    job = casting(HUB, WEB, RIM)
    for number, said in ((5, True), (8, False)):
        spoked = replace(job, work=replace(job.work, spokes=Spokes(number, 0.010, 0.010)))
        assert ("do not divide alike" in held(spoked).held_by) is said


# Order, pores, safety


def test_hub_and_bore_come_before_a_look_for_pores_and_that_before_the_rim() -> None:
    titles = [step.title for step in held(casting(HUB, WEB, RIM)).steps]
    order = ["Set true", "Face the hub", "Bore", "Look for pores, before any work on the rim"]
    order += ["Decide", "Bore to size, then the rim"]
    assert [t for t in titles if t in order] == order


def test_a_porous_one_is_scrapped_before_more_work_and_none_is_called_sound() -> None:
    hold = held(casting(HUB, WEB, RIM))
    text = " ".join(step.text for step in hold.steps)
    assert "scrap it now, before more work is spent" in text
    assert "says nothing of the metal not cut yet" in text
    assert any(
        "No reading, ring or sum shows that a casting is sound" in c.text for c in hold.cautions
    )
    assert "is sound" not in text


def test_a_cored_hole_is_not_trusted_and_a_solid_one_is_drilled() -> None:
    bore = {m: " ".join(s.text for s in held(casting(made_by=m)).steps) for m in ("cored", "solid")}
    assert "not to be trusted" in bore["cored"]
    assert "drill under size" in bore["solid"]
    assert "not to be trusted" not in bore["solid"]


def test_only_iron_is_warned_of_chill_and_only_opened_jaws_of_bursting() -> None:
    ids = {c.id for c in held(casting(HUB, WEB, RIM)).cautions}
    assert {"first-hold-balance", "first-hold-opened", "first-hold-hard-spot"} <= ids
    plain = {c.id for c in held(casting(DISC, material="al-scrap-cast")).cautions}
    assert not {"first-hold-opened", "first-hold-hard-spot"} & plain


def test_the_home_cast_pulley_goes_by_the_inside_of_its_rim_and_is_not_called_sound() -> None:
    """8 in by 1 1/4, web 1/2 in the middle: jaws 3/8 in deep inside a rim of 6 1/2."""
    text = FLYWHEEL.with_name("08-home-cast-pulley.toml").read_text(encoding="utf-8")
    cored = parse_job(text.replace('"reamed"', '"as-cast"'), "pulley")
    hold = held(replace(cored, work=replace(cored.work, material="al-scrap-cast")))
    assert hold.jaws is not None
    assert hold.jaws.on == "inside of the rim"
    assert hold.jaws.bite == pytest.approx(3 / 8 * INCH, abs=SUM)
    assert hold.jaws.diameter == pytest.approx(6.5 * INCH, abs=SUM)
    assert hold.cleans_up is None


# Stock: by hand


def test_the_flywheel_s_three_thirty_seconds_clean_up() -> None:
    """7 1/2 to 7.3 in is 0.100 on the radius; half of 3/32 is 0.0469, and 0.5 mm of skin."""
    hold = flywheel(AS_CAST).first_hold
    assert hold is not None
    assert hold.cleans_up is Verdict.YES
    found = figures(hold)
    assert found["rim_stock"].best == pytest.approx(0.100 * INCH, abs=SUM)
    assert found["clean_up_stock"].best == pytest.approx(THROW / 2 + SKIN, abs=SUM)
    assert found["largest_throw"].best == pytest.approx(2 * (0.100 * INCH - SKIN), abs=SUM)
    assert found["first_cut_from_touch"].best == pytest.approx(THROW + SKIN, abs=SUM)


@pytest.mark.parametrize(
    ("throw", "verdict"),
    [
        (2 * (2.0e-3 - 0.81e-3), Verdict.YES),
        (2 * (2.0e-3 - 0.79e-3), Verdict.CARE),
        (2 * (2.0e-3 - 0.41e-3), Verdict.CARE),
        (2 * (2.0e-3 - 0.39e-3), Verdict.NO),
    ],
)
def test_it_turns_where_the_deepest_and_the_least_skin_say(throw: float, verdict: Verdict) -> None:
    """2 mm of stock on the radius: half the throw, and 0.4 to 0.8 mm of skin."""
    assert held(thrown(throw, 0.146)).cleans_up is verdict


def test_one_that_does_not_clean_up_is_shared_out_and_says_what_shows() -> None:
    hold = held(thrown(0.005, 0.146))
    left = figures(hold)["throw_shared"]
    assert left.best == pytest.approx(0.005 - 2 * (0.002 - SKIN), abs=SUM)
    assert "does not clean up" in hold.clean_up
    assert "2 mm" in hold.clean_up
    # shared out it reads 3 mm, and 0.5 mm of skin comes off with it
    assert figures(hold)["first_cut_from_touch"].best == pytest.approx(0.003 + SKIN, abs=SUM)
    assert "3.5 mm (0.138 in) past the first touch" in hold.steps[-1].text


def test_no_size_to_finish_at_gives_the_largest_that_cleans_up() -> None:
    hold = held(thrown(0.003, None))
    assert hold.cleans_up is None
    largest = figures(hold)["largest_clean_outside"].best
    assert largest == pytest.approx(0.150 - 0.003 - 2 * SKIN, abs=SUM)


def test_no_throw_gives_the_reading_up_to_which_it_cleans_up() -> None:
    hold = held(thrown(None, 0.146))
    assert hold.cleans_up is None
    assert "3 mm" in hold.clean_up  # 2 x (2.0 - 0.5)


def test_stock_no_more_than_the_skin_cleans_up_never() -> None:
    hold = held(thrown(None, 0.1495))
    assert "however true it is set" in hold.clean_up
    assert "largest_throw" not in figures(hold)


@pytest.mark.parametrize("throw", [0.0005, 0.001, 0.002, 0.004])
def test_more_throw_never_cleans_up_better(throw: float) -> None:
    less, more = held(thrown(throw, 0.146)).cleans_up, held(thrown(1.3 * throw, 0.146)).cleans_up
    assert less is not None
    assert more is not None
    assert less.rank <= more.rank


# The file and the page


def test_the_key_reads_and_writes_back() -> None:
    job = parse_job(FLYWHEEL.read_text(encoding="utf-8"), "flywheel")
    assert job.work.casting_runout == pytest.approx(THROW, abs=SUM)
    assert parse_job(job_text(job), "again") == job


@pytest.mark.parametrize(
    ("change", "found"),
    [
        (('blank = "casting"', 'blank = "bar"'), "not said to be a casting"),
        (('"3/32in"', '"1in"'), "a tenth of the outside"),
    ],
)
def test_a_throw_that_cannot_be_is_refused(change: tuple[str, str], found: str) -> None:
    with pytest.raises(RefusedInput, match=found):
        flywheel(change)


def test_the_page_says_it_before_the_steps_and_the_explanation_every_sum() -> None:
    answer = flywheel(AS_CAST)
    text = plan_text(answer)
    assert text.index("\nFirst hold\n") < text.index("\nCautions, worst first\n")
    for words in ("3/32 in (2.38 mm)", "0.067 in (1.69 mm)", "it cleans up", "four jaws"):
        assert words in " ".join(text.split())
    explained = explain_text(answer)
    for name in ("rim stock", "clean up stock", "largest throw", "first cut from touch"):
        assert f"{name} = " in explained


def test_the_json_holds_jaws_and_verdict() -> None:
    whole = plan_object(flywheel(AS_CAST))
    validate(whole, plan_schema())
    written = whole["first_hold"]
    assert written["cleans_up"] == "yes"
    assert written["jaws"]["diameter_m"] == pytest.approx(6.25 * INCH, abs=SUM)
    assert plan_object(flywheel())["first_hold"]["jaws"] is None
