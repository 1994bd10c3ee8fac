"""Figures of stubs, sleeves, bonds and warm plugs, worked again from the numbers and rules shown."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace

import pytest
from tests.held_ways import figures_of, inputs_of
from tests.jobs_made import wheel_job

from borewright.answer.records import Figure
from borewright.holding.registry import WAYS
from borewright.job.records import Job, Piece
from borewright.reference.library import Tables

TABLES = Tables()
Inputs = Mapping[str, float]
CLOSE = 1e-9
"""Plain arithmetic on the numbers shown."""


def wedge(i: Inputs, friction: str, cone: str) -> float:
    return i["push"] * (1 - i[friction] * i[cone] / 2) / (i[friction] + i[cone] / 2)


SUMS: dict[str, Callable[[Inputs], float]] = {
    "stub_size": lambda i: i["bore"] - i["clearance"],
    "top_slide_angle": lambda i: math.asin(
        i["step on diameter"] / (2 * i["division of the slide"])
    ),
    "clamp_force": lambda i: i["torque on the wrench"] / (i["K"] * i["thread"]),
    "face_torque": lambda i: (
        i["friction"] * i["clamp force"] * (i["ring, outside"] + i["ring, inside"]) / 4
    ),
    "collet_torque": lambda i: (
        i["friction"]
        * i["pull on the collet"]
        * (1 - i["friction"] * i["cone"] / 2)
        / (i["friction"] + i["cone"] / 2)
        * i["shank"]
        / 2
    ),
    "sleeve_normal": lambda i: wedge(i, "friction on the cone", "cone") - i["opens the sleeve"],
    "bore_pressure": lambda i: i["normal force"] / (math.pi * i["bore"] * i["length pressed"]),
    "pushed_normal": lambda i: wedge(i, "friction on", "taper"),
    "fit_torque": lambda i: i["slip friction"] * i["normal force"] * i["bore"] / 2,
    "thrown_runout": lambda i: i["bore"] - i["bar"],
    "face_leans": lambda i: i["clearance"] / i["length of the fit"] * i["outside"],
    "warm_on": lambda i: i["interference"] / (i["expansion x bore (nm/K)"] * 1e-9) + i["to spare"],
    "warm_off": lambda i: i["what presses"] / (i["expansion over the plug's x bore (nm/K)"] * 1e-9),
}


def bond_torque(figure: Figure, i: Inputs) -> float:
    if figure.formula == "bond_gap_torque":
        return i["shear"] * math.pi * i["length"] * i["bore"] ** 2 / 2
    outer, inner = i["ring, outside"], i["ring, inside"]
    return i["shear"] * math.pi * (outer**4 - inner**4) / (16 * outer)


WAYS_SHOWN = ("turned-stub", "collet-stub", "expanding", "bonded", "soft-mandrel", "warm-fit")


def hubbed() -> Job:
    """A wheel with a hub that takes a set screw."""
    job = wheel_job(bore=0.0161)
    pieces = Piece(0.0, 0.012, 0.080), Piece(0.012, 0.026, 0.032)
    return replace(job, work=replace(job.work, pieces=pieces))


def shown(way: str) -> list[Figure]:
    found = [h for job in (wheel_job(), hubbed()) for h in WAYS[way].offer(job, TABLES)]
    return [f for h in found for f in figures_of(h).values() if f.inputs]


@pytest.mark.parametrize("way", WAYS_SHOWN)
def test_every_figure_with_inputs_is_worked_again(way: str) -> None:
    worked = shown(way)
    assert worked
    for figure in worked:
        inputs = inputs_of(figure)
        by_hand = (
            bond_torque(figure, inputs)
            if figure.name == "bond_torque"
            else SUMS[figure.name](inputs)
        )
        assert by_hand == pytest.approx(figure.best, rel=CLOSE), figure.name
        assert TABLES.formula(figure.formula).rule


def test_each_sum_is_shown_somewhere() -> None:
    names = {f.name for way in WAYS_SHOWN for f in shown(way)}
    assert names == {*SUMS, "bond_torque"}
