"""A soft mandrel as a workshop drawing, the headstock on the left."""

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
from borewright.making.soft.as_drawn import DrawnBar
from borewright.making.soft.asked import SoftAsked
from borewright.making.soft.ends import Ends
from borewright.making.soft.turned import TurnedBar
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

BAR = "mild steel bar"
GENERAL = "0.1 mm (0.005 in) where no limits stand"


def turned_drawn(asked: SoftAsked, bar: TurnedBar) -> DrawnPart:
    """The bar turned to the bore, its taper too slight to be seen."""
    head, end, ends = bar.head, bar.head + bar.body, bar.ends
    show, face = Show(asked.units), bar.leading_face
    tail = (Stretch(end, bar.length, ends.tail),) if bar.tail else ()
    flat = Flat(0.0, ends.dog_flat[1], ends.dog_flat[0])
    return DrawnPart(
        title="Soft mandrel",
        material=BAR,
        stretches=(
            Stretch(0.0, head, ends.head),
            Stretch(head, end, bar.large, bar.small),
            *tail,
        ),
        centers=_centers(ends),
        flats=(flat,) if ends.dog_flat[1] else (),
        across=(
            Across(head, _limits(bar.large, bar, "large end"), "left", "large end"),
            Across(face, _limits(bar.seat, bar, "by trial"), "inside", "at the leading face"),
            Across(end, _limits(bar.small, bar, "small end"), "right", "small end"),
            *((Across(bar.length, Limits(ends.tail), "right", "tail end"),) if tail else ()),
        ),
        along=(
            Along(head, end, Limits(bar.body), "tapered part"),
            Along(0.0, head, Limits(head), "head end"),
            Along(0.0, bar.length, Limits(bar.length), "whole"),
        ),
        notes=(
            f"Taper {show.taper(bar.taper)} on diameter, the large end to the headstock.",
            f"Bar {show.length(bar.stock)}. {_center_words(ends)}",
            *(
                (f"Flat for the dog {show.depth(ends.dog_flat[0])} deep.",)
                if ends.dog_flat[1]
                else ("It stays in the chuck until the batch is done.",)
            ),
        ),
        general=GENERAL,
    )


def _limits(size: Metre, bar: TurnedBar, after: str) -> Limits:
    """A size of the taper, in the middle of what a turned diameter is held to."""
    return Limits(size, -bar.tolerance / 2, bar.tolerance / 2, after=after)


def drawn_drawn(asked: SoftAsked, bar: DrawnBar) -> DrawnPart:
    """The bar as it comes, with its flats."""
    show, ends = Show(asked.units), bar.ends
    dog = (Flat(0.0, ends.dog_flat[1], ends.dog_flat[0]),) if ends.dog_flat[1] else ()
    return DrawnPart(
        title="Soft mandrel, bar as drawn",
        material="drawn bar",
        stretches=(Stretch(0.0, bar.length, bar.nominal),),
        centers=_centers(ends),
        flats=(*dog, Flat(bar.flat_start, bar.flat_end, bar.flat_depth)),
        across=(Across(bar.length, Limits(bar.nominal, reference=True), "right", "bar"),),
        along=(
            Along(0.0, bar.flat_start, Limits(bar.flat_start), "to the flat"),
            Along(bar.flat_start, bar.flat_end, Limits(bar.flat_end - bar.flat_start), "flat"),
            Along(0.0, bar.length, Limits(bar.length), "whole"),
        ),
        pointed=(
            Pointed(
                bar.screw_at, bar.nominal / 2 - bar.flat_depth, f"{bar.thread_name} here", "screw"
            ),
        ),
        notes=(
            f"Flat under the screw {show.depth(bar.flat_depth)} deep, {show.length(bar.flat_width)} wide, square, edges broken.",
            _center_words(ends),
            *((f"Flat for the dog {show.depth(ends.dog_flat[0])} deep.",) if dog else ()),
            "The screw itself sits in the hub of the work.",
        ),
        general=GENERAL,
    )


def _centers(ends: Ends) -> tuple[CenterHole, ...]:
    left = (ends.head_center.at("left"),) if ends.head_center else ()
    right = (ends.tail_center.at("right"),) if ends.tail_center else ()
    return (*left, *right)


def _center_words(ends: Ends) -> str:
    if ends.tail_center is None:
        return "Too thin for a center hole: points of 60 degrees, in hollow centers."
    where = "both ends" if ends.head_center else "the free end"
    return f"Center holes {ends.tail_center.name} in {where}."
