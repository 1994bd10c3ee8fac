"""The exact family of contact states, and the curves read from it, against closed forms and direct solves."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from borewright.errors import OutsideModel
from borewright.holding.taper.contact_curves import contact_curves
from borewright.holding.taper.elastic_joint import Joint, joint
from borewright.mechanics.compliance import largest_equivalent, largest_pressure, largest_tension
from borewright.mechanics.contact import end_of_contact, pressed
from borewright.mechanics.rings import Elastic
from borewright.mechanics.travel_curve import contact_length, travel_curve
from borewright.mechanics.travel_path import pressed_path

IRON, STEEL = Elastic(100e9, 0.26), Elastic(207e9, 0.29)
SHAPES = {
    "plain": [(0.0, 2.0, 2.0, None)],
    "webbed": [(0.0, 2.0, 2.0, None), (0.8, 1.2, 5.0, 2.0), (0.4, 1.6, 6.0, 5.0)],
    "flange at the far face": [(0.0, 2.0, 1.8, None), (1.6, 2.0, 6.0, 1.8)],
    "bush": [(0.0, 2.0, 1.3, None)],
    "disc": [(0.0, 0.5, 6.0, None)],
    "recessed": [(0.0, 0.3, 2.0, 1.2), (0.3, 2.0, 2.0, None)],
}
TAPER = 5e-4


def half_plane(strips: int, width: float) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Strips, their gives on a half-plane with E/(1-v^2) = 1, and the mean of x^2/2 on each.

    u(x) = -(2/pi) int p(s) ln|x - s| ds + a constant (Johnson, Contact Mechanics, ch. 2, from
    memory), averaged exactly over every strip: F(x) = x^2/2 ln|x| - 3 x^2/4.
    """
    edges = (np.arange(strips + 1) - strips / 2) * width
    a, b = edges[:-1], edges[1:]

    def twice(x: np.ndarray) -> np.ndarray:
        x = np.abs(x)
        return x * x / 2 * np.log(np.where(x > 0, x, 1.0)) - 0.75 * x * x

    mean = twice(b[:, None] - a) - twice(a[:, None] - a) - twice(b[:, None] - b)
    mean += twice(a[:, None] - b)
    return (
        np.column_stack([a, b]),
        5 - 2 / np.pi * mean / width**2,
        (a * a + a * b + b * b) / 6,
    )


def test_hertz_s_line_contact_has_its_force_and_its_half_width() -> None:
    """Half-width a = sqrt(4 P R / (pi E*)) of a cylinder of radius R on a half-plane; here R = E* = 1."""
    strips, gives, shape = half_plane(60, 0.02)
    path = pressed_path(gives, shape)
    for t in np.linspace(path.raised[2], path.raised[-2], 25):
        loads = path.at(np.array(t))
        truth = np.sqrt(4 * loads.sum() / np.pi)
        # Seen from the middle, the right half is a contact unbroken from its first strip on.
        half = len(strips) // 2
        gives_half = gives[half:, half:] + gives[half:, :half][:, ::-1]
        overlap = t - shape[half:]
        end = end_of_contact(strips[half:], gives_half, overlap, loads[half:])
        assert end == pytest.approx(truth, abs=0.05 * 0.02)


def made(name: str) -> tuple[Joint, np.ndarray]:
    one = joint(SHAPES[name], 1.0, IRON, STEEL, (2.0, 2.0))
    return one, TAPER * (one.places - one.places[0]) / 2


@pytest.mark.parametrize("name", SHAPES)
def test_a_curve_is_the_direct_answer_at_400_random_travels(name: str) -> None:
    """Asked: within 0.3 % of the local value beyond a tenth of the travels, 1 % below it."""
    one, shape = made(name)
    gives = one.gives()
    curve = travel_curve(one.work, pressed_path(gives, shape))
    most = 1.5 * float(one.work.strips[-1, 1])
    checked = 0
    for travel in np.random.default_rng(11).uniform(0, most, 400):
        raised = TAPER * travel / 2
        loads = pressed(gives, raised - shape)
        pressure = loads / one.work.lengths
        direct = {
            "force": np.pi * loads.sum(),
            "contact": contact_length(one.work, gives, raised - shape, loads),
            "tension": float(largest_tension(one.work, pressure)),
            "equivalent": float(largest_equivalent(one.work, pressure)),
            "pressure": float(largest_pressure(one.work, pressure)),
            "growth": 2 * float((one.work.growth @ pressure).max()),
        }
        within = 3e-3 if travel > 0.1 * most else 1e-2
        for what, value in direct.items():
            read = float(curve.read(getattr(curve, what), np.array(raised)))
            assert read == pytest.approx(value, rel=within, abs=1e-15), (what, travel)
            checked += 1
        assert float(curve.read(curve.force, np.array(raised))) == pytest.approx(
            direct["force"], rel=1e-9
        )
    assert checked == 2400


@pytest.mark.parametrize("name", SHAPES)
def test_an_inverse_gives_the_overlap_back(name: str) -> None:
    one, shape = made(name)
    curve = travel_curve(one.work, pressed_path(one.gives(), shape))
    wanted = np.linspace(0.05, 1.5, 30) * TAPER
    force = curve.read(curve.force, wanted)
    assert curve.raised_for(curve.force, force) == pytest.approx(wanted, rel=1e-9)


@pytest.mark.parametrize("name", SHAPES)
def test_values_between_the_drawn_moduli_are_the_direct_ones(name: str) -> None:
    one, shape = made(name)
    moduli = 100e9 * np.linspace(0.75, 1.35, 41)
    ratios = moduli / 207e9
    raised = np.full(41, 0.7 * TAPER)
    state = contact_curves(one, shape, ratios).state(raised, moduli)
    for k in (0, 7, 20, 33, 40):
        loads = pressed(one.gives(float(ratios[k])), raised[k] - shape)
        pressure = loads / one.work.lengths
        assert state.normal_force[k] == pytest.approx(np.pi * loads.sum() * moduli[k], rel=3e-4)
        tension = float(largest_tension(one.work, pressure)) * moduli[k]
        assert state.tension[k] == pytest.approx(tension, rel=1e-3)


@settings(max_examples=150, deadline=None)
@given(
    st.integers(1, 25), st.integers(0, 2**32 - 1), st.sampled_from([0.0, 1e-6, 1.0, 1e12, 1e-12])
)
def test_a_path_is_the_direct_answer_on_any_positive_definite_problem(
    size: int, seed: int, scale: float
) -> None:
    random = np.random.default_rng(seed)
    half = random.normal(size=(size, size))
    gives = half @ half.T + 1e-3 * np.eye(size)
    shape = random.normal(size=size).round(1) * (
        scale or 1.0
    )  # rounded: strips that change together
    path = pressed_path(gives, shape)
    span = max(float(np.ptp(shape)), float(np.abs(shape).max()), 1e-30)
    for t in shape.min() + span * random.uniform(-0.2, 4.0, 12):
        direct = pressed(gives, t - shape)
        assert path.at(np.array(t)) == pytest.approx(
            direct, rel=1e-5, abs=1e-6 * (span + np.abs(direct).max())
        )


def test_a_path_needs_a_positive_definite_matrix() -> None:
    with pytest.raises(OutsideModel):
        pressed_path(np.array([[1.0, 0.0], [0.0, -1.0]]), np.array([0.0, 1.0]))
