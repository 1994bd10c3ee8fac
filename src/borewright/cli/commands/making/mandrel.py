"""borewright make mandrel: a plain taper mandrel, drawn, with its route and acceptance sheet."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

import click

from borewright.cli.commands.making.shared import (
    check_files,
    check_toml,
    deliver,
    look_of,
    paper_options,
    units_of,
)
from borewright.cli.typed import LENGTH, TAPER, given, json_option, units_option
from borewright.errors import RefusedInput
from borewright.quantities.read import read_length, read_taper

if TYPE_CHECKING:
    from borewright.job.records import Job
    from borewright.making.mandrel.asked import MandrelAsked

LENGTHS = ("length", "travel", "ground_length", "overall_length", "between_centers")


@click.command("mandrel")
@click.argument("job_file", required=False)
@click.option("--size", type=LENGTH, help="Size of the mandrel, by the chart.")
@click.option("--bore", help="Or the bore it is for: a size, '16 H7', or 'A to B'.")
@click.option("--length", type=LENGTH, help="Length of the bore that it holds.")
@click.option("--travel", type=LENGTH, help="How far the work is pressed past touch.")
@click.option("--taper", type=TAPER, help="Taper on diameter per length.")
@click.option("--ground-length", type=LENGTH, help="Length of the taper.")
@click.option("--overall-length", type=LENGTH, help="Length from end to end.")
@click.option("--between-centers", type=LENGTH, help="The longest that the lathe or grinder takes.")
@click.option("--steel", help="A steel of `borewright reference mandrel_steels`.")
@click.option("--no-grinder", is_flag=True, help="Turned with the tailstock set over, and filed.")
@click.option("--flats", type=click.Choice(["large", "both"]), help="Which ends get a flat.")
@click.option("--shelf", "shelf_file", help="What the shop owns (TOML).")
@click.option("--try-shelf", help="Write the shelf with this mandrel on it, for `plan --shelf`.")
@paper_options
@units_option
@json_option
def command(job_file: str | None, as_json: bool, **typed: Any) -> int:
    """A plain taper mandrel to be made: of a size, for a bore, or for the bore of JOB_FILE.

    Its drawing, its route from the bar, its acceptance sheet and its paper strip. Exit 3 where one
    mandrel does not take what is asked.
    """
    check_files(typed)
    check_toml(typed["try_shelf"], "--try-shelf")
    _check_source(job_file, typed)
    from borewright.job import merge_shelf, read_job, read_shelf
    from borewright.job.records import Shelf
    from borewright.reference.library import tables
    from borewright.service.making.mandrel import asked_of_job, make_mandrel, shelf_with

    shelf = None if typed["shelf_file"] is None else read_shelf(typed["shelf_file"])
    job = None if job_file is None else read_job(job_file)
    if job is not None and shelf is not None:
        job = merge_shelf(job, shelf)
    asked = _asked(typed, job)
    if job is not None:
        asked = asked_of_job(job, asked, tables())
    elif shelf is not None and asked.longest is None:
        asked = replace(asked, longest=shelf.machine.between_centers)
    look = look_of(typed, asked.units)
    done = make_mandrel(asked, tables(), look.paper, job)
    further = {}
    if typed["try_shelf"] is not None and done.design.fits:
        name = typed["try_shelf"]
        onto = shelf or (job.shelf if job else Shelf())
        further[name] = shelf_with(done.design, onto, name).encode("utf-8")
    return deliver(done.made, typed, look, as_json, further, (job_file, typed["shelf_file"]))


def _check_source(job_file: str | None, typed: dict[str, Any]) -> None:
    """RefusedInput unless exactly one of size, bore and job says what it is for."""
    said = [
        n
        for n, v in (("JOB_FILE", job_file), ("--size", typed["size"]), ("--bore", typed["bore"]))
        if v
    ]
    if len(said) != 1 and said != ["JOB_FILE", "--size"]:
        found = " and ".join(said) or "nothing"
        raise RefusedInput("--size, --bore, JOB_FILE", found, "one of them, or a job with a size")


def _asked(typed: dict[str, Any], job: Job | None) -> MandrelAsked:
    from borewright.job.bore_text import bore_size, size_typed
    from borewright.making.mandrel.asked import MandrelAsked

    bare = typed["units"] or (job.units if job else None)
    sizes = {
        name: given(read_length, typed[name], f"--{name.replace('_', '-')}", bare=bare)
        for name in LENGTHS
    }
    bores = None
    if typed["bore"] is not None:
        size, limits = bore_size(typed["bore"], "--bore", bare)
        bores = (limits.low, limits.high) if limits else (size, size)
    texts = (typed["size"], typed["bore"] and size_typed(typed["bore"]))
    return MandrelAsked(
        nominal=given(read_length, typed["size"], "--size", bare=bare),
        bores=bores,
        length=sizes["length"],
        travel=sizes["travel"],
        steel=typed["steel"],
        grinder=not typed["no_grinder"],
        taper=given(read_taper, typed["taper"], "--taper"),
        ground_length=sizes["ground_length"],
        overall_length=sizes["overall_length"],
        flats="both" if typed["flats"] == "both" else "large",
        longest=sizes["between_centers"],
        units=typed["units"] or (job.units if job else units_of(typed, *texts)),
    )
