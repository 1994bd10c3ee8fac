"""Finite elements against what is known of thick rings, and against themselves on finer meshes."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.optimize import brentq

from borewright.errors import OutsideModel
from borewright.mechanics import body_mesh, elastic_body
from borewright.mechanics.body_mesh import work_strips
from borewright.mechanics.compliance import (
    Compliance,
    bore_tension,
    largest_tension,
    principal_tension,
)
from borewright.mechanics.contact import end_of_contact, pressed
from borewright.mechanics.elastic_body import (
    field,
    mandrel_compliance,
    work_compliance,
)
from borewright.mechanics.revolved import revolved

HUB = [(0.0, 2.0, 0.5, 1.0)]
WEBBED = [*HUB, (0.8, 1.2, 1.0, 2.5), (0.4, 1.6, 2.5, 3.0)]
FLANGED = [(0.0, 2.0, 0.5, 0.9), (0.0, 0.4, 0.9, 3.0)]
IRON, STEEL = 0.26, 0.29


@pytest.fixture(scope="module")
def hub() -> Compliance:
    return work_compliance(revolved(HUB), IRON)


def test_an_even_pressure_grows_a_free_ring_as_lame_says(hub: Compliance) -> None:
    """Lame, plane stress, k = d/D = 1/2: growth on radius over d = (1/2) ((1+k^2)/(1-k^2) + v)."""
    grown = hub.gives @ hub.lengths
    assert grown == pytest.approx(0.5 * (5 / 3 + IRON), rel=2e-4)
    tension = hub.hoop @ np.ones(len(hub.lengths))
    assert tension == pytest.approx(5 / 3, rel=5e-3)
    middle = np.abs(hub.middles - 1.0) < 0.5
    assert tension[middle] == pytest.approx(5 / 3, rel=5e-4)
    assert (hub.axial @ np.ones(len(hub.lengths)))[middle] == pytest.approx(0.0, abs=2e-3)
    outside = hub.growth @ np.ones(len(hub.lengths))
    assert outside == pytest.approx(2 * 0.25 / (1 - 0.25), rel=2e-3)


def test_an_even_pressure_squeezes_the_middle_of_a_long_bar_as_lame_says() -> None:
    """Solid bar, plane stress: (1 - v) / 2 on radius over d; held at the ends by what stands out."""
    strips = work_strips(revolved([(0.0, 6.0, 0.5, 1.0)]))
    bar = mandrel_compliance(strips, STEEL)
    squeezed = bar.gives @ bar.lengths
    middle = np.abs(bar.middles - 3.0) < 0.5
    assert squeezed[middle] == pytest.approx((1 - STEEL) / 2, rel=2e-3)
    assert squeezed[0] < 0.75 * squeezed[len(squeezed) // 2]


def test_a_uniform_fit_on_a_long_hub_has_lame_s_pressure_at_its_middle() -> None:
    hub = work_compliance(revolved([(0.0, 6.0, 0.5, 1.0)]), IRON)
    bar = mandrel_compliance(hub.strips, STEEL)
    wide, stiff, squeeze = 100e9, 207e9, 1e-4
    load = pressed(hub.gives / wide + bar.gives / stiff, np.full(len(hub.lengths), squeeze / 2))
    c = (5 / 3 + IRON) / wide + (1 - STEEL) / stiff
    middle = np.abs(hub.middles - 3.0) < 0.3
    assert (load / hub.lengths)[middle] == pytest.approx(squeeze / c, rel=2e-3)


@pytest.mark.parametrize("rings", [HUB, WEBBED, FLANGED])
def test_a_compliance_is_symmetric_and_positive_definite(rings: list) -> None:
    body = work_compliance(revolved(rings), IRON)
    assert body.gives == pytest.approx(body.gives.T, abs=1e-15)
    assert np.linalg.eigvalsh(body.gives).min() > 0


def test_a_mirrored_outline_gives_the_mirrored_answer() -> None:
    there = work_compliance(revolved(FLANGED), IRON)
    back = work_compliance(revolved([(2.0 - e, 2.0 - s, i, o) for s, e, i, o in FLANGED]), IRON)
    assert there.gives[::-1, ::-1] == pytest.approx(back.gives, rel=1e-6, abs=1e-9)


def normal_force(rings: list, share: float) -> float:
    """Force of a taper fit reaching `share` of the length, work a hundredth softer than the mandrel."""
    work = work_compliance(revolved(rings), IRON)
    bar = mandrel_compliance(work.strips, STEEL)
    overlap = 0.5 * (share * 2.0 - work.middles)
    return float(np.pi * pressed(work.gives / 100 + bar.gives / 207, overlap).sum())


MESHES = ((1.6, 1.3), (1.25, 1.15), (1.0, 1.0), (0.8, 0.9), (0.62, 0.8))
"""Strips and cells over the usual ones."""


def on_mesh(monkeypatch: pytest.MonkeyPatch, strip: float, cell: float) -> None:
    monkeypatch.setattr(body_mesh, "STRIP", 0.04 * strip)
    monkeypatch.setattr(body_mesh, "FIRST", 0.036 * cell)
    monkeypatch.setattr(body_mesh, "GROWTH", 0.22 * cell)
    monkeypatch.setattr(body_mesh, "FEWEST", 12)


@pytest.mark.parametrize("rings", [HUB, WEBBED])
def test_half_engaged_five_meshes_agree(rings: list, monkeypatch: pytest.MonkeyPatch) -> None:
    forces = []
    for strip, cell in MESHES:
        on_mesh(monkeypatch, strip, cell)
        forces.append(normal_force(rings, 0.5))
    middle = sum(forces) / len(forces)
    assert max(abs(force / middle - 1) for force in forces) < 3e-3


def test_the_error_against_lame_falls_with_the_fourth_power_of_the_cells() -> None:
    """Quadratic elements: energy, and with it the bore's movement, converges with h^4."""
    nu, z = IRON, np.linspace(0.0, 1.0, 5)
    strips, inside = np.column_stack([z[:-1], z[1:]]), 1 / 9
    exact = 0.5 * ((1 + inside) / (1 - inside) + nu)
    ring, errors = revolved([(0.0, 1.0, 0.5, 1.5)]), []
    for cells in (4, 8, 16):
        r = np.linspace(0.5, 1.5, cells + 1)
        solved = elastic_body._solve(ring, z, r, strips, nu, axis=False)
        moved = elastic_body._gives(solved) @ (strips[:, 1] - strips[:, 0])
        errors.append(abs(float(moved.mean()) - exact))
    orders = np.log2(np.divide(errors[:-1], errors[1:]))
    assert orders == pytest.approx(4.0, abs=0.35)
    assert abs(orders[1] - 4) < abs(orders[0] - 4)


def edge_power(softer: float) -> float:
    """p goes as r^(power - 1) from a square edge pressed whole on a flat body, without friction.

    Dundurs and Lee, Stress concentration at a sharp edge in contact problems, Journal of Elasticity
    2 (1972), from memory; `softer` is Dundurs' alpha. At alike bodies it is 0.774.
    """

    def left(k: float) -> float:
        half = k * np.pi / 2
        first = (1 + softer) * np.cos(k * np.pi) * (np.sin(half) ** 2 - k**2)
        return float(first + 0.5 * (1 - softer) * np.sin(k * np.pi) * np.sin(2 * half))

    return float(brentq(left, 0.55, 0.99))


def test_a_fully_engaged_fit_converges_at_least_as_fast_as_its_sharp_edges_allow(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Energy order 2 power, 1.72 here: reached from above, the edges being small at first."""
    assert edge_power(0.0) == pytest.approx(0.774, abs=1e-3)
    monkeypatch.setattr(body_mesh, "MOST", 200)
    forces = []
    for scale in (4.0, 2.0, 1.0, 0.5):
        on_mesh(monkeypatch, scale, scale)
        forces.append(normal_force(HUB, 2.0))
    steps = np.abs(np.diff(forces))
    orders = np.log2(steps[:-1] / steps[1:])
    work, mandrel = 100 / (1 + IRON) * (1 - STEEL), 207 / (1 + STEEL) * (1 - IRON)
    least = 2 * edge_power((work - mandrel) / (work + mandrel))
    assert least == pytest.approx(1.72, abs=0.01)
    assert (orders > least).all()
    assert orders[1] < orders[0]
    # So what is left on the usual mesh is less than the last step over 2^order - 1.
    assert steps[2] / (2**least - 1) / forces[2] < 2e-5


def test_contact_ends_before_the_overlap_does_when_part_engaged() -> None:
    work = work_compliance(revolved(HUB), IRON)
    bar = mandrel_compliance(work.strips, STEEL)
    gives, overlap = work.gives / 100 + bar.gives / 207, 0.5 * (1.0 - work.middles)
    assert 0.7 < end_of_contact(work.strips, gives, overlap, pressed(gives, overlap)) < 1.0


@pytest.mark.parametrize("rings", [HUB, WEBBED, FLANGED])
def test_the_few_points_kept_hold_the_greatest_tension_of_200_random_states(rings: list) -> None:
    body = revolved(rings)
    work = work_compliance(body, IRON)
    strips = work.strips
    z, r = body_mesh.work_lines(body, strips)
    solved = elastic_body._solve(body, z, r, strips, IRON, axis=False)
    points, stress = field(solved, solved.moved * work.lengths, IRON)
    kept = elastic_body._away(points, body, strips)
    random = np.random.default_rng(7)
    x = work.middles / 2.0
    for _ in range(200):
        reach, steep = random.uniform(0.15, 1.0), random.uniform(0.4, 2.0)
        state = (
            np.clip(1 - x / reach, 0, None) ** steep + 0.1 * random.uniform() * np.sin(9 * x) ** 2
        )
        state = state[::-1] if random.uniform() < 0.3 else state
        everywhere = principal_tension(np.einsum("mcn,n->cm", stress[kept], state)).max()
        assert largest_tension(work, state) >= 0.995 * everywhere


def test_tension_between_two_shares_of_the_bore_grows_with_the_window(hub: Compliance) -> None:
    state = np.clip(1 - hub.middles / 2, 0, None)
    wide, narrow = bore_tension(hub, state, 0.01, 0.99), bore_tension(hub, state, 0.05, 0.95)
    assert wide >= narrow > 0


@pytest.mark.parametrize(
    ("rings", "says"),
    [
        ([], "rings"),
        ([(0.0, 1.0, 0.8, 1.0)], "bore"),
        ([(0.0, 1.0, 0.5, 1.0), (2.0, 3.0, 0.5, 1.0)], "pieces"),
        ([(0.0, 1.0, 0.5, 1.0), (1.0, 2.0, 1.0, 2.0)], "pieces"),
        ([(0.0, 1.0, 0.3, 1.0), (0.0, 1.0, 0.5, 1.0)], "inside"),
        ([(k / 100, (k + 1) / 100, 0.5, 1.0 + k / 100) for k in range(150)], "edges"),
    ],
)
def test_an_outline_that_is_no_body_is_refused(rings: list, says: str) -> None:
    with pytest.raises(OutsideModel, match=says):
        revolved(rings)


def test_overlaps_and_slivers_are_healed_and_the_answer_is_the_same() -> None:
    plain = work_compliance(revolved(HUB), IRON)
    lapped = revolved([(0.0, 1.2, 0.5, 1.0), (0.8, 2.0, 0.5, 1.0)])
    sliver = revolved([(0.0, 2.0, 0.5, 1.0), (0.0, 2.0, 0.5, 1.0005)])
    assert (lapped.healed, sliver.healed) == (False, True)
    even = plain.gives @ plain.lengths
    other = work_compliance(lapped, IRON)
    assert float(even.mean()) == pytest.approx(
        float((other.gives @ other.lengths).mean()), rel=1e-4
    )
