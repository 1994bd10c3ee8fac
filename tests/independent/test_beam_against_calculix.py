"""A stepped bar between sprung centers against CalculiX's beam elements: deflection and first frequency."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from tests.independent.calculix_beam import POISSON, STEEL, Stepped, frequencies, line

from borewright.mechanics.beam import Bar, deflection
from borewright.mechanics.influence import (
    deflection_line,
    full_flexibility,
    under_tool,
)
from borewright.mechanics.vibration import first_frequency, spread_mass

STATIC = 5e-3
"""CalculiX with 16 elements a step is still 0.2 % stiff: less as its mesh is made finer."""
SWING = 1e-2
"""The frequency goes as the root of the stiffness; its mass sits in the step of the work."""

MANDREL = Stepped(
    edges=(0.0, 0.04, 0.14, 0.22, 0.32, 0.36),
    side=0.016,
    moduli=tuple(STEEL * k for k in (0.5, 1.0, 2.0, 1.0, 0.5)),
    densities=(7850.0, 7850.0, 75e3, 7850.0, 7850.0),
    springs=(3e6, 5e6),
)
"""Softer ends, and work in the middle that stiffens the bar and weighs 1.5 kg. Long, because the
sections that CalculiX holds rigid where steps meet stiffen a stretch of about their own width."""


def ours(bar: Stepped) -> Bar:
    """EI and G A κ of a square, κ = 10 (1 + ν) / (12 + 11 ν)."""
    moduli, area = np.array(bar.moduli), bar.side**2
    shape = 10 * (1 + POISSON) / (12 + 11 * POISSON)
    shear = shape * area * moduli / (2 * (1 + POISSON))
    return Bar(np.array(bar.edges), moduli * area**2 / 12, shear, bar.springs)


@pytest.mark.parametrize("place", [0.09, 0.18, 0.27])
def test_the_line_under_a_force_is_calculix_s(place: float, tmp_path: Path) -> None:
    found = line(MANDREL, f"{MANDREL.node(place)},2,1000.", tmp_path) * 1e-3
    places = np.array(MANDREL.places)
    wanted = deflection_line(ours(MANDREL), place, 1000.0, places)
    assert found == pytest.approx(wanted, abs=STATIC * np.abs(wanted).max())
    there = MANDREL.node(place) - 1
    assert found[there] == pytest.approx(deflection(ours(MANDREL), place, 1000.0), rel=STATIC)


@pytest.mark.parametrize("place", [0.09, 0.18])
def test_the_line_under_a_moment_is_calculix_s(place: float, tmp_path: Path) -> None:
    """10 N·m, as a thrust at the rim puts on the bar."""
    found = line(MANDREL, f"{MANDREL.node(place)},6,10000.", tmp_path) * 1e-3
    places, node = np.array(MANDREL.places), MANDREL.node(place) - 1
    both = full_flexibility(ours(MANDREL), places)
    wanted = 10.0 * both[: len(places), len(places) + node]
    assert found == pytest.approx(wanted, abs=STATIC * np.abs(wanted).max())
    per_moment = under_tool(ours(MANDREL), np.array([place])).per_moment
    assert found[node] == pytest.approx(10.0 * per_moment[0], abs=STATIC * np.abs(wanted).max())


def test_a_finer_mesh_of_calculix_comes_nearer(tmp_path: Path) -> None:
    """So what is left is its mesh: the difference falls, and not through zero."""
    place, bar = 0.18, ours(MANDREL)
    wanted = deflection(bar, place, 1000.0)
    off = []
    for cells in (4, 8, 16):
        mesh = replace(MANDREL, cells=cells)
        found = line(mesh, f"{mesh.node(place)},2,1000.", tmp_path / str(cells))
        off.append(1 - found[mesh.node(place) - 1] * 1e-3 / wanted)
    assert off[0] > off[1] > off[2] > 0


@pytest.mark.parametrize("heavy", [75e3, 20e3, 7850.0])
def test_the_first_frequency_is_calculix_s(heavy: float, tmp_path: Path) -> None:
    mandrel = replace(MANDREL, densities=(7850.0, 7850.0, heavy, 7850.0, 7850.0))
    bar, densities = ours(mandrel), np.array(mandrel.densities)
    area = mandrel.side**2
    on = spread_mass(bar.edges, densities * area, densities * area**2 / 12, bar.span / 8)
    mine = first_frequency(full_flexibility(bar, on.places), on.all)
    assert mine == pytest.approx(frequencies(mandrel, tmp_path)[0], rel=SWING)
