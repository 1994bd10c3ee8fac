"""The first natural frequency of a bar that carries work, and two bounds on it.

With G the flexibility between places (m/N) and M the masses there, the free vibration is
    ω² G M y = y,
so 1/ω² of the first mode is the largest eigenvalue of √M G √M, which is symmetric. Where couples
and turns are among the rows, M holds the inertia (kg·m²) against turning there.
    Dunkerley     1/ω² <= Σ m_i G_ii                      never above the true frequency
    Rayleigh      ω² <= g Σ m y / Σ m y²,  y = g G m       never below it (y: the sag)
    one mass      ω² = k / m
Units: m/N, kg, Hz. OutsideModel for masses below 0 or none at all.
Source: any textbook on vibration (Rayleigh, Theory of Sound; S. Dunkerley, 1894: from memory);
tested against closed forms, Sarkar, Theory of Machines, Ill. 11, and CalculiX.
Weakness: no damping; not turning: at the speeds of a lathe the pull of the spin on the slope is
slight.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero
from borewright.mechanics.num import Floats, Num

CELLS = 8
"""Cells that a bar is cut into at least: with two Gauss points in each, the closed form of an even
bar is met to 0.001 %."""

GAUSS = 0.5 / np.sqrt(3.0)
"""The two Gauss points of a cell stand so far from its middle, over its length."""


@dataclass(frozen=True, slots=True, eq=False)
class Masses:
    """Masses (kg) at places (m), each (n,), with their inertia (kg·m²) against the slope there."""

    places: Floats
    mass: Floats
    turning: Floats

    def with_more(self, other: Masses) -> Masses:
        """These and those, one after the other."""
        return Masses(
            np.concatenate([self.places, other.places]),
            np.concatenate([self.mass, other.mass]),
            np.concatenate([self.turning, other.turning]),
        )

    @property
    def all(self) -> Floats:
        """Masses, then inertias: (2n,), as the rows of `influence.full_flexibility`."""
        return np.concatenate([self.mass, self.turning])


def spread_mass(
    edges: Floats, per_metre: Floats, turning_per_metre: Floats, longest: float
) -> Masses:
    """Masses of a stepped stretch, at two Gauss points of every cell of at most `longest` (m).

    `edges` (k+1,) m, `per_metre` (k,) kg/m, `turning_per_metre` (k,) kg·m: ρ I of a slice.

    >>> made = spread_mass(np.array([0.0, 1.0]), np.array([2.0]), np.array([0.0]), 0.6)
    >>> made.places.round(4).tolist(), float(made.mass.sum().round(9))
    ([0.1057, 0.3943, 0.6057, 0.8943], 2.0)
    """
    lengths = np.diff(edges)
    numbers = np.maximum(1, np.ceil(lengths / longest - 1e-9)).astype(int)
    home = np.repeat(np.arange(len(lengths)), numbers)
    which = np.concatenate([np.arange(n) for n in numbers.tolist()])
    size = (lengths / numbers)[home]
    middle = edges[:-1][home] + (which + 0.5) * size
    places = (middle[:, None] + size[:, None] * np.array([-GAUSS, GAUSS])).ravel()
    half = np.repeat(size / 2, 2)
    home = np.repeat(home, 2)
    return Masses(places, half * per_metre[home], half * turning_per_metre[home])


def first_frequency(flexibility: Floats, inertia: Floats) -> float:
    """First natural frequency (Hz) of a flexibility (n, n) with so much inertia (n,) at its rows.

    >>> round(first_frequency(np.array([[1e-6]]), np.array([4.0])) * 2 * np.pi, 6)
    500.0
    """
    not_below_zero("mass", inertia, "kg")
    root = np.sqrt(inertia)
    return _hertz(float(np.linalg.eigvalsh(root[:, None] * flexibility * root)[-1]))


def dunkerley(flexibility: Floats, mass: Floats) -> float:
    """A frequency (Hz) that the first one never falls below."""
    not_below_zero("mass", mass, "kg")
    return _hertz(float(mass @ np.diagonal(flexibility)))


def rayleigh(flexibility: Floats, mass: Floats) -> float:
    """A frequency (Hz) that the first one never rises above, from the sag under the weights."""
    not_below_zero("mass", mass, "kg")
    sag = flexibility @ mass
    return _hertz(float((mass @ sag**2) / (mass @ sag)))


def single_mode_frequency(stiffness: Num, mass: Num) -> Num:
    """Frequency (Hz) of one mass (kg) on one spring (N/m).

    >>> round(float(single_mode_frequency(1e6, 4.0)) * 2 * np.pi, 6)
    500.0
    """
    above_zero("stiffness", stiffness, "N/m")
    above_zero("mass", mass, "kg")
    return np.sqrt(stiffness / mass) / (2 * np.pi)


def _hertz(inverse_square: float) -> float:
    """From 1/ω² (s²)."""
    above_zero("mass times flexibility", inverse_square, "s²")
    return float(1 / (2 * np.pi * np.sqrt(inverse_square)))
