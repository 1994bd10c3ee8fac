"""Click types that read quantities with units, and the units option they listen to."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

import click

from borewright.errors import RefusedInput


class Typed(click.ParamType[str]):
    """Text left as typed until the command reads it, when `--units` is known."""

    def __init__(self, name: str) -> None:
        self.name = name

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> str:
        return str(value)


LENGTH, FORCE, ANGLE, SPEED = Typed("length"), Typed("force"), Typed("angle"), Typed("speed")
PRESSURE, NUMBER, TAPER = Typed("pressure"), Typed("number"), Typed("taper")

units_option = click.option(
    "--units", type=click.Choice(["inch", "mm"]), help="What a number without a unit means."
)
json_option = click.option("--json", "as_json", is_flag=True, help="One JSON object, SI values.")


def taken_words(assumed: Iterable[Any], show: Any) -> str:
    """What was not given, in one line: value, unit and source of each."""
    said = [f"{t.what.replace('_', ' ')} {_taken(t, show)} ({t.source})" for t in assumed]
    return f"Assumed: {'; '.join(said)}." if said else "Nothing was assumed."


def _taken(taken: Any, show: Any) -> str:
    if isinstance(taken.taken, str):
        return taken.taken
    return str(show.quantity(taken.taken, taken.unit, _KINDS.get(taken.what, "")))


_KINDS = {
    "roughness": "small",
    "small_end": "bore",
    "uncertainty": "small",
    "reading_error": "small",
    "error_of_a_reading": "small",
    "tolerance": "small",
    "arm_of_friction": "small",
    "chip thinner than the force law was fitted for": "small",
}


def given(read: Callable[..., Any], text: str | None, where: str, **how: Any) -> Any:
    """The quantity read, or None where nothing was typed."""
    return None if text is None else read(text, where, **how)


def needed(text: str | None, where: str, example: str) -> str:
    """What was typed; RefusedInput where nothing was."""
    if text is None:
        raise RefusedInput(where, "nothing", example)
    return text
