"""A mandrel with a bore of its own: how large its hole may be."""

from __future__ import annotations

from typing import Final

from borewright.errors.tree import RefusedInput
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, Ratio

LARGEST_HOLE: Final[Ratio] = 0.8
"""Ours: from this share of the smallest ground diameter on a mandrel is a thin tube. That gives way
under a dog, a center and a short hub in ways that are not computed here.
"""


def check_hole(hole: Metre, smallest: Metre, where: str) -> None:
    """RefusedInput for a hole (m) below 0, or too large for the smallest ground diameter (m).

    >>> check_hole(0.006, 0.018, "--mandrel-bore")
    """
    if hole < 0:
        raise RefusedInput(where, f"a hole of {Show('mm').length(hole)}", "0 or more")
    if hole >= LARGEST_HOLE * smallest:
        show = Show("mm")
        allowed = (
            f"a hole below {LARGEST_HOLE:g} of the smallest ground diameter, "
            f"{show.length(LARGEST_HOLE * smallest)}: a thin tube is another thing"
        )
        raise RefusedInput(where, f"a hole of {show.length(hole)}", allowed)
