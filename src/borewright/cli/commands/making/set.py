"""borewright make set: mandrels for a list of bores."""

from __future__ import annotations

from typing import Any

import click

from borewright.cli.commands.making.shared import (
    check_files,
    deliver,
    look_of,
    paper_options,
    units_of,
)
from borewright.cli.typed import LENGTH, TAPER, given, json_option, needed, units_option
from borewright.errors import RefusedInput
from borewright.quantities.read import read_length, read_taper

LENGTHS = ("length", "travel", "overall_length", "between_centers", "band", "bar_length")


@click.command("set")
@click.option("--bores", help="The bores, parted by commas: sizes, '16 H7', or 'A to B'.")
@click.option("--class", "code", help="Class of those that are plain sizes, such as H7.")
@click.option("--band", type=LENGTH, help="Or the whole width that their bores may spread over.")
@click.option("--length", type=LENGTH, help="Length of the bore that each holds.")
@click.option("--travel", type=LENGTH, help="How far the work is pressed past touch.")
@click.option("--taper", type=TAPER, help="Taper on diameter per length.")
@click.option("--overall-length", type=LENGTH, help="Make all of them this long.")
@click.option("--between-centers", type=LENGTH, help="The longest that the lathe or grinder takes.")
@click.option("--steel", help="A steel of `borewright reference mandrel_steels`.")
@click.option("--no-grinder", is_flag=True, help="Turned with the tailstock set over, and filed.")
@click.option("--bar-length", type=LENGTH, help="Length of the bars that are bought.")
@paper_options
@units_option
@json_option
def command(as_json: bool, **typed: Any) -> int:
    """A set of mandrels for a list of bores: how many, their sizes, order, steel to buy.

    Exit 3 where a size of the list cannot be made.
    """
    check_files(typed)
    text = needed(typed["bores"], "--bores", "bores parted by commas, such as '10mm, 16 H7'")
    if typed["code"] is not None and typed["band"] is not None:
        raise RefusedInput("--class, --band", "both", "one of them")
    bare = typed["units"]
    read = {
        name: given(read_length, typed[name], f"--{name.replace('_', '-')}", bare=bare)
        for name in LENGTHS
    }
    from borewright.job.bore_text import size_typed
    from borewright.making.mandrel.asked import MandrelAsked
    from borewright.reference.library import tables
    from borewright.service.making.mandrel_set import make_set, sizes_asked

    units = units_of(typed, *(size_typed(part) for part in text.split(",")))
    sizes = sizes_asked(text, typed["code"], read["band"], bare)
    asked = MandrelAsked(
        length=read["length"],
        travel=read["travel"],
        steel=typed["steel"],
        grinder=not typed["no_grinder"],
        taper=given(read_taper, typed["taper"], "--taper"),
        overall_length=read["overall_length"],
        longest=read["between_centers"],
        units=units,
    )
    usual = tables().making_fact("bar_inch" if units == "inch" else "bar_mm").best
    made = make_set(sizes, asked, read["bar_length"] or usual, tables())
    return deliver(made, typed, look_of(typed, units), as_json)
