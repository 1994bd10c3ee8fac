"""The whole plan for a job: weigh the shelf, carry the winner through."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from borewright.answer.bore_route import BoreRoute
from borewright.answer.plan import Plan
from borewright.answer.records import Assumption, Figure, Have, Verdict
from borewright.cutting.demand import chip_is_thin
from borewright.job.records import Bore, Job
from borewright.planning.bore_route.wanted import wanted, windows_of
from borewright.planning.carried.carried_plan import cannot_plan, carried_plan
from borewright.planning.changes.plain_yes import plain_yes
from borewright.planning.choice.arrangement import Arranged, arrange
from borewright.planning.choice.candidates import Weighed
from borewright.planning.choice.held_rows import WeighedHeld
from borewright.planning.choice.ranking import RANKED_BY, Row
from borewright.planning.choice.recommended import other_ways, recommended
from borewright.planning.choice.timed import timed
from borewright.planning.choice.weighing_all import Weighing, weigh
from borewright.planning.picture.layout import layout
from borewright.planning.questions.asked import unjudged
from borewright.planning.questions.seat import wear_elsewhere
from borewright.planning.shop.names import check_names, material_taken
from borewright.planning.steps.steps import steps
from borewright.planning.weighing.rim_speed import rim_cautions
from borewright.planning.words.cautions import cautions
from borewright.planning.words.push_advice import proof_load, push_advice
from borewright.planning.words.words import assumed, echo, have_ready, headline
from borewright.quantities.show import Show
from borewright.reference.library import Tables

if TYPE_CHECKING:
    from borewright.answer.change import Change
    from borewright.answer.first_hold import FirstHold
    from borewright.answer.schedule import Schedule


def plan_job(job: Job, tables: Tables, *, with_changes: bool = True) -> Plan:
    """How to hold, press, cut and take off the work of a job.

    `with_changes`: also weigh what of the part to change, where the answer is no plain yes.
    UnknownName for a material, gauge or process that the tables do not have; RefusedInput where
    `use` names nothing that can be tried.
    """
    check_names(job, tables)
    job, taken = material_taken(job, tables)
    found, schedule = timed(arrange(job, tables), tables)
    plan = replace(
        _carried_through(found, tables),
        bore_route=_bore_route(found, tables),
        first_hold=_first_hold(found, tables),
        changes=_changes(found, tables) if with_changes else (),
        schedule=_schedule(schedule, found) if with_changes else schedule,
    )
    plan = _cleaned_up(_with_the_limits(plan), found.job, tables)
    ranked = f"Candidates are ranked by {RANKED_BY}."
    return replace(plan, assumed=(*taken, *plan.assumed, MINUTES), notes=(*plan.notes, ranked))


def _with_the_limits(plan: Plan) -> Plan:
    """With care at best where a cut is past a limit whatever the lathe is set to; a chip that is thin
    because there is hardly any metal to come off is no such limit."""
    blocked = {b.limit for b in plan.schedule.blocked} if plan.schedule else set()
    if plan.verdict is not YES or not blocked - {"least_chip"}:
        return plan
    what = (
        "The finish that is wanted is out of reach here: see the cuts."
        if "finish" in blocked
        else "Some cuts are past a limit whatever the lathe is set to: see them."
    )
    return _with_care(plan, what)


def _with_care(plan: Plan, why: str) -> Plan:
    """The plan with care, and why; what is chosen says the same."""
    chosen = plan.chosen and replace(plan.chosen, verdict=Verdict.CARE, reason=why)
    candidates = tuple(chosen if c is plan.chosen and chosen else c for c in plan.candidates)
    headline = f"With care{plan.headline.removeprefix('Yes')} {why}"
    return replace(
        plan, verdict=Verdict.CARE, headline=headline, chosen=chosen, candidates=candidates
    )


def _cleaned_up(plan: Plan, job: Job, tables: Tables) -> Plan:
    """With care at best where the outside of a casting that is turned does not clean up."""
    turned = any(c.kind == "turn" and c.span is None for c in plan.cuts)
    if job.work.blank != "casting" or plan.verdict is NO or not turned:
        return plan
    from borewright.planning.steps.casting_stock import stock_of  # castings only

    stock = stock_of(job, tables)
    if stock.verdict is not NO:
        return plan
    show = Show(job.units)
    wanted_stock, there = stock.wanted(stock.skin.best), stock.there
    if wanted_stock is None or there is None:
        return plan
    why = (
        f"The outside does not clean up: it wants {show.depth(wanted_stock)} on the radius, half of its throw and the skin, and "
        f"has {show.depth(there)}; patches of skin stay."
    )
    if plan.verdict is YES:
        return _with_care(plan, why)
    return replace(plan, headline=f"{plan.headline} {why}")


def _schedule(schedule: Schedule | None, found: Arranged) -> Schedule | None:
    """The schedule with heat and charts; as it is where no hold stands behind it."""
    row = recommended(found)
    trial = row.weighed.trial if row is not None else None
    if schedule is None or trial is None:
        return schedule
    from borewright.planning.picture.schedule_filled import filled  # lists of parts start sooner

    return filled(schedule, trial)


MINUTES = Assumption(
    "minutes of setting up and making",
    "guesses; your own go into tables of your own, setup_minutes and holding_tools",
    "ours",
)


def _first_hold(found: Arranged, tables: Tables) -> FirstHold | None:
    """The hold of the way that is recommended, or one that bores the casting for it."""
    if found.job.work.blank != "casting":
        return None
    from borewright.planning.steps.first_hold import first_hold  # other blanks start sooner

    row = recommended(found)
    if row is None or row.candidate.verdict is NO:
        return first_hold(found.job, tables)
    held = row.weighed.held if isinstance(row.weighed, WeighedHeld) else None
    if held is not None and held.in_jaws is not None:
        return first_hold(found.job, tables, held.in_jaws)
    return first_hold(found.job, tables, then=row.candidate.tool)


def _changes(found: Arranged, tables: Tables) -> tuple[Change, ...]:
    """What of the part to change: nothing where what is recommended is a plain yes."""
    row, best = recommended(found), found.best
    if row is not None and isinstance(row.weighed, WeighedHeld) and row.candidate.verdict is YES:
        return ()
    if best is not None and plain_yes(best):
        return ()
    from borewright.planning.changes.changes import changes  # a plain yes comes sooner

    all_of_them = changes(found.job, tables, best)
    if row is None or isinstance(row.weighed, Weighed) or row.candidate.verdict is NO:
        return all_of_them
    # Roughing it before the mandrel helps nobody who is not going to use one.
    return tuple(change for change in all_of_them if not change.rough_in_chuck)


def _bore_route(found: Arranged, tables: Tables) -> BoreRoute | None:
    """How the bore comes to the window of a hold that was weighed, best first.

    The travel, and with it the window, is chosen for the bore there is: a bore that is still to be
    made is weighed again as if it were.
    """
    job, shop, windows = found.job, found.shop, _windows(found.weighing)
    row = recommended(found)
    if job.work.bore.limits and not (row and isinstance(row.weighed, Weighed)):
        shop, windows = replace(shop, mandrels=()), ()  # the class is met; no mandrel narrows it
    if wanted(job, windows_of(job, shop, tables, windows), tables) is None:
        return None
    from borewright.planning.bore_route.route import bore_route  # a finished bore starts sooner

    with_rim = row is not None and row.candidate.way == ONE_CHUCKING
    route = bore_route(job, shop, tables, windows, with_rim)
    if route is None or (aim := route.aims_at).low is None or aim.high is None:
        return route
    if aim.low <= job.work.bore.size <= aim.high:
        return route
    opened = (aim.low + aim.high) / 2
    if any(p.inside is None and p.outside <= opened for p in job.work.pieces):
        return route
    made = Bore(opened, measured_with="plug gauge", made_by="reamed")
    as_made = replace(job, work=replace(job.work, bore=made))
    again = _windows(weigh(as_made, shop, tables, ()))
    return bore_route(job, shop, tables, again, with_rim)


def _windows(weighing: Weighing) -> tuple[tuple[str, float, float], ...]:
    """Mandrel, smallest and largest bore (m) of each mandrel tried, best first."""
    trials = (row.weighed.trial for row in weighing.rows if isinstance(row.weighed, Weighed))
    return tuple((trial.mandrel.name, *trial.window) for trial in trials)


def _carried_through(found: Arranged, tables: Tables) -> Plan:
    """The plan of the row that is recommended, or the reasons why there is none."""
    row = recommended(found)
    if row is None:
        return _none_serves(found, tables)
    if isinstance(row.weighed, Weighed):
        return _served(found, row, row.weighed, tables)
    return _held(found, row, row.weighed, tables)


def _held(found: Arranged, row: Row, weighed: WeighedHeld, tables: Tables) -> Plan:
    candidates, others = found.weighing.candidates, other_ways(found, row.candidate.way)
    if weighed.trial is None:
        reason = weighed.held.cannot
        return cannot_plan(found.job, reason, candidates, others, tables)
    return carried_plan(weighed, weighed.trial, row.candidate, candidates, others, tables)


def _none_serves(found: Arranged, tables: Tables) -> Plan:
    """Nothing on the shelf, and nothing that can be made here, holds it."""
    asked = [row.candidate for row in found.weighing.rows]
    bought = [c for c in asked if any(n.have is Have.BUY for n in c.needs) and c.verdict is not NO]
    reason = f"{bought[0].tool} would serve. {bought[0].reason}" if bought else _missing(found)
    return cannot_plan(found.job, reason, found.weighing.candidates, (), tables)


YES, NO = Verdict.YES, Verdict.NO

ONE_CHUCKING = "one-chucking"


def _served(found: Arranged, row: Row, best: Weighed, tables: Tables) -> Plan:
    """The plan on a plain taper mandrel."""
    job, shop = replace(found.job, driven_by=best.trial.job.driven_by), found.shop
    trial, better = best.trial, other_ways(found, row.candidate.way)
    push, proof = push_advice(trial), proof_load(trial)
    no = best.verdict is Verdict.NO
    sheet_steps = steps(trial, push, proof)
    figures = tuple(f for q in best.questions for f in q.figures)
    return Plan(
        title=job.title,
        units=job.units,
        verdict=best.verdict,
        headline=headline(best, better),
        echo=echo(job, tables),
        chosen=None if no else row.candidate,
        questions=best.questions,
        candidates=found.weighing.candidates,
        better_ways=better,
        steps=() if no else sheet_steps,
        cautions=(
            *rim_cautions(trial, tables),
            *cautions(
                job,
                shop,
                tables,
                None if no else trial.mandrel,
                trial.drive.caution_tags if trial.drive else (),
            ),
        ),
        cuts=trial.cuts,
        have_ready=() if no else have_ready(best, shop, push, proof.by_hand),
        figures=figures,
        bore_window=trial.window if trial.window[0] < trial.window[1] else None,
        push=None if no else push,
        proof=None if no else proof,
        layout=layout(trial),
        assumed=assumed(job, shop, best, tables),
        not_judged=unjudged(job),
        sources=_sources(figures, best, tables),
        notes=(*found.instead, *_notes(best, tables)),
    )


def _missing(found: Arranged) -> str:
    """Why no mandrel of the shelf can be tried."""
    nearest = found.weighing.nearest
    if found.shop.owns_none or nearest is None:
        return "there is no mandrel to try."
    ground = Show(found.job.units).band(nearest.small_end, nearest.large_end, "bore")
    return f"no mandrel on the shelf is near this bore; the nearest, {nearest.name}, is ground {ground}."


def _sources(figures: tuple[Figure, ...], best: Weighed, tables: Tables) -> tuple[str, ...]:
    ids = {s for f in figures for s in f.sources} | {s for q in best.questions for s in q.sources}
    ids |= {tables.formula(f.formula).source for f in figures if f.formula}
    ids.discard("stated")
    return tuple(f"{i}: {tables.source(i).citation}" for i in sorted(ids))


def _notes(best: Weighed, tables: Tables) -> tuple[str, ...]:
    notes = [*wear_elsewhere(best.trial)]
    thin = [c.name for c in best.trial.cuts if chip_is_thin(c, tables)]
    if thin:
        notes.append(
            f"Chips thinner than the force law was fitted for: {', '.join(thin)}; their forces are stretched."
        )
    notes.append(
        "Pressure and stress are those of work and mandrel as two elastic bodies on the true outline; a sharp "
        "edge or corner has no greatest stress and is left to its radius."
    )
    if best.trial.job.work.spokes:
        notes.append(
            "Spokes: only the hub is taken to grip, as a ring by itself; what the spokes add to it is left out, and so "
            "is what one of them loads more than its share."
        )
    if best.trial.job.work.keyway:
        notes.append(
            "The keyway takes its width off the round that bears, and raises the stress by its notch factor: estimates, "
            "not a sum of the corner."
        )
    return tuple(notes)
