"""From checked tables to the records of machine, mandrels, shelf and wished cuts."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from borewright.errors.tree import RefusedInput
from borewright.job.records import CutWish, Machine, MandrelNote, Shelf
from borewright.job.stations import NEAR_NOMINAL, check_stations, read_stations
from borewright.job.typed import Reader, Value, maybe
from borewright.quantities.read import Speed
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, Radian

if TYPE_CHECKING:
    from borewright.job.schema import (
        CutTable,
        HoldTable,
        MachineTable,
        MandrelTable,
        ShelfTable,
    )

SQUARE = math.pi / 2 * (1 + 1e-12)
"""A square shoulder, with the rounding of a degree typed in full."""



def build_machine(table: MachineTable, reader: Reader) -> Machine:
    """The lathe as far as stated; both spellings of `between_centers` at once are refused."""
    if table.between_centers is not None and table.between_centres is not None:
        found = "both `between_centers` and `between_centres`"
        raise RefusedInput(reader.at("machine"), found, "one of the two spellings")
    us = table.between_centers is not None
    place = f"machine.{'between_centers' if us else 'between_centres'}"
    between = table.between_centers if us else table.between_centres
    swing = table.swing_over_cross_slide
    return Machine(
        name=table.name,
        speeds=tuple(
            reader.spindle(v, f"machine.speeds[{n}]") for n, v in enumerate(table.speeds, 1)
        ),
        feeds=tuple(reader.feed(v, f"machine.feeds[{n}]") for n, v in enumerate(table.feeds, 1)),
        swing_over_cross_slide=maybe(reader.length, swing, "machine.swing_over_cross_slide"),
        between_centers=maybe(reader.length, between, place),
        power=maybe(reader.power, table.power, "machine.power"),
    )


def build_job_shelf(hold: HoldTable, machine: MachineTable, reader: Reader) -> Shelf:
    """What a job file itself says of the shelf."""
    return Shelf(
        mandrels=_mandrels(hold.mandrels, "hold.mandrels", reader),
        stated=hold.mandrels != "unknown",
        press=hold.press,
        press_force=maybe(reader.force, hold.press_force, "hold.press_force"),
        machine=build_machine(machine, reader),
    )


def build_shelf(table: ShelfTable, reader: Reader) -> Shelf:
    """What a shelf file says."""
    return Shelf(
        mandrels=_mandrels(table.mandrel, "mandrel", reader),
        stated=table.mandrel != "unknown",
        press=table.press.name,
        press_force=maybe(reader.force, table.press.force, "press.force"),
        machine=build_machine(table.machine, reader),
    )


def build_cut(table: CutTable, number: int, reader: Reader) -> CutWish:
    """A cut that is insisted on."""
    place = f"cut[{number}]"
    speed = maybe(reader.speed, table.speed, f"{place}.speed") or Speed()
    return CutWish(
        kind=table.kind,
        depth=maybe(reader.length, table.depth, f"{place}.depth"),
        feed=maybe(reader.feed, table.feed, f"{place}.feed"),
        speed=speed.surface,
        spindle_speed=speed.spindle,
        edge_angle=_edge_angle(table, place, reader),
        nose_radius=_nose_radius(table, place, reader),
    )


def _edge_angle(table: CutTable, place: str, reader: Reader) -> Radian | None:
    angle = maybe(reader.angle, table.edge_angle, f"{place}.edge_angle")
    if angle is not None and angle > SQUARE:
        allowed = "above 0 to 90 deg (ISO 3002; 90deg is a square shoulder)"
        raise RefusedInput(reader.at(f"{place}.edge_angle"), str(table.edge_angle), allowed)
    return angle


def _nose_radius(table: CutTable, place: str, reader: Reader) -> Metre | None:
    if table.nose_radius is None:
        return None
    return reader.length(table.nose_radius, f"{place}.nose_radius", zero=True)


def _mandrels(
    entries: list[MandrelTable | Value] | str, place: str, reader: Reader
) -> tuple[MandrelNote, ...]:
    if isinstance(entries, str):
        return ()
    return tuple(_mandrel(entry, f"{place}[{n}]", reader) for n, entry in enumerate(entries, 1))


def _mandrel(entry: MandrelTable | Value, place: str, reader: Reader) -> MandrelNote:
    if isinstance(entry, str | int | float):
        return MandrelNote(reader.length(entry, place))
    note = MandrelNote(
        nominal=reader.length(entry.size, f"{place}.size"),
        name=entry.name,
        small_end=maybe(reader.length, entry.small_end, f"{place}.small_end"),
        large_end=maybe(reader.length, entry.large_end, f"{place}.large_end"),
        taper=maybe(reader.taper, entry.taper, f"{place}.taper"),
        ground_length=maybe(reader.length, entry.ground_length, f"{place}.ground_length"),
        overall_length=maybe(reader.length, entry.overall_length, f"{place}.overall_length"),
        stations=read_stations(entry, place, reader),
        station_uncertainty=maybe(reader.length, entry.uncertainty, f"{place}.uncertainty"),
    )
    _check_mandrel(note, reader.at(place))
    check_stations(note, reader.at(place))
    return note


def _check_mandrel(note: MandrelNote, where: str) -> None:
    show = Show("mm")
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
