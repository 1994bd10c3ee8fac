"""borewright mandrel: diameters measured along a mandrel, and what they show."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from borewright.cli.out import say, say_json, sentences, warn
from borewright.cli.stations_text import read_stations
from borewright.cli.typed import LENGTH, given, json_option, taken_words, units_option
from borewright.quantities.read import length_system, read_length

if TYPE_CHECKING:
    from borewright.service.mandrel_read import MandrelFound, MandrelReading


@click.command("mandrel")
@click.option(
    "--at", "at", nargs=2, type=LENGTH, multiple=True, metavar="X DIAMETER",
    help="A place from one end of the ground length, the diameter there; two or more.",
)  # fmt: skip
@click.option("--length", type=LENGTH, help="Ground length of the mandrel.")
@click.option("--uncertainty", type=LENGTH, help="Half the band of a diameter; 0.0001in if not.")
@units_option
@json_option
def command(as_json: bool, **typed: Any) -> int:
    """What diameters measured along a mandrel show: taper, straightness, bores it takes, where."""
    asked = _read(typed)
    from borewright.reference.library import tables
    from borewright.service.mandrel_read import read_mandrel

    found = read_mandrel(asked, tables())
    say_json(found.as_dict()) if as_json else _say(found, asked.units)
    if found.trouble:
        warn(f"borewright: no: {found.trouble}")
    return 3 if found.trouble else 0


def _say(found: MandrelFound, units: Any) -> None:
    from borewright.quantities.show import Show
    from borewright.service.mandrel_words import mandrel_words

    show = Show(units)
    sentences(mandrel_words(found, show))
    say(taken_words(found.assumed, show))


def _read(typed: dict[str, Any]) -> MandrelReading:
    """The typed text as numbers. Everything is refused here, before anything heavy is loaded."""
    bare = typed["units"]
    length = given(read_length, typed["length"], "--length", bare=bare)
    stations = read_stations(typed["at"], length, bare)
    known = given(read_length, typed["uncertainty"], "--uncertainty", bare=bare, zero=True)
    from borewright.service.mandrel_read import MandrelReading

    units = bare or length_system(typed["at"][0][1]) or "mm"
    return MandrelReading(stations, length, known, units)
