"""The turning that a plan chooses: first face, outside, steps, second face, then the last sizes.

The face towards the tailstock comes first: facing it pushes the work up the taper, and it is what
lengths are measured from. Heavy cuts come before light ones, what loosens the seat is light, and
the sizes that count come last, in one go: outside, steps, grooves.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from borewright.answer.records import Cut
from borewright.cutting.base import Base, base_of, face, feed_for, groove, turn
from borewright.cutting.directions import LOOSENS, TIGHTENS
from borewright.cutting.stock import (
    clean_up,
    deepest_pass,
    face_stock,
    finished_outside,
    least_rough,
    runout_of,
    stock_of,
)
from borewright.errors import RefusedInput
from borewright.job.crown_wish import turned_rings
from borewright.job.finished_form import FinishedStep, Groove
from borewright.job.records import Job, Work
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

FINISH_SHARE = 0.6
"""A finishing cut is at most this share of the roughing cut, where the plan may choose (ours)."""


LEAST_PATH = 1e-6
"""Less than this (m) left of the outside beside steps is nothing."""


@dataclass(frozen=True, slots=True)
class Setting:
    """What the plan sets: depths (m on radius, one pass), feeds (m a turn). `light`: the usual last
    cut, whatever stock the outside has. `share`: of what plunging tools usually take."""

    rough: Metre
    finish: Metre
    light: Metre
    rough_feed: Metre
    finish_feed: Metre
    least: Metre
    share: float


def turning(job: Job, tables: Tables, depth_share: float, *, alone: bool = True) -> tuple[Cut, ...]:
    """All turning cuts in order; `depth_share` scales the usual rough depth. `alone`: nothing else
    is cut, so that RefusedInput is raised where there is nothing to turn."""
    base, at = base_of(job, tables), _setting(job, tables, depth_share)
    stock = stock_of(job, tables)
    stop = "" if stock is not None else " (stop at your size)"
    found = (
        *_first_face(job, base, at),
        *_roughing(job, tables, base, at, stop),
        *_steps_roughed(job, tables, base, at),
        *_second_face(job, base, at),
        *_finishing(job, tables, base, at, stop),
        *_steps_finished(job, base, at),
        *_grooves(job, tables, base, at),
    )
    if not found and alone and not job.cuts:
        allowed = "a finished outside, length, step or groove that metal has to come off for"
        raise RefusedInput("work.finished", "nothing to turn", allowed)
    return found


def _setting(job: Job, tables: Tables, depth_share: float) -> Setting:
    d, machine = tables.cut_defaults(tables.material(job.work.material).id), job.shelf.machine
    most, stock = deepest_pass(job, tables), stock_of(job, tables)
    finish = min(d.finish_depth, most, stock if stock else math.inf)
    if stock is not None and finish < stock <= min(most, finish + least_rough(job, finish, tables)):
        finish = stock
    rough = min(max(d.rough_depth * depth_share, finish), most)
    if stock is None:
        finish = min(finish, FINISH_SHARE * rough)
    rough_feed, finish_feed = (feed_for(f, machine) for f in (d.rough_feed, d.finish_feed))
    light = min(d.finish_depth, most)
    least = least_rough(job, finish, tables)
    return Setting(rough, finish, light, rough_feed, finish_feed, least, depth_share)


def _first_face(job: Job, base: Base, at: Setting) -> Iterator[Cut]:
    yield from _faced(job, base, at, "face-trailing", "face the tailstock side", TIGHTENS)


def _second_face(job: Job, base: Base, at: Setting) -> Iterator[Cut]:
    lighter = replace(at, light=at.light / 2, rough=at.rough / 2)
    yield from _faced(job, base, lighter, "face-leading", "face the headstock side", LOOSENS)


def _faced(job: Job, base: Base, at: Setting, cut_id: str, name: str, effect: str) -> Iterator[Cut]:
    """A face in equal passes to its length; one clean-up where no length is stated."""
    stock = face_stock(job)
    lightly = ", lightly" if effect == LOOSENS else ""
    if stock is None:
        yield face(cut_id, f"{name}, if wanted{lightly}", base, at.light, at.finish_feed, 1, effect)
        return
    if stock <= 1e-9:
        return
    passes = math.ceil(round(stock / at.rough, 6))
    feed = at.rough_feed if stock / passes > at.light else at.finish_feed
    yield face(cut_id, f"{name} to length{lightly}", base, stock / passes, feed, passes, effect)


def _roughing(job: Job, tables: Tables, base: Base, at: Setting, stop: str) -> Iterator[Cut]:
    """The roughing cut in equal passes; one where the stock is not known, none where it is thin.

    Where equal passes would be lighter than the least, the first takes the whole depth and gets
    under the skin, and the rest share what is left. Depths are from the high spot of a rim that is
    out as cast.
    """
    stock, name, throw = stock_of(job, tables), f"rough the outside{stop}", runout_of(job)
    base = replace(base, diameter=base.diameter + throw)
    now = base.diameter
    if stock is None and not throw:
        yield turn("rough", name, base, at.rough, at.rough_feed, 1, now - 2 * at.rough)
        return
    if stock is None:
        stock = clean_up(job, at.finish, tables)
    to_rough = stock - at.finish + throw / 2
    if to_rough <= 1e-9:
        return
    left = now - 2 * to_rough
    passes = max(1, math.ceil(round(to_rough / at.rough, 6)))
    if passes == 1 or to_rough / passes >= at.least * (1 - 1e-9):
        yield turn("rough", name, base, to_rough / passes, at.rough_feed, passes, left)
        return
    first = "first cut on the outside, under the skin"
    yield turn("skin", first, base, at.rough, at.rough_feed, 1, now - 2 * at.rough)
    rest = (to_rough - at.rough) / (passes - 1)
    own = replace(base, diameter=now - 2 * at.rough)
    yield turn("rough", name, own, rest, at.rough_feed, passes - 1, left)


def _finishing(job: Job, tables: Tables, base: Base, at: Setting, stop: str) -> Iterator[Cut]:
    """The finishing cut; none where no metal is to come off the outside."""
    stock = stock_of(job, tables)
    if stock == 0:
        return
    if stock is None:
        stock = clean_up(job, at.finish, tables) if runout_of(job) else at.rough + at.finish
    left = base.diameter - 2 * stock
    land = base.length - _beside(job)
    if land < LEAST_PATH:
        return
    own = replace(base, diameter=left + 2 * at.finish, length=land)
    yield turn("finish", f"finish the outside{stop}", own, at.finish, at.finish_feed, 1, left)


def _steps_roughed(job: Job, tables: Tables, base: Base, at: Setting) -> Iterator[Cut]:
    """Every step down to a finishing cut, from the outside as roughed."""
    for number, step in enumerate(_steps(job), 1):
        outside = finished_outside(job, tables) or base.diameter
        begins = min(cast_there(job.work, step), outside + 2 * at.finish)
        to_rough = (begins - step.outside) / 2 - at.light
        if to_rough <= 1e-9:
            continue
        passes = max(1, math.ceil(round(to_rough / at.rough, 6)))
        name = f"rough the step, {_place(job, step)}"
        own = replace(
            base, diameter=begins, length=step.end - step.start, span=(step.start, step.end)
        )
        left = step.outside + 2 * at.light
        depth = to_rough / passes
        yield turn(f"step-{number}-rough", name, own, depth, at.rough_feed, passes, left)


def _steps_finished(job: Job, base: Base, at: Setting) -> Iterator[Cut]:
    for number, step in enumerate(_steps(job), 1):
        begins = min(step.outside + 2 * at.light, cast_there(job.work, step))
        if begins - step.outside <= 1e-9:
            continue
        own = replace(
            base, diameter=begins, length=step.end - step.start, span=(step.start, step.end)
        )
        light = (begins - step.outside) / 2
        name = f"finish the step, {_place(job, step)}"
        yield turn(f"step-{number}-finish", name, own, light, at.finish_feed, 1, step.outside)


def _grooves(job: Job, tables: Tables, base: Base, at: Setting) -> Iterator[Cut]:
    outside = finished_outside(job, tables) or base.diameter
    show = Show(job.units)
    for number, g in enumerate(job.work.finished.form.grooves, 1):
        top = min(
            (s.outside for s in _steps(job) if s.start <= g.start and g.end <= s.end),
            default=outside,
        )
        own = replace(base, diameter=top, span=(g.start, g.end))
        name = f"groove {show.length(g.width)} wide, to {show.turned(g.bottom)}, {_place(job, g)}"
        feed = tables.cut_defaults(job.work.material).finish_feed * at.share
        yield groove(f"groove-{number}", name, own, g.bottom, g.width, feed, at.share)


def _beside(job: Job) -> Metre:
    """How much (m) of the turned outside steps take."""
    rings = turned_rings(job.work)
    return sum(
        max(0.0, min(step.end, end) - max(step.start, start))
        for step in _steps(job)
        for start, end in rings
    )


NEAR = 1e-9
"""Lengths nearer than this (m) are one."""


def cast_there(work: Work, step: FinishedStep) -> Metre:
    """The largest outside (m) of the blank where a step is to be: that of a hub that stands out."""
    off = (work.length - (work.finished.form.length or work.length)) / 2
    here = (
        p.outside
        for p in work.pieces
        if p.start - off < step.end - NEAR and p.end - off > step.start + NEAR
    )
    return max(here, default=work.outside)


def _steps(job: Job) -> tuple[FinishedStep, ...]:
    return job.work.finished.form.steps


def _place(job: Job, stretch: FinishedStep | Groove) -> str:
    """Where it stands along the work."""
    return f"{Show(job.units).band(stretch.start, stretch.end, 'length')} from face A"
