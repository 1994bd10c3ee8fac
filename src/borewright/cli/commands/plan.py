"""borewright plan: the whole plan for a job file."""

from __future__ import annotations

import click

from borewright.cli.out import say, warn
from borewright.cli.typed import json_option


@click.command("plan")
@click.argument("job_file")
@click.option("--shelf", "shelf_file", help="What the shop owns (TOML).")
@click.option("--use", default="", help="A way of holding, or the name of a mandrel.")
@click.option("--sheet", help="Write the bench sheet here (PDF).")
@click.option("--drawing", help="Write the drawing here (SVG).")
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
    paper: str | None,
    date: str | None,
    explain: bool,
    as_json: bool,
) -> int:
    """How to hold, press, cut and take off the part in JOB_FILE."""
    from borewright.answer.records import Verdict
    from borewright.job import read_job, read_shelf
    from borewright.service.files import drawing_text, sheet_bytes, write_whole
    from borewright.service.planned import plan

    job = read_job(job_file)
    answer = plan(job, read_shelf(shelf_file) if shelf_file else None, use=use)
    drawn = drawing_text(answer).encode() if drawing and answer.layout else None
    printed = sheet_bytes(answer, paper=paper, date=date) if sheet else None
    if sheet and printed is not None:
        write_whole(sheet, printed)
    if drawing and drawn is not None:
        write_whole(drawing, drawn)
    elif drawing:
        warn("borewright: no drawing was written: there is no mandrel in this plan")
    say(_text(answer, explain, as_json))
    return 3 if answer.verdict is Verdict.NO else 0


def _text(answer, explain: bool, as_json: bool) -> str:  # type: ignore[no-untyped-def]
    if as_json:
        from borewright.report.plan_json import plan_json

        return plan_json(answer)
    if explain:
        from borewright.report.explain import explain_text

        return explain_text(answer)
    from borewright.report.terminal import plan_text

    return plan_text(answer)
