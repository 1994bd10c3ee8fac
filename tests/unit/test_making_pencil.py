"""Each printed number of what is to be made can be worked again from what stands beside it, by its rule."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

import pytest

from borewright.answer.figure import Figure
from borewright.job import parse_job
from borewright.making.bars.bar_blanks import BarAsked, bar_blanks
from borewright.making.bars.bar_papers import bar_papers
from borewright.making.mandrel.asked import MandrelAsked
from borewright.making.mandrel.design import made_mandrel
from borewright.making.mandrel.figures import mandrel_figures
from borewright.reference.library import Tables

TABLES = Tables()
Inputs = Mapping[str, float]

SUMS: dict[str, Callable[[Inputs], float]] = {
    "grinding_stock_by_size": lambda i: (
        i["base"] + i["by diameter"] * i["diameter"] + i["by length"] * i["length"]
    ),
    "bend_before_grinding": lambda i: i["share"] * i["stock"],
    "tailstock_set_over": lambda i: i["taper"] * i["between centers"] / 2,
    "planes_differ": lambda i: i["taper"] * i["apart"],
    "table_angle": lambda i: math.atan(i["taper"] / 2),
    "table_reading": lambda i: i["base"] * i["taper"] / 2,
    "smallest_bore_taken": lambda i: i["near B"] + i["share"] * (i["near A"] - i["near B"]),
    "bar_to_order": lambda i: i["pieces"] * (i["length of a piece"] + i["cut"]) + i["end"],
    "largest_bore_taken": lambda i: i["near B"] + i["share"] * (i["near A"] - i["near B"]),
}


def figures() -> list[Figure]:
    asked = (
        MandrelAsked(nominal=0.015875, units="inch"),
        MandrelAsked(bores=(0.016, 0.016018), length=0.03, grinder=False),
        MandrelAsked(nominal=0.025, length=0.06),
    )
    mandrels = [f for a in asked for f in mandrel_figures(made_mandrel(a, TABLES), TABLES)]
    disc = 'units="mm"\nwork={material="steel-1018", bore=8, outside=63, length=8, quantity=20}'
    bars = bar_blanks(parse_job(disc, "job.toml"), BarAsked(), TABLES)
    return [*mandrels, *bar_papers(bars, TABLES).figures]


@pytest.mark.parametrize("figure", figures(), ids=lambda f: f.name)
def test_a_number_is_what_its_rule_makes_of_its_inputs(figure: Figure) -> None:
    if figure.formula:
        inputs = {i.label: i.value for i in figure.inputs}
        assert SUMS[figure.formula](inputs) == pytest.approx(figure.best, rel=1e-6)
        assert TABLES.formula(figure.formula).rule
    else:
        assert figure.sources


def test_every_sum_above_was_asked_for() -> None:
    assert {f.formula for f in figures() if f.formula} == set(SUMS)
