"""Each figure of a bore route can be worked again from the numbers it shows, by the rule it shows."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from statistics import NormalDist

import pytest
from tests.bore_jobs import TABLES, by_class, drilled, route_of, solid

from borewright.answer.figure import Figure
from borewright.job.tools import OwnGauge, OwnReamer
from borewright.report.bore_route_words import route_figures

Inputs = Mapping[str, float]
CLOSE = 1e-9
Z95 = NormalDist().inv_cdf(0.95)


def share_below(size: float, i: Inputs, before: str) -> float:
    low, likely, high = (i[f"{before}{end}"] for end in ("low", "likely", "high"))
    end = high if size > likely else low
    return NormalDist().cdf((size - likely) * Z95 / abs(end - likely))


def window_chance(i: Inputs) -> float:
    holes = ["", "before, "] if "before, low" in i else [""]
    large, small = (
        math.prod(share_below(i[end], i, hole) for hole in holes) for end in ("largest", "smallest")
    )
    return large - small


SUMS: dict[str, Callable[[Inputs], float]] = {
    "drilled_size": lambda i: i["drill"] + i["over"],
    "reamed_size": lambda i: i["marked size"] + i["over"],
    "bored_size": lambda i: (i["smallest"] + i["largest"]) / 2,
    "bored_before_reaming": lambda i: i["reamed size"] - i["stock"],
    "bored_clean": lambda i: i["hole as it is"] + i["stock"],
    "bored_half_band": lambda i: math.sqrt(i["gauge"] ** 2 + i["dial"] ** 2 + i["spring"] ** 2),
    "stock_taken": lambda i: i["size after"] - i["size before"],
    "spindle_speed": lambda i: i["surface speed at it"] / (math.pi * i["diameter"]),
    "window_chance": window_chance,
    "chance_with_trial": lambda i: (
        i["trial lands"] * i["after it"] + (1 - i["trial lands"]) * i["otherwise"]
    ),
    "gauge_ratio": lambda i: (i["largest"] - i["smallest"]) / (2 * i["half band"]),
    "plug_step": lambda i: i["smallest"] + i["share"] * (i["largest"] - i["smallest"]),
}
ROUTES = {
    "a reamer of unknown cut": route_of(solid()),
    "a reamer that is known": route_of(solid(reamers=(OwnReamer(0.015875, "", 8e-6),))),
    "a hand reamer": route_of(solid(reamers=(OwnReamer(0.015875, "hand", 8e-6),))),
    "a class": route_of(by_class()),
    "a good gauge": route_of(by_class(gauges=(OwnGauge("bore gauge", 2e-6),))),
    "bored": route_of(solid(reamers=(OwnReamer(0.006, "another"),))),
    "any size": route_of(drilled(0.0141, window=None)),
}


def figures() -> Iterator[tuple[str, Figure]]:
    for name, route in ROUTES.items():
        assert route is not None, name
        yield from ((name, figure) for figure in route_figures(route))


@pytest.mark.parametrize("name", ROUTES)
def test_the_numbers_shown_give_the_number_shown(name: str) -> None:
    route = ROUTES[name]
    worked = [f for f in route_figures(route) if f.inputs]
    assert worked
    for figure in worked:
        inputs = {i.label: i.value for i in figure.inputs}
        assert SUMS[figure.formula](inputs) == pytest.approx(figure.best, rel=CLOSE), figure.name


def test_each_sum_is_worked_for_some_route() -> None:
    assert {figure.formula for _, figure in figures() if figure.formula} == set(SUMS)


def test_every_rule_of_a_route_stands_in_the_table_and_no_band_is_beside_its_value() -> None:
    for name, figure in figures():
        if figure.formula:
            assert TABLES.formula(figure.formula).rule, name
        if figure.low is not None and figure.high is not None:
            assert figure.low <= figure.best <= figure.high, (name, figure.name)
