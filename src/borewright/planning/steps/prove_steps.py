"""The pencil line, the setting up, and the proof load: what proves the grip before anything is cut."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.records import Figure, Input, ProofLoad
from borewright.planning.questions.slip import proof_demand
from borewright.planning.steps.load_steps import Line, between_centers
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure, given
from borewright.quantities.show import Show

GRAVITY = 9.80665
"""Standard gravity (m/s²), by definition (CGPM 1901)."""


def prove(trial: Trial, proof: ProofLoad) -> Iterator[Line]:
    show = trial.show
    yield (
        "Pencil line",
        "Across mandrel and work, at both faces. If it ever breaks, it slipped: stop.",
        (),
        (),
    )
    yield between_centers(trial)
    if trial.drive is not None and trial.drive.mount is not None:
        mount = trial.drive.mount
        yield mount.title, mount.text, mount.figures, mount.blanks
    turns = any(c.space is None for c in trial.cuts)
    way = "against the way the work turns" if turns else "one way and then the other"
    pulled = f"pull {show.force(proof.rim_force)} at the rim by a cord"
    hung = f"{pulled.capitalize()} wound round it, {way}"
    armed = (
        f"Hang {show.weight(proof.force / GRAVITY)}, the arm's own pull counted, {show.length(proof.arm)} from the "
        f"axis on a level arm clamped to the rim (or {pulled}), {way}"
    )
    yield (
        "Proof load",
        f"Power off, spindle held{_taken_up(trial)}. {_twisted(proof, show) or (hung if proof.by_cord else armed)}: {proof.factor:g} times the hardest cut below. The pencil "
        f"line must not break; if it does, {'drive' if trial.shop.hammers else 'press'} further or cut lighter. "
        f"Then {'' if proof.by_hand else 'take arm, weight and cord off, '}free the spindle, and turn once by "
        f"hand.{_first_and_strange(trial)}",
        ()
        if proof.by_hand
        else (
            *(() if proof.by_cord else _armed(trial, proof)),
            figure(
                "proof_rim_force",
                proof.rim_force,
                "N",
                "force",
                "proof_load",
                _proof_inputs(trial, proof),
            ),
        ),
        ("line held",),
    )


def _armed(trial: Trial, proof: ProofLoad) -> tuple[Figure, ...]:
    """The weight, and the arm that it hangs on."""
    weight = proof.force / GRAVITY
    inputs = _proof_inputs(trial, proof)
    return (
        figure("proof_weight", weight, "kg", "mass", "proof_load", inputs),
        figure("proof_arm", proof.arm, "m", "length", "", sources=("ours",)),
    )


def _proof_inputs(trial: Trial, proof: ProofLoad) -> tuple[Input, ...]:
    demand = proof_demand(trial)
    return (
        given("factor", proof.factor),
        given("demand", demand, "N"),
        given("bore", trial.grip.diameter, "m", "bore"),
        given("arm", proof.arm, "m"),
        given("rim radius", proof.rim_radius, "m"),
    )


def _twisted(proof: ProofLoad, show: Show) -> str:
    """Said instead of a weight where the cut asks less than a hand's twist; empty where it asks more."""
    if not proof.by_hand:
        return ""
    return (
        f"Twist the rim hard by hand, both ways: that is more than the {show.torque(proof.torque)} wanted "
        f"({show.force(proof.rim_force)} at the rim)"
    )


def _first_and_strange(trial: Trial) -> str:
    """Which pieces of a batch are proved."""
    if trial.job.work.quantity < 2:
        return ""
    return " Prove the first, and any that touches or pushes otherwise than the first."


def _taken_up(trial: Trial) -> str:
    return ", dog against its driver" if trial.job.driven_by == "dog" else ""
