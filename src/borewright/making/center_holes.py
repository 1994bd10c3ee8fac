"""The center hole for the end of a bar, as it is drawn, and how deep it is drilled."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final, Literal

from borewright.answer.drawn_part import CenterHole
from borewright.quantities.si import Metre
from borewright.reference.centers import Center
from borewright.reference.library import Tables
from borewright.reference.making import PLAIN_MOUTH

BELL_SHOWS: Final[Metre] = 0.0004
"""Ours: how deep a bell cuts when it shows as a ring."""

PILOT_LONG: Final = 1.0
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


def center_for(bar: Metre, units: Literal["inch", "mm"], tables: Tables) -> CenterCut | None:
    """The largest center hole for the end of a bar of this diameter (m); None for the thinnest.

    >>> from borewright.reference import tables
    >>> found = center_for(0.016, "mm", tables())
    >>> found and (found.name, round(found.depth * 1e3, 2))
    ('B 2.5', 5.7)
    """
    center = tables.center_within(tables.making_fact("center_share").best * bar, units)
    if center is None:
        return None
    return CenterCut(
        center.id, center.pilot, cone_of(center), center.bell, depth_of(center), center.source
    )


def cone_of(center: Center) -> Metre:
    """Width of the cone at its mouth (m); of a plain one, as wide as it is usually made."""
    return center.cone or PLAIN_MOUTH * center.pilot


def depth_of(center: Center) -> Metre:
    """From the face to where the pilot ends (m): bell, cone, and once the pilot's width more.

    Of an inch center with a bell its width is not remembered: it goes in until the bell shows.
    """
    cone = cone_of(center)
    # The cone's sides stand at 30 degrees to the axis, the bell's at 60; the pilot goes on below.
    deep = (cone - center.pilot) / 2 / math.tan(math.pi / 6) + PILOT_LONG * center.pilot
    bell = (center.bell - cone) / 2 / math.tan(math.pi / 3) if center.bell else 0.0
    return deep + bell + (BELL_SHOWS if center.series == "inch-bell" else 0.0)
