"""What the ways out have in common: times, needs, the figures beside each row, cautions."""

from __future__ import annotations

from collections.abc import Iterable

from borewright.answer.records import Caution, Figure, Input, Question, Verdict
from borewright.planning.rescue.case import Case
from borewright.planning.weighing.figures import figure
from borewright.planning.words.cautions import held_cautions
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.reference.ranges import Range

SECONDS = 60.0


def takes(way_out: str, tables: Tables) -> Figure:
    """How long (s) a way out takes for one piece, by the table rescue_minutes."""
    r = tables.rescue_minutes(way_out)
    return _time(r.low, r.best, r.high, r.source)


def takes_holding(way: str, making: float, tables: Tables) -> Figure:
    """How long (s) one piece takes on a way of holding, `making` (minutes) what it needs."""
    minutes = tables.setup_minutes(way)
    return _time(*minutes.for_batch(1, making), minutes.once.source)


def both(one: Figure, other: Figure) -> Figure:
    """Two times (s), one after the other; their ends added, which is wide."""
    ends = (
        (one.low or one.best) + (other.low or other.best),
        (one.high or one.best) + (other.high or other.best),
    )
    sources = (*one.sources, *other.sources)
    return figure("takes", one.best + other.best, "s", "time", "", (), sources, ends)


def later(time: Figure, more: Range, made: float) -> Figure:
    """A time (s) with so many more minutes, and the minutes of making something."""
    low, best, high = (m + made for m in (more.low, more.best, more.high))
    return both(time, _time(low, best, high, more.source))


def takes_unknown() -> Figure:
    """A time (s) that nobody can say."""
    return figure("takes", float("nan"), "s", "time", "")


def _time(low: float, best: float, high: float, source: str) -> Figure:
    band = low * SECONDS, high * SECONDS
    return figure("takes", best * SECONDS, "s", "time", "", (), (source,), band)


def of_range(
    name: str, r: Range, kind: str, formula: str = "", inputs: tuple[Input, ...] = ()
) -> Figure:
    """A figure straight from a row of a table."""
    return figure(name, r.best, r.unit, kind, formula, inputs, r.sources, (r.low, r.high))


def between(
    name: str, low: Metre, high: Metre, sources: tuple[str, ...], kind: str = "bore"
) -> Figure:
    """A size to make, with its limits (m)."""
    return figure(name, (low + high) / 2, "m", kind, "", (), sources, (low, high))


def strength_of(question: Question) -> Figure:
    """The margin of a question about cracking or yielding, as the figure beside a row."""
    return figure(
        "strength_margin",
        question.margin,
        "",
        "ratio",
        "",
        (),
        question.sources,
        (min(question.margin_low, question.margin), question.margin),
    )


def worst(*verdicts: Verdict) -> Verdict:
    """The worst of them."""
    return max(verdicts, key=lambda v: v.rank)


def told(case: Case, *tags: str) -> tuple[str, ...]:
    """The cautions of these very operations on this work, worst first, less those said anyway."""
    return beyond_general(case, held_cautions(case.job, tags, case.tables))


def beyond_general(case: Case, called: tuple[Caution, ...]) -> tuple[str, ...]:
    """The texts of these cautions, less those said of the work whichever way is taken."""
    general = {c.id for c in general_cautions(case)}
    return tuple(c.text for c in called if c.id not in general)


def general_cautions(case: Case) -> tuple[Caution, ...]:
    """Hazards of this work whichever way is taken, worst first."""
    return held_cautions(case.job, ("chuck",), case.tables)


def sentence(words: str) -> str:
    """A clause as a sentence.

    >>> sentence("the bore is too big")
    'The bore is too big.'
    """
    return f"{capital(words).rstrip('.')}." if words else ""


def capital(words: str) -> str:
    """Words with the first letter a capital.

    >>> capital("the 5/8 in mandrel")
    'The 5/8 in mandrel'
    """
    return f"{words[:1].upper()}{words[1:]}"


def held_back(case: Case) -> tuple[str, ...]:
    """Why a way that presses or slides into the bore as found is no better than with care."""
    said = [f"How far it is {name} was not measured." for name in case.unmeasured()]
    if case.has("slipped"):
        said.append("Only when work and mandrel have been parted, looked at and measured again.")
    if case.has("scored"):
        said.append("Polish the raised edges of the scores down first.")
    if case.has("keyed") and case.job.work.keyway is None:
        said.append("The size of the keyway was not stated: its corner is not in the sum.")
    return tuple(said)


def joined(sentences: Iterable[str]) -> str:
    """Sentences in a row, the empty ones left out."""
    return " ".join(s for s in sentences if s)
