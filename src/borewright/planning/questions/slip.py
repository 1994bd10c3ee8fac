"""Slip: does the grip drive the cuts."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.cut_words import depth_words, feed_words
from borewright.answer.records import (
    Cut,
    Demand,
    Draws,
    Figure,
    Input,
    Question,
    TaperGrip,
    Verdict,
)
from borewright.cutting.demand import chip_taken, force_factors
from borewright.cutting.knock import knock_of
from borewright.mechanics.slip import axial_on_friction
from borewright.mechanics.spread import likely, low_end
from borewright.planning.questions.load_figures import load_force
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure, given, spread, times
from borewright.planning.weighing.judge import judge, share_of_yes
from borewright.planning.weighing.margins import (
    demand_on_joint,
    demand_on_uncut,
    slip_margins,
    slip_radii,
)
from borewright.planning.weighing.turned import Turned
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


def proof_demand(trial: Trial) -> float:
    """What the proof load proves (N at the bore): the hardest cut's, or what its drive carries."""
    demand = hardest_cut(trial).demand
    if demand.drive_asked is not None:
        return 2 * likely(demand.drive_asked) / trial.grip.diameter
    return likely(demand_on_uncut(trial.grip, demand))


def slip_verdict(trial: Trial, demand: Demand) -> Verdict:
    """The answer for one cut by itself."""
    margin = slip_margins(trial.grip, demand)
    return judge("slip", likely(margin), low_end(margin), trial.tables)


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
    size = f"{depth_words(cut, show)} deep at {feed_words(cut, show)}"
    held = (
        f"The grip holds {times(best)} what it takes to {cut.name}, {size} at "
        f"{show.length(cut.diameter)}, and {times(low)} in the poor case (1 in 20)."
    )
    short = judge("slip", best, low, trial.tables) is not Verdict.YES and trial.chosen.limited_by
    if trial.drive is not None:
        taken = f"{trial.drive.tool[0].upper()}{trial.drive.tool[1:]}"
        return (
            f"{taken}: the torque is off the friction, which holds the thrust. Together they give {times(best)} what it takes "
            f"to {cut.name}, {size} at {show.length(cut.diameter)}, and {times(low)} in the poor case (1 in 20)."
        )
    stopped = (
        f" {trial.chosen.limited_by[0].upper()}{trial.chosen.limited_by[1:]} allows"
        if short
        else ""
    )
    return f"{held}{stopped} {show.rule(trial.chosen.press)} of travel, no more." if short else held


def _changes(trial: Trial, hard: HardestCut, best: float, low: float) -> str:
    if judge("slip", best, low, trial.tables) is Verdict.YES:
        return "A measured push narrows this; the proof load settles it."
    depth = deepest(hard, trial)
    if trial.drive is not None:
        return f"A lighter cut (about {trial.show.depth(depth)} deep has the usual reserve).{_guesses(trial)}"
    if hard.cut.kind == "gear":
        return (
            f"Each space in more passes (about {trial.show.depth(depth)} deep has the usual reserve), a lighter feed; "
            f"for a finer pitch the grip stands as it is.{_guesses(trial)}"
        )
    if hard.cut.kind == "grind":
        return f"Less infeed, a slower traverse, a wheel dressed open.{_guesses(trial)}"
    if depth < least_depth(trial):
        skin = " that gets under the skin" if trial.job.work.blank == "casting" else ""
        return f"No cut{skin} has the usual reserve: a second dog on the hub takes the torque.{_guesses(trial)}"
    return (
        f"A lighter cut (about {trial.show.depth(depth)} deep has the usual reserve), or a second "
        f"dog on the hub to take the torque.{_guesses(trial)}"
    )


def _guesses(trial: Trial) -> str:
    """What was not stated and bears on the grip: saying it may change the answer."""
    guessed = []
    if trial.job.work.bore.made_by == "unknown":
        guessed.append("how the bore was made")
    if not trial.job.shelf.press and trial.job.shelf.press_force is None:
        guessed.append("what presses it on")
    return f" Say {' and '.join(guessed)}: the guess taken is a careful one." if guessed else ""


def least_depth(trial: Turned) -> Metre:
    """The least depth (m) worth setting: under the skin of a casting, else a few hundredths."""
    if trial.job.work.blank == "casting":
        return trial.tables.allowance("skin_depth").low
    return LEAST_DEPTH


def deepest(hard: HardestCut, trial: Trial) -> Metre:
    """Depth (m) at this feed and diameter that would just be a yes; force taken in step with depth."""
    share = share_of_yes("slip", likely(hard.margin), low_end(hard.margin), trial.tables)
    return hard.cut.depth * share


def _figures(trial: Trial, hard: HardestCut) -> tuple[Figure, ...]:
    g, d = trial.grip, hard.demand
    bore = given("bore", g.diameter, "m", "bore")
    force = given("force", likely(d.tangential), "N")
    thrust = given(
        "thrust",
        float(axial_on_friction(likely(d.axial), likely(g.normal_force) * d.grip_left, g.taper)),
        "N",
    )
    held = given("slip friction x normal force", likely(g.friction_force), "N")
    across = given("diameter", hard.cut.diameter, "m")
    friction = given("slip friction", likely(g.holding_friction))
    warm = given("normal force, warm", likely(g.normal_force), "N")
    asked = demand_on_joint(g, d)
    sources = trial.hold.facts.sources
    turned = (
        (
            _cutting_force(trial, hard),
            spread("cut_torque", d.whole_torque, "N·m", "torque", "cut_torque", (force, across)),
        )
        if hard.cut.on_lathe
        else load_force(trial, hard.cut, d)
    )
    return (
        *turned,
        spread(
            "normal_force_warm",
            g.normal_force,
            "N",
            "force",
            "normal_force_warm",
            _warmth(trial),
            sources,
        ),
        spread(
            "slip_torque",
            g.friction_force * g.diameter / 2,
            "N·m",
            "torque",
            "slip_torque",
            (friction, warm, bore),
            sources,
        ),
        spread(
            "slip_demand",
            asked,
            "N",
            "force",
            "slip_demand",
            (given("torque", likely(d.torque), "N·m"), bore, thrust),
        ),
        figure(
            "deepest_cut",
            deepest(hard, trial),
            "m",
            "depth",
            "deepest_cut",
            (
                given("depth", hard.cut.depth, "m", "depth"),
                given("likely margin", likely(hard.margin)),
                given("poor-case margin", low_end(hard.margin)),
            ),
        ),
        _radius(g, d, (held, thrust, bore, force)),
    )


def _radius(grip: TaperGrip, demand: Demand, inputs: tuple[Input, ...]) -> Figure:
    """Radius at which the cut would slip, or its positive drive let go."""
    rule = "slip_radius"
    if demand.drive_gives is not None:
        rule, force = "drive_radius", given("force", likely(demand.tangential), "N")
        inputs = (given("torque of the drive", likely(demand.drive_gives), "N·m"), force)
    return spread("slip_radius", slip_radii(grip, demand), "m", "length", rule, inputs)


def _cutting_force(trial: Trial, hard: HardestCut) -> Figure:
    k = trial.tables.kienzle(trial.job.work.material)
    knock = knock_of(hard.cut, trial.job, trial.tables)
    chip = chip_taken(hard.cut)
    inputs = (
        given("kc11 (N/mm²)", k.kc11.best),
        given("mc", k.mc.best),
        given("b (mm)", chip.width * 1e3),
        given("h (mm)", chip.thickness * 1e3),
        given("worn tool and its kind", force_factors(trial.job.work.material, trial.tables)),
        given("knock", knock.best),
    )
    sources = (k.source,) if knock.best == 1 else (k.source, knock.source)
    return spread(
        "cutting_force", hard.demand.tangential, "N", "force", "kienzle_force", inputs, sources
    )


def _warmth(trial: Trial) -> tuple[Input, ...]:
    lost = likely(trial.hold.facts.lost_warm_per_metre) * trial.grip.diameter
    return (
        given("normal force", likely(trial.grip.pressed_force), "N"),
        given("squeeze lost to warmth", lost, "m", "small"),
    )
