"""A scene as SVG text: same scene, same bytes; words stay words.

The view box is in millimetres on paper. Parts carry `data-name`, the root carries the scene's
facts as `data-…`.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import singledispatch
from html import escape
from math import cos, pi, sin

from borewright.drawing.dimension_parts import dimension_parts
from borewright.drawing.hatch import hatch_lines
from borewright.drawing.measure import text_box
from borewright.drawing.scene import (
    Arc,
    Area,
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

FONT = "Source Sans Pro"


def svg(scene: Scene) -> str:
    """The scene as one SVG document, ending in a newline.

    >>> '<title id="title">a &lt; b</title>' in svg(Scene(10, 5, (), title="a < b"))
    True
    """
    return "\n".join([*_head(scene), *_body(scene), "</svg>", ""])


def _head(scene: Scene) -> Iterator[str]:
    size = f'viewBox="0 0 {_n(scene.width)} {_n(scene.height)}"'
    paper = f'width="{_n(scene.width)}mm" height="{_n(scene.height)}mm"'
    facts = "".join(f' data-{key}="{escape(value)}"' for key, value in scene.data)
    yield (
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} {paper} role="img" '
        f'aria-labelledby="title desc" font-family="{FONT}"{facts}>'
    )
    yield f'<title id="title">{_words(scene.title)}</title>'
    yield f'<desc id="desc">{_words(scene.description)}</desc>'
    yield f'<rect width="{_n(scene.width)}" height="{_n(scene.height)}" fill="white"/>'


def _body(scene: Scene) -> Iterator[str]:
    # Words go on top of every line, so that a mask breaks lines and never words.
    items = [part for item in scene.items for part in _parts(item)]
    words = [item for item in items if isinstance(item, Text)]
    yield from (_element(item) for item in items if not isinstance(item, Text))
    yield from (_mask(item) for item in words if item.mask)
    yield from (_element(item) for item in words)


def _parts(item: Item) -> tuple[Item, ...]:
    return dimension_parts(item) if isinstance(item, Dimension) else (item,)


@singledispatch
def _element(item: Item) -> str:
    raise TypeError(f"no SVG for {type(item).__name__}")


@_element.register
def _(item: Line) -> str:
    ends = f'x1="{_n(item.x1)}" y1="{_n(item.y1)}" x2="{_n(item.x2)}" y2="{_n(item.y2)}"'
    return f"<line {ends} {_stroke(item.kind)}{_name(item.name)}/>"


@_element.register
def _(item: Path) -> str:
    tag = "polygon" if item.closed else "polyline"
    points = " ".join(f"{_n(x)},{_n(y)}" for x, y in item.points)
    style = f'fill="{item.fill}" {_stroke(item.kind)}'
    return f'<{tag} points="{points}" {style}{_name(item.name)}/>'


@_element.register
def _(item: Circle) -> str:
    place = f'cx="{_n(item.cx)}" cy="{_n(item.cy)}" r="{_n(item.r)}"'
    return f'<circle {place} fill="{item.fill}" {_stroke(item.kind)}{_name(item.name)}/>'


@_element.register
def _(item: Arc) -> str:
    x1, y1 = item.cx + item.r * cos(item.start), item.cy + item.r * sin(item.start)
    x2, y2 = item.cx + item.r * cos(item.end), item.cy + item.r * sin(item.end)
    large = int(abs(item.end - item.start) > pi)
    sweep = int(item.end > item.start)
    bow = f"A{_n(item.r)} {_n(item.r)} 0 {large} {sweep} {_n(x2)} {_n(y2)}"
    path = f'd="M{_n(x1)} {_n(y1)}{bow}" fill="none"'
    return f"<path {path} {_stroke(item.kind)}{_name(item.name)}/>"


@_element.register
def _(item: Arrow) -> str:
    corners = ((0.0, 0.0), (-1.0, 0.17), (-1.0, -0.17))
    c, s = cos(item.angle) * item.size, sin(item.angle) * item.size
    turned = [(item.x + c * u - s * v, item.y + s * u + c * v) for u, v in corners]
    points = " ".join(f"{_n(x)},{_n(y)}" for x, y in turned)
    return f'<polygon points="{points}" fill="black"{_name(item.name)}/>'


@_element.register
def _(item: Hatch) -> str:
    pieces = (f"M{_n(a[0])} {_n(a[1])}L{_n(b[0])} {_n(b[1])}" for a, b in hatch_lines(item))
    style = f'fill="none" {_stroke(item.kind)}'
    return f'<path d="{"".join(pieces)}" {style}{_name(item.name)}/>'


@_element.register
def _(item: Area) -> str:
    rings = ("L".join(f"{_n(x)} {_n(y)}" for x, y in ring) for ring in item.contours)
    path = "".join(f"M{ring}Z" for ring in rings)
    style = f'fill="{item.fill}" fill-rule="evenodd" stroke="none"'
    return f'<path d="{path}" {style}{_name(item.name)}/>'


@_element.register
def _(item: Text) -> str:
    turn = f' transform="rotate({_n(item.rotation)} {_n(item.x)} {_n(item.y)})"'
    extra = (' font-weight="700"' if item.bold else "") + (turn if item.rotation else "")
    place = f'x="{_n(item.x)}" y="{_n(item.y)}" font-size="{_n(item.size)}"'
    words = _words(item.text)
    return f'<text {place} text-anchor="{item.anchor}"{extra}{_name(item.name)}>{words}</text>'


def _mask(label: Text) -> str:
    box = text_box(label)
    size = f'width="{_n(box.right - box.left)}" height="{_n(box.bottom - box.top)}"'
    return f'<rect x="{_n(box.left)}" y="{_n(box.top)}" {size} fill="white"/>'


def _stroke(kind: LineKind) -> str:
    if kind is LineKind.BLANK:
        return 'stroke="none"'
    dashes = f' stroke-dasharray="{" ".join(map(_n, kind.dashes))}"' if kind.dashes else ""
    return f'stroke="black" stroke-width="{_n(kind.weight)}" stroke-linejoin="round"{dashes}'


def _name(name: str) -> str:
    return f' data-name="{escape(name)}"' if name else ""


def _words(text: str) -> str:
    # Control characters are not allowed in XML at all, escaped or not.
    return escape("".join(c if c.isprintable() else " " for c in text), quote=False)


def _n(value: float) -> str:
    rounded = round(value, 4) + 0.0  # + 0.0 turns -0.0 into 0.0
    return f"{rounded:.4f}".rstrip("0").rstrip(".")
