"""The cuts of a plan set anew: rough and finish of one diameter together, all else by itself."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import floor, inf

from borewright.answer.records import Cut
from borewright.cutting.directions import LOOSENS
from borewright.cutting.stock import (
    LATHE_READS,
    clean_up,
    face_stock,
    finished_outside,
    least_rough,
    runout_of,
    stock_of,
)
from borewright.planning.passes.bench import Bench, Set, cuts_of
from borewright.planning.passes.by_hand import crown, edge, groove
from borewright.planning.passes.least_time import Found
from borewright.planning.passes.limits import Wanted
from borewright.planning.passes.setting import Run
from borewright.quantities.si import Metre

LIGHTER = (1.0, 0.75, 0.5)
"""Finishing depths tried, as shares of the usual (ours)."""

OUTSIDE = ("skin", "rough", "finish")
"""Ids of the cuts over the whole outside."""


def runs(bench: Bench) -> Iterator[Set]:
    """Every cut of the plan in its order, set anew."""
    cuts = bench.holding.cuts
    by_id = {c.id: c for c in cuts}
    paired = _outside(bench, by_id)
    roughed = _roughed_to(bench, paired)
    for n in range(1, len(cuts) + 1):
        paired |= _step(bench, by_id, n, roughed)
    for cut in cuts:
        if not cut.on_lathe or cut.id.startswith("cut-"):
            yield Set((cut,))
        elif cut.id in paired:
            yield from paired[cut.id]
        elif cut.id in OUTSIDE:
            continue  # the other cuts of the outside take its metal too
        else:
            yield from _alone(bench, cut)


def _outside(bench: Bench, by_id: dict[str, Cut]) -> dict[str, tuple[Set, ...]]:
    """Rough and finish the outside, the finishing depth chosen with them.

    Of a casting that runs out there is half of its throw more to come off the high side, where the
    dial is set to zero, and the first pass is deeper by all of it: under the skin on the low side.
    """
    job, tables = bench.holding.job, bench.holding.tables
    rough, last = by_id.get("rough"), by_id.get("finish")
    if rough is not None and "skin" in by_id:
        rough = replace(rough, diameter=by_id["skin"].diameter)
    stock = stock_of(job, tables)
    if last is None:
        return {}
    if stock is None and runout_of(job):
        stock = clean_up(job, last.depth, tables)
    if stock is None or rough is None:
        return {c.id: (as_deep(bench, c),) for c in (rough, last) if c is not None}
    throw = runout_of(job)
    skin = least_rough(job, last.depth, tables) if job.work.blank == "casting" else 0.0
    return _pair(bench, rough, last, stock + throw / 2, throw + skin if skin else 0.0)


def _roughed_to(bench: Bench, paired: dict[str, tuple[Set, ...]]) -> Metre:
    """The outside (m) that is there when steps are roughed; endless where nobody roughed it."""
    size = finished_outside(bench.holding.job, bench.holding.tables)
    if size is None or "finish" not in paired or "rough" not in paired:
        return inf
    return size + 2 * sum(c.depth for s in paired["finish"] for c in s.cuts)


def _step(
    bench: Bench, by_id: dict[str, Cut], number: int, roughed: Metre
) -> dict[str, tuple[Set, ...]]:
    """A step, from the metal that is there: of the outside as roughed, or of a hub as cast."""
    rough, last = (by_id.get(f"step-{number}-{which}") for which in ("rough", "finish"))
    if last is None or last.leaves is None:
        return {}
    if rough is None:
        return {last.id: (as_deep(bench, last),)}
    as_cast = bench.holding.job.work.blank == "casting" and rough.diameter < roughed - LATHE_READS
    skin = least_rough(bench.holding.job, last.depth, bench.holding.tables) if as_cast else 0.0
    rough = replace(rough, diameter=min(rough.diameter, roughed))
    return _pair(bench, rough, last, (rough.diameter - last.leaves) / 2, skin)


def _pair(
    bench: Bench, rough: Cut, last: Cut, stock: Metre, skin: Metre
) -> dict[str, tuple[Set, ...]]:
    """The finishing depth with which both take the least time, or come nearest to their limits."""
    begins, tried = rough.diameter, []
    for share in LIGHTER:
        leave = min(last.depth * share, stock / 2)
        heavy = _roughed(bench, rough, stock - leave, skin, leave)
        left = begins - 2 * (stock - leave)
        found, spring = bench.finishing(last, bench.last(last, leave, left))
        tried.append((heavy, _finished(last, found, left, spring)))
        if found.refused is None and not _cost([*heavy, tried[-1][1]])[0]:
            break  # the last cut is as fast as it can be: a lighter one only adds to the first
    heavy, light = min(tried, key=lambda t: _cost([*t[0], t[1]]))
    return {rough.id: heavy, last.id: (light,)}


def _roughed(bench: Bench, rough: Cut, stock: Metre, skin: Metre, leave: Metre) -> tuple[Set, ...]:
    """The passes before the last: all alike; under a skin the first by itself, slow and deep enough.

    Where no setting gets under the skin in one, as many as it takes are, and that is said.
    """
    wanted = Wanted(left=leave)
    if skin <= 0:
        return (_set(bench, rough, bench.rough(rough, stock, rough.diameter), wanted),)
    first = min(skin, stock)
    under = [_under(bench, rough, stock, depth, wanted) for depth in _first_depths(stock, first)]
    best = min(under, key=_cost)
    blocked = next((s.found for s in best if s.found and s.found.blocked), None)
    if blocked is None:
        return best
    peeled = _under(bench, rough, stock, first, wanted, peel=True)
    if any(s.found is not None and s.found.blocked for s in peeled):
        return best
    return (replace(peeled[0], instead=blocked), *peeled[1:])


def _first_depths(stock: Metre, first: Metre) -> Iterator[Metre]:
    """Depths of the first pass: what the skin asks, and even shares of the stock that are deeper."""
    yield first
    for number in range(1, EVEN_SHARES + 1):
        if stock / number > first * (1 + 1e-9):
            yield stock / number


def _skin_cut(rough: Cut, *, peel: bool) -> Cut:
    """The cut of the skin beside this roughing: of the outside, or of a step."""
    where = "the outside" if rough.id == "rough" else "the step"
    said = f"first cut on {where}, under the skin"
    if peel:
        said = f"first cuts on {where}, until it cuts all round under the skin"
    return replace(rough, id=rough.id.replace("rough", "skin"), name=said)


EVEN_SHARES = 3
"""Even shares of the stock that are tried as a first pass (ours)."""


def _under(
    bench: Bench, rough: Cut, stock: Metre, first: Metre, wanted: Wanted, *, peel: bool = False
) -> tuple[Set, ...]:
    """What gets under the skin, and the rest of the stock. `peel`: in several passes, which cut air
    for part of a turn until they cut all round."""
    begins, rest = rough.diameter, stock - first
    over = rest <= bench.least * 1e-3
    model = rough if over else _skin_cut(rough, peel=peel)
    run = bench.under_skin(model, first, begins)
    if peel:
        run = replace(bench.rough(model, first, begins), surface=run.surface)
    skin = _set(bench, model, run, wanted)
    if over:
        return (skin,)
    after = begins - 2 * first
    left = replace(rough, diameter=after)
    return skin, _set(bench, left, bench.rough(left, rest, after), wanted)


def _finished(last: Cut, found: Found, begins: Metre, spring: bool) -> Set:
    cut = cuts_of(last, found.setting, begins)
    if spring:
        name = f"{cut.name}, then once more untouched (spring pass)"
        cut = replace(cut, name=name, spring_pass=True)
    return Set((cut,), found)


def _cost(sets: tuple[Set, ...] | list[Set]) -> tuple[int, float, float]:
    """Fewest blocked, nearest to the limit where blocked, then the least time."""
    found = [s.found for s in sets if s.found is not None]
    out = sum(s.instead is not None for s in sets)
    blocked = [f for f in found if f.blocked]
    short = min((f.share for f in blocked), default=1.0)
    return len(blocked) + out, -short, sum(f.setting.seconds for f in found)


def _alone(bench: Bench, cut: Cut) -> Iterator[Set]:
    """A face, a groove, a crown or edges."""
    if cut.kind == "groove":
        yield groove(bench, cut)
    elif cut.kind == "crown":
        yield crown(bench, cut)
    elif cut.kind == "edge":
        yield edge(bench, cut)
    else:
        yield _face(bench, cut)


def _face(bench: Bench, cut: Cut) -> Set:
    """A face to length; one that only cleans up is one pass as planned."""
    stock = face_stock(bench.holding.job)
    if stock is None:
        return _cleaned(bench, cut)
    run = replace(bench.rough(cut, stock, cut.diameter), usual_feed=bench.face_feed, coarser=False)
    if cut.seat_effect == LOOSENS:
        run = replace(run, deepest=run.deepest / 2)
    plain = _set(bench, cut, run, Wanted(ridges=bench.ridges))
    skin = _skin_of_a_face(bench, stock)
    if skin <= plain.cuts[0].depth * (1 + 1e-9):
        return plain
    fewest = max(1, floor(stock / skin + 1e-6))
    deeper = replace(run, least=skin, deepest=max(run.deepest, stock / fewest))
    under = _set(bench, cut, deeper, Wanted(ridges=bench.ridges))
    if under.found is None or not under.found.blocked:
        return under
    return replace(plain, instead=under.found)


def _cleaned(bench: Bench, cut: Cut) -> Set:
    """A face of no stated length in one pass: as planned, of a casting under its skin."""
    plain, skin = as_deep(bench, cut), _skin_of_a_face(bench, inf)
    if skin <= cut.depth * (1 + 1e-9):
        return plain
    # Deep enough for the skin is not lightly, whichever way it pushes.
    under = as_deep(bench, replace(cut, depth=skin, name=cut.name.replace(", lightly", "")))
    if under.found is None or not under.found.blocked:
        return under
    return replace(plain, instead=under.found)


def _skin_of_a_face(bench: Bench, stock: Metre) -> Metre:
    """How deep (m) the passes over a face must be: of a casting under its skin, as far as there is
    metal; else nothing."""
    job = bench.holding.job
    if job.work.blank != "casting":
        return 0.0
    return min(bench.holding.tables.allowance("skin_depth").low, stock)


def as_deep(bench: Bench, cut: Cut) -> Set:
    """One cut, its depth as planned: only feed and speed are chosen."""
    if cut.id.endswith("finish"):
        found, spring = bench.finishing(cut, bench.last(cut, cut.depth, cut.diameter))
        return _finished(cut, found, cut.diameter, spring)
    run = replace(bench.rough(cut, cut.depth, cut.diameter), once=True)
    if cut.kind == "face":
        return _set(
            bench,
            cut,
            replace(run, usual_feed=bench.face_feed, coarser=False),
            Wanted(ridges=bench.ridges),
        )
    if bench.holding.job.work.blank == "casting":
        run = replace(run, surface=bench.skin_speed * run.surface)
    return _set(bench, cut, run, Wanted())


def _set(bench: Bench, cut: Cut, run: Run, wanted: Wanted) -> Set:
    found = bench.found(cut, run, wanted)
    return Set((cuts_of(cut, found.setting, run.begins),), found)
