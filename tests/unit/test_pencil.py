"""Each explained figure can be worked again from the numbers it shows, by the rule it shows.

The sums here are written out from the rules' own words, with plain arithmetic, and take nothing
from our models: a figure whose inputs do not give it is a figure nobody can check.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace

import pytest
from tests.bent_sums import BENT
from tests.jobs_made import turning, wheel_job
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.answer.records import Figure
from borewright.job import CrossHole, CrownWish, Finished, Job, Keyway, Piece, Spokes
from borewright.job.interrupted import Chamfers
from borewright.job.records import MandrelNote
from borewright.reference.library import Tables
from borewright.report.explain import plan_figures

TABLES = Tables()
Inputs = Mapping[str, float]
CLOSE = 1e-6
NEAR = 2e-3  # rules that leave the taper's share out say so

SUMS: dict[str, Callable[[Inputs], float]] = {
    "touch_position": lambda i: (i["bore"] - i["small end"]) / i["taper"] + i["further by"],
    "contact_length": lambda i: (
        min(i["length that can bear"], i["travel"] - i["lost to peaks"] / i["taper"])
        * i["elastic over rings"]
    ),
    "seat_margin": lambda i: i["contact length"] / i["length wanted"],
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
        * i["elastic over rings"]
        * i["pressure"]
        * i["bore"] ** 2
        * i["outside, thinnest ring"]
        / (i["E"] * (i["outside, thinnest ring"] ** 2 - i["bore"] ** 2))
    ),
    "cutting_force": lambda i: (
        i["kc11 (N/mm²)"]
        * i["b (mm)"]
        * i["h (mm)"] ** (1 - i["mc"])
        * i["worn tool and its kind"]
        * i["knock"]
    ),
    "cut_torque": lambda i: i["force"] * i["diameter"] / 2,
    "slip_torque": lambda i: i["slip friction"] * i["normal force, warm"] * i["bore"] / 2,
    "slip_demand": lambda i: math.hypot(2 * i["torque"] / i["bore"], i["thrust"]),
    "slip_radius": lambda i: (
        i["torque of the drive"] / i["force"]
        if "torque of the drive" in i
        else math.sqrt(i["slip friction x normal force"] ** 2 - i["thrust"] ** 2)
        * i["bore"]
        / (2 * i["force"])
    ),
    "drive_torque": lambda i: (
        i["stress"] * math.pi * i["stud"] ** 3 / (32 * i["standing out"]) * i["radius"]
    ),
    "rocking_moment": lambda i: math.hypot(
        i["passive force"] * i["arm"] + i["thrust"] * i["radius"], i["cutting force"] * i["arm"]
    ),
    "lift_moment": lambda i: (
        i["normal force"] * i["contact length, warm"] / 12 * i["elastic over springs"]
    ),
    "tilt_at_rim": lambda i: i["moment"] / i["stiffness (N·m/rad)"] * i["outside"] / 2,
    "rock_margin": lambda i: i["lift moment"] / (i["kept in hand"] * i["moment"]),
    "warmth_that_counts": lambda i: i["work"] - i["follows"] * i["mandrel"],
    "warm_reading": lambda i: (
        i["finished size, cold"] * (1 + i["expansion (ppm/K)"] * 1e-6 * i["warmth"])
    ),
    "drop_off": lambda i: i["squeeze"] / (i["expansion x bore (nm/K)"] * 1e-9),
    "drop_on": lambda i: i["room"] + i["drop off"] + i["to spare"],
    "runout": lambda i: math.sqrt(
        i["mandrel"] ** 2 + i["headstock center"] ** 2 + i["out of round"] ** 2
    ),
    "runout_worst_case": lambda i: sum(i.values()),
    "runout_anywhere": lambda i: math.sqrt(sum(v * v for v in i.values())),
    "face_runout_worst": lambda i: i["taper"] / 2 * i["outside"],
    "lathe_taper": lambda i: 2 * i["tailstock out"] / i["between centers"] * i["rim"],
    "taper_allowed": lambda i: i["share"] * i["tolerance"],
    "service_rim_speed": lambda i: math.pi * i["outside"] * i["rev in service"],
    "service_rim_tension": lambda i: i["density"] * i["rim speed"] ** 2,
    "speed_margin": lambda i: i["highest usual"] / i["speed used"],
    "cutting_power": lambda i: i["force"] * i["cutting speed"],
    "power_margin": lambda i: (
        i["power of the motor"] * i["share that reaches the cut"] / i["power at the tool"]
    ),
    "support_pressure": lambda i: (
        i["push"]
        / (math.pi * (i["hub outside"] ** 2 - i["hole of the ring, or mouth of the bore"] ** 2) / 4)
    ),
    "spoke_dish": lambda i: (
        i["push"]
        * i["length"] ** 3
        / (3 * i["E"] * i["width"] * i["thickness"] ** 3 / 12 * i["spokes"])
    ),
    "spoke_stress": lambda i: (
        6 * i["push"] * i["length"] / (i["spokes"] * i["width"] * i["thickness"] ** 2)
    ),
    "crack_margin": lambda i: i["strength"] / i["stress"],
    "yield_margin": lambda i: i["strength"] / i["stress"],
    "bore_margin": lambda i: i["inside by"] / i["half band"],
    "push_to_look_for": lambda i: max(
        i["demand, poor case"] / i["ratio, low"] * i["cold over warm"], i["expected, low"]
    ),
    "proof_weight": lambda i: i["factor"] * i["demand"] * i["bore"] / 2 / i["arm"] / 9.80665,
    "proof_rim_force": lambda i: i["factor"] * i["demand"] * i["bore"] / 2 / i["rim radius"],
    "rim_stock": lambda i: (i["outside"] - i["finished outside"]) / 2,
    "clean_up_stock": lambda i: i["throw"] / 2 + i["skin"],
    "clean_up_margin": lambda i: i["stock"] / i["stock wanted"],
    "largest_throw": lambda i: 2 * (i["stock"] - i["skin"]),
    "first_cut_from_touch": lambda i: i["throw"] + i["skin"],
    "throw_shared": lambda i: i["throw"] - i["largest throw"],
    "largest_clean_outside": lambda i: i["outside"] - i["throw"] - 2 * i["skin"],
    "crown_angle": lambda i: math.atan(2 * i["height"] / (i["face"] - i["flat"])),
    "crown_reading": lambda i: i["travel"] * math.sin(i["angle"]),
    "crown_radius": lambda i: (i["face"] ** 2 / 4 + i["height"] ** 2) / (2 * i["height"]),
    "torque_proved": lambda i: i["push"] * i["bore"] / 2 * i["ratio"],
}


def deepest(i: Inputs) -> float:
    shares = (
        i["likely margin"] / i["margin for yes"],
        i["poor-case margin"] / i["poor-case margin for yes"],
    )
    return min(i["depth"] * min(shares), i["what the wall bears"])


def lame(i: Inputs) -> float:
    k2 = (i["bore"] / i["outside, stiffest ring"]) ** 2
    m2 = (i["hole in the mandrel"] / i["bore"]) ** 2
    work = ((1 + k2) / (1 - k2) + i["v work"]) / i["E work"]
    mandrel = ((1 + m2) / (1 - m2) - i["v mandrel"]) / i["E mandrel"]
    return i["squeeze kept"] / (i["bore"] * (work + mandrel)) * i["elastic over rings"]


def window_low(i: Inputs) -> float:
    free = max(0.0, i["length of bore"] - i["travel"] + i["room at the small end"])
    return i["small end"] + i["taper"] * (free - i["free before it bears"])


def window_high(i: Inputs) -> float:
    free = i["ground length"] - i["travel"] - i["room for dog and tool"]
    return i["small end"] + i["taper"] * (free - i["free before it bears"])


def stress(i: Inputs) -> float:
    d2, b2 = i["outside, thinnest ring"] ** 2, i["bore"] ** 2
    h = (d2 + b2) / (d2 - b2)
    rings = i["pressure"] * math.sqrt(h * h + h + 1)
    return rings * i["elastic over rings"] * i["notch factor"]


def tension(i: Inputs) -> float:
    d2, b2 = i["outside, thinnest ring"] ** 2, i["bore"] ** 2
    rings = i["pressure"] * (d2 + b2) / (d2 - b2)
    return rings * i["elastic over rings"] * i["edge factor"] * i["notch factor"]


def web_b(i: Inputs) -> float:
    q2, log = (
        (i["hub outside"] / i["rim inside"]) ** 2,
        math.log(i["hub outside"] / i["rim inside"]),
    )
    top = (3 + i["v"]) + (1 - i["v"]) * q2 * (1 + 2 * log)
    return -top / (2 * (1 + i["v"]) + 2 * (1 - i["v"]) * q2)


def web_dish(i: Inputs) -> float:
    q2, log = (
        (i["hub outside"] / i["rim inside"]) ** 2,
        math.log(i["hub outside"] / i["rim inside"]),
    )
    b = web_b(i)
    c = -q2 * (2 * log + 1 + 2 * b)
    d = i["E"] * i["web"] ** 3 / (12 * (1 - i["v"] ** 2))
    shape = q2 * log + b * (q2 - 1) + c * log
    return i["push"] * (i["rim inside"] / 2) ** 2 / (8 * math.pi * d) * shape


def web_stress(i: Inputs) -> float:
    log = math.log(i["hub outside"] / i["rim inside"])
    return 3 * i["push"] * abs(1 + log + web_b(i)) / (math.pi * i["web"] ** 2)


CHANGES = tuple(
    f"deepest_{way}"
    for way in (
        "now",
        "with_boss_left_on",
        "with_larger_hub",
        "with_keyway_last",
    )
)
SUMS |= dict.fromkeys(CHANGES, deepest)
SUMS |= BENT
SUMS |= {
    "web_dish": web_dish,
    "web_stress": web_stress,
    "pressure_at_face": lame,
    "bore_window_low": window_low,
    "bore_window_high": window_high,
    "equivalent_stress": stress,
    "largest_tension": tension,
}


HUB, RIM = Piece(0.0, 0.025, 0.036), Piece(0.0, 0.025, 0.090, 0.078)
WEB = Piece(0.009, 0.017, 0.078, 0.036)


def with_web(job: Job, spokes: Spokes | None = None) -> Job:
    """The wheel with hub, web and rim, and a keyway; or with spokes for a web."""
    keyway = Keyway(0.004, 0.0018)
    work = replace(job.work, pieces=(HUB, WEB, RIM), keyway=keyway, spokes=spokes)
    return replace(job, work=work)


def with_hole(job: Job) -> Job:
    """The wheel with an oil hole through it, out to the turned outside."""
    return replace(job, work=replace(job.work, cross_hole=CrossHole(0.004, 0.0125)))


def chamfered() -> Job:
    """The wheel with its bore chamfered, on a mandrel with a hole through it."""
    job = wheel_job(cuts=turning(0.3e-3), mandrels=(MandrelNote(0.016, hole=0.006),))
    return replace(job, work=replace(job.work, chamfers=Chamfers(0.001, 0.002)))


def rough(finished: float | None) -> Job:
    """The iron wheel as a casting that runs out, its bore not said to be finished."""
    job = wheel_job(material="gray-iron-30", cuts=turning(0.5e-3))
    bore = replace(job.work.bore, made_by="unknown")
    work = replace(job.work, bore=bore, blank="casting", casting_runout=0.004)
    return replace(job, work=replace(work, finished=Finished(finished)))


def crowned(wish: CrownWish) -> Job:
    """The iron wheel as a pulley whose face gets a crown."""
    job = wheel_job(material="gray-iron-30", cuts=turning(0.3e-3))
    form = replace(job.work.finished.form, crown=wish)
    finished = replace(job.work.finished, outside=0.062, form=form)
    return replace(job, work=replace(job.work, finished=finished))


def large_webbed() -> Job:
    """An iron wheel whose bore holds the travel back: a larger hub is worth it."""
    job = wheel_job(material="gray-iron-30", cuts=turning(0.8e-3), press="arbor press 3 ton")
    far = replace(RIM, outside=0.160, inside=0.148), replace(WEB, outside=0.148)
    return replace(job, work=replace(job.work, pieces=(HUB, *far)))


def in_service(job: Job) -> Job:
    """To a close tolerance, and said to run fast where it is used."""
    finished = replace(job.work.finished, tolerance=0.02e-3, service_speed=1750 / 60)
    return replace(job, work=replace(job.work, finished=finished))


WHEELS = {
    "aluminium": wheel_job(cuts=turning(0.3e-3)),
    "iron": wheel_job(material="gray-iron-30", cuts=turning(0.3e-3)),
    "webbed": with_web(wheel_job(material="gray-iron-30", cuts=turning(0.3e-3))),
    "holed": with_hole(wheel_job(cuts=turning(0.3e-3))),
    "chamfered, on a bored mandrel": chamfered(),
    "spoked": with_web(wheel_job(cuts=turning(0.3e-3)), Spokes(5, 0.014, 0.008)),
    "rough, that cleans up": rough(0.057),
    "rough, that does not": rough(0.060),
    "rough, to no size": rough(None),
    "thin blank": wheel_job(length=0.006),
    "long, in service": in_service(wheel_job(length=0.045, cuts=turning(0.3e-3))),
    "large, webbed": large_webbed(),
    "crowned, taper": crowned(CrownWish(flat=0.004)),
    "crowned, arc": crowned(CrownWish(0.5e-3, shape="arc")),
}
SOME_ONLY = ("equivalent_stress", "largest_tension", "web_dish", "web_stress")
SOME_ONLY += ("lathe_taper", "taper_allowed", "service_rim_speed", "service_rim_tension")
SOME_ONLY += ("spoke_dish", "spoke_stress", "crack_margin", "yield_margin")
SOME_ONLY += ("rim_stock", "clean_up_stock", "clean_up_margin", "largest_throw", "throw_shared")
SOME_ONLY += ("crown_angle", "crown_reading", "crown_radius", "face_runout_worst", "warm_reading")
SOME_ONLY += ("drive_torque", "first_cut_from_touch", "largest_clean_outside", *CHANGES)
"""For ductile or for brittle work, for webs or for spokes: each wheel has some of them."""


@pytest.fixture(scope="module", params=WHEELS)
def answer(request: pytest.FixtureRequest) -> Plan:
    job = WHEELS[request.param]
    machine = replace(job.shelf.machine, power=400.0)
    return plan(replace(job, shelf=replace(job.shelf, machine=machine)), source_tables=TABLES)


def by_name(answer: Plan) -> dict[str, Figure]:
    return {f.name: f for f in plan_figures(answer)}


@pytest.mark.parametrize("name", SUMS)
def test_the_numbers_shown_give_the_number_shown(name: str, answer: Plan) -> None:
    figures = by_name(answer)
    if name not in figures:
        assert name in SOME_ONLY
        return
    figure = figures[name]
    inputs = {i.label: i.value for i in figure.inputs}
    assert SUMS[name](inputs) == pytest.approx(figure.best, rel=NEAR if "touch" in name else CLOSE)


def test_each_of_those_that_only_some_wheels_have_is_worked_for_one() -> None:
    shown = {name for job in WHEELS.values() for name in by_name(plan(job, source_tables=TABLES))}
    assert set(SOME_ONLY) <= shown


def test_every_figure_with_inputs_and_a_sum_is_checked_here(answer: Plan) -> None:
    words_only = {
        "travel",
        "rule_reading",
        "normal_force_warm",
        "deepest_cut",
        "heat_rise",
        "swing_over_cross_slide_room",
        "between_centers_room",
    }
    with_inputs = {f.name for f in plan_figures(answer) if f.inputs}
    assert with_inputs - set(SUMS) <= words_only
