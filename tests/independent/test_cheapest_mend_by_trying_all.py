"""The mend that is named: against trying every change and every setting here, without the search.

Feeds, speeds, passes, edges and costs are made again from the words of the rule and the rows of the
tables; of the planning only the limits are asked, one setting at a time.
"""

from __future__ import annotations

import csv
import math
from collections.abc import Iterator
from dataclasses import replace

import numpy as np
import pytest
from tests.blocked_cuts import COARSE, FINE, WEAK, blocked_cuts, text_of

from borewright.answer.records import Cut
from borewright.job.records import Machine
from borewright.mechanics.spread import likely
from borewright.mechanics.springing import spring_pass_share
from borewright.planning.passes.holding import OnTaper
from borewright.planning.passes.least_time import solved
from borewright.planning.passes.limits import Asked, Wanted, limits_of
from borewright.planning.passes.problem import Problem
from borewright.planning.passes.search import searched, single_changes
from borewright.planning.passes.setting import Run, Setting
from borewright.planning.weighing.spring_pass import radial_rate
from borewright.reference.library import DATA

JOBS = {
    "too coarse a feed": COARSE,
    "too fine a finish": FINE,
    "too weak a lathe": WEAK,
    "twenty of them": {**FINE, "quantity": "20"},
    "an inch shop": {**FINE, "units": "inch"},
    "brass": {**COARSE, "material": "brass"},
}


def rows(table: str) -> list[dict[str, str]]:
    with (DATA / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


MINUTES = {row["id"]: row for row in rows("mend_minutes")}


def setting_up(mends: tuple[str, ...], quantity: int) -> float:
    """Minutes by the table, likely case."""
    once, each = (sum(float(MINUTES[m][k]) for m in mends) for k in ("once_best", "each_best"))
    return once + quantity * each


def edges(kind: str, shop: str) -> list[float]:
    return [
        float(r["value"])
        for r in rows("tool_edges")
        if r["kind"] == kind and r["shop"] in (shop, "both")
    ]


def stepped_down(most: float, step: float, count: int) -> list[float]:
    """Whole steps, a twentieth of a decade from each to the next."""
    found = []
    for k in range(1, count + 1):
        whole = math.floor(most / 10 ** (k / 20) / step + 1e-6)
        if 0 < whole * step < most - 1e-12 and whole * step not in found:
            found.append(whole * step)
    return found


def lists(run: Run, machine: Machine) -> tuple[list[float], list[float]]:
    """Feeds and speeds of the lathe that are no more than the usual; the least where all are."""
    feeds = [f for f in machine.feeds if f <= 1.06 * run.usual_feed]
    above = [f for f in machine.feeds if f > 1.06 * run.usual_feed]
    if above and (run.coarser or not feeds):
        feeds.append(min(above))
    most = run.surface / (math.pi * run.begins) * (1 + 1e-9)
    return feeds, [s for s in machine.speeds if s <= most] or [min(machine.speeds)]


def depths(run: Run) -> list[tuple[float, ...]]:
    """Even passes from the fewest to four times as many, or eight more."""
    if run.once:
        return [(run.stock,)]
    fewest = max(1, math.ceil(round(run.stock / run.deepest, 6)))
    found: list[tuple[float, ...]] = []
    n = fewest
    while n <= max(4 * fewest, fewest + 8):
        even = run.stock / n
        if even < run.least * (1 - 1e-6) and n > fewest:
            break
        found.append((even,) * n)
        n += 1 if n < fewest + 8 else max(1, n // 10) + 1
    return found


def least_minutes(p: Problem) -> float:
    """Least cutting time (min) of all settings within all limits; infinite where none is."""
    model = replace(p.model, diameter=p.run.begins)
    limits = limits_of(Asked(p.holding, model, p.run, p.body, p.eased, p.machine), p.wanted)
    feeds, speeds = lists(p.run, p.machine)
    tried = [
        Setting(d, f, s, len(d) * (p.run.length / (f * s) + p.run.between))
        for d in depths(p.run)
        for f in feeds
        for s in speeds
    ]
    within = (
        s.seconds
        for s in sorted(tried, key=lambda s: s.seconds)
        if all(limit.share(s) >= 1 for limit in limits)
    )
    return next(within, math.inf) / 60


def changed(p: Problem) -> Iterator[tuple[str, Problem]]:
    """Every change of the tool, the lathe or the passes, as the rules have them."""
    job, tables = p.holding.job, p.holding.tables
    run, model, (feeds, speeds) = p.run, p.model, lists(p.run, p.machine)
    most = max(len(d) for d in depths(run))
    yield (
        "more-passes",
        replace(p, run=replace(run, once=False, deepest=run.stock / (most + 1), least=25e-6)),
    )
    finer = stepped_down(min(feeds), 0.0254e-4 if job.units == "inch" else 1e-6, 18)
    machine = replace(p.machine, feeds=tuple(finer))
    yield "finer-feed", replace(p, run=replace(run, usual_feed=finer[0]), machine=machine)
    slower = tuple(stepped_down(min(speeds), 1 / 60, 16))
    yield "back-gear", replace(p, machine=replace(p.machine, speeds=slower))
    yield "coolant", replace(p, model=replace(model, coolant=True))
    for angle in edges("edge-angle", job.units):
        yield "tool-turned", replace(p, model=replace(model, edge_angle=angle))
    for nose in edges("nose", job.units):
        yield "other-nose", replace(p, model=replace(model, nose_radius=nose))
    (rake,) = edges("more-rake", job.units)
    saved = tables.cutting_correction("rake_per_radian").low
    yield "keener-rake", replace(p, eased=1 - saved * rake)
    if p.wanted.allowed is not None and p.holding.swing is not None:
        yield "spring-pass", gone_over_twice(p)


def gone_over_twice(p: Problem) -> Problem:
    assert p.holding.swing is not None
    rate = radial_rate(replace(p.model, depth=p.run.stock), p.holding.job, p.holding.tables)
    left = float(spring_pass_share(rate, likely(np.atleast_1d(p.holding.swing.stiffness))))
    run = replace(p.run, length=2 * p.run.length, between=2 * p.run.between)
    return replace(p, run=run, wanted=replace(p.wanted, sprung=left))


def all_of(p: Problem) -> dict[str, float]:
    """Minutes of the batch with each change that unblocks, the cheapest of its kind."""
    metal = p.holding.tables.material(p.holding.job.work.material).cut_class
    quantity = p.holding.job.work.quantity
    found: dict[str, float] = {}
    for mend, other in changed(p):
        cutting = least_minutes(other)
        if cutting < math.inf and metal not in MINUTES[mend]["never"].split(";"):
            cost = setting_up((mend,), quantity) + quantity * cutting
            found[mend] = min(cost, found.get(mend, math.inf))
    return found


def cases() -> Iterator[tuple[str, Cut, Problem]]:
    for name, changed_in in JOBS.items():
        for cut, _, problem in blocked_cuts(text_of(**changed_in)):
            yield name, cut, problem


CASES = list(cases())


@pytest.mark.parametrize(
    "problem", [p for _, _, p in CASES], ids=[f"{name}, {cut.id}" for name, cut, _ in CASES]
)
def test_the_mend_named_is_the_cheapest_of_all_that_unblock(problem: Problem) -> None:
    tried = all_of(problem)
    result = searched(problem).mended
    assert tried, "a blocked cut that some one change unblocks"
    cheapest = min(tried, key=lambda mend: tried[mend])
    assert result[0].cost == pytest.approx(tried[cheapest], rel=1e-9)
    assert result[0].change.mends == (cheapest,)
    if len(tried) > 1:
        second = sorted(tried.values())[1]
        assert result[1].cost == pytest.approx(second, rel=1e-9)


@pytest.mark.parametrize("problem", [p for _, _, p in CASES][::3])
def test_each_change_costs_what_trying_all_finds_and_none_is_left_out(problem: Problem) -> None:
    tried, found = all_of(problem), {}
    for change in single_changes(problem):
        answer = solved(change.problem)
        if not answer.blocked:
            quantity = problem.holding.job.work.quantity
            cost = setting_up(change.mends, quantity) + quantity * answer.setting.seconds / 60
            found[change.mends[0]] = min(cost, found.get(change.mends[0], math.inf))
    assert found == pytest.approx(tried, rel=1e-9)


def test_a_keener_tool_asks_so_much_less_of_every_force() -> None:
    problem = CASES[0][2]
    setting = problem.settings[0]
    usual, keen = (
        Asked(problem.holding, problem.model, problem.run, problem.body, eased).demand(setting)
        for eased in (1.0, 0.9)
    )
    for force in ("torque", "axial", "radial", "tangential", "power"):
        assert getattr(keen, force) == pytest.approx(0.9 * getattr(usual, force), rel=1e-12)


def test_a_tool_with_more_rake_saves_the_least_that_is_said() -> None:
    """0.573 of the force for each radian, 10 degrees: a tenth."""
    (change,) = (c for c in single_changes(CASES[0][2]) if c.mends == ("keener-rake",))
    assert change.problem.eased == pytest.approx(1 - 0.573 * math.radians(10))


def test_coolant_carries_off_what_one_lump_loses_to_it() -> None:
    """W / (h A) (1 - exp(-h A t / m c)), h that of a stream of coolant."""
    problem = CASES[0][2]
    tables, body, setting = problem.holding.tables, problem.body, problem.settings[0]
    wet = replace(problem.model, coolant=True)
    asked = Asked(problem.holding, wet, problem.run, body)
    watts = tables.allowance("heat_share").best * asked.power(setting)
    area = body.area * tables.grinding("coolant_loss").best
    seconds = setting.seconds / len(setting.depths) - problem.run.between
    rise = watts / area * (1 - math.exp(-area * seconds / body.heat_capacity))
    assert asked.warmth(setting) == pytest.approx(rise, rel=1e-9)


@pytest.mark.parametrize(
    ("metal", "never"),
    [("mg-az31", "coolant"), ("gray iron", "coolant"), ("brass", "keener-rake")],
)
def test_what_a_metal_does_not_bear_is_not_tried(metal: str, never: str) -> None:
    """Water on magnesium, coolant on iron, a keen tool in brass."""
    problem = CASES[0][2]
    work = replace(problem.holding.job.work, material=problem.holding.tables.material(metal).id)
    holding = problem.holding
    assert isinstance(holding, OnTaper)
    other = replace(holding.trial, job=replace(holding.job, work=work))
    offered = {c.mends[0] for c in single_changes(replace(problem, holding=OnTaper(other)))}
    assert never not in offered
    assert {"more-passes", "finer-feed", "other-nose"} <= offered


def test_the_cases_have_more_than_one_kind_of_cheapest_mend() -> None:
    """So that one that is always named could not pass."""
    named = {searched(problem).mended[0].change.mends for _, _, problem in CASES}
    assert len(named) >= 3


@pytest.mark.parametrize("problem", [p for n, _, p in CASES if n != "brass"][:6])
def test_what_is_within_all_limits_is_so_when_they_are_asked_again(problem: Problem) -> None:
    for mended in searched(problem).mended:
        after = mended.change.problem
        model = replace(after.model, diameter=after.run.begins)
        asked = Asked(after.holding, model, after.run, after.body, after.eased, after.machine)
        wanted: Wanted = after.wanted
        assert all(limit.share(mended.found.setting) >= 1 for limit in limits_of(asked, wanted))
