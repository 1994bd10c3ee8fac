"""The pencil check: what rings side by side say of the chosen travel, and why they differ."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Input
from borewright.holding.taper.pressed_state import PressedState
from borewright.mechanics.spread import likely
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import given

ALIKE = 0.03
"""Ours: rings within this share of the elastic answer are said to agree."""


@dataclass(frozen=True, slots=True, eq=False)
class RingsCheck:
    """The likely case by rings: `pressed` with the peaks flattened, `tight` with none."""

    pressed: PressedState
    tight: PressedState


def rings_check(trial: Trial) -> RingsCheck:
    """Rings at the chosen travel."""
    pressed, tight = trial.hold.by_rings(trial.chosen.travel)
    return RingsCheck(pressed, tight)


def over_rings(elastic: float, rings: float) -> Input:
    """The factor from the pencil's number to the elastic one; 1 where rings feel nothing."""
    return given("elastic over rings", elastic / rings if rings > 0 else 1.0)


def rings_words(trial: Trial) -> str:
    """One sentence: how far the force by rings is from the elastic one, and why."""
    rings = likely(trial.hold.round_the_bore(rings_check(trial).pressed))
    elastic = likely(trial.grip.pressed_force)
    if elastic <= 0 or rings <= 0:
        return ""
    off = rings / elastic - 1
    if abs(off) <= ALIKE:
        return f"The pencil check by plain rings agrees within {100 * ALIKE:.0f} %."
    more = "more" if off > 0 else "less"
    return (
        f"The pencil check by plain rings says {100 * abs(off):.0f} % {more}: {_why(trial, off)}."
    )


def stress_words(trial: Trial) -> str:
    """The same of the stress that the crack question goes by; empty where rings agree."""
    rings, grip, facts = rings_check(trial).tight, trial.grip, trial.hold.facts
    if facts.brittle:
        by_rings, elastic = rings.tension, grip.tension / facts.edge_factor / facts.notch_factor
    else:
        by_rings, elastic = rings.equivalent, grip.equivalent_stress / facts.notch_factor
    if likely(elastic) <= 0:
        return ""
    off = likely(by_rings) / likely(elastic) - 1
    if abs(off) <= ALIKE:
        return ""
    what = "the edge of the bore" if len(trial.job.work.pieces) == 1 else "edge, web and flange"
    more = "more" if off > 0 else "less"
    return f"Plain rings, which do not feel {what}, would say {100 * abs(off):.0f} % {more}."


def _why(trial: Trial, off: float) -> str:
    """The strongest of the reasons that this work has."""
    part = likely(trial.grip.contact_length) < 0.97 * trial.hold.bears
    if any(trial.job.work.chamfers.legs) and off < 0:
        return "they leave out the metal beside the chamfers, which helps the bore that bears"
    if len(trial.job.work.pieces) > 1:
        if off < 0:
            return "they do not know that web or flange stiffens the hub beside it"
        return "they let web and flange press with their whole height, which bends away in truth"
    if part and off > 0:
        return "contact ends before the plain overlap does, and the free end holds the rest back"
    if part:
        return "the free part of the hub helps the part that bears"
    return "the mandrel that stands out of both faces props the ends of the bore"
