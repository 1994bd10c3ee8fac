"""The cuts of a plan set anew: rough and finish of one diameter together, all else by itself."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from borewright.answer.records import Cut
from borewright.cutting.directions import LOOSENS
from borewright.cutting.stock import deepest_pass, face_stock, least_rough, stock_of
from borewright.mechanics.turning import surface_speed
from borewright.planning.passes.holding import Holding
from borewright.planning.passes.least_time import Found, solved
from borewright.planning.passes.limits import Wanted
from borewright.planning.passes.problem import Problem, spring_pass
from borewright.planning.passes.setting import Run, Setting
from borewright.planning.weighing.warmed import Body
from borewright.quantities.si import Metre

BOLDER = 2.0
"""Where the lathe's power is stated, cuts may be so many times the usual depth and feed (ours)."""

LIGHTER = (1.0, 0.75, 0.5)
"""Finishing depths tried, as shares of the usual (ours)."""


@dataclass(frozen=True, slots=True)
class Set:
    """Cuts that one setting makes, in order, and how the setting was found; `found` None: as asked."""

    cuts: tuple[Cut, ...]
    found: Found | None = None


NARROWEST = 1.5e-3
"""Narrowest grooving tool (m; ours)."""


class Bench:
    """A hold, and what all runs on it share. `cool`: no run warms it past the heat question's yes."""

    def __init__(self, holding: Holding, body: Body, *, cool: bool = False) -> None:
        self.holding, self.body, self._cool = holding, body, cool
        job, tables = holding.job, holding.tables
        usual = tables.cut_defaults(job.work.material)
        machine = job.shelf.machine
        bold = BOLDER if machine.power is not None or machine.power_by_gear else 1.0
        self.deepest = min(usual.rough_depth * bold, deepest_pass(job, tables))
        self.feed = usual.rough_feed * bold
        self.groove_feed = usual.finish_feed
        self.least = usual.finish_depth / 2
        self.surface = tables.cutting_speed(job.work.material, usual.tool).best
        self.between = tables.allowance("between_passes").best
        finished = job.work.finished
        self.allowed = finished.tolerance or tables.allowance("usual_tolerance").best
        self.ridges = finished.form.roughness
        self.finish_feed = usual.finish_feed if self.ridges is None else self.feed

    def found(self, model: Cut, run: Run, wanted: Wanted) -> Found:
        """The fastest setting of one run."""
        wanted = replace(wanted, cool=self._cool)
        machine = self.holding.job.shelf.machine
        return solved(Problem(self.holding, self.body, model, run, wanted, machine))

    def finishing(self, model: Cut, run: Run) -> tuple[Found, bool]:
        """The setting of a last cut, and whether it wants a spring pass: only where bending blocks it."""
        plain = self.found(model, run, Wanted(allowed=self.allowed, ridges=self.ridges))
        again = spring_pass(plain.problem) if plain.blocked == "bend" else None
        if again is None:
            return plain, False
        sprung = solved(again)
        return (plain, False) if sprung.blocked else (sprung, True)

    def run(
        self,
        model: Cut,
        stock: Metre,
        begins: Metre,
        *,
        once: bool = False,
        first: Metre = 0.0,
        last: bool = False,
    ) -> Run:
        """Stock to come off where this cut was planned; `last`: what is left is the finish."""
        return Run(
            stock,
            model.length,
            begins,
            max(self.deepest, 1e-6),
            self.finish_feed if last else self.feed,
            self.surface,
            self.between,
            first,
            once,
            0.0 if last else self.least,
        )


def runs(bench: Bench) -> Iterator[Set]:
    """Every cut of the plan in its order, set anew."""
    cuts = bench.holding.cuts
    by_id = {c.id: c for c in cuts}
    outside = _outside(bench, by_id)
    steps = {k: v for n in range(1, len(cuts) + 1) for k, v in _step(bench, by_id, n).items()}
    for cut in cuts:
        if not cut.on_lathe or cut.id.startswith("cut-"):
            yield Set((cut,))
        elif cut.id in outside or cut.id in steps:
            yield (outside | steps)[cut.id]
        elif cut.id in ("skin", "rough", "finish"):
            continue  # the other cuts of the outside take its metal too
        else:
            yield _alone(bench, cut)


def _outside(bench: Bench, by_id: dict[str, Cut]) -> dict[str, Set]:
    """Rough and finish the outside, the finishing depth chosen with them."""
    job, tables = bench.holding.job, bench.holding.tables
    rough, last = by_id.get("rough"), by_id.get("finish")
    if rough is not None and "skin" in by_id:
        rough = replace(rough, diameter=by_id["skin"].diameter)
    stock = stock_of(job, tables)
    if last is None:
        return {}
    if stock is None or rough is None:
        return {c.id: _as_deep(bench, c) for c in (rough, last) if c is not None}
    first = least_rough(job, last.depth, tables) if job.work.blank == "casting" else 0.0
    return _pair(bench, rough, last, stock, rough.diameter, first)


def _step(bench: Bench, by_id: dict[str, Cut], number: int) -> dict[str, Set]:
    rough, last = (by_id.get(f"step-{number}-{which}") for which in ("rough", "finish"))
    if last is None or last.leaves is None:
        return {}
    if rough is None:
        return {last.id: _as_deep(bench, last)}
    stock = (rough.diameter - last.leaves) / 2
    return _pair(bench, rough, last, stock, rough.diameter, 0.0)


def _pair(
    bench: Bench, rough: Cut, last: Cut, stock: Metre, begins: Metre, first: Metre
) -> dict[str, Set]:
    """The finishing depth with which both take the least time, or come nearest to their limits."""
    tried = []
    for share in LIGHTER:
        leave = min(last.depth * share, stock / 2)
        ends = begins - 2 * (stock - leave)
        heavy = bench.found(
            rough, bench.run(rough, stock - leave, begins, first=first), Wanted(left=leave)
        )
        run = bench.run(last, leave, ends, once=True, last=True)
        tried.append((heavy, *bench.finishing(last, run)))
    heavy, light, spring = min(tried, key=lambda t: _cost(t[:2]))
    left = begins - 2 * sum(heavy.setting.depths)
    return {
        rough.id: Set(_cuts_of(rough, heavy.setting, begins), heavy),
        last.id: _finished(last, light, left, spring),
    }


def _finished(last: Cut, found: Found, begins: Metre, spring: bool) -> Set:
    cuts = _cuts_of(last, found.setting, begins)
    if spring:
        cuts = tuple(
            replace(c, name=f"{c.name}, then once more untouched (spring pass)", spring_pass=True)
            for c in cuts
        )
    return Set(cuts, found)


def _cost(pair: tuple[Found, Found]) -> tuple[int, float, float]:
    """Fewest blocked, nearest to the limit where blocked, then the least time."""
    blocked = [f for f in pair if f.blocked]
    short = min((f.share for f in blocked), default=1.0)
    return len(blocked), -short, sum(f.setting.seconds for f in pair)


def _alone(bench: Bench, cut: Cut) -> Set:
    """A face to length, or a groove; a face that only cleans up is one pass as planned."""
    job = bench.holding.job
    if cut.kind == "groove":
        run = replace(
            bench.run(cut, cut.depth * cut.passes, cut.diameter),
            deepest=cut.depth,
            usual_feed=bench.groove_feed,
            least=NARROWEST,
        )
        return _by_its_tool(_set(bench, cut, run, Wanted()), bench)
    stock = face_stock(job)
    if stock is None:
        return _as_deep(bench, cut)
    run = bench.run(cut, stock, cut.diameter)
    if cut.seat_effect == LOOSENS:
        run = replace(run, deepest=run.deepest / 2)
    return _set(bench, cut, run, Wanted(ridges=bench.ridges))


def _by_its_tool(one: Set, bench: Bench) -> Set:
    """A groove's cut, the width of the tool in its name."""
    show = bench.holding.show
    named = (replace(c, name=f"{c.name}, by a tool {show.length(c.depth)} wide") for c in one.cuts)
    return replace(one, cuts=tuple(named))


def _as_deep(bench: Bench, cut: Cut) -> Set:
    """One cut, its depth as planned: only feed and speed are chosen."""
    finish = cut.id.endswith("finish")
    last = finish or cut.kind == "face"
    run = bench.run(cut, cut.depth, cut.diameter, once=True, last=finish)
    if finish:
        found, spring = bench.finishing(cut, run)
        return _finished(cut, found, run.begins, spring)
    return _set(bench, cut, run, Wanted(ridges=bench.ridges if last else None))


def _set(bench: Bench, cut: Cut, run: Run, wanted: Wanted) -> Set:
    found = bench.found(cut, run, wanted)
    return Set(_cuts_of(cut, found.setting, run.begins), found)


def _cuts_of(model: Cut, setting: Setting, begins: Metre) -> tuple[Cut, ...]:
    """The cuts that a setting comes to: two where the first pass is deeper than the rest."""
    first, *rest = setting.depths
    if not rest or abs(first - rest[0]) < 1e-9:
        return (_cut(model, model.id, model.name, setting, begins, first, len(setting.depths)),)
    under = "first cut on the outside, under the skin"
    after = begins - 2 * first
    name = "rough the outside"
    return (
        _cut(model, "skin", under, setting, begins, first, 1),
        _cut(model, "rough", name, setting, after, rest[0], len(rest)),
    )


def _cut(
    model: Cut,
    cut_id: str,
    name: str,
    setting: Setting,
    begins: Metre,
    depth: Metre,
    passes: int,
) -> Cut:
    leaves = begins - 2 * depth * passes if model.kind == "turn" else model.leaves
    return replace(
        model,
        id=cut_id,
        name=name,
        diameter=begins,
        depth=depth,
        feed=setting.feed,
        passes=passes,
        spindle_speed=setting.spindle,
        cutting_speed=surface_speed(setting.spindle, begins),
        leaves=leaves,
    )
