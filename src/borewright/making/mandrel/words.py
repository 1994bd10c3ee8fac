"""Words that drawing, route and acceptance sheet of a mandrel share."""

from __future__ import annotations

from typing import Literal

from borewright.answer.drawn_part import Limits
from borewright.answer.made_mandrel import MadeMandrel
from borewright.drawing.workshop.limits_text import limits_text
from borewright.drawing.workshop.look import Look
from borewright.mechanics.mandrel_zone import Band
from borewright.quantities.show import Show
from borewright.reference.making import Steel


def hardness_words(steel: Steel) -> str:
    """What is done to the steel, in a line."""
    if steel.treatment == "through":
        return f"harden and temper to {steel.hardness}"
    if steel.treatment == "case":
        return f"case harden, {steel.hardness}"
    return f"left as it is ({steel.hardness})"


def runout_words(made: MadeMandrel, show: Show) -> str:
    """The runout allowed, a whole reading."""
    return f"runout at most {show.small(made.settings.runout)}"


def takes_words(made: MadeMandrel, show: Show) -> str:
    """Which bores it takes, pressed how far, at any limit or in the middle of them."""
    held = made.held
    pressed = f"{show.length(held.length)} long, pressed {show.length(held.travel)} past touch"
    if made.takes:
        return (
            f"Anywhere within its limits it takes bores of {show.band(*made.takes, 'bore')}, "
            f"{pressed}."
        )
    if made.takes_middle:
        return (
            f"In the middle of its limits it takes bores of {show.band(*made.takes_middle, 'bore')}, "
            f"{pressed}; so short a taper takes no more than its limits are wide, so measure it when "
            "it is done and mark what it is."
        )
    return f"It has no room for a bore {pressed}."


def planes_words(made: MadeMandrel) -> str:
    """Both diameters with their limits."""
    large, small = (
        limits_words(b, made.units) for b in (made.form.zone.near_large, made.form.zone.near_small)
    )
    return f"{large} at A near the large end, {small} at B near the small end"


def limits_words(band: Band, units: Literal["inch", "mm"]) -> str:
    """Two limits as the drawing has them: never wider in the other unit than they are.

    >>> limits_words((0.0159, 0.015905), "mm")
    '15.900 to 15.905 mm (0.62599 to 0.62618 in)'
    """
    limits = Limits(band[0], 0.0, band[1] - band[0])
    inch, mm = f"{limits_text(limits, Look('inch'))} in", f"{limits_text(limits, Look('mm'))} mm"
    return f"{inch} ({mm})" if units == "inch" else f"{mm} ({inch})"
