"""picture: what the pressed joint of a job does to its work, as numbers and as a drawing."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Final

from borewright.errors import RefusedInput
from borewright.job.records import Job, Shelf
from borewright.job.shelf_file import merge_shelf
from borewright.reference.library import Tables, tables
from borewright.service.sums import sums_over

if TYPE_CHECKING:
    from borewright.answer.pressed import Pictured

ENDINGS: Final = (".svg", ".png")


def picture(
    job: Job, shelf: Shelf | None = None, *, use: str = "", source_tables: Tables | None = None
) -> Pictured:
    """Pressure along the bore and tension in the work, for the hold and travel that `plan` chooses.

    Raises what `plan` raises, and RefusedInput for an outline that is no one body round the bore.

    >>> from borewright.job.records import Bore, Piece, Shelf, MandrelNote, Work
    >>> wheel = Work("al-6061-t6", (Piece(0, 0.025, 0.063),),
    ...              Bore(0.015885, 3e-6, "plug gauge", "reamed"), "bar")
    >>> shop = Shelf((MandrelNote(0.015875),), True, "arbor press 1 ton")
    >>> found = picture(Job("A wheel", wheel, "mm", shop)).picture
    >>> found.leading_face, found.bands[0].number, found.largest.r == wheel.bore.size / 2
    ('A', 1, True)
    """
    from borewright.planning.picture.pictured import picture_job

    whole = job if shelf is None else merge_shelf(job, shelf)
    whole = replace(whole, use=use) if use else whole
    used = source_tables or tables()
    with sums_over(used):
        return picture_job(whole, used)


def picture_bytes(found: Pictured, name: str) -> bytes:
    """The drawing, as SVG or PNG by the name's ending. RefusedInput where nothing is drawn."""
    from borewright.drawing.pressed_sheet import draw_pressed
    from borewright.drawing.svg import svg
    from borewright.report.strip_sheet import picture_png

    ending = picture_ending(name)
    if found.picture is None or found.shape is None:
        raise RefusedInput("picture", found.why, "a joint that presses")
    scene = draw_pressed(found.picture, found.shape)
    drawn = svg(scene)
    if ending == ".svg":
        return drawn.encode()
    return picture_png(drawn, scene.title, scene.width, scene.height)


def picture_ending(name: str) -> str:
    """The ending of a file name. RefusedInput for one that no picture has."""
    ending = Path(name).suffix.lower()
    if ending not in ENDINGS:
        raise RefusedInput("--out", repr(name), f"a name that ends in {' or '.join(ENDINGS)}")
    return ending


def picture_in_words(found: Pictured) -> str:
    """What is drawn and where the highest tension is; why nothing is, where nothing is."""
    from borewright.drawing.pressed_sheet import said_of

    if found.picture is None:
        return f"No picture: {found.why}. {found.headline}"
    no = f"{found.headline} " if found.verdict.value == "no" else ""
    return f"{no}{said_of(found.picture)}"
