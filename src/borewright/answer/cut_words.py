"""How the depth and feed of a cut are said: each kind of cut counts them its own way."""

from __future__ import annotations

from borewright.answer.records import Cut
from borewright.quantities.show import Show


def feed_words(cut: Cut, show: Show) -> str:
    """The feed: a turn of the work, or a tooth of the cutter."""
    said = show.feed(cut.feed)
    return said.replace("/rev", "/tooth") if cut.kind == "gear" else said


def depth_words(cut: Cut, show: Show) -> str:
    """The depth of one pass; as a dial reads it, an infeed of the wheel as finely as a bore."""
    return show.small(cut.depth) if cut.kind == "grind" else show.depth(cut.depth)


def speed_words(cut: Cut, show: Show) -> str:
    """The turns of the work, or those of the cutter; the wheel's rim beside the work it grinds."""
    turns = show.spindle(cut.spindle_speed)
    if cut.kind == "gear":
        return f"cutter {turns}"
    if cut.wheel_speed is not None:
        return f"work {turns}, wheel {show.surface(cut.wheel_speed)}"
    return turns
