"""Lobes of a ring by a frame of straight beams: a second route, written out here with numpy alone.

The ring is a polygon of many beams that bend and stretch, pushed outward at nodes, held against
moving as a whole by its own symmetry (least squares). Only the last lines import the package.
"""

from __future__ import annotations

import numpy as np
import pytest

from borewright.mechanics.ring_lobes import ThinRing, lobe_bending, lobe_height, moved_out

BORE, OUTSIDE, LENGTH, MODULUS = 0.060, 0.0624, 0.018, 110e9
R, WALL = (BORE + OUTSIDE) / 4, (OUTSIDE - BORE) / 2
BEAMS = 360

CLOSE = 1e-3
"""The polygon's chords are off by (π / 360)² and the stretch of lobes by (wall / R)² / 12: 1e-4."""


def beam(stretch: float, bend: float, length: float) -> np.ndarray:
    """Stiffness of a straight beam along x: along, across, turn at both ends."""
    a, b = stretch / length, bend / length**3
    k = np.zeros((6, 6))
    k[np.ix_([0, 3], [0, 3])] = [[a, -a], [-a, a]]
    h = length
    k[np.ix_([1, 2, 4, 5], [1, 2, 4, 5])] = b * np.array(
        [
            [12, 6 * h, -12, 6 * h],
            [6 * h, 4 * h * h, -6 * h, 2 * h * h],
            [-12, -6 * h, 12, -6 * h],
            [6 * h, 2 * h * h, -6 * h, 4 * h * h],
        ]
    )
    return k


def frame(normal: float, places: int, nodes_each: int) -> tuple[np.ndarray, np.ndarray]:
    """Outward movement of every node, and the bending in each beam's first end."""
    angle = 2 * np.pi * np.arange(BEAMS) / BEAMS
    at = R * np.stack([np.cos(angle), np.sin(angle)], axis=1)
    whole, parts = np.zeros((3 * BEAMS, 3 * BEAMS)), []
    for i in range(BEAMS):
        j = (i + 1) % BEAMS
        along = at[j] - at[i]
        length = float(np.hypot(*along))
        c, s = along / length
        turn = np.kron(np.eye(2), np.array([[c, s, 0], [-s, c, 0], [0, 0, 1]]))
        own = beam(MODULUS * LENGTH * WALL, MODULUS * LENGTH * WALL**3 / 12, length)
        dofs = [3 * i, 3 * i + 1, 3 * i + 2, 3 * j, 3 * j + 1, 3 * j + 2]
        whole[np.ix_(dofs, dofs)] += turn.T @ own @ turn
        parts.append((own @ turn, dofs))
    load = np.zeros(3 * BEAMS)
    reach = (nodes_each - 1) // 2
    for p in range(places):
        for i in range(p * BEAMS // places - reach, p * BEAMS // places + reach + 1):
            i = i % BEAMS
            load[3 * i : 3 * i + 2] += normal / places / nodes_each * at[i] / R
    # The frame floats: three added equations forbid moving and turning as a whole.
    rigid = np.zeros((3, 3 * BEAMS))
    rigid[0, 0::3], rigid[1, 1::3], rigid[2, 2::3] = 1, 1, 1
    scale = np.abs(whole).max()
    full = np.block([[whole, scale * rigid.T], [scale * rigid, np.zeros((3, 3))]])
    moved = np.linalg.solve(full, np.concatenate([load, np.zeros(3)]))[: 3 * BEAMS]
    outward = (moved.reshape(-1, 3)[:, :2] * at / R).sum(axis=1)
    bending = np.array([(own @ moved[dofs])[2] for own, dofs in parts])
    return outward, bending


RING = ThinRing(BORE, OUTSIDE, LENGTH, MODULUS)


@pytest.mark.parametrize(("places", "nodes"), [(3, 1), (4, 1), (6, 1), (3, 31), (4, 21)])
def test_lobes_and_bending_are_those_of_a_frame(places: int, nodes: int) -> None:
    """An odd count of equal node loads is a patch whose half width is half a node's pitch more."""
    outward, bending = frame(2e3, places, nodes)
    half = 0.0 if nodes == 1 else nodes * np.pi / BEAMS
    middle = BEAMS // places // 2
    height = outward[0] - outward[middle]
    assert lobe_height(RING, 2e3, places, half) == pytest.approx(height, rel=CLOSE)
    assert float(moved_out(RING, 2e3, places, 0.0, half)) == pytest.approx(outward[0], rel=CLOSE)
    between = float(lobe_bending(RING, 2e3, places, np.pi / places, half))
    # Moments at an end: the frame counts turning left as above 0, which flattens the ring there.
    assert abs(between) == pytest.approx(abs(bending[middle]), rel=CLOSE)
    assert between < 0
