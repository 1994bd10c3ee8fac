"""Where the greatest tension of a pressed work is."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.mechanics.compliance import Compliance, between, principal_tension
from borewright.mechanics.num import Floats
from borewright.mechanics.revolved import BORE
from borewright.quantities.si import Ratio


@dataclass(frozen=True, slots=True)
class TensionPlace:
    """The greatest principal tension, in the pressure's unit, and where: z and r over d."""

    z: Ratio
    r: Ratio
    tension: float


def largest_place(body: Compliance, pressure: Floats, margin: float = 0.01) -> TensionPlace:
    """The place of `compliance.largest_tension`, and the same value.

    Sharp edges and corners that open inwards are left out, as there: they have no value that a
    finer mesh would not raise.
    """
    window = margin, 1 - margin
    hoop, axial = (between(body, stress, *window) @ pressure for stress in (body.hoop, body.axial))
    z = between(body, body.middles[:, None], *window)[:, 0]
    bore = np.maximum(hoop, axial)
    best = int(np.argmax(bore))
    on_bore = TensionPlace(float(z[best]), BORE, float(bore[best]))
    if not len(body.points):
        return on_bore
    beside = principal_tension(np.einsum("mcn,n->cm", body.stress, pressure))
    most = int(np.argmax(beside))
    if beside[most] <= on_bore.tension:
        return on_bore
    z, r = body.points[most]
    return TensionPlace(float(z), float(r), float(beside[most]))
