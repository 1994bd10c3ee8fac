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
    size_bounds_of,
    size_error_of,
    stretch_of,
    work_masses,
)
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure, given, spread
from borewright.planning.weighing.swing import frequency_figure


def size_figures(trial: Trial, demand: Demand, line: Draws) -> tuple[Figure, ...]:
    """Deflection for a newton, the size error, and the taper of a line of sizes along the work."""
    give, error = bending_of(trial).give, size_error_of(trial, demand)
    worst = int(size_bounds_of(trial, demand)[0].argmax())
    lifted, at = divmod(worst, len(give.per_force))
    moment = likely(demand.axial) * demand.radius
    adds = moment * float(give.per_moment[at]) > 0
    sized = (
        0.0 if lifted else float(give.per_force[at]),
        float(give.per_moment[at]) if lifted or adds else 0.0,
    )
    most, least = int(line[0].argmax()), int(line[0].argmin())
    apart = tuple(float(g[most] - g[least]) for g in (give.per_force, give.per_moment))
    return (
        per_force_figure(trial, at),
        spread("size_error", error, "m", "small", "size_error", _bends(demand, *sized), ("ours",)),
        spread(
            "bend_taper",
            taper_error(line),
            "m",
            "small",
            "bend_taper",
            _bends(demand, *apart),
            ("ours",),
        ),
    )


def _bends(demand: Demand, force_gives: float, moment_gives: float) -> tuple[Input, ...]:
    """The likely forces, and what gives (m/N, m/(N·m)) under them."""
    return (
        given("radial force", likely(demand.radial), "N"),
        given("deflection at 1 N (nm)", force_gives * 1e9),
        given("thrust x radius", likely(demand.axial) * demand.radius, "N·m"),
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
