"""What drives or pins the work: set screws and lathe dogs; and what an expanding mandrel covers."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.errors import OutsideModel
from borewright.quantities.si import Metre, MetrePerMetre, NewtonMetre
from borewright.reference.ranges import Range, range_of
from borewright.reference.table import Row, Table


@dataclass(frozen=True, slots=True)
class SetScrew:
    """A cup-point set screw: the force along the shaft it holds when seated with its torque."""

    id: str
    diameter: Metre
    seating_torque: NewtonMetre
    holding: Range


@dataclass(frozen=True, slots=True)
class Dog:
    """A lathe dog (carrier) and the rounds it takes."""

    id: str
    smallest: Metre
    largest: Metre
    sources: tuple[str, ...]
    note: str = ""


@dataclass(frozen=True, slots=True)
class Expanding:
    """How far one expanding mandrel opens, and the taper of its pin on diameter."""

    id: str
    covers: Range
    pin_taper: MetrePerMetre
    pin_taper_source: str


def set_screw_of(row: Row) -> SetScrew:
    """The record in a row of the table `set_screws`."""
    holding = range_of(row, "holding_", "N")
    return SetScrew(row.text("id"), row.number("diameter"), row.number("seating_torque"), holding)


def dog_of(row: Row) -> Dog:
    """The record in a row of the table `dogs`."""
    sources = dict.fromkeys((row.text("source"), row.text("smallest_source")))
    smallest, largest = row.number("smallest"), row.number("largest")
    return Dog(row.text("id"), smallest, largest, tuple(sources), row.text("note"))


def dogs_for(table: Table, diameter: Metre) -> tuple[Dog, ...]:
    """The dogs that take a round of this diameter, smallest first; none where none does."""
    dogs = (dog_of(row) for row in table.rows)
    fitting = (dog for dog in dogs if dog.smallest <= diameter <= dog.largest)
    return tuple(sorted(fitting, key=lambda dog: dog.largest))


def expanding_of(table: Table, bore: Metre) -> Expanding:
    """What an expanding mandrel for this bore covers; `OutsideModel` beyond the sizes listed."""
    for row in table.rows:
        if row.number("over") <= bore <= row.number("up_to"):
            taper, said = row.number("pin_taper"), row.text("pin_taper_source")
            return Expanding(row.text("id"), range_of(row, unit="m"), taper, said)
    least, most = table.rows[0].number("over"), table.rows[-1].number("up_to")
    raise OutsideModel("bore", f"{bore * 1e3:g} mm", f"{least * 1e3:g} to {most * 1e3:g} mm")
