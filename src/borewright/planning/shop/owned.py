"""What the shelf says of the very tools a plan uses: mandrel, dog, reamer, lathe."""

from __future__ import annotations

from borewright.job.records import Machine, Mandrel, MandrelNote, Shelf
from borewright.job.tools import OwnDog, OwnReamer
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

DOG_FLAT = ("large", "both")
"""Flats that serve a dog at the large end."""


def mandrel_words(mandrel: Mandrel, note: MandrelNote | None, show: Show) -> str:
    """The mandrel with its marks, its place, and what its owner noted of it."""
    said = []
    if note is not None:
        said = [
            note.marks and f"marked {note.marks}",
            note.place and f"in {note.place}",
            note.condition and f"noted: {note.condition}",
        ]
    told = "; ".join(part for part in said if part)
    bored = f", bored {show.length(mandrel.hole)} through" if mandrel.hole else ""
    ground = show.length(mandrel.ground_length)
    return f"{mandrel.name}{f' ({told})' if told else ''}, ground {ground}{bored}"


def dog_words(shelf: Shelf, mandrel: Mandrel, note: MandrelNote | None, show: Show) -> str:
    """The dog for the large end: the smallest on the shelf that takes it, else what size is wanted."""
    end = mandrel.end_diameter
    copper = (
        "" if note and note.flats in DOG_FLAT else ", copper under its screw unless there is a flat"
    )
    if not shelf.dogs:
        return f"dog (carrier) for the large end{copper}, and its guard"
    dog = fitting_dog(shelf.dogs, end)
    if dog is None:
        return (
            f"a dog (carrier) that takes {show.length(end)}: none on the shelf does; and its guard"
        )
    name = dog.name or "dog (carrier)"
    return f"{name} for the large end ({show.length(end)}){copper}, and its guard"


def fitting_dog(dogs: tuple[OwnDog, ...], end: Metre) -> OwnDog | None:
    """The smallest dog that takes this end; one whose range is not stated may.

    >>> fitting_dog((OwnDog("a", 0.01, 0.02), OwnDog("b", 0.005, 0.015)), 0.012).name
    'b'
    """
    fits = [d for d in dogs if (d.smallest or 0.0) <= end <= (d.largest or float("inf"))]
    return min(fits, key=lambda d: d.largest or float("inf"), default=None)


def lathe_words(machine: Machine) -> tuple[str, ...]:
    """The lathe by its name, where it has one."""
    return (machine.name,) if machine.name else ()


def reamer_between(
    reamers: tuple[OwnReamer, ...], low: Metre, high: Metre, above: Metre
) -> tuple[OwnReamer, Metre] | None:
    """The reamer that, as it really cuts, opens a bore into a window; with the size it cuts (m)."""
    sizes = [(r, r.size + (r.cuts or 0.0)) for r in reamers]
    fits = [(r, size) for r, size in sizes if low < size < high and size > above]
    return min(fits, key=lambda f: f[1], default=None)
