"""The push tells the grip: what push to look for, what it proves, and the proof load.

Slip torque is push × half the bore × (μ_slip / μ_on); modulus, wall, roughness, bore error and the
level of friction cancel. So a push felt at the press turns a wide prediction into a narrow one.
"""

from __future__ import annotations

from borewright.answer.records import Input, ProofLoad, PushAdvice
from borewright.mechanics.press import torque_from_push
from borewright.mechanics.slip import proof_torque
from borewright.mechanics.spread import high_end, likely, low_end
from borewright.planning.questions.slip import hardest_cut, proof_demand
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure, given, spread
from borewright.planning.weighing.margins import demand_on_uncut

SMALL, THIN = 2.5, 0.25
"""Ours: outside and wall over bore below which no arm is clamped to the work."""


def push_advice(trial: Trial) -> PushAdvice:
    """Push to expect, push that proves the cut in the poor case, push to stop at, torque proved."""
    grip = trial.grip
    ratio = trial.tables.friction(trial.job.work.material, trial.job.lubrication).slip_ratio
    push = likely(grip.push_on)
    proved = [
        float(torque_from_push(push, grip.diameter, r)) for r in (ratio.low, ratio.best, ratio.high)
    ]
    inputs = (
        given("push", push, "N"),
        given("bore", grip.diameter, "m"),
        given("ratio", ratio.best),
    )
    return PushAdvice(
        expected=spread("push_expected", grip.push_on, "N", "force", "push_on"),
        look_for=figure(
            "push_to_look_for",
            max(_push_that_proves(trial, ratio.low), low_end(grip.push_on)),
            "N",
            "force",
            "push_to_look_for",
            _look_for_inputs(trial, ratio.low),
            (ratio.source,),
        ),
        stop_at=figure("push_to_stop_at", high_end(grip.push_on), "N", "force", "push_to_stop_at"),
        proves_torque=figure(
            "torque_proved",
            proved[1],
            "N·m",
            "torque",
            "push_proves_torque",
            inputs,
            (ratio.source,),
            (proved[0], proved[2]),
        ),
        ratio_low=ratio.low,
        ratio_high=ratio.high,
        by_blows=trial.shop.hammers,
    )


def _push_that_proves(trial: Trial, ratio_low: float) -> float:
    """Push (N) at which even the poor friction ratio and a warm bore carry the hardest cut."""
    return _poor_demand(trial) / ratio_low * _cold_over_warm(trial)


def _poor_demand(trial: Trial) -> float:
    return high_end(demand_on_uncut(trial.grip, hardest_cut(trial).demand))


def _cold_over_warm(trial: Trial) -> float:
    """Push over friction, over the normal force that is left when the work runs warm."""
    cold = likely(trial.grip.push_on) / likely(trial.hold.facts.friction_on)
    warm = max(likely(trial.grip.normal_force), 1e-3 * cold)
    return cold / warm if warm > 0 else 1.0


def _look_for_inputs(trial: Trial, ratio_low: float) -> tuple[Input, ...]:
    return (
        given("demand, poor case", _poor_demand(trial), "N"),
        given("ratio, low", ratio_low),
        given("cold over warm", _cold_over_warm(trial)),
        given("expected, low", low_end(trial.grip.push_on), "N"),
    )


def proof_load(trial: Trial) -> ProofLoad:
    """A weight on an arm, and the same at the rim, sized for the hardest planned cut."""
    factor = trial.tables.allowance("proof_factor").best
    arm = trial.tables.allowance(f"proof_arm_{trial.job.units}").best
    torque = float(proof_torque(proof_demand(trial), trial.grip.diameter, factor))
    rim = trial.job.work.outside / 2
    twist, pull = (trial.tables.allowance(name).low for name in ("hand_twist", "hand_pull"))
    by_hand = torque < twist and torque / rim < pull
    force = torque / arm
    return ProofLoad(
        torque, arm, force, rim, torque / rim, factor, by_hand, by_cord=_no_room_for_an_arm(trial)
    )


def _no_room_for_an_arm(trial: Trial) -> bool:
    """Small work hides behind its dog, and a clamp squeezes thin work on to the mandrel."""
    work = trial.job.work
    line = trial.hold.line
    wall = (float(line.outside[line.outside > 0].min()) - work.bore.size) / 2
    return work.outside < SMALL * work.bore.size or wall < THIN * work.bore.size
