"""Reading a shelf file, what the shop owns, and laying it under a job.

`[[mandrel]]` tables (or `mandrel = "none"`), `[machine]` as in a job or several `[[lathe]]`,
`[press]` or several `[[press]]`, `[vice]`, `[hammer]`, `[[dog]]`, `[[drill]]`, `[boring_bar]`,
`[[reamer]]`, `[[gauge]]`, `[[holding]]`, `have_not`.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from borewright.job.records import Job, Machine, Shelf
from borewright.job.toml_text import load_text, parse_tables
from borewright.job.typed import Reader
from borewright.quantities.si import Newton, Watt

WHAT = "shelf file"


def read_shelf(path: str | Path) -> Shelf:
    """The shelf of a file; refusals as for a job file."""
    return parse_shelf(load_text(Path(path), WHAT), str(path))


def parse_shelf(text: str, where: str) -> Shelf:
    """The shelf of a TOML text.

    >>> parse_shelf('mandrel = ["1/2in", "16mm"]', "shelf.toml").mandrels[0].nominal
    0.0127
    """
    # pydantic is heavy; see job.file
    from borewright.job.build_shop import build_shelf
    from borewright.job.form import check_form
    from borewright.job.schema import ShelfTable

    table = check_form(parse_tables(text, where, WHAT), ShelfTable, where)
    return build_shelf(table, Reader(where, table.units))


def merge_shelf(job: Job, shelf: Shelf) -> Job:
    """The job with the shelf under it: what the job states itself stands.

    A lathe or press that the job names and the shelf lists is that one; one that the shelf does
    not list borrows nothing from another.

    >>> from borewright.job.records import Bore, MandrelNote, Piece, Work
    >>> job = Job("wheel", Work("gray-iron-30", (Piece(0.0, 0.02, 0.08),), Bore(0.016)))
    >>> merge_shelf(job, Shelf((MandrelNote(0.016),), stated=True)).shelf.mandrels[0].nominal
    0.016
    """
    own = job.shelf
    mandrels = own if own.stated else shelf
    press, force = _merge_press(own, shelf)
    merged = replace(
        shelf,
        mandrels=mandrels.mandrels,
        stated=mandrels.stated,
        press=press,
        press_force=force,
        machine=_merge_machine(own.machine, _lathe_under(own.machine, shelf)),
        holding=(*own.holding, *shelf.holding),
        have_not=(*own.have_not, *shelf.have_not),
        lathe_wished=own.machine != Machine() or shelf.lathe_wished,
        press_wished=bool(own.press) or own.press_force is not None or shelf.press_wished,
    )
    return replace(job, shelf=merged)


def _merge_press(own: Shelf, shelf: Shelf) -> tuple[str, Newton | None]:
    named = [p for p in shelf.presses if own.press and _same(p.name, own.press)]
    if named:
        stated = replace(named[0], force=own.press_force) if own.press_force else named[0]
        return stated.called, stated.force
    if own.press and not _same(own.press, shelf.press):
        return own.press, own.press_force
    force = shelf.press_force if own.press_force is None else own.press_force
    return own.press or shelf.press, force


def _lathe_under(own: Machine, shelf: Shelf) -> Machine:
    if not own.name or not shelf.lathes:
        return shelf.machine
    return next((lathe for lathe in shelf.lathes if _same(lathe.name, own.name)), Machine())


def _same(one: str, other: str) -> bool:
    return one.casefold().split() == other.casefold().split()


def _merge_machine(own: Machine, other: Machine) -> Machine:
    swing, between, power = own.swing_over_cross_slide, own.between_centers, own.power
    return Machine(
        name=own.name or other.name,
        speeds=own.speeds or other.speeds,
        feeds=own.feeds or other.feeds,
        swing_over_cross_slide=other.swing_over_cross_slide if swing is None else swing,
        between_centers=other.between_centers if between is None else between,
        power=other.power if power is None else power,
        power_by_gear=_merge_gears(own, other),
        dial=other.dial if own.dial == "unknown" else own.dial,
    )


def _merge_gears(own: Machine, other: Machine) -> tuple[Watt, ...]:
    """The powers go with the speeds they were stated beside."""
    return own.power_by_gear if own.speeds else other.power_by_gear
