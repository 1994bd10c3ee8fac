"""Every figure on the papers of stub, soft mandrel and gauge, worked again by the rule it shows."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

import pytest

from borewright.answer.figure import Figure
from borewright.job.bore_text import bore_size
from borewright.reference.library import Tables
from borewright.service.making.bored_work import BoredWork, WorkTyped, work_typed
from borewright.service.making.gauge import make_gauge
from borewright.service.making.outputs import Made
from borewright.service.making.soft import make_soft
from borewright.service.making.stub import make_stub

TABLES = Tables()
CLOSE = 1e-9
"""Plain arithmetic on the numbers shown."""
Inputs = Mapping[str, float]

SUMS: dict[str, Callable[[Inputs], float]] = {
    "stub_size": lambda i: i["bore"] - i["clearance"],
    "fine_feed_angle": lambda i: math.asin(
        i["step on diameter"] / (2 * i["division of the slide"])
    ),
    "plug_opening": lambda i: (
        i["nipped when turned"] + i["largest bore"] - i["smallest stub"] + i["nip"]
    ),
    "plug_travel": lambda i: i["opening"] / i["taper"],
    "finger_opening": lambda i: 2 * i["stress"] * i["L"] ** 2 / (3 * i["E"] * i["c"]),
    "soft_seat": lambda i: i["bore"] + i["grip"] + i["taper"] * i["distance"],
    "bar_clearance": lambda i: i["bore"] - i["bar"] + i["under"],
    "thrown_runout": lambda i: i["bore"] - i["bar"],
    "flat_wide": lambda i: 2 * math.sqrt(i["depth"] * (i["bar"] - i["depth"])),
    "gauge_tolerance": lambda i: max(
        i["share"] * (i["largest"] - i["smallest"]), 2 * i["known"] + i["hit"]
    ),
    "go_size": lambda i: i["smallest"] + i["wear"] + i["share of zone"] * i["tolerance"],
    "not_go_size": lambda i: i["largest"] - i["share of zone"] * i["tolerance"],
    "window_lost": lambda i: (i["wear"] + 2 * i["tolerance"]) / (i["largest"] - i["smallest"]),
    "plug_step": lambda i: i["smallest"] + i["share"] * (i["largest"] - i["smallest"]),
}


def work(bore: str, length: float = 0.03, outside: float = 0.06) -> BoredWork:
    size, limits = bore_size(bore, "--bore", None)
    return work_typed(WorkTyped(size, limits, length, outside, "", "bore-gauge", "mm"), TABLES)


MADE: dict[str, Made] = {
    "stub": make_stub(work("16.01mm"), TABLES),
    "stub for a batch": make_stub(work("16 H7"), TABLES),
    "taper plug": make_stub(work("25 H7"), TABLES, "taper"),
    "cone plug": make_stub(work("50.01mm", 0.06, 0.1), TABLES, "cone"),
    "turned": make_soft(work("16.01mm"), TABLES),
    "turned for a batch": make_soft(work("25 H7"), TABLES),
    "as drawn": make_soft(work("16.01mm"), TABLES, as_drawn=True, hub_out=0.012),
    "measured bar": make_soft(work("16.01mm"), TABLES, as_drawn=True, bar=0.0159, hub_out=0.012),
    "gauge": make_gauge(work("16 H7"), TABLES),
    "wide gauge": make_gauge(work("25 H11"), TABLES),
    "stepped": make_gauge(work("25 H9"), TABLES, stepped=True),
}
FIGURES = [
    pytest.param(figure, id=f"{name}, {figure.name}")
    for name, made in MADE.items()
    for figure in made.papers.figures
]


@pytest.mark.parametrize("figure", FIGURES)
def test_a_figure_is_worked_again_from_what_it_shows(figure: Figure) -> None:
    if not figure.formula:
        assert not figure.inputs
        return
    assert TABLES.formula(figure.formula).rule
    inputs = {i.label: i.value for i in figure.inputs}
    assert SUMS[figure.formula](inputs) == pytest.approx(figure.best, rel=CLOSE, abs=1e-15)


@pytest.mark.parametrize("figure", FIGURES)
def test_a_figure_names_sources_that_are_in_the_table(figure: Figure) -> None:
    assert figure.sources
    for source in figure.sources:
        assert TABLES.source(source).citation


def test_every_sum_is_asked_and_every_thing_made_has_figures() -> None:
    asked = {f.formula for made in MADE.values() for f in made.papers.figures if f.formula}
    assert asked == set(SUMS)
    for name, made in MADE.items():
        assert made.done, name
        assert made.papers.figures, name
        assert made.parts, name
