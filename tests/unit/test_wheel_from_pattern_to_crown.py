"""One wheel all the way: finished sizes, casting, pattern, weight, the plan that turns the casting,
and the crown. Every number is met again where it is used next."""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import Any

import pytest
from tests.cli_run import ran

from borewright.job import read_job
from borewright.reference.library import Tables

ROOT = Path(__file__).parents[2]
EXAMPLE = ROOT / "examples" / "hollow-brook-cast-wheel.toml"
INCH = 0.0254
TABLES = Tables()
ROUNDED = 1e-9
"""Relative: what sums of floats may leave."""


def told(*words: str) -> dict[str, Any]:
    done = ran(*words, "--json")
    assert done.code == 0, done.err
    found: dict[str, Any] = json.loads(done.out)
    return found


@pytest.fixture(scope="module")
def cast_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("cast") / "casting.toml"


@pytest.fixture(scope="module")
def blank(cast_file: Path) -> dict[str, Any]:
    return told("make", "blank", str(EXAMPLE), "--job", str(cast_file))


@pytest.fixture(scope="module")
def plan(blank: dict[str, Any], cast_file: Path) -> dict[str, Any]:
    assert blank["by"] == "casting"
    return told("plan", str(cast_file))


def test_pattern_over_casting_is_one_and_the_shrinkage(blank: dict[str, Any]) -> None:
    for name in ("outside", "length"):
        ratio = blank[f"pattern_{name}_m"] / blank[f"casting_{name}_m"]
        assert ratio == pytest.approx(1 + blank["shrinkage_m_per_m"], rel=ROUNDED)
    # 5/32 and 7/32 in/ft are what the books say of aluminium; 3/16 is their middle
    assert blank["shrinkage_m_per_m"] == pytest.approx(3 / 16 / 12, rel=ROUNDED)


def test_casting_less_finished_is_the_stock_by_face(blank: dict[str, Any]) -> None:
    assert blank["finished_outside_m"] == pytest.approx(5 * INCH)
    off = blank["casting_outside_m"] - 5 * INCH
    assert off == pytest.approx(2 * blank["stock_outside_m"], rel=1e-6)
    off = blank["casting_length_m"] - 2 * INCH
    assert off == pytest.approx(blank["stock_face_a_m"] + blank["stock_face_b_m"], rel=1e-6)
    assert blank["stock_outside_m"] > TABLES.allowance("skin_depth").high


def test_the_written_job_has_the_casting_and_the_finished_sizes(
    blank: dict[str, Any], cast_file: Path
) -> None:
    work, asked = read_job(cast_file).work, read_job(EXAMPLE).work
    assert work.blank == "casting"
    assert work.outside == pytest.approx(blank["casting_outside_m"], rel=ROUNDED)
    assert work.length == pytest.approx(blank["casting_length_m"], rel=ROUNDED)
    assert (work.finished.outside, work.finished.form.length) == (5 * INCH, 2 * INCH)
    assert work.finished.tolerance == asked.finished.tolerance
    assert work.finished.form.crown == asked.finished.form.crown
    assert work.bore.limits == asked.bore.limits
    assert work.quantity == asked.quantity


def test_the_plan_cuts_off_exactly_the_stock(blank: dict[str, Any], plan: dict[str, Any]) -> None:
    cuts = {cut["id"]: cut for cut in plan["cuts"]}
    turned = [c for c in plan["cuts"] if c["kind"] == "turn"]
    assert turned[0]["diameter_m"] == pytest.approx(blank["casting_outside_m"], rel=ROUNDED)
    assert turned[-1]["leaves_m"] == pytest.approx(blank["finished_outside_m"], rel=ROUNDED)
    off = sum(cut["depth_m"] * cut["passes"] for cut in turned)
    assert off == pytest.approx(blank["stock_outside_m"], rel=1e-6)
    faced = cuts["face-trailing"]
    assert faced["depth_m"] * faced["passes"] == pytest.approx(blank["stock_face_b_m"], rel=1e-6)
    assert turned[0]["depth_m"] >= TABLES.allowance("skin_depth").low


def test_the_plan_holds_the_casting_by_what_the_blank_says(
    blank: dict[str, Any], plan: dict[str, Any]
) -> None:
    assert blank["boss"] == "none"
    assert "inside of the rim" in plan["first_hold"]["set_true_to"]
    assert plan["bore_route"]["starts_from"] == "the solid"
    assert blank["cored"] is False


def test_the_bore_route_ends_within_the_limits_asked(
    blank: dict[str, Any], plan: dict[str, Any]
) -> None:
    limits = read_job(EXAMPLE).work.bore.limits
    assert limits is not None
    assert blank["finished_bore_m"] == {"low": limits.low, "high": limits.high}
    aim = plan["bore_route"]["aims_at"]
    assert aim["low_m"] >= limits.low - 1e-9
    assert aim["high_m"] <= limits.high + 1e-9


def test_the_crown_is_that_of_the_finished_wheel(plan: dict[str, Any]) -> None:
    asked = told("crown", "--diameter", "5in", "--face", "2in")
    step = next(s for s in plan["steps"] if s["title"] == "Crown")
    height = step["figures"]["crown_height_m"]["best"]
    assert height == pytest.approx(asked["height_m"], rel=ROUNDED)
    cut = next(c for c in plan["cuts"] if c["id"] == "crown")
    assert cut["diameter_m"] == pytest.approx(5 * INCH, rel=ROUNDED)
    assert cut["diameter_m"] - cut["leaves_m"] == pytest.approx(2 * height, rel=1e-6)


def test_the_weight_is_the_sum_of_the_rings_said_again_here(blank: dict[str, Any]) -> None:
    """Hub, web and rim with draft, each side of the parting a cone, added up by hand."""
    long, middle = blank["casting_length_m"], blank["parting_from_face_a_m"]
    out, within = math.tan(math.radians(1.5)), math.tan(math.radians(3))
    web = (3 / 8) * INCH
    deep = (long - web) / 2
    assert middle == pytest.approx(long / 2)

    def cone(length: float, one: float, other: float) -> float:
        return math.pi * length / 12 * (one**2 + one * other + other**2)

    rim, hub, inside = blank["casting_outside_m"], 1.75 * INCH, 4.375 * INCH
    outside_of_rim = 2 * cone(long / 2, rim, rim + long * out)
    hub_sides = 2 * cone(deep, hub, hub + 2 * deep * out)
    hollow = 2 * cone(deep, inside, inside - 2 * deep * within)
    volume = outside_of_rim - hollow + hub_sides
    assert blank["volume_m3"] == pytest.approx(volume, rel=1e-6)
    density = TABLES.material_range("al-cast", "density").best
    assert blank["casting_kg"] == pytest.approx(density * volume, rel=1e-6)
    assert blank["poured_kg"] > blank["casting_kg"]
    assert blank["charge_kg"] > blank["poured_kg"] * blank["castings_to_pour"]


def test_the_casting_of_the_casting_is_the_same_casting(
    blank: dict[str, Any], cast_file: Path, tmp_path: Path
) -> None:
    again = tmp_path / "again.toml"
    assert told("make", "blank", str(cast_file), "--job", str(again)) == blank
    assert again.read_bytes() == cast_file.read_bytes()
