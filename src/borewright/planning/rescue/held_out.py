"""Holding the bore as it is, some other way: each weighed as the plan itself would weigh it."""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.held import Held
from borewright.answer.records import Figure, Question, Step, Verdict
from borewright.answer.rescue import WayOut
from borewright.holding.registry import WAYS
from borewright.mechanics.spread import likely
from borewright.planning.carried.carried_steps import held_proof, proved
from borewright.planning.choice.candidates import Weighed
from borewright.planning.choice.held_rows import WeighedHeld, weigh_ways
from borewright.planning.choice.ranking import held_row
from borewright.planning.choice.weighing_all import in_order
from borewright.planning.rescue.case import OUT_OF_SQUARE, Case
from borewright.planning.rescue.entry import (
    between,
    held_back,
    joined,
    sentence,
    strength_of,
    takes_holding,
    told,
    worst,
)
from borewright.planning.weighing.figures import spread

FRESH_STUB, EXPANDING, BONDED, SET_TRUE = "fresh-stub", "expanding", "bonded", "set-true"
OTHERWISE = "otherwise"

NAMED = {
    FRESH_STUB: ("turned-stub",),
    EXPANDING: ("expanding",),
    BONDED: ("bonded",),
    SET_TRUE: ("four-jaw", "faceplate"),
}
"""Ways of holding that are ways out by name; the best of the rest is one more."""

STRAIGHT = ("turned-stub", "nut-mandrel", "soft-mandrel", "gang", "spigot-plate", "collet-stub")
"""Ways that put a straight round piece into the bore, whole length or part."""


def fresh_stub(case: Case) -> WayOut:
    """A stub turned in the chuck to the bore as found."""
    found = by_holding(case, FRESH_STUB, "a stub turned to this bore")
    if found.verdict is Verdict.NO:
        return found
    slack, size = case.tables.holding_fact("stub_clearance"), case.found.least
    stub = between("stub_size", size - slack.high, size - slack.low, slack.sources)
    return replace(found, figures=(*found.figures, stub))


def expanding(case: Case) -> WayOut:
    """An expanding mandrel: odd sizes are what it is for."""
    return by_holding(case, EXPANDING, "an expanding mandrel")


def bonded(case: Case) -> WayOut:
    """Work bonded to a stub or plate."""
    return by_holding(case, BONDED, "bonded to a stub or a plate")


def set_true(case: Case) -> WayOut:
    """Gripped or strapped anywhere, the bore set true by indicator: any size and shape of bore.

    A bore worn oval is bored round so, and comes out larger.
    """
    named = "set true by indicator in a four-jaw chuck or on a faceplate"
    found = by_holding(case, SET_TRUE, named)
    if not case.worn_oval:
        return found
    holds, why = case.bore_grows()
    return replace(found, drawing=holds, drawing_why=why)


def otherwise(case: Case) -> WayOut:
    """The best of all other ways of holding."""
    named = {way for ways in NAMED.values() for way in ways}
    rest = tuple(way for way in WAYS if way not in named)
    return by_holding(case, OTHERWISE, "", rest)


def by_holding(case: Case, name: str, named: str, ways: tuple[str, ...] = ()) -> WayOut:
    """The best of these ways of holding for the bore as found."""
    weighed = weigh_ways(case.job, case.tables, ways or NAMED[name])
    best = in_order(held_row(w, 1, case.tables) for w in weighed)[0]
    found, held = (
        best.candidate,
        best.weighed.held if isinstance(best.weighed, WeighedHeld) else Held(""),
    )
    back = (*_held_back(case, held), *_touches_part(case, found.way))
    verdict = worst(found.verdict or Verdict.NO, Verdict.CARE if back else Verdict.YES)
    no = verdict is Verdict.NO
    holds, why = case.bore_stays()
    return WayOut(
        name,
        named or case.tables.way(found.way).name,
        verdict,
        found.reason if no else joined((_reason(held, best.weighed.questions), *back)),
        takes_holding(found.way, held.making + held.handling, case.tables),
        holds,
        why,
        held.needs,
        () if no else _figures(best.weighed.questions, held),
        () if no else tuple(f"{s.title}. {s.text}" for s in _steps(best.weighed)),
        () if no else (*told(case, *held.caution_tags), *((held.marks,) if held.marks else ())),
    )


def _steps(weighed: Weighed | WeighedHeld) -> tuple[Step, ...]:
    """Mounting, the proof load where something turns it, letting go."""
    if not isinstance(weighed, WeighedHeld) or weighed.trial is None:
        return ()
    trial, held = weighed.trial, weighed.held
    loaded = (proved(trial, held_proof(trial)),) if held.grip is not None else ()
    return (*held.mount, *loaded, *held.release)


def _reason(held: Held, questions: tuple[Question, ...]) -> str:
    """What to do, and the answer that is not a yes."""
    asked = [q for q in questions if q.verdict is not Verdict.YES]
    worst_first = sorted(asked, key=lambda q: -q.verdict.rank)
    return joined((sentence(held.do_it), *(q.reason for q in worst_first[:1])))


def _held_back(case: Case, held: Held) -> tuple[str, ...]:
    """Why it is no better than with care: what was said of the bore and is not in the sums."""
    said = held_back(case)
    if not held.presses_bore:
        said = tuple(s for s in said if "keyway" not in s)
    if case.has(OUT_OF_SQUARE) and held.seat is not None:
        said += (
            "A face that is not square to the bore tilts it on a shoulder: face that side first.",
        )
    return said


def _touches_part(case: Case, way: str) -> tuple[str, ...]:
    """Why a round stub in a bore read tapered, bell-mouthed or barrelled is with care."""
    found = case.found
    out = max(found.taper, found.bell, found.barrel)
    if way not in STRAIGHT or out == 0:
        return ()
    where = {
        found.taper: "at its small end",
        found.bell: "near its middle",
        found.barrel: "at its ends",
    }[out]
    return (
        f"What goes in is straight and the bore is not, by {case.show.small(out)}: it touches {where} only, and the runout said "
        "is that of a straight bore. Fit it there; the small end to the shoulder.",
    )


def _figures(questions: tuple[Question, ...], held: Held) -> tuple[Figure, ...]:
    if held.grip is None:
        return ()
    runout = spread("runout", held.grip.runout, "m", "small", "", (), held.sources)
    strained = likely(held.grip.strength) < float("inf")
    crack = tuple(strength_of(q) for q in questions if q.id == "crack" and strained)
    return (runout, *crack)
