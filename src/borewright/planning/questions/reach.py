"""Reach: does the lathe swing the work and take the mandrel between its centers.

A shelf states lathes. Where nothing is turned, the grinder, or dividing head and tailstock, is not
known: what it needs is said, and no lathe is judged in its place.
"""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Figure, Question, Verdict
from borewright.job.records import Machine
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure, given
from borewright.planning.weighing.judge import judge
from borewright.quantities.show import Show
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
        _changes(tight, _called(trial)),
        tuple(_figure(r) for r in rooms),
        (trial.tables.threshold("reach").source,),
    )


def _verdict(trial: Trial, tight: _Room, margin: float) -> Verdict:
    """As judged; never worse than with care on a lathe that was only assumed."""
    found = judge("reach", margin, margin, trial.tables)
    return Verdict.CARE if found is Verdict.NO and not tight.stated else found


def _rooms(trial: Trial) -> tuple[_Room, _Room]:
    usual = trial.tables.allowance
    machine = trial.job.shelf.machine if _lathe(trial) else Machine()
    swing, centers = machine.swing_over_cross_slide, machine.between_centers
    return (
        _Room(
            "swing_over_cross_slide" if _lathe(trial) else "swing",
            "swing over the cross slide" if _lathe(trial) else "swing",
            swing if swing else usual("usual_swing").best,
            trial.job.work.outside,
            swing is not None,
        ),
        _Room(
            "between_centers",
            "length between centers",
            centers if centers else usual("usual_centers").best,
            trial.mandrel.overall_length,
            centers is not None,
        ),
    )


def _lathe(trial: Trial) -> bool:
    return any(c.on_lathe for c in trial.cuts)


ONE_AND_MANY = {
    "lathe": "lathes",
    "grinder": "grinders",
    "dividing head with its tailstock": "dividing heads",
}


def _called(trial: Trial) -> str:
    """What the mandrel goes between the centers of first."""
    if _lathe(trial):
        return "lathe"
    ground = trial.cuts[0].kind == "grind"
    return "grinder" if ground else "dividing head with its tailstock"


def _reason(trial: Trial, rooms: tuple[_Room, _Room], tight: _Room) -> str:
    machine = _called(trial)
    said = [_said(r, machine, trial.show) for r in rooms if r.stated]
    ask = [f"{trial.show.length(r.needs)} of {r.what}" for r in rooms if not r.stated]
    fits = tight.has >= tight.needs
    first = "It fits: " if fits else "It does not fit: " if tight.stated else ""
    if ask:
        many = ONE_AND_MANY[machine]
        most = f"most {many} have it" if fits else f"many {many} have less, so check"
        said.append(f"your {machine} was not stated; it needs {' and '.join(ask)}, and {most}")
    whole = (first if any(r.stated for r in rooms) else "") + "; ".join(said)
    return f"{whole[0].upper()}{whole[1:]}."


def _said(r: _Room, machine: str, show: Show) -> str:
    return (
        f"{show.length(r.needs)} of {r.what} is needed and the {machine} has {show.length(r.has)}"
    )


def _changes(tight: _Room, machine: str) -> str:
    if tight.has >= tight.needs:
        return "Nothing needs to."
    if tight.stated:
        return f"A {machine} with more {tight.what}."
    return (
        f"State the {tight.what}."
        if machine == "lathe"
        else f"A {machine} with the {tight.what} for it."
    )


def _figure(r: _Room) -> Figure:
    rule = "swing" if r.name.startswith("swing") else "centers_room"
    return figure(
        f"{r.name}_room",
        r.has - r.needs,
        "m",
        "length",
        rule,
        (given(r.what, r.has, "m"), given("needed", r.needs, "m")),
    )
