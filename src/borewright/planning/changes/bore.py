"""Changes at the bore: opened to the next mandrel on the shelf, chamfered first, its keyway or cross
hole cut last."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from borewright.answer.records import Verdict
from borewright.holding.taper.measured_mandrel import window_of
from borewright.job.interrupted import Chamfers
from borewright.job.records import Bore, Mandrel
from borewright.job.tools import OwnReamer
from borewright.job.web import on_bore
from borewright.planning.changes.variant import Situation, Variant, with_work
from borewright.planning.questions.bore import LEAST_CUT
from borewright.planning.shop.owned import reamer_between
from borewright.planning.taper.mouths import CHAMFER
from borewright.quantities.si import Metre

FINISHED = ("reamed", "bored", "honed", "lapped")
"""Ways of making a bore that leave one to press on."""

STEP = {"inch": 2.54e-6, "mm": 2e-6}
"""A bore to be made is asked for in these steps (m)."""


def bore_variants(now: Situation) -> Iterator[Variant]:
    """Those that bear on what is the matter."""
    off = now.best is None or now.answers("bore", Verdict.NO)
    if off or _unfinished(now) or now.troubled("slip", "rock", "bend"):
        yield from _opened(now)
    if now.troubled("crack", "slip"):
        yield from _cut_last(now)
    if now.troubled("crack"):
        yield from _chamfered(now)


def _opened(now: Situation) -> Iterator[Variant]:
    """To the middle of the window of the next mandrel up, by the shop's own reamer where one serves."""
    work, show, next_up = now.job.work, now.show, _next_up(now)
    if work.keyway is not None or next_up is None:
        return
    mandrel, (low, high) = next_up
    reamer = reamer_between(now.job.shelf.reamers, low, high, work.bore.size)
    size = reamer[1] if reamer else _round(now, (low + high) / 2)
    if not low < size < high:
        return
    how = f"with {_named(reamer[0], now)}, as it cuts" if reamer else "by the boring bar"
    owned = "" if now.job.shelf.stated else ", if you have it"
    yield Variant(
        "bore-finished" if _unfinished(now) else "bore-up",
        f"Open the bore to {show.bore(size)} {how}, within {show.band(low, high, 'bore')}, for {mandrel.name}{owned}.",
        with_work(now.job, replace(work, bore=_made(work.bore, size, "reamed" if reamer else ""))),
    )


def _next_up(now: Situation) -> tuple[Mandrel, tuple[Metre, Metre]] | None:
    """The smallest mandrel whose window lies above this bore, within what may be opened."""
    bore, a = now.job.work.bore.size, now.tables.allowance
    walls = min(p.outside for p in on_bore(now.job.work.pieces, bore))
    most = min(bore * (1 + a("bore_up_most").best), walls - 2 * a("least_wall").best)
    windows = ((m, _window(m, now)) for m in now.shop.mandrels)
    fits = [(m, w) for m, w in windows if w[0] < w[1] and bore + LEAST_CUT < sum(w) / 2 < most]
    stays = now.best is not None and not now.answers("bore", Verdict.NO) and not _unfinished(now)
    taken = now.best.trial.mandrel if now.best and stays else None
    larger = [f for f in fits if taken is None or f[0].small_end > taken.small_end]
    return min(larger, key=lambda f: f[0].small_end, default=None)


def _unfinished(now: Situation) -> bool:
    """Drilled or cast: too rough to press on, and still to be made to size."""
    return now.tables.roughness_id(now.job.work.bore.made_by) in ("drilled", "as-cast")


def _window(mandrel: Mandrel, now: Situation) -> tuple[Metre, Metre]:
    """Smallest and largest bore (m) for this mandrel with the usual travel."""
    a = now.tables.allowance
    travel = now.best.trial.chosen.travel if now.best else a("press_travel").best
    reserves = a("tool_clearance").best, a("dog_clearance").best
    return window_of(mandrel, now.job.work.length, travel, *reserves)


def _round(now: Situation, size: Metre) -> Metre:
    step = STEP[now.job.units]
    return round(size / step) * step


def _named(reamer: OwnReamer, now: Situation) -> str:
    return reamer.name or f"the {now.show.length(reamer.size)} reamer"


def _made(bore: Bore, size: Metre, how: str) -> Bore:
    """The bore as it will be, known as well as it is now."""
    made = how or (bore.made_by if bore.made_by in FINISHED else "bored")
    known = None if bore.limits is not None else bore.uncertainty
    return Bore(size, known, bore.measured_with, made)


def _cut_last(now: Situation) -> Iterator[Variant]:
    work = now.job.work
    if work.keyway is not None:
        yield Variant(
            "keyway-last",
            "Cut the keyway last, after turning; on the mandrel the bore is then whole.",
            with_work(now.job, replace(work, keyway=None)),
        )
    if work.cross_hole is not None:
        yield Variant(
            "hole-last",
            "Drill the cross hole last, after turning.",
            with_work(now.job, replace(work, cross_hole=None)),
        )


def _chamfered(now: Situation) -> Iterator[Variant]:
    work, leg = now.job.work, CHAMFER[now.job.units]
    if any(work.chamfers.legs):
        return
    yield Variant(
        "chamfer-first",
        f"Chamfer both edges of the bore by {now.show.length(leg)} before it is pressed.",
        with_work(now.job, replace(work, chamfers=Chamfers(leg, leg))),
    )
