"""The first hold of a casting that is still to be bored: hub and bore before the rim, a look for
pores before more work is spent, and only then the rim.

Where the bore is finished already, what is left of it is whether the outside cleans up.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import count

from borewright.answer.first_hold import FirstHold, JawPlace
from borewright.answer.records import Caution, Figure, Step
from borewright.cutting.schedule import spindle_for
from borewright.job.records import Job
from borewright.job.web import on_bore
from borewright.planning.steps.casting_grip import (
    BOSS,
    OUTSIDE,
    RIM,
    jaw_place,
    jaws_meet_spokes,
    set_true,
    turns_the_rim,
)
from borewright.planning.steps.casting_stock import Stock, stock_figures, stock_of, stock_words
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

SOLID = ("solid", "not bored")
"""Said of a casting with no hole yet."""

SET_BY = (
    "Indicator where the skin is smooth; on rough skin a bent wire or a scriber in the tool post, and chalk on the high side. "
    "Go by most of the way round, not by one lump."
)

PLAIN = {BOSS: "boss", RIM: "inside of the rim", OUTSIDE: "outside"}
Line = tuple[str, str, tuple[Figure, ...], tuple[str, ...]]


def first_hold(job: Job, tables: Tables) -> FirstHold | None:
    """How to begin on a casting; None for other blanks, and where bore and throw leave no question."""
    work, show = job.work, Show(job.units)
    if work.blank != "casting":
        return None
    made = tables.roughness_id(work.bore.made_by)
    if made not in WHEN:
        return _bored_already(job, tables) if work.casting_runout is not None else None
    stock, place, by = stock_of(job, tables), jaw_place(work, tables), set_true(work)
    lines = tuple(_lines(job, stock, place, tables))
    steps = tuple(Step(n, *line) for n, line in zip(count(1), lines, strict=False))
    return FirstHold(
        "The bore is still solid." if _is_solid(job) else WHEN[made],
        f"{by.round_by}; for wobble {by.flat_by}",
        by.why,
        SET_BY,
        _held_by(job, place, show),
        place,
        stock.verdict,
        stock_words(stock, show),
        steps,
        _cautions(job, place, tables),
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


def _held_by(job: Job, place: JawPlace, show: Show) -> str:
    where = f"{show.length(place.bite)} of it, {show.length(place.diameter)} across, face {place.face_out} out"
    way = "opened outward into" if place.opened else "closed on"
    held = f"Four-jaw independent chuck, jaws {way} the {PLAIN[place.on]}: {where}."
    return " ".join((held, *_held_further(job, place, show)))


def _held_further(job: Job, place: JawPlace, show: Show) -> Iterator[str]:
    work = job.work
    if place.opened and jaws_meet_spokes(work) and work.spokes:
        yield f"{work.spokes.number} spokes and four jaws do not divide alike: the jaws bear beside the spokes, not between them."
    if turns_the_rim(place):
        yield "The outside stays free: bore and rim can be finished in this one chucking."
    else:
        yield "The outside under the jaws waits for the next hold."
    if place.bite < 2e-3 + 0.05 * work.outside:
        yield "That is a short bite for so large a piece: better strapped to the faceplate; else light cuts at the slowest speeds."


def _lines(job: Job, stock: Stock, place: JawPlace, tables: Tables) -> Iterator[Line]:
    show = Show(job.units)
    yield _look_over(job, tables)
    yield (
        "Chuck",
        f"Power off. {_held_by(job, place, show)} Clean bearings, no sand or flash under a jaw; thin copper or card on a "
        "rough skin.",
        (),
        (),
    )
    yield _set(job, stock, place, tables, show)
    yield _face_hub(job, stock, tables, show)
    yield _bore(job, stock, tables, show)
    yield _look_for_pores()
    yield _decide(job)
    yield _rim(stock, place, show)


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


def _between(place: JawPlace) -> str:
    """The jaws are in the way of what is set true, unless they hold a boss."""
    return "" if place.on == BOSS else ", read between them"


def _set(job: Job, stock: Stock, place: JawPlace, tables: Tables, show: Show) -> Line:
    by, rough = set_true(job.work), tables.allowance("rough_true")
    within = figure("rough_true", rough.best, "m", "length", "", sources=(rough.source,))
    return (
        "Set true",
        f"{by.round_by[0].upper()}{by.round_by[1:]} to within {show.length(rough.best)} by opposite jaws{_between(place)}, then {by.flat_by} by "
        f"tapping, and the first again. {SET_BY} Then read the outside: {_read_words(stock, show)}",
        (within, *(f for f in stock_figures(stock) if f.name == "largest_throw")),
        ("set true within", "outside runs out"),
    )


def _read_words(stock: Stock, show: Show) -> str:
    if stock.largest_throw:
        return f"up to {show.length(stock.largest_throw)}, the whole reading, it cleans up. More: share it out before cutting."
    return stock_words(stock, show)


def _face_hub(job: Job, stock: Stock, tables: Tables, show: Show) -> Line:
    spindle = _slow(
        job, max(p.outside for p in on_bore(job.work.pieces, job.work.bore.size)), tables
    )
    skin = stock.skin
    return (
        "Face the hub",
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
        "Stop, blow out, wipe dry. Look down the whole bore and over the fresh hub face under a lamp, and feel with a bent "
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


def _rim(stock: Stock, place: JawPlace, show: Show) -> Line:
    skin = _first_cut(stock, show)
    if turns_the_rim(place):
        return (
            "Bore to size, then the rim",
            "Finish the bore and rough the rim without letting go; let it cool, finish the rim last. Bore, rim and this face are "
            f"then true with each other, and a mandrel is needed only for the second face. {skin}",
            (),
            ("rim",),
        )
    return (
        "Bore to size, then another hold",
        f"Finish the bore and this hub face without letting go. The rim then goes on a mandrel. {skin}",
        (),
        ("bore",),
    )


def _first_cut(stock: Stock, show: Show) -> str:
    if stock.throw_left is None:
        return f"Its first cut goes under the skin all round: {show.depth(stock.skin.best)} where it is lowest."
    deep = show.depth(stock.throw_left + stock.skin.best)
    return (
        f"To get under its skin all round in one, the first cut goes {deep} past the first touch, the high side: if hold or "
        "lathe will not stand that, rough the high side down first, slowly."
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
