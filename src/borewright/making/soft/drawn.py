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
from borewright.making.shop_sizes import general_tolerance, to_tenth
from borewright.making.soft.as_drawn import DrawnBar
from borewright.making.soft.asked import SoftAsked
from borewright.making.soft.ends import Ends
from borewright.making.soft.turned import TurnedBar
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

BAR = "mild steel bar"


def _general(asked: SoftAsked) -> str:
    return general_tolerance(0.005, 0.1, asked.units)


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
            Across(head, _end(bar.large, bar, asked, "large end"), "left", "large end"),
            Across(face, _seat(bar, asked), "inside", "at the leading face"),
            Across(end, _end(bar.small, bar, asked, "small end"), "right", "small end"),
            *((Across(bar.length, Limits(ends.tail), "right", "tail end"),) if tail else ()),
        ),
        along=(
            Along(head, end, Limits(bar.body), "tapered part"),
            Along(head, face, Limits(face - head), "leading face"),
            *(
                (Along(0.0, ends.dog_flat[1], Limits(ends.dog_flat[1], after="flat"), "flat"),)
                if ends.dog_flat[1]
                else ()
            ),
            Along(0.0, head, Limits(head), "head end"),
            Along(0.0, bar.length, Limits(bar.length), "whole"),
        ),
        notes=(
            f"Taper {show.taper(bar.taper)} on diameter, the large end to the headstock.",
            "Sizes in brackets follow from the size at the leading face and the taper.",
            f"Leading face of the work {show.length(face - head)} from the large end: the short length is to it.",
            f"Bar {show.length(bar.stock)}. {_center_words(ends)}",
            *(
                (f"Flat for the dog {show.length(ends.dog_flat[0])} deep.",)
                if ends.dog_flat[1]
                else ("It stays in the chuck until the batch is done.",)
            ),
        ),
        general=_general(asked),
    )


def _end(size: Metre, bar: TurnedBar, asked: SoftAsked, after: str) -> Limits:
    """What the taper makes of an end when the seat is within its limits: nobody works to it."""
    low, high = bar.seat_limits(asked.units)
    away = to_tenth(size - bar.seat, asked.units)
    return Limits(low + away, 0.0, high - low, after=after, reference=True)


def _seat(bar: TurnedBar, asked: SoftAsked) -> Limits:
    """The size at the leading face: over the bore by what the push fills."""
    low, high = bar.seat_limits(asked.units)
    return Limits(low, 0.0, high - low, after="by trial")


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
            *(
                (Along(0.0, dog[0].end, Limits(dog[0].end, after="flat"), "dog's flat"),)
                if dog
                else ()
            ),
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
            *((f"Flat for the dog {show.length(ends.dog_flat[0])} deep.",) if dog else ()),
            "The screw itself sits in the hub of the work.",
        ),
        general=_general(asked),
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
