"""The steps of bore and rim in one setting: grip, set true, tighten; open the bore; finish it.

The proof load comes between gripping and the first cut; the table of cuts between opening the bore
and finishing it, once the work is cool.
"""

from __future__ import annotations

from borewright.answer.held import line
from borewright.answer.records import Figure, Step
from borewright.holding.jaws.as_cast import BOSS, OUTSIDE, RIM, set_true
from borewright.holding.jaws.chucked import back_words, draft_words, grasp_words, squeezed_lightly
from borewright.holding.jaws.drilled_out import drilling_of
from borewright.holding.jaws.grasp import Grasp, Where
from borewright.holding.jaws.jawed import INDEPENDENT, Jawed, Jaws
from borewright.holding.part import Part
from borewright.quantities.si import Metre

HELD_ON = {Where.HUB: BOSS, Where.RIM: RIM}


def bar_trues_it(part: Part) -> bool:
    """True where a boring bar goes into the bore and reaches through it.

    The owner's where one is stated, else a usual one.
    """
    own, boring = part.job.shelf.boring_bar, part.tables.boring
    usual = boring("bar_smallest").best
    smallest = (own.smallest_bore or usual) if own is not None else usual
    if part.bore < smallest * (1 - 1e-9):
        return False
    if own is not None:
        return own.reach is None or part.length <= own.reach * (1 + 1e-9)
    return part.length <= boring("bar_reach").best * min(part.bore, THICKEST)


THICKEST: Metre = 0.025
"""A bore (m) beyond which a small lathe's bar grows no thicker (ours)."""


def bar_gripped(part: Part, held: Jawed, extra: Figure, out: Metre, set_by: str) -> Step:
    """Bar in the chuck; in independent jaws it is brought near to the middle first."""
    show, pieces = part.show, part.work.quantity
    longer = "the work" if pieces == 1 else f"the {pieces} pieces"
    near = (
        " Bring it near to true by opposite jaws, so that the outside cleans up."
        if set_by.startswith("four")
        else ""
    )
    return line(
        "Grip the bar",
        f"Bar {show.length(extra.best)} longer than {longer}, out by {show.length(out)}.{near} Key pulled up at every screw.",
        (extra, *held.figures),
    )


def set_up_casting(part: Part, grasp: Grasp, held: Jawed, jaws: Jaws) -> tuple[Step, ...]:
    """Lightly gripped, set true by what stays as cast, then pulled up and read again."""
    return (
        line(
            "Grip it lightly",
            f"No sand or flash under a jaw. Hold it {grasp_words(part, grasp)}, {back_words(part, grasp)}, just so tight that "
            f"it stays.{draft_words(part, grasp)}",
        ),
        _set_by(part, grasp, jaws),
        line(
            "Pull it up",
            f"Pull up at every screw in turn, opposite jaws alike, and read again.{squeezed_lightly(part, held)}",
            held.figures,
        ),
    )


def _set_by(part: Part, grasp: Grasp, jaws: Jaws) -> Step:
    by, within = set_true(part.work), part.show.length(part.tables.allowance("rough_true").best)
    how = "by opposite jaws" if jaws is INDEPENDENT else "by packing a jaw"
    read = by.read(HELD_ON.get(grasp.where, OUTSIDE))
    return line(
        "Set it true",
        f"Turn it by hand against a point: {by.round_by} to within {within} {how}{read}; then {by.flat_by} by tapping, and the "
        "first again.",
        (),
        ("set true within",),
    )


def opened_up(part: Part) -> Step:
    """Face, hole and boring bar, the bore left under size."""
    drilling = drilling_of(part)
    start = (
        "The boring bar goes first, as a drill follows the hole that is there"
        if drilling is None
        else "Center and drill under size"
    )
    bar = ", then the boring bar: it makes the hole straight and true" if drilling else ""
    if not bar_trues_it(part):
        bar, start = "", "Center and drill, leaving the reamer its stock"
    look = (
        " Look into bore and face: a hole in the metal shows before more work is spent."
        if part.work.blank == "casting"
        else ""
    )
    return line(
        "Face, and rough the bore",
        f"Face the end. {start}{bar}. Leave it under size until the work is roughed and cool.{look}",
        (drilling.figure,) if drilling else (),
    )


def bore_finished(part: Part) -> Step:
    """The bore to size before the rim, nothing slackened in between."""
    size = part.show.bore(part.bore)
    how = (
        "with the bar, or with the bar and the reamer after it, as a reamer alone only follows the drill"
        if bar_trues_it(part)
        else "with the reamer, which follows the drill"
    )
    return line(
        "Cool, then finish the bore",
        f"Nothing slackened. Let the work come to room temperature, then finish the bore to {size} {how}; gauge it.",
        (),
        ("bore",),
    )
