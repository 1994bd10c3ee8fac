"""`load gear` and `load grind` against the same physics worked again in mpmath, by another route.

The arc of cut is found from the circle itself, the mean force by adaptive quadrature, the width of
the space from the area of its trapezium. Constants are read straight from the package's CSV files,
which are its inputs, not its answers.
"""

from __future__ import annotations

import csv
import json
from pathlib import Path

import pytest
from mpmath import atan2, cos, findroot, mp, mpf, pi, quad, sin, sqrt, tan
from tests.cli_run import ran

mp.dps = 25
DATA = Path(__file__).parents[2] / "src" / "borewright" / "reference" / "data"
SAME = 1e-8
"""Both routes are exact but for rounding and the quadratures' last digits."""


def row(table: str, *keys: str) -> dict[str, str]:
    with (DATA / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        found = [r for r in csv.DictReader(file) if list(r.values())[: len(keys)] == list(keys)]
    assert len(found) == 1, (table, keys)
    return found[0]


GEARS = {
    "module 2 in steel": ("steel-1018", 24, "module", "2", "63", 12, "0.05", "25", None),
    "module 4 in iron, two passes": ("gray-iron-30", 11, "module", "4", "80", 11, "0.08", "12", 5),
    "10 pitch in brass": ("brass-c360", 40, "pitch", "10", "60", 14, "0.04", "30", None),
    "a fine cutter, many teeth in cut": ("al-6061-t6", 30, "module", "3", "70", 36, "0.03", "60", None),
}  # fmt: skip


def gear_by_hand(case: tuple) -> dict[str, float]:
    """mm, N, seconds."""
    material, teeth, system, pitch, cutter, count, feed, speed, depth = case
    form = row("gear_teeth", "20-deg-module" if system == "module" else "14.5-deg")
    m = mpf(pitch) if system == "module" else mpf("25.4") / mpf(pitch)
    whole, angle = m * mpf(form["whole_depth"]), mpf(form["pressure_angle"])
    dedendum = whole - m
    root = pi * m / 2 - 2 * dedendum * tan(angle)
    mouth = pi * m / 2 + 2 * m * tan(angle)
    a = whole / (1 if depth is None else mp.ceil(whole / depth))
    above = mouth - 2 * a * tan(angle)  # width of the earlier passes' floor, before this one
    earlier = root + 2 * (whole - a) * tan(angle)
    assert abs(above - earlier) < mpf(10) ** -15
    area = whole * (root + mouth) / 2 - (whole - a) * (root + earlier) / 2
    width, edge = area / a, root + 2 * sqrt(whole**2 + (whole * tan(angle)) ** 2)
    r, fz, z = mpf(cutter) / 2, mpf(feed), mpf(count)
    # where the circle of the cutter crosses the outside of the blank, a above its lowest point
    x = findroot(lambda x: r - sqrt(r**2 - x**2) - a, sqrt(2 * r * a - a**2) * mpf("0.999"))
    arc = atan2(x, r - a)
    k = row("kienzle", material)
    kc, mc = mpf(k["kc11_best"]), mpf(k["mc_best"])

    def one(phi: mpf) -> mpf:
        return kc * edge * (fz * sin(phi) * width / edge) ** (1 - mc) if phi > 0 else mpf(0)

    peak = sum(one(arc - 2 * pi * i / z) for i in range(count) if arc > 2 * pi * i / z)
    mean = z / (2 * pi) * quad(one, [0, arc / 64, arc / 8, arc])
    side = mpf(row("gear_cutting", "radial_share")["best"])
    share = mpf(row("gear_cutting", "out_of_center")["best"])
    worn = mpf(row("cutting_corrections", "tool_wear")["best"])
    soft = mpf(row("cutting_corrections", "hss_tool")["best"])
    blow = mpf(row("gear_cutting", "impact")["best"])
    v = mpf(speed) * 1000 / 60
    turns = v / (2 * pi * r)
    outside = m * (teeth + 2)
    return {
        "outside_diameter_m": float(outside / 1000),
        "whole_depth_m": float(whole / 1000),
        "depth_m": float(a / 1000),
        "cutter_diameter_m": float(2 * r / 1000),
        "engagement_angle_rad": float(arc),
        "chip_thickness_m": float(fz * sin(arc) / 1000),
        "teeth_in_cut": float(z * arc / (2 * pi)),
        "peak_force_N": float(peak),
        "planned_peak_force_N": float(peak * worn * soft * blow),
        "mean_force_N": float(mean),
        "axial_force_N": float(peak * (cos(arc) + side * sin(arc))),
        "radial_force_N": float(peak * (sin(arc) - side * cos(arc))),
        "climbing_radial_force_N": float(-peak * (sin(arc) + side * cos(arc))),
        "torque_Nm": float(share * peak * outside / 2000),
        "power_W": float(mean * v / 1000),
        "removal_rate_m3_per_s": float(width * a * fz * z * turns * mpf("1e-9")),
        "cutting_speed_m_per_s": float(v / 1000),
        "spindle_speed_rev_per_s": float(turns),
        "table_feed_m_per_s": float(fz * z * turns / 1000),
    }


@pytest.mark.parametrize("case", GEARS.values(), ids=GEARS)
def test_the_form_cutter_is_what_the_circle_and_the_law_give(case: tuple) -> None:
    material, teeth, system, pitch, cutter, count, feed, speed, depth = case
    by = ("--module", f"{pitch}mm") if system == "module" else ("--diametral-pitch", pitch)
    done = ran(
        "load", "gear", "--json", "--material", material, "--teeth", str(teeth), *by,
        "--cutter-diameter", f"{cutter}mm", "--cutter-teeth", str(count),
        "--feed", f"{feed}mm", "--speed", f"{speed}m/min",
        *(() if depth is None else ("--depth", f"{depth}mm")),
    )  # fmt: skip
    assert done.code == 0, done.err
    told = json.loads(done.out)
    assert told.pop("assumed")
    assert told == pytest.approx(gear_by_hand(case), rel=SAME)


GROUND = {
    "a hardened bush": ("tool-steel-o1-hardened", "40", "0.005", "3", "15", "30"),
    "an iron pulley": ("gray-iron-30", "100", "0.01", "2", "12", "25"),
}


@pytest.mark.parametrize("case", GROUND.values(), ids=GROUND)
def test_the_wheel_is_what_its_energy_gives(case: tuple) -> None:
    """The metal ground away in one turn of the work, as a ring: its energy over the wheel's way."""
    material, d, a, f, work, wheel = case
    done = ran(
        "load", "grind", "--json", "--material", material, "--diameter", f"{d}mm",
        "--depth", f"{a}mm", "--feed", f"{f}mm", "--speed", f"{work}m/min",
        "--wheel-speed", f"{wheel}m/s",
    )  # fmt: skip
    assert done.code == 0, done.err
    told = json.loads(done.out)
    assert told.pop("assumed")
    energy = mpf(row("grinding_energy", row("materials", material)["cut_class"])["best"]) * mpf(
        "1e-9"
    )
    share = {
        n: mpf(row("grinding", n)["best"]) for n in ("force_ratio", "axial_share", "heat_share")
    }
    turn = pi * mpf(d) / (mpf(work) * 1000 / 60)
    ring = pi * mpf(d) * mpf(a) * mpf(f)
    wheel_way = mpf(wheel) * turn
    force = energy * ring / wheel_way
    assert told == pytest.approx(
        {
            "tangential_force_N": float(force),
            "normal_force_N": float(force / share["force_ratio"]),
            "axial_force_N": float(force * share["axial_share"]),
            "torque_Nm": float(force * mpf(d) / 2000),
            "power_W": float(energy * ring / turn),
            "heat_in_work_W": float(energy * ring / turn * share["heat_share"]),
            "removal_rate_m3_per_s": float(ring / turn * mpf("1e-9")),
            "work_speed_m_per_s": float(mpf(work) / 60),
            "spindle_speed_rev_per_s": float(1 / turn),
            "wheel_speed_m_per_s": float(mpf(wheel)),
        },
        rel=SAME,
    )
