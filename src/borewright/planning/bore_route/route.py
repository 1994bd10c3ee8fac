"""The whole route: what to aim at, the best way there, its chance, how it is measured."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from borewright.answer.bore_route import BoreAim, BoreAlternative, BoreRoute, BoreStep
from borewright.answer.figure import Caution, Figure, Input
from borewright.job.records import Job
from borewright.mechanics.bore_sizes import SizeBand, grade_chance, landing_chance
from borewright.planning.bore_route.kit import Kit, kit_of
from borewright.planning.bore_route.opening import start_band
from borewright.planning.bore_route.passes import half_band
from borewright.planning.bore_route.plug import Plug, plug_for
from borewright.planning.bore_route.steps import GRADE_OF, bore_steps, usual_width
from borewright.planning.bore_route.wanted import Wanted, wanted, windows_of
from borewright.planning.bore_route.ways import Way, ranked
from borewright.planning.bore_route.words import before_mounting, ream_or_bore, why_not
from borewright.planning.shop.shop import Shop
from borewright.planning.weighing.figures import figure, given
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

TAG = "boring-route"
"""What the table cautions calls drilling, boring and reaming."""


def bore_route(
    job: Job,
    shop: Shop,
    tables: Tables,
    tried: tuple[tuple[str, Metre, Metre], ...] = (),
    with_rim: bool = False,
) -> BoreRoute | None:
    """How the bore comes to its window; None for a finished bore that lies in it.

    `tried`: the windows (mandrel, smallest, largest bore, m) of the holds weighed, best first.
    `with_rim`: the rim is turned in the same chucking: then the bore is bored before it is reamed.
    """
    want = wanted(job, windows_of(job, shop, tables, tried), tables)
    if want is None:
        return None
    want = replace(want, with_rim=with_rim)
    kit = kit_of(job, want, tables)
    ways = ranked(want, kit, job, tables)
    if not ways:
        return None
    return _route(want, kit, ways, job, tables)


def _route(want: Wanted, kit: Kit, ways: tuple[Way, ...], job: Job, tables: Tables) -> BoreRoute:
    best, plug = ways[0], plug_for(want, kit, job, tables)
    gone = not best.bars
    steps = bore_steps(best, want, kit, job, tables) if gone else ()
    off_hand = _straight_off(best, want, tables) if gone else None
    chance = _with_trial(best, off_hand) if gone else None
    barred = best.trial is not None or any(p.process == "bore" for p in best.passes)
    bored = gone and barred and want.window is not None
    figures = (
        *((half_band(kit.gauge, tables),) if bored else ()),
        *((off_hand,) if off_hand is not None and off_hand is not chance else ()),
    )
    return BoreRoute(
        aims_at=BoreAim(want.low, want.high, want.set_by),
        starts_from=want.starts_from,
        way=best.name if gone else "",
        steps=steps,
        chance=chance,
        ream_or_bore=ream_or_bore(best, ways, want, job),
        go=plug.go,
        not_go=plug.not_go,
        plug_steps=plug.steps,
        gauge=kit.gauge.name,
        gauge_half_band=plug.half_band,
        ratio=plug.ratio,
        measure=plug.words,
        before_mounting=before_mounting(job, tables),
        alternatives=tuple(_alternative(w, best, want, job) for w in (ways[1:] if gone else ways)),
        figures=figures,
        cautions=_cautions(tables),
        assumed=kit.assumed,
        sources=_sources([*_figures(steps, plug), *figures, chance], want, tables),
    )


def _alternative(way: Way, best: Way, want: Wanted, job: Job) -> BoreAlternative:
    why = why_not(way, best, want, job)
    return BoreAlternative(way.name, way.owned, not way.bars, way.chance, why)


def _with_trial(best: Way, off_hand: Figure | None) -> Figure | None:
    """The chance with the reamer tried in scrap first, where it is; else straight off."""
    trial = best.trial
    if trial is None or off_hand is None or trial.chance <= off_hand.best:
        return off_hand
    inputs = (
        given("trial lands", trial.lands),
        given("after it", trial.after),
        given("otherwise", trial.otherwise),
    )
    low, high = off_hand.low or 0.0, off_hand.high or 1.0
    band = min(low, trial.chance), max(high, trial.chance)
    rule = "chance_with_trial"
    return figure(rule, trial.chance, "", "", rule, inputs, off_hand.sources, band)


def _straight_off(best: Way, want: Wanted, tables: Tables) -> Figure | None:
    """The chance of the last tool as it is known, its ends by the usual grades of its process."""
    if best.chance is None or want.window is None or best.last.band is None:
        return None
    low, high = want.window
    found = [
        grade_chance(low, high, best.last.size, width)
        for end in ("low", "high")
        if (width := usual_width(best.last, tables, end)) is not None
    ]
    inputs = (
        given("smallest", low, "m", "bore"),
        given("largest", high, "m", "bore"),
        *_ends(best.last.band),
        *_ends_before(best, want),
    )
    process = tables.process(GRADE_OF.get(best.last.process, "drilling"))
    sources = (*best.last.sources, *process.grade.sources)
    before = [_band_before(best, want)] if _ends_before(best, want) else []
    chance = landing_chance(low, high, [*before, best.last.band])
    band = min([*found, chance]), max([*found, chance])
    return figure("window_chance", chance, "", "", "window_chance", inputs, sources, band)


def _ends(band: SizeBand, before: str = "") -> tuple[Input, ...]:
    names = (f"{before}{end}" for end in ("low", "likely", "high"))
    return tuple(given(n, s, "m", "bore") for n, s in zip(names, band, strict=True))


def _ends_before(best: Way, want: Wanted) -> tuple[Input, ...]:
    """The hole that the reamer follows, whose largest might already be too large."""
    if best.last.process != "ream":
        return ()
    if len(best.passes) < 2 and not want.start:
        return ()
    return _ends(_band_before(best, want), "before, ")


def _band_before(best: Way, want: Wanted) -> SizeBand:
    before = best.passes[-2].band if len(best.passes) > 1 else None
    return start_band(want) if before is None else before


def _cautions(tables: Tables) -> tuple[Caution, ...]:
    found = (h for h in tables.cautions(TAG) if TAG in h.applies_to)
    return tuple(Caution(h.id, h.text, h.source) for h in found)


def _figures(steps: tuple[BoreStep, ...], plug: Plug) -> list[Figure | None]:
    of_steps = [f for s in steps for f in (s.size, s.stock, s.spindle)]
    return [*of_steps, plug.go, plug.not_go, *plug.steps, plug.half_band, plug.ratio]


def _sources(figures: Iterable[Figure | None], want: Wanted, tables: Tables) -> tuple[str, ...]:
    ids = set(want.limits.sources if want.limits else ())
    for found in (f for f in figures if f is not None):
        ids |= set(found.sources)
        if found.formula:
            ids.add(tables.formula(found.formula).source)
    ids.discard("stated")
    return tuple(f"{i}: {tables.source(i).citation}" for i in sorted(ids))
