"""borewright make gauge: a go and not-go plug, or a stepped one, for a bore window."""

from __future__ import annotations

from typing import Any

import click

from borewright.cli.commands.making.bored import bored_options, bored_work
from borewright.cli.commands.making.shared import check_files, deliver, look_of, paper_options
from borewright.cli.typed import json_option, units_option
from borewright.errors import RefusedInput

ANY_LENGTH = 0.02
"""A gauge asks for no length of the bore; a work has one."""


@click.command("gauge")
@bored_options
@click.option("--stepped", is_flag=True, help="A stepped plug, as many steps as stand apart.")
@click.option("--steps", type=int, help="A stepped plug of so many steps.")
@click.option(
    "--finish",
    type=click.Choice(["turned", "lapped"]),
    help="How it is brought to size; left out, lapped where turning takes half of the window.",
)
@click.option(
    "--blind",
    is_flag=True,
    help="The bore has a bottom: a flat lets the air out; --length is its depth.",
)
@click.option(
    "--comparator",
    is_flag=True,
    help="The plug is measured on a bench comparator, not a micrometer.",
)
@paper_options
@units_option
@json_option
def command(as_json: bool, **typed: Any) -> int:
    """A go and not-go plug for a bore window, or a stepped plug that tells the size.

    JOB_FILE is a job as `plan` reads it, its bore stated by limits; or --bore "16 H7" in its place.
    """
    check_files(typed)
    if typed["steps"] is not None and typed["steps"] < 2:
        raise RefusedInput("--steps", str(typed["steps"]), "2 or more")
    work = bored_work(typed, ANY_LENGTH)
    from borewright.reference.library import tables
    from borewright.service.making.gauge import make_gauge

    made = make_gauge(
        work,
        tables(),
        finish=typed["finish"],
        stepped=typed["stepped"] or typed["steps"] is not None,
        steps=typed["steps"],
        blind=typed["blind"],
        length_known=typed["length"] is not None,
        comparator=typed["comparator"],
    )
    look = look_of(typed, work.job.units)
    return deliver(made, typed, look, as_json, read=(typed["job_file"],))
