"""borewright shelf chart: one page for the wall, of a shop's own shelf."""

from __future__ import annotations

import click

from borewright.cli.out import say, say_json
from borewright.cli.typed import json_option


@click.command("chart")
@click.argument("shelf_file")
@click.option("--out", required=True, help="Write the chart here (PDF).")
@click.option("--material", "materials", multiple=True, help="A column of the table; may repeat.")
@click.option("--paper", type=click.Choice(["letter", "a4"]), help="Paper of the chart.")
@click.option(
    "--units", type=click.Choice(["inch", "mm"]), help="What comes first; else as the file says."
)
@json_option
def command(
    shelf_file: str,
    out: str,
    materials: tuple[str, ...],
    paper: str | None,
    units: str | None,
    as_json: bool,
) -> int:
    """Chart the mandrels in SHELF_FILE on one page to pin up by the lathe.

    Which bores each takes and where they touch; how deep a cut holds by outside and material.
    """
    from borewright.report.chart_json import chart_object
    from borewright.service.files import write_all
    from borewright.service.shelf_chart import chart_bytes, chart_in_words, shelf_chart
    from borewright.service.shelf_read import load_shelf

    file = load_shelf(shelf_file)
    chart = shelf_chart(file.shelf, materials, units or file.units)
    write_all({out: chart_bytes(chart, paper)}, (shelf_file,))
    say_json(chart_object(chart)) if as_json else say(chart_in_words(chart, out))
    return 0
