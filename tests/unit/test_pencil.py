"""Each explained figure can be worked again from the numbers it shows, by the rule it shows.

The sums here are written out from the rules' own words, with plain arithmetic, and take nothing
from our models: a figure whose inputs do not give it is a figure nobody can check.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

import pytest
from tests.jobs_made import turning, wheel_job

from borewright.answer.records import Figure, Plan
from borewright.reference.library import Tables
from borewright.report.explain import plan_figures
from borewright.service.planned import plan

TABLES = Tables()
Inputs = Mapping[str, float]
CLOSE = 1e-6
NEAR = 2e-3  # rules that leave the taper's share out say so

SUMS: dict[str, Callable[[Inputs], float]] = {
    "touch_position": lambda i: (i["bore"] - i["small end"]) / i["taper"],
    "seat_position": lambda i: i["touch"] + i["travel"],
    "press_distance": lambda i: i["travel"] - i["hand's share"],
    "lost_to_peaks": lambda i: i["share"] * (i["Rz work"] + i["Rz mandrel"]),
    "push_on_force": lambda i: (
        i["normal force"]
        * (i["friction on"] + i["taper"] / 2)
        / (1 - i["friction on"] * i["taper"] / 2)
    ),
    "push_off_force": lambda i: (
        i["normal force"]
        * (i["friction off"] - i["taper"] / 2)
        / (1 + i["friction off"] * i["taper"] / 2)
    ),
    "normal_force": lambda i: (
        math.pi
        * i["bore"]
        * i["mean pressure"]
        * i["contact length"]
        * i["share of the round that bears"]
    ),
    "outside_growth": lambda i: (
        2
        * i["pressure"]
        * i["bore"] ** 2
        * i["hub outside"]
        / (i["E"] * (i["hub outside"] ** 2 - i["bore"] ** 2))
    ),
    "cutting_force": lambda i: (
        i["kc11 (N/mm²)"] * i["b (mm)"] * i["h (mm)"] ** (1 - i["mc"]) * i["worn tool and its kind"]
    ),
    "cut_torque": lambda i: i["force"] * i["diameter"] / 2,
    "slip_torque": lambda i: i["slip friction"] * i["normal force, warm"] * i["bore"] / 2,
    "slip_demand": lambda i: math.hypot(2 * i["torque"] / i["bore"], i["thrust"]),
    "slip_radius": lambda i: (
        math.sqrt(i["slip friction x normal force"] ** 2 - i["thrust"] ** 2)
        * i["bore"]
        / (2 * i["force"])
    ),
    "rocking_moment": lambda i: math.hypot(
        i["passive force"] * i["arm"] + i["thrust"] * i["radius"], i["cutting force"] * i["arm"]
    ),
    "rock_margin": lambda i: i["normal force"] * i["contact length"] / (12 * i["moment"]),
    "size_error": lambda i: 2 * i["radial force"] * i["deflection at 1 N (nm)"] * 1e-9,
    "drop_off": lambda i: i["squeeze"] / (i["expansion x bore (nm/K)"] * 1e-9),
    "runout": lambda i: math.sqrt(i["mandrel"] ** 2 + i["center"] ** 2 + i["out of round"] ** 2),
    "speed_margin": lambda i: i["highest usual"] / i["speed used"],
    "bore_margin": lambda i: i["inside by"] / i["half band"],
    "proof_weight": lambda i: i["factor"] * i["demand"] * i["bore"] / 2 / i["arm"] / 9.80665,
    "proof_rim_force": lambda i: i["factor"] * i["demand"] * i["bore"] / 2 / i["rim radius"],
    "torque_proved": lambda i: i["push"] * i["bore"] / 2 * i["ratio"],
}


def lame(i: Inputs) -> float:
    k2 = (i["bore"] / i["hub outside"]) ** 2
    work = ((1 + k2) / (1 - k2) + i["v work"]) / i["E work"]
    return i["squeeze kept"] / (i["bore"] * (work + (1 - i["v mandrel"]) / i["E mandrel"]))


def window_low(i: Inputs) -> float:
    free = max(0.0, i["length of bore"] - i["travel"] + i["room at the small end"])
    return i["small end"] + i["taper"] * free


def window_high(i: Inputs) -> float:
    free = i["ground length"] - i["travel"] - i["room for dog and tool"]
    return i["small end"] + i["taper"] * free


def stress(i: Inputs) -> float:
    d2, b2 = i["hub outside"] ** 2, i["bore"] ** 2
    h = (d2 + b2) / (d2 - b2)
    return i["pressure"] * math.sqrt(h * h + h + 1) * i["notch factor"]


def tension(i: Inputs) -> float:
    d2, b2 = i["hub outside"] ** 2, i["bore"] ** 2
    return i["pressure"] * (d2 + b2) / (d2 - b2) * i["edge factor"] * i["notch factor"]


SUMS |= {
    "pressure_at_face": lame,
    "bore_window_low": window_low,
    "bore_window_high": window_high,
    "equivalent_stress": stress,
    "largest_tension": tension,
}


@pytest.fixture(scope="module", params=["al-6061-t6", "gray-iron-30"])
def answer(request: pytest.FixtureRequest) -> Plan:
    return plan(wheel_job(material=request.param, cuts=turning(0.3e-3)), source_tables=TABLES)


def by_name(answer: Plan) -> dict[str, Figure]:
    return {f.name: f for f in plan_figures(answer)}


@pytest.mark.parametrize("name", SUMS)
def test_the_numbers_shown_give_the_number_shown(name: str, answer: Plan) -> None:
    figures = by_name(answer)
    if name not in figures:
        assert name in ("equivalent_stress", "largest_tension")  # one for ductile, one for brittle
        return
    figure = figures[name]
    inputs = {i.label: i.value for i in figure.inputs}
    assert SUMS[name](inputs) == pytest.approx(figure.best, rel=NEAR if "touch" in name else CLOSE)


def test_every_figure_with_inputs_and_a_sum_is_checked_here(answer: Plan) -> None:
    words_only = {
        "travel",
        "rule_reading",
        "contact_length",
        "normal_force_warm",
        "deepest_cut",
        "heat_rise",
        "deflection_per_force",
        "swing_over_cross_slide_room",
        "between_centers_room",
        "push_to_look_for",
    }
    with_inputs = {f.name for f in plan_figures(answer) if f.inputs}
    assert with_inputs - set(SUMS) <= words_only
