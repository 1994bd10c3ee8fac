"""borewright make stub: a stub turned in the chuck to this bore and left there."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from borewright.cli.commands.making.bored import bored_options, bored_work
from borewright.cli.commands.making.shared import check_files, deliver, look_of, paper_options
from borewright.cli.typed import json_option, units_option
from borewright.errors import RefusedInput

if TYPE_CHECKING:
    from borewright.making.stub.asked import Plug


@click.command("stub")
@bored_options
@click.option("--expanding", is_flag=True, help="Slit, and opened by a plug on a screw.")
@click.option(
    "--plug",
    type=click.Choice(["taper", "cone"]),
    help="Plug of an expanding stub: the usual taper, or a steep cone that lets go by itself.",
)
@paper_options
@units_option
@json_option
def command(as_json: bool, **typed: Any) -> int:
    """A stub turned in the chuck to this bore, left there until the batch is done.

    JOB_FILE is a job as `plan` reads it; or --bore and --length in its place.
    """
    check_files(typed)
    if typed["plug"] and not typed["expanding"]:
        raise RefusedInput("--plug", "a plug without --expanding", "--expanding with it")
    work = bored_work(typed)
    from borewright.reference.library import tables
    from borewright.service.making.stub import make_stub

    plug: Plug | None = (typed["plug"] or "taper") if typed["expanding"] else None
    made = make_stub(work, tables(), plug)
    look = look_of(typed, work.job.units)
    return deliver(made, typed, look, as_json, read=(typed["job_file"],))
