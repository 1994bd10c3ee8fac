"""Work clamped between two faces by a screw or nut: how hard, and what that holds.

The wrench's torque is what a hand gives on an ordinary wrench, less where the thread or the faces
stand less; the clamp force is T / (K d). Torque is held by friction on the face that cannot turn
(uniform wear, the safe one); a clamp opens at one edge when a tilt moves its force out of the kern
of the ring, (R² + r²) / (4 R) from the axis.
Sources: nut_preload and face_friction in `mechanics`; the kern of a ring, any textbook on strength
of materials. Weakness: friction of the washer's face is left out; a burr or chip changes the ring.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.answer.records import Draws, Figure, Input
from borewright.answer.streams import Stream
from borewright.holding.figured import drawn_figure
from borewright.holding.part import Part
from borewright.mechanics.axial_swell import force_for_swell, swell
from borewright.mechanics.face_friction import wear_torque
from borewright.mechanics.nut_preload import clamp_force, force_at_tension
from borewright.mechanics.spread import likely
from borewright.quantities.si import Metre


@dataclass(frozen=True, slots=True, eq=False)
class Clamped:
    """Clamp force (N), torque on the wrench (N·m, as meant), and what the clamp holds, as draws."""

    thread: Metre
    wrench: float
    force: Draws
    torque: Draws
    tilt: Draws
    strength: Draws
    swell: Draws
    figures: tuple[Figure, ...]
    sources: tuple[str, ...]
    light: str = ""
    """Why it is tightened less than a hand would; empty where it is not."""


def thread_within(part: Part, most: Metre) -> Metre | None:
    """The largest coarse thread (m) of at most this size; None where all are larger."""
    found = part.tables.screw_within(part.job.units, most)
    return found.diameter if found else None


def clamped(part: Part, thread: Metre, inside: Metre, outside: Metre, screws: int = 1) -> Clamped:
    """Work clamped on a ring from `inside` to `outside` (m, diameters) by a thread (m).

    `screws` share it; `force`, `torque` and `tilt` are those of all, `wrench` that of one.
    """
    fact = part.tables.holding_fact
    area = np.pi * (outside**2 - inside**2) / 4
    means = part.fact("wrench_spread", Stream.TOOL)
    factor = part.fact("nut_factor", Stream.CLAMPING)
    stands = face_strength(part)
    hand = _hand_torque(part, thread, likely(factor))
    face, round_ = likely(stands) * area / fact("face_reserve").best, _bears_swelling(part)
    bears = min(face, round_)
    meant = min(hand, likely(factor) * thread * bears / screws)
    force = np.asarray(screws * clamp_force(meant * means, factor, thread))
    friction = part.fact("face_friction", Stream.FRICTION)
    torque = np.asarray(wear_torque(force, friction, inside, outside))
    return Clamped(
        thread,
        meant,
        force,
        torque,
        np.asarray(force * (outside**2 + inside**2) / (8 * outside)),
        np.asarray(stands * area / force),
        swell_of(part, force),
        _figures(thread, meant, factor, force, friction, torque, (inside, outside), screws),
        ("wentzell-bolts", "bhandari-clutches"),
        "" if meant >= hand * (1 - 1e-9) else NARROW if face < round_ else THIN,
    )


THIN = "no more, because an ordinary pull would swell it"
NARROW = "no more, because an ordinary pull would bruise so narrow a face"
"""Said where the work, not the thread or the hand, sets how hard it is clamped."""


def _hand_torque(part: Part, thread: Metre, factor: float) -> float:
    """Torque (N·m) that a hand gives: ordinary, or less where the thread stands less."""
    fact = part.tables.holding_fact
    area = fact("stress_area_share").best * np.pi * thread**2 / 4
    hand = fact("hand_wrench").best / factor
    most = min(hand, float(force_at_tension(fact("thread_stress").best, area)))
    return float(factor * most * thread)


def _round_bore(part: Part) -> Metre:
    """Outside (m) of the stoutest ring round the bore: what swells."""
    return max(p.outside for p in part.work.pieces if p.inside is None)


def swell_of(part: Part, force: Draws) -> Draws:
    """How much the outside of the ring round the bore grows under a clamp (m, on diameter)."""
    size, poisson = (part.bore, _round_bore(part)), part.range("poisson").best
    return np.asarray(swell(force, *size, part.elastic.modulus, poisson))


def _bears_swelling(part: Part) -> float:
    """Clamp (N) that swells the outside by the share of its tolerance that is allowed."""
    fact = part.tables.holding_fact
    stated = part.work.finished.tolerance
    tolerance = stated or part.tables.allowance("usual_tolerance").best
    allowed = max(fact("swell_share").best * tolerance, fact("swell_nothing").best)
    modulus, poisson = part.range("modulus").best, part.range("poisson").best
    return float(force_for_swell(allowed, part.bore, _round_bore(part), modulus, poisson))


def how_hard(part: Part, clamp: Clamped) -> str:
    """How hard a hand pulls, as the start of a sentence."""
    if not clamp.light:
        return "An ordinary wrench does it"
    grows = part.show.small(likely(clamp.swell))
    return f"Snug, {clamp.light}; so it grows {grows} on diameter"


def face_strength(part: Part) -> Draws:
    """What a face stands (Pa): yield, or the crushing strength of brittle metal."""
    if not part.brittle:
        return part.strength
    return part.strength * part.fact("crushing_over_tensile", Stream.EDGE)


def _figures(
    thread: Metre,
    meant: float,
    factor: Draws,
    force: Draws,
    friction: Draws,
    torque: Draws,
    ring: tuple[Metre, Metre],
    screws: int,
) -> tuple[Figure, ...]:
    screw = (
        Input("torque on the wrench", meant, "N·m"),
        Input("K", likely(factor), ""),
        Input("thread", thread, "m"),
    )
    face = (
        Input("friction", likely(friction), ""),
        Input("clamp force", likely(force), "N"),
        Input("ring, inside", ring[0], "m"),
        Input("ring, outside", ring[1], "m"),
    )
    return (
        Figure("wrench_torque", meant, "N·m", sources=("ours",), kind="torque"),
        drawn_figure(
            "clamp_force",
            np.asarray(force / screws),
            "N",
            "force",
            "nut_preload",
            screw,
            "wentzell-bolts",
        ),
        drawn_figure(
            "face_torque", torque, "N·m", "torque", "face_torque", face, "bhandari-clutches"
        ),
    )
