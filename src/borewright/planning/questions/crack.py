"""Crack: does the bore stand it: brittle work by its tension, ductile work by yield."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Draws, Figure, Input, Question, Verdict
from borewright.cutting.load_demand import softer
from borewright.cutting.stock import outermost_inside
from borewright.mechanics.rings import hoop_factor
from borewright.mechanics.spread import likely, low_end
from borewright.planning.taper.rings_check import over_rings, rings_check, stress_words
from borewright.planning.taper.soundness import (
    LOOK,
    flaw_forbids,
    hole_forbids,
    keyway_forbids,
    not_in_the_sum,
    spokes_forbid,
)
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import given, spread, times
from borewright.planning.weighing.judge import judge
from borewright.planning.weighing.margins import bore_margins
from borewright.planning.weighing.wall_left import thin_words, wall_left


def ask_crack(trial: Trial) -> Question:
    """Margin: strength over stress at the bore, peaks not taken off, edge and notch raised.

    No, with no margin at all, where the cuts leave less wall than must stand, where a keyway goes too
    deep, and where a flaw was seen, or is suspected in brittle work.
    """
    margin = bore_margins(trial.grip, trial.hold.facts) / _teeth_strain(trial)
    best, low = likely(margin), low_end(margin)
    rule = "crack" if trial.hold.facts.brittle else "yield"
    forbidden, mends = _forbidden(trial)
    return Question(
        "crack",
        Verdict.NO if forbidden else _judged(rule, best, low, trial),
        0.0 if forbidden else best,
        0.0 if forbidden else low,
        forbidden or _reason(trial, best, low),
        mends or _changes(trial),
        _figures(trial, margin),
        (trial.tables.threshold(rule).source, _strength_source(trial)),
    )


def _judged(rule: str, best: float, low: float, trial: Trial) -> Verdict:
    """By the margins; never more than with care where a flaw is suspected."""
    verdict = judge(rule, best, low, trial.tables)
    doubted = trial.job.work.flaws == "suspected" and verdict is Verdict.YES
    return Verdict.CARE if doubted else verdict


def _forbidden(trial: Trial) -> tuple[str, str]:
    """Why it is not to be pressed whatever the margin, and what changes that; empty where it may be."""
    left = wall_left(trial)
    elsewhere = "hold it where nothing presses on the bore."
    flawed = flaw_forbids(trial.job, brittle=trial.hold.facts.brittle)
    if flawed:
        return flawed, f"{LOOK} Else {elsewhere}"
    leg = max(trial.job.work.chamfers.legs)
    if 0 < left <= leg and outermost_inside(trial.job) == trial.job.work.bore.size:
        said = f"The chamfer of {trial.show.length(leg)} would go through the {trial.show.length(left)} of wall that the cuts leave."
        return said, "A smaller chamfer, or more wall."
    if left < trial.tables.allowance("least_wall").best:
        return thin_words(trial, left), f"Leave more wall, or {elsewhere}"
    holed = hole_forbids(trial)
    if holed:
        return holed, f"Drill it after turning, or {elsewhere}"
    slight = spokes_forbid(trial)
    if slight:
        return slight, f"Stouter spokes, a lighter cut, or {elsewhere}"
    keyed = keyway_forbids(trial, left)
    return (keyed, f"Cut the keyway after turning, or {elsewhere}") if keyed else ("", "")


def _teeth_strain(trial: Trial) -> float:
    """How much more the bore sees when only the ring under the teeth is left; 1 without a gear.

    Never less: it was pressed on as a blank.
    """
    gears = [c for c in trial.cuts if c.space is not None]
    brittle = trial.hold.facts.brittle
    found = (softer(c, trial.job, trial.tables) for c in gears)
    return max([1.0, *(s.tension if brittle else s.equivalent for s in found)])


def _reason(trial: Trial, margin: float, low: float) -> str:
    f, g, show, more = trial.hold.facts, trial.grip, trial.show, _teeth_strain(trial)
    stands = f"{times(margin)} that, {times(low)} in the poor case (1 in 20)"
    if not f.brittle:
        stress = show.pressure(likely(g.equivalent_stress) * more)
        doubt = f" A flaw is suspected: {LOOK}" if trial.job.work.flaws == "suspected" else ""
        return (
            f"Ductile: the bore sees about {stress}, and the metal yields at {stands}."
            f"{_too_far(trial)}{_beside_rings(trial)}{doubt}"
        )
    return (
        f"Brittle: {_where(trial)} sees about {show.pressure(likely(g.tension) * more)} of tension, and the metal stands "
        f"{stands}.{_too_far(trial)}{_beside_rings(trial)} {not_in_the_sum(trial.job)}"
    )


def _beside_rings(trial: Trial) -> str:
    """What plain rings would say, where that is not the same."""
    said = stress_words(trial)
    return f" {said}" if said else ""


def _where(trial: Trial) -> str:
    """The place of the largest tension."""
    work = trial.job.work
    if work.keyway is None and work.cross_hole is None:
        return "the edge of the bore"
    return "the edge of the cross hole" if work.cross_hole else "the corner of the keyway"


def _too_far(trial: Trial) -> str:
    """Said where the cut needs more travel than the bore stands."""
    if not trial.chosen.past_bore:
        return ""
    return f" The {trial.show.length(trial.chosen.press)} of travel that the cut needs is more than it stands."


def _changes(trial: Trial) -> str:
    wall = (
        float(trial.hold.line.outside[trial.hold.line.outside > 0].min()) - trial.grip.diameter
    ) / 2
    edge = "" if all(trial.job.work.chamfers.legs) else " a chamfered bore edge,"
    return f"Less travel,{edge} or more wall than the {trial.show.length(wall)} it has at its thinnest."


def _figures(trial: Trial, margin: Draws) -> tuple[Figure, ...]:
    f, teeth = trial.hold.facts, _teeth_strain(trial)
    stress = _tension(trial) if f.brittle else _equivalent(trial)
    inputs = (
        given("strength", likely(f.strength), "Pa"),
        given("stress", stress.best * teeth, "Pa"),
    )
    name, rule = (
        ("tensile_strength", "crack_margin") if f.brittle else ("yield_strength", "yield_margin")
    )
    return (
        stress,
        spread(name, f.strength, "Pa", "pressure", "", (), (_strength_source(trial),)),
        spread(rule, margin, "", "", rule, inputs, (_strength_source(trial),)),
        _growth(trial),
    )


def _tension(trial: Trial) -> Figure:
    """Of brittle work: rings by pencil, then what the elastic bodies add, the edge and the notch."""
    g, f, hub = trial.grip, trial.hold.facts, _hub(trial)
    rings = likely(rings_check(trial).tight.tension)
    smooth = likely(g.tension) / likely(f.edge_factor) / likely(f.notch_factor)
    factors = (
        over_rings(smooth, rings),
        given("edge factor", likely(f.edge_factor)),
        given("notch factor", likely(f.notch_factor)),
    )
    pressure = given("pressure", rings / _hoop(hub), "Pa")
    inputs = (pressure, *hub, *factors)
    from_ = ("ours", f.notch_source)
    return spread("largest_tension", g.tension, "Pa", "pressure", "lame_hoop", inputs, from_)


def _equivalent(trial: Trial) -> Figure:
    """Of ductile work, likewise."""
    g, f, hub = trial.grip, trial.hold.facts, _hub(trial)
    rings = likely(rings_check(trial).tight.equivalent)
    h = _hoop(hub)
    notch = likely(f.notch_factor)
    inputs = (
        given("pressure", rings / float(np.sqrt(h * h + h + 1)), "Pa"),
        *hub,
        over_rings(likely(g.equivalent_stress) / notch, rings),
        given("notch factor", notch),
    )
    from_ = (f.notch_source,) if notch > 1 else ()
    name = "equivalent_stress"
    return spread(name, g.equivalent_stress, "Pa", "pressure", name, inputs, from_)


def _growth(trial: Trial) -> Figure:
    """Of the outside, likewise."""
    g, hub = trial.grip, _hub(trial)
    rings = likely(rings_check(trial).pressed.growth)
    modulus = likely(np.atleast_1d(trial.hold.facts.work.modulus))
    bore, outside = (i.value for i in hub)
    each = 2 * bore**2 * outside / (modulus * (outside**2 - bore**2))
    inputs = (
        given("pressure", rings / each, "Pa"),
        *hub,
        given("E", modulus, "Pa"),
        over_rings(likely(g.growth), rings),
    )
    return spread("outside_growth", g.growth, "m", "small", "outside_growth", inputs)


def _hub(trial: Trial) -> tuple[Input, Input]:
    """Bore and outside of the thinnest ring."""
    line = trial.hold.line
    return (
        given("bore", trial.grip.diameter, "m", "bore"),
        given("outside, thinnest ring", float(line.outside[line.outside > 0].min()), "m"),
    )


def _hoop(hub: tuple[Input, Input]) -> float:
    """Hoop tension over pressure at the bore of that ring."""
    return float(hoop_factor(np.array(hub[0].value / hub[1].value)))


def _strength_source(trial: Trial) -> str:
    prop = "tensile" if trial.hold.facts.brittle else "yield"
    return trial.tables.material_range(trial.job.work.material, prop).source
