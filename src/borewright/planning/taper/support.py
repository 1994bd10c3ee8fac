"""The ring that the hub stands on in the press: its hole, its outside, and what the hub's face bears."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from borewright.answer.records import Draws, Figure
from borewright.job.web import on_bore
from borewright.mechanics.spread import likely
from borewright.planning.taper.press_room import tube_length
from borewright.planning.taper.travel import RULE_STEP
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import given, spread
from borewright.quantities.si import Metre

LEAST_FACE = 1e-3
"""Width of face (m) that a ring must find beside its hole (ours)."""


@dataclass(frozen=True, slots=True, eq=False)
class HubSupport:
    """A ring for either face: `hole` lets either end of the mandrel through (m), `outside` at most (m).

    `opening`: that hole, or the mouth of a chamfered bore where it is wider. `recess`: how far (m) the hub stands in behind the rim, where the ring has to reach.
    `pressure`: of the push on the hub's face (Pa); infinite where the hole leaves no face.
    """

    hole: Metre
    opening: Metre
    outside: Metre
    recess: Metre
    pressure: Draws

    @property
    def stands(self) -> bool:
        """Whether there is face enough beside the hole to stand on."""
        return self.outside - self.hole >= 2 * LEAST_FACE


def hub_support(trial: Trial) -> HubSupport:
    """The ring that serves pressing on, under the far face, and pressing off, under the leading one."""
    work, mandrel = trial.job.work, trial.mandrel
    rings = on_bore(work.pieces, work.bore.size)
    ends = min(rings, key=lambda p: p.start), max(rings, key=lambda p: p.end)
    outside = min(p.outside for p in ends)
    through = max(mandrel.large_end, mandrel.end_diameter, work.bore.size)
    step = RULE_STEP[trial.job.units]
    room = through + trial.tables.allowance("support_clearance").best
    hole = math.ceil(round(room / step, 6)) * step
    mouth = work.bore.size + 2 * max(work.chamfers.legs)
    area = math.pi / 4 * (outside**2 - max(hole, mouth) ** 2)
    push = trial.grip.push_on
    pressure = push / area if area > 0 else np.full_like(push, np.inf)
    recess = max(ends[0].start, work.length - ends[1].end)
    return HubSupport(hole, max(hole, mouth), outside, recess, pressure)


def bears(trial: Trial, support: HubSupport) -> bool:
    """Whether the hub's face stands the push: strength over pressure at least 1, likely case."""
    return likely(trial.hold.facts.strength) >= likely(support.pressure)


def ring_words(trial: Trial) -> str:
    """The ring in a few words."""
    s, show = hub_support(trial), trial.show
    if not s.stands:
        return "ring split to close round the mandrel's small end"
    reach = f", standing up {show.length(s.recess)} past the rim" if s.recess > 1e-6 else ""
    size = f"hole {show.length(s.hole)}, outside up to {show.length(s.outside)}"
    if "vice" in trial.shop.press_name:
        return f"tube, {size}, {show.length(tube_length(trial))} long or more{reach}"
    return f"ring, {size}{reach}"


def support_doubt(trial: Trial) -> str:
    """What is wrong where the hub's face is too little for the push, as a sentence; else empty."""
    s, show = hub_support(trial), trial.show
    if not s.stands:
        return (
            f"The hub, {show.length(s.outside)} outside, is too thin to stand on a ring that the mandrel passes "
            f"({show.length(s.hole)}): use a ring split to close round the small end."
        )
    if bears(trial, s):
        return ""
    return (
        f"The hub's face beside the ring's hole would bear {show.pressure(likely(s.pressure))}, more than the metal "
        "stands: use a ring split to close round the small end, or press less."
    )


def support_figures(trial: Trial) -> tuple[Figure, ...]:
    """The pressure on the hub's face; none where the hole leaves none."""
    s = hub_support(trial)
    if not s.stands:
        return ()
    inputs = (
        given("push", likely(trial.grip.push_on), "N"),
        given("hub outside", s.outside, "m"),
        given("hole of the ring, or mouth of the bore", s.opening, "m"),
    )
    clearance = trial.tables.allowance("support_clearance").source
    return (
        spread(
            "support_pressure",
            s.pressure,
            "Pa",
            "pressure",
            "support_pressure",
            inputs,
            (clearance,),
        ),
    )
