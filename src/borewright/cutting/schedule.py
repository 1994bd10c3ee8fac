"""The cuts of a plan: rough and finish the outside, skim both faces; or what the user insists on.

The large end of the mandrel is at the headstock, so feeding towards the headstock, and facing the
tailstock-side face, push the work towards the large end and tighten it; facing the headstock-side
face pushes it the other way. Turning comes first; grinding and gear cutting come where the user
lists them.
"""

from __future__ import annotations

import math
from dataclasses import replace

from borewright.answer.records import Cut
from borewright.cutting.base import Base, base_of, face, feed_for, turn
from borewright.cutting.directions import LOOSENS
from borewright.cutting.loads import check_grind, cuts_gear, gear_cut, grind_cut, grinds, infeed_of
from borewright.cutting.stock import (
    LATHE_READS,
    deepest_pass,
    finished_outside,
    outermost_inside,
    stock_of,
)
from borewright.cutting.turning import turning
from borewright.errors import RefusedInput
from borewright.job.records import CutWish, Job, Machine
from borewright.mechanics.turning import surface_speed
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, MetrePerSecond
from borewright.reference.library import Tables


def planned_cuts(
    job: Job, tables: Tables, depth_share: float = 1.0, last: tuple[Cut, ...] = ()
) -> tuple[Cut, ...]:
    """The cuts in order; `depth_share` scales a rough depth that was left open. `last`: those that
    follow the turning, such as a crown and broken edges; teeth are cut after them."""
    wished = _all_wished(job, base_of(job, tables), tables)
    if not turning_is_planned(job, tables):
        return (*wished, *last)
    return (*turning(job, tables, depth_share, alone=not last), *last, *wished)


def turning_is_planned(job: Job, tables: Tables) -> bool:
    """True where the turning is left to the plan: no cut is listed, or only gears on a blank
    that still has stock to the outside of the gear."""
    if not job.cuts:
        return True
    return all(cuts_gear(w) for w in job.cuts) and (stock_of(job, tables) or 0.0) > LATHE_READS


def _all_wished(job: Job, base: Base, tables: Tables) -> tuple[Cut, ...]:
    """The cuts insisted on; turning and grinding share the stock in order, in whole passes."""
    left = stock_of(job, tables)
    cuts = []
    for number, wish in enumerate(job.cuts, 1):
        if cuts_gear(wish):
            cuts.append(gear_cut(wish, number, job, tables))
            continue
        if grinds(wish):
            check_grind(wish, number, job, tables)
        later = _kept_for_later(wish, job.cuts[number:], job, tables)
        passes = _passes(wish, number, None if left is None else left - later, job, tables)
        cuts.append(_wished(wish, number, passes, job, base, tables))
        if left is not None and wish.kind != "face":
            left -= passes * _depth(wish, job, tables)
    return tuple(cuts)


def _kept_for_later(wish: CutWish, later: tuple[CutWish, ...], job: Job, tables: Tables) -> Metre:
    """Stock (m) that later cuts of the outside want: a pass of each; the usual before the wheel."""
    kept = sum(_depth(w, job, tables) for w in later if w.kind in ("turn", "grind"))
    if not grinds(wish) and any(grinds(w) for w in later):
        kept += tables.grinding("stock_to_leave").best
    return kept


def _depth(wish: CutWish, job: Job, tables: Tables) -> Metre:
    if grinds(wish):
        return infeed_of(wish, tables)
    if wish.depth is not None:
        return wish.depth
    d = tables.cut_defaults(job.work.material)
    usual = d.finish_depth if wish.kind == "face" else d.rough_depth
    return min(usual, deepest_pass(job, tables), stock_of(job, tables) or math.inf)


def _passes(wish: CutWish, number: int, stock: Metre | None, job: Job, tables: Tables) -> int:
    """Whole passes that take off what is left for this cut; RefusedInput for one that cannot be."""
    depth, show = _depth(wish, job, tables), Show(job.units)
    most = (
        job.work.length / 2
        if wish.kind == "face"
        else (job.work.outside - outermost_inside(job)) / 2
    )
    if depth >= most:
        raise RefusedInput(
            f"cut[{number}].depth", show.depth(depth), f"less than {show.depth(most)} of metal"
        )
    if wish.kind == "face" or stock is None:
        return 1
    whole = stock_of(job, tables) or 0.0
    if depth > whole + LATHE_READS:
        raise RefusedInput(
            f"cut[{number}].depth",
            show.depth(depth),
            f"at most the {show.depth(whole)} of stock to the finished size",
        )
    return max(1, math.floor(stock / depth + 1e-6))


def _wished(wish: CutWish, number: int, passes: int, job: Job, base: Base, tables: Tables) -> Cut:
    if grinds(wish):
        return grind_cut(
            wish, number, passes, finished_outside(job, tables) or base.diameter, tables
        )
    d = tables.cut_defaults(job.work.material)
    base = replace(
        base,
        surface=_wished_speed(wish, base),
        edge_angle=wish.edge_angle if wish.edge_angle is not None else base.edge_angle,
        nose_radius=wish.nose_radius if wish.nose_radius is not None else base.nose_radius,
        machine=Machine() if wish.spindle_speed is not None else base.machine,
    )
    feed = wish.feed if wish.feed is not None else feed_for(d.rough_feed, base.machine)
    depth = _depth(wish, job, tables)
    if wish.kind == "face":
        name = f"face, as asked (cut {number})"
        cut = face(f"cut-{number}", name, base, depth, feed, 1, LOOSENS)
        return _as_fast(cut, wish)
    cut = turn(f"cut-{number}", f"turn, as asked (cut {number})", base, depth, feed, passes, 0.0)
    return _as_fast(replace(cut, leaves=None), wish)


def _as_fast(cut: Cut, wish: CutWish) -> Cut:
    """At the very turns that were asked for."""
    if wish.spindle_speed is None:
        return cut
    speed = surface_speed(wish.spindle_speed, cut.diameter)
    return replace(cut, spindle_speed=wish.spindle_speed, cutting_speed=speed)


def _wished_speed(wish: CutWish, base: Base) -> MetrePerSecond:
    if wish.spindle_speed is not None:
        return surface_speed(wish.spindle_speed, base.diameter)
    return wish.speed if wish.speed is not None else base.surface
