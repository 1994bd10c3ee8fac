"""borewright cut: kinds of cut, factors one by one, ridges and time; what it refuses."""

from __future__ import annotations

import json
import math

import pytest
from tests.cli_run import ran

TURN = ["--material", "gray-iron-30", "--diameter", "100mm", "--feed", "0.2mm", "--speed", "90rpm"]


def cut(*more: str) -> dict[str, float]:
    done = ran("cut", *TURN, *more, "--json")
    assert done.code == 0, done.err
    found: dict[str, float] = json.loads(done.out)
    return found


def test_a_face_pushes_along_the_work_with_what_a_turning_cut_pushes_across() -> None:
    turned, faced = cut("--depth", "1mm"), cut("--depth", "1mm", "--kind", "face")
    assert turned["axial_force_N"] == faced["radial_force_N"] == turned["feed_force_N"]
    assert turned["radial_force_N"] == faced["axial_force_N"] == turned["passive_force_N"]


def test_a_groove_presses_straight_in_over_the_width_of_the_tool() -> None:
    """k_c11 1100, m 0.25: 1100 x 3 x 0.2^0.75 N; metal at pi D width feed a turn."""
    found = cut("--kind", "groove", "--depth", "3mm")
    assert found["cutting_force_N"] == pytest.approx(1100 * 3 * 0.2**0.75, rel=1e-9)
    assert found["axial_force_N"] == 0
    assert found["removal_rate_m3_per_s"] == pytest.approx(math.pi * 0.1 * 3e-3 * 0.2e-3 * 1.5)


def test_each_factor_is_named_and_together_they_are_the_force() -> None:
    plain = cut("--depth", "1mm")["cutting_force_N"]
    more = cut(*("--depth", "1mm", "--worn", "--tool", "hss", "--interrupted", "--rake", "12deg"))
    names = ("rake", "wear", "tool", "knock")
    factors = [more[f"{name}_factor"] for name in names]
    # 1.5 % a degree over the reference of 2 degrees, as the table has it; 1.15, 1.1 and 1.5 beside
    assert factors == pytest.approx([1 - 0.859 * math.radians(10), 1.15, 1.1, 1.5], rel=1e-4)
    assert more["cutting_force_N"] == pytest.approx(plain * math.prod(factors), rel=1e-9)


def test_the_ridges_and_the_time_of_a_pass() -> None:
    """R_t = f² / (8 r); length over feed times turns. Neither is there where it was not asked for."""
    found = cut("--depth", "1mm", "--nose-radius", "0.8mm", "--length", "60mm")
    assert found["ridge_height_m"] == pytest.approx(0.2e-3**2 / (8 * 0.8e-3))
    assert found["time_s"] == pytest.approx(60 / 0.2 / 1.5)
    assert {"ridge_height_m", "time_s"}.isdisjoint(cut("--depth", "1mm"))


@pytest.mark.parametrize(
    ("more", "said"),
    [
        (["--depth", "1mm", "--rake", "30deg"], "--rake"),
        (["--kind", "groove", "--depth", "3mm", "--nose-radius", "1mm"], "--nose-radius"),
        (["--kind", "bore", "--depth", "3mm"], "--kind"),
        (["--depth", "60mm"], "--depth"),
    ],
)
def test_what_cannot_be_is_refused_in_one_line(more: list[str], said: str) -> None:
    done = ran("cut", *TURN, *more)
    assert (done.code, done.out) == (2, "")
    assert said in done.err
    assert done.err.count("\n") == 1


def test_a_negative_rake_costs_force() -> None:
    assert cut("--depth", "1mm", "--rake", "-5deg")["rake_factor"] > 1
