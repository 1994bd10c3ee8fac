"""borewright picture: what the pressed joint does to the work, drawn."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from borewright.cli.out import say, say_json, warn
from borewright.cli.typed import json_option

if TYPE_CHECKING:
    from borewright.answer.pressed import Pictured
    from borewright.job import Job, Shelf


@click.command("picture")
@click.argument("job_file")
@click.option("--shelf", "shelf_file", help="What the shop owns (TOML).")
@click.option("--use", default="", help="A way of holding, or the name of a mandrel.")
@click.option("--out", help="Write the picture here (SVG or PNG, by its ending).")
@json_option
def command(job_file: str, shelf_file: str | None, use: str, out: str | None, as_json: bool) -> int:
    """What the pressed joint does to the part in JOB_FILE, with the hold and travel of `plan`.

    The pressure along the bore and where contact ends; the tension in the section as numbered
    bands, with the share of the metal's strength; where the tension is highest.
    """
    from borewright.job import read_job, read_shelf
    from borewright.report.pictured_json import pictured_object
    from borewright.service.files import write_all
    from borewright.service.picture import picture_bytes, picture_ending, picture_in_words

    if out is not None:
        picture_ending(out)
    job = read_job(job_file)
    shelf = None if shelf_file is None else read_shelf(shelf_file)
    found = _pictured(job, shelf, use, job_file)
    if out is not None and found.picture is not None:
        write_all({out: picture_bytes(found, out)}, (job_file, shelf_file))
    if out is not None and found.picture is None:
        warn(f"borewright: no picture was written: {found.why}")
    say_json(pictured_object(found)) if as_json else say(picture_in_words(found))
    return 3 if found.verdict.value == "no" or found.picture is None else 0


def _pictured(job: Job, shelf: Shelf | None, use: str, job_file: str) -> Pictured:
    """The picture; a refusal of something in the job file names the file."""
    from borewright.errors import RefusedInput
    from borewright.service.picture import picture

    try:
        return picture(job, shelf, use=use)
    except RefusedInput as refusal:
        if not refusal.where.startswith(("work.", "hold.", "cut[", "mandrel")):
            raise
        raise RefusedInput(f"{job_file}: {refusal.where}", refusal.found, refusal.allowed) from None
