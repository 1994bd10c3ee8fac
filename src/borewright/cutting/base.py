"""One lathe cut from what all cuts of a job share: tool, speed, the lathe's own lists."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from borewright.answer.records import Cut
from borewright.cutting.directions import NEITHER, TIGHTENS
from borewright.cutting.stock import face_outside, metal_of_face, turned_length
from borewright.job.records import Job, Machine
from borewright.mechanics.turning import next_speed_at_or_below, spindle_speed, surface_speed
from borewright.quantities.si import Metre, MetrePerSecond, RevPerSecond
from borewright.reference.library import Tables

NEAR_FEED = 1.06
"""A feed of the lathe up to this many times the wanted one will do (ours)."""

FAR_OFF = 3.0
"""A feed so many times the wanted, or that much less, is far off (ours)."""

GROOVE_TOOL, NARROWEST_TOOL = 3e-3, 1.5e-3
"""Widest and narrowest grooving tool (m); wider grooves are plunged side by side (ours)."""

SMALLEST_LEG = 0.25e-3
"""A slope is cut side by side in legs no smaller than this (m; ours)."""


@dataclass(frozen=True, slots=True)
class Base:
    """What all cuts of a job share; `diameter` is where they begin, `length` how far they go along
    the work, `across` how far over a face, `face` the diameter where that begins; `span`: from
    where to where along it, where not all."""

    diameter: Metre
    length: Metre
    across: Metre
    surface: MetrePerSecond
    edge_angle: float
    nose_radius: Metre
    machine: Machine
    span: tuple[Metre, Metre] | None = None
    face: Metre = 0.0


def base_of(job: Job, tables: Tables) -> Base:
    """The usual tool and speed for the work's material, on this lathe."""
    material = tables.material(job.work.material).id
    tool = tables.cut_defaults(material).tool
    return Base(
        job.work.outside,
        turned_length(job.work),
        metal_of_face(job.work),
        tables.cutting_speed(material, tool).best,
        tables.cutting_correction("edge_angle").best,
        tables.cutting_correction("nose_radius").best,
        job.shelf.machine,
        face=face_outside(job.work),
    )


def turn(
    cut_id: str, name: str, base: Base, depth: Metre, feed: Metre, passes: int, leaves: Metre
) -> Cut:
    """A turning cut towards the headstock, which pushes the work up the taper."""
    way = "towards the headstock"
    return _cut(cut_id, "turn", name, base, depth, feed, passes, way, TIGHTENS, leaves)


def face(
    cut_id: str, name: str, base: Base, depth: Metre, feed: Metre, passes: int, effect: str
) -> Cut:
    """A facing cut from the rim inwards."""
    way, own = "from the rim inwards", replace(base, diameter=base.face or base.diameter)
    return _cut(cut_id, "face", name, own, depth, feed, passes, way, effect, None)


def groove(
    cut_id: str, name: str, base: Base, bottom: Metre, width: Metre, feed: Metre, share: float
) -> Cut:
    """A groove plunged straight in, side by side where it is wider than the tool; `depth` is the
    width of one plunge. `share`: of the widest tool, where the hold wants a narrower one."""
    plunges = side_by_side(width, GROOVE_TOOL * share, NARROWEST_TOOL)
    return _cut(
        cut_id, "groove", name, base, width / plunges, feed, plunges, "straight in", NEITHER, bottom
    )


def side_by_side(width: Metre, tool: Metre, narrowest: Metre) -> int:
    """How many plunges a tool of about this width (m) takes, none of them below the narrowest.

    >>> side_by_side(4e-3, 3e-3, 1.5e-3), side_by_side(4e-3, 0.1e-3, 1.5e-3)
    (2, 2)
    """
    most = max(1, math.floor(width / narrowest + 1e-6))
    return min(most, max(1, math.ceil(round(width / tool, 6))))


def _cut(
    cut_id: str,
    kind: str,
    name: str,
    base: Base,
    depth: Metre,
    feed: Metre,
    passes: int,
    way: str,
    effect: str,
    leaves: Metre | None,
) -> Cut:
    spindle = spindle_for(base.surface, base.diameter, base.machine)
    across = base.across if leaves is None else (base.diameter - leaves) / 2
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
        nose_radius=base.nose_radius if kind != "groove" else 0.0,
        direction=way,
        seat_effect=effect,
        length=base.length if kind == "turn" else across,
        leaves=leaves,
        span=base.span,
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
    Where the one below is far off and the next above is not, that is taken.

    >>> lathe = Machine(feeds=(0.03e-3, 0.3e-3))
    >>> feed_for(0.12e-3, lathe), feed_for(0.06e-3, lathe)
    (0.0003, 3e-05)
    """
    if not machine.feeds:
        return wanted
    below = max((f for f in machine.feeds if f <= wanted * NEAR_FEED), default=0.0)
    above = min((f for f in machine.feeds if f > wanted * NEAR_FEED), default=0.0)
    if below and (below * FAR_OFF >= wanted or not above or above > wanted * FAR_OFF):
        return below
    return above


def _to_two_figures(speed: RevPerSecond) -> RevPerSecond:
    """Rounded down to two figures of rpm, where the lathe's own speeds are not known."""
    rpm = 60 * speed
    step = 10 ** (math.floor(math.log10(rpm)) - 1)
    return float(math.floor(rpm / step + 1e-9) * step / 60)
