"""The first hold of a casting that is still to be bored: hub and bore before the rim, a look for
pores before more work is spent, and only then the rim.

Where the bore is finished already, what is left of it is whether the outside cleans up.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import count

from borewright.answer.first_hold import FirstHold, JawPlace
from borewright.answer.held import InJaws
from borewright.answer.records import Caution, Figure, Step
from borewright.cutting.base import spindle_for
from borewright.holding.jaws.as_cast import BOSS, set_true
from borewright.holding.jaws.grasp import SOLID
from borewright.job.records import Job
from borewright.job.web import on_bore
from borewright.planning.steps.casting_grip import (
    JAWS,
    jaw_place,
    turns_the_rim,
)
from borewright.planning.steps.casting_stock import Stock, stock_figures, stock_of, stock_words
from borewright.planning.steps.first_hold_words import Begun, held_by, last_step
from borewright.planning.weighing.figures import figure
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

WHEN = {
    "as-cast": "The bore is as cast.",
    "drilled": "The bore is only drilled.",
    "unknown": "This is for a bore that is still to be finished: how it was made was not stated.",
}
"""Ways a bore may have been made, or left to be made, that leave the finishing of it still to do."""

SET_BY = (
    "Indicator where the skin is smooth; on rough skin a bent wire or a scriber in the tool post, and chalk on the high side. "
    "Go by most of the way round, not by one lump."
)

Line = tuple[str, str, tuple[Figure, ...], tuple[str, ...]]


def first_hold(
    job: Job, tables: Tables, in_jaws: InJaws | None = None, then: str = ""
) -> FirstHold | None:
    """How to begin on a casting; None for other blanks, and where bore and throw leave no question.

    `in_jaws`: the hold of the way that is chosen, where bore and rim are done in it: then this is
    that hold. `then`: else what the way that is chosen holds it by, once this hold has bored it.
    """
    work, show = job.work, Show(job.units)
    if work.blank != "casting":
        return None
    made = tables.roughness_id(work.bore.made_by)
    if made not in WHEN:
        return _bored_already(job, tables) if work.casting_runout is not None else None
    stock, by = stock_of(job, tables), set_true(work)
    begun = _begun(job, tables, in_jaws, then)
    lines = tuple(_lines(job, stock, begun, tables))
    steps = tuple(Step(n, *line) for n, line in zip(count(1), lines, strict=False))
    return FirstHold(
        "The bore is still solid." if _is_solid(job) else WHEN[made],
        f"{by.round_by}; for wobble {by.flat_by}",
        by.why,
        SET_BY,
        held_by(job, begun, show),
        begun.place,
        stock.verdict,
        stock_words(stock, show),
        steps,
        _cautions(job, begun.place, tables),
        stock_figures(stock),
        _sources(tables),
    )


def _is_solid(job: Job) -> bool:
    return job.work.bore.made_by.strip().lower() in SOLID


def _bored_already(job: Job, tables: Tables) -> FirstHold:
    """Only whether the outside cleans up: everything else has been decided by the bore."""
    stock = stock_of(job, tables)
    return FirstHold(
        "The bore is finished.",
        "the bore",
        "it is finished, and all else is true or not to it",
        "the mandrel between centers, an indicator or a wire at the rim",
        "",
        None,
        stock.verdict,
        stock_words(stock, Show(job.units)),
        (),
        (),
        stock_figures(stock),
        _sources(tables),
    )


def _begun(job: Job, tables: Tables, in_jaws: InJaws | None, then: str) -> Begun:
    if in_jaws is not None:
        return Begun(in_jaws.place, in_jaws.number, chosen=True, turns_rim=True)
    place = jaw_place(job.work, tables)
    return Begun(place, JAWS, then=then, turns_rim=not then and turns_the_rim(place))


def _lines(job: Job, stock: Stock, begun: Begun, tables: Tables) -> Iterator[Line]:
    show = Show(job.units)
    yield _look_over(job, tables)
    yield (
        "Chuck, lightly",
        f"Power off. {held_by(job, begun, show)} Clean bearings, no sand or flash under a jaw; thin copper or card on a "
        "rough skin. Just so tight that it stays.",
        (),
        (),
    )
    yield _set(job, stock, begun.place, tables, show)
    yield _pull_up(begun)
    yield _face(job, stock, begun.place, tables, show)
    yield _bore(job, stock, tables, show)
    yield _look_for_pores()
    yield _decide(job)
    yield last_step(stock, begun, show)


def _pull_up(begun: Begun) -> Line:
    proof = ", and the proof load of the steps below before any cut" if begun.chosen else ""
    return (
        "Pull it up",
        f"Every screw in turn, opposite jaws alike; read again{proof}.",
        (),
        (),
    )


def _look_over(job: Job, tables: Tables) -> Line:
    brittle = tables.material(job.work.material).brittle
    roots = "roots of the spokes" if job.work.spokes else "faces"
    ring = (
        " Hang it and tap it: a dull note is a crack or a loose core; a clear one proves nothing."
        if brittle
        else ""
    )
    return (
        "Fettle and look",
        f"Flash, sand and gate stubs off with hammer, chisel and file. Wire-brush hub and {roots} and look for cracks, cold "
        f"shuts and open pores under a lamp.{ring} If it is cracked, stop here.",
        (),
        ("seen",),
    )


def _set(job: Job, stock: Stock, place: JawPlace, tables: Tables, show: Show) -> Line:
    by, rough = set_true(job.work), tables.allowance("rough_true")
    within = figure("rough_true", rough.best, "m", "length", "", sources=(rough.source,))
    return (
        "Set true",
        f"{by.round_by[0].upper()}{by.round_by[1:]} to within {show.length(rough.best)} by opposite jaws{by.read(place.on)}, then {by.flat_by} by "
        f"tapping, and the first again. {SET_BY} Then read the outside: {_read_words(stock, show)}",
        (within, *(f for f in stock_figures(stock) if f.name == "largest_throw")),
        ("set true within", "outside runs out"),
    )


def _read_words(stock: Stock, show: Show) -> str:
    if stock.largest_throw:
        return f"up to {show.length(stock.largest_throw)}, the whole reading, it cleans up. More: share it out before cutting."
    return stock_words(stock, show)


def _face(job: Job, stock: Stock, place: JawPlace, tables: Tables, show: Show) -> Line:
    spindle = _slow(
        job, max(p.outside for p in on_bore(job.work.pieces, job.work.bore.size)), tables
    )
    skin = stock.skin
    return (
        "Face the end" if place.on == BOSS else "Face the hub",
        f"First of all cuts, {show.depth(skin.best)} deep or more below the lowest place: under the skin in one. Slow, about "
        f"{show.spindle(spindle)}{_lowest(job, show)}. Carbide, or high-speed steel that starts under the skin and never rubs on it.",
        (
            figure("skin_depth", skin.best, "m", "depth", "", sources=(skin.source,)),
            figure("skin_spindle", spindle, "rev/s", "spindle", "spindle_speed"),
        ),
        (),
    )


def _lowest(job: Job, show: Show) -> str:
    speeds = job.shelf.machine.speeds
    return (
        f"; start at {show.spindle(min(speeds))}, the lowest, until it is seen to run quiet"
        if speeds
        else ""
    )


def _slow(job: Job, diameter: Metre, tables: Tables) -> float:
    """Spindle speed (rev/s) through the skin at this diameter (m)."""
    material = tables.material(job.work.material).id
    usual = tables.cutting_speed(material, tables.cut_defaults(material).tool)
    return spindle_for(
        usual.best * tables.allowance("skin_speed").best, diameter, job.shelf.machine
    )


def _bore(job: Job, stock: Stock, tables: Tables, show: Show) -> Line:
    cored = tables.roughness_id(job.work.bore.made_by) == "as-cast"
    return (
        "Bore",
        f"{_cored(stock, show) if cored else _drilled(job)} Leave it under size: enough for the last cuts, once it is known to "
        "be worth them.",
        (),
        ("bore as opened",),
    )


def _cored(stock: Stock, show: Show) -> str:
    return (
        "The cored hole is not to be trusted for place or direction: a drill or reamer follows it. Open it with a single-point "
        f"boring bar, the first cut under the skin all round, {show.depth(stock.skin.best)} deep or more everywhere."
    )


def _drilled(job: Job) -> str:
    start = "Spot it and drill under size. A" if _is_solid(job) else "A"
    return f"{start} drill wanders at a pore, a hard spot or a core: true the hole with a single-point boring bar."


def _look_for_pores() -> Line:
    return (
        "Look for pores, before any work on the rim",
        "Stop, blow out, wipe dry. Look down the whole bore and over the fresh face under a lamp, and feel with a bent "
        "wire. Mark what is seen. A pinhole that the next cut takes out is nothing; a row of them, sponge, dross or a dark line "
        "is not.",
        (),
        ("pores seen",),
    )


def _decide(job: Job) -> Line:
    keyed = " or where the keyway goes" if job.work.keyway else ""
    return (
        "Decide",
        f"Clean as far as cut: go on. Open pores at the ends of the bore{keyed}, or sponge all through: scrap it now, before more "
        "work is spent, or bore it out for a bush if whoever drew it agrees. A crack, or a line into rim or spoke: scrap. Clean "
        "metal here says nothing of the metal not cut yet.",
        (),
        ("decision, who",),
    )


def _cautions(job: Job, place: JawPlace, tables: Tables) -> tuple[Caution, ...]:
    """Those of this hold alone: the work's own stand with the plan's."""
    iron = "iron" in tables.material(job.work.material).family
    tags = [*(["opened"] if place.opened else []), *(["iron"] if iron else [])]
    found = tables.cautions("first-hold", "chuck", *tags)
    return tuple(Caution(h.id, h.text, h.source) for h in found if "always" not in h.applies_to)


def _sources(tables: Tables) -> tuple[str, ...]:
    names = "skin_depth", "rough_true", "skin_speed", "jaw_bite", "boss_share"
    return tuple(sorted({tables.allowance(n).source for n in names}))
