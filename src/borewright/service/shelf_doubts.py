"""shelf check: what on a shelf can hardly be true."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from borewright.errors import RefusedInput, UnknownName
from borewright.holding.taper.mandrels import resolve
from borewright.holding.taper.measured_words import wear_words
from borewright.job.records import Machine, MandrelNote, Shelf
from borewright.job.tools import OwnGauge, OwnHolding, OwnPress
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.service.shelf_read import lathes_of, presses_of
from borewright.service.shelf_units import unit_doubts


@dataclass(frozen=True, slots=True)
class Doubt:
    """One doubt: of what, and why."""

    of: str
    what: str

    def __str__(self) -> str:
        return f"{self.of}: {self.what}."


def shelf_doubts(shelf: Shelf, tables: Tables, show: Show) -> tuple[Doubt, ...]:
    """Every doubt about a shelf, in its own order; none where nothing is doubted.

    >>> from borewright.reference.library import tables
    >>> two = (MandrelNote(0.0127, "old"), MandrelNote(0.019, "old"))
    >>> [str(d) for d in shelf_doubts(Shelf(two, stated=True), tables(), Show("inch"))]
    ["mandrel 'old': 2 mandrels of this name."]
    """
    return tuple(
        doubt
        for kind, entries in tools_of(shelf).items()
        for doubt in doubts_of(kind, entries, labels_of(kind, entries), tables, show)
    )


def doubts_of(
    kind: str, entries: Sequence[Any], labels: Sequence[str], tables: Tables, show: Show
) -> list[Doubt]:
    """Every doubt about the tools of one kind, each under its label."""
    sized = kind not in ("holding", "have_not")
    slips = unit_doubts(kind, entries, labels, tables, show) if sized else []
    return [
        *_same_names(kind, entries),
        *_each(kind, entries, labels, tables, show),
        *(Doubt(of, what) for of, what in slips),
    ]


def tools_of(shelf: Shelf) -> dict[str, Sequence[Any]]:
    """Everything on a shelf, by the name of one of it."""
    return {
        "mandrel": shelf.mandrels,
        "lathe": lathes_of(shelf),
        "press": presses_of(shelf),
        "vice": (shelf.vice,) if shelf.vice else (),
        "dog": shelf.dogs,
        "drill": shelf.drills,
        "reamer": shelf.reamers,
        "gauge": shelf.gauges,
        "holding": shelf.holding,
        "have_not": shelf.have_not,
    }


def labels_of(kind: str, entries: Sequence[Any]) -> list[str]:
    """What each is called in a report: its name, else its number."""
    names = [getattr(entry, "name", "") for entry in entries]
    return [f"{kind} {name!r}" if name else f"{kind} {n}" for n, name in enumerate(names, 1)]


def _same_names(kind: str, entries: Iterable[Any]) -> list[Doubt]:
    names = [getattr(entry, "name", "") for entry in entries]
    counted = Counter(" ".join(name.casefold().split()) for name in names if name)
    plural = {"press": "presses"}.get(kind, f"{kind}s")
    return [
        Doubt(f"{kind} {name!r}", f"{count} {plural} of this name")
        for name, count in counted.items()
        if count > 1
    ]


def _each(
    kind: str, entries: Sequence[Any], labels: Sequence[str], tables: Tables, show: Show
) -> list[Doubt]:
    checks: dict[str, Callable[[Any, Tables, Show], list[str]]] = {
        "mandrel": _mandrel,
        "lathe": _lathe,
        "press": _press,
        "gauge": _gauge,
        "holding": _holding,
        "have_not": _have_not,
    }
    check = checks.get(kind)
    if check is None:
        return []
    pairs = zip(labels, entries, strict=True)
    return [Doubt(label, what) for label, entry in pairs for what in check(entry, tables, show)]


def _mandrel(note: MandrelNote, tables: Tables, show: Show) -> list[str]:
    said = []
    if note.small_end and note.small_end > note.nominal:
        said.append(
            f"the small end, {show.bore(note.small_end)}, is above the size, {show.bore(note.nominal)}"
        )
    if note.large_end and note.large_end < note.nominal:
        said.append(
            f"the large end, {show.bore(note.large_end)}, is below the size, {show.bore(note.nominal)}"
        )
    try:
        mandrel = resolve(note, tables, note.name or "mandrel").mandrel
        said += [f"it is {worn}" for worn in wear_words(mandrel, show)]
    except RefusedInput as refusal:
        said.append(refusal.found)
    return said


def _lathe(machine: Machine, tables: Tables, show: Show) -> list[str]:
    said = []
    for what, values, shown in (
        ("speeds", machine.speeds, show.spindle),
        ("feeds", machine.feeds, show.feed),
    ):
        fall = next(((a, b) for a, b in pairwise(values) if b <= a), None)
        if fall is not None:
            said.append(f"its {what} do not rise: {shown(fall[1])} after {shown(fall[0])}")
    return said


def _press(press: OwnPress, tables: Tables, show: Show) -> list[str]:
    kind = press.kind or ("" if press.force is not None else press.name)
    if not kind:
        return []
    try:
        usual = tables.press(kind)
    except UnknownName as unknown:
        return [f"its kind is not in the table presses: {unknown.found}; {unknown.allowed}"]
    if press.force is None or usual.force.low <= press.force <= usual.force.high:
        return []
    band = show.band(usual.force.low, usual.force.high, "force")
    return [
        f"{show.force(press.force)} is not what a {usual.name} gives, {band} ({usual.force.source})"
    ]


def _gauge(gauge: OwnGauge, tables: Tables, show: Show) -> list[str]:
    try:
        usual = tables.gauge(gauge.kind)
    except UnknownName as unknown:
        return [f"its kind is not in the table gauges: {unknown.found}; {unknown.allowed}"]
    if gauge.uncertainty is None or gauge.uncertainty >= usual.half_band / 10:
        return []
    better = f"{show.small(gauge.uncertainty)} is far better than {show.small(usual.half_band)}"
    return [f"{better}, what a {usual.id} is usually worth ({usual.source})"]


def _holding(tool: OwnHolding, tables: Tables, show: Show) -> list[str]:
    return _have_not(tool.kind, tables, show)


def _have_not(name: str, tables: Tables, show: Show) -> list[str]:
    try:
        tables.holding_tool(name)
    except UnknownName as unknown:
        return [f"it is not in the table holding_tools: {unknown.found}; {unknown.allowed}"]
    return []
