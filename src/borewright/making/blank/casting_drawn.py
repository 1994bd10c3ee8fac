"""The casting as it leaves the sand, the finished part double-dotted in it."""

from __future__ import annotations

from borewright.answer.drawn_part import Across, DrawnPart, Hollow, Pointed, Stretch
from borewright.answer.made_casting import MadeCasting
from borewright.making.blank.casting_words import parting_words, stock_words
from borewright.making.blank.drawn_sizes import (
    Scaled,
    across_sizes,
    along_sizes,
    spoke_ring,
    spoked,
    whole_stretches,
)
from borewright.making.blank.wheel import tidy
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


def drawn_casting(made: MadeCasting, tables: Tables) -> DrawnPart:
    """The drawing that goes with the casting to the lathe."""
    show, core, drawn = Show(made.units), made.core, Scaled(made, 1.0)
    left, right = ends_of(made.stretches)
    return DrawnPart(
        title=f"Casting: {made.title or 'wheel'}",
        material=tables.material(made.material).name,
        stretches=whole_stretches(made),
        hollows=(Hollow(left, right, core.diameter),) if core else (),
        spokes=spoke_ring(drawn),
        across=(*across_sizes(drawn), *_cored(drawn, right)),
        along=along_sizes(drawn),
        pointed=_marks(made),
        notes=(
            "Double-dotted: the finished part. What it does not touch stays as cast.",
            f"Stock to machine: {stock_words(made, show)}.",
            f"Sizes are those at the thin ends; draft thickens it towards the parting, {parting_words(made, show)}.",
            f"One casting weighs about {show.weight(made.melt.casting)}.",
            *_spokes_note(made, show),
            *_boss_note(made),
        ),
        general="as cast, for machining where stock is stated",
        phantom=_finished(made),
        end_view="right",
        quantity=made.melt.tries,
    )


def ends_of(stretches: tuple[Stretch, ...]) -> tuple[Metre, Metre]:
    """Where the casting begins and ends, its boss among it."""
    return min(s.start for s in stretches), max(s.end for s in stretches)


def _cored(drawn: Scaled, right: Metre) -> tuple[Across, ...]:
    core = drawn.made.core
    if core is None:
        return ()
    return (Across(right, drawn.size(core.diameter, "core"), "right", "core"),)


def _marks(made: MadeCasting) -> tuple[Pointed, ...]:
    """Which face is up, and the boss."""
    up_at = 0.0 if made.mould.up == "A" else made.length
    hub = min(made.pieces, key=lambda p: p.outside)
    radius = (hub.outside / 2 + (made.core.diameter / 2 if made.core else 0.0)) / 2
    marks = [Pointed(up_at, radius, f"face {made.mould.up}: up in the mould", "up")]
    if made.boss:
        at = -made.boss.length / 2 if made.boss.face == "A" else made.length + made.boss.length / 2
        marks.append(Pointed(at, made.boss.diameter / 2, "boss to hold by, off last", "boss"))
    return tuple(marks)


def _finished(made: MadeCasting) -> tuple[Stretch, ...]:
    """The finished part where it lies in the casting; its rings from the bore out, no spokes."""
    shift, bore = made.stock("face A"), made.wheel.bore.size
    rings = {(round(p.start, 7), p.inside) for p in spoked(made)}
    return tuple(
        Stretch(
            tidy(p.start + shift),
            tidy(p.end + shift),
            p.outside,
            inside=bore if p.inside is None else p.inside,
        )
        for p in made.wheel.pieces
        if (round(p.start + shift, 7), p.inside) not in rings
    )


def _spokes_note(made: MadeCasting, show: Show) -> tuple[str, ...]:
    if made.spokes is None:
        return ()
    s = made.spokes
    return (
        f"{s.number} spokes {show.length(s.width)} round the wheel, {show.length(s.thickness)} along it, their edges "
        "rounded to an oval.",
    )


def _boss_note(made: MadeCasting) -> tuple[str, ...]:
    if made.boss is None:
        return ()
    return (
        f"Boss at face {made.boss.face}: cast on to be held by, turned true with the first face, cut off last of all. "
        "The metal behind it freezes late: look for pores there when it is off.",
    )
