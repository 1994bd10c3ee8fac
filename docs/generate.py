"""Write the reference pages of the documentation from the program itself.

    python docs/generate.py

commands.md from the commands' own help, tables.md from the tables' certificates, questions.md from
the questions' files and their thresholds. A test holds the pages against what this would write.
"""

from __future__ import annotations

import importlib
import math
from collections.abc import Iterator
from pathlib import Path

import click

from borewright.cli.app import COMMANDS, app
from borewright.planning.questions.asked import ORDER
from borewright.reference.library import Tables, table_names
from borewright.reference.print import describe_table

HERE = Path(__file__).parent


def pages() -> dict[str, str]:
    """Each page's name and text."""
    return {
        "commands.md": "\n".join(_commands()) + "\n",
        "tables.md": "\n".join(_tables()) + "\n",
        "questions.md": "\n".join(_questions()) + "\n",
    }


def _commands() -> Iterator[str]:
    yield "# Commands\n\nWritten from the commands' own help; `borewright COMMAND --help` prints the same."
    context = click.Context(app, info_name="borewright", **app.context_settings)
    for name in COMMANDS:
        command = app.get_command(context, name)
        assert command is not None
        yield from _command(command, context, name)


def _command(command: click.Command, parent: click.Context, name: str) -> Iterator[str]:
    context = click.Context(command, info_name=name, parent=parent, terminal_width=88)
    yield f"\n## {context.command_path}\n\n```text\n{command.get_help(context).rstrip()}\n```"
    if isinstance(command, click.Group):
        for inner in command.list_commands(context):
            found = command.get_command(context, inner)
            assert found is not None
            yield from _command(found, context, inner)


def _tables() -> Iterator[str]:
    yield "# Tables\n\nWritten from the tables' certificates; `borewright reference TABLE` prints the rows."
    library = Tables()
    for name in table_names():
        certificate = describe_table(name, library).certificate
        yield f"\n## {name}\n\n{certificate.title}. {certificate.answers}\n"
        yield f"{certificate.provenance} How sure: {certificate.uncertainty}.\n"
        yield "| column | unit | meaning |\n|---|---|---|"
        for column in certificate.columns:
            yield f"| {column.name} | {column.unit} | {column.meaning} |"


ALSO = {"seat": ("located",), "crack": ("yield",), "bore": ("form", "fits"), "speed": ("power",)}
ALSO |= {"bend": ("chatter",)}
"""Further rows of `thresholds` that count within a question."""


def _questions() -> Iterator[str]:
    yield "# Questions\n\nEvery plan answers these, each with a verdict, a likely and a poor-case margin (1 case in 20),"
    yield "a reason and what would change it. The margins that a verdict needs are ours, in the table `thresholds`."
    library = Tables()
    for name in ORDER:
        module = importlib.import_module(f"borewright.planning.questions.{name}")
        ask = getattr(module, f"ask_{name}")
        yield f"\n## {name}\n\n{_told(module.__doc__)}\n\n{_told(ask.__doc__)}\n"
        yield "| | likely | poor case |\n|---|---|---|"
        for row in (name, *ALSO.get(name, ())):
            t = library.threshold(row)
            yield f"| {row}: yes from | {_least(t.yes_likely)} | {_least(t.yes_low)} |"
            yield f"| {row}: with care from | {_least(t.care_likely)} | {_least(t.care_low)} |"


def _least(margin: float) -> str:
    return f"{margin:g}" if math.isfinite(margin) else "any"


def _told(words: str | None) -> str:
    assert words
    return " ".join(words.split())


def main() -> None:
    """Write the pages."""
    for name, text in pages().items():
        (HERE / name).write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
