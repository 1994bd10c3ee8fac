"""How far a mandrel between its centers gives under the tool, how it swings, what its centers carry.

The bar is worked once for each trial and kept: what an optimiser asks often costs a look-up.
Places are in m from the center at the small end.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from borewright.answer.records import Demand, Draws
from borewright.answer.streams import Stream, positive
from borewright.job.hollow import LARGEST_HOLE
from borewright.mechanics.beam import Bar, round_step
from borewright.mechanics.center_loads import loads_on_centers, push_per_kelvin
from borewright.mechanics.influence import UnderTool, full_flexibility, under_tool
from borewright.mechanics.num import Floats, distinct
from borewright.mechanics.spread import likely
from borewright.mechanics.springing import size_bounds, size_left
from borewright.mechanics.vibration import CELLS, Masses, first_frequency, spread_mass
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.chatter import Swing
from borewright.planning.weighing.work_mass import slabs
from borewright.quantities.si import Metre, Newton, NewtonPerMetre

PLACES = 17
"""Places along the work at which the tool is asked for, both ends among them (ours)."""

KEPT = 8
"""Trials whose bar is kept."""


@dataclass(frozen=True, slots=True, eq=False)
class Bending:
    """The bar of a trial; where the tool goes, and what gives there. `start` is the tailstock side.

    `from_centers` (n,): the share of `give.per_force` (m/N) that comes of the centers at their
    likely stiffness.
    """

    bar: Bar
    start: Metre
    end: Metre
    places: Floats
    give: UnderTool
    from_centers: Floats

    @property
    def worst(self) -> int:
        """Which place gives most under a force."""
        return int(self.give.per_force.argmax())


@lru_cache(maxsize=KEPT)
def bending_of(trial: Trial) -> Bending:
    """Worked once for a trial."""
    bar, start, end = bar_of(trial)
    places = np.linspace(start, end, PLACES)
    share = places / bar.span
    sprung = ((1 - share) ** 2 + share**2) / bar.springs[0]
    return Bending(bar, start, end, places, under_tool(bar, places), sprung)


def bar_of(trial: Trial) -> tuple[Bar, Metre, Metre]:
    """The mandrel between centers, stiffened where the hub grips it, and where the hub stands."""
    m, hold = trial.mandrel, trial.hold
    seat = float(np.clip(likely(trial.seat), hold.length, m.ground_length)) + m.end_length
    start, end = max(0.0, seat - hold.length), min(seat, m.overall_length)
    edges = distinct(
        [0.0, m.end_length, start, end, m.end_length + m.ground_length, m.overall_length]
    )
    middles = 0.5 * (edges[1:] + edges[:-1])
    steps = [_step(trial, float(x), start, end) for x in middles]
    spring = trial.tables.allowance("center_stiffness").best
    bending, shear = (np.array([s[k] for s in steps]) for k in (0, 1))
    return Bar(edges, bending, shear, (spring, spring)), start, end


def tool_stiffness(trial: Trial) -> NewtonPerMetre:
    """Least stiffness (N/m) at the tool with the tool anywhere along the work, likely case."""
    return float(1 / bending_of(trial).give.per_force.max())


def stiffness_draws(trial: Trial) -> Draws:
    """The same as draws: the stiffness of the centers is the least known of it."""
    bent = bending_of(trial)
    spring = trial.tables.allowance("center_stiffness")
    drawn = positive(spring.low, spring.best, spring.high, Stream.SETTING)
    centers = bent.from_centers[bent.worst]
    own = bent.give.per_force[bent.worst] - centers
    return np.asarray(1 / (own + centers * spring.best / drawn))


def size_line(trial: Trial, demand: Demand, way: float = 1.0) -> Draws:
    """Size left on diameter (m) along the work, (n draws, places), tailstock side first.

    `way` 1: fed as the cut is; -1: fed the other way, its thrust turned round.
    """
    moment = way * demand.axial * demand.radius
    return size_left(bending_of(trial).give, demand.radial[:, None], moment[:, None])


def size_bounds_of(trial: Trial, demand: Demand) -> Draws:
    """What may be left on diameter (m), (n draws, 2 places); see `springing.size_bounds`."""
    moment = demand.axial * demand.radius
    return size_bounds(bending_of(trial).give, demand.radial[:, None], moment[:, None])


def size_error_of(trial: Trial, demand: Demand) -> Draws:
    """The largest of them: never less for a heavier cut."""
    return np.asarray(size_bounds_of(trial, demand).max(axis=1))


def swing_of(trial: Trial) -> Swing:
    """What chatters on the work side."""
    spring = trial.tables.allowance("center_stiffness").best
    stiffness, frequency = stiffness_draws(trial), frequency_of(trial, spring)
    return Swing(stiffness, frequency, trial.job.work.material)


@lru_cache(maxsize=4 * KEPT)
def frequency_of(trial: Trial, spring: NewtonPerMetre) -> float:
    """First natural frequency (Hz) of mandrel and work on centers of this stiffness (N/m)."""
    bar = bending_of(trial).bar
    on = masses_of(trial)
    sprung = Bar(bar.edges, bar.bending, bar.shear, (spring, spring))
    return first_frequency(full_flexibility(sprung, on.places), on.all)


def masses_of(trial: Trial) -> Masses:
    """Of the mandrel and, where it stands on it, the work."""
    return mandrel_masses(trial).with_more(work_masses(trial))


@lru_cache(maxsize=KEPT)
def mandrel_masses(trial: Trial) -> Masses:
    """The mandrel without what it carries."""
    bar, m = bending_of(trial).bar, trial.mandrel
    sizes = _sizes(trial, bar.edges)
    density = trial.tables.material_range(m.material, "density").best
    area = np.pi / 4 * (sizes[0] ** 2 - sizes[1] ** 2)
    turning = np.pi / 64 * (sizes[0] ** 4 - sizes[1] ** 4)
    return spread_mass(bar.edges, density * area, density * turning, bar.span / CELLS)


@lru_cache(maxsize=KEPT)
def work_masses(trial: Trial) -> Masses:
    """The work's rings at their places along the mandrel; what stands out past an end, at the end."""
    bar, work = bending_of(trial).bar, trial.job.work
    lead = float(np.clip(likely(trial.seat), 0.0, trial.mandrel.ground_length))
    face = lead + trial.mandrel.end_length
    found = Masses(*(np.zeros(0) for _ in range(3)))
    for s in slabs(work, trial.tables):
        ends = sorted(_from_lead(trial, z) for z in (s.start, s.end))
        edges = np.array([face - ends[1], face - ends[0]])
        amounts = np.array([s.per_metre]), np.array([s.turning_per_metre])
        cell = max(bar.span, work.length) / CELLS  # work longer than its mandrel needs no finer one
        found = found.with_more(spread_mass(edges, *amounts, cell))
    return Masses(np.clip(found.places, 0.0, bar.span), found.mass, found.turning)


def _from_lead(trial: Trial, z: Metre) -> Metre:
    """Depth from the leading face of a depth from face A."""
    return z if trial.hold.leading == "A" else trial.job.work.length - z


def center_load(trial: Trial, demand: Demand) -> tuple[Newton, float]:
    """Largest load (N) across a center, the tool anywhere along the work, and its share of the force."""
    bent = bending_of(trial)
    force = float(np.hypot(likely(demand.radial), likely(demand.tangential)))
    ends = np.array([bent.start, bent.end])
    loads = loads_on_centers(bent.bar.span, ends, force)
    most = max(float(np.max(load)) for load in loads)
    return most, most / force


def stretch_of(trial: Trial) -> float:
    """How much (m/N) the mandrel gives along its axis."""
    bar, modulus = bending_of(trial).bar, float(trial.hold.facts.mandrel.modulus)
    outside, hole = _sizes(trial, bar.edges)
    return float((np.diff(bar.edges) / (modulus * np.pi / 4 * (outside**2 - hole**2))).sum())


def push_of_a_kelvin(trial: Trial) -> float:
    """What a plain center that is not eased gains (N/K) as the mandrel warms: ease it."""
    m, t = trial.mandrel, trial.tables
    span, expansion = m.overall_length, t.material_range(m.material, "expansion").best
    whole = np.array([span]), np.array([span / stretch_of(trial)])
    bed = t.allowance("centers_along_stiffness").best
    return float(push_per_kelvin(*whole, expansion, bed))


def _sizes(trial: Trial, edges: Floats) -> tuple[Floats, Floats]:
    """Outside and hole (m) of the mandrel between these edges."""
    m = trial.mandrel
    middles = 0.5 * (edges[1:] + edges[:-1])
    ground = (middles > m.end_length) & (middles < m.end_length + m.ground_length)
    outside = np.where(ground, m.nominal, m.end_diameter)
    # Reduced ends that a large hole would cut through are taken as plugged down to the share allowed.
    return outside, np.minimum(m.hole, LARGEST_HOLE * outside)


def _step(trial: Trial, x: Metre, start: Metre, end: Metre) -> tuple[float, float]:
    """EI and G A_s at a place."""
    m, f = trial.mandrel, trial.hold.facts
    steel = float(f.mandrel.modulus), float(f.mandrel.poisson)
    outside, hole = (float(s[0]) for s in _sizes(trial, np.array([x, x])))
    bend, slide = round_step(outside, *steel, hole)
    if not start < x < end:
        return bend, slide
    rings = trial.hold.line.outside
    hub = float(rings[rings > 0].min())
    modulus, poisson = likely(np.atleast_1d(f.work.modulus)), float(f.work.poisson)
    whole, core = round_step(hub, modulus, poisson), round_step(m.nominal, modulus, poisson)
    return bend + whole[0] - core[0], slide + whole[1] - core[1]
