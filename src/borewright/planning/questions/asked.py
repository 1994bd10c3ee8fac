"""All the questions that are computed, in the order they are asked."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from borewright.answer.records import Question
from borewright.job.records import Job
from borewright.planning.questions.bend import ask_bend
from borewright.planning.questions.bore import ask_bore
from borewright.planning.questions.crack import ask_crack
from borewright.planning.questions.heat import ask_heat
from borewright.planning.questions.push import ask_push
from borewright.planning.questions.reach import ask_reach
from borewright.planning.questions.rock import ask_rock
from borewright.planning.questions.seat import ask_seat
from borewright.planning.questions.slip import ask_slip
from borewright.planning.questions.speed import ask_speed
from borewright.planning.questions.true import ask_true
from borewright.planning.taper.trial import Trial

NOT_YET = ("chatter of the lathe itself", "balance")
"""What no question judges yet; every plan says so."""


def unjudged(job: Job) -> tuple[str, ...]:
    """What a plan for this job leaves unjudged: always some, and the power where none is stated."""
    machine = job.shelf.machine
    known = machine.power is not None or machine.power_by_gear
    return NOT_YET if known else ("power", *NOT_YET)


ORDER = ("seat", "bore", "push", "crack", "slip", "rock", "bend", "heat", "true", "reach", "speed")
"""Ids of the questions, in the order they are asked."""


_ASKS: Mapping[str, Callable[[Trial], Question]] = {
    "seat": ask_seat,
    "bore": ask_bore,
    "push": ask_push,
    "crack": ask_crack,
    "slip": ask_slip,
    "rock": ask_rock,
    "bend": ask_bend,
    "heat": ask_heat,
    "true": ask_true,
    "reach": ask_reach,
    "speed": ask_speed,
}

OF_THE_CUTS = frozenset({"crack", "slip", "rock", "bend", "heat", "speed"})
"""Ids of the questions that other cuts on the same hold may answer anew."""


def ask_all(trial: Trial) -> tuple[Question, ...]:
    """Every question, answered for one trial."""
    return tuple(ask(trial) for ask in _ASKS.values())


def ask_of_cuts(trial: Trial, before: tuple[Question, ...]) -> tuple[Question, ...]:
    """The answers for the same hold and travel with other cuts: asked anew where that can tell."""
    return tuple(_ASKS[q.id](trial) if q.id in OF_THE_CUTS else q for q in before)
