"""The plain taper mandrel: the work pressed towards the large end until friction holds it.

The setting is the travel past first touch. The grip at a travel does not depend on the size of the
bore, only on its shape, because the touch moves with the size; so a poor reading of the bore widens
the place where it sits, not the grip. On a mandrel measured at three stations or more the taper
differs from place to place, and the grip with it.
Work and mandrel answer as two elastic bodies (`taper_contact`); `taper_rings` is the pencil check.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from borewright.answer.records import Draws, TaperGrip
from borewright.answer.streams import Stream, around
from borewright.errors import RefusedInput
from borewright.holding.bores.bore_reading import bore_half_band
from borewright.holding.bores.bore_shape import BoreShape, bore_shape
from borewright.holding.taper.contact_curves import ContactCurves
from borewright.holding.taper.elastic_joint import Joint
from borewright.holding.taper.facts import Facts, gather_facts
from borewright.holding.taper.measured_mandrel import half_band_on, profile_of
from borewright.holding.taper.pressed_state import PressedState
from borewright.holding.taper.taper_contact import (
    arm_of,
    contact_state,
    curves_of,
    joint_of,
    likely_forces,
    stiffness_of,
)
from borewright.holding.taper.taper_rings import rings_state
from borewright.job.records import Job, Mandrel, Work
from borewright.job.web import gripping
from borewright.mechanics.measured_touch import touch_on
from borewright.mechanics.num import Floats
from borewright.mechanics.outline import BoreLine, bore_line
from borewright.mechanics.press import push_off_force, push_on_force
from borewright.mechanics.taper import touch_position
from borewright.quantities.si import Metre, Newton
from borewright.reference.library import Tables


@dataclass(frozen=True, eq=False)
class TaperHold:
    """One mandrel, one face leading, for the work it was asked for."""

    mandrel: Mandrel
    leading: str
    line: BoreLine
    sizes: Floats
    shape: BoreShape
    facts: Facts
    touch: Draws
    bore_shift: Draws
    work: Work
    way: str = "plain-taper"

    @cached_property
    def joint(self) -> Joint:
        """Work and mandrel as two elastic bodies, built when first asked for: touch needs none.

        RefusedInput for an outline that is no single body.
        """
        return joint_of(self.work, self.leading, self.mandrel, self.facts, self.likely_touch)

    @cached_property
    def curves(self) -> ContactCurves:
        """What the joint does against its overlap, where the taper is straight."""
        return curves_of(self)

    @property
    def length(self) -> Metre:
        return float(self.line.edges[-1])

    @cached_property
    def bears(self) -> Metre:
        """Length of bore (m) that can bear: without counterbores, reliefs and chamfers."""
        edges = self.line.edges
        return float((edges[1:] - edges[:-1]) @ (self.line.outside > 0))

    @cached_property
    def free_before(self) -> Metre:
        """Length (m) from the leading face to where the bore begins to bear."""
        return float(self.line.edges[np.flatnonzero(self.line.outside > 0)[0]])

    @property
    def likely_touch(self) -> Metre:
        return float(self.touch[0])

    def grip(self, setting: Metre) -> TaperGrip:
        """Grip at a travel (m) past first touch: less peaks in all, less warmth when cutting."""
        f, m, d = self.facts, self.mandrel, float(self.sizes.min())
        pressed = self.state(setting, f.lost_rough)
        warm = self.warm(setting)
        tight = self.state(setting, np.zeros(1))
        cold = self.round_the_bore(pressed)
        return TaperGrip(
            way=self.way,
            setting=setting,
            diameter=d,
            normal_force=self.round_the_bore(warm),
            pressed_force=cold,
            holding_friction=f.friction_slip,
            push_on=np.asarray(push_on_force(cold, f.friction_on, m.taper)),
            push_off=np.asarray(push_off_force(cold, f.friction_off, m.taper)),
            tension=tight.tension * f.edge_factor * f.notch_factor,
            equivalent_stress=tight.equivalent * f.notch_factor,
            contact_length=pressed.contact_length,
            edge_pressure=tight.pressure,
            pressed_pressure=pressed.pressure,
            growth=pressed.growth,
            taper=m.taper,
        )

    def push_at(self, setting: Metre) -> Draws:
        """Push (N) that has brought the work to a travel (m): as `grip` says, sooner."""
        cold = self.round_the_bore(self.state(setting, self.facts.lost_rough))
        return np.asarray(push_on_force(cold, self.facts.friction_on, self.mandrel.taper))

    def lift_moment(self, setting: Metre) -> Draws:
        """Tilt (N·m) at a travel (m) under which a fifth of the grip lifts once a turn, warm."""
        if setting not in self._lifts:
            force = self.round_the_bore(self.warm(setting))
            self._lifts[setting] = force * arm_of(self, setting, self._lost_warm)
        return self._lifts[setting]

    @cached_property
    def _lifts(self) -> dict[Metre, Draws]:
        """Every cut asks for the same."""
        return {}

    def tilt_stiffness(self, setting: Metre) -> float:
        """Likely moment per turn of the outside (N·m/rad) at a travel (m), warm."""
        return stiffness_of(self, setting, float(self._lost_warm[0]))

    def warm(self, setting: Metre) -> PressedState:
        """The joint at a travel (m) as the cut finds it: peaks flattened and the work warm."""
        return self.state(setting, self._lost_warm)

    @property
    def _lost_warm(self) -> Draws:
        """Interference lost (m) to peaks and to the warmth of the cut."""
        warm = self.facts.lost_warm_per_metre * float(self.sizes.min())
        return np.asarray(self.facts.lost_rough + warm)

    def state(self, travel: Metre, lost: Draws, *, likely_only: bool = False) -> PressedState:
        """What the joint does at a travel (m), so much interference lost (m), for every draw."""
        found = contact_state(self, travel, lost, 1 if likely_only else len(self.touch))
        return found.within(self.bears)

    def by_rings(self, travel: Metre) -> tuple[PressedState, PressedState]:
        """The likely case by rings side by side, for the pencil: peaks flattened, and no peaks."""
        if travel not in self._rings:
            lost = self.facts.lost_rough[:1], np.zeros(1)
            pressed, tight = (rings_state(self, travel, less, 1) for less in lost)
            self._rings[travel] = pressed, tight
        return self._rings[travel]

    @cached_property
    def _rings(self) -> dict[Metre, tuple[PressedState, PressedState]]:
        """Half a dozen questions ask for the same."""
        return {}

    def round_the_bore(self, state: PressedState) -> Draws:
        """Sum of the pressure (N) round the part of the bore that bears: a keyway does not."""
        return np.asarray(state.normal_force * self.facts.bearing_share)

    def light_pushes(self, travels: Floats) -> Floats:
        """Likely push (N) at small travels (m), peaks not yet flattened: what a hand feels."""
        normal = self.likely_forces(travels, np.zeros_like(travels))
        friction = float(self.facts.friction_on[0])
        return np.asarray(push_on_force(normal, friction, self.mandrel.taper))

    def likely_force(self, travel: Metre, lost: Metre) -> Newton:
        """Likely normal force (N) at a travel (m), so much interference lost (m)."""
        return float(self.likely_forces(np.array([travel]), np.array([lost]))[0])

    def likely_forces(self, travels: Floats, lost: Floats) -> Floats:
        """Likely normal forces (N) at travels (m) with so much interference lost (m), (n,) each."""
        return likely_forces(self, travels, lost) * self.facts.bearing_share


def holds(job: Job, mandrel: Mandrel, tables: Tables) -> tuple[TaperHold, ...]:
    """The holds of one mandrel: face A leading, and face B where that is not the same."""
    facts = gather_facts(job, mandrel, tables)
    half_band = bore_half_band(job, tables)
    ahead = _hold(job, mandrel, facts, half_band, "A")
    behind = _hold(job, mandrel, facts, half_band, "B")
    alike = _same(ahead, behind) and not job.work.finished.form.uneven
    return (ahead,) if alike else (ahead, behind)


def _hold(job: Job, mandrel: Mandrel, facts: Facts, half_band: float, leading: str) -> TaperHold:
    line = bore_line(
        [(p.start, p.end, p.outside, p.inside) for p in gripping(job.work)], job.work.bore.size
    )
    shape = bore_shape(job.work.bore, job.work.length, leading)
    if not (line.outside > 0).any():
        found = "nothing of the bore left between its chamfers"
        raise RefusedInput("work.chamfer", found, "chamfers that leave some of the bore")
    line = (line if leading == "A" else line.mirrored()).cut_at(shape.depths.tolist())
    sizes = shape.at(line.edges)
    shift = around(0.0, half_band_on(mandrel, half_band), Stream.BORE)
    measured = profile_of(mandrel)
    if measured is not None:
        touch = touch_on(measured, sizes + shift[:, None], line.edges, line.outside > 0)
    else:
        on_metal = _edges_with_metal(line)
        ends = sizes[on_metal], mandrel.small_end, mandrel.taper, line.edges[on_metal]
        touch = float(touch_position(*ends)) + shift / mandrel.taper
    return TaperHold(mandrel, leading, line, sizes, shape, facts, touch, shift, job.work)


def _edges_with_metal(line: BoreLine) -> np.ndarray:
    metal = line.outside > 0
    return np.flatnonzero(np.append(metal, False) | np.append(False, metal))


def _same(a: TaperHold, b: TaperHold) -> bool:
    return (
        len(a.sizes) == len(b.sizes)
        and np.allclose(a.line.edges, b.line.edges, rtol=0, atol=1e-9)
        and np.allclose(a.line.outside, b.line.outside, rtol=1e-9)
        and np.allclose(a.sizes, b.sizes, rtol=0, atol=1e-10)
    )
