"""The cuts of a plan: rough and finish the outside, skim both faces; or what the user insists on.

The large end of the mandrel is at the headstock, so feeding towards the headstock, and facing the
tailstock-side face, push the work towards the large end and tighten it; facing the headstock-side
face pushes it the other way. Turning comes first; grinding and gear cutting come where the user
lists them.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from borewright.answer.records import Cut
from borewright.cutting.directions import LOOSENS, TIGHTENS
from borewright.cutting.loads import (
    check_grind,
    cuts_gear,
    gear_cut,
    gear_outside,
    grind_cut,
    grinds,
    infeed_of,
)
from borewright.errors import RefusedInput
from borewright.job.records import CutWish, Job, Machine
from borewright.mechanics.turning import next_speed_at_or_below, spindle_speed, surface_speed
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, MetrePerSecond, RevPerSecond
from borewright.reference.library import Tables

NEAR_FEED = 1.06
"""A feed of the lathe up to this many times the wanted one will do (ours)."""

FINISH_SHARE = 0.6
"""A finishing cut is at most this share of the roughing cut, where the plan may choose (ours)."""

LATHE_READS = 0.005e-3
"""Half a thousandth of a hand's care on the dial (m): stock is not counted finer (ours)."""


@dataclass(frozen=True, slots=True)
class _Base:
    """What all cuts of a job share."""

    diameter: Metre
    surface: MetrePerSecond
    edge_angle: float
    nose_radius: Metre
    machine: Machine


def planned_cuts(job: Job, tables: Tables, depth_share: float = 1.0) -> tuple[Cut, ...]:
    """The cuts in order; `depth_share` scales a rough depth that was left open."""
    base = _base(job, tables)
    wished = _all_wished(job, base, tables)
    if not turning_is_planned(job, tables):
        return wished
    return (*_turning(job, base, tables, depth_share), *wished)


def turning_is_planned(job: Job, tables: Tables) -> bool:
    """True where the turning is left to the plan: no cut is listed, or only gears on a blank
    that still has stock to the outside of the gear."""
    if not job.cuts:
        return True
    return all(cuts_gear(w) for w in job.cuts) and (_stock(job, tables) or 0.0) > LATHE_READS


def _turning(job: Job, base: _Base, tables: Tables, depth_share: float) -> tuple[Cut, ...]:
    """Rough, face and finish."""
    d = tables.cut_defaults(tables.material(job.work.material).id)
    most, stock = deepest_pass(job, tables), _stock(job, tables)
    rough_feed, finish_feed = (feed_for(f, base.machine) for f in (d.rough_feed, d.finish_feed))
    finish = min(d.finish_depth, most, stock if stock else math.inf)
    if stock is not None and finish < stock <= min(
        most, finish + _least_rough(job, finish, tables)
    ):
        finish = stock
    rough = min(max(d.rough_depth * depth_share, finish), most)
    if stock is None:
        finish = min(finish, FINISH_SHARE * rough)
    stop = "" if stock is not None else " (stop at your size)"
    least = _least_rough(job, finish, tables)
    return (
        *_roughing(stock, rough, finish, base, rough_feed, stop, least),
        _face(
            "face-trailing",
            "face the tailstock side, if wanted",
            base,
            finish,
            finish_feed,
            TIGHTENS,
        ),
        _face(
            "face-leading",
            "face the headstock side, if wanted, lightly",
            base,
            finish / 2,
            finish_feed,
            LOOSENS,
        ),
        *_finishing(stock, finish, base, finish_feed, stop),
    )


def _least_rough(job: Job, finish: Metre, tables: Tables) -> Metre:
    """Least roughing depth (m): under the skin of a casting, else half a finishing cut."""
    return tables.allowance("skin_depth").low if job.work.blank == "casting" else finish / 2


def outermost_inside(job: Job) -> Metre:
    """Inside diameter (m) of the metal that is turned: of the rim, or the bore of plain work."""
    work = job.work
    rim = [p for p in work.pieces if p.outside >= work.outside * (1 - 1e-9)]
    return max(p.inside or work.bore.size for p in rim)


def deepest_pass(job: Job, tables: Tables) -> Metre:
    """The deepest pass (m) that the wall it is cut from bears."""
    wall = (job.work.outside - outermost_inside(job)) / 2
    return wall * tables.allowance("wall_share").best


def _roughing(
    stock: Metre | None,
    depth: Metre,
    finish: Metre,
    base: _Base,
    feed: Metre,
    stop: str,
    least: Metre,
) -> tuple[Cut, ...]:
    """The roughing cut in equal passes; one where the stock is not known, none where it is thin.

    Where equal passes would be lighter than the least, the first takes the whole depth and gets
    under the skin, and the rest share what is left.
    """
    name = f"rough the outside{stop}"
    if stock is None:
        return (_turn("rough", name, base, depth, feed, 1),)
    to_rough = stock - finish
    if to_rough <= 1e-9:
        return ()
    passes = max(1, math.ceil(round(to_rough / depth, 6)))
    if passes == 1 or to_rough / passes >= least * (1 - 1e-9):
        return (_turn("rough", name, base, to_rough / passes, feed, passes),)
    first = "first cut on the outside, under the skin"
    left = to_rough - depth
    return (
        _turn("skin", first, base, depth, feed, 1),
        _turn("rough", name, base, left / (passes - 1), feed, passes - 1),
    )


def _finishing(
    stock: Metre | None, depth: Metre, base: _Base, feed: Metre, stop: str
) -> tuple[Cut, ...]:
    """The finishing cut; none where no metal is to come off the outside."""
    return (
        () if stock == 0 else (_turn("finish", f"finish the outside{stop}", base, depth, feed, 1),)
    )


def spindle_for(surface: MetrePerSecond, diameter: Metre, machine: Machine) -> RevPerSecond:
    """The lathe's speed at or just below the wanted, or its slowest; as wanted if none known."""
    wanted = spindle_speed(surface, diameter)
    if not machine.speeds:
        return _to_two_figures(wanted)
    return next_speed_at_or_below(wanted, machine.speeds) or min(machine.speeds)


def feed_for(wanted: Metre, machine: Machine) -> Metre:
    """The lathe's feed at or just below the wanted one, its finest if all are coarser.

    A feed a little above the wanted counts as at it: nobody sets 0.0039 where the lathe has 0.004.
    """
    if not machine.feeds:
        return wanted
    return max((f for f in machine.feeds if f <= wanted * NEAR_FEED), default=min(machine.feeds))


def _to_two_figures(speed: RevPerSecond) -> RevPerSecond:
    """Rounded down to two figures of rpm, where the lathe's own speeds are not known."""
    rpm = 60 * speed
    step = 10 ** (math.floor(math.log10(rpm)) - 1)
    return float(math.floor(rpm / step + 1e-9) * step / 60)


def _base(job: Job, tables: Tables) -> _Base:
    material = tables.material(job.work.material).id
    tool = tables.cut_defaults(material).tool
    return _Base(
        job.work.outside,
        tables.cutting_speed(material, tool).best,
        tables.cutting_correction("edge_angle").best,
        tables.cutting_correction("nose_radius").best,
        job.shelf.machine,
    )


def finished_outside(job: Job, tables: Tables) -> Metre | None:
    """The outside wanted (m): as stated, or that of the gear; None where nobody says."""
    if job.work.finished.outside is not None:
        return job.work.finished.outside
    return next((gear_outside(w, tables) for w in job.cuts if cuts_gear(w)), None)


def _stock(job: Job, tables: Tables) -> Metre | None:
    """Metal to come off the radius (m); None where the finished size is not stated."""
    finished = finished_outside(job, tables)
    return None if finished is None else max(0.0, (job.work.outside - finished) / 2)


def _turn(cut_id: str, name: str, base: _Base, depth: Metre, feed: Metre, passes: int) -> Cut:
    return _cut(cut_id, "turn", name, base, depth, feed, passes, "towards the headstock", TIGHTENS)


def _face(cut_id: str, name: str, base: _Base, depth: Metre, feed: Metre, effect: str) -> Cut:
    return _cut(cut_id, "face", name, base, depth, feed, 1, "from the rim inwards", effect)


def _cut(
    cut_id: str,
    kind: str,
    name: str,
    base: _Base,
    depth: Metre,
    feed: Metre,
    passes: int,
    way: str,
    effect: str,
) -> Cut:
    spindle = spindle_for(base.surface, base.diameter, base.machine)
    return Cut(
        id=cut_id,
        kind=kind,
        name=name,
        diameter=base.diameter,
        depth=depth,
        feed=feed,
        passes=passes,
        cutting_speed=surface_speed(spindle, base.diameter),
        spindle_speed=spindle,
        edge_angle=base.edge_angle,
        nose_radius=base.nose_radius,
        direction=way,
        seat_effect=effect,
    )


def _all_wished(job: Job, base: _Base, tables: Tables) -> tuple[Cut, ...]:
    """The cuts insisted on; turning and grinding share the stock in order, in whole passes."""
    left = _stock(job, tables)
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
    return min(usual, deepest_pass(job, tables), _stock(job, tables) or math.inf)


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
    whole = _stock(job, tables) or 0.0
    if depth > whole + LATHE_READS:
        raise RefusedInput(
            f"cut[{number}].depth",
            show.depth(depth),
            f"at most the {show.depth(whole)} of stock to the finished size",
        )
    return max(1, math.floor(stock / depth + 1e-6))


def _wished(wish: CutWish, number: int, passes: int, job: Job, base: _Base, tables: Tables) -> Cut:
    if grinds(wish):
        return grind_cut(
            wish, number, passes, finished_outside(job, tables) or base.diameter, tables
        )
    d = tables.cut_defaults(job.work.material)
    base = _Base(
        base.diameter,
        _wished_speed(wish, base),
        wish.edge_angle if wish.edge_angle is not None else base.edge_angle,
        wish.nose_radius if wish.nose_radius is not None else base.nose_radius,
        Machine() if wish.spindle_speed is not None else base.machine,
    )
    feed = wish.feed if wish.feed is not None else feed_for(d.rough_feed, base.machine)
    depth = _depth(wish, job, tables)
    if wish.kind == "face":
        return _face(f"cut-{number}", f"face, as asked (cut {number})", base, depth, feed, LOOSENS)
    return _turn(f"cut-{number}", f"turn, as asked (cut {number})", base, depth, feed, passes)


def _wished_speed(wish: CutWish, base: _Base) -> MetrePerSecond:
    if wish.spindle_speed is not None:
        return surface_speed(wish.spindle_speed, base.diameter)
    return wish.speed if wish.speed is not None else base.surface
