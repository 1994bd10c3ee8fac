"""borewright shelf parts: a list of parts against one shelf."""

from __future__ import annotations

import sys

import click

from borewright.cli.out import say, say_json
from borewright.cli.typed import json_option, units_option


@click.command("parts")
@click.argument("parts_file")
@click.argument("shelf_file")
@click.option("--out", help="Write the answers here (CSV).")
@units_option
@json_option
def command(
    parts_file: str, shelf_file: str, out: str | None, units: str | None, as_json: bool
) -> int:
    """Plan every part of PARTS_FILE (CSV) against SHELF_FILE.

    Columns: part, material, outside, length, bore; and, where known, blank, quantity, finished,
    tolerance, uncertainty, measured_with, made_by. Exit 3 where a part is a no or a row is not read.
    """
    from borewright.job import read_shelf
    from borewright.job.parts_file import read_parts
    from borewright.quantities.show import Show
    from borewright.reference.library import tables
    from borewright.service.files import write_all
    from borewright.service.parts_planned import (
        parts_csv,
        parts_lines,
        parts_object,
        parts_planned,
    )

    read = read_parts(parts_file, units)  # type: ignore[arg-type]
    shelf = read_shelf(shelf_file)
    show = Show("mm" if units == "mm" else "inch")
    with click.progressbar(
        length=len(read.parts), label="parts", file=sys.stderr, hidden=not sys.stderr.isatty()
    ) as bar:
        planned = parts_planned(read, shelf, tables(), lambda: bar.update(1))
    if out is not None:
        write_all({out: parts_csv(planned, show)}, (parts_file, shelf_file))
    say_json(parts_object(planned)) if as_json else say("\n".join(parts_lines(planned, show)))
    bad = planned.bad or any(a.verdict is None or a.verdict.value == "no" for a in planned.answers)
    return 3 if bad else 0
