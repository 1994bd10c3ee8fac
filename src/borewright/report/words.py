"""Words that the sheet, the terminal and the explanation share."""

from __future__ import annotations

import re
from collections.abc import Sequence
from math import isinf

from borewright.answer.cut_words import depth_words, feed_words, left_words, speed_words
from borewright.answer.plan import Plan
from borewright.answer.records import Candidate, Cut, Figure, Have, Step
from borewright.errors import UnknownName
from borewright.quantities.kinds import kind_of
from borewright.quantities.show import Show
from borewright.reference import tables

_UNJUDGED = {
    "rock": "whether it rocks",
    "heat": "heat",
    "true": "how true it runs",
    "speed": "whether the lathe goes slow enough",
    "power": "the power of the lathe",
    "chatter": "chatter",
    "balance": "balance",
}


def show_for(plan: Plan) -> Show:
    """The display in the units that the user typed."""
    return Show("mm" if plan.units == "mm" else "inch")


def spoken(name: str) -> str:
    """A key as words.

    >>> spoken("push_on_force")
    'push on force'
    """
    return name.replace("_", " ").replace("-", " ")


def figure_words(figure: Figure, show: Show) -> str:
    """A figure as shown: its value, or its band with the likely value first.

    >>> figure_words(Figure("push", 1900.0, "N", 1140.0, 2850.0, kind="force"), Show("mm"))
    '1.9 kN (430 lbf), 1.14 to 2.85 kN (260 to 640 lbf)'
    """
    return ", ".join(_parts(figure, show))


def band_words(figure: Figure, show: Show) -> str:
    """The 5 % to 95 % band of a figure, empty when it has none."""
    if figure.low is None or figure.high is None or figure.low == figure.high:
        return ""
    return show.band(figure.low, figure.high, kind_of(figure.unit, figure.kind))


def step_figures(step: Step, show: Show, elsewhere: str = "") -> tuple[str, ...]:
    """The figures of a step as sentences, less what its text, or words elsewhere, say already.

    >>> push = Figure("push", 1900.0, "N", kind="force")
    >>> step_figures(Step(1, "Press", "Expect 11.9 kN (430 lbf).", (push,)), Show("mm"))
    ('push: 1.9 kN (430 lbf).',)
    >>> step_figures(Step(1, "Press", "Expect 1.9 kN (430 lbf).", (push,)), Show("mm"))
    ()
    """
    text = f"{step.text}\n{elsewhere}"
    left = ((f, [w for w in _parts(f, show) if not _says(text, w)]) for f in step.figures)
    return tuple(f"{spoken(f.name)}: {', '.join(words)}." for f, words in left if words)


def _says(text: str, words: str) -> bool:
    """Whether the text holds these words, and not as the end of a longer number."""
    return re.search(rf"(?<![\d.,/])(?<!\d ){re.escape(words)}", text) is not None


def way_words(candidate: Candidate) -> str:
    """A way of holding in a line: what, how it was judged, the reason."""
    hold = candidate.tool or candidate.way
    face = f", face {candidate.leading_face} leading" if candidate.leading_face else ""
    verdict = f" {candidate.verdict.value};" if candidate.verdict else ""
    return f"{hold}{face}:{verdict} {candidate.reason}"


def row_words(candidate: Candidate, show: Show) -> str:
    """A row of the ranking: the way, and how true and how long where it can be done."""
    if candidate.runout is None or not candidate.minutes:
        return way_words(candidate)
    takes = (
        f"about {show_minutes(candidate.minutes)} to set up, runs out about "
        f"{show.small(candidate.runout)}"
    )
    bring = [need.what for need in candidate.needs if need.have is Have.MAKE]
    make = f"; makes {', '.join(bring)}" if bring else ""
    return f"{way_words(candidate)} ({takes}{make})"


def gives_words(candidate: Candidate, show: Show) -> str:
    """What a hold gives and what marks it leaves, in two sentences; empty without figures."""
    gives = candidate.gives
    if gives is None:
        return ""
    inwards = "a shoulder takes it" if isinf(gives.thrust_in) else show.force(gives.thrust_in)
    outwards = "a stop takes it" if isinf(gives.thrust_out) else show.force(gives.thrust_out)
    turning = "the drive does not slip" if isinf(gives.torque) else show.torque(gives.torque)
    said = (
        f"It gives, likely: torque {turning}; thrust towards the headstock: {inwards}; away from "
        f"it: {outwards}. Marks: {candidate.marks[:1].lower()}{candidate.marks[1:]}"
    )
    return said if candidate.marks else said.partition(" Marks:")[0]


def show_minutes(minutes: float) -> str:
    """Minutes as a guess deserves: to five beyond half an hour, in hours beyond two.

    >>> show_minutes(12.4), show_minutes(47.0), show_minutes(163.0)
    ('12 min', '45 min', '2.7 h')
    """
    if minutes > 120:
        return f"{minutes / 60:.1f} h"
    return f"{5 * round(minutes / 5) if minutes > 30 else round(minutes)} min"


def citation(source: str) -> str:
    """A source as a reader can find it; an id that no table knows stays as it is."""
    try:
        return tables().source(source).citation
    except UnknownName:
        return source


def named_sources(sources: Sequence[str]) -> tuple[str, ...]:
    """What a reader could look up: works seen in print, standards, works quoted from memory."""
    return tuple(dict.fromkeys(citation(_id(source)) for source in sources if not _is_ours(source)))


def unnamed_sources(sources: Sequence[str]) -> bool:
    """Whether some figures rest on common practice or on our own judgment."""
    return any(_is_ours(source) for source in sources)


def unjudged_words(plan: Plan) -> str:
    """The questions a plan leaves open, in words where it gives ids, in one line."""
    return "; ".join(_UNJUDGED.get(name, name) for name in plan.not_judged)


def citations(plan: Plan) -> tuple[str, ...]:
    """Every source of a plan, in its order, each once."""
    return tuple(dict.fromkeys(citation(source) for source in plan.sources))


def cut_lines(plan: Plan, show: Show) -> tuple[str, ...]:
    """Every cut as a sentence, with the diameter it leaves where the last one is known."""
    left = left_words(plan.cuts, plan.finished_outside, show)
    return tuple(cut_words(cut, show, left.get(cut.id, "")) for cut in plan.cuts)


def cut_words(cut: Cut, show: Show, left: str = "") -> str:
    """One cut as a sentence; `left` is the diameter that it leaves."""
    to = f", to {left}" if left else ""
    return (
        f"{cut.name}{to}: {speed_words(cut, show)}, {feed_words(cut, show)}, "
        f"{_passes(cut, show)}, {cut.direction} ({cut.seat_effect})"
    )


def _passes(cut: Cut, show: Show) -> str:
    if cut.kind == "groove":
        plunges = "1 plunge" if cut.passes == 1 else f"{cut.passes} plunges side by side"
        return f"{plunges}, {show.length(cut.depth)} wide"
    passes = "1 pass" if cut.passes == 1 else f"{cut.passes} passes"
    return f"{depth_words(cut, show)} deep, {passes}"


def _id(source: str) -> str:
    """The id of a source that a plan gives as `id` or as `id: citation`."""
    return source.partition(": ")[0]


def _is_ours(source: str) -> bool:
    try:
        return tables().source(_id(source)).kind in ("practice", "ours")
    except UnknownName:
        return False


def _parts(figure: Figure, show: Show) -> list[str]:
    best, band = show.quantity(figure.best, figure.unit, figure.kind), band_words(figure, show)
    return [best, band] if band else [best]
