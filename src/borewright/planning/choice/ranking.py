"""The one order of all rows, whatever holds the work: hard limits, then risk, truth, time.

A total order: two rows never tie, because the name and the face are part of it.
"""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.held import HEAD_FACE, OUTSIDE
from borewright.answer.records import Candidate, Have, Need, Question, Verdict
from borewright.holding.jaws.chucked import as_cast_within
from borewright.holding.jaws.grasp import Where, bore_to_make, grasps
from borewright.holding.part import Part
from borewright.job.records import Job
from borewright.mechanics.spread import likely
from borewright.planning.choice.candidates import Weighed
from borewright.planning.choice.deciding import deciding_of, worst_of
from borewright.planning.choice.gives import held_gives, taper_gives
from borewright.planning.choice.held_rows import WeighedHeld
from borewright.planning.choice.mandrel_needs import mandrel_needs
from borewright.planning.questions.bore import form_verdict
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

RANKED_BY = (
    "what can be done with what is here or made here, then what must be bought, then what is a no; then risk: verdict, "
    "fewest answers of no, fewest of with care (a doubt about a finished bore that sliding it on the mandrel settles "
    "counts for none; a doubt about the hold that bores it counts); then truth: runout over what is allowed, as far as it exceeds it; then time: minutes of setting up "
    "the batch, making and another hold that bores it included, and of the ways that might be quickest the cutting too; then, among mandrels, steps away from the dog, bore nearest inside its window, share of bore that bears and slip margin; then name "
    "and face"
)
"""The order of the candidates, in words; printed with them."""

NOW, TO_BUY, NEVER = 0, 1, 2

UP_TO_TIME = 5
"""So many places of the key come before the minutes."""


@dataclass(frozen=True, slots=True, eq=False)
class Row:
    """One row of the ranking: what was weighed, its line in the answer, and its place."""

    weighed: Weighed | WeighedHeld
    candidate: Candidate
    key: tuple[int | float | str, ...]


ONE_CHUCKING = "one-chucking"

ONCE_BORED = "once another hold has bored it"
"""Said of a hold that takes a bore which is still to be made."""


def _boring(job: Job, tables: Tables) -> float:
    """Minutes for the batch of the hold in which the bore is made; 0 where it is there."""
    if not bore_to_make(Part(job, tables)):
        return 0.0
    return tables.holding_fact("boring_hold").best * job.work.quantity


def _doubt_before(job: Job, tables: Tables) -> tuple[Verdict, ...]:
    """With care where the hold that bores a casting opens its jaws inside a rim as cast."""
    part = Part(job, tables)
    place = next((g for g in grasps(part) if g.where is not Where.BORE), None)
    return (Verdict.CARE,) if place and as_cast_within(part, place) else ()


def _once_bored(reason: str, boring: float, verdict: Verdict) -> str:
    """The reason of a row; a no, or what must be bought, stands whoever bores it."""
    if not boring or verdict is Verdict.NO or reason.startswith(NOT_HERE):
        return reason
    if reason == ALL_YES:
        return f"Every question is answered yes, {ONCE_BORED}."
    return f"{ONCE_BORED[0].upper()}{ONCE_BORED[1:]}: {reason}"


NOT_HERE = "Not on the shelf: "


def taper_row(w: Weighed, tables: Tables, by_its_end: bool = False) -> Row:
    """The row of a plain taper mandrel, which is on the shelf or taken to be.

    `by_its_end`: what turns it was not asked for, and is not a dog.
    """
    hold, quantity = w.trial.hold, w.trial.job.work.quantity
    runout = _figure(w.questions, "true", "runout")
    drive = w.trial.drive.needs if w.trial.drive else ()
    needs = (*mandrel_needs(w.trial, tables), *drive)
    making = sum(n.minutes for n in needs if n.have is Have.MAKE)
    boring = _boring(w.trial.job, tables)
    minutes = tables.setup_minutes(hold.way).for_batch(
        quantity, making + boring + _driving(w, tables)
    )
    tie = (
        _steps_at_the_dog(w.trial.job, hold.leading),
        -round(min(w.question("bore").margin, 1.0), 3),
        -round(w.question("seat").margin, 3),
        -round(w.question("slip").margin_low, 3),
        -round(w.question("slip").margin, 3),
    )
    in_doubt = w.question("bore").verdict is Verdict.CARE
    worth = w.trial.chance_to_sit >= tables.holding_fact("worth_trying").best and not boring
    settled = in_doubt and worth and form_verdict(w.trial) is Verdict.YES
    before = _doubt_before(w.trial.job, tables) if boring else ()
    candidate = Candidate(
        hold.way,
        _mandrel_with_drive(w) + (IN[w.trial.job.driven_by] if by_its_end else ""),
        hold.leading,
        w.verdict,
        _once_bored(
            w.deciding.reason if w.verdict is not Verdict.YES else ALL_YES, boring, w.verdict
        ),
        decided_by=_decided(w.questions),
        runout=runout,
        minutes=minutes[1],
        needs=needs,
        gives=taper_gives(w.trial, w.questions),
        marks=MARKS if w.trial.drive is None else f"{MARKS} {w.trial.drive.marks}",
    )
    to_buy = tuple(n for n in needs if n.have is Have.BUY)
    key = _key(candidate, w.questions, to_buy, _excess(w.questions), tie, settled, before)
    return Row(w, candidate, key)


IN = {"collet": ", its end in a collet", "three-jaw": ", its end in the three-jaw"}
"""What a mandrel's own end is held in, where no dog drives it."""


def _mandrel_with_drive(w: Weighed) -> str:
    name = w.trial.hold.mandrel.name
    return f"{name} with {w.trial.drive.tool}" if w.trial.drive else name


def _driving(w: Weighed, tables: Tables) -> float:
    """Minutes that a positive drive adds for the batch."""
    if w.trial.drive is None:
        return 0.0
    return tables.holding_fact("drive_setting").best * w.trial.job.work.quantity


MARKS = "None, oiled and clean; a dry or dirty bore is scored."
"""What a ground mandrel leaves on the work (common practice, no source)."""

ALL_YES = "Every question is answered yes."


def held_row(w: WeighedHeld, job_quantity: int, tables: Tables) -> Row:
    """The row of any other way; one that cannot be done says why."""
    held, boring = w.held, _bored_elsewhere(w, tables)
    both = held.faces_done or HEAD_FACE in held.reaches
    second = 0.0 if both else tables.holding_fact("second_face").best
    making = held.making + held.handling + boring + second * job_quantity
    minutes = tables.setup_minutes(held.way).for_batch(job_quantity, making)
    candidate = Candidate(
        held.way,
        held.tool or tables.way(held.way).name,
        held.leading,
        w.verdict,
        _once_bored(_reason(w), boring, w.verdict),
        decided_by=_decided(w.questions) if w.trial else "cannot",
        runout=likely(held.grip.runout) if held.grip else None,
        minutes=minutes[1],
        needs=held.needs,
        gives=held_gives(held.grip) if held.grip else None,
        marks=held.marks,
    )
    tie = (0.0, 0.0, 0.0, 0.0, 0.0)
    before = _doubt_before(w.trial.job, tables) if boring and w.trial else ()
    excess = _excess(w.questions)
    key = _key(candidate, w.questions, held.to_buy, excess, tie, before=before)
    return Row(w, candidate, key)


def _steps_at_the_dog(job: Job, leading: str) -> float:
    """1 where most of what steps take off stands at the leading face, beside the dog."""
    form, work = job.work.finished.form, job.work
    return float(form.heavier_end(work.outside, form.length or work.length) == leading)


def _bored_elsewhere(w: WeighedHeld, tables: Tables) -> float:
    """Minutes of the hold that bores it; none where the bore is made in this one: in one chucking,
    or where nothing is turned of the outside.
    """
    if w.trial is None or w.held.way == ONE_CHUCKING or OUTSIDE not in w.held.reaches:
        return 0.0
    return _boring(w.trial.job, tables)


def _reason(w: WeighedHeld) -> str:
    if w.deciding is None:
        return w.held.cannot
    if w.held.to_buy and w.verdict is not Verdict.NO:
        return f"{NOT_HERE}{', '.join(n.what for n in w.held.to_buy)}."
    return ALL_YES if w.verdict is Verdict.YES else w.deciding.reason


def _decided(questions: tuple[Question, ...]) -> str:
    return "" if worst_of(questions) is Verdict.YES else deciding_of(questions).id


def _key(
    c: Candidate,
    questions: tuple[Question, ...],
    to_buy: tuple[Need, ...],
    excess: float,
    tie: tuple[float, ...],
    bench_settles: bool = False,
    before: tuple[Verdict, ...] = (),
) -> tuple[int | float | str, ...]:
    asked = [q.verdict for q in questions if not (bench_settles and q.id == "bore")]
    asked += before if asked else ()
    worst = max(asked, key=lambda v: v.rank) if asked else Verdict.NO
    hard = NEVER if c.verdict is Verdict.NO else TO_BUY if to_buy else NOW
    return (
        hard,
        worst.rank,
        asked.count(Verdict.NO) if asked else len(questions) + 1,
        asked.count(Verdict.CARE),
        excess,
        round(c.minutes),
        *tie,
        c.way,
        c.tool,
        c.leading_face,
    )


def _excess(questions: tuple[Question, ...]) -> float:
    """How far the runout exceeds what is allowed, as a share; 0 where it does not."""
    margin = next((q.margin for q in questions if q.id == "true"), 0.0)
    return round(max(0.0, 1.0 / margin - 1.0), 1) if margin > 0 else 99.0


def _figure(questions: tuple[Question, ...], question: str, name: str) -> Metre | None:
    figures = next(q.figures for q in questions if q.id == question)
    return next((f.best for f in figures if f.name == name), None)
