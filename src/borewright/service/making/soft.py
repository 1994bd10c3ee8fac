"""make soft: a soft mandrel from bar, turned to the bore or as drawn, with its papers."""

from __future__ import annotations

from borewright.answer.figure import Assumption
from borewright.holding.no_middle import no_middle
from borewright.holding.part import Part
from borewright.making.cannot import Cannot
from borewright.making.soft.as_drawn import drawn_bar
from borewright.making.soft.asked import Held, SoftAsked
from borewright.making.soft.drawn import drawn_drawn, turned_drawn
from borewright.making.soft.figures import drawn_numbers, turned_numbers
from borewright.making.soft.papers import drawn_papers, turned_papers
from borewright.making.soft.turned import TurnedBar, starting_grip, turned_bar
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.service.making.bored_work import BoredWork, band_of, check_bore
from borewright.service.making.outputs import Made
from borewright.service.making.stub import not_made, said_assumed

TITLE = "Soft mandrel"


def make_soft(
    work: BoredWork,
    tables: Tables,
    *,
    as_drawn: bool = False,
    held: Held = "centers",
    bar: Metre | None = None,
    hub_out: Metre | None = None,
) -> Made:
    """The soft mandrel for a work: turned to the bore, or the `bar` (m) as it is drawn.

    `hub_out` (m): how far the hub stands out where a set screw goes in; else as the job's outline
    says, else the whole length. RefusedInput for a bore beyond 1 to 150 mm; `done` is False where
    the answer is no.

    >>> from borewright.reference import tables
    >>> from borewright.service.making.bored_work import WorkTyped, work_typed
    >>> typed = WorkTyped(0.01602, None, 0.03, 0.04, "", "bore-gauge", "mm")
    >>> made = make_soft(work_typed(typed, tables()), tables(), as_drawn=True, bar=0.016)
    >>> round(made.numbers["runout_m"] * 1e6, 3), round(made.numbers["thrown_over_m"] * 1e6, 3)
    (20.0, 10.0)
    """
    part = Part(work.job, tables)
    check_bore(part)
    lost = no_middle(part, "a round bar")
    asked = soft_asked(part, as_drawn, held, bar, hub_out)
    if lost:
        return not_made(TITLE, Cannot(lost, "Bore it true first."), asked.units, work.assumed)
    told = hub_out is not None or max(map(part.sticks_out, "AB")) > 0
    hub = () if told else (Assumption("hub stands out", "the whole length of the bore", "ours"),)
    return _as_drawn(asked, work, tables, hub) if as_drawn else _turned(asked, work, tables)


def soft_asked(
    part: Part, as_drawn: bool, held: Held, bar: Metre | None, hub_out: Metre | None
) -> SoftAsked:
    """What is asked, from the work: the screw goes where the hub stands out most, as planned."""
    low, high, batch = band_of(part)
    face = max("AB", key=part.sticks_out)
    return SoftAsked(
        bore=low,
        bore_high=high,
        batch=batch,
        length=part.length,
        outside=part.outside,
        hub=part.ring_at(face).outside,
        hub_out=hub_out or part.sticks_out(face) or part.length,
        material=part.work.material,
        units=part.job.units,
        held=held,
        as_drawn=as_drawn,
        bar=bar,
    )


def _turned(asked: SoftAsked, work: BoredWork, tables: Tables) -> Made:
    bar = turned_bar(asked, tables)
    if isinstance(bar, Cannot):
        return not_made(TITLE, bar, asked.units, work.assumed)
    care = " ".join(
        filter(None, (_reaches_out(asked, bar.out_of_jaws, tables), _short(asked, bar)))
    )
    return Made(
        papers=turned_papers(asked, bar, care, tables),
        parts=(turned_drawn(asked, bar),),
        numbers={
            "verdict": "with care" if care else "yes",
            "reason": care,
            **turned_numbers(bar),
            **said_assumed(work.assumed),
        },
    )


def _short(asked: SoftAsked, bar: TurnedBar) -> str:
    """Why short work needs care: its window is as wide as a hand asks, not as the push does."""
    most, show = starting_grip(bar.taper, asked.length), Show(asked.units)
    if bar.grip[2] <= most * (1 + 1e-9):
        return ""
    return (
        f"work {show.length(asked.length)} long starts by hand by less than half of its length when the bar is more than "
        f"{show.small(most)} over the bore, which is finer than a hand hits: keep to the low end and try it often; a stub holds "
        "short work better."
    )


def _reaches_out(asked: SoftAsked, reach: Metre, tables: Tables) -> str:
    """Why a bar in the chuck needs care; empty between centers or where it is short."""
    most = tables.holding_fact("chuck_overhang_share").best
    if asked.held == "centers" or reach <= most * asked.bore:
        return ""
    return f"it stands out {reach / asked.bore:.1f} bores, {most:g} is the usual most: bring the tailstock up, or work between centers."


def _as_drawn(
    asked: SoftAsked, work: BoredWork, tables: Tables, hub: tuple[Assumption, ...]
) -> Made:
    bar = drawn_bar(asked, tables)
    if isinstance(bar, Cannot):
        return not_made("Soft mandrel, bar as drawn", bar, asked.units, work.assumed)
    care = f"what is turned on it runs out to its bore by up to {Show(asked.units).small(bar.runout[2])}, and so it stays."
    return Made(
        papers=drawn_papers(asked, bar, care, tables),
        parts=(drawn_drawn(asked, bar),),
        numbers={
            "verdict": "with care",
            "reason": care,
            **drawn_numbers(bar),
            **said_assumed((*work.assumed, *hub)),
        },
    )
