"""All papers of a stub: the answer, route, fine feed, what is measured, cautions."""

from __future__ import annotations

from borewright.answer.papers import Grid, Papers, Said, Sheet
from borewright.making.cautioned import cautioned
from borewright.making.facts import best_of
from borewright.making.fine_feed import feed_grid
from borewright.making.stub.asked import StubAsked
from borewright.making.stub.figures import stub_figures
from borewright.making.stub.route import stub_route, under_size
from borewright.making.stub.sizes import StubSizes
from borewright.making.stub.slit import Slit
from borewright.quantities.show import Show, inch_number
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

STEEP: Metre = 5e-4
"""Ours: a plug whose whole travel is less is said to a micrometre."""


def stub_papers(
    asked: StubAsked, stub: StubSizes, slit: Slit | None, care: str, tables: Tables
) -> Papers:
    """Route first, then the last tenths, then what is measured. `care`: why with care, or ""."""
    last = best_of(tables, "stub_facts")("last_sizes")
    route = Sheet(
        "Route",
        (
            cautioned(tables, *_tags(slit), material=asked.material),
            stub_route(asked, stub, slit, tables),
        ),
    )
    tenths = Sheet(
        "The last tenths",
        (feed_grid(asked.units, last, tables), under_size(asked, stub, tables)),
    )
    measured = Sheet(
        "Measured",
        (
            _measured(asked, stub, slit),
            *((_opened(asked, slit, tables),) if slit else ()),
            _stiff(asked, stub, tables),
        ),
    )
    return Papers(
        "Expanding stub" if slit else "Stub",
        headline(asked, stub, slit, care),
        asked.units,
        (route, tenths, measured),
        stub_figures(asked, stub, slit, tables),
    )


def headline(asked: StubAsked, stub: StubSizes, slit: Slit | None, care: str) -> str:
    """The answer in two or three sentences."""
    show = Show(asked.units)
    size = show.band(stub.spigot_low, stub.spigot_high, "bore")
    whom = (
        f"to go into the smallest bore of the batch, {show.bore(asked.bore)}"
        if asked.batch
        else f"to wring into this bore, {show.bore(asked.bore)}"
    )
    if slit is None:
        assert stub.clamp is not None
        held = f"{_a(stub.clamp.screw.id)} screw and a washer clamp the work on its shoulder"
        shake = (
            f" The largest bore of the batch shakes on it by {show.small(stub.shake)}."
            if asked.batch and "shakes on it" not in care
            else ""
        )
    else:
        held = (
            f"{slit.number} slits and a {'taper' if slit.plug == 'taper' else 'steep'} plug on "
            f"{_a(slit.screw.id)} screw open it by {show.small(slit.opens)}; its fingers bear "
            f"{show.small(slit.opens_most)}"
        )
        shake = ""
    also = f" With care: {care}" if care else ""
    return (
        f"Turn a stub by trial {whom}, expected at {size}, in the chuck from {show.length(stub.stock)} bar; {held}. "
        f"It stays in the chuck until the batch is done.{shake}{also}"
    )


def _a(screw: str) -> str:
    return f"an {screw}" if screw.startswith("M") else f"a {screw}"


def _tags(slit: Slit | None) -> tuple[str, ...]:
    return ("chuck", "slit-stub" if slit else "overhang", "emery")


def _measured(asked: StubAsked, stub: StubSizes, slit: Slit | None) -> Grid:
    show = Show(asked.units)
    room = "room" if asked.units == "mm" else "shop"
    piece = "the smallest piece of the batch" if asked.batch else "the work"
    nipped = ", plug nipped" if slit else ""
    rows = [
        ("bore, two depths, two ways", show.bore(asked.bore), ""),
        (f"spigot{nipped}", f"{piece} wrings on, no shake", ""),
        (
            f"spigot{nipped}, size as found",
            f"expected {show.band(stub.spigot_low, stub.spigot_high, 'bore')}",
            "",
        ),
        ("spigot, length", show.length(stub.spigot_length), ""),
        ("shoulder", show.length(stub.shoulder), ""),
        ("spigot runs out, whole reading", "does not move the needle", ""),
        ("shoulder runs out, whole reading", "does not move the needle", ""),
        (f"temperature of the {room}", "work and stub alike", ""),
    ]
    if slit is not None:
        rows.insert(1, ("plug stands out, snug", show.length(slit.stands_out), ""))
    return Grid(
        "What is measured",
        ("what", "wanted", "found"),
        tuple(rows),
        (
            f"{piece[0].upper()}{piece[1:]} is the gauge: what wrings on is right, whatever it reads.",
        ),
    )


def _opened(asked: StubAsked, slit: Slit, tables: Tables) -> Grid:
    """Plug travel against opening, up to what the fingers bear."""
    show = Show(asked.units)
    shares = (0.25, 0.5, 0.75, 1.0)
    reserve = best_of(tables, "stub_facts")("finger_reserve")
    rows = tuple(
        (
            show.small(share * slit.opens_most),
            _drawn_in(share * slit.travel_most, slit, show),
            f"{share * slit.turns_most:.{2 if slit.turns_most >= 1 else 3}f}",
        )
        for share in shares
    )
    return Grid(
        "What the plug opens",
        ("opens on diameter", "plug drawn in", "turns of the screw"),
        rows,
        (
            f"Needed: {show.small(slit.opens)}. The last row is the most: the fingers then bend at their "
            f"roots with {show.pressure(slit.bears)}, the least yield of bar over {reserve:g}.",
            "It opens at the outer end; behind the slits a whole ring locates the work.",
        ),
    )


def _drawn_in(travel: Metre, slit: Slit, show: Show) -> str:
    """Travel of the plug, in inch to a tenth: at a thou the rows of a steep plug would be alike."""
    inch = f"{inch_number(travel):.4f} in"
    metric = f"{1e3 * travel:.{3 if slit.travel_most < STEEP else 2}f} mm"
    return f"{inch} ({metric})" if show.units == "inch" else f"{metric} ({inch})"


def _stiff(asked: StubAsked, stub: StubSizes, tables: Tables) -> Said:
    show = Show(asked.units)
    force = best_of(tables, "stub_facts")("try_force")
    slit = " It is less for the holes and slits." if asked.plug else ""
    return Said(
        "How stiff it is",
        (
            f"The work's far face stands out {show.length(stub.overhang)} from the back of the shoulder, "
            f"{stub.overhang_ratio:.1f} bores; {stub.overhang_most:g} is the usual most without a center.",
            f"A side push of {show.force(force)} at that face moves a solid stub about "
            f"{show.small(force / stub.stiffness)}, most of it in chuck and spindle.{slit}",
        ),
    )
