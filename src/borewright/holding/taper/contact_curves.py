"""The curves of one joint for every modulus that is drawn: a million cases cost a lookup each.

Work and mandrel are as stiff as they are; only the ratio of their moduli differs from case to case.
The curve is computed at three ratios that span the draws and read between them along a parabola in
the logarithm of the ratio.
"""

from __future__ import annotations

import hashlib
from collections import OrderedDict
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from borewright.answer.records import Draws
from borewright.holding.taper.elastic_joint import Joint
from borewright.holding.taper.pressed_state import PressedState
from borewright.mechanics.num import Floats
from borewright.mechanics.travel_curve import TravelCurve, travel_curve
from borewright.mechanics.travel_path import pressed_path
from borewright.quantities.si import Pascal

SPREAD: Final = (-0.9, 0.0, 0.9)
"""Places of the three ratios, over half the spread of the logarithms about its middle."""

MOST_IN_MEMORY: Final = 64

DIGITS: Final = 12
"""Gaps that differ by less than 1e-12 bore diameters are one: sums of sizes leave as much."""

_memory: OrderedDict[bytes, Sheaf] = OrderedDict()

ROWS: Final = ("force", "contact", "tension", "equivalent", "pressure", "growth")
"""Which values of a curve are read, in the order of the fields of PressedState."""


@dataclass(frozen=True, slots=True, eq=False)
class ContactCurves:
    """The curves of a `joint` for every drawn case: `share` (m, n) is the weight of each curve."""

    joint: Joint
    sheaf: Sheaf
    share: Floats

    def state(self, raised: Draws, modulus: Draws) -> PressedState:
        """The state of the first cases at overlaps `raised` (n,), on radius over d.

        `modulus` (Pa, (n,)) is the work's.
        """
        d, e = self.joint.bore, modulus
        read = self.sheaf.read(raised, self.share[:, : len(raised)])
        force, contact, tension, equivalent, pressure, growth = read
        return PressedState(
            normal_force=force * (e * d**2),
            contact_length=contact * d,
            tension=tension * e,
            equivalent=equivalent * e,
            pressure=pressure * e,
            growth=growth * d,
        )

    def likely_forces(self, raised: Floats, modulus: Pascal) -> Floats:
        """Normal forces (N) of the likely case alone, at many overlaps (n,)."""
        read = self.sheaf.read(raised, self.share[:, :1])
        return np.asarray(read[0] * modulus * self.joint.bore**2)


@dataclass(frozen=True, slots=True, eq=False)
class Sheaf:
    """The curves at m ratios, brought to the stations (k,) of all of them: straight between.

    `values` and `steps` are (m, 6, k): those at a station, and what is added up to the next. The
    stations come last, so that the many cases lie side by side when they are read.
    """

    raised: Floats
    values: Floats
    steps: Floats

    def read(self, raised: Draws, share: Floats) -> Floats:
        """Every row (6, n) at overlaps (n,), weighed by `share` (m, n); past an end, as there."""
        known = self.raised
        at = np.minimum(np.maximum(raised, known[0]), known[-1])
        below = np.minimum(known.searchsorted(at, side="right") - 1, len(known) - 2)
        start = known[below]
        rows = self.steps.take(below, axis=2)
        rows *= (at - start) / (known[below + 1] - start)
        rows += self.values.take(below, axis=2)
        rows *= share[:, None, :]
        return np.asarray(rows.sum(axis=0))


def sheaf_of(curves: Sequence[TravelCurve]) -> Sheaf:
    """The curves on their common stations."""
    raised = np.unique(np.concatenate([c.raised for c in curves]))
    values = np.array([[c.read(getattr(c, row), raised) for row in ROWS] for c in curves])
    # Where the contact ends inside a strip a tension is read some per cent high or low. More travel
    # never spares the bore, so the highest on the way stands.
    stress = [ROWS.index("tension"), ROWS.index("equivalent")]
    values[:, stress] = np.maximum.accumulate(values[:, stress], axis=2)
    return Sheaf(raised, values, np.diff(values, axis=2))


def contact_curves(joint: Joint, shape: Floats, ratios: Draws) -> ContactCurves:
    """The curves for a `shape` (n,) of the gap at first touch, on radius over d, at `places`.

    `ratios` (n,): moduli of the work over that of the mandrel, for every case that will be asked.
    """
    logs, shape = _nodes(np.log(ratios)), np.round(shape, DIGITS)
    key = _key(joint, shape, logs)
    sheaf = _memory.get(key)
    if sheaf is None:
        paths = (pressed_path(joint.gives(float(np.exp(x))), shape) for x in logs)
        sheaf = sheaf_of([travel_curve(joint.work, path) for path in paths])
    _memory[key] = sheaf
    _memory.move_to_end(key)
    while len(_memory) > MOST_IN_MEMORY:
        _memory.popitem(last=False)
    return ContactCurves(joint, sheaf, _weights(logs, np.log(ratios)))


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
