"""borewright balance: wax that balances work, turned into a hole or a weight."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from borewright.cli.out import record_json, say, say_json, sentences
from borewright.cli.typed import (
    ANGLE,
    LENGTH,
    Typed,
    given,
    json_option,
    needed,
    taken_words,
    units_option,
)
from borewright.errors import RefusedInput
from borewright.quantities.read import length_system, read_angle, read_length, read_mass

if TYPE_CHECKING:
    from borewright.service.balanced import BalanceInput

MASS = Typed("mass")


@click.command("balance")
@click.option("--wax", type=MASS, help="Weight of the wax that balances it.")
@click.option("--radius", type=LENGTH, help="From the axis to the middle of the wax.")
@click.option(
    "--at", type=LENGTH, help="From the axis to where the hole is drilled, or the weight fixed."
)
@click.option("--material", help="Material of the work; needed with --drill.")
@click.option(
    "--drill", type=LENGTH, help="Diameter of the drill; left out, only the weight to add."
)
@click.option(
    "--point", type=ANGLE, help="Point angle of the drill; 118deg if not, 180deg for a flat bottom."
)
@click.option(
    "--thickness",
    type=LENGTH,
    help="Metal there along the hole: a hole too deep for it is refused.",
)
@click.option("--mass", type=MASS, help="Weight of work and mandrel: what friction may still hide.")
@click.option(
    "--on",
    type=click.Choice(["knife-edges", "bench-centers"]),
    default="knife-edges",
    show_default=True,
    help="What it was balanced on.",
)
@units_option
@json_option
def command(as_json: bool, **typed: Any) -> int:
    """Balance at rest: the wax that balances work on its mandrel, turned into a hole or a weight.

    Stick wax on the light side until it stays wherever it is put, then weigh the wax. The hole goes opposite,
    on the heavy side; a weight goes where the wax was.
    """
    asked = _read(typed)
    from borewright.reference.library import tables
    from borewright.service.balanced import balance, balance_words

    result = balance(asked, tables())
    if as_json:
        say_json(record_json(result))
        return 0
    from borewright.quantities.show import Show

    show = Show(typed["units"] or length_system(typed["radius"]) or "mm")
    sentences(balance_words(asked, result, show))
    say(taken_words(result.assumed, show))
    return 0


def _read(typed: dict[str, Any]) -> BalanceInput:
    bare = typed["units"]
    wax = read_mass(needed(typed["wax"], "--wax", "a weight, such as 12g"), "--wax")
    radius = read_length(
        needed(typed["radius"], "--radius", "a radius, such as 80mm"), "--radius", bare=bare
    )
    at = read_length(needed(typed["at"], "--at", "a radius, such as 70mm"), "--at", bare=bare)
    drill = given(read_length, typed["drill"], "--drill", bare=bare)
    if drill is not None and drill >= 2 * at:
        raise RefusedInput(
            "--drill", typed["drill"], f"a drill smaller than twice --at, {typed['at']}"
        )
    point = given(read_angle, typed["point"], "--point")
    if point is not None and not 0.5 <= point <= 3.1416:
        raise RefusedInput("--point", typed["point"], "30deg to 180deg")
    thickness = given(read_length, typed["thickness"], "--thickness", bare=bare)
    mass = given(read_mass, typed["mass"], "--mass")
    from borewright.service.balanced import BalanceInput

    return BalanceInput(
        wax, radius, at, typed["material"], drill, point, thickness, mass, typed["on"]
    )
