"""Drawings and papers as files: SVG, DXF or PDF by the ending of the name."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from borewright.answer.drawn_part import DrawnPart
from borewright.answer.papers import Papers
from borewright.drawing.scene import Scene
from borewright.drawing.workshop.look import Look
from borewright.errors import RefusedInput
from borewright.report.papers_text import papers_lines

ENDINGS: Final = (".svg", ".dxf", ".pdf")


@dataclass(frozen=True, slots=True)
class Made:
    """What a use case of making answers: words, drawings, and its numbers as flat SI keys.

    `pages` are scenes at full size that go out with the papers, such as a strip. `done` False:
    computed, and the answer is no.
    """

    papers: Papers
    parts: tuple[DrawnPart, ...]
    numbers: dict[str, Any]
    pages: tuple[Scene, ...] = ()
    done: bool = True

    def as_dict(self) -> dict[str, Any]:
        """As JSON."""
        return self.numbers

    def lines(self) -> tuple[str, ...]:
        """The words of all sheets, as the terminal says them."""
        return tuple(papers_lines(self.papers))


def check_ending(name: str, where: str, endings: tuple[str, ...] = ENDINGS) -> None:
    """RefusedInput where a file's name does not say which kind it is."""
    if Path(name).suffix.lower() not in endings:
        raise RefusedInput(where, repr(name), f"a name that ends in {', '.join(endings)}")


def drawing_files(name: str, parts: Sequence[DrawnPart], look: Look) -> dict[str, bytes]:
    """The drawings for a name: the first under the name itself, each further one numbered.

    >>> from borewright.answer.drawn_part import Stretch
    >>> stud = DrawnPart("stud", "steel", (Stretch(0.0, 0.05, 0.02),))
    >>> sorted(drawing_files("a.svg", (stud, stud), Look()))
    ['a-2.svg', 'a.svg']
    """
    path = Path(name)
    names = [name, *(str(path.with_stem(f"{path.stem}-{k}")) for k in range(2, len(parts) + 1))]
    return {n: drawing_bytes(p, n, look) for n, p in zip(names, parts, strict=True)}


def drawing_bytes(part: DrawnPart, name: str, look: Look) -> bytes:
    """One drawing; the DXF is in the part's own size and in the drawing's unit."""
    from borewright.drawing.workshop.page import draw_part

    scene = draw_part(part, look)
    ending = Path(name).suffix.lower()
    if ending == ".dxf":
        from borewright.drawing.dxf import dxf

        return dxf(scene, float(dict(scene.data)["scale"]), look.units).encode("utf-8")
    from borewright.drawing.svg import svg

    if ending == ".svg":
        return svg(scene).encode("utf-8")
    from borewright.report.strip_sheet import strip_sheet

    return strip_sheet(svg(scene), scene.title, scene.width, scene.height)


def papers_bytes(made: Made, look: Look) -> bytes:
    """All papers in one PDF: drawings, pages at full size, then the sheets of words."""
    from borewright.drawing.svg import svg
    from borewright.drawing.workshop.page import draw_part
    from borewright.report.papers_sheet import Picture, papers_pdf

    scenes = (*(draw_part(part, look) for part in made.parts), *made.pages)
    pictures = [Picture(svg(s), s.description or s.title, s.width, s.height) for s in scenes]
    return papers_pdf(made.papers, pictures, look.paper, look.date)
