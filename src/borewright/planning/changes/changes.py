"""Which changes to the part bring something, ranked by the depth of cut gained.

Each variant is a job of its own, weighed on the same shelf as the part that was brought. Where the
answer is a plain yes nothing is weighed.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain, islice

from borewright.answer.change import Change
from borewright.answer.records import Verdict
from borewright.errors import OutsideModel, RefusedInput
from borewright.holding.bores.bore_shape import out_of_round
from borewright.holding.part import WORN_OVAL
from borewright.job.records import Job
from borewright.planning.changes.bore import bore_variants
from borewright.planning.changes.deepest import (
    Deepest,
    deepest_of,
    depth_figure,
    reference_cut,
    rough_in_chuck,
)
from borewright.planning.changes.hub import hub_variants
from borewright.planning.changes.order import order_variants, sprue_variants
from borewright.planning.changes.plain_yes import plain_yes
from borewright.planning.changes.variant import Situation, Variant
from borewright.planning.choice.candidates import Weighed
from borewright.planning.choice.weighing_all import weigh
from borewright.planning.shop.shop import Shop, shop_of
from borewright.planning.taper.soundness import flaw_forbids
from borewright.planning.weighing.figures import figure
from borewright.reference.library import Tables

MOST = 6
"""So many variants are weighed at most: each costs as much as a plan (ours)."""

SAME = 5e-6
"""Depths (m) that no dial tells apart count as one (ours)."""


def changes(job: Job, tables: Tables, best: Weighed | None) -> tuple[Change, ...]:
    """What of the part or the order to change, the deepest gain first, then the cheapest.

    `job` has its press and lathe settled; `best` is its best hold. Empty for a plain yes, and where
    no change removes the doubt.
    """
    if best is not None and plain_yes(best):
        return ()
    now = _situation(job, tables, best)
    tried = (_brings(variant, now) for variant in islice(_variants(now), MOST))
    found = [change for change in tried if change is not None]
    return tuple(sorted(found, key=lambda c: (-round(c.gains / SAME), c.time.best, c.id)))


def _situation(job: Job, tables: Tables, best: Weighed | None) -> Situation:
    shop = shop_of(job, tables) if best is None else best.trial.shop
    if best is None:
        return Situation(job, shop, tables, None, frozenset(), 0.0)
    troubles = {q.id for q in best.questions if q.verdict is not Verdict.YES} or {"slip"}
    cut = reference_cut(best)
    share = deepest_of(best, cut).depth / cut.depth if cut else 1.0
    return Situation(job, shop, tables, best, frozenset(troubles), share)


def _variants(now: Situation) -> Iterator[Variant]:
    """Those with a reason; none where a flaw or an oval bore is the matter, that only metal settles."""
    if _in_doubt(now):
        return sprue_variants(now)
    return chain(order_variants(now), hub_variants(now), bore_variants(now))


def _in_doubt(now: Situation) -> bool:
    brittle = now.tables.material(now.job.work.material).brittle
    flawed = flaw_forbids(now.job, brittle=brittle)
    return bool(flawed) or out_of_round(now.job.work.bore) > WORN_OVAL


def _brings(variant: Variant, now: Situation) -> Change | None:
    """The change, where it removes trouble or gains depth and costs neither; else None."""
    after = _weighed(variant.job, now.shop, now.tables, _drive_of(now.best))
    cut = None if after is None else reference_cut(now.best or after)
    if after is None or cut is None:
        return None
    was = deepest_of(now.best, cut)
    became = (
        rough_in_chuck(was, now.best, after) if variant.rough_in_chuck else deepest_of(after, cut)
    )
    served = _serves(now, after) if variant.rough_in_chuck else _worth(now, after, was, became)
    if not served:
        return None
    return _change(variant, now, after, was, became)


def _weighed(job: Job, shop: Shop, tables: Tables, drive: str) -> Weighed | None:
    """Its best hold on this shelf, driven alike; None where there is none, or the models mean nothing."""
    try:
        rows = weigh(job, shop, tables, ()).rows
        held = [row.weighed for row in rows if isinstance(row.weighed, Weighed)]
        alike = [w for w in held if _drive_of(w) == drive] or held  # bare where it needs none
        return next(iter(alike), None)
    except (OutsideModel, RefusedInput):
        return None


def _drive_of(weighed: Weighed | None) -> str:
    """Id of the positive drive that takes its torque; empty without one."""
    drive = None if weighed is None else weighed.trial.drive
    return drive.id if drive else ""


def _worth(now: Situation, after: Weighed, was: Deepest, became: Deepest) -> bool:
    """Whether it gains depth, or turns an answer, and costs neither."""
    least = now.tables.allowance("change_worth").best * was.depth + SAME
    better, worse = _rank(after) < _rank(now.best), _rank(after) > _rank(now.best)
    return became.depth >= was.depth and not worse and (better or became.depth >= least)


def _serves(now: Situation, after: Weighed) -> bool:
    """Whether what is left for the mandrel holds, and better than before; the chuck's depth is no gain.

    A yes with light cuts only is served by a yes: the many passes are then the chuck's.
    """
    light = now.best is not None and now.best.verdict is Verdict.YES
    better = _rank(after) < _rank(now.best) or light
    return after.verdict is not Verdict.NO and better and _rank(after) <= _rank(now.best)


def _rank(weighed: Weighed | None) -> tuple[int, int, int]:
    """Verdict, answers of no, answers of with care: less is better."""
    if weighed is None:
        return Verdict.NO.rank + 1, 0, 0
    verdicts = [q.verdict for q in weighed.questions]
    return weighed.verdict.rank, verdicts.count(Verdict.NO), verdicts.count(Verdict.CARE)


def _change(
    variant: Variant, now: Situation, after: Weighed, was: Deepest, became: Deepest
) -> Change:
    cost, name = now.tables.part_change(variant.id), variant.id.replace("-", "_")
    band = cost.time.low, cost.time.high
    return Change(
        id=variant.id,
        what=variant.what,
        drawing=cost.drawing,
        time=figure(f"time_for_{name}", cost.time.best, "s", "", "", (), (cost.time.source,), band),
        verdict_before=Verdict.NO if now.best is None else now.best.verdict,
        verdict_after=after.verdict,
        turns=_turned(now.best, after),
        depth_before=depth_figure("deepest_now", was),
        depth_after=depth_figure(f"deepest_with_{name}", became),
        gains=became.depth - was.depth,
        rough_in_chuck=variant.rough_in_chuck,
        proviso="if the casting is sound" if variant.job.work.blank == "casting" else "",
    )


def _turned(best: Weighed | None, after: Weighed) -> tuple[str, ...]:
    """Questions whose answer gets better."""
    if best is None:
        return ("bore",)
    return tuple(q.id for q in after.questions if q.verdict.rank < best.question(q.id).verdict.rank)
