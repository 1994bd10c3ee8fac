"""A scene as DXF text, y upwards: same scene, same bytes.

Layers are called what the line kinds are called, with their weights and dashes and, as their
description, the line type of ISO 128-2 (numbers from memory); letters, section lines and dimensions
have layers of their own. Dimensions stay dimensions: they measure what they stand on. ezdxf is
loaded only here, and only when a DXF is written.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import singledispatch
from io import StringIO
from math import cos, degrees, sin
from typing import Any, Final, Literal

from borewright.drawing.dimension_parts import BEYOND, GAP, HEAD
from borewright.drawing.hatch import hatch_lines
from borewright.drawing.scene import (
    Arc,
    Arrow,
    Circle,
    Dimension,
    Hatch,
    Item,
    Line,
    LineKind,
    Path,
    Scene,
    Text,
)

WORDS: Final = "words"
SECTION: Final = "section"
DIMENSIONS: Final = "dimensions"
CAPITALS: Final = 0.66
"""Height of a capital over the size of its font: DXF counts letters by the former."""
LINETYPES: Final = {
    LineKind.HIDDEN: "DASHED",
    LineKind.AXIS: "CENTER",
    LineKind.LIMIT: "PHANTOM",
    LineKind.TRACE: "DASHDOT",
    LineKind.LONG: "DASHEDX2",
}
ISO_128: Final = {
    LineKind.VISIBLE: "01.2 thick continuous: visible outlines",
    LineKind.EDGE: "01.2 thick continuous: outlines of what holds",
    LineKind.THIN: "01.1 thin continuous",
    LineKind.HIDDEN: "02.1 thin dashed: hidden outlines",
    LineKind.AXIS: "04.1 thin long-dashed dotted: axes",
    LineKind.LIMIT: "05.1 thin long-dashed double-dotted: neighbours, limits",
}
"""What the layers say of themselves; the numbers are from memory."""
CODES: Final = {"inch": (1, 0, 25.4), "mm": (4, 1, 1.0)}
"""DXF's code of the unit, of its family, and millimetres in it."""


@dataclass(frozen=True, slots=True)
class _Page:
    """Where things go: DXF units in a mm of paper, and the height of the page in mm."""

    space: Any
    height: float
    size: float

    def at(self, x: float, y: float) -> tuple[float, float]:
        return x * self.size, (self.height - y) * self.size


def dxf(scene: Scene, scale: float = 1.0, units: Literal["inch", "mm"] = "mm") -> str:
    """The scene as one DXF document (R2010). TypeError for a part that has no DXF here.

    `scale`: mm on paper for a mm of the part; what is drawn at half size comes out in its own size,
    in these units, and so do its words.

    >>> "ARC" in dxf(Scene(10, 5, (Arc(5, 5, 2, 0.0, 1.0),)))
    True
    """
    code, metric, millimetres = CODES[units]
    out = StringIO()
    with _no_clock() as ezdxf:
        drawing = ezdxf.new("R2010", setup=["linetypes"])
        drawing.header["$INSUNITS"] = code
        drawing.header["$MEASUREMENT"] = metric
        drawing.header["$LTSCALE"] = 1.0 / scale / millimetres
        for kind in LineKind:
            _layer(drawing, kind)
        for name in (WORDS, SECTION, DIMENSIONS):
            drawing.layers.add(name)
        page = _Page(drawing.modelspace(), scene.height, 1.0 / scale / millimetres)
        for item in scene.items:
            _add(item, page)
        drawing.write(out)
    return out.getvalue()


def _layer(drawing: Any, kind: LineKind) -> None:
    linetype = LINETYPES.get(kind, "CONTINUOUS")
    layer = drawing.layers.add(kind.value, linetype=linetype, lineweight=round(100 * kind.weight))
    if kind in ISO_128:
        layer.description = f"ISO 128-2 {ISO_128[kind]}"


@contextmanager
def _no_clock() -> Iterator[Any]:
    """ezdxf, which writes neither time nor a new identity meanwhile."""
    import ezdxf
    from ezdxf._options import options

    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield ezdxf
    finally:
        options.write_fixed_meta_data_for_testing = before


@singledispatch
def _add(item: Item, page: _Page) -> None:
    raise TypeError(f"no DXF for {type(item).__name__}")


@_add.register
def _(item: Line, page: _Page) -> None:
    ends = page.at(item.x1, item.y1), page.at(item.x2, item.y2)
    page.space.add_line(*ends, dxfattribs={"layer": item.kind.value})


@_add.register
def _(item: Path, page: _Page) -> None:
    points = [page.at(x, y) for x, y in item.points]
    layer = {"layer": item.kind.value}
    page.space.add_lwpolyline(points, close=item.closed, dxfattribs=layer)


@_add.register
def _(item: Circle, page: _Page) -> None:
    layer = {"layer": item.kind.value}
    page.space.add_circle(page.at(item.cx, item.cy), item.r * page.size, dxfattribs=layer)


@_add.register
def _(item: Arc, page: _Page) -> None:
    # Clockwise on paper, y down; DXF's arcs run against the clock, y up.
    low, high = sorted((-item.start, -item.end))
    layer = {"layer": item.kind.value}
    center, radius = page.at(item.cx, item.cy), item.r * page.size
    page.space.add_arc(center, radius, degrees(low), degrees(high), dxfattribs=layer)


@_add.register
def _(item: Arrow, page: _Page) -> None:
    corners = ((0.0, 0.0), (-1.0, 0.17), (-1.0, -0.17))
    c, s = cos(item.angle) * item.size, sin(item.angle) * item.size
    turned = [page.at(item.x + c * u - s * v, item.y + s * u + c * v) for u, v in corners]
    page.space.add_solid([*turned, turned[-1]], dxfattribs={"layer": LineKind.THIN.value})


@_add.register
def _(item: Hatch, page: _Page) -> None:
    for one, other in hatch_lines(item):
        page.space.add_line(page.at(*one), page.at(*other), dxfattribs={"layer": SECTION})


@_add.register
def _(item: Dimension, page: _Page) -> None:
    height = CAPITALS * item.size * page.size
    base = page.at(item.line, item.y1) if item.upright else page.at(item.x1, item.line)
    look = {
        "dimtxt": height,
        "dimasz": HEAD * page.size,
        "dimexo": GAP * page.size,
        "dimexe": BEYOND * page.size,
        "dimgap": 0.3 * height,
        "dimse1": int(item.bare),
        "dimse2": int(item.bare),
    }
    aside = page.at(item.x - 0.35 * item.size, item.y)
    middle = aside if item.upright else page.at(item.x, item.y - 0.35 * item.size)
    made = page.space.add_linear_dim(
        base=base,
        p1=page.at(item.x1, item.y1),
        p2=page.at(item.x2, item.y2),
        angle=90 if item.upright else 0,
        text=item.text,
        location=middle,
        text_rotation=0 if item.level_words or not item.upright else 90,
        dimstyle="Standard",
        override=look,
        dxfattribs={"layer": DIMENSIONS},
    )
    made.render()


@_add.register
def _(item: Text, page: _Page) -> None:
    from ezdxf.enums import TextEntityAlignment as Align

    aligned = {"start": Align.LEFT, "middle": Align.CENTER, "end": Align.RIGHT}[item.anchor]
    letters = page.space.add_text(
        item.text,
        height=CAPITALS * item.size * page.size,
        rotation=-item.rotation,
        dxfattribs={"layer": WORDS},
    )
    letters.set_placement(page.at(item.x, item.y), align=aligned)
