"""A table value, multiplied by 1.1 in a folder of own tables, moves its figure everywhere.

In the JSON, in the explained lines and in the text of the printed sheet. The expected factor is
worked from the rule of the figure (in the row below), never from a former output.
"""

from __future__ import annotations

import csv
import json
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader
from tests.jobs_made import turning, wheel_job

from borewright.answer.plan import Plan
from borewright.answer.records import Figure
from borewright.job.records import Job, MandrelNote
from borewright.reference.library import DATA, Tables
from borewright.report.explain import explain_text
from borewright.report.plan_json import plan_json
from borewright.report.taken_words import schedule_of
from borewright.report.words import figure_words, show_for
from borewright.service.files import sheet_bytes
from borewright.service.planned import plan

FACTOR = 1.1
SAME_RULE = 2e-3  # the taper's T/2 beside μ, and thrust beside torque, are left out of the factors


@dataclass(frozen=True)
class Row:
    """One cell of a table, the figure that must move, and by what factor (None: it must just move)."""

    table: str
    key: dict[str, str]
    column: str
    figure: str
    factor: float | None


def row(table: str, key: str, column: str, figure: str, factor: float | None) -> Row:
    pairs = dict(part.split("=") for part in key.split(","))
    return Row(table, pairs, column, figure, factor)


ROWS = [
    row(
        "friction",
        "family=aluminium,lubrication=oiled,quantity=mu_on",
        "best",
        "push_expected",
        None,
    ),
    row(
        "material_properties",
        "material=al-6061-t6,property=modulus",
        "best",
        "outside_growth",
        None,
    ),
    row("roughness", "id=reamed", "best", "push_expected", None),
    row("kienzle", "material=al-6061-t6", "kc11_best", "proof_rim_force", FACTOR),
    row("allowances", "id=proof_factor", "best", "proof_weight", FACTOR),
    row("allowances", "id=proof_arm_mm", "best", "proof_weight", 1 / FACTOR),
    row("allowances", "id=touch_push", "best", "touch_push", FACTOR),
    row("plain_mandrels", "size=5/8 in", "small_end_under", "touch_rule_reading", None),
    row(
        "material_properties",
        "material=al-6061-t6,property=expansion",
        "best",
        "push_to_look_for",
        None,
    ),
    row("cutting_speeds", "material=al-6061-t6,tool=hss", "best", "rough_spindle", None),
    row("cut_defaults", "cut_class=aluminium", "finish_depth", "finish_depth", FACTOR),
    row("cutting_corrections", "id=tool_wear", "best", "proof_rim_force", FACTOR),
    row(
        "friction",
        "family=aluminium,lubrication=oiled,quantity=off_ratio",
        "best",
        "push_off_force",
        FACTOR,
    ),
    row(
        "friction",
        "family=aluminium,lubrication=oiled,quantity=slip_ratio",
        "low",
        "push_to_look_for",
        1 / FACTOR,
    ),
    row(
        "friction",
        "family=aluminium,lubrication=oiled,quantity=mu_on",
        "high",
        "push_to_stop_at",
        None,
    ),
    row("roughness", "id=reamed", "low", "push_to_stop_at", None),
    row("roughness", "id=ground-mandrel", "best", "push_expected", None),
    row("cut_defaults", "cut_class=aluminium", "rough_feed", "rough_feed", FACTOR),
    row("cut_defaults", "cut_class=aluminium", "finish_feed", "finish_feed", FACTOR),
    row("plain_mandrels", "size=5/8 in", "ground_length", "touch_rule_reading", None),
    row("plain_mandrels", "size=5/8 in", "end_length", "touch_gate_near", None),
    row("plain_mandrels", "size=5/8 in", "taper", "touch_rule_reading", None),
    row("allowances", "id=dog_clearance", "best", "touch_gate_near", None),
    row("allowances", "id=roughness_loss", "best", "push_expected", None),
    row("kienzle", "material=al-6061-t6", "mc_best", "proof_rim_force", None),
    row("cutting_corrections", "id=hss_tool", "best", "proof_rim_force", FACTOR),
    row("allowances", "id=warming_difference", "best", "push_to_look_for", None),
]
IDS = [f"{r.table} {' '.join(r.key.values())} {r.column}" for r in ROWS]


def job(for_row: Row) -> Job:
    wished = for_row.table not in ("cutting_speeds", "cut_defaults")
    inch = for_row.table == "plain_mandrels"
    mandrel = MandrelNote(0.015875) if inch else MandrelNote(0.016)
    bore = 0.015881 if inch else 0.016006
    # A heavy cut, so that it is the cut and not the least push expected that says what to look for.
    heavy = turning(0.9e-3) if for_row.figure == "push_to_look_for" else turning()
    return wheel_job(bore=bore, mandrels=(mandrel,), cuts=heavy if wished else ())


def changed(into: Path, which: Row) -> Tables:
    """The built-in table with one cell multiplied, kept in order with its neighbours."""
    with (DATA / f"{which.table}.csv").open(encoding="utf-8", newline="") as source:
        rows = list(csv.DictReader(source))
    hits = [r for r in rows if all(r[k] == v for k, v in which.key.items())]
    assert len(hits) == 1
    _multiply(hits[0], which.column)
    with (into / f"{which.table}.csv").open("w", encoding="utf-8", newline="") as out:
        writer = csv.DictWriter(out, list(rows[0]))
        writer.writeheader()
        writer.writerows(rows)
    return Tables(into)


def _multiply(cells: dict[str, str], column: str) -> None:
    value = float(cells[column]) * FACTOR
    cells[column] = repr(value)
    for name, pick in (("low", min), ("high", max)):
        end = column.replace("best", name)
        if end != column and cells.get(end):
            cells[end] = repr(pick(float(cells[end]), value))


def step_figure(answer: Plan, name: str) -> Figure:
    return next(f for s in answer.steps for f in s.figures if f.name == name)


def json_value(answer: Plan, name: str) -> float:
    for step in json.loads(plan_json(answer))["steps"]:
        for key, value in step["figures"].items():
            if key.startswith(name):
                return float(value["best"])
    raise AssertionError(name)


def sheet_text(answer: Plan) -> str:
    """The first page, and that of the cutting where there is one."""
    pages = PdfReader(BytesIO(sheet_bytes(answer))).pages
    assert len(pages) == 1 + (schedule_of(answer) is not None)
    return "".join("".join(page.extract_text().split()) for page in pages)


def explained(answer: Plan, name: str, tables: Tables) -> str:
    words = name.replace("_", " ")
    lines = " ".join(explain_text(answer, tables).split())
    return lines[lines.index(f"{words} = ") :].split(";")[0]


def shown(answer: Plan, name: str) -> str:
    figure = step_figure(answer, name)
    return figure_words(
        Figure(figure.name, figure.best, figure.unit, kind=figure.kind), show_for(answer)
    )


@pytest.mark.parametrize("which", ROWS, ids=IDS)
def test_ten_per_cent_more_in_a_table_moves_its_figure_everywhere(
    which: Row, tmp_path: Path
) -> None:
    built_in, own = Tables(), changed(tmp_path, which)
    before, after = (plan(job(which), source_tables=t) for t in (built_in, own))
    was, now = (json_value(answer, which.figure) for answer in (before, after))
    assert now != was
    if which.factor is not None:
        assert now / was == pytest.approx(which.factor, rel=SAME_RULE)
    if shown(before, which.figure) == shown(after, which.figure):
        pytest.fail("moves by less than is shown: pick another figure for this row")
    assert explained(before, which.figure, built_in) != explained(after, which.figure, own)
    assert "".join(shown(after, which.figure).split()) in sheet_text(after)


def test_the_rows_are_twenty_five_or_more_and_all_differ() -> None:
    assert len({(r.table, tuple(r.key.values()), r.column) for r in ROWS}) == len(ROWS) >= 25
