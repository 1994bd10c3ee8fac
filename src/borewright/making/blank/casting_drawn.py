"""Two drawings: the casting with the finished part in it, and the pattern with its core prints."""

from __future__ import annotations

from borewright.answer.drawn_part import (
    Across,
    Along,
    DrawnPart,
    Hollow,
    Limits,
    Pointed,
    Stretch,
)
from borewright.answer.made_casting import MadeCasting
from borewright.job.web import MEETS
from borewright.making.blank.casting_words import parting_words, shrink_words, stock_words
from borewright.making.blank.wheel import tidy
from borewright.quantities.show import Show
from borewright.quantities.si import Metre


def drawn_casting(made: MadeCasting) -> DrawnPart:
    """The casting as it leaves the sand, the finished part double-dotted in it."""
    show, core = Show(made.units), made.core
    left, right = _ends(made.stretches)
    hollows = (Hollow(left, right, core.diameter),) if core else ()
    return DrawnPart(
        title=f"Casting: {made.title or 'wheel'}",
        material=made.material,
        stretches=made.stretches,
        hollows=hollows,
        across=(*_across(made, 1.0), *_cored(made, right)),
        along=_along(made, 1.0),
        pointed=_marks(made, show),
        notes=(
            "Double-dotted: the finished part.",
            f"Stock: {stock_words(made, show)}.",
            f"Draft thickens it towards the parting, {parting_words(made, show)}.",
            *_boss_note(made, show),
            "Gates and riser off the hub or the web; rim and edges of the bore are kept clear of them.",
        ),
        general="as cast, for machining where stock is stated",
        phantom=_finished(made),
        quantity=made.melt.tries,
    )


def drawn_pattern(made: MadeCasting) -> DrawnPart:
    """The pattern: the casting by shrinkage, solid, with prints where a core is to lie."""
    show, k = Show(made.units), 1 + made.shrink.taken
    hole = made.core.diameter if made.core else 0.0
    stretches = (*(_grown(s, k, hole) for s in made.stretches), *_prints(made, k))
    mould = made.mould
    corners = (
        f"Fillets {show.length(mould.fillet * k)}, other corners" if mould.fillet else "Corners"
    )
    return DrawnPart(
        title=f"Pattern: {made.title or 'wheel'}",
        material="pattern: wood, sealed, or metal",
        stretches=tuple(sorted(stretches, key=lambda s: (s.start, s.outside))),
        across=_across(made, k),
        along=_along(made, k),
        pointed=_parting_mark(made, k, show),
        notes=(
            f"Sizes are those of the pattern: {shrink_words(made)}.",
            f"Draft {show.angle(mould.outside_draft)} outside, {show.angle(mould.inside_draft)} where sand stands within; "
            "sizes are those at the thin ends.",
            f"Parting {mould.parting_why}.",
            f"{corners} rounded {show.length(mould.round * k)}; edges that are machined stay sharp.",
            *_print_note(made, k, show),
        ),
        general="± 1/64 in" if made.units == "inch" else "± 0.4 mm",
    )


def _ends(stretches: tuple[Stretch, ...]) -> tuple[Metre, Metre]:
    return min(s.start for s in stretches), max(s.end for s in stretches)


def _grown(stretch: Stretch, k: float, hole: Metre) -> Stretch:
    """A stretch k times as large, without the hole of the core, which the pattern lacks."""
    cored = hole > 0.0 and abs(stretch.inside - hole) < MEETS
    inside_end = stretch.inside if stretch.inside_end is None else stretch.inside_end
    outside_end = stretch.outside if stretch.outside_end is None else stretch.outside_end
    return Stretch(
        tidy(k * stretch.start),
        tidy(k * stretch.end),
        tidy(k * stretch.outside),
        tidy(k * outside_end),
        0.0 if cored else tidy(k * stretch.inside),
        0.0 if cored else tidy(k * inside_end),
    )


def _prints(made: MadeCasting, k: float) -> tuple[Stretch, ...]:
    """Prints at both ends, of the core box's diameter."""
    core = made.core
    if core is None:
        return ()
    left, right = (tidy(k * end) for end in _ends(made.stretches))
    long, size = core.print_length, tidy(k * core.diameter)
    return (Stretch(tidy(left - long), left, size), Stretch(right, tidy(right + long), size))


def _across(made: MadeCasting, k: float) -> tuple[Across, ...]:
    rim = max(made.pieces, key=lambda p: p.outside)
    found = [Across(0.0, Limits(tidy(k * made.outside)), "right", "outside")]
    if rim.start > 0.0:
        found = [Across(tidy(k * rim.start), Limits(tidy(k * made.outside)), "right", "outside")]
    sizes = {p.outside: p for p in made.pieces if p is not rim and p.inside is None}
    found += [
        Across(tidy(k * p.start), Limits(tidy(k * size)), "left", "hub")
        for size, p in sizes.items()
    ]
    if rim.inside is not None and rim.inside not in sizes:
        found.append(
            Across(tidy(k * rim.start), Limits(tidy(k * rim.inside)), "left", "rim-inside")
        )
    if made.boss:
        at = -made.boss.length if made.boss.face == "A" else made.length + made.boss.length
        place = "left" if made.boss.face == "A" else "right"
        size = Limits(tidy(k * made.boss.diameter), after="boss")
        found.append(Across(tidy(k * at), size, "left" if place == "left" else "right", "boss"))
    return tuple(found)


def _cored(made: MadeCasting, right: Metre) -> tuple[Across, ...]:
    if made.core is None:
        return ()
    return (Across(right, Limits(made.core.diameter, after="core"), "right", "core"),)


def _along(made: MadeCasting, k: float) -> tuple[Along, ...]:
    whole = Along(0.0, tidy(k * made.length), Limits(tidy(k * made.length)), name="length")
    found = []
    for piece in made.pieces:
        if piece.start > 0.0 or piece.end < made.length:
            start, end = tidy(k * piece.start), tidy(k * piece.end)
            found.append(Along(start, end, Limits(tidy(end - start)), "ring"))
            if start > 0.0:
                found.append(Along(0.0, start, Limits(start), "to-ring"))
    if made.boss:
        ends = (-made.boss.length, 0.0)
        if made.boss.face == "B":
            ends = (made.length, made.length + made.boss.length)
        low, high = (tidy(k * e) for e in ends)
        found.append(Along(low, high, Limits(tidy(high - low)), name="boss-length"))
    return (*found, whole)


def _marks(made: MadeCasting, show: Show) -> tuple[Pointed, ...]:
    """Which face is up, and where metal goes in."""
    up_at = 0.0 if made.mould.up == "A" else made.length
    hub = min(made.pieces, key=lambda p: p.outside)
    radius = (hub.outside / 2 + (made.core.diameter / 2 if made.core else 0.0)) / 2
    marks = [Pointed(up_at, radius, f"face {made.mould.up}, up: riser here", "riser")]
    if made.boss:
        at = -made.boss.length / 2 if made.boss.face == "A" else made.length + made.boss.length / 2
        marks.append(Pointed(at, made.boss.diameter / 2, "boss to hold by, off last", "boss"))
    return tuple(marks)


def _parting_mark(made: MadeCasting, k: float, show: Show) -> tuple[Pointed, ...]:
    at = tidy(k * made.mould.parting)
    radius = max(max(s.outside, s.outside_end or 0.0) for s in made.stretches) * k / 2
    return (Pointed(at, radius, "parting", "parting"),)


def _finished(made: MadeCasting) -> tuple[Stretch, ...]:
    """The finished part where it lies in the casting; its rings from the bore out."""
    shift, bore = made.stock("face A"), made.wheel.bore.size
    return tuple(
        Stretch(
            tidy(p.start + shift),
            tidy(p.end + shift),
            p.outside,
            inside=bore if p.inside is None else p.inside,
        )
        for p in made.wheel.pieces
    )


def _boss_note(made: MadeCasting, show: Show) -> tuple[str, ...]:
    if made.boss is None:
        return ()
    return (
        f"Boss at face {made.boss.face}: cast on to be held by, turned true with the first face, cut off last of all. "
        "The metal behind it freezes late: look for pores there when it is off.",
    )


def _print_note(made: MadeCasting, k: float, show: Show) -> tuple[str, ...]:
    if made.core is None:
        return ()
    core = made.core
    return (
        f"Core prints {show.length(k * core.diameter)} thick, as the core box, {show.length(core.print_length)} long at both ends, the upper one "
        "tapered so that the cope does not shave the core.",
    )
