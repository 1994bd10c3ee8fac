"""Mutants of the models for ways of holding other than the plain taper; run by `mutants`."""

from __future__ import annotations

from tests.mutant import Mutant

OTHER_WAYS = (
    Mutant(
        "a center at the end of a stub that pushes back too little",
        "mechanics/overhang.py",
        "left = alone - reached**2 / gives",
        "left = alone - reached**2 / (2 * gives)",
    ),
    Mutant(
        "a cone that leans by its whole taper when it holds itself",
        "mechanics/expanding_sleeve.py",
        "lean = np.square(np.divide(taper, 2))",
        "lean = np.square(taper)",
    ),
    Mutant(
        "a sleeve that opens by itself",
        "mechanics/expanding_sleeve.py",
        "push_on_force(normal + opening, friction, taper) + bore_friction * normal",
        "push_on_force(normal, friction, taper) + bore_friction * normal",
    ),
    Mutant(
        "a finger that bends about the sleeve's center",
        "mechanics/sleeve_fingers.py",
        "return about_center - area * middle**2, fiber",
        "return about_center, fiber",
    ),
    Mutant(
        "strips of a zigzag whose bridges never turn",
        "mechanics/sleeve_strips.py",
        "_strip(strips, length, poisson) + turned * length",
        "_strip(strips, length, poisson)",
    ),
    Mutant(
        "lobes of a ring that stretches instead of bending",
        "mechanics/ring_lobes.py",
        "inertia * (order**2 - 1) ** 2)",
        "inertia * (order**2 - 1))",
    ),
    Mutant(
        "a root that turns without moving the tool",
        "mechanics/overhang.py",
        "held = load_at * at / root.turn + 1 / root.give",
        "held = load_at / root.turn + 1 / root.give",
    ),
    Mutant(
        "a bonded face as strong at its middle as at its edge",
        "mechanics/bonded_joint.py",
        "strength * np.pi * (outer**4 - inner**4) / (16 * outer)",
        "strength * np.pi * (outer**3 - inner**3) / 12",
    ),
    Mutant(
        "a staircase that cuts into its taper",
        "mechanics/fine_angle.py",
        "return depths / taper, depths",
        "return depths / taper - dial_step / taper, depths",
    ),
    Mutant(
        "a slide that moves the diameter by its radius",
        "mechanics/fine_angle.py",
        "np.asarray(2 * np.sin(angle)",
        "np.asarray(np.sin(angle)",
    ),
    Mutant(
        "work that slides on with no room",
        "mechanics/warm_fit.py",
        "return (interference + clearance) / (expansion * bore)",
        "return interference / (expansion * bore)",
    ),
    Mutant(
        "an even fit without pi",
        "mechanics/grip_of_fit.py",
        "return np.pi * friction * pressure * length * diameter",
        "return friction * pressure * length * diameter",
    ),
    Mutant(
        "a jaw whose edge never opens",
        "holding/jaws/jawed.py",
        "KERN = 6.0",
        "KERN = 2.0",
    ),
    Mutant(
        "jaws that bear on half of what they do",
        "holding/jaws/jawed.py",
        "jaws.bears * np.pi / jaws.number)",
        "jaws.bears * np.pi / 2 / jaws.number)",
    ),
    Mutant(
        "bar that stands back against nothing",
        "holding/jaws/jawed.py",
        "endless() if stands_back else held.slide",
        "endless()",
    ),
    Mutant(
        "bolts that do not add",
        "holding/faces/clamped.py",
        "np.asarray(screws * clamp_force(",
        "np.asarray(clamp_force(",
    ),
)
