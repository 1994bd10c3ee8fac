"""What was stated of keyways, cross holes, spokes and flaws: when it forbids the press, and in words."""

from __future__ import annotations

from borewright.job.records import Job
from borewright.job.web import web_of
from borewright.mechanics.notch import wall_over_keyway
from borewright.mechanics.spokes import spokes_turning_stress
from borewright.mechanics.spread import high_end, low_end
from borewright.planning.taper.trial import Trial
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

SPOKE_RESERVE = 3.0
"""Strength over the bending of the spokes by the cut, poor case (ours)."""

HOLE_SHARE = 0.5
"""A cross hole wider than this share of bore or length is not pressed past (ours)."""

LOOK = 'Clean it, look at bore and key corner under a lamp, ring it; if it is sound, say flaws = "none".'


def flaw_forbids(job: Job, *, brittle: bool) -> str:
    """Why a flaw that was seen, or suspected in brittle work, forbids the press; empty if it does not."""
    if job.work.flaws == "seen":
        return (
            "A flaw was seen at the bore: the press opens a crack or pore, and no sum says at what "
            "push. Do not press it."
        )
    if job.work.flaws == "suspected" and brittle:
        return (
            "A flaw is suspected at the bore of brittle work: it cracks from there without warning, "
            "and no sum says at what push. Do not press it on a doubt."
        )
    return ""


def hub_wall(trial: Trial) -> Metre:
    """Least wall of the hub (m), from the surface of the bore to the outside of the metal round it."""
    outside = trial.hold.line.outside
    return (float(outside[outside > 0].min()) - trial.grip.diameter) / 2


def keyway_forbids(trial: Trial, turned_wall: Metre) -> str:
    """Why the keyway leaves too little of the hub; empty if it does not.

    `turned_wall`: what stands (m) under the turned outside when the cuts are done.
    """
    keyway = trial.job.work.keyway
    if keyway is None:
        return ""
    show, wall = trial.show, hub_wall(trial)
    share = trial.tables.allowance("keyway_wall_share").best
    least = trial.tables.allowance("least_wall").best
    plain = len(trial.job.work.pieces) == 1
    standing = min(wall, turned_wall) if plain else wall
    if keyway.depth > share * standing:
        return (
            f"The keyway is {show.length(keyway.depth)} deep in a hub wall of {show.length(standing)}: more "
            "than half. Do not press it: the hub opens at the key corner."
        )
    left = wall_over_keyway(2 * standing, 0.0, keyway.depth)
    if left < least:
        return (
            f"Over the keyway {show.length(left)} of wall is left; at least {show.length(least)} must "
            "stand. Do not press it: the hub opens at the key corner."
        )
    return ""


def hole_forbids(trial: Trial) -> str:
    """Why a cross hole takes too much of the hub; empty if it does not."""
    hole, show = trial.job.work.cross_hole, trial.show
    if hole is None or hole.diameter <= HOLE_SHARE * min(trial.grip.diameter, trial.hold.length):
        return ""
    return (
        f"The cross hole of {show.length(hole.diameter)} takes more than half of the bore or of its length: what is left of "
        "the hub opens beside it. Do not press it."
    )


def spokes_forbid(trial: Trial) -> str:
    """Why the spokes do not carry the cut from rim to hub; empty if they do."""
    stress = spoke_turning(trial)
    if stress is None or low_end(trial.hold.facts.strength) >= SPOKE_RESERVE * stress:
        return ""
    return (
        f"The spokes are too slight for the cut: it bends them by about {trial.show.pressure(stress)}, and "
        f"{SPOKE_RESERVE:g} times less than they stand is wanted. Hold the wheel by its rim, or cut lighter."
    )


def spoke_turning(trial: Trial) -> float | None:
    """Stress (Pa) of the spokes under the torque of the hardest turning cut; None without spokes."""
    work = trial.job.work
    web, spokes = web_of(work), work.spokes
    torques = [
        high_end(d.whole_torque)
        for c, d in zip(trial.cuts, trial.demands, strict=True)
        if c.on_lathe
    ]
    if web is None or spokes is None or not torques:
        return None
    sizes = spokes.number, web.inner, web.outer, spokes.width, spokes.thickness
    return float(spokes_turning_stress(max(torques), *sizes))


def not_in_the_sum(job: Job) -> str:
    """What the crack question cannot know of brittle work, as a sentence."""
    work = job.work
    missing = [
        *([] if work.flaws == "none" else ["crack", "pore"]),
        *([] if work.keyway else ["keyway"]),
        *([] if work.cross_hole else ["cross hole"]),
    ]
    if not missing:
        return "It counts on the bore being as sound as stated."
    return f"A {listed(missing, 'or')} that was not stated is not in this sum."


def taken_as_sound(job: Job) -> str:
    """What was not stated of the metal and is taken as not there; empty where all was stated."""
    work = job.work
    missing = [
        *([] if work.spokes else ["spokes"]),
        *([] if work.keyway else ["keyways"]),
        *([] if work.cross_hole else ["cross holes"]),
        *([] if work.flaws != "unknown" else ["flaws"]),
    ]
    rings = "solid rings" if work.flaws != "unknown" else "sound solid rings"
    return f"{rings}: no {listed(missing, 'or')}" if missing else ""


def stated_words(job: Job) -> tuple[str, ...]:
    """What was stated, said back."""
    show, work = Show(job.units), job.work
    said = []
    if work.spokes:
        s = work.spokes
        said.append(f"{s.number} spokes {show.length(s.width)} by {show.length(s.thickness)}")
    if work.keyway:
        k = work.keyway
        said.append(f"keyway {show.length(k.width)} wide, {show.length(k.depth)} deep")
    if work.cross_hole:
        said.append(f"cross hole {show.length(work.cross_hole.diameter)}")
    if any(work.chamfers.legs):
        a, b = (show.length(leg) if leg else "none" for leg in work.chamfers.legs)
        said.append(f"bore chamfered {a}" if a == b else f"bore chamfered {a} at A, {b} at B")
    if work.flaws != "unknown":
        said.append(f"flaws at the bore: {work.flaws}")
    if work.casting_runout is not None:
        said.append(f"the outside runs out {show.length(work.casting_runout)} as cast")
    return (", ".join(said),) if said else ()


def listed(words: list[str], last: str) -> str:
    """Words in a row.

    >>> listed(["crack", "pore", "keyway"], "or")
    'crack, pore or keyway'
    """
    return f" {last} ".join([*([", ".join(words[:-1])] if words[1:] else []), words[-1]])
