"""How the depth and feed of a cut are said, each kind its own way, and what diameter it leaves."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from borewright.answer.records import Cut
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

AT_SIZE: Final = 5e-6
"""A cut that leaves the finished size within this (m) leaves the finished size (ours)."""


def feed_words(cut: Cut, show: Show) -> str:
    """The feed: a turn of the work, or a tooth of the cutter."""
    said = show.feed(cut.feed)
    return said.replace("/rev", "/tooth") if cut.kind == "gear" else said


def depth_words(cut: Cut, show: Show) -> str:
    """The depth of one pass; as a dial reads it, an infeed of the wheel as finely as a bore."""
    return show.small(cut.depth) if cut.kind == "grind" else show.depth(cut.depth)


def passes_words(cut: Cut, show: Show) -> str:
    """Number and depth of the passes; of a groove the plunges, and how wide each is."""
    if cut.kind == "groove":
        return f"{cut.passes} of {show.length(cut.depth)} wide"
    return f"{cut.passes} × {depth_words(cut, show)}"


def speed_words(cut: Cut, show: Show) -> str:
    """The turns of the work, or those of the cutter; the wheel's rim beside the work it grinds."""
    turns = show.spindle(cut.spindle_speed)
    if cut.kind == "gear":
        return f"cutter {turns}"
    if cut.wheel_speed is not None:
        return f"work {turns}, wheel {show.surface(cut.wheel_speed)}"
    return turns


def diameters_left(cuts: Iterable[Cut]) -> dict[str, Metre]:
    """The diameter (m) that each turning cut leaves, by the cut's id, cuts in their order."""
    left: dict[str, Metre] = {}
    now: Metre | None = None
    for cut in cuts:
        if cut.kind == "turn":
            now = (cut.diameter if now is None else now) - 2 * cut.passes * cut.depth
            left[cut.id] = now if cut.leaves is None else cut.leaves
    return left


def dialled(size: Metre, show: Show) -> Metre:
    """A diameter on the way to the last one, to what a dial shows: a thou, or 0.01 mm.

    >>> round(1e6 * dialled(0.0639137, Show("mm")), 3)
    63910.0
    """
    step = 25.4e-6 if show.units == "inch" else 10e-6
    return round(size / step) * step


def left_words(cuts: Iterable[Cut], finished: Metre | None, show: Show) -> dict[str, str]:
    """The diameter that each turning cut leaves; of the outside only where one is wanted."""
    known = list(cuts)
    placed = {cut.id for cut in known if cut.span is not None}
    return {
        name: show.turned(_said(size, finished, show))
        for name, size in diameters_left(known).items()
        if finished is not None or name in placed
    }


def _said(size: Metre, finished: Metre | None, show: Show) -> Metre:
    """A last size as it is wanted, one on the way as a dial shows it."""
    at_size = finished is not None and abs(size - finished) < AT_SIZE
    return finished if at_size and finished is not None else dialled(size, show)
