"""The wall that stands when all cuts are done, wherever it is thinnest."""

from __future__ import annotations

from collections.abc import Iterable

from borewright.answer.records import Cut
from borewright.cutting.stock import finished_outside, outermost_inside
from borewright.job.records import Work
from borewright.planning.weighing.turned import Turned
from borewright.quantities.si import Metre


def wall_left(trial: Turned) -> Metre:
    """Wall (m) on radius: of the rim or the bore's under the outside, under every step and groove,
    and under the teeth of a gear."""
    work, cuts = trial.job.work, trial.cuts
    along = [c for c in cuts if c.kind in ("turn", "grind") and c.span is None]
    taken = sum(c.depth * c.passes for c in along)
    wanted = finished_outside(trial.job, trial.tables) or work.outside
    outside = min(wanted, work.outside - 2 * taken)
    teeth = max((c.space.whole_depth for c in cuts if c.space is not None), default=0.0)
    whole = (outside - outermost_inside(trial.job)) / 2 - teeth
    return min([whole, *_under(work, cuts)])


def _under(work: Work, cuts: Iterable[Cut]) -> list[Metre]:
    """Walls under the cuts that stand on a part of the length only."""
    return [
        (c.leaves - inside_at(work, *c.span)) / 2
        for c in cuts
        if c.span is not None and c.leaves is not None
    ]


def inside_at(work: Work, start: Metre, end: Metre) -> Metre:
    """The largest inside (m) of the outermost metal between two places from face A."""
    here = [p for p in work.pieces if p.start < end and p.end > start]
    rim = [p for p in here if p.outside >= max(q.outside for q in here) * (1 - 1e-9)]
    return max((p.inside or work.bore.size for p in rim), default=work.bore.size)


def thin_words(trial: Turned, left: Metre) -> str:
    """Why so little wall is a no, in a sentence; empty where it is enough."""
    least = trial.tables.allowance("least_wall").best
    if left >= least:
        return ""
    if left <= 0:
        return "The cuts go right through the metal they are taken from."
    under = "the teeth" if any(c.space for c in trial.cuts) else "them"
    return (
        f"The cuts leave {trial.show.length(left)} of wall under {under}; at least "
        f"{trial.show.length(least)} must stand: less springs, and the tool may break through."
    )
