"""`cut --json` against Kienzle's law and the tool's profile, measured along its edge by quadrature.

Constants are read straight from the package's CSV files, which are its inputs, not its answers.
"""

from __future__ import annotations

import csv
import json
from dataclasses import dataclass
from pathlib import Path

import pytest
from mpmath import acos, atan2, cos, diff, mp, mpf, pi, quad, radians, sin, sqrt
from tests.cli_run import ran

mp.dps = 25
DATA = Path(__file__).parents[2] / "src" / "borewright" / "reference" / "data"
SAME = 1e-9
"""Both routes are exact but for rounding and the quadrature's last digits."""


@dataclass(frozen=True)
class Turned:
    """One cut, in mm, degrees and m/min."""

    material: str
    diameter: str
    depth: str
    feed: str
    speed: str
    angle: str = "90"
    nose: str = "0"


CASES = {
    "a square edge in iron": Turned("gray-iron-30", "60", "1", "0.1", "27"),
    "a slanted edge in steel": Turned("steel-1018", "25.4", "0.6", "0.12", "30", angle="60"),
    "a round nose, deep": Turned("al-6061-t6", "66", "1.5", "0.2", "90", angle="75", nose="0.4"),
    "a round nose, shallow": Turned("brass-c360", "40", "0.15", "0.08", "60", nose="0.8"),
    "a nose and a square edge": Turned("gray-iron-30", "250", "2", "0.25", "20", nose="0.4"),
}


def row(table: str, *keys: str) -> dict[str, str]:
    with (DATA / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        found = [r for r in csv.DictReader(file) if list(r.values())[: len(keys)] == list(keys)]
    assert len(found) == 1, (table, keys)
    return found[0]


def cut_class(material: str) -> str:
    return row("materials", material)["cut_class"]


def edge(c: Turned) -> tuple[mpf, mpf]:
    """Length of edge in the cut and its reach along the feed (mm): a walk along the profile.

    The profile is a nose arc that meets a straight edge at angle κ to the feed; it is walked from
    half a feed behind the lowest point (the nose allowing) up to the depth of cut.
    """
    a, f, r, k = mpf(c.depth), mpf(c.feed), mpf(c.nose), radians(mpf(c.angle))
    behind = min(f / 2, r)
    start = -mp.asin(behind / r) if r else mpf(0)
    end = k if r * (1 - cos(k)) <= a else acos(1 - a / r)
    arc = quad(lambda t: _speed(r, t), [start, end])
    risen, run = r * (1 - cos(end)), r * sin(end) + behind
    straight = (a - risen) / sin(k) if end == k else mpf(0)
    return arc + straight, run + straight * cos(k)


def _speed(r: mpf, t: mpf) -> mpf:
    """Along (r sin t, -r cos t), by numerical differentiation of the profile itself."""
    return sqrt(diff(lambda u: r * sin(u), t) ** 2 + diff(lambda u: -r * cos(u), t) ** 2)


def by_hand(c: Turned) -> dict[str, float]:
    width, reach = edge(c)
    a, f, d, v = mpf(c.depth), mpf(c.feed), mpf(c.diameter), mpf(c.speed) / 60
    constants, kind = row("kienzle", c.material), cut_class(c.material)
    thickness = a * f / width
    force = mpf(constants["kc11_best"]) * width * thickness ** (1 - mpf(constants["mc_best"]))
    together = force * mpf(row("cutting_ratios", kind, "resultant")["best"])
    least = force * mpf(row("cutting_ratios", kind, "least_passive")["best"])
    lean = atan2(a, reach)
    turns = v / (pi * d / 1000)
    return {
        "cutting_force_N": float(force),
        "feed_force_N": float(together * sin(lean)),
        "passive_force_N": float(max(together * cos(lean), least)),
        "torque_Nm": float(force * d / 2000),
        "power_W": float(force * v),
        "cutting_speed_m_per_s": float(v),
        "spindle_speed_rev_per_s": float(turns),
        "removal_rate_m3_per_s": float(a * f * pi * (d - a) * turns * mpf("1e-9")),
    }


@pytest.mark.parametrize("c", CASES.values(), ids=CASES)
def test_the_cut_is_what_the_law_gives(c: Turned) -> None:
    done = ran(
        "cut", "--json", "--material", c.material, "--diameter", f"{c.diameter}mm",
        "--depth", f"{c.depth}mm", "--feed", f"{c.feed}mm", "--speed", f"{c.speed}m/min",
        "--edge-angle", f"{c.angle}deg", "--nose-radius", f"{c.nose}mm",
    )  # fmt: skip
    assert done.code == 0, done.err
    told = json.loads(done.out)
    assert told.pop("assumed")
    hand = by_hand(c)
    assert {key: told[key] for key in hand} == pytest.approx(hand, rel=SAME)


def test_the_hand_sees_a_shallow_cut_push_out_more_than_it_feeds() -> None:
    """A nose deeper than the cut turns the side force outward: what bends finish cuts."""
    by_nose = by_hand(CASES["a round nose, shallow"])
    assert by_nose["passive_force_N"] > by_nose["feed_force_N"]
