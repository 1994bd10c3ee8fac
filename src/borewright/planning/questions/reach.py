"""Reach: does the lathe swing the work and take the mandrel between its centers."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Figure, Question, Verdict
from borewright.planning.figures import figure, given
from borewright.planning.judge import judge
from borewright.planning.trial import Trial
from borewright.quantities.si import Metre


@dataclass(frozen=True, slots=True)
class _Room:
    """One thing the lathe must have room for."""

    name: str
    what: str
    has: Metre
    needs: Metre
    stated: bool


def ask_reach(trial: Trial) -> Question:
    """Margin: room of the machine over room needed, the tighter of swing and centers."""
    rooms = _rooms(trial)
    tight = min(rooms, key=lambda r: r.has / r.needs)
    margin = tight.has / tight.needs
    return Question(
        "reach",
        _verdict(trial, tight, margin),
        margin,
        margin,
        _reason(trial, rooms, tight),
        _changes(tight),
        tuple(_figure(r) for r in rooms),
        (trial.tables.threshold("reach").source,),
    )


def _verdict(trial: Trial, tight: _Room, margin: float) -> Verdict:
    """As judged; never worse than with care on a lathe that was only assumed."""
    found = judge("reach", margin, margin, trial.tables)
    return Verdict.CARE if found is Verdict.NO and not tight.stated else found


def _rooms(trial: Trial) -> tuple[_Room, _Room]:
    machine, usual = trial.job.shelf.machine, trial.tables.allowance
    swing, centers = machine.swing_over_cross_slide, machine.between_centers
    return (
        _Room(
            "swing_over_cross_slide",
            "swing over the cross slide",
            swing if swing else usual("small_lathe_swing").best,
            trial.job.work.outside,
            swing is not None,
        ),
        _Room(
            "between_centers",
            "length between centers",
            centers if centers else usual("small_lathe_centers").best,
            trial.mandrel.overall_length,
            centers is not None,
        ),
    )


def _reason(trial: Trial, rooms: tuple[_Room, _Room], tight: _Room) -> str:
    show, parts = trial.show, []
    for r in rooms:
        whose = "the lathe has" if r.stated else "a small bench lathe usually has"
        parts.append(
            f"{show.length(r.needs)} of {r.what} is needed and {whose} {show.length(r.has)}"
        )
    unstated = [r.what for r in rooms if not r.stated]
    check = f" Check the {' and the '.join(unstated)} of yours." if unstated else ""
    no = "It does not fit" if tight.stated else "It may not fit"
    first = "It fits" if tight.has >= tight.needs else no
    return f"{first}: {'; '.join(parts)}.{check}"


def _changes(tight: _Room) -> str:
    return f"A lathe with more {tight.what}." if tight.has < tight.needs else "Nothing needs to."


def _figure(r: _Room) -> Figure:
    return figure(
        f"{r.name}_room",
        r.has - r.needs,
        "m",
        "length",
        "swing",
        (given(r.what, r.has, "m"), given("needed", r.needs, "m")),
    )
