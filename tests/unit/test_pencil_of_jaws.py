"""Figures of work in jaws and on a plate, worked again from the numbers they show and their rules."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

import pytest
from tests.chuck_jobs import bored, hubbed, thin_ring, with_bore

from borewright.answer.records import Figure
from borewright.holding.registry import WAYS
from borewright.job.records import Job
from borewright.reference.library import Tables

TABLES = Tables()
Inputs = Mapping[str, float]
CLOSE = 1e-9
"""Plain arithmetic on the numbers shown."""


def sprung(i: Inputs) -> float:
    r_o, r_i = i["outside"] / 2, i["inside"] / 2
    mean, wall, a = (r_o + r_i) / 2, r_o - r_i, math.pi / i["jaws"]
    shift = mean - wall / math.log(r_o / r_i)
    s, c, area = math.sin(a), math.cos(a), wall * i["width"]
    k1 = 1 - shift / mean + 2.4 * (1 + i["ratio"]) * shift / mean
    k2 = 1 - shift / mean
    scale = i["spread"] * i["force of one jaw"] * mean**2 / (2 * i["modulus"] * area * shift)
    return scale * (1 - c) / s * (k1 * (s + a) / (2 * s) - k2)


SUMS: dict[str, Callable[[Inputs], float]] = {
    "jaw_torque": lambda i: i["friction"] * i["jaws"] * i["force of one jaw"] * i["diameter"] / 2,
    "jaw_springs": sprung,
    "stock_to_grip": lambda i: i["grip"] + i["pieces"] * i["parting"],
    "drill_torque": lambda i: i["specific force"] * i["feed each turn"] * i["drill"] ** 2 / 8,
    "clamp_force": lambda i: i["torque on the wrench"] / (i["K"] * i["thread"]),
    "face_torque": lambda i: (
        i["friction"] * i["clamp force"] * (i["ring, outside"] + i["ring, inside"]) / 4
    ),
}

SHOWN = {
    "three-jaw": thin_ring(),
    "four-jaw": thin_ring(),
    "soft-jaws": thin_ring(),
    "endwise": thin_ring(),
    "one-chucking": with_bore(hubbed(), bored("solid")),
}


def figures(way: str, job: Job) -> tuple[Figure, ...]:
    return WAYS[way].offer(job, TABLES)[0].figures


@pytest.mark.parametrize("way", SHOWN)
def test_every_figure_with_inputs_is_worked_again(way: str) -> None:
    worked = [f for f in figures(way, SHOWN[way]) if f.inputs]
    assert worked
    for figure in worked:
        inputs = {i.label: i.value for i in figure.inputs}
        assert SUMS[figure.name](inputs) == pytest.approx(figure.best, rel=CLOSE)
        assert TABLES.formula(figure.formula).rule


def test_each_sum_is_shown_somewhere() -> None:
    shown = {f.name for way, job in SHOWN.items() for f in figures(way, job) if f.inputs}
    assert shown == set(SUMS)
