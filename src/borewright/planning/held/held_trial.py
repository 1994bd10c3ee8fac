"""One hold of any way but the taper, with the cuts it serves: what its questions look at."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from borewright.answer.held import HEAD_FACE, OUTSIDE, TAIL_FACE, Grip, Held
from borewright.answer.records import Cut, Demand, Draws
from borewright.cutting.directions import LOOSENS, TIGHTENS
from borewright.job.records import Job
from borewright.mechanics.spread import likely, low_end
from borewright.planning.weighing.judge import share_of_yes
from borewright.planning.weighing.power import power_share
from borewright.planning.weighing.served import CutsByShare
from borewright.quantities.show import Show
from borewright.reference.library import Tables


@dataclass(frozen=True, eq=False)
class HeldTrial:
    """A hold that can be done, and the cuts that reach it."""

    job: Job
    tables: Tables
    held: Held
    grip: Grip
    cuts: tuple[Cut, ...]
    demands: tuple[Demand, ...]

    @property
    def show(self) -> Show:
        return Show(self.job.units)

    @cached_property
    def slips(self) -> tuple[Draws, ...]:
        """Margin against slipping in each cut, in their order; several questions look at it."""
        return tuple(self.grip.slip_margin(demand) for demand in self.demands)


def make_held_trial(job: Job, held: Held, tables: Tables, planned: CutsByShare) -> HeldTrial | None:
    """The deepest usual cuts that the hold serves, the lightest if none; None where it cannot be done
    or no cut reaches."""
    if held.grip is None:
        return None
    for share in planned.shares:
        cuts, demands = _reached(*planned.at(share, held.leading), held)
        if not cuts:
            return None
        trial = HeldTrial(job, tables, held, held.grip, cuts, demands)
        if _serves(trial):
            break
    return trial


def hardest(trial: HeldTrial) -> tuple[Cut, Demand, Draws]:
    """The cut with the least margin against slipping."""
    tried = zip(trial.cuts, trial.demands, trial.slips, strict=True)
    return min(tried, key=lambda h: likely(h[2]))


def _serves(trial: HeldTrial) -> bool:
    margins = [m for c, m in zip(trial.cuts, trial.slips, strict=True) if c.on_lathe]
    holds = all(share_of_yes("slip", likely(m), low_end(m), trial.tables) >= 1 for m in margins)
    machine = trial.job.shelf.machine
    return holds and power_share(trial.cuts, trial.demands, machine, trial.tables) >= 1


def _reached(
    cuts: tuple[Cut, ...], demands: tuple[Demand, ...], held: Held
) -> tuple[tuple[Cut, ...], tuple[Demand, ...]]:
    kept = [
        (c, d)
        for c, d in zip(cuts, demands, strict=True)
        if place_of(c) in held.reaches and not (c.kind == "edge" and held.edges_hidden)
    ]
    return tuple(c for c, _ in kept), tuple(d for _, d in kept)


def place_of(cut: Cut) -> str:
    """What of the work a cut takes: the outside, or the face towards the tailstock or headstock.

    A face that was asked for is either one: the work goes in so that a tool reaches it. An edge that
    looks to the headstock wants the tool where that face does.
    """
    if cut.kind == "edge" and cut.seat_effect == LOOSENS:
        return HEAD_FACE
    if cut.kind != "face":
        return OUTSIDE
    asked = cut.id.startswith("cut-")
    return TAIL_FACE if asked or cut.seat_effect == TIGHTENS else HEAD_FACE
