"""What the picture of the pressed joint does not show, in sentences."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.pressed import PressedShape
from borewright.holding.taper.drawn_state import DrawnState
from borewright.mechanics.spread import likely
from borewright.planning.taper.trial import Trial
from borewright.quantities.si import Pascal


def picture_notes(
    trial: Trial, state: DrawnState, shape: PressedShape, bounds: tuple[Pascal, ...]
) -> tuple[str, ...]:
    """The state that is drawn, what is left out of it, and where to read on."""
    return tuple(_notes(trial, state, shape, bounds))


def _notes(
    trial: Trial, state: DrawnState, shape: PressedShape, bounds: tuple[Pascal, ...]
) -> Iterator[str]:
    show, work = trial.show, trial.job.work
    yield (
        "Likely case, no peak of either surface flattened: that loads the bore most. Dashed: the pressure left once "
        "they flatten."
    )
    yield (
        "Tension: the greatest pull in any direction. At the sharp ends of the bore and in sharp inner corners it has no "
        "highest value, a radius or chamfer decides it: they do not set the bands. Nor has the pressure at a sharp end."
    )
    yield _judged(trial)
    if shape.drawn_to is not None:
        under = next((bound for bound in bounds if bound >= shape.beyond), shape.beyond)
        yield (
            f"Broken off at {show.length(2 * shape.drawn_to)} of {show.length(work.outside)} outside: beyond, the tension "
            f"is under {show.pressure(under)}."
        )
    if work.spokes:
        yield (
            "Spokes and the rim they carry are left out: only the metal all round the bore is drawn and counted."
        )
    cuts = [name for name, cut in (("keyway", work.keyway), ("cross hole", work.cross_hole)) if cut]
    if cuts:
        missing = " and ".join(cuts)
        yield f"Not in this picture: the {missing}; the plan's crack answer counts that."
    if trial.mandrel.hole:
        yield "The mandrel's own bore is counted and not drawn."
    if state.joined.healed:
        yield "Edges of the outline a hair apart are taken as one."


def _judged(trial: Trial) -> str:
    facts = trial.hold.facts
    if facts.brittle:
        factor = likely(facts.edge_factor) * likely(facts.notch_factor)
        return (
            f"The plan's crack answer raises the tension by {factor:.2f} for the bore's edge and what cuts into it; "
            "this picture does not."
        )
    return (
        "Ductile metal yields by pull and pressure together, which is more than the pull alone at the bore: the "
        "plan's crack answer counts both."
    )
