"""Constants and signs of the heat in work and mandrel, each broken once."""

from __future__ import annotations

from tests.mutant import Mutant

HEAT = (
    Mutant(
        "the gap between the two rates without what crosses the joint",
        "mechanics/two_bodies.py",
        "4 * g * g / (cw * cm)",
        "4 * g / (cw * cm)",
    ),
    Mutant(
        "heat that crosses to the mandrel shared by the work's heat capacity",
        "mechanics/two_bodies.py",
        "g / cw, g / cm, cw)",
        "g / cw, g / cw, cw)",
    ),
    Mutant(
        "a mandrel that takes from a fit as its work does",
        "mechanics/warmth.py",
        "work[0] * work[1] - mandrel[0] * mandrel[1]",
        "work[0] * work[1] + mandrel[0] * mandrel[1]",
    ),
    Mutant(
        "the way along a free end taken to its tip",
        "planning/heating/bodies.py",
        "along = 12 * conducts",
        "along = 4 * conducts",
    ),
    Mutant(
        "joint and way along the mandrel side by side",
        "planning/heating/bodies.py",
        "across = 1 / (1 / crosses + 1 / along)",
        "across = crosses + along",
    ),
    Mutant(
        "one center forgotten",
        "planning/heating/bodies.py",
        '2 * t.allowance("center_heat").best',
        't.allowance("center_heat").best',
    ),
    Mutant(
        "a mandrel whose own warmth counts in full",
        "planning/heating/loosened.py",
        "min(bar / own, 1.0), own * trial.grip.diameter",
        "1.0, own * trial.grip.diameter",
    ),
    Mutant(
        "passes without a pause between them",
        "planning/heating/bursts.py",
        "        if number and burst.pause:",
        "        if False:",
    ),
    Mutant(
        "no pause between cuts",
        "planning/heating/heat_run.py",
        "before = heater.stand(last.after, heater.pause + wait)",
        "before = heater.stand(last.after, wait)",
    ),
)
