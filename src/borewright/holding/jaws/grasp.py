"""What jaws can take hold of while the outside is turned: a hub, the inside of the rim, the bore.

Which of them a part offers is judged by its rings alone. Weakness: the size of the chuck is not
known, nor what stands in the way on a real casting (bosses, fillets, draft).
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from borewright.holding.part import Part
from borewright.job.records import Piece
from borewright.mechanics.ring_ovality import HeldRing
from borewright.quantities.si import Metre

MEETS = 1e-7
"""Rings (m) that miss each other by less meet."""


ROUGH = ("drilled", "as-cast")
"""How a bore is made that is still to be finished."""

SOLID = ("solid", "not bored")
"""Said of work with no hole yet."""


class Where(StrEnum):
    """What of the work is in the jaws."""

    HUB = "hub"
    RIM = "inside of the rim"
    BORE = "bore"
    OUTSIDE = "outside"


@dataclass(frozen=True, slots=True)
class Grasp:
    """One place to grip: the face that goes to the chuck (A or B), diameter and length in the jaws
    (m); the free `ring` that the jaws spring, None where a web or stout metal keeps it round; and
    the ring that they `strain`, taken as free to be safe.
    """

    where: Where
    leading: str
    diameter: Metre
    length: Metre
    ring: HeldRing | None = None
    strained: HeldRing | None = None

    @property
    def outwards(self) -> bool:
        """True where the jaws open outwards."""
        return self.where in (Where.RIM, Where.BORE)


def grasps(part: Part) -> tuple[Grasp, ...]:
    """Every place that leaves the outside free, the best first: hub, rim, bore."""
    hubs = [g for face in "AB" if (g := _hub(part, face))]
    rims = [g for face in "AB" if (g := _rim(part, face))]
    best = [max(found, key=lambda g: g.length) for found in (hubs, rims) if found]
    bore = _bore(part)
    return (*best, *((bore,) if bore else ()))


def by_the_outside(part: Part) -> Grasp:
    """The work in the jaws by its outside: for facing and boring only."""
    alone = len(part.work.pieces) == 1
    rim = _outermost(part)
    ring = _free_ring(part, part.bore, rim.outside, part.length) if alone else None
    return Grasp(Where.OUTSIDE, "A", rim.outside, (rim.end - rim.start) / 2, ring, ring)


def only_faces(part: Part) -> bool:
    """True where nothing is to come off the outside: only faces are asked, or it is to size."""
    job, finished = part.job, part.work.finished.outside
    if job.cuts:
        return all(c.kind == "face" for c in job.cuts)
    return finished is not None and finished >= part.outside - MEETS


def still_to_bore(part: Part) -> str:
    """Why a hold that takes the bore as it is does not serve; empty where the bore is finished.

    A bore that nobody said anything of is taken as finished.
    """
    made_by = part.work.bore.made_by
    if part.tables.roughness_id(made_by) not in ROUGH:
        return ""
    return (
        f"The bore is not finished ({made_by}): finish it first, or in the setting in which the "
        "rim is turned, which is one chucking."
    )


def is_solid(part: Part) -> bool:
    """True where it was said that there is no hole yet."""
    return part.work.bore.made_by.strip().lower() in SOLID


def bore_to_make(part: Part) -> bool:
    """True where the bore is still to be made or finished: drilled, as cast, solid, or asked for
    by its limits with nothing said of what is there.
    """
    bore = part.work.bore
    how = part.tables.roughness_id(bore.made_by)
    if how in ROUGH or is_solid(part):
        return True
    read = bool(bore.readings) or bore.measured_with != "unknown"
    return how == "unknown" and bore.limits is not None and not read


def nothing_to_grip(part: Part) -> str:
    """Why no jaw holds this part while its outside is turned."""
    show, fact = part.show, part.tables.holding_fact
    if len(part.work.pieces) > 1:
        return (
            "Nothing to grip but the outside that is to be turned: the hub does not stand out far "
            "enough for jaws, and there is no room for them inside the rim."
        )
    return (
        "Nothing to grip but the outside that is to be turned: no hub stands out, and jaws that "
        f"open outwards need a bore of about {show.length(fact('jaws_in_bore').best)}."
    )


def _hub(part: Part, face: str) -> Grasp | None:
    length = part.sticks_out(face)
    if length < part.tables.holding_fact("jaw_least_length").best:
        return None
    outside = part.ring_at(face).outside
    strained = HeldRing(part.bore, outside, length, part.elastic)
    return Grasp(Where.HUB, face, outside, length, None, strained)


def _rim(part: Part, face: str) -> Grasp | None:
    rim, fact = _outermost(part), part.tables.holding_fact
    if rim.inside is None:
        return None
    room = (rim.inside - part.ring_at(face).outside) / 2
    depth = _recess(part, rim, face)
    if room < fact("jaw_radial_room").best or depth < fact("jaw_least_length").best:
        return None
    # A solid web keeps the rim round; between spokes it is on its own.
    alone = part.work.spokes is not None
    ring = _free_ring(part, rim.inside, rim.outside, rim.end - rim.start)
    return Grasp(Where.RIM, face, rim.inside, depth, ring if alone else None, ring)


def _bore(part: Part) -> Grasp | None:
    if part.oval or part.bore < part.tables.holding_fact("jaws_in_bore").best:
        return None
    alone = len(part.work.pieces) == 1
    ring = _free_ring(part, part.bore, part.outside, part.length) if alone else None
    return Grasp(Where.BORE, "A", part.bore, part.length, ring, ring)


def _outermost(part: Part) -> Piece:
    return max(part.work.pieces, key=lambda p: p.outside)


def _recess(part: Part, rim: Piece, face: str) -> Metre:
    """How deep (m) jaws reach inside the rim from a face, to what joins it to the hub."""
    joins = [
        p
        for p in part.work.pieces
        if p is not rim and rim.inside is not None and p.outside >= rim.inside - MEETS
    ]
    if face == "A":
        return min([p.start for p in joins] or [rim.end]) - rim.start
    return rim.end - max([p.end for p in joins] or [rim.start])


def _free_ring(part: Part, inside: Metre, outside: Metre, width: Metre) -> HeldRing:
    """As it stands at the last pass: metal turned away no longer springs."""
    finished = part.work.finished.outside
    last = outside if finished is None else min(outside, max(finished, inside * 1.001))
    return HeldRing(inside, last, width, part.elastic)
