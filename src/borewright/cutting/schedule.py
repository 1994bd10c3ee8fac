"""The cuts of a plan: rough and finish the outside, skim both faces; or what the user insists on.

The large end of the mandrel is at the headstock, so feeding towards the headstock, and facing the
tailstock-side face, push the work towards the large end and tighten it; facing the headstock-side
face pushes it the other way.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from borewright.answer.records import Cut
from borewright.job.records import CutWish, Job, Machine
from borewright.mechanics.turning import next_speed_at_or_below, spindle_speed, surface_speed
from borewright.quantities.si import Metre, MetrePerSecond, RevPerSecond
from borewright.reference.library import Tables

TIGHTENS, LOOSENS = "tightens", "loosens"


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
    if job.cuts:
        return tuple(_wished(w, i, job, base, tables) for i, w in enumerate(job.cuts, 1))
    d = tables.cut_defaults(tables.material(job.work.material).id)
    most, stock = deepest_pass(job, tables), _stock(job)
    finish = min(d.finish_depth, most, stock if stock else math.inf)
    rough = min(max(d.rough_depth * depth_share, finish), most)
    stop = "" if stock is not None else " (stop at your size)"
    return (
        *_roughing(stock, rough, finish, base, d.rough_feed, stop),
        _face(
            "face-trailing",
            "face the tailstock side, if wanted",
            base,
            finish,
            d.finish_feed,
            TIGHTENS,
        ),
        _face(
            "face-leading",
            "face the headstock side, if wanted, lightly",
            base,
            finish / 2,
            d.finish_feed,
            LOOSENS,
        ),
        *_finishing(stock, finish, base, d.finish_feed, stop),
    )


def deepest_pass(job: Job, tables: Tables) -> Metre:
    """The deepest pass (m) that the wall between bore and outside bears."""
    wall = (job.work.outside - job.work.bore.size) / 2
    return wall * tables.allowance("wall_share").best


def _roughing(
    stock: Metre | None, depth: Metre, finish: Metre, base: _Base, feed: Metre, stop: str
) -> tuple[Cut, ...]:
    """The roughing cut in equal passes; one where the stock is not known, none where it is thin."""
    name = f"rough the outside{stop}"
    if stock is None:
        return (_turn("rough", name, base, depth, feed, 1),)
    to_rough = stock - finish
    if to_rough <= 1e-9:
        return ()
    passes = max(1, math.ceil(round(to_rough / depth, 6)))
    return (_turn("rough", name, base, to_rough / passes, feed, passes),)


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


def _stock(job: Job) -> Metre | None:
    """Metal to come off the radius (m); None where the finished size is not stated."""
    finished = job.work.finished.outside
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


def _wished(wish: CutWish, number: int, job: Job, base: _Base, tables: Tables) -> Cut:
    d = tables.cut_defaults(tables.material(job.work.material).id)
    base = _Base(
        base.diameter,
        _wished_speed(wish, base),
        wish.edge_angle if wish.edge_angle is not None else base.edge_angle,
        wish.nose_radius if wish.nose_radius is not None else base.nose_radius,
        Machine() if wish.spindle_speed is not None else base.machine,
    )
    feed = wish.feed if wish.feed is not None else d.rough_feed
    if wish.kind == "face":
        depth = wish.depth if wish.depth is not None else d.finish_depth
        return _face(f"cut-{number}", f"face, as asked (cut {number})", base, depth, feed, LOOSENS)
    depth = wish.depth if wish.depth is not None else d.rough_depth
    stock = _stock(job)
    passes = max(1, math.ceil(round(stock / depth, 6))) if stock else 1
    return _turn(f"cut-{number}", f"turn, as asked (cut {number})", base, depth, feed, passes)


def _wished_speed(wish: CutWish, base: _Base) -> MetrePerSecond:
    if wish.spindle_speed is not None:
        return surface_speed(wish.spindle_speed, base.diameter)
    return wish.speed if wish.speed is not None else base.surface
