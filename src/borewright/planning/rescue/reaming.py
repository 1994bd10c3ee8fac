"""Taking metal out of the bore: to the size wanted, or on to the next reamer up."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from borewright.answer.records import Figure, Have, Need, Verdict
from borewright.answer.rescue import DrawingHolds, WayOut
from borewright.holding.owned import needed
from borewright.job.interrupted import Keyway
from borewright.job.records import Bore, Job
from borewright.planning.choice.arrangement import arrange
from borewright.planning.choice.candidates import Weighed
from borewright.planning.rescue.case import FORMS, OUT_OF_SQUARE, SCORED, Case
from borewright.planning.rescue.entry import (
    between,
    capital,
    joined,
    of_range,
    strength_of,
    takes,
    worst,
)
from borewright.planning.rescue.other_mandrel import noted, with_drive
from borewright.planning.rescue.wanted import Whose
from borewright.planning.shop.owned import reamer_between
from borewright.planning.weighing.figures import figure, given
from borewright.quantities.si import Metre
from borewright.reference.ranges import Range

KEYWAY = "The teeth of a straight-fluted reamer catch in the keyway: one with spiral flutes, or bore it to size instead."
TO_SIZE, NEXT_REAMER = "to-size", "next-reamer"


def to_size(case: Case) -> WayOut:
    """Ream, bore or hone out to the size wanted, where metal for it is still there."""
    wanted, found, tables = case.wanted, case.found, case.tables
    spoilt = case.has(*FORMS, OUT_OF_SQUARE, SCORED)
    least = found.largest + (tables.rescue_fact("clean_up").low if spoilt else 0.0)
    holds, why = DrawingHolds.YES, "The bore is then the size that was wanted."
    if wanted.whose is not Whose.DRAWING:
        holds, why = DrawingHolds.ASK, "No limits of the bore were stated: the shaft decides."
    named = "take it out to the size wanted"
    if least > wanted.high:
        return _no(case, named, spoilt, least)
    care = of_range("runout", tables.holding_fact("indicator_care"), "small")
    size = between("bore_to_make", max(wanted.low, least), wanted.high, wanted.sources)
    tool, by = _tool(case, least)
    room = case.show.small(wanted.high - found.least)
    return WayOut(
        TO_SIZE,
        named,
        Verdict.YES,
        f"There is metal for it: up to {room} can come out, {by}.",
        takes(TO_SIZE, tables),
        holds,
        why,
        (tool, needed(case.job, tables, "indicator")),
        (care, size),
        _steps(case, by),
    )


def _no(case: Case, named: str, spoilt: bool, least: Metre) -> WayOut:
    show, wanted = case.show, case.wanted
    said = (
        f"To clean up all round it must come out to {show.bore(least)}, over {wanted.said}."
        if spoilt and case.found.largest <= wanted.high
        else f"It is over {wanted.said} already: metal cannot be put back."
    )
    why = "The bore would be over size."
    return WayOut(
        TO_SIZE, named, Verdict.NO, said, takes(TO_SIZE, case.tables), DrawingHolds.NO, why
    )


def _tool(case: Case, least: Metre) -> tuple[Need, str]:
    """The reamer on the shelf that cuts inside what is wanted, a hone, or the boring bar."""
    wanted, tables = case.wanted, case.tables
    own = reamer_between(case.job.shelf.reamers, wanted.low, wanted.high, least)
    square = case.has(*FORMS, OUT_OF_SQUARE)
    if own and not square:
        name = own[0].name or f"reamer {case.show.length(own[0].size)}"
        return Need(name, Have.OWN), f"by {name}, which cuts {case.show.bore(own[1])}"
    if wanted.low - least <= tables.rescue_fact("hone_most").best and not square:
        tool = Need("hone, lap or abrasive cloth round a slotted stick", Have.OWN, taken=True)
        return tool, "so little that it is honed or lapped, not bored"
    return needed(case.job, tables, "boring-bar"), "by the boring bar, set true by indicator"


def _steps(case: Case, by: str) -> tuple[str, ...]:
    low, high = max(case.wanted.low, case.found.least), case.wanted.high
    limits = case.show.band(low, high, "bore")
    return (
        "Set the bore true by indicator in two places along it, and the face as well: a bore opened askew is scrap.",
        f"Take it out {by}, in cuts that halve what is left; the last ones by the same setting of the tool.",
        f"Measure at both ends and the middle, in two directions; stop inside {limits}.",
    )


@dataclass(frozen=True, slots=True)
class Opener:
    """A reamer and the bore (m) it leaves."""

    name: str
    size: Metre
    after: Metre
    half_band: Metre
    own: bool


def next_reamer(case: Case) -> WayOut:
    """The next reamer up, the wall that stays, and whether a mandrel then takes it."""
    tables, named = case.tables, "the next reamer up"
    clean = tables.rescue_fact("clean_up").low if case.has(*FORMS, SCORED) else 0.0
    start = case.found.largest + max(clean, tables.reaming("stock_to_leave").low)
    found = list(_openers(case, start))
    if not found:
        said = "No reamer of the shelf or of the usual lists is larger than this bore."
        return _row(case, named, Verdict.NO, said, ())
    tried = [_tried(case, opener, named) for opener in found]
    return min(tried, key=lambda w: (w.verdict.rank, w.bought))


def _openers(case: Case, start: Metre) -> Iterator[Opener]:
    """The shop's own next reamer, the next one sold, the next whose size a mandrel here takes."""
    over = case.tables.reaming("hand_reamer_over")
    own = [
        Opener(
            r.name or f"reamer {case.show.length(r.size)}",
            r.size,
            r.size + (over.best if r.cuts is None else r.cuts),
            _half(over),
            True,
        )
        for r in case.job.shelf.reamers
        if r.size >= start
    ]
    own.sort(key=lambda r: r.after)
    yield from own[:1]
    series = "inch" if case.job.units == "inch" else "metric"
    sold = next((r for r in case.tables.reamers(series) if r.size >= start), None)
    fits = next(
        (r for r in case.tables.reamers(series) if r.size >= start and _held(case, r.size)), None
    )
    for tool in dict.fromkeys((sold, fits)):
        if tool is not None and not any(abs(r.size - tool.size) < 1e-6 for r in own[:1]):
            yield Opener(f"reamer {tool.id}", tool.size, tool.size + over.best, _half(over), False)


def _held(case: Case, size: Metre) -> bool:
    """Whether a mandrel of the shelf is ground through this size (m)."""
    return any(m.small_end < size < m.large_end for m in case.on_mandrels.shop.mandrels)


def _half(r: Range) -> Metre:
    return (r.high - r.low) / 2


def _tried(case: Case, opener: Opener, named: str) -> WayOut:
    tables, show = case.tables, case.show
    outside = case.hub_outside
    wall, least = (outside - opener.after) / 2, tables.allowance("least_wall")
    inputs = (given("outside", outside, "m", "length"), given("bore", opener.after, "m", "bore"))
    stays = figure("wall_left", wall, "m", "length", "wall_left", inputs)
    limits = opener.after - opener.half_band, opener.after + opener.half_band
    size = between("bore_to_make", *limits, tables.reaming("hand_reamer_over").sources)
    tool = Need(opener.name, Have.OWN if opener.own else Have.BUY)
    if wall < least.best:
        said = f"{opener.name} would leave {show.length(max(wall, 0.0))} of wall; at least {show.length(least.best)} must stand."
        return _row(case, named, Verdict.NO, said, (tool,), (size, stays))
    best = arrange(_opened(case.job, opener), tables).best
    held, verdict = _held_after(case, best)
    holds = best is not None and best.verdict is not Verdict.NO
    trial = best.question("true").figures if best and holds else ()
    beside = (*(f for f in trial if f.name == "runout"), size, stays)
    crack = (strength_of(best.question("crack")),) if best and holds else ()
    said = f"{capital(opener.name)} leaves {show.bore(opener.after)} and {show.length(wall)} of wall. {held}"
    steps = _reamer_steps(case, opener)
    return _row(case, named, verdict, said, (tool,), (*beside, *crack), steps)


def _held_after(case: Case, best: Weighed | None) -> tuple[str, Verdict]:
    """What then holds it, and the verdict; never a no, because a stub can be turned to any size."""
    if best is None or best.verdict is Verdict.NO:
        return "No mandrel here takes that size: a stub turned to it does.", Verdict.CARE
    care = "" if best.verdict is Verdict.YES else f" {best.deciding.reason}"
    seen = noted(best.trial)
    return (
        joined(
            (
                f"{capital(best.trial.mandrel.name)} then takes it{with_drive(best.trial)}.{care}",
                seen,
            )
        ),
        worst(best.verdict, Verdict.CARE if seen else Verdict.YES),
    )


def _opened(job: Job, opener: Opener) -> Job:
    """The job with its bore reamed out; what the reamer takes comes off the depth of a keyway."""
    work = job.work
    bore = Bore(opener.after, opener.half_band, "reamer-size", "reamed")
    key = shallower(work.keyway, (opener.after - work.bore.size) / 2)
    return replace(
        job, use="plain-taper", pressed_before=False, work=replace(work, bore=bore, keyway=key)
    )


def shallower(keyway: Keyway | None, by: Metre) -> Keyway | None:
    """The keyway that is left when so much (m) comes off the bore all round it; None where none is."""
    if keyway is None or keyway.depth <= by:
        return None
    return replace(keyway, depth=keyway.depth - by)


def _reamer_steps(case: Case, opener: Opener) -> tuple[str, ...]:
    leave = case.tables.reaming("stock_to_leave")
    low, high = max(opener.size - leave.high, case.found.largest), opener.size - leave.low
    rough = case.show.band(low, high, "bore")
    work = case.job.work
    keyed = (KEYWAY,) if case.has("keyed") or work.keyway else ()
    return (
        "Set the old bore true by indicator, as near as it can be believed, and the face with it.",
        f"Bore to {rough} first: a reamer follows the hole it is given, true or not.",
        *keyed,
        f"Ream with {opener.name} at half the drilling speed, oil, never turned backwards; measure what it left.",
    )


def _row(
    case: Case,
    named: str,
    verdict: Verdict,
    said: str,
    needs: tuple[Need, ...],
    figures: tuple[Figure, ...] = (),
    steps: tuple[str, ...] = (),
) -> WayOut:
    holds, why = case.bore_grows()
    time = takes(NEXT_REAMER, case.tables)
    all_needs = (*needs, needed(case.job, case.tables, "boring-bar"))
    return WayOut(
        NEXT_REAMER,
        named,
        verdict,
        joined((said,)),
        time,
        holds,
        why,
        all_needs,
        figures,
        steps,
    )
