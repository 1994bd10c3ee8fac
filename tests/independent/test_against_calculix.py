"""The elastic joint against CalculiX on the same taper fits, each meshed on its own."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.independent.calculix import Fit, normal_force

from borewright.holding.elastic_joint import joint
from borewright.mechanics.rings import Elastic

IRON, STEEL, ALUMINIUM = (100e3, 0.26), (207e3, 0.29), (69e3, 0.33)
RING = [(0.0, 2.0, 0.5, 1.5)]
WEBBED = [(0.0, 2.0, 0.5, 1.0), (0.8, 1.2, 1.0, 2.5), (0.4, 1.6, 2.5, 3.0)]
FLANGED = [(0.0, 2.0, 0.5, 0.9), (0.0, 0.4, 0.9, 3.0)]
BUSH = [(0.0, 2.0, 0.5, 0.65)]
TAPER = 1e-4
SAME = 3e-3
"""Normal force: what the contact model is held to."""

CASES = {
    "a plain ring, whole": (RING, IRON, 1.0),
    "a plain ring, half": (RING, IRON, 0.5),
    "a thin bush, whole": (BUSH, ALUMINIUM, 1.0),
    "a webbed and rimmed wheel, whole": (WEBBED, IRON, 1.0),
    "a flange flush with the leading face, half": (FLANGED, STEEL, 0.5),
}


@pytest.mark.parametrize("name", CASES)
def test_the_normal_force_is_calculix_s(name: str, tmp_path: Path) -> None:
    rings, metal, share = CASES[name]
    reach = 2.0 * share

    def overlap(z: float) -> float:
        return TAPER * (reach - z)

    fit = Fit(rings, 2.0, metal, STEEL)
    judge = normal_force(fit, overlap, 8, 1e4, tmp_path)
    # CalculiX may only judge where a tenth of its contact stiffness gives it the same answer.
    assert normal_force(fit, overlap, 8, 1e3, tmp_path) == pytest.approx(judge, rel=1.5e-3)
    pieces = [(s, e, 2 * b, 2 * a if a > 0.5 else None) for s, e, a, b in rings]
    ours = joint(pieces, 1.0, Elastic(*metal), Elastic(*STEEL), (2.0, 2.0))
    pressure = ours.pressure(TAPER * (reach - ours.places))
    assert ours.normal_force(pressure) == pytest.approx(judge, rel=SAME)
