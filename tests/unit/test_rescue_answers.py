"""What a rescue says: every word for a trouble, the order, the JSON, the lines and the refusals."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator, validate
from tests.cli_run import ran, refused
from tests.jobs_made import wheel_job

import borewright
from borewright.answer.records import Have, Verdict
from borewright.answer.rescue import DrawingHolds, Rescue
from borewright.job.records import BoreLimits, BoreReading
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.report.explain import figures_text
from borewright.report.rescue_json import rescue_object
from borewright.report.rescue_text import rescue_explained, rescue_text
from borewright.report.schema import rescue_schema, rescue_schema_text
from borewright.service.rescued import rescue

ROOT = Path(__file__).resolve().parents[2]
WHEEL = str(ROOT / "examples" / "hollow-brook-drive-wheel.toml")
SHELF = str(ROOT / "examples" / "hollow-brook-shelf.toml")
WORN = str(ROOT / "examples" / "twelve" / "11-worn-pulley.toml")
TABLES = Tables()
ROWS = TABLES.table("troubles").rows
WORDS = [word for row in ROWS for word in (row.text("id"), *row.names("names"))]
SIZES = {"too-big": 0.0162, "too-small": 0.0158}
LIMITS = BoreLimits(0.016, 0.016018)


def answer(word: str, **found: Any) -> Rescue:
    said = {"bore": SIZES.get(TABLES.trouble(word).id, 0.016006), "wanted": LIMITS, **found}
    return rescue(wheel_job(), trouble=(word,), source_tables=TABLES, **said)


# Every word


@pytest.mark.parametrize("word", WORDS)
def test_every_word_for_a_trouble_is_understood(word: str) -> None:
    assert TABLES.trouble(word).id in [row.text("id") for row in ROWS]
    assert TABLES.trouble(word.upper()).id == TABLES.trouble(word).id


@pytest.mark.parametrize("word", [row.text("id") for row in ROWS])
def test_every_trouble_reaches_a_way_out_or_an_honest_stop(word: str) -> None:
    found = answer(word)
    assert found.trouble[0].id == word
    kept = [w for w in found.ways_out if not w.last and w.verdict is not Verdict.NO]
    assert kept
    assert kept[0].steps or kept[0].id == "accept"
    stopped = found.headline.startswith("Stop")
    assert stopped == (word == "cracked") == (found.verdict is Verdict.NO)


def test_what_was_said_and_what_was_read_are_both_answered() -> None:
    found = answer("scored", bore=0.0162)
    assert [(t.id, t.measured) for t in found.trouble] == [("too-big", True), ("scored", False)]


def test_a_fault_of_form_that_nobody_measured_is_never_a_plain_yes_for_what_goes_into_it() -> None:
    for word in ("oval", "tapered", "bell-mouthed"):
        found = answer(word)
        assert "measure it" in found.headline
        for way in ("other-mandrel", "fresh-stub"):
            assert found.way(way).verdict is not Verdict.YES, (word, way)  # type: ignore[union-attr]


# The order


def key(found: Rescue) -> list[tuple[Any, ...]]:
    """The drawing's limits are stated in all of these."""
    first = ("look", "free-it")
    return [
        (
            w.last,
            w.id not in first,
            w.verdict is Verdict.NO,
            any(n.have is Have.BUY for n in w.needs),
            w.drawing.rank,
            w.verdict.rank,
        )
        for w in found.ways_out
    ]


@pytest.mark.parametrize("word", [row.text("id") for row in ROWS])
def test_the_ways_stand_in_the_order_that_is_printed_and_scrap_is_last(word: str) -> None:
    found = answer(word)
    assert key(found) == sorted(key(found))
    assert [w.last for w in found.ways_out].count(True) == 1
    assert found.ways_out[-1].last
    assert "always last" in found.ranked_by


def test_no_way_is_listed_twice_and_each_says_why() -> None:
    found = answer("too-big")
    names = [w.id for w in found.ways_out]
    assert len(names) == len(set(names))
    for way in found.ways_out:
        assert way.reason.strip()
        assert way.drawing_why.strip()
        assert bool(way.steps) <= (way.verdict is not Verdict.NO)


def test_the_drawing_holds_only_where_the_bore_is_what_it_asks() -> None:
    big = answer("too-big")
    holds = {w.id: w.drawing for w in big.ways_out}
    assert holds["bush"] is DrawingHolds.ASK
    assert holds["next-reamer"] is DrawingHolds.NO
    assert holds["fresh-stub"] is DrawingHolds.NO
    assert {w.drawing for w in answer("too-small").ways_out if w.id == "to-size"} == {
        DrawingHolds.YES
    }


def test_the_times_are_those_of_an_own_table(tmp_path: Path) -> None:
    rows = (ROOT / "src/borewright/reference/data/rescue_minutes.csv").read_text(encoding="utf-8")
    line = next(r for r in rows.splitlines() if r.startswith("bush,"))
    own = rows.replace(line, "bush,200,300,400,ours,Slow hands.")
    (tmp_path / "rescue_minutes.csv").write_text(own, encoding="utf-8")
    found = rescue(wheel_job(), bore=0.0162, wanted=LIMITS, source_tables=Tables(tmp_path)).way(
        "bush"
    )
    assert found is not None
    assert found.takes.best == 300 * 60


# Paper and JSON


@pytest.mark.parametrize("word", [row.text("id") for row in ROWS])
def test_its_json_fits_the_schema_and_its_text_the_terminal(word: str) -> None:
    found = answer(word)
    written = json.loads(json.dumps(rescue_object(found), allow_nan=False))
    validate(written, rescue_schema())
    assert written["ways_out"][-1]["takes_s"]["best"] is None
    for text in (rescue_text(found), rescue_explained(found)):
        assert max(len(line) for line in text.splitlines()) <= 90
    assert found.headline.split(".")[0][:60] in rescue_text(found)


def test_the_schema_is_itself_a_schema() -> None:
    Draft202012Validator.check_schema(rescue_schema())
    assert json.loads(rescue_schema_text()) == rescue_schema()


def test_the_steps_of_another_way_are_printed_for_the_asking() -> None:
    found = answer("too-big")
    assert "How: bore it out and press in a bush" in rescue_text(found, "bush")


def test_every_figure_is_explained_by_its_rule() -> None:
    found = answer("too-big")
    bush = found.way("bush")
    assert bush is not None
    text = figures_text(bush.figures, Show("mm"))
    assert "p = interference / (d C)" in " ".join(text.split())


def test_a_rescue_reads_well_by_itself() -> None:
    found = answer("too-big")
    assert str(found).splitlines()[1] == found.headline
    assert repr(found) == f"<Rescue {found.title!r}: {found.verdict}>"
    assert borewright.rescue is rescue
    assert isinstance(found, borewright.Rescue)


# The command


def test_the_command_answers_and_says_no_by_its_exit() -> None:
    done = ran("rescue", WHEEL, "--shelf", SHELF, "--bore", "0.6291in")
    assert (done.code, done.err) == (0, "")
    assert "Ways out, best first" in done.out
    stopped = ran("rescue", WORN)
    assert stopped.code == 3
    assert "Stop: do not press it" in stopped.out


def test_readings_are_repeated_and_two_at_one_depth_are_two_directions() -> None:
    at = ("--bore-at", "1/2in", "0.6251in", "--bore-at", "1/2in", "0.6275in")
    done = ran("rescue", WHEEL, "--shelf", SHELF, *at, "--json")
    written = json.loads(done.out)
    validate(written, rescue_schema())
    assert [t["id"] for t in written["trouble"]] == ["oval"]
    assert written["figures"]["out_of_round_m"]["best"] == pytest.approx(0.0024 * 0.0254)


def test_the_drawing_s_class_can_be_said_beside_the_job() -> None:
    done = ran("rescue", WHEEL, "--shelf", SHELF, "--bore", "0.6291in", "--wanted", "5/8in H7")
    assert "the drawing's limits" in done.out


def test_a_bare_number_is_read_only_where_units_say() -> None:
    assert "--bore" in refused("rescue", WHEEL, "--bore", "0.6291")
    assert ran("rescue", WHEEL, "--shelf", SHELF, "--bore", "0.6291", "--units", "inch").code == 0


@pytest.mark.parametrize(
    ("typed", "where"),
    [
        (("--trouble", "wobbly"), "--trouble"),
        (("--trouble", "too-big"), "--trouble"),
        (("--bore", "18mm to 18.1mm"), "--bore"),
        (("--bore", "25mm"), "--bore"),
        (("--bore", "0.6291mm"), "--bore"),
        (("--bore-at", "3in", "0.6251in"), "--bore-at"),
        (("--bore", "0.6291in", "--wanted", "5/8in"), "--wanted"),
        (("--bore", "0.6291in", "--measured-with", "string"), "--measured-with"),
        (("--bore", "0.6291in", "--way", "glue"), "--way"),
    ],
)
def test_what_cannot_be_used_is_refused_in_one_sentence(typed: tuple[str, ...], where: str) -> None:
    assert f" {where}: found" in refused("rescue", WHEEL, *typed)


def test_a_bore_stated_by_its_class_alone_is_no_reading_of_it(tmp_path: Path) -> None:
    text = (ROOT / "examples" / "twelve" / "10-gear-blanks.toml").read_text(encoding="utf-8")
    bore = next(line for line in text.splitlines() if line.startswith("bore"))
    job = tmp_path / "job.toml"
    job.write_text(text.replace(bore, 'bore = "15 H7"'), encoding="utf-8")
    assert " --bore: found nothing" in refused("rescue", str(job))
    done = ran("rescue", str(job), "--bore", "15.03mm")
    assert "12 µm" in done.out


def test_the_shop_s_own_gauge_is_taken_to_have_read_a_bore_that_nobody_says_was_read() -> None:
    job = borewright.read_job(WHEEL)
    bare = replace(
        job,
        work=replace(job.work, bore=replace(job.work.bore, measured_with="unknown", readings=())),
    )
    found = rescue(bare, borewright.read_shelf(SHELF), bore=0.6291 * 0.0254)
    # Its bore gauge reads from 18 mm; the telescoping gauge is the closest that reaches this bore.
    assert "0.0006 in (15 µm) either way" in found.echo[1]


def test_readings_that_differ_by_less_than_the_gauge_sees_are_no_trouble() -> None:
    at = (BoreReading(0.01, 0.016006, "a"), BoreReading(0.01, 0.016009, "b"))
    found = rescue(wheel_job(), readings=at, wanted=LIMITS, source_tables=TABLES)
    assert found.trouble == ()
    assert found.verdict is Verdict.YES
