"""Stub, washer and plug as workshop drawings. The chuck is on the left."""

from __future__ import annotations

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
from borewright.making.stub.asked import StubAsked
from borewright.making.stub.sizes import Clamp, StubSizes
from borewright.making.stub.slit import Slit as Slitted
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.screws import Screw

BAR = "mild steel bar"
GENERAL = "0.1 mm (0.005 in) where no limits stand"


def sayable(size: Metre, asked: StubAsked) -> Metre:
    """A size to the last figure that is measured: a tenth of a thou, or a micrometre."""
    step = 2.54e-6 if asked.units == "inch" else 1e-6
    return step * round(size / step)


def stub_drawn(asked: StubAsked, stub: StubSizes, slit: Slitted | None) -> DrawnPart:
    """The stub, slit and hollow where it expands."""
    back = stub.grip + stub.from_jaws
    face, end = back + stub.before_work, stub.bar_length
    low, high = sayable(stub.spigot_low, asked), sayable(stub.spigot_high, asked)
    spigot = Limits(high, low - high, 0.0, after="by trial")
    inside = _slit_hollows(slit, end) if slit else _screw_hole(stub, end)
    thread = slit.screw if slit else _screw(stub)
    threaded = end - (slit.length if slit else 0.0)
    depth = slit.thread_depth if slit else _clamp_depth(stub)
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
        slits=(Slit(end - slit.length, end, slit.width, slit.number),) if slit else (),
        across=(
            Across((face + end) / 2, spigot, name="spigot"),
            Across((back + face) / 2, Limits(stub.shoulder), "left", "shoulder"),
            Across(stub.grip / 2, Limits(stub.stock, reference=True), "left", "stock"),
        ),
        along=(
            Along(face, end, Limits(stub.spigot_length), "spigot length"),
            Along(back, face, Limits(stub.before_work), "shoulder thickness"),
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
        general=GENERAL,
        end_view="right" if slit else "",
    )


def own(shown: str) -> str:
    """A shown size without the other units in their brackets: the drawing is short of room.

    >>> own("16 mm (0.63 in)")
    '16 mm'
    """
    return shown.partition(" (")[0]


def _screw(stub: StubSizes) -> Screw:
    assert stub.clamp is not None
    return stub.clamp.screw


def _clamp_depth(stub: StubSizes) -> Metre:
    assert stub.clamp is not None
    return stub.clamp.thread_depth


def _screw_hole(stub: StubSizes, end: Metre) -> tuple[Hollow, ...]:
    clamp = stub.clamp
    assert clamp is not None
    return (
        Hollow(end - clamp.drill_depth, end - clamp.thread_depth, clamp.screw.tap_drill_size),
        Hollow(end - clamp.thread_depth, end, clamp.screw.tap_drill_size, thread=True),
    )


def _slit_hollows(slit: Slitted, end: Metre) -> tuple[Hollow, ...]:
    behind = end - slit.length
    return (
        Hollow(behind - slit.drill_depth, behind - slit.thread_depth, slit.screw.tap_drill_size),
        Hollow(behind - slit.thread_depth, behind, slit.screw.tap_drill_size, thread=True),
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
            f"{slit.number} slits {own(show.length(slit.width))}",
            "slits",
        ),
        Pointed(
            end,
            slit.mouth / 2,
            f"mouth {own(show.turned(slit.mouth))}",
            "mouth",
        ),
    )


def _tapped(screw: Screw, depth: Metre, asked: StubAsked) -> str:
    show = Show(asked.units)
    return f"{screw.id}, {own(show.length(depth))} deep"


def _groove(stub: StubSizes, asked: StubAsked) -> str:
    show = Show(asked.units)
    return f"groove {own(show.length(stub.groove_width))}"


def _notes(asked: StubAsked, stub: StubSizes, slit: Slitted | None) -> tuple[str, ...]:
    first = (
        "Spigot to its size with the plug nipped, shoulder faced in the same setting."
        if slit
        else "Spigot and face of the shoulder turned in one setting."
    )
    show = Show(asked.units)
    screw = slit.screw if slit else _screw(stub)
    return (
        first,
        "It stays in the chuck until the batch is done: out once, it runs true no more.",
        f"Groove in the corner {show.small(stub.groove_depth)} deep. Free end chamfered "
        f"{show.depth(stub.chamfer)}.",
        f"Tap drill {screw.tap_drill} for {screw.id}.",
        *(_slit_notes(slit, show) if slit else ()),
    )


def _slit_notes(slit: Slitted, show: Show) -> tuple[str, ...]:
    return (
        f"Inside {show.turned(slit.hole)}, {show.length(slit.length)} deep; mouth {show.turned(slit.mouth)} at the face, "
        f"{show.length(slit.cone_length)} deep, top slide at {show.angle(slit.slide_angle)}.",
        f"Slits {show.length(slit.length)} long, their ends drilled {show.length(slit.end_hole)}.",
    )


def washer_drawn(clamp: Clamp, asked: StubAsked) -> DrawnPart:
    """The washer of a plain stub."""
    thick, across = clamp.washer_thick, clamp.washer_outside
    return DrawnPart(
        title="Washer",
        material=BAR,
        stretches=(Stretch(0.0, thick, across),),
        hollows=(Hollow(0.0, thick, clamp.screw.clearance),),
        across=(
            Across(thick / 2, Limits(across), "right", "outside"),
            Across(
                thick / 2,
                Limits(clamp.screw.clearance, after=f"drill {clamp.screw.clearance_drill}"),
                "left",
                "hole",
            ),
        ),
        along=(Along(0.0, thick, Limits(thick), "thickness"),),
        notes=("Both faces turned in one setting, or the second on the faced first.",),
        general=GENERAL,
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
            Across(0.0, Limits(slit.plug_small), "left", "small end"),
        ),
        along=(Along(0.0, length, Limits(length), "length"),),
        pointed=(Pointed(length / 2, slit.plug_hole / 2, hole, "hole"),),
        notes=(
            f"Turned at the same setting of the top slide as the mouth, {show.angle(slit.slide_angle)}; "
            "blued, it marks the mouth all along.",
            f"{drilled}; the screw {slit.screw.id} goes through it.",
        ),
        general=GENERAL,
    )


def _plug_hole(slit: Slitted) -> Hollow:
    if slit.puller is None:
        return Hollow(0.0, slit.plug_length, slit.plug_hole)
    return Hollow(0.0, slit.plug_length, slit.plug_hole, thread=True)
