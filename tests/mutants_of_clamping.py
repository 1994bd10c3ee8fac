"""Breaks in the models of holding by a nut, a key, a screw or jaws: name, file, right, wrong."""

from __future__ import annotations

from tests.mutant import Mutant

CLAMPING = (
    Mutant(
        "a clamped face that holds on its diameter",
        "mechanics/face_friction.py",
        "return friction * force * (outside + inside) / 4",
        "return friction * force * (outside + inside) / 2",
    ),
    Mutant(
        "an even pressure on the mean of a solid disc",
        "mechanics/face_friction.py",
        "(outside**2 + outside * inside + inside**2)",
        "(outside**2 + inside**2)",
    ),
    Mutant(
        "a gang that holds as its weaker way alone",
        "mechanics/face_friction.py",
        "in_series(one_way) + in_series(other_way)",
        "np.minimum(in_series(one_way), in_series(other_way))",
    ),
    Mutant(
        "a nut that clamps by the radius of its thread",
        "mechanics/nut_preload.py",
        "return nut_factor * force * diameter",
        "return nut_factor * force * diameter / 2",
    ),
    Mutant(
        "a squeezed ring that does not shear",
        "mechanics/ring_ovality.py",
        "return 1 - alpha + beta, 1 - alpha",
        "return 1 - alpha, 1 - alpha",
    ),
    Mutant(
        "jaws counted as twice as many",
        "mechanics/ring_ovality.py",
        "theta = np.pi / jaws",
        "theta = np.pi / (2 * jaws)",
    ),
    Mutant(
        "a bore under a jaw without its hoop pressure",
        "mechanics/ring_ovality.py",
        "* lever - force * c / (2 * s * area)",
        "* lever",
    ),
    Mutant(
        "a pin of square section",
        "mechanics/key_shear.py",
        "strength * planes * np.pi * diameter**2 / 4",
        "strength * planes * diameter**2",
    ),
    Mutant(
        "two set screws that press the wall one by one",
        "mechanics/set_screw.py",
        "np.cos(angle / 2)",
        "np.cos(0 * angle)",
    ),
    Mutant(
        "work thrown over by all of its clearance",
        "mechanics/set_screw.py",
        "return (bore - shaft) / 2",
        "return bore - shaft",
    ),
    Mutant(
        "a turning force by turns and not by radians",
        "mechanics/unbalance.py",
        "unbalance * (2 * np.pi * spindle) ** 2",
        "unbalance * spindle**2",
    ),
    Mutant(
        "a fit that takes a tilt as if its pressure were even",
        "mechanics/fitted_moment.py",
        "return pressure * diameter * length**2 / 6",
        "return pressure * diameter * length**2 / 4",
    ),
    Mutant(
        "a ring that swells as if it were solid",
        "mechanics/axial_swell.py",
        "(np.pi * (outside**2 - bore**2) * modulus)",
        "(np.pi * outside**2 * modulus)",
    ),
)
