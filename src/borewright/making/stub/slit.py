"""The expanding stub: a spigot bored, slit from its free end and opened by a plug on a screw.

The bore of the spigot is straight, its wall a share of the work's bore. At the mouth it widens to a
cone that the plug fits: half of the wall at most is taken by it. The plug comes first (`plug`), and
the mouth is bored at the same setting of the top slide until the plug stands out as drawn. Slits run from the free end; the
whole ring behind them locates the work, so only the outer end opens. Fingers bend as cantilevers
from the drilled ends of the slits to the middle of the plug's bearing (`mechanics.sleeve_fingers`).
"""

from __future__ import annotations

from dataclasses import dataclass

from borewright.errors import OutsideModel
from borewright.making.cannot import Cannot
from borewright.making.facts import best_of
from borewright.making.shop_sizes import down_to_shop, to_rule, up_to_rule, up_to_shop
from borewright.making.stub.asked import Plug, StubAsked
from borewright.making.stub.plug import Cone, mouth_of, plug_of
from borewright.making.stub.sizes import BAR, StubSizes, drilled_for
from borewright.mechanics.expanding_sleeve import expansion, holds_itself
from borewright.mechanics.fine_angle import angle_of_taper, indicator_over, taper_of_angle
from borewright.mechanics.sleeve_fingers import Fingers, finger_stress, largest_opening
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, MetrePerMetre, Pascal, Radian
from borewright.reference.library import Tables
from borewright.reference.screws import Screw

SLACK: Metre = 2e-5
"""A hole this little under a shop size is bored to it: the wall does not feel it."""

TOUCH: Metre = 1e-9
"""A length so little short of the least is the least."""


@dataclass(frozen=True, slots=True)
class Slit:
    """The inside of an expanding stub and its plug. Lengths in m, sizes are diameters.

    `opens` is needed, from where the plug is snug, to hold the largest bore; `nipped` of it is there
    already when the spigot is finished. `opens_most` is what the roots of the fingers bear, or what
    the plug's room to travel gives. `puller`: the next larger screw, that draws a plug which holds
    itself. `washer_outside` carries the screw's head over its hole. `screw_length` is under the
    head, as it is sold; `drill_depth` behind the slits, to the drill's point, `point` its cone.
    """

    plug: Plug
    number: int
    width: Metre
    length: Metre
    end_hole: Metre
    wall: Metre
    hole: Metre
    mouth: Metre
    cone_length: Metre
    taper: MetrePerMetre
    slide_angle: Radian
    plug_small: Metre
    plug_large: Metre
    plug_length: Metre
    stands_out: Metre
    screw: Screw
    plug_hole: Metre
    puller: Screw | None
    screw_length: Metre
    thread_depth: Metre
    drill_depth: Metre
    point: Metre
    washer_outside: Metre
    washer_thick: Metre
    relief: Metre
    free: Metre
    nipped: Metre
    opens: Metre
    opens_most: Metre
    stress: Pascal
    bears: Pascal
    taper_source: str

    @property
    def travel(self) -> Metre:
        """How far the plug is drawn in to hold the largest bore, from where it is snug."""
        return self.opens / self.taper

    @property
    def travel_most(self) -> Metre:
        return self.opens_most / self.taper

    @property
    def per_turn(self) -> Metre:
        """Opening on diameter for one turn of the screw."""
        return float(expansion(self.screw.pitch, self.taper))

    def indicator(self, travel: Metre) -> Metre:
        """What an indicator square to the lathe's axis moves (m) over a travel of the top slide."""
        return float(indicator_over(self.taper, travel))

    @property
    def turns_needed(self) -> float:
        """Turns of the screw from snug to what the largest bore needs."""
        return self.opens / self.per_turn

    @property
    def turns_most(self) -> float:
        """Turns of the screw from snug to the most that is allowed."""
        return self.opens_most / self.per_turn


def slit_of(asked: StubAsked, stub: StubSizes, tables: Tables) -> Slit | Cannot:
    """Slits, plug and opening of a stub; `Cannot` where its fingers would not bear it."""
    own, show, units = best_of(tables, "stub_facts"), Show(asked.units), asked.units
    bore, plug = stub.spigot, asked.plug or "taper"
    thinnest = max(own("finger_wall_share") * bore, own("finger_wall_least"))
    hole = down_to_shop(bore - 2 * thinnest + SLACK, units)
    wall = (bore - hole) / 2
    screw = _screw(hole, asked, tables)
    if screw is None:
        return Cannot(
            f"A bore of {show.bore(asked.bore)} leaves no room for fingers, a plug and its screw.",
            "Turn a plain stub, or a soft mandrel.",
        )
    cone = _cone(plug, asked, tables)
    if isinstance(cone, Cannot):
        return cone
    taper, source = cone
    length = down_to_shop(own("slit_share") * stub.spigot_length, units)
    # The cone may thin the lip of the mouth to half of the wall, no further.
    deepest = min(own("plug_share") * stub.spigot_length, wall / taper)
    nip = tables.ranged("stub_facts", "nip")
    opens = nip.low + max(0.0, asked.bore_high - stub.spigot_low) + nip.best
    mouth = mouth_of(Cone(taper, hole, deepest), opens, asked, tables)
    if isinstance(mouth, Cannot):
        return mouth
    cone_length = mouth.deep
    fingers = _fingers(asked, bore, hole, length - cone_length / 2, tables)
    if isinstance(fingers, Cannot):
        return fingers
    bears = _bears(tables)
    modulus = tables.material_range(BAR, "modulus").best
    borne = float(largest_opening(fingers, bears, modulus))
    if opens > borne:
        return Cannot(
            f"To hold the largest bore it must open {show.small(opens)}, and its fingers, "
            f"{show.length(fingers.length)} long, bear {show.small(borne)} before their roots yield.",
            "Turn a plain stub, split the batch by size, or leave the fingers longer on longer work.",
        )
    form = plug_of(mouth, taper, borne, asked, tables)
    if form.length - mouth.stands < own("plug_bears_least") - TOUCH:
        usual = plug == "cone" and not isinstance(_cone("taper", asked, tables), Cannot)
        return Cannot(
            f"The plug would bear in its mouth on {show.depth(form.length - mouth.stands)} of length, less than "
            f"{show.depth(own('plug_bears_least'))}: it tilts, and opens the fingers unevenly.",
            "The taper plug bears on more: ask with --plug taper."
            if usual
            else "Turn a plain stub, or a soft mandrel.",
        )
    puller = _puller(screw, asked, tables) if _sticks(taper, tables) else None
    thick = up_to_rule(tables.holding_fact("washer_thick_share").best * screw.diameter, units)
    before = thick + mouth.stands + length
    thread = tables.holding_fact("screw_engagement").best * screw.diameter
    screw_length = tables.screw_length_over(units, before + thread)
    if screw_length is None:
        return Cannot(
            f"No screw is sold that is {show.length(before + thread)} long under its head.",
            "Turn a plain stub, or a soft mandrel.",
        )
    # The screw goes in with the plug: the thread is deeper by all that it travels.
    depth = up_to_shop(screw_length - before + form.opens_most / taper + screw.pitch, units)
    return Slit(
        plug=plug,
        number=fingers.number,
        width=fingers.slot,
        length=length,
        end_hole=to_rule(own("slit_end_hole") * fingers.slot, units),
        wall=wall,
        hole=hole,
        mouth=mouth.size,
        cone_length=cone_length,
        taper=taper,
        slide_angle=float(angle_of_taper(taper)),
        plug_small=form.small,
        plug_large=mouth.large,
        plug_length=form.length,
        stands_out=mouth.stands,
        screw=screw,
        plug_hole=puller.tap_drill_size if puller else screw.clearance,
        puller=puller,
        screw_length=screw_length,
        thread_depth=depth,
        drill_depth=drilled_for(depth, screw, units, tables),
        point=own("drill_point") * screw.tap_drill_size,
        washer_outside=down_to_shop(
            ((puller.diameter if puller else screw.clearance) + mouth.large) / 2, units
        ),
        washer_thick=thick,
        relief=form.relief,
        free=fingers.length,
        nipped=nip.low,
        opens=opens,
        opens_most=form.opens_most,
        stress=float(finger_stress(fingers, opens, modulus)),
        bears=bears,
        taper_source=source,
    )


def no_control(slit: Slit, tables: Tables) -> bool:
    """Whether the plug is so steep that a hand cannot set it by its screw."""
    own = best_of(tables, "stub_facts")
    return slit.turns_needed < own("least_needed") or slit.turns_most < own("least_turn")


def _screw(hole: Metre, asked: StubAsked, tables: Tables) -> Screw | None:
    share = tables.ranged("stub_facts", "plug_screw_share").best
    return tables.screw_within(asked.units, share * hole)


def _puller(screw: Screw, asked: StubAsked, tables: Tables) -> Screw | None:
    """The next screw whose tapped hole lets this one through."""
    larger = (s for s in tables.screws(asked.units) if s.diameter > screw.diameter)
    return next((s for s in larger if s.tap_drill_size >= screw.clearance), None)


def _cone(plug: Plug, asked: StubAsked, tables: Tables) -> tuple[MetrePerMetre, str] | Cannot:
    """Taper of the plug on diameter, and its source."""
    if plug == "cone":
        head = tables.ranged("stub_facts", "cone_head")
        return float(taper_of_angle(head.best / 2)), head.source
    try:
        usual = tables.expanding(asked.bore)
    except OutsideModel:
        show = Show(asked.units)
        return Cannot(
            f"No taper plug is listed for a bore of {show.bore(asked.bore)}.",
            "Turn a plain stub, or a soft mandrel.",
        )
    return usual.pin_taper, usual.pin_taper_source


def _fingers(
    asked: StubAsked, bore: Metre, hole: Metre, free: Metre, tables: Tables
) -> Fingers | Cannot:
    own = best_of(tables, "stub_facts")
    many = bore >= own("slits_many_from")
    number = int(own("slits_many" if many else "slits_few"))
    least = own("slit_end_hole") * own("slit_width")
    if free < least:
        return Cannot(
            f"Work {Show(asked.units).length(asked.length)} long leaves no length for fingers.",
            "Turn a plain stub with a screw and washer.",
        )
    return Fingers(bore, hole, number, own("slit_width"), free)


def _bears(tables: Tables) -> Pascal:
    """Bending (Pa) allowed at the root of a finger: a share of the least yield of bar."""
    yields = tables.material_range(BAR, "yield").low
    return yields / tables.ranged("stub_facts", "finger_reserve").best


def _sticks(taper: MetrePerMetre, tables: Tables) -> bool:
    return bool(holds_itself(tables.holding_fact("cone_friction").best, taper))
