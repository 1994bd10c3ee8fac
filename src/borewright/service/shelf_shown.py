"""shelf show: what is on a shelf, and what a plan would take for the rest."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from borewright.answer.records import Assumption
from borewright.errors import RefusedInput
from borewright.holding.taper.mandrels import resolve
from borewright.job.records import MandrelNote, Shelf
from borewright.job.tools import OwnGauge
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.service import shelf_words as words
from borewright.service.shelf_read import ShelfFile, lathes_of, presses_of, shelf_object


def shelf_lines(file: ShelfFile, tables: Tables) -> list[str]:
    """The shelf as lines of text: each tool in one, then what is missing and what is then taken."""
    show, shelf = Show(file.units), file.shelf
    said = [f"Shelf {file.path}", *_mandrels(shelf, show), *_lathes(shelf, show)]
    for title, entries, tell in (
        ("Presses, the first is used", presses_of(shelf), words.press_words),
        ("Vice", (shelf.vice,) if shelf.vice else (), words.vice_words),
        ("Hammer", (shelf.hammer,) if shelf.hammer else (), words.hammer_words),
        ("Dogs", shelf.dogs, words.dog_words),
        ("Drills", shelf.drills, words.drill_words),
        ("Boring bar", (shelf.boring_bar,) if shelf.boring_bar else (), words.boring_bar_words),
        ("Reamers", shelf.reamers, words.reamer_words),
        ("Gauges", shelf.gauges, words.gauge_words),
        ("What else holds work", shelf.holding, words.holding_words),
        ("Not there", shelf.have_not, words.have_not_words),
    ):
        said += _section(title, entries, tell, show)
    missing = shelf_missing(shelf, tables, show)
    taken = [f"  {a.what}: {a.taken} ({a.source})" for a in missing]
    return [*said, "Not stated, and what a plan takes instead:" if taken else "", *taken]


def shelf_report(file: ShelfFile, tables: Tables) -> dict[str, Any]:
    """The same as one JSON object."""
    missing = shelf_missing(file.shelf, tables, Show(file.units))
    taken = [{"what": a.what, "taken": a.taken, "source": a.source} for a in missing]
    return {
        "file": file.path,
        "units": file.units,
        "shelf": shelf_object(file.shelf),
        "missing": taken,
    }


def shelf_missing(shelf: Shelf, tables: Tables, show: Show) -> tuple[Assumption, ...]:
    """What a plan would have to take, because the shelf does not say it.

    >>> from borewright.reference.library import tables
    >>> [a.what for a in shelf_missing(Shelf(stated=True), tables(), Show("inch"))]
    ['press', 'speeds of the lathe', 'swing over the cross slide', 'length between centers']
    """
    return (
        *_missing_mandrels(shelf, tables, show),
        *_missing_press(shelf, tables, show),
        *_missing_lathe(shelf, tables, show),
    )


def _missing_mandrels(shelf: Shelf, tables: Tables, show: Show) -> Iterator[Assumption]:
    if not shelf.stated:
        usual = "a usual set of plain mandrels, by sixteenths or by whole mm"
        yield Assumption("mandrels", usual, "machine-shop-work, ours")
    for note in shelf.mandrels:
        name = _name(note, show)
        try:
            yield from resolve(note, tables, name).assumed
        except RefusedInput as refusal:
            yield Assumption(name, f"nothing: it is refused, {refusal.found}", "ours")


def _missing_press(shelf: Shelf, tables: Tables, show: Show) -> Iterator[Assumption]:
    if shelf.press_force is not None:
        return
    if not shelf.press:
        force = tables.press("unknown").force
        band = show.band(force.low, force.high, "force")
        yield Assumption("press", f"a bench vice or a small arbor press, {band}", force.source)
        return
    try:
        force = tables.press(shelf.press).force
    except RefusedInput:
        return
    yield Assumption(
        f"force of {shelf.press}", show.band(force.low, force.high, "force"), force.source
    )


def _missing_lathe(shelf: Shelf, tables: Tables, show: Show) -> Iterator[Assumption]:
    machine = shelf.machine
    if not machine.speeds:
        wanted = "the speed wanted; take the next slower you have"
        yield Assumption("speeds of the lathe", wanted, "od1645")
    for what, stated, row in (
        ("swing over the cross slide", machine.swing_over_cross_slide, "usual_swing"),
        ("length between centers", machine.between_centers, "usual_centers"),
    ):
        if stated is None:
            usual = tables.allowance(row)
            yield Assumption(what, f"{show.length(usual.best)}, and ask", usual.source)


def _mandrels(shelf: Shelf, show: Show) -> list[str]:
    if not shelf.mandrels:
        return ["Mandrels: none" if shelf.stated else "Mandrels: not stated"]
    return _section("Mandrels", shelf.mandrels, words.mandrel_words, show)


def _lathes(shelf: Shelf, show: Show) -> list[str]:
    lathes = lathes_of(shelf)
    used = f", {shelf.machine.name or 'the first'} is used" if len(lathes) > 1 else ""
    return _section(f"Lathes{used}", lathes, words.lathe_words, show)


def _section(title: str, entries: Any, tell: Callable[[Any, Show], str], show: Show) -> list[str]:
    if not entries:
        return []
    return [f"{title}:", *(f"  {_titled(entry, tell(entry, show))}" for entry in entries)]


def _titled(entry: Any, said: str) -> str:
    name = entry.kind if isinstance(entry, OwnGauge) else getattr(entry, "name", "")
    return f"{name}: {said}" if name else said


def _name(note: MandrelNote, show: Show) -> str:
    return note.name or f"the {show.length(note.nominal).split(' (')[0]} mandrel"
