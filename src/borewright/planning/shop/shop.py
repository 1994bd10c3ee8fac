"""What the shop owns, or is taken to own when it did not say."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from borewright.answer.records import Assumption
from borewright.holding.taper.mandrels import Resolved, resolve
from borewright.job.records import Job, Mandrel, MandrelNote
from borewright.planning.shop.names import untold
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.reference.ranges import Range
from borewright.reference.shop import Press

SET_STEP = {"inch": 0.0254 / 16, "mm": 0.001}
"""Sets go by sixteenths (Machine Shop Work, "Mandrels"); metric ones vary, by whole mm here (ours)."""

HAMMER = "soft-hammer"
"""The press of the reference table that works by blows."""

SMALLEST, LARGEST = 0.0063, 0.0382
"""Sizes (m) that the table of plain mandrels speaks of: 1/4 to 1 1/2 in."""


@dataclass(frozen=True, slots=True)
class Shop:
    """Mandrels to try, what presses, and what was assumed: of the shop, and of each mandrel."""

    mandrels: tuple[Mandrel, ...]
    press_name: str
    press_force: Range
    assumed: tuple[Assumption, ...]
    assumed_of: dict[str, tuple[Assumption, ...]]
    owns_none: bool
    notes_of: dict[str, MandrelNote]
    blow_energy: Range

    @property
    def hammers(self) -> bool:
        """True where the work is driven on by blows."""
        return "hammer" in self.press_name


def shop_of(job: Job, tables: Tables) -> Shop:
    """The mandrels and press that a job may use."""
    show = Show(job.units)
    notes = job.shelf.mandrels if job.shelf.stated else _usual_set(job)
    resolved = _resolved(notes, tables)
    name, force, press_assumed = _press(job, tables)
    set_assumed = () if job.shelf.stated else (_set_assumed(show, notes),)
    return Shop(
        tuple(r.mandrel for r in resolved),
        name,
        force,
        (*set_assumed, *press_assumed),
        {r.mandrel.name: r.assumed for r in resolved},
        job.shelf.stated and not job.shelf.mandrels,
        {r.mandrel.name: n for r, n in zip(resolved, notes, strict=True)},
        blow_energy(job, tables),
    )


@lru_cache(maxsize=8)
def _resolved(notes: tuple[MandrelNote, ...], tables: Tables) -> tuple[Resolved, ...]:
    """Every mandrel of a shelf in full; kept, because a list of parts asks for one shelf each time."""
    named = zip(notes, _names(notes), strict=True)
    return tuple(resolve(note, tables, name) for note, name in named)


def blow_energy(job: Job, tables: Tables) -> Range:
    """What a blow gives (J): of the usual soft hammer, or in proportion to the mass of the shop's own."""
    usual, hammer = tables.allowance("blow_energy"), job.shelf.hammer
    if hammer is None or hammer.mass is None:
        return usual
    times = hammer.mass / tables.allowance("hammer_mass").best
    low, best, high = (times * e for e in (usual.low, usual.best, usual.high))
    return Range(low, best, high, usual.unit, usual.source)


def _hammer_force(energy: Range, tables: Tables) -> Range:
    """The push (N) against which a blow still moves the work by the least that is worth a blow."""
    least = tables.allowance("least_blow").best
    low, best, high = (e / least for e in (energy.low, energy.best, energy.high))
    return Range(low, best, high, "N", energy.source)


def _usual_set(job: Job) -> tuple[MandrelNote, ...]:
    """The sizes of a usual set next to the bore: the nearest, and one either side."""
    step = SET_STEP[job.units]
    nearest = round(job.work.bore.size / step)
    sizes = [k * step for k in (nearest - 1, nearest, nearest + 1)]
    return tuple(MandrelNote(nominal=s) for s in sizes if SMALLEST <= s <= LARGEST)


def _names(notes: tuple[MandrelNote, ...]) -> list[str]:
    """A name for each mandrel, its own or its size; the second of a name is numbered."""
    names: list[str] = []
    for note in notes:
        name = note.name or f"{_size_name(note.nominal)} mandrel"
        again = sum(1 for known in names if known == name or known.startswith(f"{name} ("))
        names.append(f"{name} ({again + 1})" if again else name)
    return names


def _size_name(nominal: Metre) -> str:
    """The size in the units it comes out round in, one unit only.

    >>> _size_name(0.022), _size_name(0.0221), _size_name(0.0127)
    ('22 mm', '22.1 mm', '1/2 in')
    """
    sixty_fourths, tenths = nominal / 0.0254 * 64, 1e4 * nominal
    metric = abs(tenths - round(tenths)) < 1e-4 and abs(sixty_fourths - round(sixty_fourths)) > 1e-4
    if metric:
        return f"{round(tenths) / 10:g} mm"
    return Show("inch").length(nominal).split(" (")[0]


def _set_assumed(show: Show, notes: tuple[MandrelNote, ...]) -> Assumption:
    inch = show.units == "inch"
    by, source = ("by sixteenths", "machine-shop-work") if inch else ("by whole mm", "ours")
    sizes = ", ".join(_size_name(n.nominal) for n in notes) or "no size near this bore"
    return Assumption(
        "mandrels on the shelf",
        f"a usual set of plain mandrels {by} ({sizes})",
        source,
    )


def _press(job: Job, tables: Tables) -> tuple[str, Range, tuple[Assumption, ...]]:
    shelf = job.shelf
    if shelf.press_force is not None:
        f = shelf.press_force
        return shelf.press or "your press", Range(0.9 * f, f, 1.05 * f, "N", "stated"), ()
    if untold(job):
        press, said = _unknown_press(tables)
        return shelf.press, press.force, (said,)
    press = tables.press(shelf.press or "unknown")
    if press.id == HAMMER:
        energy = blow_energy(job, tables)
        mass = shelf.hammer.mass if shelf.hammer else None
        of = "1 to 2 lb" if mass is None else Show(job.units).weight(mass)
        taken = f"{energy.best:.2g} J a blow, as of a soft hammer of {of}"
        force = _hammer_force(energy, tables)
        return press.name, force, (Assumption("the hammer", taken, energy.source),)
    if shelf.press:
        return _called(job, press.name), press.force, ()
    press, said = _unknown_press(tables)
    return UNKNOWN_PRESS, press.force, (said,)


UNKNOWN_PRESS = "a bench vice or a small arbor press"
"""What presses the work where nothing is known of it."""


def _unknown_press(tables: Tables) -> tuple[Press, Assumption]:
    press = tables.press("unknown")
    return press, Assumption("what presses the work on", UNKNOWN_PRESS, press.force.source)


def _called(job: Job, kind: str) -> str:
    """The press as its owner calls it, with its kind; the kind alone where it has no name.

    "the old one (one-ton arbor press)", "one-ton arbor press".
    """
    used = (p for p in job.shelf.presses if p.called == job.shelf.press)
    name = next((p.name for p in used), "")
    return f"{name} ({kind})" if name and name.casefold() != kind.casefold() else kind
