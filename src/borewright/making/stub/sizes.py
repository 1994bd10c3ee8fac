"""The sizes of a stub from its bore: spigot, shoulder, groove, screw, washer, bar.

Every proportion is a row of the tables that the plan's own stub reads, so that both say the same.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from borewright.making.cannot import Cannot
from borewright.making.facts import best_of
from borewright.making.shop_sizes import down_to_shop, to_dial, to_rule, up_to_rule, up_to_shop
from borewright.making.stub.asked import StubAsked
from borewright.mechanics.beam import Bar, round_step
from borewright.mechanics.overhang import Root, stub_stiffness
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, NewtonPerMetre
from borewright.reference.library import Tables
from borewright.reference.screws import Screw

BAR = "steel-1018"
"""Bar stock of the shop: its stiffness counts, whatever bar it is."""
BORE_ALONE = "A soft mandrel turned to the bore between centers carries it by the bore alone."
"""What is left where neither shoulder nor washer has a face."""


@dataclass(frozen=True, slots=True)
class Clamp:
    """The screw in the end of a plain stub, its hole, and the washer. Lengths in m.

    `length` of the screw under its head, as it is sold; the thread is made to suit it. `drill_depth`
    is that of the drill's point, `point` that of its cone. `shank_least` and `shank_most`: between
    them a screw holds its thread and does not reach threads that the tap left half cut.
    """

    screw: Screw
    length: Metre
    thread_depth: Metre
    drill_depth: Metre
    point: Metre
    washer_outside: Metre
    washer_thick: Metre
    shank_least: Metre
    shank_most: Metre


@dataclass(frozen=True, slots=True)
class StubSizes:
    """All lengths in m; `spigot` is aimed at, `spigot_low` and `_high` are the drawing's limits.

    `overhang` is from the jaws' side of the shoulder to the far face of the work, as the plan
    counts it. `shake`: how far the largest bore of a batch is over the smallest stub.
    """

    spigot: Metre
    spigot_low: Metre
    spigot_high: Metre
    spigot_length: Metre
    rough: Metre
    chamfer: Metre
    shoulder: Metre
    before_work: Metre
    groove_width: Metre
    groove_depth: Metre
    stock: Metre
    grip: Metre
    stick_out: Metre
    overhang: Metre
    overhang_ratio: float
    overhang_most: float
    overhang_center: float
    stiffness: NewtonPerMetre
    shake: Metre
    clamp: Clamp | None

    @property
    def bar_length(self) -> Metre:
        """From the end in the chuck to the free end."""
        return self.grip + self.stick_out

    @property
    def from_jaws(self) -> Metre:
        """Bar between the jaws and the back of the shoulder."""
        return self.stick_out - self.before_work - self.spigot_length


def stub_sizes(asked: StubAsked, tables: Tables) -> StubSizes | Cannot:
    """The stub for a bore; `Cannot` where the work or the bore allows none."""
    fact, own, units = tables.holding_fact, best_of(tables, "stub_facts"), asked.units
    clamp = _clamp(asked, tables) if asked.plug is None else None
    if isinstance(clamp, Cannot):
        return clamp
    no = _cannot(asked, tables)
    if no is not None:
        return no
    clearance = fact("stub_clearance")
    length = (1 - fact("stub_shorter").best) * asked.length
    before = fact(f"stub_before_{asked.units}").best
    overhang = before + asked.length
    shoulder = shoulder_of(asked, asked.shoulder_room, tables)
    over = tables.making_fact("bar_over").best
    stock = tables.bar_for(shoulder + over, units).diameter
    return StubSizes(
        spigot=asked.bore - clearance.best,
        spigot_low=asked.bore - clearance.high,
        spigot_high=asked.bore - clearance.low,
        spigot_length=length,
        rough=to_dial(asked.bore + fact("stub_rough_over").best, units),
        chamfer=min(own("end_chamfer"), length / 4),
        shoulder=shoulder,
        before_work=before,
        groove_width=to_rule(fact("undercut_width").best, units),
        groove_depth=to_rule(fact("undercut_depth").best, units),
        stock=stock,
        grip=grip_of(stock, units, tables),
        stick_out=up_to_shop(own("out_over") + before + length, units),
        overhang=overhang,
        overhang_ratio=overhang / asked.bore,
        overhang_most=fact("chuck_overhang_share").best,
        overhang_center=fact("stub_center_share").best,
        stiffness=_stiffness(asked.bore, overhang, tables),
        shake=asked.bore_high - (asked.bore - clearance.high) if asked.batch else clearance.high,
        clamp=clamp,
    )


def grip_of(stock: Metre, units: Literal["inch", "mm"], tables: Tables) -> Metre:
    """How much of a bar (m) the jaws hold: about its diameter."""
    own, least = best_of(tables, "stub_facts"), tables.holding_fact("bar_grip_least").best
    return up_to_shop(min(max(own("grip_share") * stock, least), own("grip_most")), units)


def shoulder_of(asked: StubAsked, room: Metre, tables: Tables) -> Metre:
    """Outside of shoulder or washer (m), to what a shop turns, where there is `room`."""
    wide = min(tables.holding_fact("stub_wider").best * asked.bore, room)
    shop = down_to_shop(wide, asked.units)
    return shop if shop >= least_face(asked, tables) else wide


def least_face(asked: StubAsked, tables: Tables) -> Metre:
    """Outside (m) of the narrowest ring on which shoulder or washer bears."""
    return asked.face_inside + 2 * tables.holding_fact("stub_face_least").best


def _cannot(asked: StubAsked, tables: Tables) -> Cannot | None:
    show, fact = Show(asked.units), tables.holding_fact
    largest, shortest = fact("stub_largest").best, fact("stub_shortest").best
    if asked.bore > largest:
        return Cannot(
            f"A bore of {show.bore(asked.bore)} is over {show.length(largest)}, the largest that a stub "
            "is turned for from bar.",
            "A plate on the faceplate with a low spigot turned on it does the same with less metal.",
        )
    if asked.length < shortest:
        return Cannot(
            f"Work {show.length(asked.length)} long is too thin to sit on a stub and still stand out "
            "past its end.",
            "Bond it to a faced plate, or clamp a pack of them.",
        )
    if shoulder_of(asked, asked.shoulder_room, tables) < least_face(asked, tables):
        return Cannot(
            _too_narrow("shoulder", asked.shoulder_room, asked, tables),
            BORE_ALONE,
        )
    if (fact(f"stub_before_{asked.units}").best + asked.length) > (
        fact("stub_center_share").best * asked.bore
    ):
        return Cannot(
            f"Work {show.length(asked.length)} long on a bore of {show.bore(asked.bore)} stands out more "
            f"than {fact('stub_center_share').best:g} diameters, too far even with a center at its end.",
            "A soft mandrel between centers does it.",
        )
    return None


def _too_narrow(what: str, room: Metre, asked: StubAsked, tables: Tables) -> str:
    """Why there is no face for shoulder or washer, and what would be one."""
    show, least = Show(asked.units), tables.holding_fact("stub_face_least").best
    bears = max(shoulder_of(asked, room, tables) - asked.face_inside, 0.0) / 2
    return (
        f"The {what} would bear on a ring {show.length(bears)} wide; it asks for {show.length(least)}, a face of "
        f"{show.length(least_face(asked, tables))} across that the tool leaves alone."
    )


def _clamp(asked: StubAsked, tables: Tables) -> Clamp | Cannot:
    show, fact, own = Show(asked.units), tables.holding_fact, best_of(tables, "stub_facts")
    most = fact("stub_thread_share").best * asked.bore
    screw = tables.screw_within(
        asked.units, min(most, fact(f"stub_thread_most_{asked.units}").best)
    )
    if screw is None:
        least = tables.screws(asked.units)[0]
        return Cannot(
            f"A stub for a bore of {show.bore(asked.bore)} has no room for a screw: {least.id} asks for "
            f"{show.length(least.diameter / fact('stub_thread_share').best)}.",
            "Turn a plain stub and bond the work with retaining compound, or turn a soft mandrel.",
        )
    outside = shoulder_of(asked, asked.washer_room, tables)
    if outside < least_face(asked, tables):
        return Cannot(
            _too_narrow("washer", asked.washer_room, asked, tables),
            "An expanding stub holds by the bore: ask again with --expanding."
            if shoulder_of(asked, asked.shoulder_room, tables) >= least_face(asked, tables)
            else BORE_ALONE,
        )
    thread = fact("screw_engagement").best * screw.diameter
    thick = up_to_rule(
        max(
            fact("washer_thick_share").best * screw.diameter,
            fact("stub_washer_share").best * asked.bore,
        ),
        asked.units,
    )
    past = fact("stub_shorter").best * asked.length
    shank = thick + past + thread
    length = tables.screw_length_over(asked.units, shank)
    if length is None:
        return Cannot(
            f"No screw is sold that is {show.length(shank)} long under its head.",
            "Hold the work in another way.",
        )
    depth = up_to_shop(length - thick - past + screw.pitch, asked.units)
    # The screw must hold its thread and yet not reach the threads that the tap left half cut.
    return Clamp(
        screw,
        length,
        thread_depth=depth,
        drill_depth=drilled_for(depth, screw, asked.units, tables),
        point=own("drill_point") * screw.tap_drill_size,
        washer_outside=outside,
        washer_thick=thick,
        shank_least=shank,
        shank_most=thick + past + depth - screw.pitch / 2,
    )


def drilled_for(depth: Metre, screw: Screw, units: Literal["inch", "mm"], tables: Tables) -> Metre:
    """How deep the point of the tap drill goes (m) for so much full thread."""
    own = best_of(tables, "stub_facts")
    lead, point = own("tap_lead") * screw.pitch, own("drill_point") * screw.tap_drill_size
    return up_to_shop(depth + lead + point, units)


def _stiffness(bore: Metre, reach: Metre, tables: Tables) -> NewtonPerMetre:
    """At the far face of the work, of the bare stub in its chuck."""
    fact, of = tables.holding_fact, tables.material_range
    bend, slide = round_step(bore, of(BAR, "modulus").best, of(BAR, "poisson").best)
    bar = Bar(np.array([0.0, reach]), np.array([bend]), np.array([slide]))
    root = Root(fact("stub_root_turn").best, fact("stub_root_give").best)
    return float(stub_stiffness(bar, reach, root))
