"""The figures of nuts, gangs, plates, cones and threads, worked again from the numbers they show."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace

import pytest
from tests.jobs_made import turning, wheel_job

from borewright.answer.records import Figure
from borewright.job.bore_thread import bore_thread
from borewright.job.interrupted import Chamfers, Spokes
from borewright.job.records import Job, Piece
from borewright.reference.library import Tables
from borewright.report.explain import plan_figures
from borewright.service.planned import plan

TABLES = Tables()
Inputs = Mapping[str, float]
CLOSE = 1e-6


def bow(i: Inputs) -> float:
    bending = i["E"] * math.pi * i["mandrel"] ** 4 / 64
    length, span = i["b"] - i["a"], i["between centers"]
    k = min(i["wedge"], i["clamp force"] * i["off the axis"] * length / bending)
    r = 1 - (i["a"] + i["b"]) / (2 * span)
    return k * r * (i["a"] + length * r / 2)


def screwed(i: Inputs, sign: float) -> float:
    r, friction = i["radius of the thread"], i["friction"]
    rise, m = i["pitch"] / (2 * math.pi * r), friction / math.cos(math.radians(30))
    slope = (m + sign * rise) / (1 - sign * m * rise)
    return i["force on the shoulder"] * (r * slope + friction * i["radius of the face"])


def at_hole(i: Inputs) -> float:
    q, v = i["hole, radius"] / i["ring, radius"], i["Poisson's ratio"]
    turn = 2 * (1 + v) * math.log(1 / q) / (1 - q**2)
    return i["pull, poor case"] / (4 * math.pi) * (1 - v + turn)


SUMS: dict[str, Callable[[Inputs], float]] = {
    "mandrel_bow": bow,
    "clamp_force": lambda i: i["torque on the wrench"] / (i["K"] * i["thread"]),
    "face_torque": lambda i: (
        i["friction"] * i["clamp force"] * (i["ring, outside"] + i["ring, inside"]) / 4
    ),
    "bolts_torque": lambda i: (
        i["friction"] * i["bolts"] * i["force of each on the work"] * i["radius"]
    ),
    "cap_thickness": lambda i: math.sqrt(6 * at_hole(i) / i["bending"]),
    "counterweight": lambda i: i["heavier by"] * i["at radius"] / i["its radius"],
    "unbalanced_speed": lambda i: (
        math.sqrt(i["share"] * i["weight of the lathe"] / (i["heavier by"] * i["at radius"]))
        / (2 * math.pi)
    ),
    "cone_torque": lambda i: (
        i["friction"]
        * i["push of the tailstock"]
        * (i["mouth, outside"] + i["mouth, inside"])
        / (4 * math.sin(i["half angle"]))
    ),
    "stud_torque": lambda i: i["yield"] * math.pi * i["stud"] ** 3 / (32 * i["out"]) * i["radius"],
    "screwed_torque": lambda i: screwed(i, 1.0),
    "unscrewing_torque": lambda i: screwed(i, -1.0),
}


def spoked() -> Job:
    job = wheel_job(outside=0.19, length=0.03, material="gray-iron-30", cuts=turning(0.3e-3))
    pieces = (
        Piece(0.0, 0.03, 0.05),
        Piece(0.009, 0.021, 0.16, 0.05),
        Piece(0.0, 0.03, 0.19, 0.16),
    )
    work = replace(
        job.work,
        pieces=pieces,
        spokes=Spokes(5, 0.022, 0.012),
        quantity=2,
        chamfers=Chamfers(0.001, 0.0015),
    )
    return replace(job, work=work)


def blanks() -> Job:
    job = wheel_job(length=0.01, cuts=turning(0.3e-3))
    return replace(job, work=replace(job.work, quantity=9))


def threaded(hand: str) -> Job:
    job = wheel_job(bore=0.0184, cuts=turning(0.3e-3))
    thread = bore_thread(f"M20 x 1.5{hand}", "work.bore.thread")
    return replace(job, work=replace(job.work, bore=replace(job.work.bore, thread=thread)))


CASES = {
    "nut-mandrel": (wheel_job(cuts=turning(0.3e-3)), {"mandrel_bow", "clamp_force", "face_torque"}),
    "gang": (blanks(), {"mandrel_bow", "face_torque"}),
    "faceplate": (spoked(), {"bolts_torque", "counterweight", "unbalanced_speed"}),
    "faceplate, one bolt": (
        wheel_job(outside=0.112, length=0.012, bore=0.09, cuts=turning(0.3e-3)),
        {"cap_thickness"},
    ),
    "spigot-plate": (spoked(), {"bolts_torque", "counterweight", "unbalanced_speed"}),
    "cone-centers": (spoked(), {"cone_torque", "stud_torque"}),
    "threaded": (threaded(""), {"screwed_torque"}),
    "threaded, left": (threaded(" LH"), {"unscrewing_torque"}),
}


def figures(case: str) -> dict[str, Figure]:
    job = replace(CASES[case][0], use=case.partition(",")[0])
    return {f.name: f for f in plan_figures(plan(job, source_tables=TABLES))}


@pytest.mark.parametrize("case", CASES)
def test_the_numbers_shown_give_the_number_shown(case: str) -> None:
    found = figures(case)
    assert CASES[case][1] <= set(found)
    for name in set(SUMS) & set(found):
        inputs = {i.label: i.value for i in found[name].inputs}
        assert SUMS[name](inputs) == pytest.approx(found[name].best, rel=CLOSE), name


@pytest.mark.parametrize("case", CASES)
def test_every_rule_is_a_row_and_every_source_is_known(case: str) -> None:
    for figure in figures(case).values():
        if figure.formula:
            assert TABLES.formula(figure.formula).rule
        assert all(s == "stated" or TABLES.source(s) for s in figure.sources)
