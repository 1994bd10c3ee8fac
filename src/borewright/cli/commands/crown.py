"""borewright crown: the crown of a flat-belt pulley."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from borewright.cli.out import say, say_json
from borewright.cli.typed import (
    LENGTH,
    given,
    json_option,
    needed,
    taken_words,
    units_option,
)
from borewright.errors import RefusedInput
from borewright.quantities.read import length_system, read_length

if TYPE_CHECKING:
    from borewright.service.crowned import CrownInput, CrownResult


@click.command("crown")
@click.option("--diameter", type=LENGTH, help="Diameter of the pulley at the middle of its face.")
@click.option("--face", type=LENGTH, help="Width of the face.")
@click.option("--rule", help="Take the crown by this rule, see `borewright reference crowns`.")
@click.option("--height", type=LENGTH, help="Or this height, on radius.")
@click.option("--shape", type=click.Choice(["taper", "arc"]), help="Double taper or arc.")
@click.option("--flat", type=LENGTH, help="Width left flat in the middle of a double taper.")
@click.option(
    "--dial",
    type=click.Choice(["radius", "diameter", "unknown"]),
    help="What the cross slide's dial counts.",
)
@click.option("--division", type=LENGTH, help="One division of that dial, as it is marked.")
@click.option("--steps", help="How many steps of the saddle in half the face.")
@click.option("--slide-travel", type=LENGTH, help="Travel of the top slide for the indicator.")
@click.option("--template", help="Write a template at full size here (SVG, DXF or PDF).")
@click.option("--paper", type=click.Choice(["letter", "a4"]), help="Paper of the template.")
@units_option
@json_option
def command(as_json: bool, **typed: Any) -> int:
    """The crown of a flat-belt pulley: how high by every rule, how it is set and cut."""
    asked = _read(typed)
    from borewright.reference.library import tables
    from borewright.service.crowned import crown

    if typed["template"] is not None:
        from borewright.service.crown_template import check_ending

        check_ending(typed["template"], "--template")
    made = crown(asked, tables())
    if typed["template"] is not None:
        _write(made, typed["template"], asked, typed["paper"])
    say_json(made.as_dict()) if as_json else say(_words(made, asked, typed["template"]))
    return 0


def _read(typed: dict[str, Any]) -> CrownInput:
    bare = typed["units"]
    diameter = needed(typed["diameter"], "--diameter", "a diameter, such as 5in")
    face = needed(typed["face"], "--face", "a width of face, such as 2in")
    if typed["rule"] is not None and typed["height"] is not None:
        raise RefusedInput("--rule, --height", "both", "one of them")
    lengths = {
        name: given(
            read_length, typed[name], f"--{name.replace('_', '-')}", bare=bare, zero=name == "flat"
        )
        for name in ("height", "flat", "division", "slide_travel")
    }
    from borewright.service.crowned import CrownInput

    return CrownInput(
        read_length(diameter, "--diameter", bare=bare),
        read_length(face, "--face", bare=bare),
        rule=typed["rule"],
        shape=typed["shape"],
        dial=typed["dial"],
        steps=_steps(typed["steps"]),
        units=bare or length_system(diameter) or "mm",
        **lengths,
    )


def _steps(text: str | None) -> int | None:
    """A whole number, as typed; RefusedInput for any other text."""
    if text is None:
        return None
    if not (text.isascii() and text.isdigit() and len(text) < 10):
        raise RefusedInput("--steps", repr(text), "a whole number, such as 8")
    return int(text)


def _write(made: CrownResult, name: str, asked: CrownInput, paper: str | None) -> None:
    from borewright.service.crown_template import template_bytes
    from borewright.service.files import write_all

    write_all({name: template_bytes(made.crown, name, asked.units, paper)})


def _words(made: CrownResult, asked: CrownInput, template: str | None) -> str:
    from borewright.quantities.show import Show
    from borewright.service.crown_told import crown_lines

    show = Show(asked.units)
    written = [f"Template at full size: {template}. Print it at 100 %."] if template else []
    return "\n".join([*crown_lines(made, show), *written, taken_words(made.assumed, show)])
