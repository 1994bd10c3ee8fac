"""The proof load in an end view: a bar clamped to the rim, with its weight."""

from __future__ import annotations

from borewright.drawing.scene import Item, Line, LineKind, Path, Point

_CLAMP = 4.0
"""How far in from the rim the clamp of the arm reaches, mm."""
_BEYOND = 8.0
"""How far the arm is drawn beyond the rim when its true length does not fit, mm."""


def proof_arm(
    middle: Point, rim: float, true: float, room: float, side: int, past: float = 0.0
) -> tuple[Item, ...]:
    """The bar out to the left (`side` -1) or right (+1); all lengths in mm on paper.

    `rim` is the work's radius, `true` the arm at the view's scale, `room` the space from the middle
    to the edge of the plate: the arm is drawn short, with a break, when it must be. The weight
    hangs clear of all that is within the radius `past`.
    """
    room, past = max(room, 1.0), max(rim, past)
    reach = true if past < true <= room else min(past + _BEYOND, room)
    thick, inner = 1.1, rim - min(_CLAMP, 0.4 * rim)
    bar = ((reach, -thick), (inner, -thick), (inner, thick), (reach, thick))
    jaw = ((rim + 1.0, -2.2), (inner, -2.2), (inner, 2.2), (rim + 1.0, 2.2))
    broken = () if reach == true else _break((rim + reach) / 2, thick)
    items = (
        Path(bar, LineKind.THIN, True, "white", "arm"),
        Path(jaw, LineKind.VISIBLE, True, "white", "arm-clamp"),
        *broken,
        *_weight(reach - 1.0),
    )
    return tuple(_turned(item, side).moved(*middle) for item in items)


def _turned(item: Path | Line, side: int) -> Path | Line:
    """Drawn to the right; to the left where the side is so."""
    if isinstance(item, Path):
        points = tuple((side * x, y) for x, y in item.points)
        return Path(points, item.kind, item.closed, item.fill, item.name)
    return Line(side * item.x1, item.y1, side * item.x2, item.y2, item.kind, item.name)


def _break(x: float, thick: float) -> tuple[Path | Line, ...]:
    up, down = -thick - 0.5, thick + 0.5
    gap = ((x + 0.4, up), (x - 1.0, up), (x - 0.4, down), (x + 1.0, down))
    edges = ((gap[0], gap[3]), (gap[1], gap[2]))
    blank = Path(gap, LineKind.BLANK, True, "white")
    return (blank, *(Line(*a, *b, LineKind.THIN, "arm-break") for a, b in edges))


def _weight(x: float) -> tuple[Path | Line, ...]:
    top = 4.5
    block = ((x + 1.6, top), (x - 1.6, top), (x - 2.2, top + 4.0), (x + 2.2, top + 4.0))
    return (
        Line(x, 0.0, x, top, LineKind.THIN, "weight-cord"),
        Path(block, closed=True, fill="white", name="weight"),
    )
