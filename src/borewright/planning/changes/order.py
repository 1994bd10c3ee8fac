"""Another order of work: the outside roughed before mounting; for a casting, the sprue moved."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from borewright.answer.cut_words import dialled
from borewright.cutting.base import feed_for
from borewright.cutting.schedule import turning_is_planned
from borewright.cutting.stock import LATHE_READS, deepest_pass, finished_outside
from borewright.job.records import CutWish, Job, Piece
from borewright.planning.changes.variant import Situation, Variant, with_pieces, with_work
from borewright.planning.steps.first_hold import WHEN
from borewright.quantities.si import Metre


def order_variants(now: Situation) -> Iterator[Variant]:
    """Those that bear on what is the matter."""
    if now.troubled("slip", "crack", "heat", "rock", "bend"):
        yield from _roughed_first(now)


def sprue_variants(now: Situation) -> Iterator[Variant]:
    """For a casting still to be bored in which a flaw is seen or suspected: the next one."""
    work = now.job.work
    to_bore = now.tables.roughness_id(work.bore.made_by) in WHEN
    if work.blank == "casting" and to_bore and work.flaws in ("seen", "suspected"):
        yield Variant(
            "sprue-moved",
            "On the next casting move sprue and gates away from hub and rim and feed the hub so that it sets last; this one is "
            "as it is, and the next one is looked at no less.",
            with_work(
                now.job, replace(work, flaws="unknown", bore=replace(work.bore, made_by="bored"))
            ),
        )


def _roughed_first(now: Situation) -> Iterator[Variant]:
    """In the chucking that bores it, so that only the finishing cut is left for the mandrel."""
    job, show = now.job, now.show
    if any(w.kind in ("grind", "gear") for w in job.cuts):
        return
    leave = _finishing(now)
    roughed = (
        _planned(job, leave, now)
        if turning_is_planned(job, now.tables)
        else _wished(job, leave, now)
    )
    if roughed is None:
        return
    yield Variant(
        "rough-first",
        f"Rough the outside in the chuck, at best in the chucking that bores it, {_to(now, leave)}: only a finishing cut, "
        f"{show.depth(leave)} deep, is left for the mandrel.",
        roughed,
        rough_in_chuck=True,
    )


def _finishing(now: Situation) -> Metre:
    """The finishing cut (m) that is left."""
    usual = now.tables.cut_defaults(now.job.work.material).finish_depth
    return min(usual, deepest_pass(now.job, now.tables))


def _to(now: Situation, leave: Metre) -> str:
    """What to rough to, in words."""
    if finished_outside(now.job, now.tables) is None and not now.job.cuts:
        return f"to {now.show.depth(leave)} above your size, on the radius"
    return f"to {now.show.turned(dialled(_size(now, leave), now.show))}"


def _size(now: Situation, leave: Metre) -> Metre:
    """The outside (m) that roughing leaves."""
    finished = finished_outside(now.job, now.tables)
    taken = sum(w.depth or 0.0 for w in now.job.cuts if w.kind == "turn")
    return (
        (finished + 2 * leave) if finished else now.job.work.outside - 2 * max(0.0, taken - leave)
    )


def _planned(job: Job, leave: Metre, now: Situation) -> Job | None:
    """The cuts are the plan's own: the outside stands a finishing cut above its size."""
    work, finished = job.work, finished_outside(job, now.tables)
    if finished is None:
        done = replace(work.finished, outside=work.outside - 2 * leave)
        return with_work(job, replace(work, finished=done))
    if work.outside <= finished + 2 * leave + LATHE_READS:
        return None
    return _turned_down(job, finished + 2 * leave)


def _wished(job: Job, leave: Metre, now: Situation) -> Job | None:
    """The user's own turning cuts, no deeper and no coarser than a finishing cut."""
    deep = [w for w in job.cuts if w.kind == "turn" and (w.depth or 0.0) > leave + LATHE_READS]
    if not deep:
        return None
    usual = now.tables.cut_defaults(job.work.material).finish_feed
    feed = feed_for(usual, job.shelf.machine)
    return replace(
        _turned_down(job, _size(now, leave)),
        cuts=tuple(_light(w, leave, feed) if w in deep else w for w in job.cuts),
    )


def _light(wish: CutWish, depth: Metre, feed: Metre) -> CutWish:
    return replace(wish, depth=depth, feed=min(feed, wish.feed or feed))


def _turned_down(job: Job, size: Metre) -> Job:
    """The largest rings at this outside (m)."""
    now = job.work.outside

    def at(piece: Piece) -> Piece:
        return replace(piece, outside=size) if piece.outside >= now * (1 - 1e-9) else piece

    return with_pieces(job, tuple(at(p) for p in job.work.pieces))
