"""The end view from the headstock: rims, dog or chuck, slip circles, rotation, proof load's arm.

Seen from the headstock, work that turns forward goes clockwise; the tool then lifts at the right,
so the weight that pulls the same way as the cut hangs at the left.
"""

from __future__ import annotations

from math import cos, pi, radians, sin

from borewright.answer.held_picture import Role
from borewright.answer.picture import Layout
from borewright.answer.records import ProofLoad
from borewright.drawing.breaks import broken
from borewright.drawing.dimension import (
    ROW,
    SIZE,
    Span,
    level_dimension,
    without_other_unit,
)
from borewright.drawing.drive_view import (
    DOG_TAIL,
    drive_items,
    drive_sample,
    drive_words,
    tail_reach,
)
from borewright.drawing.frame import Scale
from borewright.drawing.interrupted import end_hidden, end_spokes
from borewright.drawing.mandrel_view import DOG, HOLDERS
from borewright.drawing.measure import wrapped
from borewright.drawing.outline import front_edges, outside
from borewright.drawing.proof_arm import proof_arm
from borewright.drawing.scene import Arc, Arrow, Circle, Item, Line, LineKind, Path, Scene, Text
from borewright.drawing.slip import slip_words, slips
from borewright.quantities.show import Show

LINE = 4.0
_ICON = 2.8
"""Size of the sample of a drive in the key, mm."""
_SAMPLE = 8.0
"""Length of the sample of a line in the key, mm."""


def end_view(
    layout: Layout, proof: ProofLoad | None, show: Show, scale: Scale, width: float = 62.0
) -> Scene:
    """Work, mandrel and what drives it seen from the headstock, `width` mm wide on paper."""
    rim = 500 * outside(layout) * scale.ratio
    half = max(rim, 1550 * layout.end_diameter * scale.ratio)
    cy = 3.2 + LINE + 4.5 + half
    eye = _Eye(layout, scale, min(width - half - 6.0, width / 2 + 5.0), cy)
    foot = cy + max(half, 9.5, _holder_drop(eye) + 0.3 * SIZE) + 1.5
    row = level_dimension(_outside_span(eye, show), foot + 0.5 * ROW, 0.0, width)
    key = _key(layout, show, foot + ROW + 0.8 * LINE, width)
    items = (
        Text(
            0.0,
            3.2,
            f"End view from the {layout.at_left.lower()}.",
            SIZE,
            bold=True,
            name="end-caption",
        ),
        *_forward(layout),
        *_work(eye),
        *_drive(eye),
        *_slip(eye),
        *(_arm(eye, proof) if proof and not (proof.by_hand or proof.by_cord) else ()),
        *(_dog(eye) if layout.driven_by == DOG else _holder(eye)),
        *end_hidden(layout, eye.cx, eye.cy, eye.size),
        *(_rotation(eye, half) if layout.turns else ()),
        *row,
        *key,
    )
    lines = sum(isinstance(item, Text) for item in key)
    return Scene(width, foot + ROW + LINE * lines + 1.0, broken(items))


def _forward(layout: Layout) -> tuple[Item, ...]:
    if not layout.turns:
        return ()
    return (Text(0.0, 3.2 + LINE, "Forward is clockwise seen from here.", SIZE),)


class _Eye:
    """Where the axis stands and how large a radius is."""

    def __init__(self, layout: Layout, scale: Scale, cx: float, cy: float) -> None:
        self.layout, self.cx, self.cy = layout, cx, cy
        self._ratio = 1000 * scale.ratio

    def size(self, metres: float) -> float:
        return metres * self._ratio

    def circle(self, diameter: float, kind: LineKind, name: str, fill: str = "none") -> Circle:
        return Circle(self.cx, self.cy, self.size(diameter) / 2, kind, fill, name)


def _work(eye: _Eye) -> tuple[Item, ...]:
    layout = eye.layout
    edges = (eye.circle(d, LineKind.VISIBLE, "work-circle", "white") for d in front_edges(layout))
    root = layout.root_diameter
    return (
        *edges,
        *([eye.circle(root, LineKind.THIN, "root-circle")] if root else []),
        *end_spokes(layout, eye.cx, eye.cy, eye.size),
        eye.circle(layout.large_end, LineKind.VISIBLE, "mandrel-circle", "white"),
        eye.circle(layout.end_diameter, LineKind.VISIBLE, "mandrel-end-circle", "white"),
        *_cross(eye),
    )


def _cross(eye: _Eye) -> tuple[Item, ...]:
    reach = eye.size(outside(eye.layout)) / 2 + 1.5
    return (
        Line(eye.cx - reach, eye.cy, eye.cx + reach, eye.cy, LineKind.AXIS, "axis"),
        Line(eye.cx, eye.cy - reach, eye.cx, eye.cy + reach, LineKind.AXIS, "axis"),
    )


def _slip(eye: _Eye) -> tuple[Item, ...]:
    return tuple(
        eye.circle(2 * slip.radius, slip.kind, f"{slip.name}-circle")
        for slip in slips(eye.layout)
        if slip.on_work
    )


def _drive(eye: _Eye) -> tuple[Item, ...]:
    """Studs, or a second dog on the hub; the mandrel is seen before it."""
    mark, layout = eye.layout.drive, eye.layout
    if mark is None:
        return ()
    mandrel = (
        eye.circle(layout.large_end, LineKind.VISIBLE, "mandrel-circle", "white"),
        eye.circle(layout.end_diameter, LineKind.VISIBLE, "mandrel-end-circle", "white"),
    )
    drawn = drive_items(mark, (eye.cx, eye.cy), eye.size(1.0), eye.size(layout.end_diameter))
    return (*drawn, *mandrel) if mark.role is Role.DOG else tuple(drawn)


def _dog(eye: _Eye) -> tuple[Item, ...]:
    """A plain dog: an eye round the mandrel's end, its tail up, its screw down."""
    end = eye.size(eye.layout.end_diameter)
    x, y, half = eye.cx, eye.cy, DOG_TAIL * end
    hub, screw = 0.85 * end, 0.12 * end
    top = y - max(1.55 * end, tail_reach(eye.layout.drive, eye.size(1.0)))
    neck = (hub**2 - half**2) ** 0.5
    tail = ((x - half, y - neck), (x - half, top), (x + half, top), (x + half, y - neck))
    low = y + 1.35 * end
    bolt = ((x - screw, y + hub), (x - screw, low), (x + screw, low), (x + screw, y + hub))
    return (
        Circle(x, y, hub, fill="white", name="dog"),
        Path(tail, fill="white", name="dog-tail"),
        Path(bolt, fill="white", name="dog-screw"),
        Circle(x, y, end / 2, fill="white", name="mandrel-end-circle"),
    )


def _holder(eye: _Eye) -> tuple[Item, ...]:
    """The outline of a collet or three-jaw about the mandrel's end, and its name under it."""
    name, end = eye.layout.driven_by, eye.size(eye.layout.end_diameter)
    body, grip = (share * end for share in HOLDERS[name])
    x, y = eye.cx, eye.cy
    turns = (k * 2 * pi / 3 - pi / 2 for k in range(3))
    return (
        Circle(x, y, body, fill="white", name=f"{name}-body"),
        *(_jaw(x, y, turn, end / 2, grip, f"{name}-grip") for turn in turns),
        Circle(x, y, end / 2, fill="white", name="mandrel-end-circle"),
        Text(x, y + _holder_drop(eye), name, SIZE, "middle", name=f"{name}-label"),
    )


def _jaw(x: float, y: float, turn: float, near: float, far: float, name: str) -> Item:
    """A jaw from the end outwards, or one of a collet's three slots."""
    c, s = cos(turn), sin(turn)
    if name.startswith("collet"):
        return Line(x + near * c, y + near * s, x + far * c, y + far * s, LineKind.VISIBLE, name)
    half = 0.35 * near
    flat = ((near * 0.9, -half), (far, -half), (far, half), (near * 0.9, half))
    corners = tuple((x + u * c - v * s, y + u * s + v * c) for u, v in flat)
    return Path(corners, closed=True, fill="white", name=name)


def _holder_drop(eye: _Eye) -> float:
    """From the axis down to the base line of the holder's name, mm; 0 for a dog."""
    if eye.layout.driven_by == DOG:
        return 0.0
    return HOLDERS[eye.layout.driven_by][0] * eye.size(eye.layout.end_diameter) + 1.1 * SIZE


def _rotation(eye: _Eye, half: float) -> tuple[Item, ...]:
    r, start, end = half + 2.6, radians(-65.0), radians(-30.0)
    tip = (eye.cx + r * cos(end), eye.cy + r * sin(end))
    return (
        Arc(eye.cx, eye.cy, r, start, end, LineKind.THIN, "rotation"),
        Arrow(*tip, end + pi / 2 - 0.09, name="rotation-arrow"),
    )


def _arm(eye: _Eye, proof: ProofLoad) -> tuple[Item, ...]:
    rim = eye.size(outside(eye.layout)) / 2
    return proof_arm((eye.cx, eye.cy), rim, eye.size(proof.arm), eye.cx - 4.0, -1)


def _outside_span(eye: _Eye, show: Show) -> Span:
    size = show.length(outside(eye.layout))
    half = eye.size(outside(eye.layout)) / 2
    short = without_other_unit(size)
    words = (f"outside {size}", f"outside {short}", short)
    return Span(eye.cx - half, eye.cy, eye.cx + half, eye.cy, words, "outside")


def _key(layout: Layout, show: Show, top: float, width: float) -> tuple[Item, ...]:
    """What the slip circles mean: a sample of each line and its words; words only off the work."""
    items, y = list[Item](), top
    if layout.root_diameter:
        items.append(Line(0.0, y - 1.1, _SAMPLE, y - 1.1, LineKind.THIN))
        words = f"root of the teeth, {show.length(layout.root_diameter)} diameter"
        for line in wrapped(words, SIZE, width - _SAMPLE - 1.0):
            items.append(Text(_SAMPLE + 1.0, y, line, SIZE))
            y += LINE
    if layout.drive:
        items += drive_sample(layout.drive, (_SAMPLE / 2, y - 1.1), _ICON)
        for line in wrapped(drive_words(layout.drive, show), SIZE, width - _SAMPLE - 1.0):
            items.append(Text(_SAMPLE + 1.0, y, line, SIZE))
            y += LINE
    for slip in slips(layout):
        start = _SAMPLE + 1.0 if slip.on_work else 0.0
        if slip.on_work:
            items.append(Line(0.0, y - 1.1, _SAMPLE, y - 1.1, slip.kind))
        words = slip_words(slip, show.length(2 * slip.radius))
        lines = wrapped(words, SIZE, width - start)
        items += [Text(start, y + LINE * k, line, SIZE) for k, line in enumerate(lines)]
        y += LINE * len(lines)
    return tuple(items)


def proof_words(proof: ProofLoad, show: Show) -> str:
    """The proof load as a sentence."""
    if proof.by_hand:
        return "Proof load: a hard twist of the rim by hand must not slip it."
    if proof.by_cord:
        pull = show.force(proof.rim_force)
        return f"Proof load: {pull} at the rim, by a cord wound round it, must not slip it."
    arm, force = show.length(proof.arm), show.force(proof.force)
    return f"Proof load: {force} hung {arm} from the axis must not slip it."
