"""What one more pass at the same setting leaves of the size error, however the work is held."""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.records import Cut, Figure
from borewright.cutting.demand import demand_of
from borewright.cutting.knock import knock_of
from borewright.job.records import Job
from borewright.mechanics.spread import likely
from borewright.mechanics.springing import spring_pass_share
from borewright.planning.weighing.figures import figure, given
from borewright.quantities.si import Metre, NewtonPerMetre, Ratio
from borewright.reference.library import Tables

STEP = 0.05
"""Share of the depth over which the radial force is taken to grow in a straight line (ours)."""

LEAST_SHARE = 0.0095
"""Shares below this are said to be under 1 %; ours."""


def radial_rate(cut: Cut, job: Job, tables: Tables) -> NewtonPerMetre:
    """How much the likely radial force of a cut grows for each metre of depth, at its own depth."""
    knock = knock_of(cut, job, tables)
    deep, shallow = (
        demand_of(replace(cut, depth=cut.depth * (1 + s)), job.work.material, tables, knock)
        for s in (STEP, -STEP)
    )
    rate = (likely(deep.radial) - likely(shallow.radial)) / (2 * STEP * cut.depth)
    # Below a nose radius the force along the depth rises with it; past it, it may stand still.
    return max(rate, 0.0)


def share_left(cut: Cut, stiffness: NewtonPerMetre, job: Job, tables: Tables) -> Ratio:
    """What is left of a cut's bending: all of it, or what its spring pass leaves."""
    if not cut.spring_pass:
        return 1.0
    return float(spring_pass_share(radial_rate(cut, job, tables), stiffness))


def spring_pass_figure(
    error: Metre, cut: Cut, stiffness: NewtonPerMetre, job: Job, tables: Tables
) -> Figure:
    """What a spring pass after this finishing cut leaves of an error on diameter (m)."""
    rate = radial_rate(cut, job, tables)
    left = error * float(spring_pass_share(rate, stiffness))
    inputs = (
        given("size error", error, "m", "small"),
        given("radial force for each metre of depth", rate, "N/m"),
        given("stiffness at the tool", stiffness, "N/m"),
    )
    return figure("spring_pass_left", left, "m", "small", "spring_pass", inputs, ("ours",))


def spring_pass_words(left: Figure) -> str:
    """A spring pass with the share that it leaves, as the beginning of a sentence."""
    error = left.inputs[0].value
    share = left.best / error if error > 0 else 0.0
    what = f"about {100 * share:.0f} %" if share >= LEAST_SHARE else "under 1 %"
    return f"A spring pass, which leaves {what} of the bending"
