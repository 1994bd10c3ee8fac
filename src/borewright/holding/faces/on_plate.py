"""Work held down on a plate near its rim, where the cut pulls: straps, bolts, or one bolt.

    spokes   straps across the spokes, packed under each so that none is bent
    holes    bolts through holes in web or disc; the holes stay in the work
    bore     one bolt through the bore, and a washer or clamp plate on the hub
Torque is held by friction on the plate alone, each bolt on its own circle; nothing is counted for
heads, straps or spigot. Pads lift when the moment takes all of one bolt's force: n pads on radius r
change theirs by 2 M / (n r) at most, so M = n F r / 2. Straps that differ are out of balance: their
spread is weighed and answered by a counterweight and a speed.
Sources: `clamped`, `mechanics.unbalance`; pads as equal springs, own derivation.
Weakness: a plate that gives, or work that rocks on a burr, bears on other pads than drawn.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.answer.held import Check, Grip, Joint
from borewright.answer.records import Draws, Figure, Input
from borewright.answer.streams import Stream
from borewright.holding.faces.cap import Cap, cap_over
from borewright.holding.faces.clamped import Clamped, clamped, how_hard, thread_within
from borewright.holding.figured import drawn_figure
from borewright.holding.part import Part, endless, none_at_all
from borewright.job.web import web_of
from borewright.mechanics.spread import likely, low_end
from borewright.mechanics.unbalance import counterweight, out_of_balance, speed_for_share
from borewright.quantities.si import Metre, RevPerSecond

SPOKES, HOLES, BORE = "spokes", "holes", "bore"
"""Where it is held down."""

WASHER = (1.1, 2.2)
"""Inside and outside of what presses under a bolt, in its threads (ours)."""

LEAST = {"inch": 0.25 * 0.0254, "mm": 6e-3}
MOST = {"inch": 0.5 * 0.0254, "mm": 12e-3}
"""Bolts that plates are held down with (m; ours)."""

CLEAR = 4.0
"""Width from hub to rim, in threads, that a bolt with its washer wants (ours)."""

THROUGH = 0.5
"""Largest bolt through the bore, in bores (ours): a spigot round it must stand."""

WIDE = 1.8
"""Washer over the bore, in bores, where one bolt holds through it (ours)."""

PLATE = {"inch": 0.75 * 0.0254, "mm": 20e-3}
"""Thickness of the plate as drawn (m; ours)."""

NOTHING_TO_HOLD = (
    "There is no room for a bolt or strap between bore and rim: straps would stand in the tool's "
    "way."
)

GRAVITY = 9.80665
"""m/s², to turn masses into weights."""


@dataclass(frozen=True, slots=True, eq=False)
class HeldDown:
    """`number` bolts on a circle of `radius` (m), each pressing with `force` (N, draws).

    `cap`: what spans the bore under the one bolt that goes through it.
    """

    by: str
    number: int
    radius: Metre
    thread: Metre
    clamp: Clamped
    force: Draws
    torque: Draws
    tilt: Draws
    cap: Cap | None = None

    @property
    def all_of_it(self) -> Draws:
        """What presses the work on the plate (N)."""
        return self.force * self.number


def ways_down(part: Part, beside: Metre = 0.0) -> tuple[HeldDown, ...]:
    """Every arrangement that the part has room for, the one that marks nothing first.

    `beside`: room (m) to be left all round a bolt through the bore.
    """
    found = (_spokes(part), _bore(part, beside), _holes(part))
    return tuple(h for h in found if h is not None)


def why_nothing_holds(part: Part) -> str:
    """Why no arrangement is to be had, in a sentence."""
    if part.length > part.tables.holding_fact("upright_longest").best * part.outside:
        return (
            f"It is {part.length / part.outside:.1f} times as long as it is wide: stood on a plate "
            "it leans and chatters; a mandrel between centers serves long work."
        )
    return NOTHING_TO_HOLD


def _spokes(part: Part) -> HeldDown | None:
    """A strap on every spoke up to six, its bolt between two of them."""
    spokes, web = part.work.spokes, web_of(part.work)
    if spokes is None or web is None or spokes.number < 3:
        return None
    middle = (web.inner + web.outer) / 4
    gap = 2 * np.pi * middle / spokes.number - spokes.width
    thread = _bolt(part, min((web.outer - web.inner) / 2 / CLEAR, gap / 1.5, spokes.width / 1.5))
    number = spokes.number if spokes.number <= 6 else spokes.number // 2
    lever = part.fact("strap_lever", Stream.SETTING)
    return None if thread is None else _round(part, SPOKES, number, middle, thread, lever)


def _holes(part: Part) -> HeldDown | None:
    """Three bolts, midway between hub and rim of a web, three quarters out on a disc."""
    if part.work.spokes is not None:
        return None
    web = web_of(part.work)
    if web is not None and web.rimmed:
        inner, outer, at = web.inner, web.outer, 0.5
    else:
        inner, outer, at = max(_proud(part)), part.outside, 0.6
    thread = _bolt(part, (outer - inner) / 2 / CLEAR)
    radius = (inner + (outer - inner) * at) / 2
    return None if thread is None else _round(part, HOLES, 3, radius, thread, np.ones(1))


def _proud(part: Part) -> tuple[Metre, ...]:
    """Outsides of what stands at the bore (m): the hub, or the bore's own edge."""
    hubs = (p.outside for p in part.work.pieces if p.inside is None)
    return tuple(d for d in hubs if d < part.outside) or (part.bore,)


def _bolt(part: Part, most: Metre) -> Metre | None:
    units = part.job.units
    thread = thread_within(part, min(most, MOST[units]))
    return thread if thread is not None and thread >= LEAST[units] * (1 - 1e-9) else None


def _round(
    part: Part, by: str, number: int, radius: Metre, thread: Metre, lever: Draws
) -> HeldDown:
    clamp = clamped(part, thread, WASHER[0] * thread, WASHER[1] * thread)
    force = np.asarray(clamp.force * lever)
    friction = part.fact("face_friction", Stream.FRICTION)
    torque, tilt = number * friction * force * radius, number * force * radius / 2
    return HeldDown(by, number, radius, thread, clamp, force, torque, tilt)


def _bore(part: Part, beside: Metre) -> HeldDown | None:
    thread = thread_within(part, min(THROUGH * part.bore, part.bore - 2 * beside))
    inside = part.bore + 2 * max(part.work.chamfers.legs)
    outside = min(WIDE * part.bore, *(part.clear_of_tool(face) for face in "AB"))
    least = LEAST[part.job.units] * (1 - 1e-9)
    if thread is None or thread < least or outside < 1.05 * inside:
        return None
    if part.bore > part.tables.holding_fact("one_bolt_bore").best:
        return None
    if part.length > longest_upright(part, thread, outside):
        return None
    clamp = clamped(part, thread, inside, outside)
    cap = cap_over(part, thread, inside, outside, clamp.force)
    if cap is None:
        return None
    radius = (inside + outside) / 4
    return HeldDown(BORE, 1, radius, thread, clamp, clamp.force, clamp.torque, clamp.tilt, cap)


def longest_upright(part: Part, thread: Metre, base: Metre) -> Metre:
    """Longest work (m) that one bolt holds upright on a plate, pressed on a `base` (m) across."""
    fact = part.tables.holding_fact
    return min(fact("upright_longest").best * base, fact("bolt_longest").best * thread)


def plate_grip(part: Part, down: HeldDown, runout: Draws) -> Grip:
    """What an arrangement gives on a plate that the spindle carries."""
    return Grip(
        torque=down.torque,
        thrust_in=endless(),
        thrust_out=down.all_of_it,
        tilt=down.tilt,
        runout=runout,
        strength=np.asarray(down.clamp.strength * down.clamp.force / down.force),
        springs=down.clamp.swell if down.by == BORE else none_at_all(),
        stiffness=_stiffness(part),
        half_warm=endless(),
        joint=Joint.CLAMP,
        brittle=part.brittle,
    )


def _stiffness(part: Part) -> float:
    """At the far face: the spindle gives sideways and turns over; the plate and work do not."""
    turn, give = (part.tables.holding_fact(f"stub_root_{q}").best for q in ("turn", "give"))
    arm = PLATE[part.job.units] + part.length
    return float(1.0 / (1.0 / give + arm**2 / turn))


def plate_effort(part: Part, down: HeldDown) -> Check:
    """An ordinary wrench on every bolt."""
    show, one = part.show, show_force(part, down.force)
    each = "each bolt presses" if down.number > 1 else "the bolt presses"
    return Check(
        2.0,
        1.4,
        f"{how_hard(part, down.clamp)}: at about {show.torque(down.clamp.wrench)}, {each} the work "
        f"with about {one}.",
        "Cleaner, oiled threads press harder at the same torque.",
        down.clamp.sources,
    )


def show_force(part: Part, force: Draws) -> str:
    """A force (N) as it is likely and in the poor case."""
    show = part.show
    return f"{show.force(likely(force))}, {show.force(low_end(force))} in the poor case (1 in 20)"


@dataclass(frozen=True, slots=True, eq=False)
class Balance:
    """What straps and bolts leave out of balance (kg·m, draws), and what answers it."""

    amount: Draws
    heavier: float
    weight: float
    at: Metre
    speed: RevPerSecond


def balance_of(part: Part, down: HeldDown) -> Balance:
    """Two straps of a set differ by a share of one; the counterweight sits out by the rim."""
    strap = part.fact("strap_mass", Stream.TOOL) * part.fact("strap_spread", Stream.SETTING)
    amount = np.asarray(out_of_balance(strap, down.radius))
    at = max(0.4 * part.outside, down.radius)
    lathe = part.tables.holding_fact("lathe_mass").low * GRAVITY
    share = part.tables.holding_fact("shake_share").best
    return Balance(
        amount,
        likely(strap),
        float(counterweight(likely(amount), at)),
        at,
        float(speed_for_share(likely(amount), lathe, share)),
    )


def balance_figures(part: Part, down: HeldDown, b: Balance) -> tuple[Figure, ...]:
    """Counterweight and the speed until it is there."""
    fact = part.tables.holding_fact
    uneven = (Input("heavier by", b.heavier, "kg"), Input("at radius", down.radius, "m"))
    heavy = Input("weight of the lathe", fact("lathe_mass").low * GRAVITY, "N")
    return (
        Figure(
            "counterweight",
            b.weight,
            "kg",
            formula="counterweight",
            inputs=(*uneven, Input("its radius", b.at, "m")),
            sources=("ours",),
            kind="mass",
        ),
        Figure(
            "unbalanced_speed",
            b.speed,
            "rev/s",
            formula="unbalanced_speed",
            inputs=(*uneven, heavy, Input("share", fact("shake_share").best, "")),
            sources=("ours",),
            kind="spindle",
        ),
    )


def plate_figures(part: Part, down: HeldDown) -> tuple[Figure, ...]:
    """The clamp of a bolt, and the torque of them all."""
    wrench, force, face = down.clamp.figures
    if down.cap is not None:
        return wrench, force, face, down.cap.figure
    friction = part.fact("face_friction", Stream.FRICTION)
    inputs = (
        Input("friction", likely(friction), ""),
        Input("bolts", down.number, ""),
        Input("force of each on the work", likely(down.force), "N"),
        Input("radius", down.radius, "m"),
    )
    return (
        wrench,
        force,
        drawn_figure(
            "bolts_torque", down.torque, "N·m", "torque", "bolts_torque", inputs, "ours-derived"
        ),
    )
