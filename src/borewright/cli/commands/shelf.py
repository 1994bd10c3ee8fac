"""borewright shelf: what the shop owns, from a spreadsheet, on the screen, and doubted."""

from __future__ import annotations

from typing import Literal

import click

from borewright.cli.commands import shelf_chart, shelf_parts
from borewright.cli.out import say, say_json, sentences, warn
from borewright.cli.typed import json_option, units_option
from borewright.errors import UnknownName

KINDS = ["mandrels", "lathes", "presses", "dogs", "drills", "reamers", "gauges"]


class Named(click.Group):
    """A group that refuses an unknown command with the nearest one."""

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        if args and args[0] not in self.commands and not args[0].startswith("-"):
            raise UnknownName("shelf", args[0], tuple(self.commands))
        return super().resolve_command(ctx, args)


@click.group("shelf", cls=Named)
def command() -> None:
    """What the shop owns: mandrels, lathes, presses, dogs, drills, reamers, gauges.

    docs/job-file.md explains the shelf file.
    """


@command.command("show")
@click.argument("shelf_file")
@json_option
def show(shelf_file: str, as_json: bool) -> int:
    """Say what is on SHELF_FILE, and what a plan takes for the rest."""
    from borewright.reference.library import tables
    from borewright.service.shelf_read import load_shelf
    from borewright.service.shelf_shown import shelf_lines, shelf_report

    file = load_shelf(shelf_file)
    if as_json:
        say_json(shelf_report(file, tables()))
    else:
        sentences(line for line in shelf_lines(file, tables()) if line)
    return 0


@command.command("check")
@click.argument("shelf_file")
@json_option
def check(shelf_file: str, as_json: bool) -> int:
    """List what on SHELF_FILE can hardly be true: exit 3 where there is anything, else 0."""
    from borewright.quantities.show import Show
    from borewright.reference.library import tables
    from borewright.service.shelf_doubts import shelf_doubts
    from borewright.service.shelf_read import load_shelf

    file = load_shelf(shelf_file)
    doubts = shelf_doubts(file.shelf, tables(), Show(file.units))
    if as_json:
        said = [{"of": doubt.of, "what": doubt.what} for doubt in doubts]
        say_json({"file": file.path, "doubts": said})
    else:
        sentences([str(doubt) for doubt in doubts] or ["Nothing on this shelf is doubted."])
    return 3 if doubts else 0


@command.command("import")
@click.argument("csv_file")
@click.option("--as", "kind", type=click.Choice(KINDS), required=True, help="What the rows are.")
@click.option("--columns", help='Which header is what: "size=Size,small_end=Small End".')
@units_option
@click.option("--into", help="Write this shelf file; else it is printed.")
@click.option("--overwrite", is_flag=True, help="Replace what an existing file lists of this kind.")
@click.option("--keep-good", is_flag=True, help="Take the good rows and list the bad ones.")
@json_option
def import_(
    csv_file: str,
    kind: str,
    columns: str | None,
    units: Literal["inch", "mm"] | None,
    into: str | None,
    overwrite: bool,
    keep_good: bool,
    as_json: bool,
) -> int:
    """Turn CSV_FILE, a spreadsheet's export with a header row, into a shelf file.

    Cells are parted by commas, semicolons or tabs. One bad row refuses the file, unless --keep-good:
    then each bad row is told on its own line of stderr. Without --into the shelf file is printed,
    with how the rows were understood as comments on top.
    """
    from borewright.reference.library import tables
    from borewright.service.files import write_all
    from borewright.service.shelf_import import (
        base_shelf,
        import_csv,
        import_lines,
        import_object,
    )

    base = base_shelf(into, overwrite)
    done = import_csv(
        csv_file, kind, tables(), columns=columns, units=units, keep_good=keep_good, base=base
    )
    if into is not None:
        write_all({into: done.text.encode()}, (csv_file,))
    for row in done.read.bad:
        warn(f"borewright: {csv_file} line {row.line}: {row.reason}")
    if as_json:
        say_json(import_object(done, into))
    elif into is not None:
        sentences([*import_lines(done), f"Shelf file: {into}"])
    else:
        sentences(f"# {line}" for line in import_lines(done))
        say(done.text)
    return 0


command.add_command(shelf_chart.command)
command.add_command(shelf_parts.command)
