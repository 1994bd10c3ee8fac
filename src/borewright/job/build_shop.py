"""From checked tables to the records of machine, mandrels and shelf."""

from __future__ import annotations

from typing import TYPE_CHECKING

from borewright.errors.tree import RefusedInput
from borewright.job.build_drills import build_boring_bar, build_drill
from borewright.job.build_tools import (
    build_dog,
    build_gauge,
    build_hammer,
    build_holding,
    build_presses,
    build_reamer,
    build_vice,
)
from borewright.job.hollow import check_hole
from borewright.job.records import Machine, MandrelNote, Shelf
from borewright.job.stations import NEAR_NOMINAL, check_stations, read_stations
from borewright.job.tools import OwnHolding
from borewright.job.typed import Reader, Value, each, maybe, numbered
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

if TYPE_CHECKING:
    from borewright.job.schema import (
        HoldTable,
        LatheTable,
        MachineTable,
        MandrelTable,
        ShelfTable,
    )


def build_machine(table: MachineTable, reader: Reader, place: str = "machine") -> Machine:
    """The lathe as far as stated; both spellings of `between_centers` at once are refused."""
    swing = table.swing_over_cross_slide
    machine = Machine(
        name=table.name,
        speeds=each(reader.spindle, table.speeds, f"{place}.speeds"),
        feeds=each(reader.feed, table.feeds, f"{place}.feeds"),
        swing_over_cross_slide=maybe(reader.length, swing, f"{place}.swing_over_cross_slide"),
        between_centers=_between_centers(table, reader, place),
        power=maybe(reader.power, table.power, f"{place}.power"),
        power_by_gear=each(reader.power, table.power_by_gear, f"{place}.power_by_gear"),
        dial=table.dial,
    )
    if machine.power_by_gear and len(machine.power_by_gear) != len(machine.speeds):
        found = f"{len(machine.power_by_gear)} powers beside {len(machine.speeds)} speeds"
        where = reader.at(f"{place}.power_by_gear")
        raise RefusedInput(where, found, "one power for each of the speeds, in their order")
    return machine


def _between_centers(table: MachineTable, reader: Reader, place: str) -> Metre | None:
    us, uk = table.between_centers, table.between_centres
    if us is not None and uk is not None:
        found = "both `between_centers` and `between_centres`"
        raise RefusedInput(reader.at(place), found, "one of the two spellings")
    if us is not None:
        return reader.length(us, f"{place}.between_centers")
    return maybe(reader.length, uk, f"{place}.between_centres")


def build_job_shelf(hold: HoldTable, machine: MachineTable, reader: Reader) -> Shelf:
    """What a job file itself says of the shelf."""
    return Shelf(
        mandrels=_mandrels(hold.mandrels, "hold.mandrels", reader),
        stated=hold.mandrels != "unknown",
        press=hold.press,
        press_force=maybe(reader.force, hold.press_force, "hold.press_force"),
        machine=build_machine(machine, reader),
        holding=tuple(OwnHolding(name) for name in hold.have),
        have_not=tuple(hold.have_not),
    )


def build_shelf(table: ShelfTable, reader: Reader) -> Shelf:
    """What a shelf file says."""
    presses, pressing = build_presses(table.press, reader)
    lathes, machine = _lathes(table, reader)
    return Shelf(
        mandrels=_mandrels(table.mandrel, "mandrel", reader),
        stated=table.mandrel != "unknown",
        press=pressing.called,
        press_force=pressing.force,
        machine=machine,
        lathes=lathes,
        presses=presses,
        vice=None if table.vice is None else build_vice(table.vice, reader),
        hammer=None if table.hammer is None else build_hammer(table.hammer, reader),
        dogs=numbered(build_dog, table.dog, "dog", reader),
        reamers=numbered(build_reamer, table.reamer, "reamer", reader),
        gauges=numbered(build_gauge, table.gauge, "gauge", reader),
        holding=numbered(build_holding, table.holding, "holding", reader),
        have_not=tuple(table.have_not),
        drills=numbered(build_drill, table.drill, "drill", reader),
        boring_bar=None if table.boring_bar is None else build_boring_bar(table.boring_bar, reader),
        lathe_wished=any(lathe.use for lathe in table.lathe),
    )


def _lathes(table: ShelfTable, reader: Reader) -> tuple[tuple[Machine, ...], Machine]:
    """Every lathe listed, and the one to use: the one that says so, else the first."""
    if table.machine is not None and table.lathe:
        found = "both [machine] and [[lathe]]"
        raise RefusedInput(reader.at("machine"), found, "[machine] for one lathe or [[lathe]]")
    used = [n for n, lathe in enumerate(table.lathe) if lathe.use]
    if len(used) > 1:
        found = f"use = true on {len(used)} lathes"
        raise RefusedInput(reader.at(f"lathe[{used[1] + 1}].use"), found, "use = true on one lathe")
    lathes = numbered(build_lathe, table.lathe, "lathe", reader)
    if lathes:
        return lathes, lathes[used[0] if used else 0]
    return (), Machine() if table.machine is None else build_machine(table.machine, reader)


def build_lathe(table: LatheTable, place: str, reader: Reader) -> Machine:
    """One lathe of several."""
    return build_machine(table, reader, place)


def _mandrels(
    entries: list[MandrelTable | Value] | str, place: str, reader: Reader
) -> tuple[MandrelNote, ...]:
    if isinstance(entries, str):
        return ()
    return numbered(build_mandrel, entries, place, reader)


def build_mandrel(entry: MandrelTable | Value, place: str, reader: Reader) -> MandrelNote:
    """One mandrel: a size alone, or a table; ends and lengths that contradict are refused."""
    if isinstance(entry, str | int | float):
        plain = MandrelNote(reader.length(entry, place))
        _check_mandrel(plain, reader.at(place))
        return plain
    note = MandrelNote(
        nominal=reader.length(entry.size, f"{place}.size"),
        name=entry.name,
        small_end=maybe(reader.length, entry.small_end, f"{place}.small_end"),
        large_end=maybe(reader.length, entry.large_end, f"{place}.large_end"),
        taper=maybe(reader.taper, entry.taper, f"{place}.taper"),
        ground_length=maybe(reader.length, entry.ground_length, f"{place}.ground_length"),
        overall_length=maybe(reader.length, entry.overall_length, f"{place}.overall_length"),
        marks=entry.marks,
        hardness=entry.hardness,
        flats=entry.flats,
        condition=entry.condition,
        place=entry.place,
        stations=read_stations(entry, place, reader),
        station_uncertainty=maybe(reader.length, entry.uncertainty, f"{place}.uncertainty"),
        hole=maybe(reader.length, entry.hole, f"{place}.hole"),
    )
    _check_mandrel(note, reader.at(place))
    check_stations(note, reader.at(place))
    if note.hole is not None:
        ground = (note.nominal, note.small_end, *(d for _, d in note.stations))
        check_hole(note.hole, min(d for d in ground if d), reader.at(f"{place}.hole"))
    return note


SMALLEST, LARGEST, STEEPEST = 0.3e-3, 0.5, 0.02
"""Sizes (m) and the steepest taper that a plain taper mandrel is taken to have (ours)."""


def _check_mandrel(note: MandrelNote, where: str) -> None:
    show = Show("mm")
    if not SMALLEST <= note.nominal <= LARGEST:
        allowed = show.band(SMALLEST, LARGEST, "length")
        raise RefusedInput(where, f"a mandrel of {show.length(note.nominal)}", allowed)
    if note.taper is not None and note.taper > STEEPEST:
        allowed = f"at most {STEEPEST:g} on diameter per length: steeper does not hold"
        raise RefusedInput(where, f"a taper of {note.taper:g}", allowed)
    for end in (note.small_end, note.large_end):
        if end is not None and abs(end - note.nominal) > NEAR_NOMINAL * note.nominal:
            allowed = f"an end near the size {show.bore(note.nominal)}"
            raise RefusedInput(where, f"an end of {show.bore(end)}", allowed)
    if note.small_end and note.large_end and note.small_end >= note.large_end:
        found = f"a small end of {show.bore(note.small_end)}"
        raise RefusedInput(where, found, f"less than the large end, {show.bore(note.large_end)}")
    if note.ground_length and note.overall_length and note.ground_length > note.overall_length:
        found = f"a ground length of {show.length(note.ground_length)}"
        allowed = f"at most the overall length, {show.length(note.overall_length)}"
        raise RefusedInput(where, found, allowed)
