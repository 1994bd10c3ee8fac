"""What stands in the shop: gauges that read a bore, presses, and the ways of holding."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.quantities.si import Metre
from borewright.reference.ranges import Range, range_of
from borewright.reference.table import Row


@dataclass(frozen=True, slots=True)
class Gauge:
    """How a bore was measured: `half_band` is two standard deviations.

    `sees_…`: the reading shows that fault of form, or already allows for it.
    """

    id: str
    half_band: Metre
    sees_oval: bool
    sees_lobes: bool
    sees_taper: bool
    source: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class Press:
    """What presses the work on, and its force in newtons."""

    id: str
    name: str
    force: Range


@dataclass(frozen=True, slots=True)
class Way:
    """A way of holding. `computed` False: named with when it serves better, no margins yet."""

    id: str
    name: str
    computed: bool
    serves_better: str
    source: str


def gauge_of(row: Row) -> Gauge:
    """The record in a row of the table `gauges`."""
    return Gauge(
        id=row.text("id"),
        half_band=row.number("half_band"),
        sees_oval=row.yes("sees_oval"),
        sees_lobes=row.yes("sees_lobes"),
        sees_taper=row.yes("sees_taper"),
        source=row.text("source"),
        note=row.text("note"),
    )


def press_of(row: Row) -> Press:
    """The record in a row of the table `presses`."""
    return Press(row.text("id"), row.text("name"), range_of(row))


def way_of(row: Row) -> Way:
    """The record in a row of the table `ways`."""
    computed, serves = row.yes("computed"), row.text("serves_better")
    return Way(row.text("id"), row.text("name"), computed, serves, row.text("source"))
