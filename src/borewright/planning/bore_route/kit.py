"""The drills, reamers, bar and gauge that a route may use, and what was taken for granted."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from borewright.answer.figure import Assumption
from borewright.errors import UnknownName
from borewright.job.records import BoreLimits, Job
from borewright.job.tools import OwnDrill, OwnReamer
from borewright.mechanics.bore_sizes import SizeBand, band_of_half, widened
from borewright.planning.bore_route.wanted import Wanted
from borewright.quantities.inch_fractions import mixed_text, sixty_fourth
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

INCH: Final = 0.0254
LARGEST_ASSUMED: Final = {"inch": INCH, "mm": 0.025}
"""Sets taken for granted run this far (m); ours."""
THICKEST: Final = 0.025
"""A bore (m) beyond which a small lathe's bar grows no thicker; ours."""
ADJUSTS: Final = ("expan", "adjust")
"""In the name of a reamer that is set by its owner."""
SAME: Final = 1e-6
"""Two sizes this close (m) are one."""
NOT_A_GAUGE: Final = ("unknown", "ruler", "reamer-size", "mandrel-touch", "caliper")
"""Rows of the table gauges that no bore is bored to."""
TURNED_PLUG: Final = "stepped-plug"
USUAL_GAUGE: Final = "telescoping-gauge"


@dataclass(frozen=True, slots=True)
class Drill:
    """A drill and the size (m) it is named for."""

    name: str
    size: Metre
    owned: str


@dataclass(frozen=True, slots=True)
class Reamer:
    """A reamer: its marked size, the band (m) it cuts, whether it is worked by hand."""

    name: str
    size: Metre
    cuts: SizeBand
    owned: str
    by_hand: bool
    told: bool
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Bar:
    """The boring bar: the smallest bore it goes into and how deep it reaches (m)."""

    smallest: Metre
    reach: Metre
    owned: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BoreGauge:
    """What the bore is judged by, and half its band (m)."""

    name: str
    half_band: Metre
    owned: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Kit:
    """Everything that a route may use."""

    drills: tuple[Drill, ...]
    to_get: tuple[Drill, ...]
    reamers: tuple[Reamer, ...]
    bar: Bar
    gauge: BoreGauge
    assumed: tuple[Assumption, ...]


def kit_of(job: Job, want: Wanted, tables: Tables) -> Kit:
    """The shop's own tools; usual ones where the shelf does not speak of that kind."""
    drills, said_drills = _drills(job, tables)
    reamers, said_reamers = _reamers(job, want, tables)
    bar, said_bar = _bar(job, want, tables)
    gauge, said_gauge = _gauge(job, want, tables)
    said = (*said_drills, *said_bar, *said_reamers, *said_gauge)
    return Kit(drills, _to_get(drills, tables), reamers, bar, gauge, said)


def _drills(job: Job, tables: Tables) -> tuple[tuple[Drill, ...], tuple[Assumption, ...]]:
    if job.shelf.drills:
        own = (d for drill in job.shelf.drills for d in _of_drill(drill, job, tables))
        return _by_size(own), ()
    by = "by 0.5 mm" if job.units == "mm" else "by 64ths"
    most, show = LARGEST_ASSUMED[job.units], Show(job.units)
    sets = [OwnDrill(by=by, largest=most)]
    said = f"a set {by}, to {show.length(most)}"
    if job.units == "mm":
        sets.append(OwnDrill(by="by 0.1 mm"))
        said += f", and one by 0.1 mm, to {show.length(tables.drill_set('by 0.1 mm').largest)}"
    usual = (d for one in sets for d in _of_set(one, "unknown", tables))
    return _by_size(usual), (Assumption("drills", said, tables.drill_set(by).source),)


def _to_get(drills: tuple[Drill, ...], tables: Tables) -> tuple[Drill, ...]:
    """What is sold and not among these."""
    have = {round(d.size, 7) for d in drills}
    sold = (Drill(f"a {t.id} drill", t.size, "no") for t in tables.drills())
    return tuple(d for d in sold if round(d.size, 7) not in have)


def _by_size(drills: Iterator[Drill]) -> tuple[Drill, ...]:
    return tuple(sorted(drills, key=lambda d: (d.size, d.name)))


def _of_drill(drill: OwnDrill, job: Job, tables: Tables) -> Iterator[Drill]:
    if drill.size is None:
        yield from _of_set(drill, "yes", tables)
    else:
        name = drill.name or f"the {_size_name(drill.size, Show(job.units))} drill"
        yield Drill(name, drill.size, "yes")


def _of_set(drill: OwnDrill, owned: str, tables: Tables) -> Iterator[Drill]:
    usual = tables.drill_set(drill.by)
    low, high = drill.smallest or usual.smallest, drill.largest or usual.largest
    if usual.step == 0:
        for tool in tables.drills(usual.series.removesuffix("s")):
            if low - SAME <= tool.size <= high + SAME:
                yield Drill(f"the {tool.id} drill", tool.size, owned)
        return
    show = Show("mm" if usual.series == "metric" else "inch")
    first, last = math.ceil((low - SAME) / usual.step), math.floor((high + SAME) / usual.step)
    for k in range(first, last + 1):
        size = k * usual.step
        yield Drill(f"the {_size_name(size, show)} drill", size, owned)


def _size_name(size: Metre, show: Show) -> str:
    """A size as a tool is called: 39/64 in, 14.5 mm."""
    fraction = sixty_fourth(size / INCH)
    if fraction is not None:
        return f"{mixed_text(fraction)} in"
    if show.units == "mm" or abs(size * 1e4 - round(size * 1e4)) < 1e-6:
        return f"{size * 1e3:.6g} mm"
    return show.bore(size).split(" (")[0]


def _reamers(
    job: Job, want: Wanted, tables: Tables
) -> tuple[tuple[Reamer, ...], tuple[Assumption, ...]]:
    own = tuple(_of_reamer(r, job, want, tables) for r in job.shelf.reamers)
    usual = _usual_reamer(job, want, own, tables)
    if usual is None:
        return own, ()
    if own:
        return (*own, usual), ()
    said = f"{usual.name} is there; how far over it cuts is not known"
    return (usual,), (Assumption("reamer", said, "ours"),)


def _of_reamer(reamer: OwnReamer, job: Job, want: Wanted, tables: Tables) -> Reamer:
    name = reamer.name or f"the {_size_name(reamer.size, Show(job.units))} reamer"
    words = reamer.name.casefold()
    by_hand = "hand" in words
    if reamer.cuts is not None:
        repeats = tables.reaming("reamer_repeats")
        band = band_of_half(reamer.size + reamer.cuts, repeats.best)
        return Reamer(name, reamer.size, band, "yes", by_hand, True, (repeats.source,))
    if any(word in words for word in ADJUSTS) and abs(want.middle - reamer.size) < INCH / 64:
        return _set_to(want.middle, name, job, tables)
    limits = want.limits
    if limits is not None and limits.code and limits.code.casefold() in words:
        return _made_for(limits, name, "yes", tables)
    return _as_marked(name, reamer.size, "yes", by_hand, tables)


def _as_marked(name: str, size: Metre, owned: str, by_hand: bool, tables: Tables) -> Reamer:
    over = tables.reaming("hand_reamer_over" if by_hand else "machine_reamer_over")
    band = (size + over.low, size + over.best, size + over.high)
    return Reamer(name, size, band, owned, by_hand, False, over.sources)


def _set_to(middle: Metre, name: str, job: Job, tables: Tables) -> Reamer:
    """An expanding reamer, set in scrap so that it cuts the middle of what is aimed at."""
    over = tables.reaming("expanding_reamer_over")
    size = middle - over.best
    band = (size + over.low, middle, size + over.high)
    set_so = f"{name}, set by trial in scrap to {Show(job.units).bore(size)}"
    return Reamer(set_so, size, band, "yes", True, True, over.sources)


def _made_for(limits: BoreLimits, name: str, owned: str, tables: Tables) -> Reamer:
    """A reamer made for this class: its own size by the usual rule, and a share of the band over."""
    width = limits.high - limits.low
    own = tables.reamer_for(limits.high, width)
    over = tables.reaming("class_reamer_over")
    middle, half = (own.smallest + own.largest) / 2, (own.largest - own.smallest) / 2
    cuts = (middle + over.low * width, middle + over.best * width, middle + over.high * width)
    band = widened(cuts, half, half)
    sources = (*own.sources, *over.sources)
    return Reamer(name, limits.nominal or limits.middle, band, owned, False, False, sources)


def _usual_reamer(job: Job, want: Wanted, own: tuple[Reamer, ...], tables: Tables) -> Reamer | None:
    """The reamer usually sold for this bore; not of the shelf where that lists others."""
    if want.nominal is None:
        return None
    owned, limits = "no" if own else "unknown", want.limits
    off = SAME if limits is None or limits.code else limits.half_band + SAME
    near = [r for r in tables.reamers() if abs(r.size - want.nominal) < off]
    sold = min(near, key=lambda r: r.size, default=None)
    if sold is None:
        return None
    same = [r for r in own if abs(r.size - sold.size) < SAME and not r.by_hand]
    if any(not r.told for r in same):
        return None
    which = "another" if same else "a"
    if limits is not None and limits.code.startswith("H") and sold.series == "metric":
        return _made_for(
            limits, f"{which} {sold.as_named} {limits.code} machine reamer", owned, tables
        )
    return _as_marked(f"{which} {sold.as_named} machine reamer", sold.size, owned, False, tables)


def _bar(job: Job, want: Wanted, tables: Tables) -> tuple[Bar, tuple[Assumption, ...]]:
    own = job.shelf.boring_bar
    smallest, reach = tables.boring("bar_smallest"), tables.boring("bar_reach")
    bore = min(max(want.middle, smallest.best), THICKEST)
    if own is not None:
        deep = math.inf if own.reach is None else own.reach
        return Bar(own.smallest_bore or smallest.best, deep, "yes", ("stated",)), ()
    bar = Bar(smallest.best, reach.best * bore, "unknown", (smallest.source, reach.source))
    show = Show(job.units)
    said = f"a bar that goes into {show.length(bar.smallest)} and reaches {show.length(bar.reach)}"
    return bar, (Assumption("boring bar", said, smallest.source),)


def _gauge(job: Job, want: Wanted, tables: Tables) -> tuple[BoreGauge, tuple[Assumption, ...]]:
    """The one that knows the bore closest: of the shelf, of the job, or a plug turned for it."""
    plug = tables.gauge(TURNED_PLUG)
    turned = BoreGauge("a stepped plug turned for it", plug.half_band, "make", (plug.source,))
    found = [*_own_gauges(job, want.middle, tables), turned]
    if want.low is None:
        return _for_any_size(found[:-1], tables)
    best = min(found, key=lambda g: (g.half_band, g.owned == "make"))
    if best is not turned:
        return best, ()
    known = "a micrometer to size its steps"
    return best, (Assumption("micrometer", known, "ours"),)


def _for_any_size(own: list[BoreGauge], tables: Tables) -> tuple[BoreGauge, tuple[Assumption, ...]]:
    """A gauge that reads: a plug can only be made for a size that is known."""
    if own:
        return min(own, key=lambda g: g.half_band), ()
    usual = tables.gauge(USUAL_GAUGE)
    gauge = BoreGauge("a telescoping gauge", usual.half_band, "unknown", (usual.source,))
    said = "a telescoping gauge, and a micrometer over it"
    return gauge, (Assumption("gauge for the bore", said, "ours"),)


def _own_gauges(job: Job, size: Metre, tables: Tables) -> Iterator[BoreGauge]:
    for own in job.shelf.gauges:
        if not (own.smallest or 0.0) <= size <= (own.largest or math.inf):
            continue
        try:
            usual = tables.gauge(own.kind)
        except UnknownName:
            continue
        half = usual.half_band if own.uncertainty is None else own.uncertainty
        sources = (usual.source,) if own.uncertainty is None else ("stated",)
        if usual.id not in NOT_A_GAUGE:
            yield BoreGauge(f"the {own.kind}", half, "yes", sources)
    stated = tables.gauge(job.work.bore.measured_with)
    if stated.id not in NOT_A_GAUGE:
        name = f"the {job.work.bore.measured_with}"
        yield BoreGauge(name, stated.half_band, "yes", (stated.source,))
