"""The pattern, solid, with prints where a core is to lie; and the core as it leaves its box."""

from __future__ import annotations

from math import tan

from borewright.answer.drawn_part import (
    Across,
    Along,
    DrawnPart,
    Limits,
    Place,
    Pointed,
    SpokeRing,
    Stretch,
)
from borewright.answer.made_casting import MadeCasting
from borewright.job.web import MEETS
from borewright.making.blank.casting_drawn import ends_of
from borewright.making.blank.casting_words import shrink_words
from borewright.making.blank.drawn_sizes import (
    Scaled,
    across_sizes,
    along_sizes,
    draft_marks,
    spoke_ring,
    whole_stretches,
)
from borewright.making.blank.wheel import tidy
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


def drawn_pattern(made: MadeCasting, tables: Tables) -> DrawnPart:
    """The pattern: the casting by shrinkage, solid, its upper print tapered."""
    show, drawn = Show(made.units), Scaled(made, 1 + made.shrink.taken)
    hole = made.core.diameter if made.core else 0.0
    stretches = (*(_grown(s, drawn, hole) for s in whole_stretches(made)), *_prints(drawn, tables))
    ring = spoke_ring(drawn)
    return DrawnPart(
        title=f"Pattern: {made.title or 'wheel'}",
        material="wood, sealed, or metal",
        stretches=tuple(sorted(stretches, key=lambda s: (s.start, s.outside))),
        spokes=ring,
        across=(*across_sizes(drawn), *_print_sizes(drawn, tables)),
        along=(*along_sizes(drawn), *_print_lengths(drawn)),
        pointed=(*draft_marks(drawn, show), _parting_mark(drawn)),
        notes=(
            f"Sizes are those of the pattern, at the thin ends: {shrink_words(made)}.",
            f"Parting {made.mould.parting_why}{_halves(drawn, show)}.",
            f"Machined, so with stock and sharp edges: {', '.join(s.face for s in made.stocks)}. All other corners rounded "
            f"{show.length(made.mould.round * drawn.times)}.",
            *_spoke_note(ring, show),
            *_print_note(made, show, tables),
        ),
        general="± 1/64 in" if made.units == "inch" else "± 0.4 mm",
        end_view="right",
    )


def drawn_core(made: MadeCasting, tables: Tables) -> DrawnPart | None:
    """The core with its prints, the upper one tapered; None for a casting without one."""
    core = made.core
    if core is None:
        return None
    drawn = Scaled(made, 1 + made.shrink.taken)
    size, clear = drawn.at(core.diameter), tables.casting_fact("print_clear").best
    between, long = drawn.at(core.between), core.print_length
    thin = _tapered(size, long, tables)
    whole = tidy(between + 2 * long - clear)
    show = Show(made.units)
    up_left = made.mould.up == "A"
    ends = (thin, size) if up_left else (size, thin)
    stretches = (
        Stretch(0.0, long, ends[0], size),
        Stretch(long, tidy(long + between), size),
        Stretch(tidy(long + between), whole, size, ends[1]),
    )
    place = 0.0 if up_left else whole
    return DrawnPart(
        title=f"Core: {made.title or 'wheel'}",
        material="baked sand, from a box in two halves",
        stretches=stretches,
        across=(
            Across(long, Limits(size, decimal=True), "inside", "core"),
            Across(
                place, Limits(thin, decimal=True), "left" if up_left else "right", "upper-print"
            ),
        ),
        along=(
            Along(0.0, long, Limits(long), "lower-print"),
            Along(long, tidy(long + between), Limits(between, decimal=True), "between"),
            Along(0.0, whole, Limits(whole, decimal=True), "core-length"),
        ),
        pointed=(
            Pointed(place + (0.3 if up_left else -0.3) * long, size * 0.45, "upper end", "upper"),
        ),
        notes=(
            f"The prints of the pattern are {show.depth(clear)} thicker and together as much longer, so that it drops in and the cope "
            "does not crush it.",
            "A vent through its whole length: a wire rammed in and drawn, open at the print that lets the gas out.",
            f"One for each mould: {made.melt.tries}, and a few to break.",
        ),
        general="± 1/64 in" if made.units == "inch" else "± 0.4 mm",
        quantity=made.melt.tries,
    )


def _tapered(size: Metre, long: Metre, tables: Tables) -> Metre:
    return tidy(size - 2 * long * tan(tables.casting_fact("print_taper").best))


def _grown(stretch: Stretch, drawn: Scaled, hole: Metre) -> Stretch:
    """A stretch as the pattern has it, without the hole of the core, which the pattern lacks."""
    cored = hole > 0.0 and abs(stretch.inside - hole) < MEETS
    inside_end = stretch.inside if stretch.inside_end is None else stretch.inside_end
    outside_end = stretch.outside if stretch.outside_end is None else stretch.outside_end
    return Stretch(
        drawn.at(stretch.start),
        drawn.at(stretch.end),
        drawn.at(stretch.outside),
        drawn.at(outside_end),
        0.0 if cored else drawn.at(stretch.inside),
        0.0 if cored else drawn.at(inside_end),
    )


def _prints(drawn: Scaled, tables: Tables) -> tuple[Stretch, ...]:
    """Prints at both ends; the upper one tapers so that the cope does not shave the core."""
    core = drawn.made.core
    if core is None:
        return ()
    left, right = (drawn.at(end) for end in ends_of(drawn.made.stretches))
    long = core.print_length
    size = tidy(drawn.at(core.diameter) + tables.casting_fact("print_clear").best)
    thin = _tapered(size, long, tables)
    up_left = drawn.made.mould.up == "A"
    return (
        Stretch(tidy(left - long), left, thin if up_left else size, size),
        Stretch(right, tidy(right + long), size, size if up_left else thin),
    )


def _print_sizes(drawn: Scaled, tables: Tables) -> tuple[Across, ...]:
    core = drawn.made.core
    if core is None:
        return ()
    left, right = (drawn.at(end) for end in ends_of(drawn.made.stretches))
    lower_left = drawn.made.mould.up == "B"
    at = left - core.print_length if lower_left else right + core.print_length
    place: Place = "left" if lower_left else "right"
    size = tidy(drawn.at(core.diameter) + tables.casting_fact("print_clear").best)
    return (Across(tidy(at), Limits(size, after="print", decimal=True), place, "print"),)


def _print_lengths(drawn: Scaled) -> tuple[Along, ...]:
    core = drawn.made.core
    if core is None:
        return ()
    left, right = (drawn.at(end) for end in ends_of(drawn.made.stretches))
    long = core.print_length
    return (
        Along(tidy(left - long), left, Limits(long), "print-length"),
        Along(right, tidy(right + long), Limits(long), "print-length"),
    )


def _parting_mark(drawn: Scaled) -> Pointed:
    radius = max(max(s.outside, s.outside_end or 0.0) for s in drawn.made.stretches) / 2
    return Pointed(drawn.at(drawn.made.mould.parting), drawn.at(radius), "parting", "parting")


def _halves(drawn: Scaled, show: Show) -> str:
    """That a pattern parted in its middle is two halves."""
    parting, made = drawn.made.mould.parting, drawn.made
    if parting in (0.0, made.length):
        return ""
    cut = [
        p
        for p in made.pieces
        if p.start < parting < p.end and p.inside is not None and p.outside < made.outside
    ]
    half = (
        f", each with half of the web, {show.depth(drawn.times * (cut[0].end - cut[0].start) / 2)}"
        if cut
        else ""
    )
    return f": two halves on dowels{half}, the dowels off the middle so that they go together one way only"


def _spoke_note(ring: SpokeRing | None, show: Show) -> tuple[str, ...]:
    if ring is None:
        return ()
    return (
        f"{ring.number} spokes {show.depth(ring.width)} round the wheel, {show.depth(ring.end - ring.start)} along it, oval, drawn from "
        "their widest line; generous fillets at both roots: a cold rim tears thin spokes.",
    )


def _print_note(made: MadeCasting, show: Show, tables: Tables) -> tuple[str, ...]:
    if made.core is None:
        return ()
    angle = show.angle(tables.casting_fact("print_taper").best)
    return (
        f"Prints painted black; the upper one tapers {angle} a side. The core has a drawing of its own.",
    )
