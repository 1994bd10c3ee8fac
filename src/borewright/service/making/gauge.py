"""make gauge: a go and not-go plug, or a stepped one, for a bore window, with its papers."""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.figure import Assumption
from borewright.errors import RefusedInput
from borewright.holding.part import Part
from borewright.job.records import BoreLimits
from borewright.making.cannot import Cannot
from borewright.making.facts import best_of
from borewright.making.gauge.asked import Finish, GaugeAsked
from borewright.making.gauge.drawn import go_not_go_drawn, stepped_drawn
from borewright.making.gauge.figures import gauge_numbers
from borewright.making.gauge.form import form_of
from borewright.making.gauge.papers import gauge_papers
from borewright.making.gauge.steps import PlugStep, plug_steps
from borewright.making.gauge.worth import Worth, worth_of
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.service.making.bored_work import BoredWork, check_bore
from borewright.service.making.outputs import Made
from borewright.service.making.stub import not_made, said_assumed
from borewright.service.planned import plan

TITLE = "Plug gauge"


def make_gauge(
    work: BoredWork,
    tables: Tables,
    *,
    finish: Finish | None = None,
    stepped: bool = False,
    steps: int | None = None,
    blind: bool = False,
    length_known: bool = False,
    comparator: bool = False,
) -> Made:
    """The plug for a work whose bore is stated by its limits.

    A job file whose bore is still to be made gives the window that the plan bores it to.
    `length_known`: the work's length was stated, not taken; `comparator`: the plug is measured on one.
    RefusedInput for a bore without limits, beyond 1 to 150 mm, or more `steps` than stand apart;
    `done` is False where the answer is no.

    >>> from borewright.job.bore_text import bore_size
    >>> from borewright.reference import tables
    >>> from borewright.service.making.bored_work import WorkTyped, work_typed
    >>> size, limits = bore_size("25 H9", "--bore", None)
    >>> typed = WorkTyped(size, limits, 0.02, None, "", "", "mm")
    >>> made = make_gauge(work_typed(typed, tables()), tables())
    >>> ends = [made.numbers[f"go_{end}_m"] for end in ("smallest", "largest")]
    >>> made.numbers["finish"], [round(1e3 * x, 4) for x in ends]
    ('turned', [25.0052, 25.0127])
    """
    asked = replace(
        gauge_asked(work, tables, finish, stepped, steps, blind),
        depth=work.job.work.length if work.from_file or length_known else None,
        comparator=comparator,
    )
    worth = worth_of(asked, tables)
    if isinstance(worth, Cannot):
        return not_made(TITLE, worth, asked.units, ())
    found = plug_steps(asked, worth, tables) if stepped else ()
    if isinstance(found, Cannot):
        return not_made("Stepped plug", found, asked.units, ())
    form = form_of(asked, len(found), tables)
    if isinstance(form, Cannot):
        return not_made(TITLE, form, asked.units, ())
    care = _care(asked, worth, found, tables)
    part = (
        stepped_drawn(asked, worth, form, found) if found else go_not_go_drawn(asked, worth, form)
    )
    return Made(
        papers=gauge_papers(asked, worth, form, found, care, tables),
        parts=(part,),
        numbers={
            "verdict": "with care" if care else "yes",
            "reason": care,
            **gauge_numbers(asked, worth, form, found),
            **said_assumed(assumed_of(work)),
        },
    )


def gauge_asked(
    work: BoredWork,
    tables: Tables,
    finish: Finish | None,
    stepped: bool,
    steps: int | None,
    blind: bool,
) -> GaugeAsked:
    """What is asked; RefusedInput where the bore has no limits."""
    part, limits = Part(work.job, tables), _limits(work, tables)
    check_bore(part)
    nominal = (
        Show(work.job.units).length(limits.nominal).partition(" (")[0] if limits.nominal else ""
    )
    # A class beside millimetres is written without the unit.
    name = f"{nominal.removesuffix(' mm')} {limits.code}" if limits.code else ""
    return GaugeAsked(
        limits.low,
        limits.high,
        name,
        work.job.units,
        part.work.material,
        finish,
        stepped,
        steps,
        blind,
    )


def assumed_of(work: BoredWork) -> tuple[Assumption, ...]:
    """What was taken where the limits were not stated."""
    if work.job.work.bore.limits is not None:
        return ()
    return (Assumption("limits", "the window that the plan bores it to", "ours-derived"),)


def _limits(work: BoredWork, tables: Tables) -> BoreLimits:
    """The limits of the bore as stated, else the window that the plan wants it bored to.

    RefusedInput where the bore is one measured size and the plan has nothing left to bore.
    """
    stated = work.job.work.bore.limits
    if stated is not None:
        return stated
    if work.from_file:
        route = plan(work.job, source_tables=tables).bore_route
        if route is not None and route.plug_steps:
            return BoreLimits(route.plug_steps[0].best, route.plug_steps[-1].best)
    allowed = "its limits, such as 16 H7, or a smallest and a largest size"
    raise RefusedInput("bore", "one size", allowed)


def _care(asked: GaugeAsked, worth: Worth, steps: tuple[PlugStep, ...], tables: Tables) -> str:
    """Why the answer is with care; empty where it is a plain yes."""
    lost, show = worth.zones.lost_worst, Show(asked.units)
    if lost > best_of(tables, "plug_facts")("most_lost"):
        return (
            f"the window is {show.small(asked.band)} and the plug takes {show.small(lost * asked.band)} of it at the worst: bore to the "
            "middle of it, and measure what it calls bad before it is thrown away."
        )
    return ""
