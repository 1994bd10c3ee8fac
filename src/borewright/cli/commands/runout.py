"""borewright runout: whose runout it is, and what may be behind it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from borewright.cli.commands.load import Known
from borewright.cli.out import record_json, say, say_json, sentences
from borewright.cli.typed import (
    ANGLE,
    LENGTH,
    given,
    json_option,
    needed,
    taken_words,
    units_option,
)
from borewright.errors import RefusedInput
from borewright.quantities.read import length_system, read_angle, read_length

if TYPE_CHECKING:
    from borewright.service.runout_split import SplitInput

HALF_TURN = 3.141592653589793


@click.group("runout", cls=Known)
def command() -> None:
    """Whose runout it is, and what may be behind it."""


@command.command("split")
@click.option("--first", type=LENGTH, help="Whole indicator reading, high to low over one turn.")
@click.option(
    "--second",
    type=LENGTH,
    help="The same, after the work alone was turned half round on its mandrel.",
)
@click.option(
    "--first-at", type=ANGLE, help="First high spot, from a mark on the mandrel (the dog's tail)."
)
@click.option(
    "--second-at", type=ANGLE, help="Second high spot, from the same mark, the same way round."
)
@click.option("--reading-error", type=LENGTH, help="How far a reading may be out; 0.0001in if not.")
@click.option(
    "--angle-error",
    type=ANGLE,
    help="How far the place of a high spot may be out; about 10deg if not.",
)
@units_option
@json_option
def split(as_json: bool, **typed: Any) -> int:
    """Two readings, half a turn apart: the mandrel's share and the work's.

    Read the rim over one turn. Turn the work, not the mandrel, half round, seat it as before, and read again.
    A mark on the mandrel says where each high spot is; without it the answer is bounds.
    """
    asked = _split_input(typed)
    from borewright.reference.library import tables
    from borewright.service.runout_split import split_runout, split_words

    result = split_runout(asked, tables())
    if as_json:
        say_json(record_json(result))
        return 0
    from borewright.quantities.show import Show

    show = Show(typed["units"] or length_system(typed["first"]) or "mm")
    sentences(split_words(result, show))
    say(taken_words(result.assumed, show))
    return 0


def _split_input(typed: dict[str, Any]) -> SplitInput:
    bare = typed["units"]
    readings = [
        read_length(
            needed(typed[name], f"--{name}", f"a {name} reading, such as 0.003in"),
            f"--{name}",
            bare=bare,
            zero=True,
        )
        for name in ("first", "second")
    ]
    first_at = given(read_angle, typed["first_at"], "--first-at", zero=True)
    second_at = given(read_angle, typed["second_at"], "--second-at", zero=True)
    if (first_at is None) != (second_at is None):
        raise RefusedInput(
            "--first-at, --second-at", "one of them", "both, from the same mark, or neither"
        )
    error = given(read_length, typed["reading_error"], "--reading-error", bare=bare, zero=True)
    slip = given(read_angle, typed["angle_error"], "--angle-error", zero=True)
    if slip is not None and slip > HALF_TURN:
        raise RefusedInput("--angle-error", typed["angle_error"], "0deg to 180deg")
    from borewright.service.runout_split import SplitInput

    return SplitInput(readings[0], readings[1], first_at, second_at, error, slip)


@command.command("find")
@click.option(
    "--where",
    type=click.Choice(["rim", "face"]),
    help="rim: to and fro (radial); face: sideways (axial wobble).",
)
@click.option(
    "--highs",
    type=click.Choice(["1", "2", "3", "many"]),
    help="High spots that the indicator shows in one turn.",
)
@click.option(
    "--shape",
    type=click.Choice(["taper", "bell", "barrel", "chatter"]),
    help="Instead of highs: size along the rim, form of a face, or marks.",
)
@click.option(
    "--when", type=click.Choice(["while-held", "after-release", "turned-on-mandrel", "on-its-shaft"]),
    help="while-held: on its mandrel or in the chuck; after-release: only once it is off; turned-on-mandrel: it "
    "changes when the work is turned round on its mandrel; on-its-shaft: where it will run.",
)  # fmt: skip
@json_option
def find(
    as_json: bool, where: str | None, highs: str | None, shape: str | None, when: str | None
) -> int:
    """What is out of true, where and when: likely causes in order, and the next check for each.

    Leave out what you do not know.
    """
    if highs and shape:
        raise RefusedInput("--highs, --shape", "both", "one of the two; ask twice where both show")
    if not (where or highs or shape or when):
        raise RefusedInput(
            "runout find", "nothing", "one at least of --where, --highs, --shape, --when"
        )
    from borewright.reference.library import tables
    from borewright.service.runout_find import causes_json, causes_words, find_causes

    found = find_causes(where, highs or shape, when, tables())
    say_json(causes_json(found)) if as_json else sentences(causes_words(found))
    return 0
