"""The crown of one pulley from its size and what is wanted: rule, form, setting, stairs."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial
from typing import Final, Literal

from borewright.answer.crown import Dial, PulleyCrown, Shape, Stepped
from borewright.errors import OutsideModel, RefusedInput
from borewright.job.crown_wish import CrownWish, check_crown
from borewright.mechanics.crown import (
    arc_fall,
    arc_radius,
    rise_on_slide,
    taper_angle,
    taper_fall,
)
from borewright.mechanics.crown_steps import MOST_STEPS, stairs
from borewright.mechanics.num import Num
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.crowns import Crown
from borewright.reference.library import Tables

FEWEST: Final = 8
"""Ours: stairs in half the face, where no number of them is asked for."""

STEPS: Final[dict[str, tuple[Metre, ...]]] = {
    "inch": tuple(0.0254 / n for n in (2, 4, 8, 16, 32, 64)),
    "mm": (0.01, 0.005, 0.002, 0.001, 0.0005),
}
"""Steps of the saddle that a hand counts easily."""

DIVISION: Final[dict[str, Metre]] = {"inch": 25.4e-6, "mm": 20e-6}
"""Ours: the usual division of a cross slide's dial, a thou or two hundredths."""

TRAVELS: Final[dict[str, tuple[Metre, ...]]] = {
    "inch": tuple(0.0254 / n for n in (1, 2, 4, 8)),
    "mm": (0.025, 0.02, 0.01, 0.005, 0.002),
}
"""Ours: travels that every top slide has; the longest that the face is wide enough for is taken."""

WIDEST: Final = 2.0
"""Width of a face (m) beyond which no manual lathe turns it."""


@dataclass(frozen=True, slots=True)
class CrownAsked:
    """What is asked of a crown; None is filled by a rule or by what is usual.

    One of `rule` and `height` at most. `steps` are those in half the face.
    """

    rule: str | None = None
    height: Metre | None = None
    shape: Shape = "taper"
    flat: Metre = 0.0
    dial: Dial = "unknown"
    division: Metre | None = None
    steps: int | None = None
    slide_travel: Metre | None = None


def crown_for(
    diameter: Metre,
    face: Metre,
    asked: CrownAsked,
    units: Literal["inch", "mm"],
    tables: Tables,
) -> PulleyCrown:
    """The crown of a pulley of this diameter at the middle and this width of face.

    RefusedInput for what makes no crown, and where the rule says nothing of this pulley;
    UnknownName for a rule that is not in the tables.

    >>> from borewright.reference import tables
    >>> crown = crown_for(0.127, 0.0508, CrownAsked(), "inch", tables())
    >>> crown.rule.rule, round(crown.height * 1e3, 2), round(crown.radius, 3)
    ('iso-22', 0.4, 0.807)
    """
    if face > WIDEST:
        show = Show(units)
        allowed = f"up to {show.length(WIDEST)}"
        raise RefusedInput("width of the face", show.length(face), allowed)
    rules = tables.crowns(diameter, face)
    best = tables.recommended_crown(diameter, face)
    rule = None
    if asked.height is None:
        rule = _by_rule(asked.rule, diameter, face, tables) if asked.rule else best
    height = rule.height if rule else asked.height or 0.0
    check_crown(CrownWish(height, "", asked.shape, asked.flat), diameter, face, units)
    travel = asked.slide_travel or next((t for t in TRAVELS[units] if t <= face), face / 2)
    angle = float(taper_angle(height, face, asked.flat))
    return PulleyCrown(
        diameter,
        face,
        height,
        rule,
        rules,
        best,
        asked.shape,
        asked.flat,
        angle,
        float(arc_radius(height, face)),
        travel,
        float(rise_on_slide(angle, travel)),
        _stepped(height, face, asked, units),
    )


def _by_rule(rule: str, diameter: Metre, face: Metre, tables: Tables) -> Crown:
    try:
        return tables.crown(rule, diameter, face)
    except OutsideModel as outside:
        raise RefusedInput(outside.quantity, str(outside.value), outside.allowed) from None


def fall_of(shape: str, height: Metre, face: Metre, flat: Metre = 0.0) -> Callable[[Num], Num]:
    """How far (m) the face lies below its middle, as a function of places from the middle (m)."""
    if shape == "arc":
        return partial(arc_fall, height=height, face=face)
    return partial(taper_fall, height=height, face=face, flat=flat)


def _stepped(height: Metre, face: Metre, asked: CrownAsked, units: str) -> Stepped:
    step = _step(face, asked.steps, units)
    division = asked.division or DIVISION[units]
    bare = Stepped(step, division, asked.dial, None)
    fall = fall_of(asked.shape, height, face, asked.flat)
    if not _shows(fall(face / 2 - step), division, bare.per_radius):
        return bare
    return replace(bare, stairs=stairs(fall, face, step, division, bare.per_radius))


def _shows(outermost: Num, division: Metre, per_radius: int) -> bool:
    """Whether the deepest stair is as much as half a division of the dial."""
    return bool(per_radius * outermost >= division / 2)


def _step(face: Metre, steps: int | None, units: str) -> Metre:
    """The saddle's step: as asked, else the longest easy one that makes stairs enough."""
    if steps is not None:
        if not 2 <= steps <= MOST_STEPS:
            raise RefusedInput("steps in half the face", f"{steps}", f"2 to {MOST_STEPS}")
        return face / 2 / steps
    enough = face / 2 / FEWEST * (1 + 1e-9)
    return next((s for s in STEPS[units] if s <= enough), face / 2 / FEWEST)
