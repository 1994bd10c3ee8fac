"""What a hold gives, likely case, for its row: torque, thrust by sense, stiffness, strength."""

from __future__ import annotations

from borewright.answer.held import Grip
from borewright.answer.records import Gives, Question
from borewright.mechanics.spread import likely
from borewright.planning.taper.trial import Trial


def held_gives(grip: Grip) -> Gives:
    """Of any way but the taper."""
    return Gives(
        torque=likely(grip.torque),
        thrust_in=likely(grip.thrust_in),
        thrust_out=likely(grip.thrust_out),
        stiffness=grip.stiffness,
        strength=likely(grip.strength),
        springs=likely(grip.springs),
    )


def taper_gives(trial: Trial, questions: tuple[Question, ...]) -> Gives:
    """Of a plain mandrel: friction, and the taper that helps it one way and costs it the other."""
    grip, drive = trial.grip, trial.drive
    friction, lean = likely(grip.friction_force), likely(grip.normal_force) * grip.taper / 2
    torque = friction * grip.diameter / 2
    driven = 0.0 if drive is None or drive.torque is None else likely(drive.torque)
    figures = {f.name: f.best for q in questions for f in q.figures}
    give = figures.get("deflection_per_force", 0.0)
    return Gives(
        torque=max(torque, driven),
        thrust_in=friction + lean,
        thrust_out=max(friction - lean, 0.0),
        stiffness=1 / give if give else 0.0,
        strength=next(q.margin for q in questions if q.id == "crack"),
    )
