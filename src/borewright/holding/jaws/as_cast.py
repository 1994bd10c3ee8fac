"""A rough casting in jaws: by what it is set true, and where along it the jaws take hold.

What is not turned is what shows: set the casting true by that, and let the stock on the rest take
up what is out.
"""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.first_hold import JawPlace
from borewright.holding.jaws.grasp import Grasp, Where
from borewright.holding.part import Part
from borewright.job.records import Work
from borewright.job.web import MEETS, on_bore, web_of
from borewright.quantities.si import Metre

BOSS, RIM, OUTSIDE = "boss", "inside of the rim", "outside"
"""What the jaws take hold of."""

HELD_ROUND = {
    BOSS: "the outside of the hub",
    RIM: "the inside of the rim",
    OUTSIDE: "the outside",
}
"""What the jaws are in the way of when it is read."""


@dataclass(frozen=True, slots=True)
class SetTrue:
    """What is set true: round, and flat (for wobble), and why by that."""

    round_by: str
    flat_by: str
    why: str

    def read(self, on: str) -> str:
        """Said where the jaws hold the very round that is read; nothing else."""
        return ", read between the jaws" if self.round_by == HELD_ROUND[on] else ""


def set_true(work: Work) -> SetTrue:
    """By what a casting is set true: what stays as cast and shows, else its outside."""
    web = web_of(work)
    if web is not None and web.rimmed:
        flat = "the spokes near the rim" if work.spokes else "the web near the rim"
        return SetTrue(
            HELD_ROUND[RIM],
            flat,
            "no tool touches them and they are what the eye sees turn; the outside is turned anyway and takes up what is out, "
            "and the rim comes out of one thickness, so it is nearer balance",
        )
    if has_hub(work):
        return SetTrue(
            HELD_ROUND[BOSS],
            "the disc's face near the edge",
            "no tool touches it and it stays as cast; the outside is turned anyway and takes up what is out",
        )
    return SetTrue(
        HELD_ROUND[OUTSIDE],
        "its face near the edge",
        "nothing inside it stays as cast and shows, so the stock is shared alike all round",
    )


def has_hub(work: Work) -> bool:
    """Whether a ring round the bore stands out at a face and is smaller than the outside."""
    rings = on_bore(work.pieces, work.bore.size)
    ends = [p for p in rings if p.start <= MEETS or p.end >= work.length - MEETS]
    return any(p.outside < work.outside - MEETS for p in ends)


def jaw_place_of(part: Part, grasp: Grasp) -> JawPlace:
    """This grasp as the first hold of a casting has it: from face A, and the face that is out."""
    start = _start(part, grasp)
    out = "B" if grasp.leading == "A" else "A"
    on = {Where.HUB: BOSS, Where.RIM: RIM}.get(grasp.where, OUTSIDE)
    return JawPlace(on, start, start + grasp.length, grasp.diameter, grasp.outwards, out)


def _start(part: Part, grasp: Grasp) -> Metre:
    rim = max(part.work.pieces, key=lambda p: p.outside)
    if grasp.where is Where.RIM:
        return rim.start if grasp.leading == "A" else rim.end - grasp.length
    return 0.0 if grasp.leading == "A" else part.length - grasp.length
