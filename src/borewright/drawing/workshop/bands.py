"""The part as rings between places along its axis: what is metal, and where its edges are.

A slice is a stretch of the axis within which nothing begins or ends; its bands are the metal from
inside to outside, radii at both of its ends, so that cones stay cones.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from borewright.answer.drawn_part import DrawnPart, Hollow, Stretch
from borewright.quantities.si import Metre

SAME: Metre = 1e-9


@dataclass(frozen=True, slots=True)
class Band:
    """Metal between two radii; each as at the start and at the end of its slice."""

    inside: tuple[Metre, Metre]
    outside: tuple[Metre, Metre]


@dataclass(frozen=True, slots=True)
class Slice:
    """A stretch of the axis with the metal over it, from the axis outwards."""

    start: Metre
    end: Metre
    bands: tuple[Band, ...]


def slices_of(
    stretches: tuple[Stretch, ...], hollows: tuple[Hollow, ...] = ()
) -> tuple[Slice, ...]:
    """Every slice from left to right.

    >>> stud = (Stretch(0.0, 0.02, 0.01), Stretch(0.02, 0.05, 0.02))
    >>> [(s.start, s.end, s.bands[0].outside) for s in slices_of(stud)]
    [(0.0, 0.02, (0.005, 0.005)), (0.02, 0.05, (0.01, 0.01))]
    """
    spans = [(s.start, s.end) for s in stretches] + [(h.start, h.end) for h in hollows]
    places = sorted({place for span in spans for place in span})
    return tuple(
        Slice(start, end, _bands(start, end, stretches, hollows))
        for start, end in pairwise(places)
        if end - start > SAME
    )


def _bands(
    start: Metre, end: Metre, stretches: tuple[Stretch, ...], hollows: tuple[Hollow, ...]
) -> tuple[Band, ...]:
    middle = (start + end) / 2
    metal = [_metal(s, start, end) for s in stretches if s.start < middle < s.end]
    holes = [_hole(h, start, end) for h in hollows if h.start < middle < h.end]
    joined: list[Band] = []
    for band in sorted(metal, key=lambda b: b.inside):
        last = joined[-1] if joined else None
        if last is not None and band.inside[0] <= last.outside[0] + SAME:
            outside = max(last.outside, band.outside)
            joined[-1] = Band(last.inside, outside)
        else:
            joined.append(band)
    return tuple(b for band in joined for b in _without(band, holes))


def _metal(stretch: Stretch, start: Metre, end: Metre) -> Band:
    out_end = stretch.outside if stretch.outside_end is None else stretch.outside_end
    in_end = stretch.inside if stretch.inside_end is None else stretch.inside_end
    ends = stretch.start, stretch.end
    return Band(
        _radii(ends, (stretch.inside, in_end), start, end),
        _radii(ends, (stretch.outside, out_end), start, end),
    )


def _hole(hollow: Hollow, start: Metre, end: Metre) -> tuple[Metre, Metre]:
    size_end = hollow.size if hollow.size_end is None else hollow.size_end
    return _radii((hollow.start, hollow.end), (hollow.size, size_end), start, end)


def _radii(
    ends: tuple[Metre, Metre], sizes: tuple[Metre, Metre], start: Metre, end: Metre
) -> tuple[Metre, Metre]:
    def at(x: Metre) -> Metre:
        share = (x - ends[0]) / (ends[1] - ends[0])
        return (sizes[0] + share * (sizes[1] - sizes[0])) / 2

    return at(start), at(end)


def _without(band: Band, holes: list[tuple[Metre, Metre]]) -> tuple[Band, ...]:
    """The band less the largest hole through it."""
    if not holes:
        return (band,)
    hole = max(holes)
    inside = max(band.inside[0], hole[0]), max(band.inside[1], hole[1])
    if inside[0] >= band.outside[0] - SAME and inside[1] >= band.outside[1] - SAME:
        return ()
    return (Band(inside, band.outside),)


def outside_at(part: DrawnPart, at: Metre) -> Metre:
    """The largest radius of the part at a place; of both sides of a step, the larger.

    >>> part = DrawnPart("stud", "steel", (Stretch(0.0, 0.02, 0.01), Stretch(0.02, 0.05, 0.02)))
    >>> outside_at(part, 0.02)
    0.01
    """
    found = [0.0]
    for piece in slices_of(part.stretches, part.hollows):
        if piece.start - SAME <= at <= piece.end + SAME:
            share = (at - piece.start) / (piece.end - piece.start)
            found += [b.outside[0] + share * (b.outside[1] - b.outside[0]) for b in piece.bands]
    return max(found)


def ends_of(part: DrawnPart) -> tuple[Metre, Metre]:
    """Where the part begins and ends."""
    return min(s.start for s in part.stretches), max(s.end for s in part.stretches)


def largest(part: DrawnPart) -> Metre:
    """The largest diameter of what is drawn, phantom outlines among it."""
    every = (*part.stretches, *part.phantom)
    return max(max(s.outside, s.outside_end or 0.0) for s in every)


def sectioned(part: DrawnPart) -> bool:
    """Whether the part is drawn cut open."""
    return bool(part.hollows) or any(s.inside > 0.0 for s in part.stretches)
