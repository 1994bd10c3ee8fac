"""The stack of rings of `mechanics.rings` on a mandrel that is straight only between its stations.

Every interval of the bore is cut where a station lies under it, so that the interference is
straight within each and the sums of `RingContact` stay exact. Source and weakness: as there.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.measured import Profile, diameter_on
from borewright.mechanics.num import Floats, Ints, Num
from borewright.mechanics.outline import BoreLine
from borewright.mechanics.rings import Elastic, RingContact, ring_stack
from borewright.quantities.si import Metre

ENDLESS = (-np.inf, np.inf)


def ring_contact_on(
    mandrel: Profile,
    line: BoreLine,
    bore: Floats,
    seat: Floats,
    lost: Num,
    work: Elastic,
    steel: Elastic,
    ground: tuple[Metre, Metre] = ENDLESS,
    hole: Metre = 0.0,
) -> RingContact:
    """The stack of rings on a measured mandrel, which runs on beyond its stations.

    `bore`: diameter (m) at each edge of `line`, shape (n, m+1) or (m+1,); `seat`: u of the leading
    face (m), shape (n,); `lost`: interference lost (m), number or (n,); `steel`: the mandrel;
    `ground`: the two x (m) between which it is ground, without end where not given; `hole`:
    diameter (m) of the mandrel's own bore.

    >>> straight = Profile(np.array([0.0, 0.05, 0.1]), np.array([0.018, 0.018025, 0.01805]), 0.0005)
    >>> line = BoreLine(np.array([0.0, 0.03]), np.array([0.04]))
    >>> state = ring_contact_on(straight, line, np.array([0.01801, 0.01801]), np.array([0.045]),
    ...                         0.0, Elastic(100e9, 0.26), Elastic(207e9, 0.29))
    >>> round(float(state.contact_length[0]), 4)
    0.025
    """
    seat = np.atleast_1d(np.asarray(seat, dtype=np.float64))[:, None]
    bore = np.broadcast_to(np.atleast_2d(bore), (len(seat), len(line.edges)))
    ends_of_ground = [x for x in ground if np.isfinite(x)]
    edges = _edges(line.edges, seat - np.array([*mandrel.x, *ends_of_ground]))
    home = _home(line.edges, edges)
    near, far = (
        np.clip(z, seat - ground[1], seat - ground[0]) for z in (edges[:, :-1], edges[:, 1:])
    )
    # What lies off the ground length has shrunk to nothing, and its clipped place is another's.
    on = (far > near) | (ground == ENDLESS)
    over = tuple(
        np.where(on, diameter_on(seat - z, mandrel) - _bore_at(z, home, line.edges, bore), 0.0)
        for z in (near, far)
    )
    outside = line.outside[home]
    return ring_stack((near, far), (over[0], over[1]), bore, outside, lost, work, steel, hole)


def _edges(edges: Floats, under: Floats) -> Floats:
    """The bore's edges with every station that lies under it, rising, shape (n, m+1+k)."""
    whole = np.broadcast_to(edges, (len(under), len(edges)))
    cut = np.clip(under, edges[0], edges[-1])
    return np.sort(np.concatenate([whole, cut], axis=1), axis=1)


def _home(edges: Floats, cut: Floats) -> Ints:
    """Which interval of the bore each cut interval lies in, shape (n, m+k)."""
    middle = 0.5 * (cut[:, :-1] + cut[:, 1:])
    after = np.searchsorted(edges, middle, side="right")
    return np.asarray(np.clip(after - 1, 0, len(edges) - 2), dtype=np.intp)


def _bore_at(z: Floats, home: Ints, edges: Floats, bore: Floats) -> Floats:
    share = (z - edges[home]) / (edges[home + 1] - edges[home])
    near = np.take_along_axis(bore, home, axis=1)
    far = np.take_along_axis(bore, home + 1, axis=1)
    return np.asarray(near + share * (far - near), dtype=np.float64)
