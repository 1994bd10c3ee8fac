"""From checked tables to the records of presses, vice, hammer, dogs, reamers and gauges."""

from __future__ import annotations

from typing import TYPE_CHECKING

from borewright.errors.tree import RefusedInput
from borewright.job.tools import (
    OwnDog,
    OwnGauge,
    OwnHammer,
    OwnHolding,
    OwnPress,
    OwnReamer,
    OwnVice,
)
from borewright.job.typed import Reader, each, maybe, numbered
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

if TYPE_CHECKING:
    from borewright.job.schema_tools import (
        DogTable,
        GaugeTable,
        HammerTable,
        HoldingTable,
        PressTable,
        ReamerTable,
        ViceTable,
    )


def build_presses(
    table: PressTable | list[PressTable], reader: Reader
) -> tuple[tuple[OwnPress, ...], OwnPress]:
    """Every press listed, and the one to use, the first.

    A single [press] that says no more than its name and force is not listed: it is that of the
    shelf itself.
    """
    if isinstance(table, list):
        presses = numbered(build_press, table, "press", reader)
        return presses, presses[0] if presses else OwnPress()
    press = build_press(table, "press", reader)
    plain = press == OwnPress(press.name, force=press.force)
    return () if plain else (press,), press


def build_press(table: PressTable, place: str, reader: Reader) -> OwnPress:
    """One press."""
    return OwnPress(
        name=table.name,
        kind=table.kind,
        force=maybe(reader.force, table.force, f"{place}.force"),
        daylight=maybe(reader.length, table.daylight, f"{place}.daylight"),
        throat=maybe(reader.length, table.throat, f"{place}.throat"),
        ram_travel=maybe(reader.length, table.ram_travel, f"{place}.ram_travel"),
        table_slot=maybe(reader.length, table.table_slot, f"{place}.table_slot"),
    )


def build_vice(table: ViceTable, reader: Reader) -> OwnVice:
    """The bench vice."""
    return OwnVice(
        maybe(reader.length, table.opening, "vice.opening"),
        maybe(reader.force, table.force, "vice.force"),
    )


def build_hammer(table: HammerTable, reader: Reader) -> OwnHammer:
    """The hammer."""
    return OwnHammer(maybe(reader.mass, table.mass, "hammer.mass"), table.face)


def build_dog(table: DogTable, place: str, reader: Reader) -> OwnDog:
    """One lathe dog."""
    smallest = maybe(reader.length, table.smallest, f"{place}.smallest")
    largest = maybe(reader.length, table.largest, f"{place}.largest")
    check_rising(smallest, largest, reader.at(place))
    return OwnDog(table.name, smallest, largest, table.tail)


def build_reamer(table: ReamerTable, place: str, reader: Reader) -> OwnReamer:
    """One reamer; what it cuts over or under must be far less than its size."""
    size = reader.length(table.size, f"{place}.size")
    cuts = maybe(reader.offset, table.cuts, f"{place}.cuts")
    if cuts is not None and abs(cuts) > 0.1 * size:
        allowed = 'how far over (+) or under (-) its size it cuts, such as "+0.0004in"'
        raise RefusedInput(reader.at(f"{place}.cuts"), str(table.cuts), allowed)
    return OwnReamer(size, table.name, cuts)


def build_gauge(table: GaugeTable, place: str, reader: Reader) -> OwnGauge:
    """One gauge for bores."""
    ends = each(reader.length, table.range or [], f"{place}.range")
    smallest, largest = ends or (None, None)
    check_rising(smallest, largest, reader.at(f"{place}.range"))
    uncertainty = maybe(reader.length, table.uncertainty, f"{place}.uncertainty")
    return OwnGauge(table.kind, uncertainty, smallest, largest)


def build_holding(table: HoldingTable, place: str, reader: Reader) -> OwnHolding:
    """A chuck, a faceplate, a set of collets …, and the sizes that it takes."""
    smallest = maybe(reader.length, table.smallest, f"{place}.smallest")
    largest = maybe(reader.length, table.largest, f"{place}.largest")
    check_rising(smallest, largest, reader.at(place))
    return OwnHolding(table.kind, table.name, smallest, largest)


def check_rising(smallest: Metre | None, largest: Metre | None, where: str) -> None:
    """RefusedInput where the ends of a range, as far as stated, do not rise."""
    if smallest is not None and largest is not None and smallest >= largest:
        show = Show("mm")
        found = f"{show.bore(smallest)} to {show.bore(largest)}"
        raise RefusedInput(where, found, "a range from the smallest size to the largest")
