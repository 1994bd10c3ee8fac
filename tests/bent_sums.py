"""The sums behind what bends, swings and pushes the centers, written out from the rules' own words."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

Inputs = Mapping[str, float]


def bent(i: Inputs) -> float:
    pushed = i["radial force"] * i["deflection at 1 N (nm)"]
    return 2 * abs(pushed + i["thrust x radius"] * i["deflection at 1 N·m (nm)"]) * 1e-9


BENT: dict[str, Callable[[Inputs], float]] = {
    "size_error": bent,
    "bend_taper": bent,
    "spring_pass_left": lambda i: (
        i["size error"]
        * i["radial force for each metre of depth"]
        / (i["radial force for each metre of depth"] + i["stiffness at the tool"])
    ),
    "first_frequency": lambda i: (
        math.sqrt(i["stiffness"] / i["mass that swings"]) / (2 * math.pi) * i["exact over one mass"]
    ),
    "center_load": lambda i: (
        math.hypot(i["radial force"], i["cutting force"]) * i["share of the nearer center"]
    ),
    "center_push": lambda i: (
        i["expansion x length (nm/K)"]
        / (i["the mandrel gives at 1 N (nm)"] + 1e9 / i["stiffness of centers and bed"])
    ),
    "work_side_chip": lambda i: (
        2
        * i["stiffness at the tool"]
        * i["damping ratio"]
        * (1 + i["damping ratio"])
        / (i["cutting stiffness"] * i["share across the work"])
    ),
    "deflection_per_force": lambda i: (
        (
            (i["a"] * i["b"]) ** 2
            / (3 * i["E"] * math.pi / 64 * (i["mandrel"] ** 4 - i["hole"] ** 4))
            / i["between centers"]
            + (i["a"] ** 2 + i["b"] ** 2) / i["between centers"] ** 2 / i["stiffness of a center"]
        )
        * i["stepped over plain"]
    ),
}
