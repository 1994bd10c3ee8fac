"""What a joint does against its overlap, once for all travels: the curve that draws are read from.

Lengths over the bore's diameter d, stresses over the modulus of the work. The overlap is counted
from first touch, on radius over d; roughness, warmth and a bore larger than read only shift it.
Between the stations of a curve values run straight. The loads do so in truth (`travel_path`), so
the normal force is exact; the rest are largest values, with stations added where they bend.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from borewright.mechanics.compliance import (
    Compliance,
    largest_equivalent,
    largest_pressure,
    tension_by,
    tension_rows,
)
from borewright.mechanics.contact import ENTERS, end_of_contact
from borewright.mechanics.num import Floats, distinct
from borewright.mechanics.travel_path import PressPath

BEYOND: Final = (0.1, 0.3, 0.6, 1.0, 2.0, 4.0, 8.0, 1000.0)
"""Stations past the last change, as shares of the overlap there: all but straight by then."""


@dataclass(frozen=True, slots=True, eq=False)
class TravelCurve:
    """Values at rising overlaps `raised` (k,), all of shape (k,).

    `force` over E d²; `contact` over d; `tension` (greatest principal), `equivalent` (von Mises at
    the bore) and `pressure` over E, edges left out; `growth` of the outside's diameter over d.
    """

    raised: Floats
    force: Floats
    contact: Floats
    tension: Floats
    equivalent: Floats
    pressure: Floats
    growth: Floats

    def read(self, values: Floats, raised: Floats) -> Floats:
        """One of the rows at overlaps of any shape; nothing before touch."""
        return np.asarray(np.interp(raised, self.raised, values))

    def raised_for(self, values: Floats, wanted: Floats) -> Floats:
        """The overlap at which a row that never falls reaches what is wanted; its first such."""
        rising = np.maximum.accumulate(values)
        first = np.append(True, np.diff(rising) > 0)
        return np.asarray(np.interp(wanted, rising[first], self.raised[first]))


def travel_curve(body: Compliance, path: PressPath) -> TravelCurve:
    """The curve of one work on one mandrel from its exact path."""
    ends, lengths = _contact_ends(body, path)
    raised, (force, *largest) = _refined(body, path, _stations(path, ends[-1]))
    contact = np.interp(raised, ends, lengths)
    return TravelCurve(raised, force, contact, *largest)


def _values(
    body: Compliance, rows: tuple[Floats, Floats], path: PressPath, raised: Floats
) -> Floats:
    """Force, tension, equivalent stress, pressure and growth at every overlap; shape (5, k)."""
    loads = path.at(raised)
    pressure = loads / body.lengths
    return np.array(
        [
            np.pi * loads.sum(axis=1),
            tension_by(rows, pressure),
            largest_equivalent(body, pressure),
            largest_pressure(body, pressure),
            2 * (pressure @ body.growth.T).max(axis=1),
        ]
    )


ROUNDS, CLOSE = 8, 5e-4
"""How often a stretch may be halved, and the share of a value at which halving it is enough."""


def _refined(body: Compliance, path: PressPath, raised: Floats) -> tuple[Floats, Floats]:
    """The stations, halved where a value does not run straight between, and the values there."""
    rows = tension_rows(body)
    known = _values(body, rows, path, raised)
    fresh = np.ones(len(raised) - 1, dtype=bool)
    for _ in range(ROUNDS):
        at = np.flatnonzero(fresh)
        middles = 0.5 * (raised[at] + raised[at + 1])
        there = _values(body, rows, path, middles)
        straight = 0.5 * (known[:, at] + known[:, at + 1])
        off = (np.abs(straight - there) > CLOSE * np.abs(there)).any(axis=0)
        if not off.any():
            break
        raised = np.insert(raised, at[off] + 1, middles[off])
        known = np.insert(known, at[off] + 1, there[:, off], axis=1)
        fresh = np.insert(np.zeros(len(fresh), dtype=bool), at[off] + 1, True)
        new = np.flatnonzero(fresh)
        fresh[new - 1] = True
    return raised, known


def contact_length(body: Compliance, gives: Floats, overlap: Floats, loads: Floats) -> float:
    """Length of bore that presses (over d), the end found inside its strip; arrays (n,)."""
    touching = loads > 0
    if not touching.any():
        return 0.0
    if _unbroken(touching):
        return end_of_contact(body.strips, gives, overlap, loads) - float(body.strips[0, 0])
    return float(body.lengths[touching].sum())


def _unbroken(touching: np.ndarray) -> bool:
    """Whether all up to one strip touch, and none after it."""
    return bool(touching[0]) and int(touching.sum()) == int(np.flatnonzero(touching)[-1]) + 1


def _contact_ends(body: Compliance, path: PressPath) -> tuple[Floats, Floats]:
    """Overlaps and contact lengths, straight between each other (see `contact.ENTERS`)."""
    touching = path.loads > 0
    whole = float(body.strips[-1, 1] - body.strips[0, 0])
    if not all(_unbroken(t) for t in touching[1:]) or len(path.raised) < 3:
        beyond = path.raised[-1:] * (1 + 1e-6) + 1e-12
        t = np.append(path.raised, beyond)
        return t, np.asarray((path.at(t + 1e-9 * np.abs(t)) > 0) @ body.lengths)
    count = touching.sum(axis=1)
    known = count < len(body.lengths)
    at = body.strips[:, 0] + ENTERS * body.lengths - body.strips[0, 0]
    at[0] = 0.0
    t, ends = path.raised[known], at[count[known]]
    return np.append(t, _whole_at(t, ends, whole)), np.append(ends, whole)


def _whole_at(t: Floats, ends: Floats, whole: float) -> float:
    """Overlap at which the whole bore bears, at the pace of the last strip that came to bear.

    A change may leave the end where it is; without any that moves it the rest comes at once.
    """
    moved = np.flatnonzero((np.diff(ends) > 0) & (np.diff(t) > 0))
    if not moved.size:
        return float(t[-1] + 1e-6 * abs(t[-1]) + 1e-12)
    k = int(moved[-1])
    pace = (ends[k + 1] - ends[k]) / (t[k + 1] - t[k])
    return float(t[-1] + (whole - ends[-1]) / pace)


def _stations(path: PressPath, full: float) -> Floats:
    """Every change, that at which the whole bore bears, and beyond the last."""
    at = np.append(path.raised, full)
    span = max(float(np.ptp(at)), float(np.abs(at).max()), 1e-12)
    return distinct(np.concatenate([at, at.max() + span * np.array(BEYOND)]))
