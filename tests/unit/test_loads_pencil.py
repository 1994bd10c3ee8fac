"""Each explained figure of a grinding or gear-cutting pass can be worked again by its rule."""

from __future__ import annotations

import math
from collections.abc import Mapping

import pytest
from tests.jobs_made import wheel_job
from tests.load_jobs import BUSH, PINION, TABLES, gear, grinding, planned

from borewright.job.records import Job
from borewright.report.explain import plan_figures
from borewright.service.planned import plan

Inputs = Mapping[str, float]


Inputs = Mapping[str, float]


def milling(i: Inputs) -> float:
    arc = math.acos(1 - 2 * i["depth"] / i["cutter"])
    step = 2 * math.pi / i["teeth of the cutter"]
    places = [arc - k * step for k in range(int(arc / step) + 1)]
    chips = [1e3 * i["feed a tooth"] * math.sin(p) * i["b (mm)"] / i["L (mm)"] for p in places]
    each = (i["kc11 (N/mm²)"] * i["L (mm)"] * h ** (1 - i["mc"]) for h in chips)
    return sum(each) * i["worn tool and its kind"] * i["impact"]


def grip_left(i: Inputs) -> float:
    """Of mild steel on a hard steel mandrel, by the rule's own words; moduli as the tables have them."""
    (ew, vw), (em, vm) = (
        [TABLES.material_range(name, p).best for p in ("modulus", "poisson")]
        for name in ("steel-1018", "mandrel-steel-hard")
    )

    def give(outside: float) -> float:
        d2 = i["bore"] ** 2
        h = (outside**2 + d2) / (outside**2 - d2)
        return (h + vw) / ew + (1 - vm) / em

    return give(0.052) / give(i["root of the teeth"])


def tooth_span(i: Inputs) -> float:
    involute = math.tan(i["angle"]) - i["angle"]
    return i["m"] * math.cos(i["angle"]) * (math.pi * (i["k"] - 0.5) + i["z"] * involute)


GEAR_SUMS = {
    "tooth_chord": lambda i: i["m"] * i["z"] * math.sin(math.radians(90 / i["z"])),
    "tooth_height": lambda i: (
        i["m"] * (i["a"] + i["z"] / 2 * (1 - math.cos(math.radians(90 / i["z"]))))
    ),
    "tooth_span": tooth_span,
    "grip_left": grip_left,
    "milling_force": milling,
    "cut_torque": lambda i: i["share"] * i["force"] * i["diameter"] / 2,
    "tooth_depth_error": lambda i: i["radial force"] * i["deflection at 1 N (nm)"] * 1e-9,
}
GRIND_SUMS = {
    "grinding_force": lambda i: (
        i["u (J/mm³)"] * 1e9 * math.pi * i["work"] * i["infeed"] * i["traverse"] * i["work turns"]
    ) / i["wheel speed"],
    "grinding_push": lambda i: i["force"] / i["ratio"],
    "cut_torque": lambda i: i["force"] * i["diameter"] / 2,
}  # fmt: skip


@pytest.mark.parametrize(
    ("job", "sums"),
    [
        (wheel_job(0.052, material="steel-1018", cuts=gear()), GEAR_SUMS),
        (wheel_job(material="steel-1018", cuts=grinding()), GRIND_SUMS),
    ],
    ids=["gear", "grind"],
)
def test_each_figure_of_a_load_can_be_worked_again_by_its_rule(job: Job, sums: Mapping) -> None:
    figures = {f.name: f for f in plan_figures(plan(job, source_tables=TABLES))}
    for name, by_hand in sums.items():
        figure = figures[name]
        assert TABLES.formula(figure.formula).rule
        given = {i.label: i.value for i in figure.inputs}
        assert figure.best == pytest.approx(by_hand(given), rel=1e-6), name


def test_a_proof_load_of_grams_is_a_twist_of_the_hand_and_one_of_pounds_is_a_weight() -> None:
    light, heavy = planned(BUSH), planned(PINION)
    assert light.proof is not None
    assert heavy.proof is not None
    assert (light.proof.by_hand, heavy.proof.by_hand) == (True, False)
    # 1.5 times the force along the wheel's rim at the radius of the bush; the thrust adds little.
    asked = next(f for f in plan_figures(light) if f.name == "cut_torque").best
    assert 1.5 * asked <= light.proof.torque <= 2.5 * asked
    for answer, hung in ((light, False), (heavy, True)):
        step = next(s for s in answer.steps if s.title == "Proof load")
        assert ("Hang" in step.text) is hung
        assert any("known weight" in ready for ready in answer.have_ready) is hung
