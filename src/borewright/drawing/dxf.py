"""A scene as DXF text in its real sizes, millimetres, y upwards: same scene, same bytes.

Layers are called what the line kinds are called, with their weights and dashes; letters are on the
layer `words`. ezdxf is loaded only here, and only when a DXF is written.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from functools import singledispatch
from io import StringIO
from math import cos, degrees, sin
from typing import Any, Final

from borewright.drawing.scene import Arc, Arrow, Circle, Item, Line, LineKind, Path, Scene, Text

WORDS: Final = "words"
CAPITALS: Final = 0.66
"""Height of a capital over the size of its font: DXF counts letters by the former."""
LINETYPES: Final = {
    LineKind.HIDDEN: "DASHED",
    LineKind.AXIS: "CENTER",
    LineKind.LIMIT: "PHANTOM",
    LineKind.TRACE: "DASHDOT",
    LineKind.LONG: "DASHEDX2",
}
MILLIMETRES: Final = 4
"""DXF's code for the unit."""


def dxf(scene: Scene) -> str:
    """The scene as one DXF document (R2010). TypeError for a part that has no DXF here.

    >>> "ARC" in dxf(Scene(10, 5, (Arc(5, 5, 2, 0.0, 1.0),)))
    True
    """
    out = StringIO()
    with _no_clock() as ezdxf:
        drawing = ezdxf.new("R2010", setup=["linetypes"])
        drawing.header["$INSUNITS"] = MILLIMETRES
        drawing.header["$MEASUREMENT"] = 1
        for kind in LineKind:
            _layer(drawing, kind)
        drawing.layers.add(WORDS)
        space = drawing.modelspace()
        for item in scene.items:
            _add(item, space, scene.height)
        drawing.write(out)
    return out.getvalue()


def _layer(drawing: Any, kind: LineKind) -> None:
    linetype = LINETYPES.get(kind, "CONTINUOUS")
    drawing.layers.add(kind.value, linetype=linetype, lineweight=round(100 * kind.weight))


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
def _add(item: Item, space: Any, height: float) -> None:
    raise TypeError(f"no DXF for {type(item).__name__}")


@_add.register
def _(item: Line, space: Any, height: float) -> None:
    ends = (item.x1, height - item.y1), (item.x2, height - item.y2)
    space.add_line(*ends, dxfattribs={"layer": item.kind.value})


@_add.register
def _(item: Path, space: Any, height: float) -> None:
    points = [(x, height - y) for x, y in item.points]
    space.add_lwpolyline(points, close=item.closed, dxfattribs={"layer": item.kind.value})


@_add.register
def _(item: Circle, space: Any, height: float) -> None:
    center = item.cx, height - item.cy
    space.add_circle(center, item.r, dxfattribs={"layer": item.kind.value})


@_add.register
def _(item: Arc, space: Any, height: float) -> None:
    # Clockwise on paper, y down; DXF's arcs run against the clock, y up.
    low, high = sorted((-item.start, -item.end))
    center = item.cx, height - item.cy
    layer = {"layer": item.kind.value}
    space.add_arc(center, item.r, degrees(low), degrees(high), dxfattribs=layer)


@_add.register
def _(item: Arrow, space: Any, height: float) -> None:
    corners = ((0.0, 0.0), (-1.0, 0.17), (-1.0, -0.17))
    c, s = cos(item.angle) * item.size, sin(item.angle) * item.size
    turned = [(item.x + c * u - s * v, height - (item.y + s * u + c * v)) for u, v in corners]
    space.add_solid([*turned, turned[-1]], dxfattribs={"layer": LineKind.THIN.value})


@_add.register
def _(item: Text, space: Any, height: float) -> None:
    from ezdxf.enums import TextEntityAlignment as Align

    aligned = {"start": Align.LEFT, "middle": Align.CENTER, "end": Align.RIGHT}[item.anchor]
    letters = space.add_text(
        item.text,
        height=CAPITALS * item.size,
        rotation=-item.rotation,
        dxfattribs={"layer": WORDS},
    )
    letters.set_placement((item.x, height - item.y), align=aligned)
