"""What is printed beside the paper strip: how to lay it, how to read it, what misleads it."""

from __future__ import annotations

from borewright.quantities.show import Show
from borewright.quantities.si import Metre, MetrePerMetre


def strip_words(
    step: Metre, taper: MetrePerMetre, hand_travel: Metre, show: Show, end_stated: bool
) -> tuple[str, ...]:
    """The sentences of one strip."""
    per = f"About {show.length(step / taper)} along the mandrel is {show.small(step)} of bore"
    return (
        f"{_datum(end_stated)} {_slide(hand_travel)}",
        "Read at its leading face, the one towards the large end.",
        f"{per}. {_push(hand_travel, show)}",
        "It reads the straight bore that stops there: one that closes further in reads small.",
    )


def _datum(end_stated: bool) -> str:
    if end_stated:
        return "Set the line marked large-end face at that face."
    return (
        "The length of the reduced end is not known: set the line marked end of ground at the "
        "large end of the ground part."
    )


def _push(hand_travel: Metre, show: Show) -> str:
    if hand_travel > 0:
        return f"The lines are moved {show.length(hand_travel)} for the hand's own push."
    return (
        "The lines are for first touch: every bit that a push moves the work further reads large."
    )


def _slide(hand_travel: Metre) -> str:
    if hand_travel > 0:
        return "Slide the work on from the small end, oiled, with a light push."
    return (
        "Slide the work on from the small end, oiled, and stop where it first touches: do not push."
    )
