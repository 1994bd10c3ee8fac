"""The stress field of a pressed work against Lame's thick ring and against balance.

Lame, plane stress, bore d, outside D, k = d/D, even pressure p on the bore (any textbook of
strength of materials): hoop = p k^2/(1 - k^2) (1 + (D/2r)^2), radial the same with a minus. Free
ends and an even pressure make this exact along the whole ring, not only far from its ends.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from borewright.mechanics.bands import round_bounds
from borewright.mechanics.body_mesh import work_strips
from borewright.mechanics.compliance import largest_tension
from borewright.mechanics.contours import region
from borewright.mechanics.elastic_body import work_compliance
from borewright.mechanics.revolved import Revolved, revolved
from borewright.mechanics.tension_field import cut_off, finer, hoop_pull, stress_field
from borewright.mechanics.tension_place import largest_place

IRON = 0.26
HUB = [(0.0, 4.0, 0.5, 1.0)]
THIN = [(0.0, 2.0, 0.5, 0.6)]
WEBBED = [(0.0, 2.0, 0.5, 1.0), (0.8, 1.2, 1.0, 2.5), (0.4, 1.6, 2.5, 3.0)]
FLANGED = [(0.0, 2.0, 0.5, 0.9), (0.0, 0.4, 0.9, 3.0)]
OVERHUNG = [(0.5, 2.0, 0.5, 1.0), (0.0, 1.0, 1.0, 2.0)]

RADIUS = 2e-3
"""Share of the radius that a drawn bound may be off: a tenth of a millimetre on paper."""


def hoop(r: float, outside: float) -> float:
    """Lame's hoop stress for a pressure of 1 on a bore of radius 1/2."""
    k2 = (0.5 / outside) ** 2
    return k2 / (1 - k2) * (1 + (outside / r) ** 2)


def radius_of(tension: float, outside: float) -> float:
    """Where Lame's hoop stress has this value."""
    k2 = (0.5 / outside) ** 2
    return outside / math.sqrt(tension * (1 - k2) / k2 - 1)


def even(body: Revolved) -> np.ndarray:
    return np.ones(len(work_strips(body)))


def falling(body: Revolved) -> np.ndarray:
    middles = work_strips(body).mean(axis=1)
    return np.clip(1.5 - middles, 0.0, None)


def height_at(line: tuple[tuple[float, float], ...], z: float) -> float:
    """Where a line that rises along z is at z."""
    ordered = sorted(line)
    return float(np.interp(z, [a for a, _ in ordered], [b for _, b in ordered]))


@pytest.mark.parametrize(("rings", "outside"), [(HUB, 1.0), (THIN, 0.6)])
def test_bounds_lie_at_the_radii_that_lame_gives(rings: list, outside: float) -> None:
    body = revolved(rings)
    drawn = finer(stress_field(body, IRON, even(body)))
    lowest, largest = hoop(outside, outside), hoop(0.5, outside)
    bounds = round_bounds(lowest, largest)
    assert len(bounds) >= 2
    for bound in bounds:
        (line,) = region(drawn.z, drawn.r, drawn.tension, drawn.metal, bound).lines
        assert height_at(line, body.length / 2) == pytest.approx(
            radius_of(bound, outside), rel=RADIUS
        )


def test_the_field_is_lame_s_from_bore_to_outside() -> None:
    """0.3 % of the largest: what straight lines between Gauss points cost at the bore."""
    body = revolved(HUB)
    found = stress_field(body, IRON, even(body))
    middle = len(found.z) // 2
    wanted = np.array([hoop(r, 1.0) for r in found.r])
    assert found.stress[2, :, middle] == pytest.approx(wanted, abs=0.003 * 5 / 3)
    assert found.stress[0, :, middle] == pytest.approx(2 / 3 - wanted, abs=0.02)
    assert found.stress[1, :, middle] == pytest.approx(0.0, abs=0.01)


@pytest.mark.parametrize("rings", [HUB, THIN, WEBBED, FLANGED, OVERHUNG])
@pytest.mark.parametrize("state", [even, falling])
def test_hoop_stress_over_the_section_balances_the_push_on_the_bore(rings: list, state) -> None:
    """Half the work cut along its axis: N/(2 pi) on each side, N = pi d (sum of p h); exact."""
    body = revolved(rings)
    pressure = state(body)
    strips = work_strips(body)
    normal = math.pi * float(pressure @ (strips[:, 1] - strips[:, 0]))
    assert hoop_pull(body, IRON, pressure) == pytest.approx(normal / (2 * math.pi), rel=1e-5)


@pytest.mark.parametrize("rings", [HUB, WEBBED, FLANGED, OVERHUNG])
def test_the_place_has_the_largest_tension_and_the_field_agrees_there(rings: list) -> None:
    body = revolved(rings)
    work, pressure = work_compliance(body, IRON), falling(body)
    place = largest_place(work, pressure)
    assert place.tension == pytest.approx(float(largest_tension(work, pressure)), rel=1e-12)
    found = finer(stress_field(body, IRON, pressure))
    i, j = np.abs(found.r - place.r).argmin(), np.abs(found.z - place.z).argmin()
    assert found.tension[i, j] == pytest.approx(place.tension, rel=0.05)


def test_a_mirrored_work_has_the_mirrored_field() -> None:
    there = revolved(FLANGED)
    back = revolved([(2.0 - e, 2.0 - s, i, o) for s, e, i, o in FLANGED])
    one = stress_field(there, IRON, even(there)).tension
    other = stress_field(back, IRON, even(back)).tension
    assert one[:, ::-1] == pytest.approx(other, abs=1e-6)


def test_what_is_cut_off_leaves_the_rest_as_it_was() -> None:
    body = revolved(HUB)
    whole = stress_field(body, IRON, even(body))
    part = cut_off(whole, 0.8)
    assert part.r[-1] == 0.8
    assert part.metal.shape == (len(part.r) - 1, len(part.z) - 1)
    assert (part.stress[:, :-1] == whole.stress[:, : len(part.r) - 1]).all()
    middle = len(part.z) // 2
    assert part.stress[2, -1, middle] == pytest.approx(hoop(0.8, 1.0), rel=2e-3)
    assert cut_off(whole, 2.0) is whole
