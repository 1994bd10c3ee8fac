"""Grip against radius: the force that the hold stands at each radius, beside what the cuts ask.

The hold gives a torque, so the force it stands falls with the radius; where a cut's force meets it,
the work would slip. Both lines are those of the hardest cut and its thrust, the poor one with the
cut and the hold poor together, so that they cross at the slip circles that the drawing shows.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from math import isfinite

from borewright.answer.records import Cut, Demand, Draws
from borewright.answer.schedule import Curve, LineChart, Mark
from borewright.mechanics.spread import likely, low_end
from borewright.planning.held.held_trial import HeldTrial, hardest
from borewright.planning.questions.slip import hardest_cut
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.margins import slip_radii
from borewright.quantities.si import Metre, Newton

POINTS = 25
"""Places along each line."""

NEAREST = 1 / 3
"""The chart begins at the bore, or at this share of the rim: nearer in the line only runs off."""

FARTHEST = 2.0
"""A slip radius beyond so many rims is not on the chart: the cut is far from slipping."""

LIKE = 0.08
"""Cuts whose forces differ by less than this share are one line."""

LINES = 3
"""So many lines are drawn at most, the hardest: below them the rest lie on each other."""

LIGHT = 0.25
"""A cut that asks less than this share of the hardest one is no line: it lies on the base."""


def grip_chart(trial: Trial | HeldTrial) -> LineChart | None:
    """The chart; None where a gear is cut, whose force knows no radius, or nothing can slip."""
    cut, demand, radii = _hardest(trial)
    reach, poor, force = likely(radii), low_end(radii), likely(demand.tangential)
    if cut.kind == "gear" or not isfinite(reach) or reach <= 0 or force <= 0:
        return None
    rim, bore = trial.job.work.outside / 2, trial.job.work.bore.size / 2
    start = max(bore, NEAREST * rim)
    end = max(1.1 * rim, 1.04 * reach if reach < FARTHEST * rim else 0.0, 1.1 * start)
    marks = [Mark("rim", rim)]
    if start < reach < end:
        marks.append(Mark("likely slips here", reach))
    if start < poor < end:
        marks.append(Mark("slips here if the grip is poor", poor))
    return LineChart(
        id="grip-against-radius",
        title="Grip against radius",
        x_name="radius at the tool",
        x_kind="length",
        y_name="force there",
        y_kind="force",
        lines=(
            *_given(start, end, force * reach, force * max(poor, 0.0)),
            *_asked(trial, start, end),
        ),
        marks=tuple(marks),
    )


def _hardest(trial: Trial | HeldTrial) -> tuple[Cut, Demand, Draws]:
    """The cut that asks most of the hold, with the radii (m, draws) at which it would slip."""
    if isinstance(trial, Trial):
        hard = hardest_cut(trial)
        return hard.cut, hard.demand, slip_radii(trial.grip, hard.demand)
    cut, demand, _ = hardest(trial)
    return cut, demand, trial.grip.slip_radius(demand)


def _given(start: Metre, end: Metre, torque: float, poor: float) -> Iterable[Curve]:
    """Force over radius (evenly by ratio, as the line bends) for a likely and a poor torque (N·m)."""
    ratio = (end / start) ** (1 / (POINTS - 1))
    radii = tuple(start * ratio**k for k in range(POINTS))
    yield Curve("the hold gives, likely", radii, tuple(torque / r for r in radii))
    if poor > 0 and isfinite(poor):
        yield Curve("in the poor case", radii, tuple(poor / r for r in radii), dashed=True)


def _asked(trial: Trial | HeldTrial, start: Metre, end: Metre) -> Iterable[Curve]:
    """A level line for each force (N, likely) that cuts ask, the hardest first."""
    asked: list[tuple[Newton, list[str]]] = []
    each = [
        (likely(d.tangential), c.name)
        for c, d in zip(trial.cuts, trial.demands, strict=True)
        if c.kind != "gear"
    ]
    for force, name in sorted(each, key=lambda pair: -pair[0]):
        if asked and asked[-1][0] - force < LIKE * asked[-1][0]:
            asked[-1][1].append(name)
        else:
            asked.append((force, [name]))
    for force, names in asked[:LINES]:
        if force >= LIGHT * asked[0][0]:
            yield Curve(_said(names), (start, end), (force, force), thin=True)


def _said(names: list[str]) -> str:
    """One name without what is said after it, then how many more.

    >>> _said(["rough the outside (stop at your size)"]), _said(["face", "step", "groove"])
    ('rough the outside asks', 'face and 2 more ask')
    """
    different = list(dict.fromkeys(re.split(r",| \(", name)[0] for name in names))
    if len(different) == 1:
        return f"{different[0]} asks"
    return f"{different[0]} and {len(different) - 1} more ask"
