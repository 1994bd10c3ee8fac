"""Each figure of a rescue can be worked again from the numbers it shows, by the rule it shows.

The sums are written out from the rules' own words and take nothing from our models.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import lru_cache

import pytest
from tests.jobs_made import wheel_job

from borewright.answer.records import Figure
from borewright.job import Keyway
from borewright.job.records import BoreLimits
from borewright.reference.library import Tables
from borewright.service.rescued import rescue

TABLES = Tables()
CLOSE = 1e-6
Inputs = Mapping[str, float]


def _thick(outer: float, inner: float) -> float:
    return (outer**2 + inner**2) / (outer**2 - inner**2)


def _pressure(i: Inputs) -> float:
    d, outside, bore = i["hub bore"], i["hub outside"], i["bush bore"]
    hub = (_thick(outside, d) + i["v hub"]) / i["E hub"]
    bush = (_thick(d, bore) - i["v bush"]) / i["E bush"]
    return i["interference"] / (d * (hub + bush))


def _gripped(i: Inputs) -> float:
    share = i["share of the round that bears"]
    return i["friction"] * math.pi * i["pressure less peaks"] * i["length"] * share


SUMS: dict[str, Callable[[Inputs], float]] = {
    "bush_interference": lambda i: i["bush outside"] - i["hub bore"],
    "bush_pressure": _pressure,
    "bush_tension": lambda i: (
        i["pressure"] * _thick(i["hub outside"], i["hub bore"]) * i["edge"] * i["notch"]
    ),
    "bush_torque": lambda i: _gripped(i) * i["hub bore"] ** 2 / 2,
    "bush_press": lambda i: _gripped(i) * i["hub bore"],
    "bush_yields_at": lambda i: (
        i["yield of the bush"] * (1 - (i["bush bore"] / i["hub bore"]) ** 2) / 2
    ),
    "bush_closes": lambda i: (
        2
        * i["pressure"]
        * i["bush bore"]
        / (i["E bush"] * (1 - (i["bush bore"] / i["hub bore"]) ** 2))
    ),
    "warm_hub_by": lambda i: (
        (i["largest interference"] + i["room"]) / (i["expansion x hub bore (nm/K)"] * 1e-9)
    ),
    "bonded_torque": lambda i: (
        i["shear strength"]
        * math.pi
        * i["length"]
        * i["outside of the bush"] ** 2
        / (2 * i["kept in hand"])
    ),
    "hub_wall_left": lambda i: (i["outside"] - i["bore"]) / 2,
    "bush_wall": lambda i: (i["outside"] - i["bore"]) / 2,
    "wall_left": lambda i: (i["outside"] - i["bore"]) / 2,
}
OF_HOLDING = (
    "fresh-stub",
    "expanding",
    "bonded",
    "set-true",
    "otherwise",
    "other-mandrel",
    "free-it",
)
"""Ways whose figures are those of the plan itself, which other tests work again."""


@lru_cache(maxsize=4)
def shown(material: str, keyed: bool) -> tuple[Figure, ...]:
    job = wheel_job(material=material)
    if keyed:
        job = replace(job, work=replace(job.work, keyway=Keyway(0.005, 0.004)))
    limits = BoreLimits(0.016, 0.016018)
    answer = rescue(job, bore=0.0162, wanted=limits, source_tables=TABLES)
    return tuple(f for w in answer.ways_out if w.id not in OF_HOLDING for f in w.figures)


CASES = [("al-6061-t6", False), ("gray-iron-30", True)]
SOME_ONLY = ("warm_hub_by",)
"""Where warming is not too much for the metal: worked by itself below."""


@pytest.mark.parametrize(("material", "keyed"), CASES)
@pytest.mark.parametrize("name", SUMS)
def test_the_numbers_shown_give_the_number_shown(name: str, material: str, keyed: bool) -> None:
    found = [f for f in shown(material, keyed) if f.name == name]
    assert found or name in SOME_ONLY
    for figure in found:
        inputs = {i.label: i.value for i in figure.inputs}
        assert SUMS[name](inputs) == pytest.approx(figure.best, rel=CLOSE)


@pytest.mark.parametrize(("material", "keyed"), CASES)
def test_every_figure_with_inputs_has_its_sum_here_and_its_rule_in_the_table(
    material: str, keyed: bool
) -> None:
    with_inputs = [f for f in shown(material, keyed) if f.inputs]
    assert {f.name for f in with_inputs} <= set(SUMS)
    for figure in with_inputs:
        assert TABLES.formula(figure.formula).rule


def test_a_large_hub_is_warmed_by_what_the_rule_says_and_a_small_one_not_at_all() -> None:
    limits = BoreLimits(0.080, 0.08003)
    large = rescue(
        wheel_job(0.3, 0.06, bore=0.08, mandrels=()),
        bore=0.0803,
        wanted=limits,
        source_tables=TABLES,
    )
    figure = large.way("bush").figure("warm_hub_by")  # type: ignore[union-attr]
    assert figure is not None
    inputs = {i.label: i.value for i in figure.inputs}
    assert SUMS["warm_hub_by"](inputs) == pytest.approx(figure.best, rel=CLOSE)
    assert 293.15 + figure.best <= TABLES.allowance("warm_limit").high
    assert not [f for f in shown("gray-iron-30", True) if f.name == "warm_hub_by"]
