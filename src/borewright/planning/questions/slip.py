"""Slip: does the grip drive the cuts."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Cut, Demand, Draws, Figure, Question, Verdict
from borewright.mechanics.spread import likely, low_end
from borewright.planning.figures import figure, given, spread, times
from borewright.planning.judge import judge, share_of_yes
from borewright.planning.margins import demand_on_joint, slip_margins, slip_radii
from borewright.planning.trial import Trial
from borewright.quantities.si import Metre

LEAST_DEPTH = 0.05e-3
"""A depth (m) below which no cut is worth setting (ours)."""


@dataclass(frozen=True, slots=True, eq=False)
class HardestCut:
    """The cut with the least margin."""

    cut: Cut
    demand: Demand
    margin: Draws


def hardest_cut(trial: Trial) -> HardestCut:
    """The cut that asks most of the grip."""
    tried = [
        HardestCut(c, d, slip_margins(trial.grip, d))
        for c, d in zip(trial.cuts, trial.demands, strict=True)
    ]
    return min(tried, key=lambda h: likely(h.margin))


def ask_slip(trial: Trial) -> Question:
    """Margin: what friction carries over what the hardest cut asks."""
    hard = hardest_cut(trial)
    best, low = likely(hard.margin), low_end(hard.margin)
    return Question(
        "slip",
        judge("slip", best, low, trial.tables),
        best,
        low,
        _reason(trial, hard, best, low),
        _changes(trial, hard, best, low),
        _figures(trial, hard),
        (trial.tables.threshold("slip").source, *trial.hold.facts.sources),
    )


def _reason(trial: Trial, hard: HardestCut, best: float, low: float) -> str:
    cut, show = hard.cut, trial.show
    size = f"{show.length(cut.depth)} deep at {show.feed(cut.feed)}"
    return (
        f"The grip holds {times(best)} what it takes to {cut.name} {size} at "
        f"{show.length(cut.diameter)}, and {times(low)} in the poor case (1 in 20)."
    )


def _changes(trial: Trial, hard: HardestCut, best: float, low: float) -> str:
    if judge("slip", best, low, trial.tables) is Verdict.YES:
        return "A measured push narrows this; the proof load settles it."
    limit = trial.chosen.limited_by
    stopped = f"; more travel is stopped by {limit}" if limit else ""
    depth = deepest(hard, trial)
    if depth < LEAST_DEPTH:
        return f"No cut worth making has the usual reserve; a second dog on the hub takes the torque{stopped}."
    return (
        f"A lighter cut (about {trial.show.length(depth)} deep has the usual reserve), or a second "
        f"dog on the hub to take the torque{stopped}."
    )


def deepest(hard: HardestCut, trial: Trial) -> Metre:
    """Depth (m) at this feed and diameter that would just be a yes; force taken in step with depth."""
    share = share_of_yes("slip", likely(hard.margin), low_end(hard.margin), trial.tables)
    return hard.cut.depth * share


def _figures(trial: Trial, hard: HardestCut) -> tuple[Figure, ...]:
    g, d, t = trial.grip, hard.demand, trial.tables
    k = t.kienzle(trial.job.work.material)
    chip = (
        given("depth", hard.cut.depth, "m"),
        given("feed", hard.cut.feed, "m"),
        given("k_c1.1 (N/mm²)", k.kc11.best),
        given("exponent m", k.mc.best),
    )
    torque_in = (
        given("force", likely(d.tangential), "N"),
        given("diameter", hard.cut.diameter, "m"),
    )
    held = g.friction_force * g.diameter / 2
    held_in = (
        given("slip friction", likely(g.holding_friction)),
        given("normal force", likely(g.normal_force), "N"),
        given("bore", g.diameter, "m"),
    )
    asked = demand_on_joint(g, d)
    return (
        spread("cutting_force", d.tangential, "N", "force", "kienzle_force", chip, (k.source,)),
        spread("cut_torque", d.torque, "N·m", "torque", "cut_torque", torque_in),
        spread(
            "slip_torque", held, "N·m", "torque", "slip_torque", held_in, trial.hold.facts.sources
        ),
        spread(
            "slip_demand",
            asked,
            "N",
            "force",
            "slip_demand",
            (given("torque", likely(d.torque), "N·m"), given("axial", likely(d.axial), "N")),
        ),
        figure(
            "deepest_cut",
            deepest(hard, trial),
            "m",
            "length",
            "deepest_cut",
            (given("depth", hard.cut.depth, "m"), given("margin", likely(hard.margin))),
        ),
        spread(
            "slip_radius",
            slip_radii(g, d),
            "m",
            "length",
            "slip_radius",
            (given("force", likely(d.tangential), "N"),),
        ),
    )
