"""More hub to grip: a boss left on and turned off last, a longer hub, a larger one."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from borewright.job.records import Piece, Work
from borewright.job.web import MEETS, on_bore, web_of
from borewright.planning.changes.variant import Situation, Variant, with_pieces
from borewright.planning.questions.seat import wanted_length
from borewright.planning.taper.travel import BORE, PRESS, RULE_STEP
from borewright.quantities.si import Metre

BOSS = 2.0
"""Outside of a boss that is left on plain work, over its bore; no larger than the work (ours)."""

LARGER = 1.5
"""Wall of a larger hub over the wall it has (ours)."""

REACH = 0.7
"""A larger hub takes no more than this share of the web (ours)."""


def hub_variants(now: Situation) -> Iterator[Variant]:
    """A longer bore where more of it would grip, more wall where the bore holds the travel back.

    No longer one where the press gives out first: its push is then all the grip there is.
    """
    if now.best is None:
        return
    held_back = now.best.trial.chosen.limited_by == BORE
    yield from _longer(now)
    if now.troubled("crack") or (now.troubled("slip") and held_back):
        yield from _larger(now)


def _grips_along(now: Situation) -> Metre:
    """Length of bore (m) that the longest travel allowed would bear on, however long the bore."""
    assert now.best is not None
    trial = now.best.trial
    lost = float(trial.hold.facts.lost_rough[0])
    return max(0.0, trial.chosen.strongest.setting - lost / trial.mandrel.taper)


def _gain(now: Situation, length: Metre) -> float:
    """Grip with so long a bore (m) over that of the bore as it is, by plain rings.

    The squeeze falls from the leading face in a straight line, to nothing where the grip ends.
    """
    assert now.best is not None
    along = _grips_along(now)

    def grip(bears: Metre) -> float:
        filled = min(bears, along)
        return along * filled - filled**2 / 2

    here = grip(now.best.trial.hold.bears)
    return grip(length) / here if here > 0 else 1.0


def _longer(now: Situation) -> Iterator[Variant]:
    """By a boss that comes off again; where the part has a hub, also for good."""
    job, show, more = now.job, now.show, _more_length(now)
    work, end = job.work, _ring_at_b(job.work)
    if more <= 0 or end is None:
        return
    outside = min(end.outside, BOSS * work.bore.size)
    boss = Piece(work.length, work.length + more, outside)
    size = f"{show.rule(more)} long, {show.length(outside)} outside and bored through"
    yield Variant(
        "boss-left-on",
        f"Leave a boss{' on the hub' if len(work.pieces) > 1 else ''} at face B, {size}, and turn it off last in the second chucking.",
        with_pieces(job, (*work.pieces, boss)),
    )
    if len(work.pieces) > 1:
        longer = tuple(replace(p, end=p.end + more) if p == end else p for p in work.pieces)
        whole = end.end + more - end.start
        yield Variant(
            "longer-hub",
            f"Make the hub {show.rule(more)} longer at face B: {show.length(whole)} in all.",
            with_pieces(job, longer),
        )


def _ring_at_b(work: Work) -> Piece | None:
    """The ring at the bore that ends at face B; None where the bore is relieved there."""
    rings = on_bore(work.pieces, work.bore.size)
    return next((p for p in rings if abs(p.end - work.length) <= MEETS), None)


def _more_length(now: Situation) -> Metre:
    """How much longer (m) the bore is to be, in steps of a rule within the stated limit; 0 for not."""
    step = 2 * RULE_STEP[now.job.units]
    most = now.tables.allowance("hub_longer_most").best * now.job.work.bore.size
    steps = [n * step for n in range(1, int(most / step + 1e-6) + 1)]
    return max(_for_the_seat(now, steps), _for_the_grip(now, steps))


def _for_the_seat(now: Situation, steps: list[Metre]) -> Metre:
    """The least that gives the length wanted; all there is where none of them does."""
    assert now.best is not None
    trial = now.best.trial
    missing = wanted_length(trial) - trial.hold.bears
    if not now.troubled("seat") or missing <= 0:
        return 0.0
    return next((x for x in steps if x >= missing), max(steps, default=0.0))


def _for_the_grip(now: Situation, steps: list[Metre]) -> Metre:
    """The least that gives the grip wanted, else as much as still helps; 0 where it is not worth it."""
    assert now.best is not None
    stalls = now.best.trial.chosen.limited_by == PRESS
    if stalls or not now.troubled("slip", "crack", "rock"):
        return 0.0
    bears = now.best.trial.hold.bears
    wanted = 1 / now.share if 0 < now.share < 1 else math.inf
    worth = now.tables.allowance("change_worth").best
    helps = [x for x in steps if _gain(now, bears + x) >= worth]
    fullest = max((_gain(now, bears + x) for x in helps), default=1.0)
    return next((x for x in helps if _gain(now, bears + x) >= min(wanted, fullest)), 0.0)


def _larger(now: Situation) -> Iterator[Variant]:
    """More wall round the bore, where web or spokes leave room for it."""
    work, show, web = now.job.work, now.show, web_of(now.job.work)
    if web is None:
        return
    bore = work.bore.size
    wished = bore + LARGER * (web.inner - bore)
    larger = min(wished, web.inner + REACH * (web.outer - web.inner))
    step = RULE_STEP[now.job.units]
    larger = int(larger / step + 1e-6) * step
    if larger <= web.inner + step / 2:
        return
    pieces = tuple(_widened(p, web.inner, larger, bore) for p in work.pieces)
    yield Variant(
        "larger-hub",
        f"Make the hub larger, {show.length(larger)} outside where it is {show.length(web.inner)}.",
        with_pieces(now.job, pieces),
    )


def _widened(piece: Piece, was: Metre, larger: Metre, bore: Metre) -> Piece:
    """The hub's rings get the larger outside, and what stands on them begins there."""
    if abs((piece.inside or bore) - was) <= MEETS:
        return replace(piece, inside=larger)
    at_bore = (piece.inside or bore) <= bore + MEETS
    return (
        replace(piece, outside=larger) if at_bore and abs(piece.outside - was) <= MEETS else piece
    )
