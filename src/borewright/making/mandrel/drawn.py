"""The mandrel as a workshop drawing: its large end at the left, where the headstock is."""

from __future__ import annotations

from borewright.answer.drawn_part import (
    Across,
    Along,
    CenterHole,
    DrawnPart,
    Flat,
    Limits,
    Pointed,
    Stretch,
)
from borewright.answer.made_mandrel import MadeMandrel
from borewright.making.center_holes import cone_of
from borewright.making.mandrel.words import hardness_words, runout_words, takes_words
from borewright.making.shop_sizes import to_rule
from borewright.mechanics.mandrel_zone import Band
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


def drawn_mandrel(made: MadeMandrel, tables: Tables) -> DrawnPart:
    """The drawing of a mandrel to be made."""
    show, form = Show(made.units), made.form
    end, whole = form.end_length, form.overall_length
    large_plane = end + form.ground_length - form.zone.at_large
    small_plane = end + form.ground_length - form.zone.at_small
    ends = Limits(form.end_diameter)
    return DrawnPart(
        title=f"Mandrel {made.stamp}{' in' if made.units == 'inch' else ' mm'}",
        material=f"{made.stock.steel.name}, {made.stock.bar.size} bar",
        stretches=(
            Stretch(0.0, end, form.end_diameter),
            Stretch(end, whole - end, form.large_end, form.small_end),
            Stretch(whole - end, whole, form.end_diameter),
        ),
        centers=_centers(made),
        flats=_flats(made),
        across=(
            Across(0.0, ends, "left", "end-large"),
            Across(whole, ends, "right", "end-small"),
            Across(large_plane, _limits(form.zone.near_large, "at A"), "inside", "plane-a"),
            Across(small_plane, _limits(form.zone.near_small, "at B"), "inside", "plane-b"),
        ),
        along=(
            Along(0.0, end, Limits(end), "large-end-length"),
            Along(whole - end, whole, Limits(end, reference=True), "small-end-length"),
            *_flat_lengths(made),
            Along(end, large_plane, Limits(large_plane - end, after="to A"), "to-a"),
            Along(large_plane, small_plane, Limits(form.apart, after="A to B"), "a-to-b"),
            Along(end, whole - end, Limits(form.ground_length), "ground-length"),
            Along(0.0, whole, Limits(whole), "overall-length"),
        ),
        pointed=_pointed(made, show),
        notes=_notes(made, show, tables),
        treatment=hardness_words(made.stock.steel),
        general=f"lengths ± {_general(made)}, diameters of the ends ± {_general(made)}",
        end_view="left",
    )


def _general(made: MadeMandrel) -> str:
    return "0.010 in" if made.units == "inch" else "0.25 mm"


def _limits(band: Band, after: str) -> Limits:
    return Limits(band[0], 0.0, band[1] - band[0], after=after)


def _centers(made: MadeMandrel) -> tuple[CenterHole, ...]:
    center = made.form.center
    if center is None:
        return ()
    cone = cone_of(center)
    sides: tuple[CenterHole, ...] = tuple(
        CenterHole(side, center.pilot, cone, center.bell, made.form.center_depth)
        for side in ("left", "right")
    )
    return sides


def _flats(made: MadeMandrel) -> tuple[Flat, ...]:
    form = made.form
    from_end = (form.end_length - form.flat_length) / 2
    large = Flat(from_end, from_end + form.flat_length, form.flat_depth)
    if form.flats == "large":
        return (large,)
    whole = form.overall_length
    return (large, Flat(whole - large.end, whole - large.start, form.flat_depth))


def _flat_lengths(made: MadeMandrel) -> tuple[Along, ...]:
    return tuple(
        Along(flat.start, flat.end, Limits(flat.end - flat.start, after="flat"), "flat-length")
        for flat in _flats(made)
    )


def _pointed(made: MadeMandrel, show: Show) -> tuple[Pointed, ...]:
    form = made.form
    at = form.end_length / 2
    words = (
        f"flat {show.length(form.flat_depth).partition(' (')[0]} deep for the dog: {made.stamp}, L"
    )
    inside = form.end_diameter / 2 - form.flat_depth
    said = [Pointed(at, inside * 0.6, words, "flat")]
    whole: Metre = form.overall_length
    if form.flats == "both":
        said.append(Pointed(whole - at, inside * 0.6, "flat as at the large end", "flat-small"))
    if form.center is not None:
        deep = show.depth(form.center_depth).partition(" (")[0]
        words = f"center {form.center.id}, {deep} deep, both ends"
        said.append(Pointed(whole - form.center_depth / 2, 0.0, words, "center"))
    return tuple(said)


def _notes(made: MadeMandrel, show: Show, tables: Tables) -> tuple[str, ...]:
    form = made.form
    how = "Ground" if made.grinder else "Turned"
    corner = show.length(to_rule(tables.making_fact("corner").best, made.units)).partition(" (")[0]
    said = [
        f"Taper between A and B: {show.taper(form.taper)}, straight. The large end is at the left.",
        f"{how} on its own centers, {runout_words(made, show)} anywhere on the taper.",
        "Both centers 60 degrees, protected, lapped after hardening."
        if made.stock.steel.hard
        else "Both centers 60 degrees, clean, kept under a cap.",
        f"Corners of the reduced ends with a radius of {corner}; edges of the taper broken with a stone, no more.",
        f"{how} fine, no scratch that a finger nail feels; the ends as turned.",
        "Size and L (large end) stamped on the flat before hardening; nothing on the taper."
        if made.stock.steel.hard
        else "Size and L (large end) stamped on the flat before finishing; nothing on the taper.",
    ]
    if made.takes:
        said.append(takes_words(made, show))
    return tuple(said)
