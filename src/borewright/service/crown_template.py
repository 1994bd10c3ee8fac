"""The template of a crown at full size, as SVG, DXF or PDF by the ending of the file's name."""

from __future__ import annotations

from pathlib import Path
from typing import Final, Literal

from borewright.answer.crown import PulleyCrown
from borewright.errors import RefusedInput
from borewright.making.crown_words import checked, setting, stepping, taken
from borewright.quantities.show import Show

ENDINGS: Final = (".svg", ".dxf", ".pdf")


def check_ending(name: str, where: str) -> None:
    """RefusedInput where a file's name does not say which kind it is."""
    if Path(name).suffix.lower() not in ENDINGS:
        raise RefusedInput(where, repr(name), f"a name that ends in {', '.join(ENDINGS)}")


def template_bytes(
    crown: PulleyCrown, name: str, units: Literal["inch", "mm"], paper: str | None = None
) -> bytes:
    """The template for a file of this name. `paper` is letter or a4; left out, by the units.

    The DXF holds the two pieces alone, as they are cut; SVG and PDF the whole page.
    """
    ending = Path(name).suffix.lower()
    if ending == ".dxf":
        from borewright.drawing.crown_pieces import template_scene
        from borewright.drawing.dxf import dxf

        return dxf(template_scene(crown, "Crown")).encode("utf-8")
    from borewright.drawing.crown_sheet import draw_crown
    from borewright.drawing.svg import svg
    from borewright.report.strip_sheet import strip_sheet

    show = Show(units)
    words = (
        taken(crown, show),
        *setting(crown, show),
        *stepping(crown, show),
        checked(crown, show),
    )
    scene = draw_crown(crown, units, paper or ("letter" if units == "inch" else "a4"), words)
    picture = svg(scene)
    if ending == ".svg":
        return picture.encode("utf-8")
    return strip_sheet(picture, scene.title, scene.width, scene.height)
