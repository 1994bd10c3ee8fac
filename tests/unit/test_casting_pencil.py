"""Each printed number of a casting can be worked again from what stands beside it, by its rule."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from borewright.answer.figure import Figure
from borewright.job import parse_job, read_job
from borewright.making.blank.casting import made_casting
from borewright.making.blank.casting_asked import CastingAsked
from borewright.making.blank.casting_figures import casting_figures
from borewright.reference.library import Tables

TABLES = Tables()
EXAMPLE = Path(__file__).parents[2] / "examples" / "hollow-brook-cast-wheel.toml"
CORED = """
units = "mm"
work = {material = "gray-iron-30", bore = "40 H7", outside = 220, length = 60, quantity = 6}
"""
BUSH = """
units = "mm"
work = {material = "bronze", bore = 22, outside = 28.6, length = 40, quantity = 6}
"""
Inputs = Mapping[str, float]


def _chance(i: Inputs) -> float:
    wanted, good = int(i["wanted"]), 1 - i["scrap"]
    return sum(
        math.comb(wanted - 1 + k, k) * good**wanted * i["scrap"] ** k
        for k in range(int(i["spare"]) + 1)
    )


SUMS: dict[str, Callable[[Inputs], float]] = {
    "cast_size": lambda i: i["finished"] + 2 * i["stock"],
    "pattern_size": lambda i: i["casting"] * (1 + i["shrinkage"]),
    "shrinkage_middle": lambda i: (i["least"] + i["most"]) / 2,
    "core_size": lambda i: i["step"] * math.floor((i["bore"] - 2 * i["stock"]) / i["step"] + 1e-6),
    "riser_size": lambda i: i["share"] * i["over"] * i["modulus"],
    "cast_weight": lambda i: i["density"] * i["volume"],
    "riser_height": lambda i: (
        i["over"] * i["modulus"] * i["diameter"] / (i["diameter"] - 4 * i["over"] * i["modulus"])
    ),
    "riser_weight": lambda i: i["density"] * math.pi / 4 * i["diameter"] ** 2 * i["height"],
    "cope_lift": lambda i: i["density"] * math.pi / 4 * i["outside"] ** 2 * i["head"],
    "poured_weight": lambda i: i["weight"] / i["yield"],
    "poured_weight_fed": lambda i: (i["weight"] + i["riser"]) * (1 + i["sprue"]),
    "charge_weight": lambda i: i["poured"] * i["castings"] / (1 - i["loss"]),
    "chance_enough": _chance,
}


def figures() -> list[Figure]:
    jobs = read_job(EXAMPLE), parse_job(CORED, "job.toml"), parse_job(BUSH, "bush.toml")
    return [
        f
        for job in jobs
        for f in casting_figures(made_casting(job, CastingAsked(), TABLES), TABLES)
    ]


@pytest.mark.parametrize("figure", figures(), ids=lambda f: f.name)
def test_a_number_is_what_its_rule_makes_of_its_inputs(figure: Figure) -> None:
    inputs = {i.label: i.value for i in figure.inputs}
    assert SUMS[figure.formula](inputs) == pytest.approx(figure.best, rel=1e-6)
    assert TABLES.formula(figure.formula).rule


def test_every_sum_above_was_asked_for() -> None:
    assert {f.formula for f in figures()} == set(SUMS)
