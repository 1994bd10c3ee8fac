"""Constants and signs of work that tilts on its grip, each broken once."""

from __future__ import annotations

from tests.mutant import Mutant

TILTING = (
    Mutant(
        "a fifth of the grip that may lift, made a third",
        "mechanics/tilt.py",
        "LIFTED: Final[Ratio] = 0.2",
        "LIFTED: Final[Ratio] = 0.33",
    ),
    Mutant(
        "a tilting moment without the cosine of its lever round the bore",
        "mechanics/tilt.py",
        "np.concatenate([-bent, [0.0, 2 / np.pi]])",
        "np.concatenate([-bent, [0.0, 1 / np.pi]])",
    ),
    Mutant(
        "a first harmonic round the bore of half its size",
        "mechanics/tilt_path.py",
        "first = 2 * np.kron",
        "first = 1 * np.kron",
    ),
    Mutant(
        "a tilt that closes nothing",
        "holding/taper/lift_arm.py",
        "gives.even @ loads - overlap",
        "gives.even @ loads - overlap + 1.0",
    ),
    Mutant(
        "a mandrel that does not bend between its centers",
        "holding/taper/lift_arm.py",
        "bar = joint.bar.gives + bar_bending",
        "bar = joint.bar.gives + 0.0 * bar_bending",
    ),
    Mutant(
        "a tilting body that does not shear across its radius",
        "mechanics/tilt_body.py",
        "((AROUND, BY_R, 1.0), (RADIAL, OVER_R, -1.0), (AROUND, OVER_R, -1.0))",
        "((AROUND, BY_R, 0.0), (RADIAL, OVER_R, 0.0), (AROUND, OVER_R, 0.0))",
    ),
)
