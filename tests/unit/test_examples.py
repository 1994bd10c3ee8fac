"""Every example file fits its published schema, plans, and reads well when printed."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from tests.on_a_mandrel import plan

from borewright.job import read_job, read_shelf
from borewright.job.schema import shelf_schema
from borewright.report.plan_json import plan_json

ROOT = Path(__file__).resolve().parents[2]
SCHEMAS = ROOT / "docs" / "schemas"
SHELF = ROOT / "examples" / "hollow-brook-shelf.toml"
JOBS = [
    *(p for p in sorted((ROOT / "examples").glob("*.toml")) if "shelf" not in p.stem),
    *sorted((ROOT / "tests" / "golden" / "jobs").glob("*.toml")),
]


def schema(name: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(
        (SCHEMAS / f"{name}.schema.json").read_text(encoding="utf-8")
    )
    return found


def table(path: Path) -> dict[str, Any]:
    return tomllib.loads(path.read_text(encoding="utf-8"))


@pytest.mark.parametrize("path", JOBS, ids=lambda p: p.stem)
def test_every_job_fits_the_job_schema_and_its_plan_the_plan_schema(path: Path) -> None:
    jsonschema.validate(table(path), schema("job"))
    answer = plan(read_job(path), read_shelf(SHELF) if path.parent.name == "examples" else None)
    jsonschema.validate(json.loads(plan_json(answer)), schema("plan"))


def test_the_shelf_fits_the_shelf_schema_which_is_up_to_date() -> None:
    jsonschema.validate(table(SHELF), schema("shelf"))
    assert schema("shelf") == shelf_schema()


def test_a_strange_key_does_not_fit() -> None:
    strange = {**table(SHELF), "drawer": "top"}
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(strange, schema("shelf"))


def test_a_plan_reads_well_in_a_terminal_and_in_a_notebook() -> None:
    answer = plan(read_job(JOBS[0]), read_shelf(SHELF))
    assert str(answer).splitlines()[1] == answer.headline
    assert repr(answer) == f"<Plan {answer.title!r}: {answer.verdict}>"
    assert answer._repr_markdown_().count("- **") == len(answer.questions)
