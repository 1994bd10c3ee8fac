"""The questions of a hold of any way: seat bore push crack slip rock bend heat true reach speed."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from borewright.answer.cut_words import depth_words, feed_words
from borewright.answer.held import Check
from borewright.answer.records import Cut, Demand, Figure, Question, Verdict
from borewright.mechanics.spread import likely, low_end
from borewright.planning.held.held_bend import ask_held_bend
from borewright.planning.held.held_heat import ask_held_heat
from borewright.planning.held.held_trial import HeldTrial, hardest
from borewright.planning.held.held_true import ask_held_true
from borewright.planning.questions.slip import least_depth
from borewright.planning.questions.speed import ask_speed
from borewright.planning.taper.soundness import flaw_forbids
from borewright.planning.weighing.figures import figure, given, spread, times
from borewright.planning.weighing.judge import judge, share_of_yes
from borewright.planning.weighing.margins import tilt_of
from borewright.planning.weighing.wall_left import thin_words, wall_left
from borewright.quantities.si import Metre

WALK = 1.5
"""Kept in hand against tilt because the load goes round the work (ours)."""


def ask_held(trial: HeldTrial) -> tuple[Question, ...]:
    """Every question, in the order they are always asked."""
    return tuple(ask(trial) for ask in _ASKS)


def _checked(name: str, threshold: str, check: Check | None, trial: HeldTrial) -> Question:
    if check is None:
        return Question(
            name, Verdict.YES, np.inf, np.inf, "Nothing speaks against it.", "Nothing needs to."
        )
    return Question(
        name,
        judge(threshold, check.margin, check.margin_low, trial.tables),
        check.margin,
        check.margin_low,
        check.reason,
        check.changes_it,
        check.figures,
        (trial.tables.threshold(threshold).source, *check.sources),
    )


def _seat(trial: HeldTrial) -> Question:
    return _checked("seat", "located", trial.held.seat, trial)


def _bore(trial: HeldTrial) -> Question:
    return _checked("bore", "fits", trial.held.fit, trial)


def _push(trial: HeldTrial) -> Question:
    return _checked("push", "push", trial.held.effort, trial)


def _crack(trial: HeldTrial) -> Question:
    grip, held = trial.grip, trial.held
    best, low = likely(grip.strength), low_end(grip.strength)
    threshold = "crack" if grip.brittle else "yield"
    found = judge(threshold, best, low, trial.tables)
    said = (
        f"The work stands {times(best)} what the holding asks of it, {times(low)} in the poor case (1 in 20)."
        if np.isfinite(best)
        else "Nothing in the holding strains the work."
    )
    thin = thin_words(trial, wall_left(trial)) if _cuts_outside(trial) else ""
    if thin:
        found, said = Verdict.NO, thin
    flaw = flaw_forbids(trial.job, brittle=grip.brittle)
    if flaw:
        seen = trial.job.work.flaws == "seen"
        no = held.presses_bore or seen
        found = Verdict.NO if no else max(found, Verdict.CARE, key=lambda v: v.rank)
        said = SEEN if seen else flaw if no else f"{DOUBT} {said}"
    return Question(
        "crack",
        found,
        best,
        low,
        said,
        "Cleaning it, a lamp, ringing it: only a sound casting may turn at all."
        if flaw
        else held.spares,
        (spread("strength_margin", grip.strength, "", "", ""),) if np.isfinite(best) else (),
        (trial.tables.threshold(threshold).source,),
    )


def _cuts_outside(trial: HeldTrial) -> bool:
    return any(cut.kind != "face" for cut in trial.cuts)


DOUBT = (
    "Nothing presses on the bore, but a flaw is suspected: no sum says that it may turn at all; look first, slowest speed, "
    "stand clear."
)
"""Said of a casting in doubt on a hold that does not press on its bore."""

SEEN = "A flaw was seen at the bore: no hold makes it sound, and no sum says that it may turn."


def _slip(trial: HeldTrial) -> Question:
    """The cuts of the table, or the largest drill where that asks more."""
    turned, drilled = _slip_in_cuts(trial), _slip_in_drilling(trial)
    if drilled is None or _worse(turned) >= _worse(drilled):
        return turned
    return drilled


def _worse(question: Question) -> tuple[int, float]:
    return question.verdict.rank, -question.margin


def _slip_in_drilling(trial: HeldTrial) -> Question | None:
    drilling, show = trial.held.drilling, trial.show
    if drilling is None:
        return None
    margin = trial.grip.torque / drilling.torque
    best, low = likely(margin), low_end(margin)
    return Question(
        "slip",
        judge("slip", best, low, trial.tables),
        best,
        low,
        f"The hold gives {times(best)} what a drill of {show.length(drilling.diameter)} asks, {show.torque(likely(drilling.torque))}, "
        f"and {times(low)} in the poor case (1 in 20).",
        "A smaller drill and more for the boring bar, a pilot hole, an easy feed.",
        (drilling.figure, *_slip_in_cuts(trial).figures),
        (trial.tables.threshold("slip").source, *trial.held.sources),
    )


def _slip_in_cuts(trial: HeldTrial) -> Question:
    cut, demand, margin = hardest(trial)
    best, low, show = likely(margin), low_end(margin), trial.show
    share = share_of_yes("slip", best, low, trial.tables)
    found = judge("slip", best, low, trial.tables)
    deepest = cut.depth * share
    lighter = (
        f"A lighter cut (about {show.depth(deepest)} deep has the usual reserve), or {trial.held.more_grip}."
        if deepest >= least_depth(trial)
        else f"No cut worth setting has the usual reserve: {trial.held.more_grip}."
    )
    return Question(
        "slip",
        found,
        best,
        low,
        f"The hold gives {times(best)} what it takes to {cut.name}, {depth_words(cut, show)} deep at "
        f"{feed_words(cut, show)} at {show.length(cut.diameter)}, and {times(low)} in the poor case (1 in 20).",
        "The proof load settles it." if found is Verdict.YES else lighter,
        _slip_figures(trial, cut, demand, deepest),
        (trial.tables.threshold("slip").source, *trial.held.sources),
    )


def _slip_figures(trial: HeldTrial, cut: Cut, demand: Demand, deepest: Metre) -> tuple[Figure, ...]:
    grip = trial.grip
    force = given("force", likely(demand.tangential), "N")
    across = given("diameter", cut.diameter, "m")
    radius = grip.slip_radius(demand)
    found = [
        spread("cut_torque", demand.torque, "N·m", "torque", "cut_torque", (force, across)),
        figure(
            "deepest_cut", deepest, "m", "depth", "", (given("depth", cut.depth, "m", "depth"),)
        ),
    ]
    if np.isfinite(likely(grip.torque)):
        found += [
            spread("hold_torque", grip.torque, "N·m", "torque", "", (), trial.held.sources),
            spread("slip_radius", radius, "m", "length", ""),
        ]
    return tuple(found)


def _rock(trial: HeldTrial) -> Question:
    walk = WALK
    arm = trial.held.arm or trial.job.work.length
    tried = [(c, trial.grip.tilt / (walk * tilt_of(d, arm))) for c, d in _pairs(trial)]
    cut, margin = min(tried, key=lambda t: likely(t[1]))
    best, low = likely(margin), low_end(margin)
    return Question(
        "rock",
        judge("rock", best, low, trial.tables),
        best,
        low,
        f"It would take {times(best)} the tilt of the worst cut, to {cut.name}, to unseat it, {times(low)} in the poor case "
        f"(1 in 20), with {walk:g} kept in hand because the load goes round."
        if np.isfinite(best)
        else "Nothing the cuts do can tilt it.",
        "Nothing needs to." if best >= 2 else trial.held.steadier or _steadier(trial),
        sources=(trial.tables.threshold("rock").source,),
    )


def _steadier(trial: HeldTrial) -> str:
    """What helps against tilt; between centers the tailstock is there already."""
    there = trial.held.room[1] > 0
    return "A lighter cut, more clamp" + ("." if there else ", the tailstock brought up.")


def _reach(trial: HeldTrial) -> Question:
    machine, usual = trial.job.shelf.machine, trial.tables.allowance
    across, along = trial.held.room
    swing = machine.swing_over_cross_slide
    rooms = [
        (
            "swing over the cross slide",
            swing or usual("usual_swing").best,
            across,
            swing is not None,
        )
    ]
    if along > 0:
        bed = machine.between_centers
        rooms.append(
            ("length between centers", bed or usual("usual_centers").best, along, bed is not None)
        )
    name, has, needs, stated = min(rooms, key=lambda r: r[1] / r[2])
    margin, show = has / needs, trial.show
    found = judge("reach", margin, margin, trial.tables)
    if found is Verdict.NO and not stated:
        found = Verdict.CARE
    known = (
        f"the lathe has {show.length(has)}"
        if stated
        else f"your lathe was not stated; many have {show.length(has)}"
    )
    return Question(
        "reach",
        found,
        margin,
        margin,
        f"{show.length(needs)} of {name} is needed and {known}.",
        "Nothing needs to." if margin >= 1 else f"A lathe with more {name}.",
        sources=(trial.tables.threshold("reach").source,),
    )


def _pairs(trial: HeldTrial) -> list[tuple[Cut, Demand]]:
    return list(zip(trial.cuts, trial.demands, strict=True))


_ASKS: tuple[Callable[[HeldTrial], Question], ...] = (
    _seat,
    _bore,
    _push,
    _crack,
    _slip,
    _rock,
    ask_held_bend,
    ask_held_heat,
    ask_held_true,
    _reach,
    ask_speed,
)
