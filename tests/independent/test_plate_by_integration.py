"""The dished web by a second route: the plate equation integrated outwards in high precision.

Takes the three equations of a round plate (slope, radial moment, tangential moment in balance with
the shear of a ring load) as they stand in any textbook, integrates them by mpmath from the hub, and
shoots for the moment there. Nothing here but the last lines imports the package.
"""

from __future__ import annotations

import mpmath as mp
import pytest

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
