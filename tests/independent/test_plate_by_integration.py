"""The dished web by a second route: the plate equation integrated outwards in high precision.

Takes the three equations of a round plate (slope, radial moment, tangential moment in balance with
the shear of a ring load) as they stand in any textbook, integrates them by mpmath from the hub, and
shoots for the moment there. Nothing here but the last lines imports the package.
"""

from __future__ import annotations

import mpmath as mp
import pytest

from borewright.mechanics.clamp_plate import moment_at_hole, thickness_for
from borewright.mechanics.plate import dish, dish_stress

FORCE, RIM, THICK, MODULUS, POISSON = 5e3, 0.11, 0.008, 100e9, 0.26
CLOSE = 1e-6
"""Four figures more than any web is known by; the integration is good to ten."""


def shot(hub: float, moment: float) -> tuple[float, float, float]:
    """Slope, radial moment and dish at the rim, from no slope and this moment at the hub."""
    stiff = MODULUS * THICK**3 / (12 * (1 - POISSON**2))

    def rates(r: float, y: list[float]) -> list[float]:
        slope, radial, _ = y
        # M_r = -D (slope' + ν slope / r);  M_t = -D (slope / r + ν slope')
        bend = -radial / stiff - POISSON * slope / r
        around = -stiff * (slope / r + POISSON * bend)
        # moments about a ring's tangent: d(r M_r)/dr - M_t = r Q, with Q = -F / (2 π r) inwards
        return [bend, (around - radial) / r - FORCE / (2 * mp.pi * r), slope]

    out = mp.odefun(rates, hub, [mp.mpf(0), mp.mpf(moment), mp.mpf(0)])(RIM)
    return float(out[0]), float(out[1]), float(out[2])


def by_integration(hub: float, *, clamped: bool) -> tuple[float, float]:
    """Dish (m) and stress at the hub (Pa): the system is linear, so two shots give the moment."""
    which = 0 if clamped else 1
    none, one = shot(hub, 0.0), shot(hub, 1.0)
    moment = -none[which] / (one[which] - none[which])
    sunk = none[2] + moment * (one[2] - none[2])
    return abs(sunk), 6 * abs(moment) / THICK**2


@pytest.mark.parametrize("clamped", [True, False], ids=["rim clamped", "rim free to tilt"])
@pytest.mark.parametrize("hub", [0.02, 0.06])
def test_the_closed_form_is_the_integral(hub: float, clamped: bool) -> None:
    sunk, stress = by_integration(hub, clamped=clamped)
    assert dish(FORCE, hub, RIM, THICK, MODULUS, POISSON, clamped=clamped) == pytest.approx(
        sunk, rel=CLOSE
    )
    assert dish_stress(FORCE, hub, RIM, THICK, POISSON, clamped=clamped) == pytest.approx(
        stress, rel=CLOSE
    )


def moment_by_integration(hole: float, ring: float) -> float:
    """Bending round the edge of the hole (N): no radial moment there, none at the ring."""
    stiff = MODULUS * THICK**3 / (12 * (1 - POISSON**2))

    def rates(r: float, y: list[float]) -> list[float]:
        slope, radial = y
        bend = -radial / stiff - POISSON * slope / r
        around = -stiff * (slope / r + POISSON * bend)
        return [bend, (around - radial) / r - FORCE / (2 * mp.pi * r)]

    def at_ring(slope: float) -> float:
        return float(mp.odefun(rates, hole, [mp.mpf(slope), mp.mpf(0)])(ring)[1])

    none, one = at_ring(0.0), at_ring(1e-3)
    slope = -none / (one - none) * 1e-3
    return abs(stiff * (1 - POISSON**2) * slope / hole)


@pytest.mark.parametrize("hole", [0.006, 0.013, 0.04])
def test_a_plate_pressed_at_its_hole_bends_as_the_integral_says(hole: float) -> None:
    expected = moment_by_integration(hole, 0.055)
    assert moment_at_hole(FORCE, hole, 0.055, POISSON) == pytest.approx(expected, rel=CLOSE)
    thick = thickness_for(150e6, FORCE, hole, 0.055, POISSON)
    assert 6 * expected / thick**2 == pytest.approx(150e6, rel=CLOSE)


def test_a_narrow_plate_is_a_twisted_ring() -> None:
    """A couple F (a - b) / (2 pi R) a length round a ring of radius R bends it by R times that."""
    assert moment_at_hole(FORCE, 0.0499, 0.05, POISSON) == pytest.approx(
        FORCE / (2 * mp.pi), rel=2e-3
    )
