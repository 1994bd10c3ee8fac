"""One change to the blank or to the order of work: what it removes, how much deeper a cut holds."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Figure, Verdict
from borewright.quantities.si import Metre


@dataclass(frozen=True, slots=True)
class Change:
    """What to change, what it costs, and what it brings. `what` is one sentence with its sizes.

    `time` is for one piece. `drawing`: what of the drawing it touches. The depths are those of one
    pass of the same cut, the deepest with the usual reserve, pressed as far as bore, press and room
    allow; 0 where the work does not go on at all. `turns`: ids of the questions whose answer gets
    better. `proviso`: on what the verdict after counts, such as a sound casting; else empty.
    `rough_in_chuck`: the depth after is the usual roughing cut, and a chuck that is not weighed
    drives it.
    """

    id: str
    what: str
    drawing: str
    time: Figure
    verdict_before: Verdict
    verdict_after: Verdict
    turns: tuple[str, ...]
    depth_before: Figure
    depth_after: Figure
    gains: Metre
    rough_in_chuck: bool = False
    proviso: str = ""
