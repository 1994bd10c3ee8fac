"""How the cuts are taken, in words: in which order, how long, what holds each back, what blocks."""

from __future__ import annotations

from borewright.answer.plan import Plan
from borewright.answer.records import Cut, Verdict
from borewright.answer.schedule import Blocked, Schedule, Taken
from borewright.quantities.show import Show
from borewright.quantities.si import Second
from borewright.report.words import show_minutes, spoken

_LIMITS = {
    "slip": "grip",
    "rock": "rocking",
    "bend": "bending",
    "chatter": "chatter",
    "torque": "torque",
    "power": "power",
    "least_chip": "least chip",
    "finish": "finish",
    "tool": "the tool",
    "wall": "wall",
    "speed": "speed",
    "heat": "warmth",
    "kept": "the other answers",
    "lathe": "what is usual",
    "": "as asked",
}
"""What keeps a cut from being faster, in a word or two."""


def schedule_of(plan: Plan) -> Schedule | None:
    """How the cuts are taken; None where that is not known or nothing may be cut on this hold."""
    found = plan.schedule
    if found is None or plan.verdict is Verdict.NO or not (found.taken or found.blocked):
        return None
    return found


def in_order(plan: Plan) -> tuple[tuple[Cut, Taken | None], ...]:
    """The cuts in the order of the hand, each with how it is taken where that is known.

    A cut of which the schedule says nothing stands after the others.
    """
    schedule = schedule_of(plan)
    taken = {t.cut: t for t in schedule.taken} if schedule else {}
    order = {name: k for k, name in enumerate(taken)}
    cuts = sorted(plan.cuts, key=lambda cut: order.get(cut.id, len(order)))
    return tuple((cut, taken.get(cut.id)) for cut in cuts)


def limit_words(taken: Taken) -> str:
    """What keeps the cut from being faster, in a word or two.

    >>> [limit_words(Taken("rough", 60.0, limit, "")) for limit in ("slip", "least_chip", "")]
    ['grip', 'least chip', 'as asked']
    """
    return _LIMITS.get(taken.limit, spoken(taken.limit))


def time_words(taken: Taken) -> str:
    """How long its passes take; empty where nothing was counted."""
    return lasting(taken.seconds) if taken.seconds > 0 else ""


def lasting(seconds: Second) -> str:
    """A time as closely as cutting keeps to it: 5 s, then half a minute, then a minute.

    >>> [lasting(s) for s in (3.2, 38.0, 98.0, 130.0, 707.0, 5300.0, 9000.0)]
    ['3 s', '40 s', '1.5 min', '2 min', '12 min', '90 min', '2.5 h']
    """
    if seconds < 75:
        return f"{max(1, round(seconds)) if seconds < 10 else 5 * round(seconds / 5)} s"
    if seconds < 600:
        return f"{round(seconds / 30) / 2:g} min"
    return show_minutes(seconds / 60)


def takes_words(taken: Taken) -> str:
    """Wait, time, limit and stop as sentences, for a line of text.

    >>> takes_words(Taken("rough", 150.0, "slip", "The grip holds no more."))
    'Takes 2.5 min; limited by grip: the grip holds no more.'
    >>> takes_words(Taken("face", 40.0, "", "", wait=300.0, stops="1 mm short"))
    'Wait 5 min before it. Takes 40 s, as asked. Stops 1 mm short.'
    """
    wait = f"Wait {lasting(taken.wait)} before it." if taken.wait > 0 else ""
    limit = f"; limited by {limit_words(taken)}" if taken.limit else f", {limit_words(taken)}"
    told = taken.said and taken.limit not in ("lathe", "")  # what is usual or asked says it all
    why = f"{limit}: {_lowered(taken.said)}" if told else limit
    takes = f"Takes {time_words(taken) or 'a moment'}{why}."
    return " ".join(words for words in (wait, takes, stops_words(taken)) if words)


def stops_words(taken: Taken) -> str:
    """Where it ends short of what holds the work, as a sentence; empty where nothing is said."""
    said = taken.stops.strip().rstrip(".")
    if not said:
        return ""
    return f"{said[:1].upper()}{said[1:]}." if said.lower().startswith("stop") else f"Stops {said}."


def whole_words(schedule: Schedule) -> str:
    """The whole time, cutting and waiting."""
    if schedule.seconds <= 0:
        return ""
    waits = sum(taken.wait for taken in schedule.taken)
    waiting = f", {lasting(waits)} of it waiting" if waits > 0 else ""
    whole = f"About {lasting(schedule.seconds)} in all{waiting}"
    return f"{whole}; setting, measuring and changing tools not counted."


def target_words(plan: Plan, schedule: Schedule, show: Show) -> str:
    """The size to read warm, and what it is once cold."""
    if schedule.target is None:
        return ""
    size, warmth = schedule.target
    cold = plan.finished_outside
    then = f"; cold it is then {show.turned(cold)}" if cold is not None else ""
    warmer = show.temperature_difference(warmth)
    return (
        f"Measured with the work {warmer} warmer than the room, the last "
        f"size reads {show.turned(size)}{then}. Cold work needs no such sum: wait where you can."
    )


def blocked_lines(plan: Plan, schedule: Schedule) -> tuple[str, ...]:
    """Every cut that nothing the lathe can be set to takes, and the cheapest way out."""
    names = {cut.id: cut.name for cut in plan.cuts}
    return tuple(_blocked(b, names.get(b.cut, spoken(b.cut))) for b in schedule.blocked)


def _blocked(blocked: Blocked, name: str) -> str:
    limit = _LIMITS.get(blocked.limit, spoken(blocked.limit))
    none = f"{name[:1].upper()}{name[1:]}: no setting of this lathe takes it"
    return f"{none}, because of {limit}. {blocked.way_out}"


def _lowered(said: str) -> str:
    """A sentence as it follows a colon, without its stop; a name or a figure keeps its capital."""
    said = said.strip().rstrip(".")
    plain = said[1:2].islower() and said[:1].isupper()
    return f"{said[:1].lower()}{said[1:]}" if plain else said
