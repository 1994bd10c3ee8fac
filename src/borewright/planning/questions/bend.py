"""Bend: does the mandrel stay straight enough for the finished size."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from borewright.answer.records import Cut, Demand, Draws, Question
from borewright.mechanics.num import Floats
from borewright.mechanics.spread import likely, low_end
from borewright.mechanics.springing import taper_error
from borewright.planning.questions.bend_figures import (
    bar_figures,
    per_force_figure,
    size_figures,
)
from borewright.planning.taper.bending import (
    bending_of,
    size_error_of,
    size_line,
    swing_of,
    tool_stiffness,
)
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.chatter import Chatter, chatter_figure, chatter_words, tightest
from borewright.planning.weighing.figures import given, spread, times
from borewright.planning.weighing.judge import judge
from borewright.planning.weighing.spring_pass import (
    share_left,
    spring_pass_figure,
    spring_pass_words,
)
from borewright.quantities.si import Metre

NOTHING = 0.25e-6
"""Taper (m) that is not worth a word: a hundred-thousandth of an inch; ours."""

MATTERS = 1e-6, 0.1
"""A way of feeding is worth a word from so much less taper (m), and so much of what is allowed; ours."""


def ask_bend(trial: Trial) -> Question:
    """Margin: size error allowed over the error left by bending in the finishing cut.

    Where a gear is cut, the depth of its teeth too; the worse of the two is the answer.
    """
    gears = [d for c, d in _pairs(trial) if c.kind == "gear"]
    asked = [_teeth(trial, d) for d in gears]
    if len(gears) < len(trial.cuts):
        asked.append(_size(trial))
    return max(asked, key=lambda q: (q.verdict.rank, -q.margin))


def _teeth(trial: Trial, demand: Demand) -> Question:
    """Margin: depth error that a tooth bears over that left by bending, once."""
    per_newton = 1 / tool_stiffness(trial)
    error, allowed = per_newton * demand.radial, trial.tables.gear_cutting("depth_error")
    margin = allowed.best / np.maximum(error, 1e-12)
    best, low = likely(margin), low_end(margin)
    inputs = (
        given("radial force", likely(demand.radial), "N"),
        given("deflection at 1 N (nm)", per_newton * 1e9),
    )
    show = trial.show
    return Question(
        "bend",
        judge("bend", best, low, trial.tables),
        best,
        low,
        f"The cutter bends the mandrel by about {show.small(likely(error))}, so that the teeth come out that much too "
        f"shallow; {show.small(allowed.best)} is allowed, {times(best)} that.",
        "A second pass through each space at the same depth, a jack under the work, a lighter feed, a thicker mandrel.",
        (
            per_force_figure(trial, bending_of(trial).worst),
            spread(
                "tooth_depth_error", error, "m", "small", "tooth_depth_error", inputs, ("ours",)
            ),
            *bar_figures(trial),
        ),
        (trial.tables.threshold("bend").source, allowed.source),
    )


def _size(trial: Trial) -> Question:
    """The finished outside."""
    cut, demand = _finishing(trial)
    line = size_line(trial, demand)
    kept = share_left(cut, tool_stiffness(trial), trial.job, trial.tables)
    bent = size_error_of(trial, demand)
    margin = _allowed(trial)[0] / np.maximum(kept * bent + springs_back(trial), 1e-12)
    best, low = likely(margin), low_end(margin)
    left = spring_pass_figure(likely(bent), cut, tool_stiffness(trial), trial.job, trial.tables)
    chatter = tightest(_pairs(trial), swing_of(trial), trial.tables)
    return Question(
        "bend",
        judge("bend", best, low, trial.tables),
        best,
        low,
        _reason(trial, likely(bent), line, best)
        + (
            f" A spring pass is planned: it leaves {100 * kept:.0f} % of the bending."
            if kept < 1
            else ""
        )
        + _feeding(trial, demand, line)
        + _chatters(chatter),
        f"{spring_pass_words(left)}; a lighter finishing cut, a thicker mandrel; less travel, or more wall, "
        "for the taper.",
        (
            *size_figures(trial, demand, line),
            left,
            *bar_figures(trial),
            *((chatter_figure(chatter, trial.tables),) if chatter else ()),
        ),
        (trial.tables.threshold("bend").source,),
    )


def _reason(trial: Trial, bent: Metre, line: Draws, margin: float) -> str:
    show, uneven = trial.show, likely(taper_error(line))
    allowed, stated = _allowed(trial)
    said = "" if stated else " (tolerance not stated)"
    where = (
        f", {show.small(uneven)} of it taper (largest {_place(trial, line[0])}; the dial takes out the rest)"
        if uneven > NOTHING
        else ""
    )
    return (
        f"Bending leaves up to {show.small(bent)} on diameter{where}, and "
        f"{show.small(likely(springs_back(trial)))} of taper comes when the squeeze lets go, smaller towards face "
        f"{trial.hold.leading}; {show.small(allowed)} is allowed{said}, {times(margin)} both."
    )


def _place(trial: Trial, line: Floats) -> str:
    """Where the work comes out largest; the line runs from the tailstock side to the leading face."""
    most = int(line.argmax())
    if 0 < most < len(line) - 1:
        return "in the middle"
    lead = trial.hold.leading
    return f"at face {lead if most else 'B' if lead == 'A' else 'A'}"


def _feeding(trial: Trial, demand: Demand, line: Draws) -> str:
    """A word on feeding the other way, where that leaves noticeably less taper."""
    other = likely(taper_error(size_line(trial, demand, -1.0)))
    least, share = MATTERS
    if likely(taper_error(line)) - other < max(least, share * _allowed(trial)[0]):
        return ""
    inwards = likely(demand.axial) > 0
    way, then = (
        ("away from", ", but that loosens the work") if inwards else ("towards", " and tighten it")
    )
    return f" Fed {way} the headstock, it would leave {trial.show.small(other)} of taper{then}."


def _chatters(chatter: Chatter | None) -> str:
    """A word on chatter where the work side may reach its limit, in the poor case."""
    if chatter is None or low_end(chatter.margin) >= 1:
        return ""
    return f" {chatter_words(chatter)}"


def springs_back(trial: Trial) -> Draws:
    """How much more (m, on diameter) the leading end shrinks than the far end when it comes off."""
    facts, taper = trial.hold.facts, trial.mandrel.taper
    squeeze = np.maximum(taper * trial.chosen.travel - facts.lost_rough, 1e-9)
    return np.asarray(trial.grip.growth * np.minimum(1.0, taper * trial.hold.length / squeeze))


def _pairs(trial: Trial) -> Iterator[tuple[Cut, Demand]]:
    return zip(trial.cuts, trial.demands, strict=True)


def _finishing(trial: Trial) -> tuple[Cut, Demand]:
    """The last cut that sizes the outside, turned or ground; the last of any kind where none does."""
    pairs = list(_pairs(trial))
    return ([p for p in pairs if p[0].kind in ("turn", "grind")] or pairs)[-1]


def _allowed(trial: Trial) -> tuple[Metre, bool]:
    stated = trial.job.work.finished.tolerance
    return (stated, True) if stated else (trial.tables.allowance("usual_tolerance").best, False)
