"""The part from the side: from outside where it is solid, in full section where it is hollow."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from borewright.answer.drawn_part import DrawnPart, Stretch
from borewright.drawing.scene import Hatch, Item, Line, LineKind
from borewright.drawing.workshop.bands import (
    SAME,
    Band,
    Slice,
    ends_of,
    sectioned,
    slices_of,
)
from borewright.drawing.workshop.sheet_frame import SheetFrame
from borewright.drawing.workshop.spokes import spokes_from_side
from borewright.quantities.si import Metre

OVERRUN = 6.0
"""How far the axis runs past the part, mm."""
SPACING = 2.2


def side_items(part: DrawnPart, frame: SheetFrame) -> tuple[Item, ...]:
    """Hatching, edges, axis; and the outlines that stand by it, double-dotted."""
    slices = slices_of(part.stretches, part.hollows)
    cut = sectioned(part)
    return (
        *(_hatching(slices, frame) if cut else ()),
        *_lengthwise(slices, frame, LineKind.VISIBLE, inside=cut),
        *_crosswise(slices, frame, LineKind.VISIBLE, cut),
        *(_seen_behind(slices, frame) if cut else ()),
        *(spokes_from_side(part.spokes, frame) if part.spokes else ()),
        *_phantom(part.phantom, frame),
        *_axis(part, frame),
    )


def _hatching(slices: tuple[Slice, ...], frame: SheetFrame) -> tuple[Item, ...]:
    contours = [
        tuple((frame.x(x), frame.y(side * r)) for x, r in _corners(piece, band))
        for piece in slices
        for band in piece.bands
        for side in (1, -1)
    ]
    return (Hatch(tuple(contours), SPACING, "metal"),) if contours else ()


def _corners(piece: Slice, band: Band) -> tuple[tuple[Metre, Metre], ...]:
    return (
        (piece.start, band.inside[0]),
        (piece.start, band.outside[0]),
        (piece.end, band.outside[1]),
        (piece.end, band.inside[1]),
    )


def _lengthwise(
    slices: tuple[Slice, ...], frame: SheetFrame, kind: LineKind, inside: bool
) -> Iterator[Item]:
    for piece in slices:
        for band in piece.bands:
            edges = (band.inside, band.outside) if inside else (band.outside,)
            for radii in edges:
                if max(radii) > SAME:
                    yield from _mirrored(piece, radii, frame, kind)


def _mirrored(
    piece: Slice, radii: tuple[Metre, Metre], frame: SheetFrame, kind: LineKind
) -> Iterator[Item]:
    for side in (1, -1):
        yield Line(
            frame.x(piece.start),
            frame.y(side * radii[0]),
            frame.x(piece.end),
            frame.y(side * radii[1]),
            kind,
            "outline",
        )


def _crosswise(
    slices: tuple[Slice, ...], frame: SheetFrame, kind: LineKind, cut: bool
) -> Iterator[Item]:
    """Faces and shoulders: where metal stands on one side of a place only."""
    for at, before, after in _meetings(slices):
        if not cut:
            radii = (
                max((r for _, r in before), default=0.0),
                max((r for _, r in after), default=0.0),
            )
            if abs(radii[0] - radii[1]) > SAME:
                reach = max(radii)
                yield Line(
                    frame.x(at), frame.y(reach), frame.x(at), frame.y(-reach), kind, "shoulder"
                )
            continue
        for low, high in _one_sided(before, after):
            for side in (1, -1):
                ends = frame.y(side * low), frame.y(side * high)
                yield Line(frame.x(at), ends[0], frame.x(at), ends[1], kind, "shoulder")


Radii = list[tuple[Metre, Metre]]


def _meetings(slices: tuple[Slice, ...]) -> Iterator[tuple[Metre, Radii, Radii]]:
    """Every place with the bands that end there and those that begin there."""
    nothing = Slice(0.0, 0.0, ())
    for left, right in pairwise((nothing, *slices, nothing)):
        at = right.start if left is nothing else left.end
        yield (
            at,
            [(b.inside[1], b.outside[1]) for b in left.bands],
            [(b.inside[0], b.outside[0]) for b in right.bands],
        )


def _one_sided(before: Radii, after: Radii) -> Iterator[tuple[Metre, Metre]]:
    radii = sorted({r for band in (*before, *after) for r in band})
    for low, high in pairwise(radii):
        middle = (low + high) / 2
        here = any(a < middle < b for a, b in before)
        there = any(a < middle < b for a, b in after)
        if here != there and high - low > SAME:
            yield low, high


def _seen_behind(slices: tuple[Slice, ...], frame: SheetFrame) -> Iterator[Item]:
    """Edges of the hole behind the cut: upright lines across it where its size changes."""
    for at, before, after in _meetings(slices):
        holes = [min((a for a, _ in side), default=None) for side in (before, after)]
        sizes = [hole for hole in holes if hole is not None and hole > SAME]
        same = len(sizes) == 2 and abs(sizes[0] - sizes[1]) <= SAME
        if sizes and not same:
            reach = max(sizes)
            yield Line(
                frame.x(at),
                frame.y(reach),
                frame.x(at),
                frame.y(-reach),
                LineKind.VISIBLE,
                "edge-behind",
            )


def _phantom(stretches: tuple[Stretch, ...], frame: SheetFrame) -> Iterator[Item]:
    slices = slices_of(stretches)
    hollow = any(s.inside > 0.0 for s in stretches)
    yield from _lengthwise(slices, frame, LineKind.LIMIT, inside=hollow)
    yield from _crosswise(slices, frame, LineKind.LIMIT, cut=True)


def _axis(part: DrawnPart, frame: SheetFrame) -> tuple[Item, ...]:
    left, right = ends_of(part)
    return (
        Line(
            frame.x(left) - OVERRUN,
            frame.axis,
            frame.x(right) + OVERRUN,
            frame.axis,
            LineKind.AXIS,
            "axis",
        ),
    )
