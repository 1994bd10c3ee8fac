"""balance: wax that balances work on its mandrel -> the hole that does it for good, or the weight."""

from __future__ import annotations

from dataclasses import dataclass
from math import nan

from borewright.errors import RefusedInput
from borewright.mechanics.drilled_balance import POINT, hole_depth, least_shown, metal_for
from borewright.mechanics.unbalance import counterweight, out_of_balance
from borewright.quantities.show import Show
from borewright.quantities.si import Kilogram, KilogramMetre, Metre, Radian
from borewright.reference.library import Tables
from borewright.service.fit_records import Taken, material_taken

ARMS = {"knife-edges": "knife_edge_arm", "bench-centers": "bench_center_arm"}
"""What carries the work while it is balanced, and whose friction that is."""


@dataclass(frozen=True, slots=True)
class BalanceInput:
    """Wax and its radius; the radius of the hole or the weight; drill, thickness there, mass if known.

    `point` is the drill's point angle, π for a flat bottom; `mass` that of work with mandrel.
    """

    wax: Kilogram
    radius: Metre
    at: Metre
    material: str | None = None
    drill: Metre | None = None
    point: Radian | None = None
    thickness: Metre | None = None
    mass: Kilogram | None = None
    on: str = "knife-edges"


@dataclass(frozen=True, slots=True)
class BalanceResult:
    """`hole_depth` is at the tip of the point, NaN without a drill; `metal` is taken out at `at`.

    `weight_to_add` goes on the wax's side at the same radius. `least_shown`: the out of balance that
    friction still hides, NaN where no mass is given.
    """

    out_of_balance: KilogramMetre
    metal: Kilogram
    hole_depth: Metre
    weight_to_add: Kilogram
    least_shown: KilogramMetre
    assumed: tuple[Taken, ...]


def balance(asked: BalanceInput, tables: Tables) -> BalanceResult:
    """RefusedInput for a hole that leaves less than a third of the thickness there.

    UnknownName for a material that is not in the tables; RefusedInput for a drill with no material.
    """
    taken: list[Taken] = []
    heavy = float(out_of_balance(asked.wax, asked.radius))
    mass = float(counterweight(heavy, asked.at))
    depth = nan if asked.drill is None else _depth(asked, heavy, tables, taken)
    _fits(asked, depth, tables, taken)
    return BalanceResult(heavy, mass, depth, mass, _least(asked, tables, taken), tuple(taken))


def _depth(asked: BalanceInput, heavy: float, tables: Tables, taken: list[Taken]) -> Metre:
    if asked.material is None:
        raise RefusedInput("--material", "nothing", "the metal of the work, such as gray-iron-30")
    taken += material_taken(asked.material, tables)
    density = tables.material_range(_id(asked.material, tables), "density")
    taken.append(Taken("density", density.best, "kg/m³", density.source))
    if asked.point is None:
        taken.append(Taken("point", POINT, "rad", "practice"))
    point = POINT if asked.point is None else asked.point
    assert asked.drill is not None
    return float(hole_depth(metal_for(heavy, asked.at, density.best), asked.drill, point))


def _id(name: str, tables: Tables) -> str:
    """A word that leaves the material open is taken as for a blank that is not known."""
    broad = tables.broad_material(name)
    return name if broad is None else broad.taken("unknown")


def _fits(asked: BalanceInput, depth: Metre, tables: Tables, taken: list[Taken]) -> None:
    if asked.thickness is None or asked.drill is None:
        return
    leaves = tables.truth_fact("hole_leaves")
    taken.append(Taken("share_left_under_the_hole", leaves.best, "", leaves.source))
    deepest = asked.thickness * (1 - leaves.best)
    if depth <= deepest:
        return
    show = Show("mm")
    raise RefusedInput(
        "--thickness",
        f"{show.length(asked.thickness)} where the hole must be {show.depth(depth)} deep",
        f"a hole of at most {show.depth(deepest)}, which leaves a third of the metal: a larger drill, "
        "a larger --at, or several holes side by side, each for its share of the wax",
    )


def _least(asked: BalanceInput, tables: Tables, taken: list[Taken]) -> KilogramMetre:
    if asked.mass is None:
        return nan
    arm = tables.truth_fact(ARMS[asked.on])
    taken.append(Taken("arm_of_friction", arm.best, "m", arm.source))
    return float(least_shown(asked.mass, arm.best))


def balance_words(asked: BalanceInput, r: BalanceResult, show: Show) -> list[str]:
    """What to drill or to add and where, what stays hidden, what never to drill."""
    said = []
    if asked.drill is not None:
        said.append(
            f"Opposite the wax, on the heavy side, {show.length(asked.at)} from the axis: a hole of {show.length(asked.drill)}, "
            f"{show.depth(r.hole_depth)} deep at its tip, takes out {show.weight(r.metal)}."
        )
    begin = "In" if asked.drill is None else "Or, in"
    said.append(
        f"{begin} the wax's place, {show.weight(r.weight_to_add)} fixed {show.length(asked.at)} from the axis, so that it cannot fly off."
    )
    if asked.mass is not None:
        hidden = r.least_shown / asked.radius
        said.append(
            f"On {asked.on.replace('-', ' ')} friction may still hide {show.weight(hidden)} of wax at that radius: "
            + ("that is as much as was found." if hidden >= asked.wax else "less cannot be told.")
        )
    if asked.drill is not None:
        said.append(DRILL_CARE)
    return said


DRILL_CARE = (
    "Never into a spoke, nor near one's root, nor where the rim is thin, pored or cracked. Drill to nine tenths, take the wax "
    "off, try it again, and take the rest in small steps. This is balance at rest, one plane: it does not say that the wheel "
    "is safe to run."
)
