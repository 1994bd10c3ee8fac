"""What a cut leaves on work that gives, and where it begins to chatter, each worked another way."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq, minimize_scalar

from borewright.errors import OutsideModel
from borewright.mechanics.beam import Bar
from borewright.mechanics.chatter import (
    chatter_depth,
    cutting_stiffness,
    facing_direction,
    rubbed_depth,
    rubbing_growth,
    turning_direction,
)
from borewright.mechanics.influence import UnderTool, under_tool
from borewright.mechanics.kienzle import chip_of, kienzle_force
from borewright.mechanics.springing import size_bounds, size_left, spring_pass_share, taper_error

EVEN = Bar(np.array([0.0, 0.2]), np.array([700.0]), np.array([np.inf]), (3e7, 3e7))
ALONG = np.linspace(0.04, 0.12, 9)


@given(st.floats(1e4, 1e8), st.floats(1e5, 1e8), st.floats(1e-7, 1e-4))
def test_a_spring_pass_leaves_what_cutting_it_step_by_step_leaves(
    k_cut: float, k: float, left: float
) -> None:
    """Tool and work followed: cut what stands in the way, give way by force over stiffness, again.

    Half steps keep it from hunting where the cut is stiffer than the work.
    """
    now = left
    step = 0.5 * k / (k + k_cut)
    for _ in range(60):
        force = k_cut * (left - now)
        now += step * (force / k - now)
    assert now == pytest.approx(left * float(spring_pass_share(k_cut, k)), rel=1e-6)


def test_passes_without_a_new_setting_die_out_as_powers() -> None:
    share = float(spring_pass_share(2e5, 7.8e6))
    assert share == pytest.approx(0.025)
    assert spring_pass_share(0.0, 1e6) == 0.0
    with pytest.raises(OutsideModel, match="stiffness at the tool"):
        spring_pass_share(1e5, 0.0)


def test_the_size_left_is_twice_what_the_bar_gives() -> None:
    """On diameter; hand sum at the middle of an even bar: F L³ / 48 EI + F / (k_1 + k_2)."""
    line = size_left(under_tool(EVEN, np.array([0.1])), 150.0, 0.0)
    assert line[0] == pytest.approx(2 * 150.0 * (0.2**3 / (48 * 700.0) + 1 / 6e7))


def test_feeding_the_other_way_mirrors_the_line() -> None:
    """The bar is even, so the line of one way is that of the other seen from the other end."""
    give = under_tool(EVEN, np.linspace(0.04, 0.16, 13))
    one, other = size_left(give, 100.0, 8.0), size_left(give, 100.0, -8.0)
    assert one == pytest.approx(other[::-1])
    assert not np.allclose(one, other)


def test_the_end_towards_which_the_thrust_points_bends_less() -> None:
    """A push towards the second center at the rim on the tool's side lifts that half to the tool."""
    give = under_tool(EVEN, np.linspace(0.04, 0.16, 13))
    line = size_left(give, 0.0, 8.0)
    assert line[0] > 0 > line[-1]
    assert taper_error(line) == pytest.approx(line[0] - line[-1])


def test_lines_of_many_forces_come_at_once() -> None:
    give = under_tool(EVEN, ALONG)
    forces = np.array([[50.0], [100.0]])
    lines = size_left(give, forces, np.zeros((2, 1)))
    assert lines.shape == (2, 9)
    assert lines[1] == pytest.approx(2 * lines[0])
    assert taper_error(lines)[0] == pytest.approx(np.ptp(2 * 50.0 * give.per_force))


@given(st.floats(0.0, 500.0), st.floats(-20.0, 20.0), st.floats(1.0, 5.0), st.booleans())
def test_what_may_be_left_covers_the_line_and_never_falls_as_a_force_grows(
    radial: float, moment: float, times: float, thrust: bool
) -> None:
    give = under_tool(EVEN, ALONG)
    bound = size_bounds(give, radial, moment).max()
    assert np.abs(size_left(give, radial, moment)).max() <= bound * (1 + 1e-12)
    more = (radial, times * moment) if thrust else (times * radial, moment)
    assert size_bounds(give, *more).max() >= bound * (1 - 1e-12)


K, ZETA, M_CUT = 6e6, 0.03, 4.0


def real_part(w: float) -> float:
    """Re G of one mode (m/N) at a circular frequency."""
    own = math.sqrt(K / M_CUT)
    return (1 / (K * complex(1 - (w / own) ** 2, 2 * ZETA * w / own))).real


def test_the_limit_is_that_of_the_least_real_part_found_by_search() -> None:
    """b_lim = -1 / (2 K_s min Re G): the minimum is searched for, not taken from its formula."""
    own, k_s = math.sqrt(K / M_CUT), 1.8e9 * 0.12
    least = minimize_scalar(
        real_part, bounds=(own, 1.2 * own), method="bounded", options={"xatol": 1e-9 * own}
    ).fun
    wanted = -1 / (2 * k_s * least)
    assert chatter_depth(K, ZETA, k_s) == pytest.approx(wanted, rel=1e-9)


def grows(width: float, k_s: float, turn: float, zeta: float = ZETA) -> bool:
    """True where waves left on the work grow from turn to turn: the delay followed in small steps.

    M y'' + c y' + K y = k_s b (y(t - T) - y(t)), stepped at a hundredth of a radian.
    """
    own = math.sqrt(K / M_CUT)
    dt = 0.01 / own
    lag = round(turn / dt)
    y = [1e-6] * (lag + 1)
    speed, c = 0.0, 2 * zeta * math.sqrt(K * M_CUT)
    for _ in range(30 * lag):
        force = k_s * width * (y[-1 - lag] - y[-1])
        speed += dt * (force - c * speed - K * y[-1]) / M_CUT
        y.append(y[-1] + dt * speed)
    early, late = np.abs(y[5 * lag : 8 * lag]).max(), np.abs(y[-3 * lag :]).max()
    return bool(late > early)


def worst_turns(zeta: float) -> list[float]:
    """Times of a turn (s) at which the waves come back worst: their phase at the least real part."""
    own = math.sqrt(K / M_CUT)
    at = own * math.sqrt(1 + 2 * zeta)
    g = 1 / (K * complex(1 - (at / own) ** 2, 2 * zeta * at / own))
    late = 2 * math.atan2(g.real, g.imag) + 3 * math.pi
    return [(late % (2 * math.pi) + 2 * math.pi * n) / at for n in (3, 5)]


def test_just_over_the_limit_waves_grow_at_the_worst_speed_and_below_it_at_none() -> None:
    """Followed in time: 15 % over at the worst speeds, 15 % under at those and at five more."""
    k_s = 1.8e9 * 0.12
    limit = float(chatter_depth(K, ZETA, k_s))
    turns = worst_turns(ZETA)
    assert all(grows(1.15 * limit, k_s, t) for t in turns)
    speeds = [2 * math.pi * n / math.sqrt(K / M_CUT) for n in (3.0, 3.25, 3.5, 3.75, 4.0)]
    assert not any(grows(0.85 * limit, k_s, t) for t in (*turns, *speeds))


RUBS = 20.0
"""1/m: a chip 1 mm wide adds 0.02 to the damping ratio."""


def test_a_flank_that_rubs_is_followed_in_time_too() -> None:
    """The same, with c grown by the rubbing of so wide a chip; without it those chips would grow."""
    k_s = 1.8e9 * 0.25
    limit = float(rubbed_depth(K, ZETA, k_s, RUBS))
    assert limit > 1.3 * float(chatter_depth(K, ZETA, k_s))
    for share, grown in ((1.15, True), (0.85, False)):
        zeta = ZETA + RUBS * share * limit
        turns = worst_turns(zeta)
        assert [grows(share * limit, k_s, t, zeta) for t in turns] == [grown] * len(turns)


@pytest.mark.parametrize("rubs", [0.5, 5.0, 20.0, 40.0])
def test_the_rubbed_limit_is_the_root_found_by_search(rubs: float) -> None:
    k_s = 1.8e9 * 0.35

    def over(b: float) -> float:
        return 2 * K * (ZETA + rubs * b) * (1 + ZETA + rubs * b) - k_s * b

    least = minimize_scalar(over, bounds=(0.0, 1.0), method="bounded", options={"xatol": 1e-12}).x
    if over(least) > 0:
        assert rubbed_depth(K, ZETA, k_s, rubs) == np.inf
    else:
        wanted = brentq(over, 0.0, least, xtol=1e-15)
        assert rubbed_depth(K, ZETA, k_s, rubs) == pytest.approx(wanted, rel=1e-9)


@given(st.floats(1e5, 1e8), st.floats(1e-3, 0.2), st.floats(1e7, 1e10), st.floats(0.0, 200.0))
def test_rubbing_never_narrows_the_chip_and_none_changes_nothing(
    k: float, zeta: float, k_s: float, rubs: float
) -> None:
    bare = chatter_depth(k, zeta, k_s)
    assert rubbed_depth(k, zeta, k_s, 0.0) == pytest.approx(bare, rel=1e-9)
    assert rubbed_depth(k, zeta, k_s, rubs) >= bare * (1 - 1e-9)


def test_the_slower_the_more_it_rubs() -> None:
    """Hand sum: 2e5 x π x 1000 x 0.25 / (1e7 x 0.5) = 31.4 per metre; half as much at twice the speed."""
    slow, fast = (float(rubbing_growth(2e5, 1000.0, v, 1e7, 0.5)) for v in (0.5, 1.0))
    assert slow == pytest.approx(31.41593, rel=1e-6)
    assert fast == pytest.approx(slow / 2)


def test_the_cutting_stiffness_is_the_slope_of_kienzle_s_force() -> None:
    """Against a central difference of the force by the feed, per width, for a sharp square edge."""
    kc11, m, depth, feed, step = 1600e6, 0.2, 0.8e-3, 0.1e-3, 1e-9
    forces = [
        float(kienzle_force(chip_of(depth, feed + s, math.pi / 2), kc11, m))
        for s in (-step, 0, step)
    ]
    slope = (forces[2] - forces[0]) / (2 * step) / depth
    assert cutting_stiffness(forces[1], depth * feed, m) == pytest.approx(slope, rel=1e-6)


def test_a_square_shoulder_hardly_feels_a_bar_that_bends() -> None:
    """The wave is then along the edge: the narrower the angle, the more of it changes the chip."""
    shares = [turning_direction(30.0, 100.0, math.radians(a)) for a in (30, 60, 90)]
    assert shares == sorted(shares, reverse=True)
    assert shares[-1] == pytest.approx(0.0, abs=1e-12)
    assert facing_direction(30.0, 100.0, math.pi / 2) == pytest.approx(0.3)
    assert turning_direction(30.0, 100.0, math.pi / 2 * (1 + 1e-12)) > 0  # square, but for rounding


@pytest.mark.parametrize("wrong", [0.0, -0.1, 1.7])
def test_an_edge_angle_off_its_range_is_refused(wrong: float) -> None:
    with pytest.raises(OutsideModel, match="effective edge angle"):
        turning_direction(30.0, 100.0, wrong)


@given(st.floats(1e5, 1e8), st.floats(1e-3, 0.2), st.floats(1e7, 1e10), st.floats(1.0, 10.0))
def test_stiffer_or_better_damped_work_stands_a_wider_chip(
    k: float, zeta: float, k_s: float, times: float
) -> None:
    limit = chatter_depth(k, zeta, k_s)
    assert chatter_depth(k * times, zeta, k_s) == pytest.approx(limit * times)
    assert chatter_depth(k, zeta * times, k_s) >= limit
    assert chatter_depth(k, zeta, k_s * times) == pytest.approx(limit / times)


def test_what_gives_nowhere_leaves_nothing() -> None:
    stiff = UnderTool(np.zeros(3), np.zeros(3))
    assert (size_left(stiff, 500.0, 20.0) == 0).all()
