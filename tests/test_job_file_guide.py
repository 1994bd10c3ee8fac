"""Every TOML block of the guide to the files reads, fits its schema and plans."""

from __future__ import annotations

import json
import re
import tomllib
from pathlib import Path

import jsonschema
import pytest

from borewright.job import parse_job, parse_shelf
from borewright.service.planned import plan

ROOT = Path(__file__).resolve().parents[1]
GUIDE = (ROOT / "docs" / "job-file.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"```toml\n(.*?)```", GUIDE, re.S)
JOBS, SHELVES = BLOCKS[:-1], BLOCKS[-1:]


@pytest.mark.parametrize("text", JOBS, ids=lambda t: t.splitlines()[0])
def test_a_job_of_the_guide_fits_the_schema_and_plans(text: str) -> None:
    schema = json.loads((ROOT / "docs" / "schemas" / "job.schema.json").read_text(encoding="utf-8"))
    jsonschema.validate(tomllib.loads(text), schema)
    assert plan(parse_job(text, "guide")).headline


@pytest.mark.parametrize("text", SHELVES)
def test_the_shelf_of_the_guide_reads(text: str) -> None:
    assert parse_shelf(text, "guide").mandrels[0].name == "the 5/8 in mandrel"


def test_the_guide_names_every_key_of_the_schema() -> None:
    schema = json.loads((ROOT / "docs" / "schemas" / "job.schema.json").read_text(encoding="utf-8"))
    keys = {k for table in schema["$defs"].values() for k in table.get("properties", {})}
    unnamed = {k for k in keys if k not in GUIDE} - {"to", "between_centres"}
    assert unnamed <= {"large_end", "taper", "press_force"}
