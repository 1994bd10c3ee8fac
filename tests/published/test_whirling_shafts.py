"""The first critical speed of a loaded shaft against print."""

import math

import numpy as np
import pytest

from borewright.mechanics.beam import Bar
from borewright.mechanics.influence import flexibility
from borewright.mechanics.vibration import (
    Masses,
    dunkerley,
    first_frequency,
    rayleigh,
    spread_mass,
)

G = 9.81
SPAN, EI = 2.5, 210e9 * math.pi * 0.18**4 / 64
SHAFT = Bar(np.array([0.0, SPAN]), np.array([EI]), np.array([np.inf]))
LOADS = Masses(np.array([0.6, 1.5, 2.0]), np.array([25.0, 50.0, 20.0]), np.zeros(3))
OWN = 1962.0
"""N/m: the shaft's own weight."""

PRINTED = 3111.6
ROUNDED = 1.5e-3
"""The book rounds its deflections to three or four figures on the way."""
BY_ITS_WAY = 3108.9
"""The same way without rounding on the way."""


def sag_under(load: int) -> float:
    """Sag (m) under each load alone."""
    at, mass = LOADS.places[load : load + 1], float(LOADS.mass[load])
    return float(flexibility(SHAFT, at)[0, 0]) * mass * G


def test_sarkar_illustration_11_by_the_book_s_way() -> None:
    """Sarkar, Theory of Machines, Ill. 11 (companion): sum of sags, that of its own weight over 1.27.

    180 mm shaft, 2.5 m between supports; 25, 50, 20 kg at 0.6, 1.5, 2.0 m; E 210 GPa.
    """
    own = 5 * OWN * SPAN**4 / (384 * EI)
    sags = sum(sag_under(k) for k in range(3)) + own / 1.27
    rpm = 60 / (2 * math.pi) * math.sqrt(G / sags)
    assert rpm == pytest.approx(BY_ITS_WAY, abs=0.05)
    assert rpm == pytest.approx(PRINTED, rel=ROUNDED)


def test_sarkar_s_shaft_lies_between_its_bounds() -> None:
    """The book adds as Dunkerley does, so its speed may not lie above the exact one."""
    own = spread_mass(SHAFT.edges, np.array([OWN / G]), np.zeros(1), SPAN / 20)
    every = own.with_more(LOADS)
    g = flexibility(SHAFT, every.places)
    low, exact, high = (60 * way(g, every.mass) for way in (dunkerley, first_frequency, rayleigh))
    assert low < BY_ITS_WAY < exact < high
    assert exact == pytest.approx(PRINTED, rel=0.01)  # a lower bound that is known to be close
