"""What helps, in order, where a cut runs faster than is usual for its tool: with the numbers."""

from __future__ import annotations

import math

from borewright.answer.records import Cut
from borewright.cutting.knock import hole_in_the_outside
from borewright.errors import UnknownName
from borewright.mechanics.turning import spindle_speed
from borewright.planning.weighing.turned import Turned
from borewright.reference.ranges import Range

SLOWER = 0.98
"""A speed below this share of the one used is a slower one of the lathe's."""


def too_fast(trial: Turned, cut: Cut) -> str:
    """Slower gear, back gear, carbide with its own usual speed, what is smaller first, light cuts.

    The first sentence stands by itself.
    """
    usual, show = _usual(trial), trial.show
    speeds = trial.job.shelf.machine.speeds
    most = spindle_speed(usual.high, cut.diameter)
    if any(s < SLOWER * cut.spindle_speed for s in speeds):
        said = [f"A slower gear: at most {show.spindle(most)} at this diameter."]
    else:
        said = [_first(trial, cut)]
    said += [_across(trial, cut, usual), DEPTH]
    return " ".join([*said, *_knocks(trial)])


DEPTH = "Less depth does not make it slower: it only makes less heat."


def _usual(trial: Turned) -> Range:
    material = trial.job.work.material
    return trial.tables.cutting_speed(material, trial.tables.cut_defaults(material).tool)


def _first(trial: Turned, cut: Cut) -> str:
    """Back gear, and whether a carbide tool serves at the slowest speed there is."""
    material, show, at = trial.job.work.material, trial.show, cut.cutting_speed
    if trial.tables.cut_defaults(material).tool == "carbide":
        return "Back gear, or a lathe that goes slower."
    try:
        carbide = trial.tables.cutting_speed(material, "carbide")
    except UnknownName:
        return "Back gear, or a lathe that goes slower."
    usual = f"usual up to {show.surface(carbide.high)}"
    if at <= carbide.high * (1 + 1e-9):
        return f"Back gear; else a carbide tool ({usual}), which serves at this speed."
    return f"Back gear, or a lathe that goes slower: carbide too is {usual} only."


def _across(trial: Turned, cut: Cut, usual: Range) -> str:
    """The diameter up to which the usual tool serves at the speed used."""
    widest = usual.high / (math.pi * cut.spindle_speed)
    return (
        f"At {trial.show.spindle(cut.spindle_speed)} a tool of {_tool(trial)} serves up to {trial.show.length(widest)} across: "
        "turn hub and steps with it, and only what is larger needs more."
    )


def _tool(trial: Turned) -> str:
    tool = trial.tables.cut_defaults(trial.job.work.material).tool
    return "high-speed steel" if tool == "hss" else tool


def _knocks(trial: Turned) -> tuple[str, ...]:
    """Where the first cuts knock, carbide chips."""
    work = trial.job.work
    if work.blank == "casting" or work.spokes is not None or hole_in_the_outside(trial.job):
        return (
            "Skin, spokes and holes knock at carbide and chip it: a tough grade, and an even cut that stays under the skin; where "
            "it still chips, only a slower lathe serves.",
        )
    return ()
