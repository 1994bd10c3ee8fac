"""A list of parts against one shelf: every row answered or told why not."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest
from tests.cli_run import ran, refused

from borewright.answer.records import Verdict
from borewright.errors import RefusedInput
from borewright.job import read_shelf
from borewright.job.parts_file import parse_parts
from borewright.reference.library import Tables
from borewright.service.planned import plan
from borewright.shopwide.parts import plan_parts, tally

SHELF = Path(__file__).resolve().parents[2] / "examples" / "hollow-brook-shelf.toml"
LIST = """part,material,outside,length,bore,measured_with,made_by,quantity
wheel,6061,2 1/2in,1in,0.6252in,plug gauge,reamed,3
pulley,gray iron,14in,1in,0.9in,plug gauge,bored,
"bad, one",6061,2 1/2,1in,0.6252in,plug gauge,reamed,1
odd,unobtainium,2in,1in,0.6252in,plug gauge,reamed,1
"""
TABLES = Tables()


def test_every_row_is_a_part_or_a_bad_row_with_its_line() -> None:
    read = parse_parts(LIST, "parts.csv")
    assert [p.job.title for p in read.parts] == ["wheel", "pulley", "odd"]
    assert [b.line for b in read.bad] == [4]
    assert "2 1/2" in read.bad[0].reason


def test_each_part_gets_the_answer_that_plan_gives() -> None:
    read, shelf = parse_parts(LIST, "parts.csv"), read_shelf(SHELF)
    answers = plan_parts(read.parts, shelf, TABLES)
    alone = [plan(p.job, shelf, source_tables=TABLES) for p in read.parts[:2]]
    assert [a.verdict for a in answers[:2]] == [p.verdict for p in alone]
    assert [a.reason for a in answers[:2]] == [p.headline for p in alone]
    assert answers[2].verdict is None
    assert "unobtainium" in answers[2].reason
    assert tally(answers) == {"yes": 1, "with care": 0, "no": 1, "refused": 1}


def test_the_bar_moves_once_a_part() -> None:
    moved: list[int] = []
    plan_parts(parse_parts(LIST, "l").parts, read_shelf(SHELF), TABLES, lambda: moved.append(1))
    assert len(moved) == 3


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("part,material,outside,length\nw,6061,2in,1in", "no column 'bore'"),
        ("part,material,outside,length,bore,weihgt\nw,6061,2in,1in,1in,1", "weihgt"),
        ("part,material,outside,length,bore\n", "at least one row"),
    ],
    ids=["missing", "strange", "empty"],
)
def test_a_list_that_cannot_be_read_at_all_is_refused(text: str, says: str) -> None:
    with pytest.raises(RefusedInput, match=says):
        parse_parts(text, "parts.csv")


def test_the_command_writes_the_answers_and_says_no_where_one_is(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("parts.csv").write_text(LIST, encoding="utf-8")
    done = ran("shelf", "parts", "parts.csv", str(SHELF), "--out", "answers.csv")
    assert done.code == 3
    assert done.out.startswith("1 yes, 0 with care, 1 no, 1 refused; 1 rows not read.")
    rows = list(csv.DictReader(io.StringIO(Path("answers.csv").read_text(encoding="utf-8"))))
    assert [r["verdict"] for r in rows] == ["yes", "no", "refused", "not read"]
    assert rows[0]["mandrel"] == "the 5/8 in mandrel"
    machine = json.loads(ran("shelf", "parts", "parts.csv", str(SHELF), "--json").out)
    assert machine["parts"][0]["verdict"] == Verdict.YES.value
    assert machine["parts"][0]["press_distance_m"] > 0.02


def test_a_missing_list_is_refused_in_one_line(tmp_path: Path) -> None:
    assert "parts.csv" in refused("shelf", "parts", str(tmp_path / "parts.csv"), str(SHELF))
