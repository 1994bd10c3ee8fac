"""Where a cut ends short of what holds the work, and how the second face is come by."""

from __future__ import annotations

from borewright.answer.records import Cut
from borewright.cutting.directions import TIGHTENS
from borewright.mechanics.spread import likely
from borewright.planning.held.at_face import ring_at_face
from borewright.planning.held.clash import NEAR
from borewright.planning.held.held_trial import HeldTrial
from borewright.planning.taper.mouths import mouth_legs
from borewright.planning.taper.trial import Trial
from borewright.quantities.si import Metre


def stops(trial: Trial | HeldTrial, cut: Cut) -> str:
    """Where this cut stops, as a clause; empty where nothing is in its way."""
    if isinstance(trial, Trial):
        return _on_taper(trial, cut)
    return _at_ring(trial, cut) if cut.kind == "face" else ""


DEEPER = 0.4e-3
"""What should be left of a chamfer when the face is cut (m; ours)."""


def room_to_dog(trial: Trial) -> Metre:
    """Ground part (m) left bare between the leading face and the reduced end with the dog."""
    return max(0.0, trial.mandrel.ground_length - likely(trial.seat))


def _on_taper(trial: Trial, cut: Cut) -> str:
    show, lead = trial.show, trial.hold.leading
    if cut.kind == "turn" and cut.id in ("rough", "skin", "finish"):
        if not trial.touch_is_known:
            return f"stops past face {lead}, short of the dog"
        return f"stops past face {lead}, with {show.length(room_to_dog(trial))} left to the dog"
    if cut.kind != "face":
        return ""
    leading, far = mouth_legs(trial)
    leg = (far if cut.seat_effect == TIGHTENS else leading) - cut.depth * cut.passes
    if leg <= NEAR:
        return (
            "stops at the mandrel: the chamfer of the bore is faced away, so deepen it by "
            f"{show.depth(DEEPER - leg)} before it is mounted"
        )
    return f"stops in the chamfer of the bore, {show.depth(leg)} off the mandrel"


def _at_ring(trial: HeldTrial, cut: Cut) -> str:
    """The widest thing that touches the face which is cut, and what it leaves."""
    ring = ring_at_face(trial, cut)
    if ring is None:
        return ""
    return (
        f"stops at the {ring.role.value}, {trial.show.length(2 * ring.outer)} across, and leaves metal under it: face that off "
        "when it is off, before that face seats anything"
    )


def second_face_words(trial: Trial) -> str:
    """How the face that looks to the dog is cut, in a sentence."""
    note = trial.shop.notes_of.get(trial.mandrel.name)
    flats = note.flats if note else "unknown"
    lead = trial.hold.leading
    room = f", {trial.show.length(room_to_dog(trial))} from the dog" if trial.touch_is_known else ""
    if flats in ("both", "small"):
        turned = "the small end has a flat for the dog"
    elif flats in ("large", "none"):
        turned = "the small end has no flat for the dog: copper under its screw"
    else:
        turned = "look for a flat on the small end, or put copper under the dog's screw"
    return (
        f"Face {lead} is cut where it stands{room}: it needs no turning end for end. Where your tool does "
        f"not go in there, turn it end for end ({turned}): facing and turning then push it off the taper, so half the depth."
    )
