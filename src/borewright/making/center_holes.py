"""Which center hole goes into the end of a bar, and how deep it is drilled.

The widest cone within a share of the bar that leaves its end face to be turned; metric shops take
series A (B where it is to be protected), inch shops the plain (or bell) center drills. A cone that
the table does not name is taken as four fifths of its drill's body.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final, Literal

from borewright.answer.drawn_part import CenterHole
from borewright.quantities.si import Metre
from borewright.reference.centers import Center
from borewright.reference.library import Tables

PLAIN: Final = {"inch": "inch-plain", "mm": "iso-a"}
PROTECTED: Final = {"inch": "inch-bell", "mm": "iso-b"}

OF_BODY: Final = 0.8
"""Ours: cone over the body of an inch center drill."""

PILOT_LONG: Final = 1.1
"""Ours: length of the pilot over its diameter; oil and the tip of the center stand in it."""


@dataclass(frozen=True, slots=True)
class CenterCut:
    """A center hole: its name, pilot, cone, bell and depth (m), and where it comes from."""

    name: str
    pilot: Metre
    cone: Metre
    bell: Metre | None
    depth: Metre
    source: str

    def at(self, end: Literal["left", "right"]) -> CenterHole:
        """As it is drawn in one end."""
        return CenterHole(end, self.pilot, self.cone, self.bell, self.depth)


def center_for(
    bar: Metre, units: Literal["inch", "mm"], tables: Tables, *, protected: bool = False
) -> CenterCut:
    """The center hole for the end of a bar of this diameter (m); the smallest for the thinnest.

    >>> from borewright.reference import tables
    >>> center_for(0.016, "mm", tables()).name, center_for(0.015875, "inch", tables()).name
    ('A 2.5', '#4')
    """
    known = tables.centers((PROTECTED if protected else PLAIN)[units])
    most = tables.ranged("stub_facts", "center_cone_share").best * bar
    fits = [c for c in known if _widest(c) <= most]
    chosen = max(fits, key=_widest) if fits else known[0]
    cone = _cone(chosen)
    # A cone of 60 degrees is as deep as its half width over tan 30; the pilot goes on below it.
    depth = (cone - chosen.pilot) / 2 / math.tan(math.pi / 6) + PILOT_LONG * chosen.pilot
    return CenterCut(chosen.id, chosen.pilot, cone, chosen.bell, depth, chosen.source)


def _cone(center: Center) -> Metre:
    return center.cone or OF_BODY * (center.body or center.pilot)


def _widest(center: Center) -> Metre:
    return center.bell or _cone(center)
