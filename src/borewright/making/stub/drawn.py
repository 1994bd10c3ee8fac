"""Stub, washer and plug as workshop drawings. The chuck is on the left."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.drawn_part import (
    Across,
    Along,
    DrawnPart,
    Hollow,
    Limits,
    Pointed,
    Slit,
    Stretch,
)
from borewright.making.fine_feed import TRAVEL
from borewright.making.shop_sizes import general_tolerance, to_tenth
from borewright.making.stub.asked import StubAsked
from borewright.making.stub.route import own
from borewright.making.stub.sizes import Clamp, StubSizes
from borewright.making.stub.slit import Slit as Slitted
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.screws import Screw

BAR = "mild steel bar"


def general(asked: StubAsked) -> str:
    """What is held where nothing else is said."""
    return general_tolerance(0.005, 0.1, asked.units)


@dataclass(frozen=True, slots=True)
class Head:
    """The head of a cap screw over its screw: across, and along."""

    across: float
    high: float


def stub_drawn(asked: StubAsked, stub: StubSizes, slit: Slitted | None, head: Head) -> DrawnPart:
    """The stub, slit and hollow where it expands; `head` is that of its screw, beside it."""
    back = stub.grip + stub.from_jaws
    face, end = back + stub.before_work, stub.bar_length
    low, high = (to_tenth(size, asked.units) for size in (stub.spigot_low, stub.spigot_high))
    spigot = Limits(high, low - high, 0.0, after="by trial")
    inside = _slit_hollows(slit, end) if slit else _screw_hole(stub, end)
    fixed = _slit_fixed(slit, end) if slit else _clamp_fixed(stub, face + asked.length)
    thread = slit.screw if slit else _screw(stub)
    threaded = end - (slit.length if slit else 0.0)
    depth = slit.thread_depth if slit else _clamp_of(stub).thread_depth
    return DrawnPart(
        title="Expanding stub" if slit else "Stub",
        material=BAR,
        stretches=(
            Stretch(0.0, back, stub.stock),
            Stretch(back, face, stub.shoulder),
            Stretch(face, face + stub.groove_width, stub.spigot - 2 * stub.groove_depth),
            Stretch(face + stub.groove_width, end - stub.chamfer, stub.spigot),
            Stretch(end - stub.chamfer, end, stub.spigot, stub.spigot - 2 * stub.chamfer),
        ),
        hollows=inside,
        slits=(Slit(end - slit.length, end, slit.width, slit.number, slit.end_hole),)
        if slit
        else (),
        across=(
            Across((face + end) / 2, spigot, name="spigot"),
            Across((back + face) / 2, Limits(stub.shoulder), "left", "shoulder"),
            Across(stub.grip / 2, Limits(stub.stock, reference=True), "left", "stock"),
            *(
                (Across(end - slit.length, Limits(slit.hole, after="bore"), "inside", "bore"),)
                if slit
                else ()
            ),
        ),
        along=(
            Along(face, end, Limits(stub.spigot_length), "spigot length"),
            Along(back, face, Limits(stub.before_work), "shoulder thickness"),
            *(
                (Along(end - slit.length, end, Limits(slit.length), "bore and slits"),)
                if slit
                else ()
            ),
            Along(0.0, end, Limits(stub.bar_length, reference=True), "whole"),
        ),
        pointed=(
            Pointed(
                threaded - depth / 2,
                thread.diameter / 2,
                _tapped(thread, depth, asked),
                "thread",
            ),
            Pointed(
                face + stub.groove_width / 2,
                stub.spigot / 2 - stub.groove_depth,
                _groove(stub, asked),
                "groove",
            ),
            *(_slit_pointed(slit, end, stub, asked) if slit else ()),
        ),
        notes=_notes(asked, stub, slit),
        general=general(asked),
        end_view="right" if slit else "",
        phantom=_screwed_on(fixed, head),
    )


def _clamp_fixed(stub: StubSizes, at: Metre) -> tuple[Metre, Metre, Metre, Screw]:
    assert stub.clamp is not None
    return at, stub.clamp.washer_thick, stub.clamp.washer_outside, stub.clamp.screw


def _slit_fixed(slit: Slitted, end: Metre) -> tuple[Metre, Metre, Metre, Screw]:
    return end + slit.stands_out, slit.washer_thick, slit.washer_outside, slit.screw


def _screwed_on(fixed: tuple[Metre, Metre, Metre, Screw], head: Head) -> tuple[Stretch, ...]:
    """Washer and head of the screw where they stand when the work is held."""
    at, thick, outside, screw = fixed
    behind = at + thick
    return (
        Stretch(at, behind, outside),
        Stretch(behind, behind + head.high * screw.diameter, head.across * screw.diameter),
    )


def _screw(stub: StubSizes) -> Screw:
    assert stub.clamp is not None
    return stub.clamp.screw


def _clamp_of(stub: StubSizes) -> Clamp:
    assert stub.clamp is not None
    return stub.clamp


def _screw_hole(stub: StubSizes, end: Metre) -> tuple[Hollow, ...]:
    clamp = stub.clamp
    assert clamp is not None
    return _tapped_hole(clamp.screw, end, (clamp.thread_depth, clamp.drill_depth, clamp.point))


def _tapped_hole(
    screw: Screw, mouth: Metre, depths: tuple[Metre, Metre, Metre]
) -> tuple[Hollow, ...]:
    """A hole from the right: thread, bare drilled hole, the cone that the drill leaves."""
    thread, drilled, point = depths
    size, tip = screw.tap_drill_size, mouth - drilled
    return (
        Hollow(tip, tip + point, 0.0, size),
        Hollow(tip + point, mouth - thread, size),
        Hollow(mouth - thread, mouth, size, thread=True),
    )


def _slit_hollows(slit: Slitted, end: Metre) -> tuple[Hollow, ...]:
    behind = end - slit.length
    return (
        *_tapped_hole(slit.screw, behind, (slit.thread_depth, slit.drill_depth, slit.point)),
        Hollow(behind, end - slit.cone_length, slit.hole),
        Hollow(end - slit.cone_length, end, slit.hole, slit.mouth),
    )


def _slit_pointed(
    slit: Slitted, end: Metre, stub: StubSizes, asked: StubAsked
) -> tuple[Pointed, ...]:
    show = Show(asked.units)
    return (
        Pointed(
            end - slit.length,
            stub.spigot / 2,
            f"{slit.number} slits, {slit.number} holes {own(show.length(slit.end_hole))}",
            "slits",
        ),
        Pointed(
            end, slit.mouth / 2, f"mouth {own(show.angle(slit.slide_angle))} to the plug", "mouth"
        ),
    )


def _tapped(screw: Screw, depth: Metre, asked: StubAsked) -> str:
    show = Show(asked.units)
    return f"{screw.id}, {own(show.length(depth))} deep"


def _groove(stub: StubSizes, asked: StubAsked) -> str:
    show = Show(asked.units)
    return f"groove {own(show.length(stub.groove_width))} x {own(show.length(stub.groove_depth))}"


def _notes(asked: StubAsked, stub: StubSizes, slit: Slitted | None) -> tuple[str, ...]:
    first = (
        "Spigot to its size with the plug nipped, shoulder faced in the same setting."
        if slit
        else "Spigot and face of the shoulder turned in one setting."
    )
    show = Show(asked.units)
    screw = slit.screw if slit else _screw(stub)
    long = slit.screw_length if slit else _clamp_of(stub).length
    drilled = slit.drill_depth if slit else _clamp_of(stub).drill_depth
    return (
        first,
        "It stays in the chuck until the batch is done: out once, it runs true no more.",
        f"Free end chamfered {show.depth(stub.chamfer)}.",
        f"Tap drill {screw.tap_drill}, {show.length(drilled)} deep to its point; tap {screw.id}.",
        f"Screw {screw.id}, {show.length(long)} under its head, on a washer: drawn double-dotted.",
        *(_slit_notes(slit, show) if slit else ()),
    )


def _slit_notes(slit: Slitted, show: Show) -> tuple[str, ...]:
    return (
        f"Mouth bored to the plug, which stands out {show.length(slit.stands_out)} snug: about "
        f"{show.depth(slit.mouth)} at the face, {show.length(slit.cone_length)} deep.",
        f"Slits {show.length(slit.width)} wide, a hacksaw blade; holes of {show.length(slit.end_hole)} at their ends.",
    )


def washer_drawn(
    screw: Screw, thick: Metre, across: Metre, asked: StubAsked, title: str = "Washer"
) -> DrawnPart:
    """A washer: of a plain stub's work, or of an expanding stub's plug."""
    return DrawnPart(
        title=title,
        material=BAR,
        stretches=(Stretch(0.0, thick, across),),
        hollows=(Hollow(0.0, thick, screw.clearance),),
        across=(
            Across(thick / 2, Limits(across), "right", "outside"),
            Across(
                thick / 2,
                Limits(screw.clearance, after=f"drill {screw.clearance_drill}"),
                "left",
                "hole",
            ),
        ),
        along=(Along(0.0, thick, Limits(thick), "thickness"),),
        notes=("Both faces turned in one setting, or the second on the faced first.",),
        general=general(asked),
    )


def plug_drawn(slit: Slitted, asked: StubAsked) -> DrawnPart:
    """The plug of an expanding stub."""
    length, show = slit.plug_length, Show(asked.units)
    hole, drilled = (
        (f"tap {slit.puller.id}", f"Tap drill {slit.puller.tap_drill} for {slit.puller.id}")
        if slit.puller
        else (f"drill {slit.screw.clearance_drill}", "Drilled through")
    )
    return DrawnPart(
        title="Plug of the expanding stub",
        material=BAR,
        stretches=(Stretch(0.0, length, slit.plug_small, slit.plug_large),),
        hollows=(_plug_hole(slit),),
        across=(
            Across(length, Limits(slit.plug_large), "right", "large end"),
            Across(0.0, Limits(slit.plug_small, reference=True), "left", "small end"),
        ),
        along=(Along(0.0, length, Limits(length), "length"),),
        pointed=(Pointed(length / 2, slit.plug_hole / 2, hole, "hole"),),
        notes=(
            f"Turned first, large end to the tailstock, top slide over {show.angle(slit.slide_angle)}: an indicator moves "
            f"{show.depth(slit.indicator(TRAVEL[asked.units]))} over {own(show.length(TRAVEL[asked.units]))} of slide. The mouth "
            "is bored at the same setting; blued, the plug marks it all along.",
            f"{drilled}; the screw {slit.screw.id} goes through it.",
        ),
        general=general(asked),
    )


def _plug_hole(slit: Slitted) -> Hollow:
    if slit.puller is None:
        return Hollow(0.0, slit.plug_length, slit.plug_hole)
    return Hollow(0.0, slit.plug_length, slit.plug_hole, thread=True)
