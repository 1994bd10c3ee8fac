"""The whole plan on one way of holding that is not the plain taper mandrel."""

from __future__ import annotations

from borewright.answer.plan import Plan
from borewright.answer.records import Candidate, Figure, Verdict
from borewright.job.records import Job
from borewright.planning.carried.carried_steps import carried_steps, held_proof
from borewright.planning.carried.carried_words import (
    carried_assumed,
    carried_headline,
    carried_ready,
)
from borewright.planning.choice.held_rows import WeighedHeld
from borewright.planning.heating.heat_run import heat_run
from borewright.planning.heating.warm_size import warm_size_figures
from borewright.planning.held.held_trial import HeldTrial
from borewright.planning.questions.asked import unjudged
from borewright.planning.weighing.rim_speed import rim_cautions
from borewright.planning.words.cautions import held_cautions
from borewright.planning.words.words import echo
from borewright.reference.library import Tables


def carried_plan(
    weighed: WeighedHeld,
    trial: HeldTrial,
    chosen: Candidate,
    candidates: tuple[Candidate, ...],
    others: tuple[Candidate, ...],
    tables: Tables,
) -> Plan:
    """Steps, cuts, cautions and figures of one hold; `others` are the other ways that serve."""
    job, verdict = trial.job, weighed.verdict
    deciding = weighed.deciding or weighed.questions[0]
    no = verdict is Verdict.NO
    proof = held_proof(trial)
    warm = warm_size_figures(trial, heat_run(trial))
    figures = (*(f for q in weighed.questions for f in q.figures), *trial.held.figures, *warm)
    return Plan(
        title=job.title,
        units=job.units,
        verdict=verdict,
        headline=carried_headline(trial, verdict, deciding),
        echo=echo(job, tables),
        chosen=None if no else chosen,
        questions=weighed.questions,
        candidates=candidates,
        better_ways=others,
        steps=() if no else carried_steps(trial, proof),
        cautions=(
            *rim_cautions(trial, tables),
            *held_cautions(job, trial.held.caution_tags, tables),
        ),
        cuts=trial.cuts,
        have_ready=() if no else carried_ready(trial),
        figures=figures,
        bore_window=trial.held.bore_window,
        push=None,
        proof=None if no else proof,
        layout=None,
        assumed=carried_assumed(trial, tables),
        not_judged=unjudged(job),
        sources=sources_of(figures, weighed, tables),
        notes=trial.held.notes,
        held=trial.held.picture,
    )


def sources_of(
    figures: tuple[Figure, ...], weighed: WeighedHeld, tables: Tables
) -> tuple[str, ...]:
    """Every source that a figure or an answer stands on, cited."""
    ids = {s for f in figures for s in f.sources}
    ids |= {s for q in weighed.questions for s in q.sources}
    ids |= {tables.formula(f.formula).source for f in figures if f.formula}
    ids |= {"ours"}  # the minutes
    ids.discard("stated")
    return tuple(f"{i}: {tables.source(i).citation}" for i in sorted(ids))


def cannot_plan(
    job: Job,
    reason: str,
    candidates: tuple[Candidate, ...],
    others: tuple[Candidate, ...],
    tables: Tables,
) -> Plan:
    """The plan where the way insisted on cannot be done at all, or nothing can."""
    return Plan(
        title=job.title,
        units=job.units,
        verdict=Verdict.NO,
        headline=f"No: {reason}",
        echo=echo(job, tables),
        chosen=None,
        questions=(),
        candidates=candidates,
        better_ways=others,
        steps=(),
        cautions=held_cautions(job, ("chuck",), tables),
        cuts=(),
        have_ready=(),
        figures=(),
        bore_window=None,
        push=None,
        proof=None,
        layout=None,
        assumed=(),
        not_judged=unjudged(job),
    )
