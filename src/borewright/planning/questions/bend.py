"""Bend: does the mandrel stay straight enough for the finished size."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from borewright.answer.records import Cut, Demand, Draws, Figure, Question
from borewright.job.hollow import LARGEST_HOLE
from borewright.mechanics.beam import Bar, deflection, round_step
from borewright.mechanics.num import distinct
from borewright.mechanics.spread import likely, low_end
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure, given, spread, times
from borewright.planning.weighing.judge import judge
from borewright.quantities.si import Metre


def ask_bend(trial: Trial) -> Question:
    """Margin: size error allowed over the error left by bending in the finishing cut.

    Where a gear is cut, the depth of its teeth too; the worse of the two is the answer.
    """
    gears = [d for c, d in _pairs(trial) if c.kind == "gear"]
    asked = [_teeth(trial, d) for d in gears]
    if len(gears) < len(trial.cuts):
        asked.append(_size(trial))
    return max(asked, key=lambda q: (q.verdict.rank, -q.margin))


def _teeth(trial: Trial, demand: Demand) -> Question:
    """Margin: depth error that a tooth bears over that left by bending, once."""
    per_newton = worst_deflection_per_newton(trial)
    error, allowed = per_newton * demand.radial, trial.tables.gear_cutting("depth_error")
    margin = allowed.best / np.maximum(error, 1e-12)
    best, low = likely(margin), low_end(margin)
    inputs = (
        given("radial force", likely(demand.radial), "N"),
        given("deflection at 1 N (nm)", per_newton * 1e9),
    )
    show = trial.show
    return Question(
        "bend",
        judge("bend", best, low, trial.tables),
        best,
        low,
        f"The cutter bends the mandrel by about {show.small(likely(error))}, so that the teeth come out that much too "
        f"shallow; {show.small(allowed.best)} is allowed, {times(best)} that.",
        "A second pass through each space at the same depth, a jack under the work, a lighter feed, a thicker mandrel.",
        (
            _per_force(trial, per_newton),
            spread(
                "tooth_depth_error", error, "m", "small", "tooth_depth_error", inputs, ("ours",)
            ),
        ),
        (trial.tables.threshold("bend").source, allowed.source),
    )


def _size(trial: Trial) -> Question:
    """The finished outside."""
    demand = _finishing(trial)
    per_newton = worst_deflection_per_newton(trial)
    bent = 2 * per_newton * demand.radial
    error = bent + springs_back(trial)
    allowed, stated = _allowed(trial)
    margin = allowed / np.maximum(error, 1e-12)
    best, low = likely(margin), low_end(margin)
    said = "" if stated else " (tolerance not stated)"
    show = trial.show
    reason = (
        f"Bending leaves about {show.small(likely(bent))} on diameter, and {show.small(likely(springs_back(trial)))} of taper comes "
        f"when the squeeze lets go, smaller towards face {trial.hold.leading}; {show.small(allowed)} is allowed{said}, {times(best)} both."
    )
    return Question(
        "bend",
        judge("bend", best, low, trial.tables),
        best,
        low,
        reason,
        "A lighter finishing cut, a spring pass, a thicker mandrel; less travel, or more wall, for the taper.",
        _figures(trial, demand, per_newton, bent),
        (trial.tables.threshold("bend").source,),
    )


def springs_back(trial: Trial) -> Draws:
    """How much more (m, on diameter) the leading end shrinks than the far end when it comes off."""
    facts, taper = trial.hold.facts, trial.mandrel.taper
    squeeze = np.maximum(taper * trial.chosen.travel - facts.lost_rough, 1e-9)
    return np.asarray(trial.grip.growth * np.minimum(1.0, taper * trial.hold.length / squeeze))


def worst_deflection_per_newton(trial: Trial) -> float:
    """Largest deflection (m/N) at the tool with the tool anywhere along the work."""
    return _worst(trial)[0]


def _worst(trial: Trial) -> tuple[float, Metre]:
    """Largest deflection (m/N), and where (m) from the small end's center."""
    bar, start, end = _bar(trial)
    places = (float(p) for p in np.linspace(start, end, 5))
    return max((deflection(bar, p, 1.0), p) for p in places)


def _bar(trial: Trial) -> tuple[Bar, float, float]:
    """The mandrel between centers, stiffened where the hub grips it; places from the small end's center."""
    m, hold = trial.mandrel, trial.hold
    seat = float(np.clip(likely(trial.seat), hold.length, m.ground_length)) + m.end_length
    start, end = max(0.0, seat - hold.length), min(seat, m.overall_length)
    edges = distinct(
        [0.0, m.end_length, start, end, m.end_length + m.ground_length, m.overall_length]
    )
    middles = 0.5 * (edges[1:] + edges[:-1])
    steps = [_step(trial, float(x), start, end) for x in middles]
    spring = trial.tables.allowance("center_stiffness").best
    return (
        Bar(
            edges,
            np.array([s[0] for s in steps]),
            np.array([s[1] for s in steps]),
            (spring, spring),
        ),
        start,
        end,
    )


def _step(trial: Trial, x: Metre, start: Metre, end: Metre) -> tuple[float, float]:
    m, f = trial.mandrel, trial.hold.facts
    ground = m.end_length < x < m.end_length + m.ground_length
    steel = float(f.mandrel.modulus), float(f.mandrel.poisson)
    thick = m.nominal if ground else m.end_diameter
    # Reduced ends that a large hole would cut through are taken as plugged down to the share allowed.
    bend, slide = round_step(thick, *steel, min(m.hole, LARGEST_HOLE * thick))
    if not start < x < end:
        return bend, slide
    outside = trial.hold.line.outside
    hub = float(outside[outside > 0].min())
    modulus, poisson = likely(np.atleast_1d(f.work.modulus)), float(f.work.poisson)
    whole, core = round_step(hub, modulus, poisson), round_step(m.nominal, modulus, poisson)
    return bend + whole[0] - core[0], slide + whole[1] - core[1]


def _pairs(trial: Trial) -> Iterator[tuple[Cut, Demand]]:
    return zip(trial.cuts, trial.demands, strict=True)


def _finishing(trial: Trial) -> Demand:
    """The last cut that sizes the outside, turned or ground; the last of any kind where none does."""
    sizes = [d for c, d in _pairs(trial) if c.kind in ("turn", "grind")]
    return (sizes or list(trial.demands))[-1]


def _allowed(trial: Trial) -> tuple[Metre, bool]:
    stated = trial.job.work.finished.tolerance
    return (stated, True) if stated else (trial.tables.allowance("usual_tolerance").best, False)


def _figures(
    trial: Trial, demand: Demand, per_newton: float, error: np.ndarray
) -> tuple[Figure, ...]:
    passive = given("radial force", likely(demand.radial), "N")
    return (
        _per_force(trial, per_newton),
        spread(
            "size_error",
            error,
            "m",
            "small",
            "size_error",
            (passive, given("deflection at 1 N (nm)", per_newton * 1e9)),
            ("ours",),
        ),
    )


def _per_force(trial: Trial, per_newton: float) -> Figure:
    spring, m = trial.tables.allowance("center_stiffness"), trial.mandrel
    modulus, at = float(trial.hold.facts.mandrel.modulus), _worst(trial)[1]
    span, other = m.overall_length, m.overall_length - at
    inertia = np.pi * (m.nominal**4 - m.hole**4) / 64
    bent = (at * other) ** 2 / (3 * modulus * inertia * span)
    plain = bent + (at**2 + other**2) / span**2 / spring.best
    return figure(
        "deflection_per_force",
        per_newton,
        "m/N",
        "",
        "beam_deflection",
        (
            given("mandrel", trial.mandrel.nominal, "m"),
            given("hole", m.hole, "m"),
            given("E", modulus, "Pa"),
            given("between centers", span, "m"),
            given("a", at, "m"),
            given("b", other, "m"),
            given("stiffness of a center", spring.best, "N/m"),
            given("stepped over plain", per_newton / float(plain)),
        ),
        (spring.source,),
    )
