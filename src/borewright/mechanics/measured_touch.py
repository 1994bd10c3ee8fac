"""Where bored work of any shape stops on a mandrel of any shape, both straight between their nodes.

The work slides on from the small end. It stops at the first seat u (x of its leading face) at which
somewhere D(u - z) = b(z): u0 = min { x + z : D(x) >= b(z) }. Within one stretch of the mandrel and
one of the bore that is the least of a straight function over a rectangle cut by a straight line, so
it lies at a node of the one or of the other, and looking at every node is exact.

Source: closed form. Weakness: no push; what the stations do not see, as in `mechanics.measured`.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.measured import Profile
from borewright.mechanics.num import Bools, Floats


def touch_on(mandrel: Profile, bore: Floats, depth: Floats, bears: Bools | None = None) -> Floats:
    """Seat u0 (m) at first touch, with no push at all, shape (n,).

    `bore`: diameter (m) at each depth, shape (n, m+1) or (m+1,); `depth`: rising depths (m) from
    the leading face, shape (m+1,); `bears`: shape (m,), false for the stretches of bore that have
    no metal. A straight taper measured at two stations gives what `taper.touch_position` gives.

    >>> straight = Profile(np.array([0.0, 0.11]), np.array([0.01799, 0.018045]), 0.0005)
    >>> touch_on(straight, np.array([0.01801, 0.01801]), np.array([0.0, 0.03])).round(6).tolist()
    [0.04]
    """
    bore = np.atleast_2d(np.asarray(bore, dtype=np.float64))
    metal = np.ones(len(depth) - 1, dtype=bool) if bears is None else np.asarray(bears, dtype=bool)
    used = np.append(metal, False) | np.append(False, metal)
    at_bore_nodes = (first_reaching(mandrel, bore[:, used]) + depth[used]).min(axis=1)
    if len(depth) == 1 or not metal.any():
        return np.asarray(at_bore_nodes, dtype=np.float64)
    at_mandrel_nodes = _at_mandrel_nodes(mandrel, bore, depth, metal)
    return np.asarray(np.minimum(at_bore_nodes, at_mandrel_nodes), dtype=np.float64)


def first_reaching(mandrel: Profile, size: Floats) -> Floats:
    """The smallest x (m) at which the mandrel is as large as each size (m), any shape.

    >>> flat = Profile(np.array([0.0, 0.04, 0.06]), np.array([0.018, 0.01802, 0.01802]), 0.0005)
    >>> first_reaching(flat, np.array([0.01801, 0.01802, 0.01803])).round(6).tolist()
    [0.02, 0.04, 0.08]
    """
    x, d = mandrel.x, mandrel.d
    so_far = np.maximum.accumulate(d)
    node = np.searchsorted(so_far, size, side="left")
    k = np.clip(node, 1, len(x) - 1)
    rise = np.where(d[k] > d[k - 1], d[k] - d[k - 1], 1.0)
    between = x[k - 1] + (size - d[k - 1]) / rise * (x[k] - x[k - 1])
    before = x[0] + (size - d[0]) / mandrel.taper
    beyond = x[-1] + (size - d[-1]) / mandrel.taper
    found = np.where(node == 0, before, np.where(node == len(x), beyond, between))
    return np.asarray(found, dtype=np.float64)


def _at_mandrel_nodes(mandrel: Profile, bore: Floats, depth: Floats, metal: Bools) -> Floats:
    """Least x + z over the mandrel's nodes that meet a bore closing between two depths, (n,)."""
    near, far = bore[:, :-1, None], bore[:, 1:, None]
    meets = (near > mandrel.d) & (far <= mandrel.d) & metal[:, None]
    closing = np.where(near > far, near - far, 1.0)
    z = depth[:-1, None] + (near - mandrel.d) / closing * np.diff(depth)[:, None]
    seats = np.where(meets, mandrel.x + z, np.inf)
    return np.asarray(seats.min(axis=(1, 2)), dtype=np.float64)
