"""Work warmed and dropped on a plug that is a little larger than its bore; warmed again to come off.

    warm on   ΔT = interference / (a d) + to spare          a the work's expansion, d the bore
    warm off  ΔT = what presses / ((a - a_plug) d)          both warm alike
The plug is turned between its own centers, so that it can go into the oven with the work and back
on the centers true; a tube under the hub sets the place. What the interference may be is the least of trade
habit, what the metal and the finished size bear, and what the warmth that the work bears makes up
for, on and off. Iron and steel grow no more than a steel plug: there is no warming them off.
Sources: `warm_fit`, `grip_of_fit` and `rings` in mechanics. Weakness: pressure as even along the
bore; flattened roughness from memory of a standard for permanent fits.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from borewright.answer.held import Check, Grip, Held, line
from borewright.answer.records import Draws, Figure, Input, Need, Step
from borewright.answer.streams import Stream, around
from borewright.holding.bars.between_centers import bar_stiffness, span_of
from borewright.holding.bars.soft_bar import ALL_ROUND, bar_picture, centered
from borewright.holding.bonding.bonds import NOTHING_STICKS, ROOM_TEMPERATURE
from borewright.holding.figured import drawn_figure
from borewright.holding.fits.friction_fit import FrictionFit
from borewright.holding.fits.pressed_ring import PressedRing
from borewright.holding.no_middle import no_middle
from borewright.holding.owned import made, needed
from borewright.holding.part import Part
from borewright.job.records import Job
from borewright.mechanics.roughness import interference_lost
from borewright.mechanics.spread import likely
from borewright.mechanics.warm_fit import change_to_come_off, change_to_slide_on
from borewright.quantities.si import Kelvin, Metre, PerKelvin
from borewright.reference.library import Tables

PLUG = "steel-1018"

LEAST_MORE = 3e-6
"""How much more (1/K) the work must grow than its plug to be warmed off (ours)."""

SHORT = 0.5
"""Length that bears, in bores, from which work sits square on a plug (ours)."""

HAIR = 1e-3
"""Radial force (N) of a fit in whose drawn case nothing presses: nothing, but no zero to divide by."""

LEAST_LEFT = 1e-6
"""Interference (m) below which, roughness flattened, there is no fit to speak of (ours)."""


class WarmFit:
    """Way of holding: warmed on a plug with interference, and off again."""

    id = "warm-fit"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """One plug between its own centers."""
        part = Part(job, tables)
        reason = _cannot(part)
        if reason:
            return (Held(self.id, cannot=reason),)
        fit = _Fit(part)
        return (_held(fit),) if fit.meant > LEAST_LEFT else (Held(self.id, cannot=TOO_LITTLE),)


TOO_LITTLE = (
    "What the metal, the finished size and the warmth allow leaves no fit: a stub with a screw."
)


def _cannot(part: Part) -> str:
    if part.tables.material(part.work.material).family in NOTHING_STICKS:
        return "Warmth spoils this material before it opens its bore enough."
    if part.bore > part.tables.holding_fact("stub_largest").best:
        return "The bore is too large for a plug from bar."
    if _expansion(part) - part.tables.material_range(PLUG, "expansion").best < LEAST_MORE:
        return "Work and steel plug grow alike, so warming would not take it off again: only a press does, as off a mandrel."
    return no_middle(part, "a round plug")


def _expansion(part: Part) -> PerKelvin:
    return part.range("expansion").best


@dataclass(frozen=True)
class _Fit:
    """The plug for a part: what interference is meant, what is left, how warm it takes."""

    part: Part

    @property
    def span(self) -> Metre:
        return span_of(self.part, self.part.length)

    @cached_property
    def ring(self) -> PressedRing:
        return PressedRing(self.part, self.part.length)

    @property
    def plug_expansion(self) -> PerKelvin:
        return self.part.tables.material_range(PLUG, "expansion").best

    @property
    def bears(self) -> Kelvin:
        """How much warmer than the room the work may be made."""
        return self.part.tables.allowance("warm_limit").best - ROOM_TEMPERATURE

    @property
    def spare(self) -> Kelvin:
        return self.part.tables.allowance("drop_on_spare").best

    @cached_property
    def lost(self) -> Draws:
        """Interference (m) that roughness takes."""
        tables = self.part.tables
        bore = self.part.drawn(tables.roughness(self.part.work.bore.made_by), Stream.ROUGHNESS)
        plug = self.part.fact("plug_roughness", Stream.ROUGHNESS)
        share = tables.allowance("roughness_loss").best
        return np.asarray(interference_lost(bore + plug, share))

    @cached_property
    def meant(self) -> Metre:
        """Interference (m) that is to press, the likely roughness flattened."""
        d, fact = self.part.bore, self.part.tables.holding_fact
        habit = fact("warm_share").best * d
        one = np.ones_like(self.lost)
        metal = self.ring.most_normal() * likely(self.ring.squeeze(one))
        on = (self.bears - self.spare) * _expansion(self.part) * d - likely(self.lost)
        grows = _expansion(self.part) - self.plug_expansion
        off = fact("warm_makes_up").best * self.bears * grows * d
        return min(habit, metal, on, off)

    @property
    def whole(self) -> Metre:
        """Interference (m) to turn the plug to."""
        return self.meant + likely(self.lost)

    @property
    def plug(self) -> Metre:
        return self.part.bore + self.whole

    @cached_property
    def pressing(self) -> Draws:
        """Interference (m) that presses, as bore and plug are known."""
        error = self.part.tables.holding_fact("plug_error").best
        turned = around(self.whole, error, Stream.TOOL)
        read = around(0.0, self.part.bore_band, Stream.BORE)
        return np.maximum(turned - read - self.lost, 0.0)

    @cached_property
    def normal(self) -> Draws:
        """Radial force (N)."""
        one = np.ones_like(self.pressing)
        return np.maximum(self.pressing / self.ring.squeeze(one), HAIR)

    @property
    def warm_on(self) -> Kelvin:
        """How much warmer than the plug it must be to drop on."""
        bare = change_to_slide_on(self.whole, 0.0, self.part.bore, _expansion(self.part))
        return float(bare) + self.spare

    @property
    def warm_off(self) -> Kelvin:
        """How much warmer than the room both must be until nothing presses."""
        return float(
            change_to_come_off(
                self.meant, self.part.bore, _expansion(self.part), self.plug_expansion
            )
        )


def _held(fit: _Fit) -> Held:
    part, show = fit.part, fit.part.show
    size = show.bore(fit.plug)
    return Held(
        way=WarmFit.id,
        tool=f"plug turned to {size}",
        do_it=f"turn a plug between centers to {size}, warm the work to about {show.temperature(ROOM_TEMPERATURE + fit.warm_on)} and drop "
        "it on; cut it cold; warm it off",
        leading="A",
        grip=_grip(fit),
        needs=_needs(part),
        reaches=ALL_ROUND,
        seat=_seat(part),
        fit=_known(fit),
        effort=_effort(fit),
        room=(part.outside, fit.span),
        presses_bore=True,
        more_grip="a little more interference where metal and warmth bear it, or a washer and screw",
        truer="Turning the plug between the centers it will run on; work square on its tube while it takes.",
        spares="Less interference; a stub with a screw.",
        marks="None; the bore shines where it was pressed.",
        mount=_mount(fit),
        release=_release(fit),
        ready=("oven or hot plate, thermometer, gloves, micrometer, indicator",),
        caution_tags=("dog", "warm-fit"),
        picture=bar_picture(part, part.bore, "plug a little over the bore"),
        figures=_figures(fit),
        sources=("ours-derived", "din-7190-memory"),
        notes=(
            f"Cut it cold: {show.temperature_difference(likely(fit.ring.half_warm(fit.normal)))} of warmth takes half of what "
            "holds it.",
        ),
    )


def _grip(fit: _Fit) -> Grip:
    part, ring = fit.part, fit.ring
    holds = FrictionFit(part, fit.normal, part.length)
    return Grip(
        torque=holds.torque,
        thrust_in=holds.along,
        thrust_out=holds.along,
        tilt=holds.tilt,
        runout=part.fact("soft_runout", Stream.CENTERING),
        strength=np.asarray(part.strength / np.maximum(ring.stress(fit.normal), 1.0)),
        springs=ring.springs(fit.normal),
        stiffness=bar_stiffness(part, part.bore, fit.span),
        half_warm=ring.half_warm(fit.normal),
        brittle=part.brittle,
    )


def _seat(part: Part) -> Check:
    margin = part.length / (SHORT * part.bore)
    return Check(
        margin,
        margin,
        f"It grips over the whole bore, {part.length / part.bore:.2g} of its size; {SHORT:g} is enough to sit square, on a tube "
        "that squares it while it takes.",
        "Nothing needs to." if margin >= 1 else "A stub or plate with a shoulder to square it.",
        ("ours",),
    )


def _known(fit: _Fit) -> Check:
    """The bore must be known as finely as the interference is small."""
    show, band = fit.part.show, fit.part.bore_band
    error = fit.part.tables.holding_fact("plug_error").best
    unsure = float(np.hypot(band, error))
    margin = fit.whole / (2 * unsure) if unsure > 0 else 2.0
    return Check(
        margin,
        margin / 2,
        f"The plug is to be {show.small(fit.whole)} over the bore; bore and plug together are known to {show.small(unsure)} "
        "either way.",
        "A finer reading of the bore: a plug gauge, or a bore gauge set on a ring.",
    )


def _effort(fit: _Fit) -> Check:
    show, most = fit.part.show, max(fit.warm_on, fit.warm_off)
    margin = fit.bears / most
    on, off = (show.temperature(ROOM_TEMPERATURE + t) for t in (fit.warm_on, fit.warm_off))
    limit = show.temperature(ROOM_TEMPERATURE + fit.bears)
    return Check(
        max(2.0, margin) if margin >= 1 else margin,
        margin,
        f"No press: it drops on at {on} and comes off at {off}, both warm; {limit} is the most that is offered.",
        "Less interference.",
        (fit.part.tables.allowance("warm_limit").source,),
    )


def _needs(part: Part) -> tuple[Need, ...]:
    job, tables = part.job, part.tables
    return (
        needed(job, tables, "oven"),
        *(needed(job, tables, tool) for tool in ("bar-stock", "dog", "tail-center")),
        made("the plug, centered and turned", tables.holding_fact("soft_making").best),
    )


def _figures(fit: _Fit) -> tuple[Figure, ...]:
    part = fit.part
    on = (
        Input("interference", fit.whole, "m", "small"),
        Input("expansion x bore (nm/K)", _expansion(part) * part.bore * 1e9, ""),
        Input("to spare", fit.spare, "K", "temperature difference"),
    )
    grows = (_expansion(part) - fit.plug_expansion) * part.bore * 1e9
    off = (
        Input("what presses", fit.meant, "m", "small"),
        Input("expansion over the plug's x bore (nm/K)", grows, ""),
    )
    holds = FrictionFit(part, fit.normal, part.length)
    slip = (
        Input("slip friction", likely(holds.friction), ""),
        Input("normal force", likely(fit.normal), "N"),
        Input("bore", part.bore, "m", "bore"),
    )
    kind = "temperature difference"
    return (
        drawn_figure("pressing", fit.pressing, "m", "small", "", (), "ours-derived"),
        drawn_figure("fit_torque", holds.torque, "N·m", "torque", "fit_torque", slip, "shigley"),
        Figure("warm_on", fit.warm_on, "K", None, None, "warm_on", on, ("ours",), kind),
        Figure("warm_off", fit.warm_off, "K", None, None, "warm_off", off, ("ours",), kind),
    )


def _mount(fit: _Fit) -> tuple[Step, ...]:
    show, part = fit.part.show, fit.part
    hot = show.temperature(ROOM_TEMPERATURE + fit.warm_on)
    return (
        centered(part),
        line(
            "Turn the plug",
            f"To {show.bore(fit.plug)}, parallel, that is {show.small(fit.whole)} over the bore; fine feed, polished, its end broken "
            "so that the work starts. Cold, by micrometer.",
            (),
            ("plug",),
        ),
        line(
            "Warm it, drop it on",
            f"Plug upright, a length of tube on it where the work is to stop. Work to {hot} all through, oven or hot plate, never "
            "a flame; gloves. In one move down on the tube and held there while it takes: stuck half way it stays. Let it cool, "
            "tube off, between centers.",
            _figures(fit),
            ("warm through", "rim runs out, cold"),
        ),
    )


def _release(fit: _Fit) -> tuple[Step, ...]:
    hot = fit.part.show.temperature(ROOM_TEMPERATURE + fit.warm_off)
    return (
        line(
            "Warm it off",
            f"Plug and work into the oven together, both to {hot} and a little, then pull it off with gloves. Let the plug cool to "
            "the room, wipe and measure it before the next piece.",
            (),
            ("bore when off",),
        ),
    )
