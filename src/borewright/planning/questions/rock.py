"""Rock: does the cut tilt the work on its grip."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from borewright.answer.records import Demand, Draws, Figure, Input, Question, Verdict
from borewright.mechanics.rock import lift_moment
from borewright.mechanics.spread import likely, low_end
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure, given, spread, times
from borewright.planning.weighing.judge import judge
from borewright.planning.weighing.margins import rock_arm, rock_margins, tilt_of, walk_of
from borewright.quantities.si import Metre

LOOSE = 1e-3
"""A rim that gives further than this (m) under the cut is not held at all (ours)."""

SEEN = 2.5e-6
"""Ours: movement (m) of the rim that an indicator on the face sees."""

FAR = 1.5
"""Ours: the pencil rule is said beside where it is so many times off."""


def ask_rock(trial: Trial) -> Question:
    """Margin: the tilt under which the grip lifts over that of the worst cut, with some in hand."""
    margins = [rock_margins(trial.hold, trial.grip, d) for d in trial.demands]
    margin, worst = min(zip(margins, trial.demands, strict=True), key=lambda m: likely(m[0]))
    best, low = likely(margin), low_end(margin)
    verdict = judge("rock", best, low, trial.tables)
    tilt = _tilt_figure(trial, worst)
    return Question(
        "rock",
        verdict,
        best,
        low,
        " ".join((_reason(trial, worst, best, low), *_beside_springs(trial), *_tilts(trial, tilt))),
        _changes(trial, worst, sound=verdict is Verdict.YES),
        (*_figures(trial, worst, margin), tilt),
        (trial.tables.threshold("rock").source,),
    )


def rock_verdict(trial: Trial, demand: Demand) -> Verdict:
    """The answer for one cut by itself."""
    margin = rock_margins(trial.hold, trial.grip, demand)
    return judge("rock", likely(margin), low_end(margin), trial.tables)


def _reason(trial: Trial, worst: Demand, best: float, low: float) -> str:
    kept = likely(walk_of(trial.hold.facts, worst))
    in_hand = f", with {kept:.1f} kept in hand because the load goes round" if kept > 1 else ""
    return (
        f"A fifth of the grip would lift at {times(best)} the tilt of the worst cut, at "
        f"{times(low)} in the poor case (1 in 20){in_hand}."
    )


def _beside_springs(trial: Trial) -> Iterator[str]:
    """What the pencil rule would say, where that is far from it."""
    over = _over_springs(trial, likely(trial.hold.lift_moment(trial.grip.setting)))
    if over > FAR:
        why = (
            "strips that lift hand their load to the rest"
            if _bears_whole(trial)
            else "a tilt closes the free part on the mandrel"
        )
        yield (
            f"By pencil, as springs round the bore, it would be {over:.1f} times less: they leave out "
            f"that {why}."
        )
    elif 0 < over < 1 / FAR:
        yield f"By pencil, as springs round the bore, it would be {1 / over:.1f} times more."


def _tilts(trial: Trial, tilt: Figure) -> Iterator[str]:
    """Said where an indicator on the face would see it."""
    if tilt.best > LOOSE:
        yield "It would then rock freely: the sum of how far has no meaning."
    elif tilt.best >= SEEN:
        moved = trial.show.small(tilt.best)
        yield f"Under that cut the rim gives by about {moved} along the mandrel."


def _over_springs(trial: Trial, held: float) -> float:
    """The elastic lift moment over that of the pencil, both of the whole grip and warm."""
    pencil = lift_moment(likely(trial.grip.normal_force), _warm_contact(trial))
    return held / float(pencil) if pencil > 0 else 0.0


def _warm_contact(trial: Trial) -> Metre:
    """Length (m) that still bears when the work runs warm."""
    return likely(trial.hold.warm(trial.grip.setting).contact_length)


def _changes(trial: Trial, worst: Demand, *, sound: bool) -> str:
    if sound:
        return "Nothing needs to."
    cut = next(c for c in trial.cuts if c.id == worst.cut)
    longer = "a longer hub" if _bears_whole(trial) else "a shorter reach past the grip"
    if cut.kind == "gear":
        left_open = any(w.kind == "gear" and w.depth is None for w in trial.job.cuts)
        passes = "two or three passes do not mend it, more passes may"
        passes = passes if left_open else "more passes"
        return f"A lighter feed, more travel, or {longer}; {passes}."
    return f"More travel, {longer}, a lighter cut, or cutting nearer the middle of the grip."


def _bears_whole(trial: Trial) -> bool:
    return likely(trial.grip.contact_length) > 0.97 * trial.hold.bears


def _figures(trial: Trial, demand: Demand, margin: Draws) -> tuple[Figure, ...]:
    arm = rock_arm(trial.grip, trial.hold.length)
    moment = tilt_of(demand, arm)
    asked = (
        given("passive force", likely(demand.radial), "N"),
        given("thrust", likely(np.abs(demand.axial)), "N"),
        given("cutting force", likely(demand.tangential), "N"),
        given("arm", arm, "m"),
        given("radius", demand.radius, "m"),
    )
    held = trial.hold.lift_moment(trial.grip.setting) * demand.grip_left
    both = (
        given("lift moment", likely(held), "N·m"),
        given("kept in hand", likely(walk_of(trial.hold.facts, demand))),
        given("moment", likely(moment), "N·m"),
    )
    return (
        spread("rocking_moment", moment, "N·m", "torque", "rock_moment", asked),
        spread("lift_moment", held, "N·m", "torque", "lift_moment", _grip(trial, demand, held)),
        spread("rock_margin", margin, "", "", "rock_margin", both),
    )


def _tilt_figure(trial: Trial, worst: Demand) -> Figure:
    """How far the rim moves along the mandrel under the worst cut; not at all where nothing holds."""
    moment = likely(tilt_of(worst, rock_arm(trial.grip, trial.hold.length)))
    outside, stiff = trial.job.work.outside, trial.hold.tilt_stiffness(trial.grip.setting)
    inputs = (
        given("moment", moment, "N·m"),
        given("stiffness (N·m/rad)", stiff),
        given("outside", outside, "m"),
    )
    moved = moment / stiff * outside / 2 if stiff > 0 else 0.0
    return figure("tilt_at_rim", moved, "m", "small", "tilt_at_rim", inputs, ("ours-derived",))


def _grip(trial: Trial, demand: Demand, held: Draws) -> tuple[Input, ...]:
    """The pencil's numbers, and the factor from its lift moment to the elastic one."""
    force = likely(trial.grip.normal_force) * demand.grip_left
    return (
        given("normal force", force, "N"),
        given("contact length, warm", _warm_contact(trial), "m"),
        given("elastic over springs", _over_springs(trial, likely(held) / demand.grip_left) or 1.0),
    )
