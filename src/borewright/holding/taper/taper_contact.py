"""A taper hold as two elastic bodies: the joint, and its state at any travel for every drawn case.

On a straight taper the gap at first touch has one shape whatever the size of the bore: one curve
serves every travel, and roughness, warmth and travel only shift along it. On a mandrel measured at
three stations or more the shape changes with the place where the drawn bore stops: curves at five
bores span the draws, and the rest are read between them.
"""

from __future__ import annotations

from dataclasses import fields
from typing import TYPE_CHECKING, Final

import numpy as np

from borewright.answer.records import Draws
from borewright.errors import OutsideModel, RefusedInput
from borewright.holding.taper.contact_curves import ContactCurves, contact_curves
from borewright.holding.taper.elastic_joint import Joint, joint
from borewright.holding.taper.elastic_joint import Piece as Ring
from borewright.holding.taper.facts import Facts
from borewright.holding.taper.lift_arm import joint_stiffness, lift_arms
from borewright.holding.taper.measured_mandrel import diameter_of, profile_of
from borewright.holding.taper.pressed_state import PressedState
from borewright.job.records import Mandrel, Piece, Work
from borewright.job.web import gripping, joined_to_bore, on_bore
from borewright.mechanics.num import Floats
from borewright.mechanics.rings import Elastic
from borewright.quantities.si import Metre

if TYPE_CHECKING:
    from borewright.holding.taper.plain_taper import TaperHold

NODES: Final = (0.0, 0.25, 0.5, 0.75, 1.0)
"""Which of the drawn bores, in order of size, are worked on a measured mandrel."""


def joint_of(work: Work, leading: str, mandrel: Mandrel, facts: Facts, touch: Metre) -> Joint:
    """Work and mandrel, likely moduli; z from the leading face. RefusedInput for no single body.

    The mandrel goes on past both faces by what is left of it, its reduced ends included, with the
    leading face at first `touch` (m): nearer to its large end by the travel is still the same, as
    long as one bore diameter stands out.
    """
    out = beyond_faces(work, mandrel, touch)
    likely = Elastic(float(np.atleast_1d(facts.work.modulus)[0]), float(facts.work.poisson))
    try:
        pieces, bore = pieces_joined(work, leading), work.bore.size
        return joint(pieces, bore, likely, facts.mandrel, out, mandrel.hole)
    except OutsideModel as trouble:
        found = f"{trouble.quantity}: {trouble.value}"
        raise RefusedInput("work.outline", found, trouble.allowed) from None


def beyond_faces(work: Work, mandrel: Mandrel, touch: Metre) -> tuple[Metre, Metre]:
    """How much mandrel (m) there is past the leading face and past the far one, ends included."""
    large = mandrel.ground_length + mandrel.end_length - touch
    return large, touch - work.length + mandrel.end_length


def pieces_joined(work: Work, leading: str) -> tuple[Ring, ...]:
    """The rings that are one body with the metal at the bore, z from the leading face.

    Spokes are left out, and so is a rim that only they carry.
    """
    rings = joined_to_bore(gripping(work), work.bore.size)
    if leading == "A":
        return tuple((p.start, p.end, p.outside, _inside(p, work)) for p in rings)
    ends = ((work.length - p.end, work.length - p.start, p) for p in rings)
    return tuple((start, end, p.outside, _inside(p, work)) for start, end, p in ends)


def _inside(piece: Piece, work: Work) -> Metre | None:
    """Its inside, None at the bore."""
    return None if piece in on_bore((piece,), work.bore.size) else piece.inside


def contact_state(hold: TaperHold, travel: Metre, lost: Draws, cases: int) -> PressedState:
    """The state past first touch with so much interference `lost` (m, (cases,) or one)."""
    modulus = moduli(hold.facts)[0]
    lost = lost if len(lost) == cases else np.broadcast_to(lost, cases)
    if profile_of(hold.mandrel) is None:
        raised = (hold.mandrel.taper * travel - lost) / (2 * hold.joint.bore)
        return hold.curves.state(raised, modulus[:cases])
    chosen = _chosen_cases(hold.bore_shift[:cases])
    states = [_state_of_case(hold, case, travel, lost) for case in chosen]
    return _between(states, hold.bore_shift[chosen], hold.bore_shift[:cases])


def likely_forces(hold: TaperHold, travels: Floats, lost: Floats) -> Floats:
    """Normal forces (N) of the likely case, with so much interference lost (m), (n,) each."""
    if profile_of(hold.mandrel) is not None:
        each = zip(travels.tolist(), lost, strict=True)
        states = [contact_state(hold, t, np.array([x]), 1).normal_force[0] for t, x in each]
        return np.asarray(states)
    raised = (hold.mandrel.taper * travels - lost) / (2 * hold.joint.bore)
    return hold.curves.likely_forces(raised, float(moduli(hold.facts)[0][0]))


def arm_of(hold: TaperHold, travel: Metre, lost: Draws) -> Draws:
    """Lift moment over normal force (m) with so much interference lost (m, (n,)).

    On a mandrel measured at three stations or more it is that of the likely bore.
    """
    d, measured = hold.joint.bore, profile_of(hold.mandrel) is not None
    shape = gap(hold, 0, hold.likely_touch + (travel if measured else 0.0)) / (2 * d)
    centers = _to_centers(hold, travel)
    raised = ((0.0 if measured else hold.mandrel.taper * travel) - lost) / (2 * d)
    return lift_arms(hold.joint, shape, raised, centers) * d


def stiffness_of(hold: TaperHold, travel: Metre, lost: Metre) -> float:
    """Tilt stiffness (N·m/rad) of the likely case with so much interference lost (m)."""
    over = -gap(hold, 0, hold.likely_touch + travel) - lost
    return joint_stiffness(hold.joint, over / (2 * hold.joint.bore), _to_centers(hold, travel))


def _to_centers(hold: TaperHold, travel: Metre) -> tuple[Metre, Metre]:
    return beyond_faces(hold.work, hold.mandrel, hold.likely_touch + travel)


def curves_of(hold: TaperHold) -> ContactCurves:
    """The curves of a hold on a straight taper, from the gap at first touch."""
    shape = gap(hold, 0, hold.likely_touch) / (2 * hold.joint.bore)
    return contact_curves(hold.joint, shape, moduli(hold.facts)[1])


def moduli(facts: Facts) -> tuple[Draws, Draws]:
    """The drawn moduli (Pa) of the work, and those over the mandrel's."""
    modulus = np.atleast_1d(np.asarray(facts.work.modulus, dtype=np.float64))
    return modulus, modulus / float(facts.mandrel.modulus)


def gap(hold: TaperHold, case: int, seat: Metre) -> Floats:
    """Bore less mandrel (m on diameter) at every strip, the leading face at x = `seat` (m)."""
    z = hold.joint.places
    bore = np.interp(z, hold.line.edges, hold.sizes)
    if profile_of(hold.mandrel) is not None:
        bore = bore + hold.bore_shift[case]
    return np.asarray(bore - diameter_of(hold.mandrel, seat - z))


def _state_of_case(
    hold: TaperHold,
    case: int,
    travel: Metre,
    lost: Draws,
) -> PressedState:
    """Every draw's friction, roughness and modulus, but this case's bore."""
    modulus, ratios = moduli(hold.facts)
    shape = gap(hold, case, float(hold.touch[case]) + travel) / (2 * hold.joint.bore)
    raised = -lost / (2 * hold.joint.bore)
    return contact_curves(hold.joint, shape, ratios).state(raised, modulus[: len(raised)])


def _chosen_cases(shifts: Draws) -> np.ndarray:
    order = np.argsort(shifts)
    places = order[np.rint(np.array(NODES) * (len(shifts) - 1)).astype(int)]
    _, first = np.unique(shifts[places], return_index=True)
    return np.asarray(places[first])


def _between(states: list[PressedState], at: Draws, wanted: Draws) -> PressedState:
    """Read along straight lines between the states at rising `at`."""
    below = np.clip(np.searchsorted(at, wanted, side="right") - 1, 0, max(0, len(at) - 2))
    above = np.minimum(below + 1, len(at) - 1)
    span = np.where(above > below, at[above] - at[below], 1.0)
    share = np.where(above > below, (wanted - at[below]) / span, 0.0)
    case = np.arange(len(wanted))

    def read(name: str) -> Draws:
        rows = np.array([getattr(s, name) for s in states])
        return np.asarray((1 - share) * rows[below, case] + share * rows[above, case])

    return PressedState(**{field.name: read(field.name) for field in fields(PressedState)})
