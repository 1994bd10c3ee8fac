"""A chamfered bore against CalculiX, which has finer steps of its own and the same slant.

Lengths over the bore's diameter. z = 0 is where the bore begins to bear, so the leading face lies at
minus the leg. The judge's ring is stepped here, not by the package.
"""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path

import numpy as np
import pytest
from tests.independent.calculix import WITHIN, judged
from tests.independent.calculix_deck import Fit
from tests.independent.calculix_mesh import BORE, Ring
from tests.independent.fits_judged import IRON, STEEL

from borewright.holding.taper.elastic_joint import joint
from borewright.mechanics.chamfer import chamfered
from borewright.mechanics.rings import Elastic

LEG, LENGTH, OUTSIDE = 0.03, 2.0, 1.25
STEPS = 8
"""Steps of the judge's slant: more than the package takes for this leg."""

SETTLED = {1.0: ("force", "bore_tension", "tension"), 0.6: ("force", "bore_tension")}
"""What the judge settles at each engagement. Part engaged, the largest tension stands right beside the
steps, and there the judge's own meshes differ by 4 %: it is not asked for it.
"""


def stepped() -> tuple[Ring, ...]:
    """The ring whose bore bears from 0 to LENGTH, a slant of STEPS steps before and behind."""
    rings: list[Ring] = [(0.0, LENGTH, BORE, OUTSIDE)]
    each = LEG / STEPS
    for k in range(STEPS):
        opened = BORE + (k + 0.5) * each
        rings.append((-(k + 1) * each, -k * each, opened, OUTSIDE))
        rings.append((LENGTH + k * each, LENGTH + (k + 1) * each, opened, OUTSIDE))
    return tuple(rings)


def ours(fit: Fit, *, sharp: bool = False) -> dict[str, float]:
    """Force and tensions by the package, of the whole ring less its chamfers; or square-edged."""
    reach = 0.0 if sharp else LEG
    whole = [(-reach, LENGTH + reach, 2 * OUTSIDE, None)]
    pieces = chamfered(whole, 1.0, (reach, reach))
    made = joint(pieces, 1.0, Elastic(*fit.work), Elastic(*fit.mandrel), (2.0, 2.0))
    pressure = made.pressure(np.array([fit.overlap(z) for z in made.places]))
    return {
        "force": made.normal_force(pressure) / fit.work[0],
        "bore_tension": made.bore_tension(pressure, 0.05, 0.95) / fit.work[0],
        "tension": made.largest_tension(pressure) / fit.work[0],
    }


@pytest.mark.parametrize("share", SETTLED)
def test_a_chamfered_ring_is_calculix_s_and_strained_less_than_a_square_edged_one(
    share: float, tmp_path: Path
) -> None:
    """Metal beyond the edge of contact helps to carry: the same overlap strains the bore less."""
    fit, asked = Fit(stepped(), IRON, STEEL, share), SETTLED[share]
    judge = judged(fit, tmp_path / "chamfered")
    assert [name for name in asked if name in judge.doubtful] == []
    truth, found = asdict(judge.found), ours(fit)
    off = {name: found[name] / truth[name] - 1 for name in asked}
    print({name: f"{s:+.2%} ({judge.apart[name]:.2%})" for name, s in off.items()})
    assert {name: f"{s:+.2%}" for name, s in off.items() if abs(s) > WITHIN[name]} == {}
    square = Fit(((0.0, LENGTH, BORE, OUTSIDE),), IRON, STEEL, share)
    sharp, ours_sharp = asdict(judged(square, tmp_path / "square").found), ours(square, sharp=True)
    relief = {name: (truth[name] / sharp[name], found[name] / ours_sharp[name]) for name in asked}
    print(relief)
    assert min(relief.pop("force")) > 1
    assert all(max(both) < 1 for both in relief.values()), relief
