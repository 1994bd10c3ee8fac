"""Work stuck to a plate or on a stub: nothing squeezes it, so nothing springs.

On a plate: the face, super glue or wax, a low step turned to the bore to find the middle. On a
stub: the bore, retaining compound in the gap. A bond carries shear well and peel badly, so light
cuts and no knocks; heat lets it go.
"""

from __future__ import annotations

import numpy as np

from borewright.answer.held import Check, Grip, Held, Joint, line
from borewright.answer.records import Draws, Figure, Input, Need, Step
from borewright.answer.streams import Stream
from borewright.holding.bars.stub import Stub
from borewright.holding.bonding.bond_picture import PLATE, STEP_HIGH, gap_picture, plate_picture
from borewright.holding.bonding.bonds import (
    NOTHING_STICKS,
    RETAINING,
    SUPER_GLUE,
    WAX,
    Bond,
    peel,
    release_check,
    trusted,
    warm_words,
)
from borewright.holding.figured import Throws, drawn_figure, thrown
from borewright.holding.no_middle import no_middle
from borewright.holding.owned import made, needed
from borewright.holding.part import Part, endless, none_at_all
from borewright.job.records import Job
from borewright.mechanics.beam import Bar, round_step
from borewright.mechanics.bonded_joint import (
    face_area,
    face_torque,
    gap_axial,
    gap_torque,
    mismatch_strain,
)
from borewright.mechanics.overhang import Root, stub_stiffness
from borewright.mechanics.spread import likely
from borewright.quantities.si import Metre, NewtonPerMetre
from borewright.reference.library import Tables

FACEPLATE_FROM = 0.15
"""Work this wide (m) is bonded to a plate on the faceplate, not in the chuck (ours)."""

LEAST_FACE = 1e-3
"""Narrowest ring of face (m) that is worth sticking (ours)."""


class Bonded:
    """Way of holding: stuck to a plate by its face, or on a stub by its bore."""

    id = "bonded"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """By the face with super glue, with wax; by the bore with retaining compound."""
        part = Part(job, tables)
        reason = _cannot(part)
        if reason:
            return (Held(self.id, cannot=reason),)
        found = [_on_plate(part, bond) for bond in (SUPER_GLUE, WAX) if _face_is_there(part)]
        stub = Stub(part, _leading(part))
        if part.bore <= tables.holding_fact("stub_largest").best:
            found.append(_on_stub(stub))
        return tuple(found) or (Held(self.id, cannot="There is no face wide enough to stick."),)


def _cannot(part: Part) -> str:
    if part.tables.material(part.work.material).family in NOTHING_STICKS:
        return "Nothing that lets go again sticks to this material."
    return no_middle(part, "a step or stub")


def _leading(part: Part) -> str:
    return max("BA", key=lambda face: part.ring_at(face).outside)


def _face(part: Part) -> tuple[Metre, Metre]:
    """Inside and outside of the ring that is stuck (m)."""
    leg = part.work.chamfers.legs[0 if _leading(part) == "A" else 1]
    return part.bore + 2 * leg, part.clear_of_tool(_leading(part))


def _face_is_there(part: Part) -> bool:
    inner, outer = _face(part)
    return (outer - inner) / 2 >= LEAST_FACE


# Its face on a plate


def _on_plate(part: Part, bond: Bond) -> Held:
    show, size = part.show, part.show.bore(part.bore)
    inner, outer = _face(part)
    return Held(
        way=Bonded.id,
        tool=f"{bond.called} on a plate faced in place",
        do_it=f"stick it by its face with {bond.called} to a plate faced in place, a low step on it turned to {size} to find the "
        "bore; light cuts",
        leading=_leading(part),
        grip=_plate_grip(part, bond),
        needs=_plate_needs(part, bond),
        seat=Check(
            2.0,
            2.0,
            f"The face, {show.length(inner)} to {show.length(outer)} across, lies on a plate faced in place, and a step "
            "finds the bore.",
        ),
        fit=trusted(part),
        effort=release_check(part, bond),
        room=(part.outside, 0.0),
        more_grip="a wider face, roughened and cleaner; straps over it",
        truer="Facing plate and step in one setting; a thin even bond; clocking it before it sets.",
        spares="Nothing needs to: a bond squeezes nothing.",
        marks="None; a film that acetone, spirit or heat takes off.",
        mount=_plate_mount(part, bond),
        release=_release(part, bond),
        ready=(f"{bond.called}, acetone, rag, indicator, gloves",),
        caution_tags=("chuck", "bonded", bond.key),
        picture=plate_picture(part, _leading(part), _face(part), bond.called),
        figures=_plate_figures(part, bond),
        sources=("adhesive-memory", "ours-derived"),
        notes=(
            "Counted as a stiff bond that gives first at its outer edge; a knock or a facing cut that digs in peels it. A ring that "
            "is bent when it is stuck is bent again when it lets go.",
            *_grows_apart(part, bond),
        ),
    )


def _plate_grip(part: Part, bond: Bond) -> Grip:
    inner, outer = _face(part)
    shear = bond.shear(part)
    pulled = peel(part, shear)
    section = np.pi * (outer**4 - inner**4) / (32 * outer)
    turned = part.fact("stub_runout", Stream.CENTERING)
    clearance = part.fact_with_zero("stub_clearance", Stream.SETTING)
    throws: Throws = (("register as turned", turned), ("clearance", clearance))
    return Grip(
        torque=np.asarray(face_torque(shear, inner, outer)),
        thrust_in=endless(),
        thrust_out=np.asarray(pulled * face_area(inner, outer)),
        tilt=np.asarray(pulled * section),
        runout=thrown(throws),
        strength=endless(),
        springs=none_at_all(),
        stiffness=_plate_stiffness(part),
        half_warm=bond.half_warm(part),
        joint=Joint.CLAMP,
        brittle=part.brittle,
        throws=throws,
    )


def _grows_apart(part: Part, bond: Bond) -> tuple[str, ...]:
    """A warning where work and a steel plate that warm together tear the film between them."""
    warm = likely(bond.half_warm(part))
    steel = part.tables.material_range("steel-1018", "expansion").best
    metals = part.range("expansion").best, steel
    film = part.tables.holding_fact("bond_film").best
    strain = float(mismatch_strain(metals, warm, _face(part)[1] / 2, film))
    if strain < part.tables.holding_fact("bond_strain").best:
        return ()
    return (
        f"Work and a steel plate that both run {part.show.temperature_difference(warm)} warm slide {strain:.0%} of the film past each "
        "other at its edge: a plate of the work's own metal does not.",
    )


def _plate_stiffness(part: Part) -> NewtonPerMetre:
    """At the farther face: the work as a tube standing on its plate, the spindle under it."""
    fact = part.tables.holding_fact
    narrow = min(p.outside for p in part.work.pieces if p.inside is None)
    modulus = likely(np.atleast_1d(part.elastic.modulus))
    bend, slide = round_step(narrow, modulus, float(part.elastic.poisson), part.bore)
    plate = PLATE[part.job.units]
    edges = np.array([0.0, plate, plate + part.length])
    # The plate does not bend beside the tube on it.
    bar = Bar(edges, np.array([np.inf, bend]), np.array([np.inf, slide]))
    root = Root(fact("stub_root_turn").best, fact("stub_root_give").best)
    return stub_stiffness(bar, plate + part.length, root)


def _plate_needs(part: Part, bond: Bond) -> tuple[Need, ...]:
    job, tables = part.job, part.tables
    holder = "faceplate" if part.outside > FACEPLATE_FROM else "three-jaw-chuck"
    minutes = tables.holding_fact("plate_facing").best
    return (
        needed(job, tables, bond.tool),
        needed(job, tables, holder),
        needed(job, tables, "plate"),
        made("the plate faced, with a low step turned to the bore", minutes),
    )


def _plate_mount(part: Part, bond: Bond) -> tuple[Step, ...]:
    show = part.show
    inner, outer = _face(part)
    high = max(min(STEP_HIGH * part.length, 3e-3), 0.5e-3)
    return (
        line(
            "Face the plate",
            f"In place: face it flat past {show.length(outer)}, and leave a step {show.length(high)} high, turned until the bore "
            f"just slides on, about {show.bore(part.bore)}; undercut its corner.",
            (),
            ("step",),
        ),
        line(
            "Stick it",
            f"{bond.thick} On the ring {show.length(inner)} to {show.length(outer)} only: keep it off the outside and the slides. "
            "A try-piece of the same metal shows whether it holds.",
            _plate_figures(part, bond),
            ("rim runs out",),
        ),
    )


def _plate_figures(part: Part, bond: Bond) -> tuple[Figure, ...]:
    inner, outer = _face(part)
    shear = bond.shear(part)
    inputs = (
        Input("shear", likely(shear), "Pa"),
        Input("ring, outside", outer, "m"),
        Input("ring, inside", inner, "m"),
    )
    torque = np.asarray(face_torque(shear, inner, outer))
    return (
        drawn_figure("bond_shear", shear, "Pa", "pressure", "", (), "adhesive-memory"),
        drawn_figure(
            "bond_torque", torque, "N·m", "torque", "bond_face_torque", inputs, "ours-derived"
        ),
    )


# Its bore on a stub


def _on_stub(stub: Stub) -> Held:
    part, show = stub.part, stub.part.show
    gap = likely(_gap(part))
    size = show.bore(part.bore - gap)
    return Held(
        way=Bonded.id,
        tool=f"{RETAINING.called} on a stub turned to {size}",
        do_it=f"stick it with {RETAINING.called} on a shouldered stub turned {show.small(gap)} under its bore, to {size}",
        leading=stub.leading,
        grip=_gap_grip(stub),
        needs=_gap_needs(part),
        seat=stub.overhang_check(),
        fit=Check(
            2.0,
            2.0,
            f"A gap of {show.small(gap)} on diameter fills whatever the bore is by some hundredths.",
        ),
        effort=release_check(part, RETAINING),
        room=(part.outside, 0.0),
        more_grip="a longer bore, cleaner and a little rough; a screw and washer",
        truer="A narrow band at the shoulder turned to the bore, so that the gap cannot throw it over.",
        spares="Nothing needs to: a bond squeezes nothing.",
        marks="None; a film that scrapes off.",
        mount=_gap_mount(stub, gap),
        release=_release(part, RETAINING),
        ready=(f"{RETAINING.called}, acetone, rag, indicator, gloves",),
        caution_tags=("chuck", "bonded", RETAINING.key),
        picture=gap_picture(stub, gap),
        figures=_gap_figures(part),
        sources=("adhesive-memory", "ours-derived"),
        notes=("Shear is taken as even along the bore; stiff bonds give first at the ends.",),
    )


def _gap(part: Part) -> Draws:
    return part.fact("bond_gap", Stream.SETTING)


def _gap_grip(stub: Stub) -> Grip:
    part, d, length = stub.part, stub.part.bore, stub.part.length
    shear = RETAINING.shear(part)
    along = np.asarray(gap_axial(shear, d, length))
    return Grip(
        torque=np.asarray(gap_torque(shear, d, length)),
        thrust_in=endless(),
        thrust_out=along,
        # Shear along the bore that varies as the cosine round it, at most the strength.
        tilt=np.asarray(shear * np.pi * d**2 * length / 4),
        runout=part.fact("bond_gap_runout", Stream.CENTERING),
        strength=endless(),
        springs=none_at_all(),
        stiffness=stub.stiffness(),
        half_warm=RETAINING.half_warm(part),
        brittle=part.brittle,
    )


def _gap_needs(part: Part) -> tuple[Need, ...]:
    job, tables = part.job, part.tables
    return (
        needed(job, tables, RETAINING.tool),
        needed(job, tables, "three-jaw-chuck"),
        needed(job, tables, "bar-stock"),
        made("the stub for each piece's gap", tables.holding_fact("plate_facing").best),
    )


def _gap_mount(stub: Stub, gap: Metre) -> tuple[Step, ...]:
    show, part = stub.part.show, stub.part
    return (
        line(
            "Turn the stub",
            f"Bar in the chuck, out by {show.length(stub.overhang)} and a little: shoulder {show.length(stub.shoulder)}, a narrow "
            f"band beside it just sliding in the bore, the rest {show.bore(part.bore - gap)}, left as the tool leaves it.",
            (),
            ("stub",),
        ),
        line("Stick it", RETAINING.thick, _gap_figures(part), ("rim runs out",)),
    )


def _gap_figures(part: Part) -> tuple[Figure, ...]:
    shear = RETAINING.shear(part)
    inputs = (
        Input("shear", likely(shear), "Pa"),
        Input("bore", part.bore, "m", "bore"),
        Input("length", part.length, "m"),
    )
    torque = np.asarray(gap_torque(shear, part.bore, part.length))
    return (
        drawn_figure(
            "bond_torque", torque, "N·m", "torque", "bond_gap_torque", inputs, "ours-derived"
        ),
    )


def _release(part: Part, bond: Bond) -> tuple[Step, ...]:
    return (
        line(
            "Let it go",
            f"{warm_words(part, bond)} Clean both at once; wipe the plate or stub before the next piece.",
            (),
            ("bore when off",),
        ),
    )
