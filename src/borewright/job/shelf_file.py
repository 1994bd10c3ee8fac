"""Reading a shelf file, what the shop owns, and laying it under a job.

`[[mandrel]]` tables (or `mandrel = "none"`), `[press]` name and force, `[machine]` as in a job.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from borewright.job.records import Job, Machine, Shelf
from borewright.job.toml_text import load_text, parse_tables
from borewright.job.typed import Reader

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

    >>> from borewright.job.records import Bore, MandrelNote, Piece, Work
    >>> job = Job("wheel", Work("gray-iron-30", (Piece(0.0, 0.02, 0.08),), Bore(0.016)))
    >>> merge_shelf(job, Shelf((MandrelNote(0.016),), stated=True)).shelf.mandrels
    (MandrelNote(nominal=0.016, name='', small_end=None, large_end=None, taper=None, \
ground_length=None, overall_length=None),)
    """
    own = job.shelf
    mandrels = own if own.stated else shelf
    merged = Shelf(
        mandrels=mandrels.mandrels,
        stated=mandrels.stated,
        press=own.press or shelf.press,
        press_force=shelf.press_force if own.press_force is None else own.press_force,
        machine=_merge_machine(own.machine, shelf.machine),
    )
    return replace(job, shelf=merged)


def _merge_machine(own: Machine, other: Machine) -> Machine:
    swing, between, power = own.swing_over_cross_slide, own.between_centers, own.power
    return Machine(
        name=own.name or other.name,
        speeds=own.speeds or other.speeds,
        feeds=own.feeds or other.feeds,
        swing_over_cross_slide=other.swing_over_cross_slide if swing is None else swing,
        between_centers=other.between_centers if between is None else between,
        power=other.power if power is None else power,
    )
