"""What the readings of a mandrel show, in sentences."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.holding.taper.measured_mandrel import straightness_of
from borewright.holding.taper.measured_words import NO_STOP, bent_words
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.service.mandrel_read import MandrelFound


def mandrel_words(found: MandrelFound, show: Show) -> Iterator[str]:
    """One line for each thing that a turner asks of a mandrel; the table of bores last."""
    yield _taper(found, show)
    yield _straight(found, show)
    yield from (_flat(found, flat, show) for flat in found.flats)
    if found.bores:
        yield from _takes(found, show)


def _taper(found: MandrelFound, show: Show) -> str:
    if found.measured_from == "neither":
        return f"No taper can be read: over its places it grows by no more than twice the {show.small(found.uncertainty)} that a diameter is known to."
    end = {"small": "the far one: you counted from the small end", "large": "the one you counted from"}  # fmt: skip
    return f"Taper {show.taper(found.taper)}. The large end is {end[found.measured_from]}."


def _straight(found: MandrelFound, show: Show) -> str:
    worst = straightness_of(found.stations, found.residuals, found.uncertainty)
    if worst is None:
        return "Two places cannot show whether it is straight: measure a third."
    where = f"{show.length(found.ground_length - worst.at)} from the large end"
    if worst.bent:
        return f"Not straight: {bent_words(worst, where, show)}. It is used as measured."
    off, known = show.small(found.straightness), show.small(found.uncertainty)
    return f"Straight: the worst place, {where}, is {off} off the straight taper, and a diameter is known to {known} either way."


def _flat(found: MandrelFound, flat: tuple[Metre, Metre], show: Show) -> str:
    ends = found.ground_length - flat[1], found.ground_length - flat[0]
    return f"Flat {show.band(*ends, 'length')} from the large end: {NO_STOP}."


def _takes(found: MandrelFound, show: Show) -> Iterator[str]:
    ends = show.band(*found.bore_window, "bore")
    yield f"It takes straight bores of {ends}, less what travel, dog and tool need at its ends."
    yield "Bore, and how far its leading face first stops from the large end of the ground length:"
    for bore, place in found.bores:
        yield f"  {show.bore(bore):28}{show.length(max(place, 0.0))}"
