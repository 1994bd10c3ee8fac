"""borewright make: what the shop makes itself, with its papers."""

from __future__ import annotations

from importlib import import_module

import click

from borewright.errors import UnknownName

THINGS = ("blank", "gauge", "mandrel", "set", "soft", "strip", "stub")


class Things(click.Group):
    """Loads the file of one thing only when that thing is asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(THINGS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in THINGS:
            return None
        place = f"borewright.cli.commands.making.{cmd_name}"
        command: click.Command = import_module(place).command
        return command

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        if args and args[0] not in THINGS and not args[0].startswith("-"):
            raise UnknownName("make", args[0], THINGS)
        return super().resolve_command(ctx, args)


@click.group("make", cls=Things)
def command() -> None:
    """What the shop makes itself: drawings, route sheets, strips."""
