"""borewright make soft: a soft mandrel from bar, turned to this bore or as drawn."""

from __future__ import annotations

from typing import Any

import click

from borewright.cli.commands.making.bored import bored_options, bored_work
from borewright.cli.commands.making.shared import check_files, deliver, look_of, paper_options
from borewright.cli.typed import LENGTH, given, json_option, units_option
from borewright.errors import RefusedInput
from borewright.quantities.read import read_length


@click.command("soft")
@bored_options
@click.option("--as-drawn", is_flag=True, help="The bar as it is drawn, a set screw in the hub.")
@click.option("--bar", type=LENGTH, help="The bar as measured, with --as-drawn.")
@click.option("--hub-out", type=LENGTH, help="How far the hub stands out, with --as-drawn.")
@click.option(
    "--held",
    type=click.Choice(["centers", "chuck"]),
    default="centers",
    help="Between its own centers, or in the chuck and left there.",
)
@paper_options
@units_option
@json_option
def command(as_json: bool, **typed: Any) -> int:
    """A soft mandrel from bar: turned to this bore with a slight taper, or as drawn.

    JOB_FILE is a job as `plan` reads it; or --bore and --length in its place.
    """
    check_files(typed)
    for name in ("bar", "hub_out"):
        if typed[name] is not None and not typed["as_drawn"]:
            where = f"--{name.replace('_', '-')}"
            raise RefusedInput(where, "a size without --as-drawn", "--as-drawn with it")
    work = bored_work(typed)
    bar = given(read_length, typed["bar"], "--bar", bare=typed["units"])
    out = given(read_length, typed["hub_out"], "--hub-out", bare=typed["units"])
    if out is not None and out > work.job.work.length:
        raise RefusedInput("--hub-out", typed["hub_out"], "no more than the length of the bore")
    from borewright.reference.library import tables
    from borewright.service.making.soft import make_soft

    made = make_soft(
        work, tables(), as_drawn=typed["as_drawn"], held=typed["held"], bar=bar, hub_out=out
    )
    look = look_of(typed, work.job.units)
    return deliver(made, typed, look, as_json, read=(typed["job_file"],))
