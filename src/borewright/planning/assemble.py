"""The whole plan for a job: weigh the shelf, carry the winner through."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from borewright.answer.records import Figure, Plan, Verdict
from borewright.cutting.demand import chip_is_thin
from borewright.job.records import Job
from borewright.planning.changes.plain_yes import plain_yes
from borewright.planning.choice.arrangement import Arranged, arrange
from borewright.planning.choice.better_ways import better_ways
from borewright.planning.choice.candidates import RANKED_BY, Weighed, as_candidate
from borewright.planning.picture.layout import layout
from borewright.planning.questions.asked import unjudged
from borewright.planning.questions.seat import wear_elsewhere
from borewright.planning.shop.names import check_names, material_taken
from borewright.planning.steps.steps import steps
from borewright.planning.words.cautions import cautions
from borewright.planning.words.push_advice import proof_load, push_advice
from borewright.planning.words.words import assumed, echo, have_ready, headline
from borewright.quantities.show import Show
from borewright.reference.library import Tables

if TYPE_CHECKING:
    from borewright.answer.change import Change
    from borewright.answer.first_hold import FirstHold


def plan_job(job: Job, tables: Tables, *, with_changes: bool = True) -> Plan:
    """How to hold, press, cut and take off the work of a job.

    `with_changes`: also weigh what of the part to change, where the answer is no plain yes.

    UnknownName for a material, gauge or process that the tables do not have; RefusedInput where
    `use` names nothing that can be tried.
    """
    check_names(job, tables)
    job, taken = material_taken(job, tables)
    found = arrange(job, tables)
    best = found.best
    plan = _served(found, best, tables) if best else _nothing(found, tables)
    return replace(
        plan,
        assumed=(*taken, *plan.assumed),
        first_hold=_first_hold(found.job, tables),
        changes=_changes(found.job, tables, best) if with_changes else (),
    )


def _first_hold(job: Job, tables: Tables) -> FirstHold | None:
    if job.work.blank != "casting":
        return None
    from borewright.planning.steps.first_hold import first_hold  # other blanks start sooner

    return first_hold(job, tables)


def _changes(job: Job, tables: Tables, best: Weighed | None) -> tuple[Change, ...]:
    if best is not None and plain_yes(best):
        return ()
    from borewright.planning.changes.changes import changes  # a plain yes comes sooner

    return changes(job, tables, best)


def _served(found: Arranged, best: Weighed, tables: Tables) -> Plan:
    job, shop = found.job, found.shop
    trial, better = best.trial, better_ways(job, shop, best, tables)
    push, proof = push_advice(trial), proof_load(trial)
    no = best.verdict is Verdict.NO
    sheet_steps = steps(trial, push, proof)
    figures = tuple(f for q in best.questions for f in q.figures)
    return Plan(
        title=job.title,
        units=job.units,
        verdict=best.verdict,
        headline=headline(best, better),
        echo=echo(job, tables),
        chosen=None if no else as_candidate(best),
        questions=best.questions,
        candidates=found.weighing.candidates,
        better_ways=better,
        steps=() if no else sheet_steps,
        cautions=cautions(job, shop, tables, None if no else trial.mandrel),
        cuts=trial.cuts,
        have_ready=() if no else have_ready(best, shop, push, proof.by_hand),
        figures=figures,
        bore_window=trial.window if trial.window[0] < trial.window[1] else None,
        push=None if no else push,
        proof=None if no else proof,
        layout=layout(trial),
        assumed=assumed(job, shop, best, tables),
        not_judged=unjudged(job),
        sources=_sources(figures, best, tables),
        notes=(*found.instead, *_notes(best, tables)),
    )


def _nothing(found: Arranged, tables: Tables) -> Plan:
    job, shop = found.job, found.shop
    better = better_ways(job, shop, None, tables)
    return Plan(
        title=job.title,
        units=job.units,
        verdict=Verdict.NO,
        headline=headline(None, better, _missing(found)),
        echo=echo(job, tables),
        chosen=None,
        questions=(),
        candidates=found.weighing.passed,
        better_ways=better,
        steps=(),
        cautions=cautions(job, shop, tables, None),
        cuts=(),
        have_ready=(),
        figures=(),
        bore_window=None,
        push=None,
        proof=None,
        layout=None,
        assumed=assumed(job, shop, None, tables),
        not_judged=unjudged(job),
        sources=(),
        notes=(),
    )


def _missing(found: Arranged) -> str:
    """Why no mandrel of the shelf can be tried."""
    nearest = found.weighing.nearest
    if found.shop.owns_none or nearest is None:
        return "there is no mandrel to try."
    ground = Show(found.job.units).band(nearest.small_end, nearest.large_end, "bore")
    return f"no mandrel on the shelf is near this bore; the nearest, {nearest.name}, is ground {ground}."


def _sources(figures: tuple[Figure, ...], best: Weighed, tables: Tables) -> tuple[str, ...]:
    ids = {s for f in figures for s in f.sources} | {s for q in best.questions for s in q.sources}
    ids |= {tables.formula(f.formula).source for f in figures if f.formula}
    ids.discard("stated")
    return tuple(f"{i}: {tables.source(i).citation}" for i in sorted(ids))


def _notes(best: Weighed, tables: Tables) -> tuple[str, ...]:
    notes = [f"Candidates are ranked by {RANKED_BY}.", *wear_elsewhere(best.trial)]
    thin = [c.name for c in best.trial.cuts if chip_is_thin(c, tables)]
    if thin:
        notes.append(
            f"Chips thinner than the force law was fitted for: {', '.join(thin)}; their forces are stretched."
        )
    notes.append(
        "Pressure and stress are those of work and mandrel as two elastic bodies on the true outline; a sharp "
        "edge or corner has no greatest stress and is left to its radius."
    )
    if best.trial.job.work.spokes:
        notes.append(
            "Spokes: only the hub is taken to grip, as a ring by itself; what the spokes add to it is left out, and so "
            "is what one of them loads more than its share."
        )
    if best.trial.job.work.keyway:
        notes.append(
            "The keyway takes its width off the round that bears, and raises the stress by its notch factor: estimates, "
            "not a sum of the corner."
        )
    return tuple(notes)
