"""A chamfer as steps: the metal it takes, where the bore then touches and bears, and finer steps."""

from __future__ import annotations

import numpy as np
import pytest

from borewright.holding.taper.elastic_joint import joint
from borewright.mechanics import chamfer, revolved
from borewright.mechanics.chamfer import bearing, chamfered, rooms
from borewright.mechanics.outline import bore_line
from borewright.mechanics.rings import Elastic

D, LENGTH = 0.016, 0.03
TAPER = 0.0005
IRON, STEEL = Elastic(100e9, 0.26), Elastic(207e9, 0.29)

OUTLINES = {
    "ring": [(0.0, LENGTH, 0.040, None)],
    "thin bush": [(0.0, LENGTH, 0.021, None)],
    "webbed wheel": [
        (0.0, LENGTH, 0.030, None),
        (0.011, 0.019, 0.090, 0.030),
        (0.005, 0.025, 0.100, 0.090),
    ],
    "thin disc": [(0.0, 0.012, 0.080, None)],
    "flanged": [(0.0, LENGTH, 0.028, None), (0.0, 0.006, 0.080, 0.028)],
}
FINER, THINNER = 0.0025, 5e-4
"""Steps half as long (over the bore), and a sliver thin enough that they are not healed away."""

FORCE, TENSION = 1e-3, 2e-2
"""By how much the finer steps may change force and largest tension: what `chamfer` says of itself."""

TINY = 1e-12
"""Rounding, of square metres and metres."""


def section_area(pieces: list) -> float:
    """Metal in the half section (m2); the pieces of a plain ring do not overlap."""
    return sum((end - start) * (out - (inside or D)) / 2 for start, end, out, inside in pieces)


@pytest.mark.parametrize("leg", [0.2e-3, 0.5e-3, 1.3e-3, 3e-3])
def test_steps_take_the_triangle_s_area(leg: float) -> None:
    whole = OUTLINES["ring"]
    taken = section_area(whole) - section_area(chamfered(whole, D, (leg, leg)))
    assert taken == pytest.approx(2 * leg**2 / 2, abs=TINY)


def test_the_bore_bears_on_its_length_less_both_legs() -> None:
    for whole in OUTLINES.values():
        end = max(piece[1] for piece in whole)
        cut = bore_line(chamfered(whole, D, (0.3e-3, 0.8e-3)), D)
        assert bearing(cut) == pytest.approx((0.3e-3, end - 0.8e-3), abs=TINY)


def test_a_chamfer_behind_a_counterbore_is_at_the_bore_s_own_edge() -> None:
    whole = [(0.0, 0.005, 0.04, 0.02), (0.005, LENGTH, 0.04, None)]
    cut = chamfered(whole, D, (0.5e-3, 0.0))
    assert cut[0] == whole[0]
    assert bearing(bore_line(cut, D)) == pytest.approx((0.0055, LENGTH), abs=TINY)
    near, far = rooms(whole, D, (0.5e-3, 0.0))
    assert (near.step, far.step) == (pytest.approx(0.002), None)
    assert near.half == pytest.approx(0.0125)


def test_no_chamfer_leaves_the_pieces_as_they_are() -> None:
    for whole in OUTLINES.values():
        assert chamfered(whole, D, (0.0, 0.0)) == tuple(whole)


def pressed(pieces: tuple, leading: float, share: float) -> tuple[float, float]:
    """Normal force (N) and largest tension (Pa), the overlap ending at a share of the length."""
    made = joint(pieces, D, IRON, STEEL, (2 * D, 2 * D))
    assert not made.healed
    length = max(piece[1] for piece in pieces)
    pressure = made.pressure(TAPER * (share * length + leading - made.places))
    return made.normal_force(pressure), made.largest_tension(pressure)


@pytest.mark.parametrize("share", [0.4, 1.2])
@pytest.mark.parametrize("leg", [0.5e-3, 1e-3])
@pytest.mark.parametrize("name", OUTLINES)
def test_finer_steps_change_force_and_tension_by_little(
    name: str, leg: float, share: float, monkeypatch: pytest.MonkeyPatch
) -> None:
    whole = OUTLINES[name]
    usual = pressed(chamfered(whole, D, (leg, leg)), leg, share)
    for module in (chamfer, revolved):
        monkeypatch.setattr(module, "SLIVER", THINNER)
    finer = pressed(chamfered(whole, D, (leg, leg), FINER), leg, share)
    off = np.array(usual) / np.array(finer) - 1
    print(f"{name} {leg} {share}: {off[0]:+.3%} {off[1]:+.3%}")
    assert abs(off[0]) < FORCE
    assert abs(off[1]) < TENSION


@pytest.mark.parametrize("name", OUTLINES)
def test_a_chamfer_eases_the_bore_at_the_same_overlap(name: str) -> None:
    """Metal that stands beyond the edge of contact helps to carry it: less tension, more force."""
    whole, leg = OUTLINES[name], 0.5e-3
    sharp = pressed(tuple(whole), 0.0, 0.4)
    eased = pressed(chamfered(whole, D, (leg, leg)), leg, 0.4)
    assert eased[1] < sharp[1]
    assert eased[0] > sharp[0]
