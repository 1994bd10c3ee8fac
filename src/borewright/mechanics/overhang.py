"""A stepped stub held at one end, loaded across: how far it gives at the tool.

`Bar` is that of `beam`, its first edge where the stub is held; its own two springs are not used.
With the load at a from the root and the place asked at x, by unit loads
    y = F (∫ (a - s)(x - s) / EI ds + ∫ ds / G A_s + a x / k_turn + 1 / k_give),
s from 0 to the nearer of a and x. With a sprung center at the free end L, by superposition,
    1 / k = y(a, a) - y(a, L)² / (y(L, L) + 1 / k_center)      for unit loads.
Exact for stepped stubs (Simpson's rule is exact for the square). Source: unit-load theorem; closed
form; checked against Wentzell, Machine Design, Ex. 3.2, whose bar is two stubs. Weakness: small
deflections; what the chuck or collet gives is a number from outside, and on real machines it is
often the greater part.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.mechanics.allowed import above_zero, refuse_unless
from borewright.mechanics.beam import Bar, on_the_bar, per_step, simpson
from borewright.mechanics.num import distinct
from borewright.quantities.si import Metre, Newton, NewtonMetre, NewtonPerMetre, Radian


@dataclass(frozen=True, slots=True)
class Root:
    """How stiffly the stub is held: against turning (N·m per rad) and against moving (N/m).

    OutsideModel unless both are above 0; infinite is stiff.
    """

    turn: NewtonMetre = np.inf
    give: NewtonPerMetre = np.inf

    def __post_init__(self) -> None:
        refuse_unless(
            self.turn > 0,
            "stiffness of the root against turning",
            self.turn,
            "",
            "above 0",
            endless=True,
        )
        refuse_unless(
            self.give > 0,
            "stiffness of the root against moving",
            self.give,
            "",
            "above 0",
            endless=True,
        )


STIFF = Root()


def stub_deflection(
    bar: Bar, load_at: Metre, force: Newton, root: Root = STIFF, at: Metre | None = None
) -> float:
    """Deflection (m) at `at` (default under the load) of a force (N); places in m from the root.

    OutsideModel for a place off the stub.

    >>> bar = Bar(np.array([0.0, 1.0]), np.array([1.0]), np.array([np.inf]))
    >>> [round(stub_deflection(bar, 1.0, 3.0, root), 9) for root in (STIFF, Root(1.0))]
    [1.0, 4.0]
    """
    at = load_at if at is None else at
    on_the_bar(bar, load_at)
    on_the_bar(bar, at)
    reach = min(load_at, at)
    cuts = [*(bar.edges - bar.edges[0]).tolist(), reach]
    edges = distinct([cut for cut in cuts if cut <= reach])
    ei, gas = per_step(bar, edges)
    places = np.stack([edges[:-1], 0.5 * (edges[1:] + edges[:-1]), edges[1:]])
    length = np.diff(edges)
    bend = (simpson((load_at - places) * (at - places)) / ei * length).sum()
    held = load_at * at / root.turn + 1 / root.give
    return float(force * (bend + (length / gas).sum() + held))


def stub_stiffness(bar: Bar, load_at: Metre, root: Root = STIFF) -> NewtonPerMetre:
    """Stiffness (N/m) at the tool, under the load. OutsideModel at the root itself or off the stub.

    >>> bar = Bar(np.array([0.0, 1.0]), np.array([1.0]), np.array([np.inf]))
    >>> round(stub_stiffness(bar, 1.0), 9)
    3.0
    """
    above_zero("place of the load", load_at)
    return 1 / stub_deflection(bar, load_at, 1.0, root)


def stub_slope(bar: Bar, load_at: Metre, force: Newton, root: Root = STIFF) -> Radian:
    """Slope (rad) of the axis at the load, from bending and the root: a unit moment stands there.

    The root's part is F a / k_turn. OutsideModel off the stub.

    >>> bar = Bar(np.array([0.0, 1.0]), np.array([1.0]), np.array([np.inf]))
    >>> round(stub_slope(bar, 1.0, 2.0), 9)
    1.0
    """
    on_the_bar(bar, load_at)
    cuts = [*(bar.edges - bar.edges[0]).tolist(), load_at]
    edges = distinct([cut for cut in cuts if cut <= load_at])
    ei, _ = per_step(bar, edges)
    moment = load_at - 0.5 * (edges[1:] + edges[:-1])
    return float(force * ((moment / ei * np.diff(edges)).sum() + load_at / root.turn))


def propped_stiffness(
    bar: Bar, load_at: Metre, root: Root = STIFF, center: NewtonPerMetre = np.inf
) -> NewtonPerMetre:
    """Stiffness (N/m) under the load with a center (N/m, infinite is stiff) at the free end.

    Infinite right at a stiff center. OutsideModel at the root, off the stub, or for a center that
    does not push back.

    >>> bar = Bar(np.array([0.0, 1.0]), np.array([1.0]), np.array([np.inf]))
    >>> round(propped_stiffness(bar, 0.5), 6), round(propped_stiffness(bar, 1.0, center=9.0), 6)
    (109.714286, 12.0)
    """
    above_zero("place of the load", load_at)
    refuse_unless(center > 0, "stiffness of the center", center, "", "above 0", endless=True)
    alone = stub_deflection(bar, load_at, 1.0, root)
    reached = stub_deflection(bar, load_at, 1.0, root, bar.span)
    gives = stub_deflection(bar, bar.span, 1.0, root) + 1 / center
    left = alone - reached**2 / gives
    return float(1 / left) if left > 0 else np.inf
