"""The group of commands, loaded one by one, and what a refusal looks like.

Exit 0: done. 2: refused, stdout empty, one line on stderr. 3: computed, and the answer is no.
"""

from __future__ import annotations

import os
import sys
from importlib import import_module

import click

from borewright.cli.out import warn
from borewright.cli.refusals import as_refusal
from borewright.errors import BorewrightError, UnknownName

COMMANDS = (
    *("ask", "plan", "rescue", "picture", "fit", "cut", "load", "crown", "mandrel", "parallel"),
    *("runout", "balance", "make", "shelf", "reference"),
)


class OneByOne(click.Group):
    """Loads a command's file only when that command is asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in COMMANDS:
            return None
        command: click.Command = import_module(f"borewright.cli.commands.{cmd_name}").command
        return command

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        if args and args[0] not in COMMANDS and not args[0].startswith("-"):
            raise UnknownName("command", args[0], COMMANDS)
        return super().resolve_command(ctx, args)


@click.command(
    cls=OneByOne, name="borewright", context_settings={"help_option_names": ["-h", "--help"]}
)
@click.version_option(package_name="borewright", message="%(prog)s %(version)s")
def app() -> None:
    """Plans bored work on a manual lathe: hold it, press it, cut it, take it off."""


def run(arguments: list[str] | None = None) -> int:
    """Run one command and give its exit code."""
    try:
        code = app.main(args=arguments, prog_name="borewright", standalone_mode=False)
        sys.stdout.flush()
        return code if isinstance(code, int) else 0
    except BorewrightError as refusal:
        warn(f"borewright: {refusal}")
        return 2
    except click.exceptions.NoArgsIsHelpError as no_command:
        click.echo(no_command.format_message())
        return 0
    except click.ClickException as refusal:
        warn(f"borewright: {as_refusal(refusal)}")
        return 2
    except (click.exceptions.Abort, KeyboardInterrupt, EOFError):
        warn("borewright: stopped before the end; nothing was written")
        return 2
    except SystemExit:  # What click makes of a closed pipe, its only use here.
        return 0
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
