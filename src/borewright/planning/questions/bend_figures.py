"""The figures of the question bend: sizes left, first frequency, what the centers carry."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Demand, Draws, Figure, Input
from borewright.mechanics.spread import likely
from borewright.mechanics.springing import taper_error
from borewright.planning.taper.bending import (
    bending_of,
    center_load,
    frequency_of,
    mandrel_masses,
    push_of_a_kelvin,
    stretch_of,
    work_masses,
)
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure, given, spread
from borewright.planning.weighing.swing import frequency_figure


def from_set_size(line: Draws) -> Draws:
    """Furthest from the size set (m, on diameter), from the largest down to the smallest below it."""
    return np.asarray(np.maximum(line.max(axis=1), 0.0) - np.minimum(line.min(axis=1), 0.0))


def size_figures(trial: Trial, demand: Demand, line: Draws) -> tuple[Figure, ...]:
    """Deflection for a newton, the size error and the taper of it."""
    likeliest = line[0]
    most, least = int(likeliest.argmax()), int(likeliest.argmin())
    below = least if likeliest[least] < 0 else None
    bent, uneven = from_set_size(line), taper_error(line)
    inputs = _gives(trial, demand, most, below)
    along = _gives(trial, demand, most, least)
    return (
        per_force_figure(trial, most),
        spread("size_error", bent, "m", "small", "size_error", inputs, ("ours",)),
        spread("bend_taper", uneven, "m", "small", "bend_taper", along, ("ours",)),
    )


def _gives(trial: Trial, demand: Demand, at: int, less: int | None) -> tuple[Input, ...]:
    """The forces, and what gives at one place less what gives at another."""
    give = bending_of(trial).give
    moment = likely(demand.axial) * demand.radius
    force_gives, moment_gives = (
        float(g[at] - (0.0 if less is None else g[less])) for g in (give.per_force, give.per_moment)
    )
    return (
        given("radial force", likely(demand.radial), "N"),
        given("deflection at 1 N (nm)", force_gives * 1e9),
        given("thrust x radius", moment, "N·m"),
        given("deflection at 1 N·m (nm)", moment_gives * 1e9),
    )


def per_force_figure(trial: Trial, place: int) -> Figure:
    """What a newton bends the bar at one of the places of its bending."""
    spring, m, bent = trial.tables.allowance("center_stiffness"), trial.mandrel, bending_of(trial)
    modulus, at = float(trial.hold.facts.mandrel.modulus), float(bent.places[place])
    per_newton, span = float(bent.give.per_force[place]), m.overall_length
    other = span - at
    inertia = np.pi * (m.nominal**4 - m.hole**4) / 64
    plain = (at * other) ** 2 / (3 * modulus * inertia * span)
    plain += (at**2 + other**2) / span**2 / spring.best
    inputs = (
        given("mandrel", m.nominal, "m"),
        given("hole", m.hole, "m"),
        given("E", modulus, "Pa"),
        given("between centers", span, "m"),
        given("a", at, "m"),
        given("b", other, "m"),
        given("stiffness of a center", spring.best, "N/m"),
        given("stepped over plain", per_newton / float(plain)),
    )
    return figure(
        "deflection_per_force", per_newton, "m/N", "", "beam_deflection", inputs, (spring.source,)
    )


def bar_figures(trial: Trial) -> tuple[Figure, ...]:
    """First frequency, and what the centers carry: the same whatever is cut last."""
    return _frequency(trial), _center_load(trial), _center_push(trial)


def _frequency(trial: Trial) -> Figure:
    """Of mandrel and work together; the band is that of the centers' stiffness."""
    spring, bent = trial.tables.allowance("center_stiffness"), bending_of(trial)
    mass = float(work_masses(trial).mass.sum() + mandrel_masses(trial).mass.sum() / 2)
    exact = frequency_of(trial, spring.best)
    band = frequency_of(trial, spring.low), frequency_of(trial, spring.high)
    stiff = 1 / float(bent.give.per_force[len(bent.places) // 2])
    return frequency_figure(stiff, mass, exact, band, (spring.source,))


def _center_load(trial: Trial) -> Figure:
    """Of the cut that pushes hardest across the bar."""
    demand = max(
        trial.demands, key=lambda d: float(np.hypot(likely(d.radial), likely(d.tangential)))
    )
    load, share = center_load(trial, demand)
    inputs = (
        given("radial force", likely(demand.radial), "N"),
        given("cutting force", likely(demand.tangential), "N"),
        given("share of the nearer center", share),
    )
    return figure("center_load", load, "N", "force", "center_load", inputs, ("ours",))


def _center_push(trial: Trial) -> Figure:
    m, t = trial.mandrel, trial.tables
    expansion, bed = (
        t.material_range(m.material, "expansion"),
        t.allowance("centers_along_stiffness"),
    )
    inputs = (
        given("expansion x length (nm/K)", expansion.best * m.overall_length * 1e9),
        given("the mandrel gives at 1 N (nm)", stretch_of(trial) * 1e9),
        given("stiffness of centers and bed", bed.best, "N/m"),
    )
    push = push_of_a_kelvin(trial)
    return figure(
        "center_push", push, "N/K", "", "center_push", inputs, (expansion.source, bed.source)
    )
