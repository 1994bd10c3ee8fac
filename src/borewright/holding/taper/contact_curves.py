"""The curves of one joint for every modulus that is drawn: a million cases cost a lookup each.

Work and mandrel are as stiff as they are; only the ratio of their moduli differs from case to case.
The curve is computed at three ratios that span the draws and read between them along a parabola in
the logarithm of the ratio.
"""

from __future__ import annotations

import hashlib
from collections import OrderedDict
from dataclasses import dataclass
from typing import Final

import numpy as np

from borewright.answer.records import Draws
from borewright.holding.taper.elastic_joint import Joint
from borewright.holding.taper.pressed_state import PressedState
from borewright.mechanics.num import Floats
from borewright.mechanics.travel_curve import TravelCurve, travel_curve
from borewright.mechanics.travel_path import pressed_path

SPREAD: Final = (-0.9, 0.0, 0.9)
"""Places of the three ratios, over half the spread of the logarithms about its middle."""

MOST_IN_MEMORY: Final = 64

DIGITS: Final = 12
"""Gaps that differ by less than 1e-12 bore diameters are one: sums of sizes leave as much."""

_memory: OrderedDict[bytes, tuple[TravelCurve, ...]] = OrderedDict()


@dataclass(frozen=True, slots=True, eq=False)
class ContactCurves:
    """`curves` (m) at the ratios `logs` (m,) of work over mandrel, as natural logarithms."""

    joint: Joint
    logs: Floats
    curves: tuple[TravelCurve, ...]

    def state(self, raised: Draws, modulus: Draws, ratio: Draws) -> PressedState:
        """The state at overlaps `raised` (n,), on radius over d; `modulus` (Pa) the work's."""
        share, d, e = _weights(self.logs, np.log(ratio)), self.joint.bore, modulus

        def read(name: str) -> Draws:
            return self._read(name, raised, share)

        return PressedState(
            normal_force=read("force") * e * d**2,
            contact_length=read("contact") * d,
            tension=read("tension") * e,
            equivalent=read("equivalent") * e,
            pressure=read("pressure") * e,
            growth=read("growth") * d,
        )

    def normal_force(self, raised: Draws, modulus: Draws, ratio: Draws) -> Draws:
        """The normal force (N) alone, for sums that look for one travel or one warmth."""
        share = _weights(self.logs, np.log(ratio))
        return self._read("force", raised, share) * modulus * self.joint.bore**2

    def _read(self, name: str, raised: Draws, share: Floats) -> Draws:
        rows = [c.read(getattr(c, name), raised) for c in self.curves]
        return np.asarray((share * np.array(rows)).sum(axis=0))


def contact_curves(joint: Joint, shape: Floats, ratios: Draws) -> ContactCurves:
    """The curves for a `shape` (n,) of the gap at first touch, on radius over d, at `places`.

    `ratios` (n,): moduli of the work over that of the mandrel, for every case that will be asked.
    """
    logs, shape = _nodes(np.log(ratios)), np.round(shape, DIGITS)
    key = _key(joint, shape, logs)
    curves = _memory.get(key)
    if curves is None:
        paths = (pressed_path(joint.gives(float(np.exp(x))), shape) for x in logs)
        curves = tuple(travel_curve(joint.work, path) for path in paths)
    _memory[key] = curves
    _memory.move_to_end(key)
    while len(_memory) > MOST_IN_MEMORY:
        _memory.popitem(last=False)
    return ContactCurves(joint, logs, curves)


def _nodes(logs: Floats) -> Floats:
    middle, half = 0.5 * float(logs.max() + logs.min()), 0.5 * float(np.ptp(logs))
    return np.array([middle]) if half < 1e-9 else middle + half * np.array(SPREAD)


def _weights(nodes: Floats, logs: Floats) -> Floats:
    """Lagrange's weights of every node for every case; shape (m, n)."""
    return np.array(
        [
            np.prod([(logs - b) / (a - b) for b in nodes if b != a], axis=0) * np.ones_like(logs)
            for a in nodes
        ]
    )


def _key(joint: Joint, shape: Floats, logs: Floats) -> bytes:
    parts = joint.work.gives, joint.bar.gives, shape, logs
    found = hashlib.blake2b(digest_size=16)
    for part in parts:
        found.update(np.ascontiguousarray(part).tobytes())
    return found.digest()
