"""What can be changed about a cut that no setting of the lathe takes: each a changed problem.

A wait between passes is none of them: every pass is asked cool already, and a plan whose passes run
on without a pause was asked for because waits had made its answer worse.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from borewright.planning.passes.ladders import finer_feeds, slower_speeds
from borewright.planning.passes.other_holds import driven_problems, travelled
from borewright.planning.passes.problem import Problem, spring_pass
from borewright.planning.passes.setting import Setting, most_passes
from borewright.planning.weighing.power import motor_power
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.mends import ToolEdge

Says = Callable[[Setting, Show], str]
"""What a mend is, its number taken from the setting found with it."""


@dataclass(frozen=True, slots=True, eq=False)
class Change:
    """A problem changed by one mend, or by two. `making`: minutes to make what it needs."""

    mends: tuple[str, ...]
    problem: Problem
    says: tuple[Says, ...]
    making: float = 0.0


def changes(mend: str, before: Change) -> Iterator[Change]:
    """Every problem that one mend makes of another; none where its metal never bears it."""
    tables, job = before.problem.holding.tables, before.problem.holding.job
    metal = tables.material(job.work.material).cut_class
    if metal in tables.mend_minutes(mend).never:
        return
    for problem, says, making in MENDS[mend](before.problem):
        yield Change((*before.mends, mend), problem, (*before.says, says), before.making + making)


Changed = Iterator[tuple[Problem, Says, float]]


def _plunged(problem: Problem) -> bool:
    """Whether the tool goes straight in, its whole edge at once."""
    return problem.model.kind in ("groove", "edge")


LIGHTEST = 25e-6
"""Lightest pass (m) that a dial sets and an edge takes (ours): a thou."""


def _more_passes(problem: Problem) -> Changed:
    """More, and lighter, than were tried."""
    if _plunged(problem):
        return
    fewest = 1 + most_passes(problem.run)
    run = replace(problem.run, once=False, deepest=problem.run.stock / fewest, least=LIGHTEST)
    yield replace(problem, run=run), _passes, 0.0


def _passes(setting: Setting, show: Show) -> str:
    return f"{len(setting.depths)} passes of {show.depth(setting.deepest)}"


def _spring_pass(problem: Problem) -> Changed:
    sprung = spring_pass(problem)
    if sprung is not None:
        yield sprung, lambda _, __: "going over it once more untouched (spring pass)", 0.0


def _more_travel(problem: Problem) -> Changed:
    for travel, pressed in travelled(problem):
        yield pressed, _pressed(travel), 0.0


def _pressed(travel: Metre) -> Says:
    return lambda _, show: f"pressing on {show.rule(travel)} instead"


def _finer_feed(problem: Problem) -> Changed:
    feeds = finer_feeds(problem)
    if feeds:
        run = replace(problem.run, usual_feed=max(feeds))
        yield replace(problem, run=run, machine=replace(problem.machine, feeds=feeds)), _feed, 0.0


def _feed(setting: Setting, show: Show) -> str:
    return f"a feed of {show.feed(setting.feed)}, by hand or another change gear"


def _back_gear(problem: Problem) -> Changed:
    """As much power as in the slowest gear there is."""
    speeds, slowest = slower_speeds(problem)
    if not speeds:
        return
    power = motor_power(problem.machine, slowest)
    machine = replace(problem.machine, speeds=speeds, power=power, power_by_gear=())
    yield replace(problem, machine=machine), _speed, 0.0


def _speed(setting: Setting, show: Show) -> str:
    return f"{show.spindle(setting.spindle)}, by back gear or a countershaft"


def _coolant(problem: Problem) -> Changed:
    if not problem.model.coolant:
        model = replace(problem.model, coolant=True)
        yield replace(problem, model=model), lambda _, __: "coolant", 0.0


def _edges(problem: Problem, kind: str) -> tuple[ToolEdge, ...]:
    return problem.holding.tables.tool_edges(kind, problem.holding.job.units)


NEAR = 0.02
"""Edges nearer than this, as a share, are the same (ours)."""


def _tool_turned(problem: Problem) -> Changed:
    """Another edge angle; not at a step, whose shoulder it would not cut square."""
    model = problem.model
    if _plunged(problem) or model.span is not None:
        return
    for edge in _edges(problem, "edge-angle"):
        if abs(edge.value - model.edge_angle) > NEAR * model.edge_angle:
            yield replace(problem, model=replace(model, edge_angle=edge.value)), _turned(edge), 0.0


def _turned(edge: ToolEdge) -> Says:
    return lambda _, show: f"the tool set at {show.angle(edge.value)} (90° is a square shoulder)"


def _other_nose(problem: Problem) -> Changed:
    model = problem.model
    if _plunged(problem):
        return
    for edge in _edges(problem, "nose"):
        if abs(edge.value - model.nose_radius) > NEAR * edge.value:
            yield replace(problem, model=replace(model, nose_radius=edge.value)), _nose(edge), 0.0


def _nose(edge: ToolEdge) -> Says:
    return lambda _, __: f"a tool with a nose of {edge.as_said}"


def _keener_rake(problem: Problem) -> Changed:
    """The least that more rake is said to save of the force counts."""
    if problem.eased < 1:
        return
    saved = problem.holding.tables.cutting_correction("rake_per_radian").low
    for edge in _edges(problem, "more-rake"):
        keener = replace(problem, eased=1 - saved * edge.value)
        yield keener, _keener(edge), 0.0


def _keener(edge: ToolEdge) -> Says:
    return lambda _, show: f"a tool with {show.angle(edge.value)} more rake"


def _narrow_tool(problem: Problem) -> Changed:
    run = problem.run
    for edge in _edges(problem, "groove-tool"):
        if problem.model.kind == "groove" and edge.value < run.least:
            fewest = 1 + most_passes(problem.run)
            narrow = replace(run, least=edge.value, deepest=run.stock / fewest)
            if narrow.deepest >= edge.value:
                yield replace(problem, run=narrow), _narrow, 0.0


def _narrow(setting: Setting, show: Show) -> str:
    return f"a grooving tool {show.length(setting.deepest)} wide"


def _positive_drive(problem: Problem) -> Changed:
    for drive, with_it in driven_problems(problem):
        making = sum(need.minutes for need in drive.needs)
        yield with_it, _drive(drive.tool), making


def _drive(tool: str) -> Says:
    return lambda _, __: tool


MENDS: dict[str, Callable[[Problem], Changed]] = {
    "more-passes": _more_passes,
    "spring-pass": _spring_pass,
    "more-travel": _more_travel,
    "finer-feed": _finer_feed,
    "back-gear": _back_gear,
    "coolant": _coolant,
    "tool-turned": _tool_turned,
    "other-nose": _other_nose,
    "keener-rake": _keener_rake,
    "narrow-tool": _narrow_tool,
    "positive-drive": _positive_drive,
}
"""Every mend, by its id in the table of minutes."""
