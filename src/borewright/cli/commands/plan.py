"""borewright plan: the whole plan for a job file."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from borewright.cli.out import say, say_json, warn
from borewright.cli.typed import json_option

if TYPE_CHECKING:
    from borewright.answer.plan import Plan
    from borewright.job import Job, Shelf


LONGEST_DATE = 40
"""Characters of the date that the sheet has room for."""


@click.command("plan")
@click.argument("job_file")
@click.option("--shelf", "shelf_file", help="What the shop owns (TOML).")
@click.option(
    "--use",
    default="",
    help="A way of holding, or the name of a mandrel; it stands whatever the shelf lacks.",
)
@click.option("--sheet", help="Write the bench sheet here (PDF).")
@click.option("--drawing", help="Write the drawing here (SVG).")
@click.option("--charts", metavar="FOLDER", help="Write the charts into this folder (SVG).")
@click.option("--paper", type=click.Choice(["letter", "a4"]), help="Paper of the sheet.")
@click.option("--date", help="Date to print on the sheet; none is printed otherwise.")
@click.option("--explain", is_flag=True, help="Each figure as one line a pencil can check.")
@json_option
def command(
    job_file: str,
    shelf_file: str | None,
    use: str,
    sheet: str | None,
    drawing: str | None,
    charts: str | None,
    paper: str | None,
    date: str | None,
    explain: bool,
    as_json: bool,
) -> int:
    """How to hold, press, cut and take off the part in JOB_FILE.

    JOB_FILE is TOML: title, units, [work] (material, blank, outside, length or outline, hub, web,
    rim, finished, bore), [machine], [hold] (use, mandrels, press), [[cut]]. `borewright ask` writes
    one; docs/job-file.md explains every key.
    """
    from borewright.answer.records import Verdict
    from borewright.errors import RefusedInput
    from borewright.job import read_job, read_shelf
    from borewright.service.files import drawing_text, is_drawn, sheet_bytes, write_into

    _check_date(date)
    job = read_job(job_file)
    shelf = None if shelf_file is None else read_shelf(shelf_file)
    answer = _planned(job, shelf, use, job_file)
    picture = drawing_text(answer) if is_drawn(answer) and (drawing or sheet) else ""
    files = {}
    if sheet is not None:
        files[sheet] = sheet_bytes(answer, picture=picture, paper=paper, date=date)
    if drawing is not None and drawing == sheet:
        raise RefusedInput("--drawing", f"{drawing!r} for both", "a name of its own")
    if drawing is not None and picture:
        files[drawing] = picture.encode()
    write_into(charts, _charted(answer, charts), files, (job_file, shelf_file))
    if drawing is not None and not picture:
        warn("borewright: no drawing was written: nothing holds the work in this plan")
    _say(answer, job, job_file, explain, as_json)
    return 3 if answer.verdict is Verdict.NO else 0


def _charted(answer: Plan, folder: str | None) -> dict[str, bytes]:
    """The charts asked for, by file name; says so where there are none."""
    from borewright.service.charts_drawn import chart_texts

    texts = chart_texts(answer) if folder is not None else {}
    if folder is not None and not texts:
        warn("borewright: no chart was written: this plan has none")
    return {name: text.encode() for name, text in texts.items()}


def _say(answer: Plan, job: Job, job_file: str, explain: bool, as_json: bool) -> None:
    if as_json:
        from borewright.report.plan_json import plan_object

        say_json(plan_object(answer))
    elif explain:
        from borewright.report.explain import explain_text

        say(explain_text(answer))
    else:
        from borewright.report.terminal import plan_text
        from borewright.service.making.hints import making_hints

        hints = making_hints(answer, job, job_file)
        say("\n".join((plan_text(answer).rstrip("\n"), *(("", *hints) if hints else ()))))


def _planned(job: Job, shelf: Shelf | None, use: str, job_file: str) -> Plan:
    """The plan; a refusal of something in the job file names the file."""
    from borewright.errors import RefusedInput
    from borewright.service.planned import plan

    try:
        return plan(job, shelf, use=use)
    except RefusedInput as refusal:
        if not refusal.where.startswith(("work.", "hold.", "cut[", "mandrel")):
            raise
        raise RefusedInput(f"{job_file}: {refusal.where}", refusal.found, refusal.allowed) from None


def _check_date(date: str | None) -> None:
    from borewright.errors import RefusedInput

    if date is not None and (len(date) > LONGEST_DATE or not date.isprintable()):
        raise RefusedInput(
            "--date", f"{len(date)} characters", f"one line of at most {LONGEST_DATE}"
        )
