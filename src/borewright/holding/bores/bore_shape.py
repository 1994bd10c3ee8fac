"""The bore's smallest size along its depth, seen from either face.

At each depth the smallest reading rules, whatever its direction: a mandrel enters the largest
circle that fits. Between readings the bore is taken as straight, beyond them as it was at the last.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.job.records import Bore
from borewright.mechanics.num import Floats
from borewright.quantities.si import Metre


@dataclass(frozen=True, slots=True, eq=False)
class BoreShape:
    """Depths from the leading face (m) and the diameter there (m), both shape (k,)."""

    depths: Floats
    sizes: Floats

    def at(self, depth: Floats) -> Floats:
        """Diameter (m) at depths (m)."""
        return np.interp(depth, self.depths, self.sizes)

    @property
    def change(self) -> Metre:
        """Largest minus smallest size along the bore (m)."""
        return float(self.sizes.max() - self.sizes.min())


def bore_shape(bore: Bore, length: Metre, leading: str) -> BoreShape:
    """The bore as met by a mandrel entering from the face named `leading`, A or B.

    >>> from borewright.job.records import BoreReading
    >>> b = Bore(0.018, readings=(BoreReading(0.0, 0.01802), BoreReading(0.03, 0.018)))
    >>> bore_shape(b, 0.03, "B").sizes.round(5).tolist()
    [0.018, 0.01802]
    """
    smallest: dict[float, float] = {}
    for r in bore.readings:
        smallest[r.depth] = min(r.size, smallest.get(r.depth, r.size))
    depths = sorted(smallest) or [0.0]
    sizes = [smallest.get(z, bore.size) for z in depths]
    shape = BoreShape(np.array(depths), np.array(sizes))
    return shape if leading == "A" else _from_far_face(shape, length)


def out_of_round(bore: Bore) -> Metre:
    """Largest difference (m) between readings at one depth; 0 where only one direction was read."""
    by_depth: dict[float, list[float]] = {}
    for r in bore.readings:
        by_depth.setdefault(r.depth, []).append(r.size)
    return max((max(v) - min(v) for v in by_depth.values()), default=0.0)


def _from_far_face(shape: BoreShape, length: float) -> BoreShape:
    return BoreShape(length - shape.depths[::-1], shape.sizes[::-1])
