"""The sums of a bush: sizes by ISO 286, pressure and tension by Lamé, what the fit then holds.

The fit is the lightest that drives the cut, whatever the hub stands; so a larger hub is never asked
to stand more for it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from math import ceil

import numpy as np

from borewright.answer.records import Demand, Draws
from borewright.answer.streams import Stream, positive
from borewright.holding.taper.facts import Facts, gather_facts
from borewright.job.records import Bore, Job, Mandrel
from borewright.mechanics.grip_of_fit import fit_axial
from borewright.mechanics.rings import hoop_at_bore, lame_pressure, ring_compliance
from borewright.mechanics.roughness import interference_lost
from borewright.mechanics.slip import friction_demand
from borewright.mechanics.spread import likely, low_end, normal_draws, standard_normals
from borewright.mechanics.strength import crack_margin, yield_margin
from borewright.planning.rescue.case import Case
from borewright.planning.rescue.reaming import shallower
from borewright.planning.weighing.judge import share_of_yes
from borewright.planning.weighing.served import cuts_and_demands
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.reference.limits import Limits

FITS = ("p6", "r6", "s6")
"""Press fits in an H7 hole, lightest first."""

BRONZE, STEEL = "bronze-sae-660", "steel-1018"
"""What the bush is taken to be: bearing bronze; mild steel where a key must be cut in it (ours)."""

HUB_STEP = {"inch": 0.0254 / 32, "mm": 0.0005}
"""The hub is bored to the next of these steps (m): drills, bars and micrometers are read in them."""


@dataclass(frozen=True)
class BushSizes:
    """Hub bore and outside, the bush's bore as pressed in and as finished, length. All in m."""

    hub_bore: Metre
    hub_outside: Metre
    as_pressed: Metre
    low: Metre
    high: Metre
    length: Metre

    @property
    def wall(self) -> Metre:
        """Of the bush, when its bore is finished."""
        return (self.hub_bore - self.high) / 2

    @property
    def hub_wall(self) -> Metre:
        return (self.hub_outside - self.hub_bore) / 2


def bush_sizes(case: Case) -> BushSizes:
    """The hub is bored no further than cleans it up and leaves the bush its wall."""
    fact, wanted = case.tables.rescue_fact, case.wanted
    wall = max(fact("bush_least_wall").best, fact("bush_wall_share").best * wanted.middle)
    needed = max(case.found.largest + fact("clean_up").best, wanted.high + 2 * wall)
    step = HUB_STEP[case.job.units]
    return BushSizes(
        hub_bore=ceil(needed / step - 1e-6) * step,
        hub_outside=case.hub_outside,
        as_pressed=wanted.low - fact("bush_bore_stock").best,
        low=wanted.low,
        high=wanted.high,
        length=case.job.work.length,
    )


@dataclass(frozen=True)
class PressedBush:
    """One fit of the bush in the hub. Draws: the likely case first."""

    sizes: BushSizes
    material: str
    hole: Limits
    shaft: Limits
    facts: Facts
    lost: Draws
    bush_yield: float

    @property
    def code(self) -> str:
        return f"{self.hole.code}/{self.shaft.code}"

    @property
    def limits(self) -> tuple[Metre, Metre]:
        """Least and largest interference (m)."""
        hole, shaft = self.hole, self.shaft
        return shaft.lower - hole.upper, shaft.upper - hole.lower

    @cached_property
    def interference(self) -> Draws:
        """Hub and bush each somewhere in its own limits, seldom both at the ends that are worst."""
        middle = sum(self.limits) / 2
        hole, shaft = ((x.upper - x.lower) / 2 for x in (self.hole, self.shaft))
        half = float(np.hypot(hole, shaft))
        z = standard_normals(Stream.SETTING)
        return normal_draws(middle - half, middle, middle + half, z)

    @cached_property
    def compliance(self) -> Draws:
        """C (1/Pa) of hub and bush, as rings."""
        s, f = self.sizes, self.facts
        c = ring_compliance(s.hub_bore, s.hub_outside, f.work, f.mandrel, s.as_pressed)
        return np.asarray(c, dtype=np.float64)

    @cached_property
    def pressure(self) -> Draws:
        """With no peaks flattened (Pa): what the hub may have to stand."""
        tight = np.maximum(self.interference, 0.0)
        return np.asarray(lame_pressure(tight, self.sizes.hub_bore, self.compliance))

    @cached_property
    def grip_pressure(self) -> Draws:
        """What is left (Pa) with the peaks flattened, and no more than makes the bush yield."""
        left = np.maximum(self.interference - self.lost, 0.0)
        p = lame_pressure(left, self.sizes.hub_bore, self.compliance)
        return np.asarray(np.minimum(p, self.yields_at))

    @property
    def ratio(self) -> float:
        """The bush's bore as pressed in over its outside."""
        return self.sizes.as_pressed / self.sizes.hub_bore

    @property
    def yields_at(self) -> float:
        """Pressure (Pa) at which the bore of the bush yields in compression."""
        return self.bush_yield * (1 - self.ratio**2) / 2

    @cached_property
    def tension(self) -> Draws:
        """Hoop tension (Pa) at the bore of the hub, edge and notch included."""
        f = self.facts
        hoop = hoop_at_bore(self.pressure, self.sizes.hub_bore / self.sizes.hub_outside)
        return np.asarray(hoop * f.edge_factor * f.notch_factor)

    @cached_property
    def strength(self) -> Draws:
        """Margin of the hub: tension for brittle metal, von Mises for ductile."""
        f = self.facts
        if f.brittle:
            return np.asarray(crack_margin(f.strength, self.tension))
        k2 = (self.sizes.hub_bore / self.sizes.hub_outside) ** 2
        h = (1 + k2) / (1 - k2)
        equivalent = self.pressure * np.sqrt(h * h + h + 1) * f.notch_factor
        return np.asarray(yield_margin(f.strength, equivalent))

    @cached_property
    def friction_force(self) -> Draws:
        """What the fit carries (N), torque and thrust together."""
        s, f = self.sizes, self.facts
        bears = f.bearing_share
        axial = fit_axial(f.friction_slip, self.grip_pressure, s.length, s.hub_bore)
        return np.asarray(axial * bears)

    @property
    def torque(self) -> Draws:
        return self.friction_force * self.sizes.hub_bore / 2

    @property
    def push(self) -> Draws:
        """What presses it in (N), the whole length in."""
        return np.asarray(self.friction_force / self.facts.friction_slip * self.facts.friction_on)

    @property
    def yields(self) -> bool:
        """Whether the bush is likely to close for good."""
        return likely(self.pressure) > self.yields_at

    @property
    def closes(self) -> Metre:
        """How much (m) the bore of the bush closes when it is pressed in, likely case."""
        pressed, e = likely(self.pressure), float(np.atleast_1d(self.facts.mandrel.modulus)[0])
        return 2 * pressed * self.sizes.as_pressed / (e * (1 - self.ratio**2))

    def margin(self, demand: Demand) -> Draws:
        """What the fit carries over what a cut asks of it."""
        asked = friction_demand(demand.torque, self.sizes.hub_bore, demand.axial)
        return np.asarray(self.friction_force / np.maximum(asked, 1e-9))


def hardest(demands: tuple[Demand, ...], across: Metre) -> Demand:
    """The cut that asks most of a joint of this diameter (m), likely case."""
    return max(
        demands, key=lambda d: float(friction_demand(likely(d.torque), across, likely(d.axial)))
    )


def demands_of(case: Case) -> tuple[Demand, ...]:
    """What the usual cuts of the job ask."""
    return cuts_and_demands(case.job, case.tables, 1.0)[1]


def pressed_bush(case: Case, sizes: BushSizes, demands: tuple[Demand, ...]) -> PressedBush:
    """The lightest fit that drives the hardest cut; the tightest where none does.

    OutsideModel for a size that the tables of ISO 286 do not reach.
    """
    fits = [_fit(case, sizes, code) for code in FITS]
    if not demands:
        return fits[0]
    hard = hardest(demands, sizes.hub_bore)
    return next((f for f in fits if drives(f.margin(hard), case.tables) >= 1), fits[-1])


def drives(margin: Draws, tables: Tables) -> float:
    """At least 1 where a margin against slipping is a yes."""
    return share_of_yes("slip", likely(margin), low_end(margin), tables)


def _fit(case: Case, sizes: BushSizes, code: str) -> PressedBush:
    tables = case.tables
    material = bush_material(case)
    # A finishing cut by one point leaves the same outside as in a bore.
    rough = tables.roughness("bored")
    peaks = 2 * positive(rough.low, rough.best, rough.high, Stream.ROUGHNESS)
    share = tables.allowance("roughness_loss").best
    return PressedBush(
        sizes,
        material,
        tables.limits("H7", sizes.hub_bore),
        tables.limits(code, sizes.hub_bore),
        gather_facts(bored_out(case.job, sizes.hub_bore), _as_shaft(sizes, material), tables),
        np.asarray(interference_lost(peaks, share)),
        tables.material_range(material, "yield").best,
    )


def bush_material(case: Case) -> str:
    """What the bush is taken to be turned from."""
    return STEEL if case.has("keyed") or case.job.work.keyway else BRONZE


def bored_out(job: Job, hub_bore: Metre) -> Job:
    """The job with its hub bored out; what stays of a keyway still notches it."""
    work = job.work
    key = shallower(work.keyway, (hub_bore - work.bore.size) / 2)
    bore = Bore(hub_bore, made_by="bored")
    return replace(job, pressed_before=False, work=replace(work, bore=bore, keyway=key))


def _as_shaft(s: BushSizes, material: str) -> Mandrel:
    """The bush as what the hub is pressed on: only its metal counts."""
    return Mandrel(
        "bush", s.hub_bore, s.hub_bore, 0.0, s.length, s.length, s.hub_bore, 0.0, material
    )
