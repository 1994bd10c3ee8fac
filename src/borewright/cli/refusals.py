"""What click refuses, in the form of every other refusal: where, what was found, what is allowed."""

from __future__ import annotations

import click

from borewright.errors import RefusedInput


def as_refusal(usage: click.ClickException) -> RefusedInput:
    """The same refusal as RefusedInput.

    >>> str(as_refusal(click.BadOptionUsage("--bore", "Option '--bore' requires an argument.")))
    '--bore: found nothing after it; allowed is a value'
    """
    if isinstance(usage, click.NoSuchOption):
        return RefusedInput(usage.option_name, "no such option", _options(usage.ctx))
    if isinstance(usage, click.MissingParameter):
        return RefusedInput(_place(usage), "nothing", f"a value; {_usage(usage.ctx)}")
    if isinstance(usage, click.BadParameter):
        return _bad_value(usage)
    if isinstance(usage, click.BadOptionUsage):
        return _bad_use(usage)
    ctx = usage.ctx if isinstance(usage, click.UsageError) else None
    found = usage.format_message().rstrip(".").removeprefix("Got ")
    return RefusedInput("arguments", found, _usage(ctx))


def _bad_value(usage: click.BadParameter) -> RefusedInput:
    kind = usage.param.type if usage.param is not None else None
    if isinstance(kind, click.Choice):
        found = usage.message.split(" is not one of ")[0]
        return RefusedInput(_place(usage), found, " or ".join(str(c) for c in kind.choices))
    return RefusedInput(_place(usage), usage.message.rstrip("."), _usage(usage.ctx))


def _bad_use(usage: click.BadOptionUsage) -> RefusedInput:
    if "requires an argument" in usage.message:
        return RefusedInput(usage.option_name, "nothing after it", "a value")
    return RefusedInput(usage.option_name, usage.message.rstrip("."), _usage(usage.ctx))


def _place(usage: click.BadParameter) -> str:
    if usage.param is None:
        return "arguments"
    named = usage.param.opts[0]
    return named if named.startswith("-") else usage.param.human_readable_name


def _options(ctx: click.Context | None) -> str:
    if ctx is None:
        return "an option of this command"
    known = [o for p in ctx.command.get_params(ctx) for o in p.opts if o.startswith("--")]
    return f"one of: {', '.join(sorted(known))}"


def _usage(ctx: click.Context | None) -> str:
    return (
        "as --help says"
        if ctx is None
        else " ".join(ctx.get_usage().split()).removeprefix("Usage: ")
    )
