"""How the cuts are taken, on the screen, in the JSON and in the folder of charts."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from jsonschema import ValidationError, validate
from tests.charts_made import three
from tests.cli_run import ran
from tests.sample_plan import sample_plan
from tests.schedule_made import blocked, scheduled_plan, with_schedule

from borewright.answer.records import Verdict
from borewright.answer.schedule import Schedule
from borewright.report import plan_text
from borewright.report.plan_json import plan_json
from borewright.report.schema import plan_schema
from borewright.service import planned

JOB = str(Path(__file__).parents[2] / "examples" / "hollow-brook-drive-wheel.toml")
NAMES = {f"{chart.id}.svg" for chart in three()}


def folded(text: str) -> str:
    return " ".join(text.split())


# The screen


def test_the_screen_says_each_cut_in_order_with_wait_time_limit_and_stop() -> None:
    text = plan_text(with_schedule(sample_plan(), 4, blocked=blocked()))
    assert max(map(len, text.splitlines())) <= 90
    said = folded(text)
    first = "1. first face, light: 120 rpm, 0.004 in/rev (0.102 mm/rev), 0.030 in (0.76 mm) deep, 1 pass"
    assert (
        f"{first}, towards the headstock (tightens). Takes 35 s; limited by grip: the grip holds no more"
        in said
    )
    assert "Stops 1/16 in short of the mandrel, in the relief." in said
    assert (
        "Wait 7 min before it. Takes 3.5 min; limited by chatter: wider chips sing at this overhang."
        in said
    )
    assert (
        said.index("1. first face")
        < said.index("2. rough the outside")
        < said.index("4. rough the step")
    )
    assert "About 16 min in all, 7 min of it waiting" in said, "37 + 98 + 159 + 220 + 420 s"
    assert "the last size reads 2.5008 in (63.520 mm); cold it is then 2.500 in (63.50 mm)" in said
    assert "Cuts that nothing here takes" in text
    assert "Knurl it before mounting." in said


def test_without_a_schedule_or_with_a_no_the_screen_is_what_it_was() -> None:
    plain = sample_plan()
    assert "1. rim cut 1" not in plan_text(plain)
    assert plan_text(replace(plain, schedule=Schedule((), 0.0))) == plan_text(plain)
    refused = replace(scheduled_plan(), verdict=Verdict.NO)
    assert "Cuts" not in plan_text(refused).splitlines()


# The JSON


def written(plan: Any) -> dict[str, Any]:
    read = json.loads(plan_json(plan))
    validate(read, plan_schema())
    return dict(read)


def test_the_json_has_the_schedule_with_its_charts_as_plain_arrays() -> None:
    made = with_schedule(sample_plan("mm"), 12, blocked=blocked())
    assert made.schedule is not None
    found = written(made)["schedule"]
    assert [t["cut"] for t in found["taken"]] == [c.id for c in made.cuts]
    assert found["taken"][3]["wait_s"] == 420.0
    assert found["taken"][1]["seconds_s"] == 98.0
    assert found["taken"][2]["grip_left"] == [0.96, 0.9]
    assert found["target"] == {"size_m": 0.0635203, "warmth_K": 17.0}
    assert [b["limit"] for b in found["blocked"]] == ["chatter", "slip"]
    for chart, made_chart in zip(found["charts"], three(), strict=True):
        assert chart["y_kind"] == made_chart.y_kind
        assert [tuple(line["y"]) for line in chart["lines"]] == [c.y for c in made_chart.lines]
        assert [m["x"] for m in chart["marks"]] == [m.x for m in made_chart.marks]


def test_no_schedule_and_no_target_are_null() -> None:
    assert written(sample_plan())["schedule"] is None
    assert written(with_schedule(sample_plan(), 2, target=None))["schedule"]["target"] is None


def test_a_schedule_short_of_anything_does_not_fit_the_schema() -> None:
    read = written(scheduled_plan())
    for key in ("taken", "charts", "target"):
        short = {**read, "schedule": {k: v for k, v in read["schedule"].items() if k != key}}
        with pytest.raises(ValidationError):
            validate(short, plan_schema())


# The folder of charts


@pytest.fixture
def planned_so(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(planned, "plan", lambda *_, **__: scheduled_plan())


@pytest.mark.usefixtures("planned_so")
def test_the_charts_are_written_into_a_folder_made_for_them(tmp_path: Path) -> None:
    folder = tmp_path / "charts"
    assert ran("plan", JOB, "--charts", str(folder)).code == 0
    assert {path.name for path in folder.iterdir()} == NAMES
    for path in folder.iterdir():
        root = ElementTree.fromstring(path.read_text(encoding="utf-8"))
        assert root.get("data-chart") == path.stem
        assert root.get("width") == "120mm"
    before = {path.name: path.read_bytes() for path in folder.iterdir()}
    assert ran("plan", JOB, "--charts", str(folder)).code == 0, "and over the old ones"
    assert {path.name: path.read_bytes() for path in folder.iterdir()} == before


@pytest.mark.usefixtures("planned_so")
def test_a_file_where_a_folder_is_wanted_is_refused_and_nothing_is_written(tmp_path: Path) -> None:
    place, sheet = tmp_path / "taken", tmp_path / "sheet.pdf"
    place.write_text("mine")
    done = ran("plan", JOB, "--charts", str(place), "--sheet", str(sheet))
    assert done.code == 2
    assert done.out == ""
    assert done.err.count("\n") == 1
    assert "found a file; allowed is a folder to write the charts into" in done.err
    assert place.read_text() == "mine"
    assert not sheet.exists()


@pytest.mark.usefixtures("planned_so")
@pytest.mark.parametrize("name", ["", "no/such/place", "nul\0"])
def test_a_folder_that_cannot_be_is_refused_in_one_sentence(name: str, tmp_path: Path) -> None:
    done = ran("plan", JOB, "--charts", str(tmp_path / name) if name else name)
    assert done.code == 2
    assert done.err.count("\n") == 1
    assert list(tmp_path.iterdir()) == []


@pytest.mark.usefixtures("planned_so")
def test_where_one_file_cannot_be_written_none_is_and_no_folder_stays(tmp_path: Path) -> None:
    folder = tmp_path / "charts"
    done = ran("plan", JOB, "--charts", str(folder), "--sheet", str(tmp_path / "no" / "sheet.pdf"))
    assert done.code == 2
    assert list(tmp_path.iterdir()) == []
    kept = tmp_path / "kept"
    (kept / "push-against-position.svg").mkdir(parents=True)
    assert ran("plan", JOB, "--charts", str(kept)).code == 2
    assert [path.name for path in kept.iterdir()] == ["push-against-position.svg"]


@pytest.mark.usefixtures("planned_so")
def test_a_chart_is_not_written_over_the_drawing(tmp_path: Path) -> None:
    same = tmp_path / "grip-against-radius.svg"
    done = ran("plan", JOB, "--charts", str(tmp_path), "--drawing", str(same))
    assert done.code == 2
    assert "the same file twice" in done.err
    assert not same.exists()


def test_a_plan_without_charts_says_so_and_makes_no_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(planned, "plan", lambda *_, **__: sample_plan())
    folder = tmp_path / "charts"
    done = ran("plan", JOB, "--charts", str(folder))
    assert done.code == 0
    assert "no chart was written" in done.err
    assert not folder.exists()
