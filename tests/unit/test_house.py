"""What keeps the house in order: public names, maps of the rooms, sizes of files, schemas."""

from __future__ import annotations

import ast
import json
import re
import subprocess
import sys
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from tests.house_files import ROOT, our_files

import borewright
from borewright.job.schema import job_schema, shelf_schema
from borewright.report.schema import chart_schema, plan_schema, rescue_schema

PACKAGE = ROOT / "src" / "borewright"
MOST_LINES = 350


# Public names


def test_every_public_name_is_there() -> None:
    for name in borewright.__all__:
        assert getattr(borewright, name) is not None, name
    assert set(borewright.__all__) <= set(dir(borewright))
    assert sorted(borewright.__all__) == list(borewright.__all__)


def test_the_public_names_are_the_ones_we_promise() -> None:
    promised = {
        "plan", "rescue", "fit", "cut", "FitInput", "CutInput", "read_job", "read_shelf", "write_job", "Job",
        "Shelf", "Plan", "Rescue", "Tables", "tables", "BorewrightError", "RefusedInput",
    }  # fmt: skip
    assert promised == set(borewright.__all__)


def test_a_name_that_is_not_there_is_an_attribute_error() -> None:
    with pytest.raises(AttributeError, match="no attribute 'plann'"):
        borewright.plann  # noqa: B018


def test_importing_the_package_loads_nothing_of_it() -> None:
    code = "import sys, borewright; print(*sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    loaded = set(done.stdout.split())
    assert {name for name in loaded if name.startswith("borewright")} == {"borewright"}
    assert not {"numpy", "pydantic", "click", "typing", "dataclasses"} & loaded


def test_the_library_plans_as_the_command_line_does() -> None:
    job = borewright.read_job(ROOT / "examples" / "hollow-brook-drive-wheel.toml")
    shelf = borewright.read_shelf(ROOT / "examples" / "hollow-brook-shelf.toml")
    answer = borewright.plan(job, shelf)
    assert isinstance(answer, borewright.Plan)
    assert answer.verdict == "yes"


# Maps


def rooms() -> list[Path]:
    return sorted(path.parent for path in PACKAGE.rglob("__init__.py") if path.parent != PACKAGE)


def map_of(room: Path) -> str:
    tree = ast.parse((room / "__init__.py").read_text(encoding="utf-8"))
    return ast.get_docstring(tree) or ""


def named_first(docstring: str) -> set[str]:
    """What a map names at the start of its lines: one name, or several with two spaces between."""
    found: set[str] = set()
    for line in docstring.splitlines()[1:]:
        cells = re.split(r"\s{2,}", line.strip())
        for cell in cells[:-1]:
            if not re.fullmatch(r"[a-z_]+(\.py|/)?", cell):
                break
            found.add(cell.removesuffix(".py").removesuffix("/"))
    return found


@pytest.mark.parametrize("room", rooms(), ids=lambda room: room.name)
def test_a_rooms_map_names_every_file_in_it(room: Path) -> None:
    said = map_of(room)
    for path in room.iterdir():
        is_room = path.is_dir() and (path / "__init__.py").exists()
        if is_room or (path.suffix == ".py" and path.stem != "__init__"):
            assert re.search(rf"\b{path.stem}\b", said), (
                f"{room.name}: {path.name} is not on the map"
            )


@pytest.mark.parametrize("room", rooms(), ids=lambda room: room.name)
def test_a_rooms_map_names_no_file_that_is_not_in_it(room: Path) -> None:
    there = {path.stem for path in room.iterdir()}
    assert named_first(map_of(room)) <= there


def test_maps_are_read_as_they_are_written() -> None:
    """So that the test above sees the names at all."""
    written = (
        "Title.\n\n    one   what it is\n    two.py  three/   what they are\n\nMay import all."
    )
    assert named_first(written) == {"one", "two", "three"}


# Sizes


def test_no_file_is_too_long_to_read() -> None:
    code = [p for p in our_files() if p.suffix in (".py", ".typ", ".html", ".css", ".js")]
    assert len(code) > 100
    lines = {str(p.relative_to(ROOT)): p.read_text(encoding="utf-8").count("\n") for p in code}
    assert {name: n for name, n in lines.items() if n > MOST_LINES} == {}


# Documents

SCHEMAS: dict[str, Callable[[], dict[str, Any]]] = {
    "chart.schema.json": chart_schema,
    "job.schema.json": job_schema,
    "plan.schema.json": plan_schema,
    "rescue.schema.json": rescue_schema,
    "shelf.schema.json": shelf_schema,
}


def test_every_published_schema_is_the_current_one() -> None:
    published = {path.name: path for path in (ROOT / "docs" / "schemas").iterdir()}
    assert set(published) == set(SCHEMAS)
    for name, made in SCHEMAS.items():
        assert json.loads(published[name].read_text(encoding="utf-8")) == made(), name


def test_every_example_fits_its_schema() -> None:
    """A file with `shelf` in its name is a shelf, any other a job."""
    examples = sorted((ROOT / "examples").glob("*.toml"))
    assert examples
    for path in examples:
        schema = shelf_schema() if "shelf" in path.name else job_schema()
        Draft202012Validator(schema).validate(tomllib.loads(path.read_text(encoding="utf-8")))
