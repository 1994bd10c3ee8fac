"""Breaks in the models of bars that bend, swing and chatter: name, file, right, wrong."""

from __future__ import annotations

from tests.mutant import Mutant

BENDING = (
    Mutant(
        "a couple that is the same before and behind its place",
        "mechanics/influence.py",
        "turned = np.where(left, -along, 1 - along)",
        "turned = np.where(left, -along, -along)",
    ),
    Mutant(
        "means of a product by the middle alone",
        "mechanics/influence.py",
        "simpson = np.array([1.0, 4.0, 1.0])[:, None] / 6",
        "simpson = np.array([0.0, 6.0, 0.0])[:, None] / 6",
    ),
    Mutant(
        "centers that give by half",
        "mechanics/influence.py",
        "1 / np.sqrt(np.array(bar.springs))",
        "1 / np.sqrt(2 * np.array(bar.springs))",
    ),
    Mutant(
        "the frequency of half a swing",
        "mechanics/vibration.py",
        "return float(1 / (2 * np.pi * np.sqrt(inverse_square)))",
        "return float(1 / (np.pi * np.sqrt(inverse_square)))",
    ),
    Mutant(
        "the second swing for the first",
        "mechanics/vibration.py",
        "root[:, None] * flexibility * root)[-1]",
        "root[:, None] * flexibility * root)[-2]",
    ),
    Mutant(
        "Gauss points as if they were the ends of a cell",
        "mechanics/vibration.py",
        "GAUSS = 0.5 / np.sqrt(3.0)",
        "GAUSS = 0.5",
    ),
    Mutant(
        "size on radius for size on diameter",
        "mechanics/springing.py",
        "2 * (radial * give.per_force + moment * give.per_moment)",
        "(radial * give.per_force + moment * give.per_moment)",
    ),
    Mutant(
        "a thrust that bends the other way",
        "mechanics/springing.py",
        "radial * give.per_force + moment * give.per_moment",
        "radial * give.per_force - moment * give.per_moment",
    ),
    Mutant(
        "a spring pass that leaves K over k",
        "mechanics/springing.py",
        "return cutting_stiffness / (cutting_stiffness + stiffness)",
        "return cutting_stiffness / stiffness",
    ),
    Mutant(
        "a chatter limit with its factor of two left out",
        "mechanics/chatter.py",
        "return 2 * stiffness * damping * (1 + damping) / cutting_stiffness",
        "return stiffness * damping * (1 + damping) / cutting_stiffness",
    ),
    Mutant(
        "a force law taken as straight where it bends",
        "mechanics/chatter.py",
        "return (1 - exponent) * force / section",
        "return force / section",
    ),
    Mutant(
        "a square shoulder that feels the bar most",
        "mechanics/chatter.py",
        "_share(radial, cutting) * np.cos(",
        "_share(radial, cutting) * np.sin(",
    ),
    Mutant(
        "the larger root of the rubbed limit",
        "mechanics/chatter.py",
        "half = slope + np.sqrt(",
        "half = slope - np.sqrt(",
    ),
    Mutant(
        "the centers' loads changed over",
        "mechanics/center_loads.py",
        "return force * (1 - share), force * share",
        "return force * share, force * (1 - share)",
    ),
    Mutant(
        "a bed that does not give",
        "mechanics/center_loads.py",
        "return grown / (gives + 1 / stiffness)",
        "return grown / gives",
    ),
)
