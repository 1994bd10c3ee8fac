"""A change to the part as one paragraph: what, what it brings, what it costs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from borewright.answer.records import Verdict
from borewright.quantities.show import Show

if TYPE_CHECKING:
    from borewright.answer.change import Change


WORTH_SETTING = 0.05e-3
"""A depth (m) below which no cut is worth setting (ours)."""


def change_words(change: Change, show: Show) -> str:
    """The change in words.

    >>> from borewright.answer.change import Change
    >>> from borewright.answer.records import Figure, Verdict
    >>> now, then = Figure("now", 0.0, "m"), Figure("then", 3e-4, "m")
    >>> took = Figure("time", 900.0, "s")
    >>> told = ("boss", "Leave a boss.", "nothing", took, Verdict.NO, Verdict.YES, ("slip",))
    >>> change_words(Change(*told, now, then, 3e-4), Show("mm"))
    'Leave a boss. From no to yes; no cut worth setting held with the usual reserve, now \
0.3 mm (0.012 in) deep does. About 15 min; of the drawing it touches nothing.'
    """
    cost = f"About {show.time(change.time.best)}; of the drawing it touches {change.drawing}."
    return f"{change.what} {_verdicts(change)}; {_depths(change, show)}. {cost}"


def change_line(change: Change, show: Show) -> str:
    """The change in a line: what, the verdict it turns, the time it takes."""
    return f"{change.what} {_verdicts(change)}; about {show.time(change.time.best)}."


def _verdicts(change: Change) -> str:
    before, after = change.verdict_before, change.verdict_after
    said = f"From {before} to {after}" if before is not after else f"Still {after}"
    said += f", {change.proviso}" if change.proviso and after is not Verdict.NO else ""
    return (
        f"{said} ({', '.join(change.turns)} better)" if change.turns and before is after else said
    )


def _depths(change: Change, show: Show) -> str:
    then = show.depth(change.depth_after.best)
    if change.depth_after.best < WORTH_SETTING:
        return "still no cut worth setting holds with the usual reserve"
    if change.depth_before.best < WORTH_SETTING and not change.rough_in_chuck:
        return f"no cut worth setting held with the usual reserve, now {then} deep does"
    now = show.depth(change.depth_before.best)
    if change.rough_in_chuck:
        held = f"the chuck drives the roughing, {then} deep is usual and was not weighed"
        return f"{held}; {now} was all that held on the mandrel" if then != now else held
    if now == then:
        return f"as deep a cut holds as before, {now}"
    return f"{then} deep holds with the usual reserve, {now} did before"
