"""borewright make strip: a paper strip that makes a bore gauge of a mandrel."""

from __future__ import annotations

from textwrap import fill
from typing import TYPE_CHECKING, Any

import click

from borewright.cli.out import say, say_json
from borewright.cli.typed import LENGTH, TAPER, given, json_option, needed, units_option
from borewright.errors import RefusedInput
from borewright.quantities.read import length_system, read_length, read_taper

if TYPE_CHECKING:
    from borewright.job.records import MandrelNote
    from borewright.service.making.strip import MadeStrip

SIZES = ("small_end", "large_end", "ground_length", "overall_length")


@click.command("strip")
@click.option("--mandrel", help="Name of a mandrel in the shelf file.")
@click.option("--shelf", "shelf_file", help="What the shop owns (TOML).")
@click.option("--size", type=LENGTH, help="Size on the mandrel, without a shelf file.")
@click.option("--small-end", type=LENGTH, help="Diameter at the small end of the ground length.")
@click.option("--large-end", type=LENGTH, help="Diameter at the large end of the ground length.")
@click.option("--taper", type=TAPER, help="Taper on diameter per length.")
@click.option("--ground-length", type=LENGTH, help="Ground length of the mandrel.")
@click.option("--overall-length", type=LENGTH, help="Overall length of the mandrel.")
@click.option("--hand-travel", type=LENGTH, help="How far a light push moves work past touch.")
@click.option("--out", help="Write the strip here (PDF).")
@click.option("--paper", type=click.Choice(["letter", "a4"]), help="Paper of the strip.")
@units_option
@json_option
def command(as_json: bool, **typed: Any) -> int:
    """A paper strip, bore against position, that makes a bore gauge of a mandrel."""
    out = needed(typed["out"], "--out", "the name of a PDF file to write")
    from borewright.service.making.outputs import check_ending

    check_ending(out, "--out", (".pdf",))
    _check_source(typed)
    hand = given(read_length, typed["hand_travel"], "--hand-travel", bare=typed["units"], zero=True)
    note, units = _note(typed)
    from borewright.reference.library import tables
    from borewright.service.files import write_all
    from borewright.service.making.strip import make_strip

    made = make_strip(note, tables(), units=units, paper=typed["paper"], hand_travel=hand or 0.0)
    write_all({out: made.pdf}, (typed["shelf_file"],))
    say_json(made.as_dict()) if as_json else _say(made, out)
    return 0


def _say(made: MadeStrip, out: str) -> None:
    from borewright.quantities.show import Show

    show, strip = Show(made.strip.units), made.strip
    ends = show.band(strip.ticks[0].bore, strip.ticks[-1].bore, "bore")
    say(f"Strip of {strip.name}: bores of {ends}, a line every {show.small(strip.step)}. {out}")
    say(
        f"Print at 100 % on {made.paper}, hold a rule to its two lines of 50 mm and 2 in, cut it out."
    )
    for line in (
        *strip.words,
        *(f"Assumed: {a.what}: {a.taken} ({a.source})." for a in made.assumed),
    ):
        say(fill(line, 90))


def _check_source(typed: dict[str, Any]) -> None:
    """RefusedInput unless the mandrel is either one of a shelf or stated here."""
    by_name = typed["mandrel"] is not None or typed["shelf_file"] is not None
    if by_name == (typed["size"] is not None):
        found = "both" if by_name else "neither"
        raise RefusedInput("--size, --shelf", found, "--shelf with --mandrel, or --size")
    beside = [name for name in (*SIZES, "taper") if typed[name] is not None]
    if by_name and beside:
        where = f"--{beside[0].replace('_', '-')}"
        raise RefusedInput(where, "a size beside --shelf", "sizes beside --size only")
    if by_name:
        needed(typed["mandrel"], "--mandrel", "the name of a mandrel in the shelf file")
        needed(typed["shelf_file"], "--shelf", "a shelf file")


def _note(typed: dict[str, Any]) -> tuple[MandrelNote, Any]:
    bare = typed["units"]
    if typed["size"] is None:
        from borewright.job import read_shelf
        from borewright.service.making.strip import note_named

        note = note_named(read_shelf(typed["shelf_file"]), typed["mandrel"])
        return note, bare or _system(note.nominal)
    return _stated(typed), bare or length_system(typed["size"]) or "mm"


def _stated(typed: dict[str, Any]) -> MandrelNote:
    from borewright.job.records import MandrelNote

    bare = typed["units"]
    sizes = {
        name: given(read_length, typed[name], f"--{name.replace('_', '-')}", bare=bare)
        for name in SIZES
    }
    return MandrelNote(
        nominal=read_length(typed["size"], "--size", bare=bare),
        name=f"{typed['size'].strip()} mandrel",
        taper=given(read_taper, typed["taper"], "--taper"),
        **sizes,
    )


def _system(nominal: float) -> str:
    """Inch for a size that is a whole number of 64ths, mm for any other."""
    in_64ths = nominal / 0.0254 * 64
    return "inch" if abs(in_64ths - round(in_64ths)) < 1e-4 else "mm"
