"""Castings that several tests ask for: the example's wheel, and discs."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from tests.cli_run import ran

from borewright.job import parse_job
from borewright.job.records import Job
from borewright.reference.library import Tables

ROOT = Path(__file__).parents[1]
EXAMPLE = str(ROOT / "examples" / "hollow-brook-cast-wheel.toml")
TABLES = Tables()
DISC = 'units = "mm"\nwork = {material = "MATERIAL", bore = BORE, outside = OUTSIDE, length = LONG}'


def said(*options: str, job: str = EXAMPLE) -> dict[str, Any]:
    done = ran("make", "blank", job, *options, "--json")
    assert done.code == 0, done.err
    found: dict[str, Any] = json.loads(done.out)
    return found


def told(*options: str, job: str = EXAMPLE) -> str:
    done = ran("make", "blank", job, *options)
    assert done.code == 0, done.err
    return " ".join(done.out.split())


def disc(
    material: str = "gray-iron-30", bore: object = 40, outside: float = 220, long: float = 60
) -> Job:
    text = DISC.replace("MATERIAL", material).replace("BORE", str(bore))
    return parse_job(text.replace("OUTSIDE", str(outside)).replace("LONG", str(long)), "job.toml")


def disc_in(folder: Path) -> str:
    """The disc of iron as a job file there."""
    path = folder / "disc.toml"
    text = DISC.replace("MATERIAL", "gray iron").replace("BORE", '"40mm"')
    path.write_text(text.replace("OUTSIDE", "220").replace("LONG", "60"), encoding="utf-8")
    return str(path)
