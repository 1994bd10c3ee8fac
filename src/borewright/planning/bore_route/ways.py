"""Every way to the window with these tools, each with its chance, and the order they rank in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from borewright.job.records import Job
from borewright.mechanics.bore_sizes import (
    SizeBand,
    landing_chance,
    next_hole_half_band,
    tried_first,
)
from borewright.planning.bore_route.kit import Drill, Kit, Reamer
from borewright.planning.bore_route.opening import hole_after, opened, start_band, up_to
from borewright.planning.bore_route.passes import (
    Pass,
    bored_before_reaming,
    bored_clean,
    bored_to_size,
    drilled,
    reamed,
    reamer_of,
)
from borewright.planning.bore_route.wanted import Wanted
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

ALIKE: Final = 0.05
"""Chances within this share of one another are alike, and then a reamer gives the size rather
than the hand, and the quicker way is taken (ours)."""

WORTH: Final = 0.005
"""A reamer with less chance than this is not of this bore (ours)."""

WORTH_A_TRIAL: Final = 0.5
"""A reamer whose scrap lands less often than this is not worth the trial (ours)."""


@dataclass(frozen=True, slots=True)
class Trial:
    """A reamer of unknown cut tried in scrap: share that lands, chance then, and else."""

    lands: float
    after: float
    otherwise: float

    @property
    def chance(self) -> float:
        """The chance of the bore, whichever way the trial goes."""
        return self.lands * self.after + (1 - self.lands) * self.otherwise


@dataclass(frozen=True, slots=True)
class Way:
    """A way to the bore: its passes and its chance; none of either where it cannot be gone.

    `trues`: the bar brings the hole back to the axis. `bars`: why the way is not for this work.
    """

    name: str
    passes: tuple[Pass, ...]
    chance: float | None
    trues: bool
    bars: str = ""
    trial: Trial | None = None

    @property
    def owned(self) -> str:
        """no, where a tool is not on a shelf that lists such tools; else unknown or yes."""
        said = {p.owned for p in self.passes if p.process not in ("spot", "pilot")}
        return next((word for word in ("no", "unknown") if word in said), "yes")

    @property
    def last(self) -> Pass:
        """The tool that leaves the size."""
        return self.passes[-1]


def ranked(want: Wanted, kit: Kit, job: Job, tables: Tables) -> tuple[Way, ...]:
    """Every way, best first; those that cannot be gone last."""
    if want.window is None:
        found = list(_any_size(want, kit, job, tables))
    else:
        bored = _boring(*want.window, want, kit, job, tables)
        found = [
            *(_tried(way, bored, want, kit, tables) for way in _reaming(want, kit, job, tables)),
            bored,
            *_drilling(want, kit, job, tables),
        ]
    return tuple(sorted(found, key=lambda w: _order(w, want, job)))


def _order(way: Way, want: Wanted, job: Job) -> tuple[int | float | str, ...]:
    """Can it be gone; are the tools there; true where it must be; chance; a size from a tool; quick."""
    chance = way.chance or 0.0
    must_be_true = (want.with_rim or job.work.blank == "casting") and not way.trues
    return (
        bool(way.bars),
        want.with_rim and must_be_true,
        way.owned == "no",
        must_be_true,
        -round(chance / ALIKE),
        bool(way.passes) and way.last.process != "ream",
        len(way.passes),
        -chance,
        way.name,
    )


def _chance(want: Wanted, bands: Sequence[SizeBand]) -> float:
    return 0.0 if want.window is None else landing_chance(*want.window, bands)


def _tried(way: Way, bored: Way, want: Wanted, kit: Kit, tables: Tables) -> Way:
    """The way with its reamer tried in scrap first, where that is not known and a bar can step in."""
    last = reamer_of(way.last, kit)
    if last is None or last.told or not way.chance or not bored.chance or want.window is None:
        return way
    repeats = tables.reaming("reamer_repeats").best
    sure = next_hole_half_band(kit.gauge.half_band, repeats)
    lands, after = tried_first(*want.window, last.cuts, sure, bored.chance)
    trial = Trial(lands, after, bored.chance)
    if trial.chance <= way.chance or lands < WORTH_A_TRIAL:
        return way
    return replace(way, chance=trial.chance, trial=trial)


def _reaming(want: Wanted, kit: Kit, job: Job, tables: Tables) -> Iterator[Way]:
    for reamer in kit.reamers:
        if _chance(want, [reamer.cuts]) < WORTH:
            continue
        direct = _drill_and_ream(reamer, want, kit, job, tables)
        if direct is not None:
            yield direct
        bored = _bore_and_ream(reamer, want, kit, job, tables)
        if bored is not None:
            yield bored
        if direct is None and bored is None:
            said = f"nothing here leaves a hole that {reamer.name} can follow"
            yield Way(f"ream with {reamer.name}", (reamed(reamer),), None, False, said)


def _stock_ends(reamer: Reamer, want: Wanted, tables: Tables) -> tuple[Metre, Metre, Metre]:
    """Least, best and most stock (m) for this reamer, counted to the size it is marked."""
    hand, machine = tables.reaming("hand_stock_to_leave"), tables.reaming("stock_to_leave")
    if reamer.by_hand:
        return hand.low, hand.best, hand.high
    least = hand.low if want.finished else machine.low
    return least, machine.best, tables.reaming("most_stock").high


def _drill_and_ream(reamer: Reamer, want: Wanted, kit: Kit, job: Job, tables: Tables) -> Way | None:
    """The drill that leaves the reamer its stock, or the hole that is there; None where none does."""
    least, best, most = _stock_ends(reamer, want, tables)
    last = reamed(reamer)
    if want.start and least <= reamer.size - want.start <= most and not want.cored:
        chance = _chance(want, [start_band(want), reamer.cuts])
        return Way(f"ream with {reamer.name}", (last,), chance, False)
    if want.cored or want.finished:
        return None

    def serving(drills: tuple[Drill, ...]) -> list[Pass]:
        cuts = (drilled(d, tables) for d in drills if d.size > want.start)
        return [c for c in cuts if least <= reamer.size - c.size <= most]

    fits = serving(kit.drills) or serving(kit.to_get)
    if not fits:
        return None

    def fit(cut: Pass) -> tuple[float, float]:
        chance = _chance(want, (*cut.bands, reamer.cuts))
        return round(chance, 3), -abs(last.size - cut.size - best)

    cut = max(fits, key=fit)
    drill = next(d for d in (*kit.drills, *kit.to_get) if cut.is_by(d))
    before = opened(drill, want, kit, job, tables)
    chance = _chance(want, (*cut.bands, reamer.cuts))
    return Way(f"drill, then ream with {reamer.name}", (*before, last), chance, False)


def _bore_and_ream(reamer: Reamer, want: Wanted, kit: Kit, job: Job, tables: Tables) -> Way | None:
    """The bar trues the hole and leaves the reamer its best stock."""
    _, stock, _ = _stock_ends(reamer, want, tables)
    bar = bored_before_reaming(reamer, stock, kit.bar, kit.gauge, tables)
    before = _before_bar(bar.size, want, kit, job, tables)
    if before is None or _too_deep(job, kit):
        return None
    chance = _chance(want, (*bar.bands, reamer.cuts))
    name = f"bore, then ream with {reamer.name}"
    return Way(name, (*before, bar, reamed(reamer)), chance, True)


def _boring(low: Metre, high: Metre, want: Wanted, kit: Kit, job: Job, tables: Tables) -> Way:
    """The bar to size, its last pass set by a measurement."""
    last = bored_to_size(low, high, kit.bar, kit.gauge, tables)
    before = _before_bar(last.size, want, kit, job, tables)
    bars = _bar_words(before, last.size, want, job, kit)
    if before is None or bars:
        return Way("bore to size", (last,), None, True, bars)
    return Way("bore to size", (*before, last), _chance(want, last.bands), True)


def _before_bar(
    aim: Metre, want: Wanted, kit: Kit, job: Job, tables: Tables
) -> tuple[Pass, ...] | None:
    """The passes to a hole that the bar goes into and has its stock from; None where none is."""
    least = tables.reaming("stock_to_leave").low
    if want.start and aim - want.start < least:
        return None
    found = up_to(_room_under(aim, tables), want, kit, job, tables)
    if found is None and want.start:
        found = ()
    if found is None:
        return None
    hole = hole_after(found, want)
    unknown = want.cored and not want.start
    return found if unknown or hole >= kit.bar.smallest * (1 - 1e-9) else None


def _room_under(aim: Metre, tables: Tables) -> Metre:
    return aim - tables.boring("true_up").best


def _too_deep(job: Job, kit: Kit) -> bool:
    return job.work.length > kit.bar.reach * (1 + 1e-9)


def _bar_words(
    before: tuple[Pass, ...] | None, aim: Metre, want: Wanted, job: Job, kit: Kit
) -> str:
    if _too_deep(job, kit):
        return "the bore is deeper than the bar reaches"
    if before is not None:
        return ""
    if want.start and aim > want.start >= kit.bar.smallest:
        return "there is too little metal for a bar to cut: it rubs and springs"
    return "the bar does not go into the hole that the drills leave"


def _drilling(want: Wanted, kit: Kit, job: Job, tables: Tables) -> Iterator[Way]:
    """A drill alone, so that it is said why not."""
    cuts = [drilled(d, tables) for d in kit.drills if d.size > want.start]
    if want.cored or not cuts:
        return
    chances = [(_chance(want, c.bands), c) for c in cuts]
    chance, cut = max(chances, key=lambda found: (found[0], -abs(found[1].size - want.middle)))
    said = "a drilled hole is rough, seldom round and wanders: not a bore to hold by"
    yield Way(f"drill with {cut.tool} and leave it", (cut,), chance, False, said)


def _any_size(want: Wanted, kit: Kit, job: Job, tables: Tables) -> Iterator[Way]:
    """No size to hit: a bar until it is clean, or else a drill and the reamer that follows it."""
    aim = want.start or want.nominal or 0.0
    before = up_to(aim, want, kit, job, tables) if not want.start else ()
    clean = bored_clean(want.start or hole_after(before or (), want), kit.bar, tables)
    enters = want.cored or clean.size - kit.bar.smallest > 0
    if before is not None and enters and not _too_deep(job, kit):
        yield Way("bore until it is clean", (*before, clean), None, True)
    for reamer in kit.reamers:
        way = _drill_and_ream(reamer, want, kit, job, tables)
        if way is not None and reamer.cuts[1] > want.start:
            yield Way(way.name, way.passes, None, False)
