"""Constants and signs of a pulley's crown, each broken once."""

from __future__ import annotations

from tests.mutant import Mutant

CROWNS = (
    Mutant(
        "an arc's radius without the height's own share",
        "mechanics/crown.py",
        "(half**2 + np.square(height)) / (2 * np.asarray(height))",
        "half**2 / (2 * np.asarray(height))",
    ),
    Mutant(
        "a taper over the whole face",
        "mechanics/crown.py",
        "(np.asarray(face) - flat) / 2",
        "np.asarray(face) - flat",
    ),
    Mutant(
        "an indicator by the tangent",
        "mechanics/crown.py",
        "np.multiply(travel, np.sin(angle))",
        "np.multiply(travel, np.tan(angle))",
    ),
    Mutant(
        "a dial of diameter turned as far as one of radius",
        "mechanics/crown_steps.py",
        "np.floor(per_radius * wanted / division + 0.5 + 1e-9)",
        "np.floor(wanted / division + 0.5 + 1e-9)",
    ),
    Mutant(
        "a ridge told at the stop in place of at its outer end",
        "mechanics/crown_steps.py",
        "fall(face / 2 - outer)",
        "fall(face / 2 - stops[new])",
    ),
    Mutant(
        "a slope taken over the whole face",
        "reference/crowns.py",
        'row.number("slope") * face / 2',
        'row.number("slope") * face',
    ),
)
