"""An expanding mandrel between centers: a slit sleeve pushed along a cone until it fills the bore.

A little push becomes a large radial force (`expanding_sleeve`), so thin work springs: it is pushed
no harder than its metal and its finished size bear, and then serves light cuts only. It takes any
bore within its range, which no plain mandrel does.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from borewright.answer.held import HEAD_FACE, OUTSIDE, TAIL_FACE, Check, Grip, Held, line
from borewright.answer.held_picture import HeldNote, HeldPicture, HeldRing, Role
from borewright.answer.records import Draws, Figure, Input, Need, Step
from borewright.answer.streams import Stream
from borewright.errors import OutsideModel
from borewright.holding.bars.between_centers import bar_stiffness, centers_picture, span_of
from borewright.holding.figured import drawn_figure
from borewright.holding.fits.pressed_ring import PressedRing
from borewright.holding.fits.sleeve import Sleeve
from borewright.holding.no_middle import no_middle
from borewright.holding.owned import needed, owned
from borewright.holding.part import Part
from borewright.job.records import Job
from borewright.job.tools import OwnHolding
from borewright.mechanics.expanding_sleeve import (
    normal_on_bore,
    sleeve_push,
    sleeve_torque,
    travel_to_touch,
)
from borewright.mechanics.spread import likely, low_end
from borewright.quantities.si import Metre, Newton
from borewright.reference.library import Tables

TOOL = "expanding-mandrel"

HAIR = 1e-3
"""Radial force (N) where the sleeve takes the whole push: nothing, but no zero to divide by."""

COVER, LEAST = 0.7, 0.3
"""Ours: share of the bore that the sleeve should fill; least length of work, in bores, that does
not rock on the sleeve."""


class Expanding:
    """Way of holding: an expanding mandrel with its sleeve."""

    id = "expanding"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """One mandrel; the flat for the dog is on one end only, so it does not flip."""
        part = Part(job, tables)
        reason = no_middle(part, "a sleeve") or _no_size(part)
        return (Held(self.id, cannot=reason),) if reason else (_held(_On(part)),)


def _no_size(part: Part) -> str:
    rows = part.tables.table("expanding_ranges").rows
    if _own(part) and part.bore > rows[-1].number("up_to"):
        return ""
    try:
        part.tables.expanding(part.bore)
    except OutsideModel:
        return "No usual expanding mandrel takes a bore of this size."
    return ""


@dataclass(frozen=True)
class _On:
    """The part on its sleeve, pushed as hard as it is meant to be."""

    part: Part

    @cached_property
    def sleeve(self) -> Sleeve:
        own = _own(self.part)
        return Sleeve(self.part, own.smallest if own else None)

    @property
    def covered(self) -> Metre:
        return min(self.part.length, self.sleeve.length)

    @cached_property
    def ring(self) -> PressedRing:
        return PressedRing(self.part, self.covered, self.sleeve.segments)

    @cached_property
    def frictions(self) -> tuple[Draws, Draws]:
        """Slipping round in the bore, and on the cone."""
        found = self.part.tables.friction(self.part.work.material, self.part.job.lubrication)
        on = self.part.drawn(found.mu_on, Stream.FRICTION)
        ratio = self.part.drawn(found.slip_ratio, Stream.SLIP_RATIO)
        return on * ratio, self.part.fact("cone_friction", Stream.TOOL)

    @cached_property
    def meant(self) -> Newton:
        """Push (N) that is meant: an ordinary one, or less for the metal and the size."""
        s = self.sleeve
        opens, cone = likely(s.opens_at), likely(self.frictions[1])
        bears = float(sleeve_push(self.ring.most_normal(), opens, cone, s.taper))
        return min(self.part.tables.holding_fact("push_per_bore").best * self.part.bore, bears)

    @cached_property
    def push(self) -> Draws:
        return self.meant * self.part.fact("push_spread", Stream.CLAMPING)

    @cached_property
    def normal(self) -> Draws:
        """Radial force (N) on the bore."""
        s = self.sleeve
        found = normal_on_bore(self.push, s.opens_at, self.frictions[1], s.taper)
        return np.maximum(found, HAIR)

    @cached_property
    def torque(self) -> Draws:
        s = self.sleeve
        across = self.part.bore, s.cone
        return np.asarray(sleeve_torque(self.normal, s.opens_at, self.frictions, across, s.taper))

    @property
    def span(self) -> Metre:
        return span_of(self.part, self.sleeve.length)


def _own(part: Part) -> OwnHolding | None:
    """The owner's mandrel that takes this bore, of those whose sizes are said."""
    for own in owned(part.job, part.tables, TOOL):
        said = own.smallest and own.largest
        if said and (own.smallest or 0.0) <= part.bore <= (own.largest or 0.0):
            return own
    return None


def _held(on: _On) -> Held:
    part, sleeve, show = on.part, on.sleeve, on.part.show
    size = show.bore(part.bore)
    return Held(
        way=Expanding.id,
        tool=f"expanding mandrel for {size}",
        do_it=f"put it on an expanding mandrel that takes {size}, its sleeve pushed home with about {show.force(on.meant)}, "
        "between centers with a dog on its flat; light cuts",
        leading="A",
        grip=_grip(on),
        needs=_needs(part),
        reaches=(OUTSIDE, TAIL_FACE, HEAD_FACE),
        seat=_seat(on),
        fit=_fit(on),
        effort=_effort(on),
        room=(part.outside, on.span),
        presses_bore=True,
        more_grip="a firmer push where the wall allows one, or a way that clamps the faces",
        truer="A clean cone and sleeve without burrs; the sleeve near its smallest; clocking it.",
        spares="A lighter push and lighter cuts; a way that clamps the faces.",
        marks="Fine lines along the bore where the strips of the sleeve bear.",
        mount=_mount(on),
        release=_release(on),
        ready=("arbor press or soft hammer, indicator, rag, a film of oil",),
        caution_tags=("mandrel", "dog", "expanding"),
        picture=_picture(on),
        figures=_figures(on),
        sources=("ours-derived", sleeve.usual.pin_taper_source),
        notes=(
            "An expanding mandrel shines for light cuts, grinding and odd bores; its slit sleeve is easily sprung or scored, so "
            "nothing heavy goes on it.",
            "What springs when it is let go is counted as the growth of the work under the sleeve and the lobes between its "
            "strips.",
        ),
    )


def _grip(on: _On) -> Grip:
    part, along = on.part, np.asarray(on.frictions[0] * on.normal)
    runout = part.fact("expanding_runout", Stream.CENTERING)
    return Grip(
        torque=on.torque,
        thrust_in=along,
        thrust_out=along,
        tilt=np.asarray(on.normal * on.covered / 12),
        runout=runout,
        strength=np.asarray(part.strength / np.maximum(on.ring.stress(on.normal), 1.0)),
        springs=on.ring.springs(on.normal),
        stiffness=bar_stiffness(part, on.sleeve.cone, on.span),
        half_warm=on.ring.half_warm(on.normal),
        brittle=part.brittle,
    )


def _needs(part: Part) -> tuple[Need, ...]:
    job, tables = part.job, part.tables
    return (
        needed(job, tables, TOOL, part.bore),
        needed(job, tables, "dog"),
        needed(job, tables, "tail-center"),
    )


def _seat(on: _On) -> Check:
    part, show = on.part, on.part.show
    cover = on.covered / part.length
    margin = min(cover / COVER, part.length / (LEAST * part.bore))
    return Check(
        margin,
        margin,
        f"A usual sleeve for it is about {show.length(on.sleeve.length)} long and fills {cover:.0%} of the bore; the work is "
        f"{part.length / part.bore:.2g} of its bore long.",
        "Nothing needs to."
        if margin >= 1
        else "A longer sleeve, or a way that clamps it against a face.",
        ("ours",),
    )


def _fit(on: _On) -> Check:
    part, margin, show = on.part, on.sleeve.stress_margin, on.part.show
    best, low = likely(margin), low_end(margin)
    covers = on.sleeve.usual.covers
    opened = likely(on.sleeve.opening)
    return Check(
        best,
        low,
        f"One mandrel covers about {show.depth(covers.best)} of bore at this size, {show.depth(covers.low)} at least; opened by "
        f"{show.depth(opened)} its steel stands {best:.2g} times the bending, {low:.2g} in the poor case (1 in 20).",
        "Nothing needs to."
        if best >= 1 and part.job.shelf.holding
        else "A sleeve that is nearly the bore before it is opened.",
        covers.sources,
    )


def _effort(on: _On) -> Check:
    show, light = (
        on.part.show,
        on.meant < on.part.tables.holding_fact("push_per_bore").best * on.part.bore,
    )
    why = ", no more, because the work would spring or stretch" if light else ""
    return Check(
        2.0,
        1.4,
        f"A hand press or a few taps of a soft hammer: about {show.force(on.meant)}{why}; that presses the bore with "
        f"{show.force(likely(on.normal))} all round.",
        "Pushing by a press that can be felt, not by a hammer.",
        ("ours",),
    )


def _figures(on: _On) -> tuple[Figure, ...]:
    s, frictions = on.sleeve, on.frictions
    normal = (
        Input("push", on.meant, "N"),
        Input("opens the sleeve", likely(s.opens_at), "N"),
        Input("friction on the cone", likely(frictions[1]), ""),
        Input("cone", s.taper, ""),
    )
    ring = (
        Input("normal force", likely(on.normal), "N"),
        Input("bore", on.part.bore, "m", "bore"),
        Input("length pressed", on.covered, "m"),
    )
    return (
        drawn_figure(
            "sleeve_normal", on.normal, "N", "force", "sleeve_normal", normal, "ours-derived"
        ),
        drawn_figure(
            "bore_pressure",
            on.ring.pressure(on.normal),
            "Pa",
            "pressure",
            "bore_pressure",
            ring,
            "ours-derived",
        ),
        drawn_figure(
            "work_growth", on.ring.growth(on.normal), "m", "small", "", (), "handbook-memory"
        ),
        drawn_figure("work_lobes", on.ring.lobes(on.normal), "m", "small", "", (), "ours-derived"),
        drawn_figure("sleeve_stress_margin", s.stress_margin, "", "", "", (), "ours"),
    )


def _mount(on: _On) -> tuple[Step, ...]:
    show, s = on.part.show, on.sleeve
    travel = float(travel_to_touch(on.part.bore, on.part.bore - likely(s.opening), s.taper))
    return (
        line(
            "Choose and clean",
            "The sleeve that just goes into the bore, opened as little as may be. Cone, sleeve and bore wiped; no burr on the "
            "slots; a film of oil on the cone.",
        ),
        line(
            "Push it home",
            f"Work on the sleeve, midway; the sleeve moves about {show.rule(travel)} along the cone to fill the bore. Then press "
            f"or tap with about {show.force(on.meant)}: thin work springs before it slips, so no harder.",
            _figures(on)[:2],
            ("indicator on the rim, whole",),
        ),
        line(
            "Between centers",
            "The dog on the flat: only one end has it, so the mandrel always goes the same way round and does not flip. Centers "
            "oiled. Finishing and grinding cuts, towards the large end of the cone.",
        ),
    )


def _release(on: _On) -> tuple[Step, ...]:
    return (
        line(
            "Off again",
            "Tap the cone back from its small end with a soft hammer or the press; the sleeve closes and the work slides off. "
            "Hang the sleeve up: a dropped one runs out for ever.",
            (),
            ("outside when off", "out of round"),
        ),
    )


def _picture(on: _On) -> HeldPicture:
    part, s = on.part, on.sleeve
    span, start = on.span, (on.span - s.length) / 2
    lean = s.taper * s.length / 4
    core = s.cone / 2
    rings = (
        HeldRing(Role.MANDREL, 0.0, start, 0.7 * core),
        HeldRing(Role.MANDREL, start, start + s.length, core + lean, 0.0, core - lean),
        HeldRing(Role.MANDREL, start + s.length, span, 0.7 * core),
        HeldRing(
            Role.SLEEVE, start, start + s.length, part.bore / 2, core + lean, None, core - lean
        ),
    )
    notes = (HeldNote(Role.SLEEVE, "slit sleeve on a cone"), HeldNote(Role.DOG, "dog on the flat"))
    return centers_picture(part, "A", span, rings, notes, 0.7 * core)
