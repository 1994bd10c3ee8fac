"""borewright parallel: two test bands, and how far the tailstock is out."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from borewright.cli.out import record_json, say, say_json, sentences
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
    from borewright.service.parallel_set import ParallelInput


@click.command("parallel")
@click.option("--headstock-end", type=LENGTH, help="Diameter of the band near the headstock.")
@click.option("--tailstock-end", type=LENGTH, help="Diameter of the band near the tailstock.")
@click.option(
    "--apart", type=LENGTH, help="From the middle of one band to the middle of the other."
)
@click.option(
    "--between-centers",
    "--between-centres",
    type=LENGTH,
    help="Whole length of the bar between the centers.",
)
@click.option("--work-length", type=LENGTH, help="Length of the work to be turned; --apart if not.")
@click.option("--tolerance", type=LENGTH, help="Whole band on the work's diameter; 0.002in if not.")
@click.option(
    "--reading-error", type=LENGTH, help="How far a diameter may be out; 0.0001in if not."
)
@units_option
@json_option
def command(as_json: bool, **typed: Any) -> int:
    """Turning parallel between centers: two test bands tell how far to move the tailstock, and which way.

    Take a light cut over both bands at one setting of the dial, on a bar of about the mandrel's length. In JSON
    set_over_m is above zero towards the tool, below zero away from it.
    """
    asked = _read(typed)
    from borewright.reference.library import tables
    from borewright.service.parallel_set import parallel_words, set_parallel

    result = set_parallel(asked, tables())
    if as_json:
        say_json(record_json(result))
        return 0
    from borewright.quantities.show import Show

    show = Show(typed["units"] or length_system(typed["headstock_end"]) or "mm")
    sentences(parallel_words(result, show))
    say(taken_words(result.assumed, show))
    return 0


EXAMPLES = {
    "headstock_end": "a diameter, such as 25.020mm",
    "tailstock_end": "a diameter, such as 25.005mm",
    "apart": "a distance, such as 150mm",
    "between_centers": "a length, such as 300mm",
}


def _read(typed: dict[str, Any]) -> ParallelInput:
    bare = typed["units"]
    head, tail, apart, between = (
        read_length(needed(typed[name], _option(name), example), _option(name), bare=bare)
        for name, example in EXAMPLES.items()
    )
    if apart > between:
        raise RefusedInput(
            "--apart", typed["apart"], f"at most --between-centers, {typed['between_centers']}"
        )
    if abs(head - tail) > apart:
        raise RefusedInput(
            "--tailstock-end", typed["tailstock_end"], f"a diameter near {typed['headstock_end']}"
        )
    length = given(read_length, typed["work_length"], "--work-length", bare=bare)
    if length is not None and length > between:
        raise RefusedInput(
            "--work-length",
            typed["work_length"],
            f"at most --between-centers, {typed['between_centers']}",
        )
    tolerance = given(read_length, typed["tolerance"], "--tolerance", bare=bare)
    error = given(read_length, typed["reading_error"], "--reading-error", bare=bare, zero=True)
    from borewright.service.parallel_set import ParallelInput

    return ParallelInput(head, tail, apart, between, length, tolerance, error)


def _option(name: str) -> str:
    return "--" + name.replace("_", "-")
