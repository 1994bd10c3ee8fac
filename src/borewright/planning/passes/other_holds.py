"""The same hold pressed further, or with a positive drive: what can truly be tried of it here."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from borewright.answer.held import Drive
from borewright.holding.drives.offered import driven, drives_for
from borewright.planning.passes.holding import OnTaper, Otherwise, holding_of
from borewright.planning.passes.problem import Problem
from borewright.planning.taper.travel import RULE_STEP
from borewright.planning.taper.trial import Trial, past_what
from borewright.quantities.si import Metre

PARTS = 4
"""So many travels are tried, spread over all that bore, press and mandrel allow (ours)."""


def travelled(problem: Problem) -> Iterator[tuple[Metre, Problem]]:
    """The work pressed further on a taper, as far as the plan itself would go: the press (m) from the
    hand's touch, as the sheet says it, and the problem then."""
    holding = problem.holding
    if not isinstance(holding, OnTaper):
        return
    for travel in _travels(holding.trial):
        further = _pressed(holding.trial, travel)
        yield further.chosen.press, replace(problem, holding=OnTaper(further))


def _travels(trial: Trial) -> list[Metre]:
    """Some of the longer travels that hurt nothing, shortest first."""
    step = RULE_STEP[trial.job.units]
    most = trial.tables.allowance("press_travel").high
    longer = range(1, max(0, int((most - trial.chosen.press) / step + 1e-6)) + 1)
    safe = [k for k in longer if not past_what(trial, trial.chosen.travel + k * step)]
    some = {safe[(len(safe) - 1) * n // PARTS] for n in range(1, PARTS + 1)} if safe else set()
    return [trial.chosen.travel + k * step for k in sorted(some)]


def _pressed(trial: Trial, travel: Metre) -> Trial:
    grip = trial.hold.grip(travel)
    chosen = replace(trial.chosen, travel=travel, press=travel - trial.hand, grip=grip)
    return replace(trial, chosen=chosen)


def driven_problems(problem: Problem) -> Iterator[tuple[Drive, Problem]]:
    """The same with each positive drive that the way can take and has not got."""
    holding = problem.holding
    if isinstance(holding, OnTaper):
        if holding.trial.drive is not None:
            return
        for drive in _drives(holding, holding.trial.hold.way, holding.trial.hold.leading):
            trial = replace(holding.trial, drive=drive)
            yield drive, replace(problem, holding=holding_of(trial))
    if isinstance(holding, Otherwise):
        yield from _driven(problem, holding)


def _driven(problem: Problem, holding: Otherwise) -> Iterator[tuple[Drive, Problem]]:
    held = holding.trial.held
    for drive in _drives(holding, held.way, held.leading):
        if drive.tool not in held.tool:
            with_it = driven(held, drive)
            trial = replace(holding.trial, held=with_it, grip=with_it.grip or holding.trial.grip)
            yield drive, replace(problem, holding=holding_of(trial))


def _drives(holding: OnTaper | Otherwise, way: str, leading: str) -> tuple[Drive, ...]:
    return drives_for(way, holding.job, holding.tables, leading)
