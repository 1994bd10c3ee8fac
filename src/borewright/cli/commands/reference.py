"""borewright reference: the tables, with their sources."""

from __future__ import annotations

import click

from borewright.cli.out import say, say_json
from borewright.cli.typed import json_option


@click.command("reference")
@click.argument("table", required=False)
@json_option
def command(table: str | None, as_json: bool) -> int:
    """Print one TABLE with its sources, or list the tables."""
    from borewright.service.tables_shown import describe_table, table_lines, table_names

    if table is None:
        names = table_names()
        if as_json:
            say_json({"tables": list(names)})
        else:
            say("\n".join(f"{name:24}{describe_table(name).certificate.title}" for name in names))
        return 0
    view = describe_table(table)
    say_json(view.as_dict()) if as_json else say("\n".join(table_lines(view)))
    return 0
