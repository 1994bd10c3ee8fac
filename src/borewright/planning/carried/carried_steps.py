"""The numbered steps of a hold of any way: mounting, proving, cutting, letting go."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from borewright.answer.held import HEAD_FACE, OUTSIDE
from borewright.answer.held import line as step
from borewright.answer.records import Figure, ProofLoad, Step
from borewright.mechanics.spread import likely
from borewright.planning.held.held_trial import HeldTrial, hardest
from borewright.planning.steps.balance_step import balance_step
from borewright.planning.steps.crown_step import crown_line
from borewright.planning.steps.finished_words import edge_words, last_size, size_blanks
from borewright.planning.steps.parallel_step import parallel_step
from borewright.planning.steps.prove_steps import GRAVITY
from borewright.planning.steps.steps import DIALS, cut_figures
from borewright.planning.weighing.figures import figure, given

SMALL, THIN = 2.5, 0.25
"""Ours: outside and wall over bore below which no arm is clamped to the work."""


def carried_steps(trial: HeldTrial, proof: ProofLoad) -> tuple[Step, ...]:
    """From making what holds it to taking it off."""
    look = [_look_first()] if trial.job.work.flaws == "suspected" else []
    held = trial.held
    steps = [*look, *held.mount, proved(trial, proof), *held.first, *_cut(trial), *held.release]
    if not (trial.held.faces_done or HEAD_FACE in trial.held.reaches):
        steps.append(_second_face())
    steps += [step(*said) for said in balance_step(trial, "On a straight bar that fits the bore")]
    return tuple(replace(s, number=k) for k, s in enumerate(steps, 1))


def _look_first() -> Step:
    return step(
        "Look for the flaw first",
        "Clean bore, key corners and spokes to bare metal. Look under a lamp, ring it hanging free, use a crack-finding dye "
        "where there is one. A crack, or any doubt left: stop. It is mended by those who may, or scrapped; nothing here makes "
        "it sound.",
        (),
        ("looked by", "no crack found"),
    )


def held_proof(trial: HeldTrial) -> ProofLoad:
    """A weight on an arm, and the same at the rim, sized for the hardest planned cut."""
    allowance = trial.tables.allowance
    factor = allowance("proof_factor").best
    arm = allowance(f"proof_arm_{trial.job.units}").best
    drills = likely(trial.held.drilling.torque) if trial.held.drilling else 0.0
    torque = factor * max(likely(hardest(trial)[1].torque), drills)
    work = trial.job.work
    rim = work.outside / 2
    by_hand = torque < allowance("hand_twist").low and torque / rim < allowance("hand_pull").low
    wall = (work.outside - work.bore.size) / 2
    by_cord = work.outside < SMALL * work.bore.size or wall < THIN * work.bore.size
    return ProofLoad(torque, arm, torque / arm, rim, torque / rim, factor, by_hand, by_cord)


def proved(trial: HeldTrial, proof: ProofLoad) -> Step:
    """The step that loads the hold before any cut, and what shows that it held."""
    show = trial.show
    pull = f"pull {show.force(proof.rim_force)} at the rim by a cord"
    if proof.by_hand:
        how = f"Twist the rim hard by hand, both ways: that is more than the {show.torque(proof.torque)} wanted"
    elif proof.by_cord:
        how = f"{pull[0].upper()}{pull[1:]} wound round it, against the way the work turns"
    else:
        how = (
            f"Hang {show.weight(proof.force / GRAVITY)} {show.length(proof.arm)} from the axis on a level arm clamped to the "
            f"rim (or {pull}), against the way the work turns"
        )
    drilled = " and the largest drill" if trial.held.drilling else ""
    return step(
        "Pencil line and proof load",
        "A pencil line across the work and what holds it. Power off, spindle held. "
        f"{how}: {proof.factor:g} times the hardest cut below{drilled}. The line must not break; if it does, stop, tighten or cut "
        "lighter. Take everything off, free the spindle, turn once by hand: everything must clear.",
        () if proof.by_hand else _proof_figures(trial, proof),
        ("line held",),
    )


def _proof_figures(trial: HeldTrial, proof: ProofLoad) -> tuple[Figure, ...]:
    inputs = (
        given("factor", proof.factor),
        given("torque of the hardest cut", proof.torque / proof.factor, "N·m"),
        given("rim radius", proof.rim_radius, "m"),
        given("arm", proof.arm, "m"),
    )
    pull = figure("proof_rim_force", proof.rim_force, "N", "force", "proof_at_rim", inputs)
    if proof.by_cord:
        return (pull,)
    weight = figure("proof_weight", proof.force / GRAVITY, "kg", "mass", "proof_on_arm", inputs)
    return (weight, pull)


def _cut(trial: HeldTrial) -> Iterator[Step]:
    turned = [cut for cut in trial.cuts if cut.on_lathe]
    if turned:
        yield step(
            "Cut, in the order of the table",
            f"Its speeds, or the next slower. {DIALS[trial.job.shelf.machine.dial]} Watch the pencil line."
            + (LAST_WAITS if trial.held.last else ""),
            tuple(f for cut in turned for f in cut_figures(cut, trial)),
        )
    yield from trial.held.last
    if trial.held.room[1] > 0 and OUTSIDE in trial.held.reaches:
        yield from (step(*said) for said in parallel_step(trial, trial.held.room[1]))
    if OUTSIDE in trial.held.reaches:
        to_size, size = last_size(trial)
        yield step(
            "The last size" if trial.held.last else "Cool, then the last size",
            f"Let the work come to room temperature before the last pass and before measuring.{to_size}{edge_words(trial.job, trial.show)}",
            size,
            (*size_blanks(trial.job), "rim to bore"),
        )
        yield from (step(*line) for line in crown_line(trial))


LAST_WAITS = " The last pass over the outside waits until the bore is finished."


def _second_face() -> Step:
    return step(
        "The other face",
        "It cannot be reached here. Turn the work round, held by what is now true: soft jaws or packing on the finished "
        "outside, the finished face back against the jaws, clocked; face to length and break the edges.",
        (),
        ("length",),
    )
