"""What one run of cuts asks, whole: so that it can be changed in one thing and asked again."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from borewright.answer.records import Cut
from borewright.job.records import Machine
from borewright.mechanics.spread import likely
from borewright.mechanics.springing import spring_pass_share
from borewright.planning.passes.holding import Holding
from borewright.planning.passes.limit import Limit
from borewright.planning.passes.limits import Asked, Wanted, limits_of
from borewright.planning.passes.setting import Run, Setting, settings_of
from borewright.planning.weighing.spring_pass import radial_rate
from borewright.planning.weighing.warmed import Body
from borewright.quantities.si import Ratio


@dataclass(frozen=True, slots=True, eq=False)
class Problem:
    """A run of `model`'s cuts on a hold, on a lathe, for what is wanted. `eased`: the share of the
    usual force that a keener tool asks."""

    holding: Holding
    body: Body
    model: Cut
    run: Run
    wanted: Wanted
    machine: Machine
    eased: Ratio = 1.0

    @property
    def limits(self) -> list[Limit]:
        """Every limit, asked of this problem."""
        model = replace(self.model, diameter=self.run.begins)
        asked = Asked(self.holding, model, self.run, self.body, self.eased, self.machine)
        return limits_of(asked, self.wanted)

    @property
    def settings(self) -> list[Setting]:
        """All that can be set, fastest first."""
        return settings_of(self.run, self.machine)


LEAST_SPRUNG = 1e-3
"""A spring pass is never said to leave less than this share of the bending (ours)."""


def spring_pass(problem: Problem | None) -> Problem | None:
    """The same with a last cut gone over once more untouched; None where that takes nothing out."""
    if problem is None or problem.wanted.allowed is None or problem.wanted.sprung < 1:
        return None
    swing, run, holding = problem.holding.swing, problem.run, problem.holding
    if swing is None:
        return None
    cut = replace(problem.model, depth=run.stock)
    rate = problem.eased * radial_rate(cut, holding.job, holding.tables)
    share = float(spring_pass_share(rate, likely(np.atleast_1d(swing.stiffness))))
    return replace(
        problem,
        run=replace(run, between=2 * run.between, length=2 * run.length),
        wanted=replace(problem.wanted, sprung=max(share, LEAST_SPRUNG)),
    )
