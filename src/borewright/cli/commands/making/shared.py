"""What all commands of `borewright make` share: options of the papers, and how they are handed out."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any, Literal, TypeVar

import click

from borewright.cli.out import say, say_json
from borewright.errors import RefusedInput
from borewright.quantities.read import length_system

if TYPE_CHECKING:
    from borewright.drawing.workshop.look import Look
    from borewright.service.making.outputs import Made

Function = TypeVar("Function", bound=Callable[..., Any])

_OPTIONS = (
    click.option("--out", help="Write all papers here: drawings, route, tables (PDF)."),
    click.option("--drawing", help="Write the drawing here (SVG, DXF or PDF); more are numbered."),
    click.option("--angle", type=click.Choice(["third", "first"]), help="Angle of projection."),
    click.option("--both", is_flag=True, help="Inch and metric on the drawing."),
    click.option("--paper", type=click.Choice(["letter", "a4"]), help="Paper of the papers."),
    click.option("--date", help="A date to print; without one none is printed."),
)


def paper_options(function: Function) -> Function:
    """The options of the papers, on a command."""
    for option in reversed(_OPTIONS):
        function = option(function)
    return function


def look_of(typed: Mapping[str, Any], units: Literal["inch", "mm"]) -> Look:
    """How the drawings look, from what was typed."""
    from borewright.drawing.workshop.look import look_for

    return look_for(
        units,
        both=typed["both"],
        angle=typed["angle"],
        paper=typed["paper"],
        date=one_line(typed["date"] or "", "--date"),
    )


def one_line(text: str, where: str) -> str:
    """A short text as typed; RefusedInput for one that no title block has room for."""
    if len(text) > 40 or not text.isprintable():
        raise RefusedInput(where, repr(text[:40]), "at most 40 letters on one line")
    return text


def check_files(typed: Mapping[str, Any]) -> None:
    """RefusedInput for a file name whose ending says nothing, before anything is computed."""
    from borewright.service.making.outputs import check_ending

    if typed["drawing"] is not None:
        check_ending(typed["drawing"], "--drawing")
    if typed["out"] is not None:
        check_ending(typed["out"], "--out", (".pdf",))


def deliver(
    made: Made,
    typed: Mapping[str, Any],
    look: Look,
    as_json: bool,
    further: Mapping[str, bytes] | None = None,
    read: tuple[str | None, ...] = (),
) -> int:
    """Write what was asked for, all or nothing, then say it: exit 0, or 3 where the answer is no."""
    from borewright.service.files import write_all
    from borewright.service.making.outputs import drawing_files, papers_bytes

    files: dict[str, bytes] = dict(further or {})
    if made.done:
        if typed["out"] is not None:
            _add(files, {typed["out"]: papers_bytes(made, look)})
        if typed["drawing"] is not None:
            _add(files, drawing_files(typed["drawing"], made.parts, look))
    if files:
        write_all(files, read)
    if as_json:
        say_json(made.as_dict())
    else:
        say("\n".join([*made.lines(), *(f"Written: {name}" for name in files)]))
    return 0 if made.done else 3


def _add(files: dict[str, bytes], more: Mapping[str, bytes]) -> None:
    """More files to write; RefusedInput for a name that another of them has."""
    for name in files.keys() & more.keys():
        raise RefusedInput(name, "the same file twice", "a different name for each file")
    files |= more


def check_toml(name: str | None, where: str) -> None:
    """RefusedInput for a file of TOML that is not called one."""
    from borewright.service.making.outputs import check_ending

    if name is not None:
        check_ending(name, where, (".toml",))


def units_of(typed: Mapping[str, Any], *texts: str | None) -> Literal["inch", "mm"]:
    """The units to show first: as stated, else those of the first size typed, else mm."""
    if typed["units"]:
        return "inch" if typed["units"] == "inch" else "mm"
    found = [system for text in texts if text and (system := length_system(text))]
    return found[0] if found else "mm"
