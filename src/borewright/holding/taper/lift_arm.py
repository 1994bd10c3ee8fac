"""How much tilt a pressed joint stands: lift moment over normal force, an arm; and how stiffly.

The arm hangs on where the bore presses and hardly on how hard, so that it is worked with the likely
moduli, at a few of the drawn overlaps, and read between them; each case has its own normal force.
Plain springs under even pressure have a twelfth of the contact length (`mechanics.rock`).
Error, with that of `tilt.lift_moment_of`: other moduli and reading between, together a tenth of the
arm where the bore bears on half its length or more.
"""

from __future__ import annotations

import hashlib
from collections import OrderedDict
from dataclasses import dataclass
from typing import Final

import numpy as np

from borewright.answer.records import Draws
from borewright.holding.taper.elastic_joint import Joint
from borewright.mechanics.contact import pressed
from borewright.mechanics.num import Floats, distinct
from borewright.mechanics.tilt import bar_bending, lift_moment_of, tilt_stiffness
from borewright.quantities.si import Metre, Ratio
from borewright.shapes.find import tilt_shape

STATIONS: Final = (0.0, 0.05, 0.3, 0.65, 1.0)
"""Which of the drawn overlaps, in order of size, the arm is worked at, beside the likely one."""

MOST_IN_MEMORY: Final = 64

_memory: OrderedDict[bytes, Draws] = OrderedDict()


@dataclass(frozen=True, slots=True, eq=False)
class TiltGives:
    """What answers a tilt, per unit of the work's modulus; n strips as the joint's.

    `even` (n, n) for a pressure the same all round, `sways` (n, n) for one that goes as cos φ,
    `warp` (n,) for a unit moment (d³) at the outside, `own` the turn of the outside by it.
    """

    even: Floats
    sways: Floats
    warp: Floats
    own: float


def tilt_gives(joint: Joint, to_centers: tuple[Metre, Metre]) -> TiltGives:
    """Work and mandrel together; `to_centers`: from leading and far face to the centers (m)."""
    work = tilt_shape(joint.body, joint.poisson)
    out = max(0.0, to_centers[0] / joint.bore), max(0.0, to_centers[1] / joint.bore)
    bar = joint.bar.gives + bar_bending(work.strips, 1.0, out, joint.hole)
    return TiltGives(joint.gives(), work.sways + joint.ratio * bar, work.warp, work.own)


def lift_arm(joint: Joint, gives: TiltGives, overlap: Floats) -> Ratio:
    """Lift moment over normal force (over d) at an overlap (n,), on radius over d; 0 for none.

    At most the length of the bore, where so little ever lifts that no moment is found.
    """
    loads = pressed(gives.even, overlap)
    force = np.pi * float(loads.sum())
    if force <= 0:
        return 0.0
    pressure, gap = loads / joint.work.lengths, gives.even @ loads - overlap
    strips = joint.work.strips
    moment = lift_moment_of(strips, gives.even, pressure, gives.sways, gives.warp, gap)
    return min(moment / force, float(strips[-1, 1] - strips[0, 0]))


def joint_stiffness(joint: Joint, overlap: Floats, to_centers: tuple[Metre, Metre]) -> float:
    """Tilt stiffness (N·m/rad) at an overlap (n,), on radius over d, likely case; 0 for no contact.

    The turn is that of the outside, where the tool is: web and flange give, and the mandrel bends.
    """
    gives = tilt_gives(joint, to_centers)
    pressure = pressed(gives.even, overlap) / joint.work.lengths
    strips = joint.work.strips
    per_unit = tilt_stiffness(strips, gives.sways, pressure, gives.warp, gives.own)
    return per_unit * joint.modulus * joint.bore**3


def lift_arms(joint: Joint, shape: Floats, raised: Draws, to_centers: tuple[Metre, Metre]) -> Draws:
    """The arm (over d) of every drawn case, the likely first.

    `shape` (n,): the gap at first touch; `raised` (m,): overlaps from there; on radius over d.
    """
    key = _key(joint, shape, raised, np.array(to_centers))
    arms = _memory.get(key)
    if arms is None:
        gives = tilt_gives(joint, to_centers)
        at = distinct([*_in_order(raised), float(raised[0])])
        arms = np.interp(raised, at, [lift_arm(joint, gives, t - shape) for t in at])
    _memory[key] = arms
    _memory.move_to_end(key)
    while len(_memory) > MOST_IN_MEMORY:
        _memory.popitem(last=False)
    return arms


def _in_order(raised: Draws) -> list[float]:
    """The overlaps at the stations. Instead of numpy.quantile, which loads masked arrays."""
    places = np.array(STATIONS) * (len(raised) - 1)
    return [float(x) for x in np.interp(places, np.arange(len(raised)), np.sort(raised))]


def _key(joint: Joint, *parts: Floats) -> bytes:
    found = hashlib.blake2b(digest_size=16)
    for part in (joint.work.gives, joint.bar.gives, np.array([joint.ratio]), *parts):
        found.update(np.ascontiguousarray(part).tobytes())
    return found.digest()
