"""A way as the steps a hand takes: stock, spindle speed, feed, the form to expect."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.bore_route import BoreStep
from borewright.answer.figure import Figure
from borewright.cutting.base import feed_for, spindle_for
from borewright.errors import OutsideModel
from borewright.job.records import Job
from borewright.mechanics.turning import surface_speed
from borewright.planning.bore_route.kit import Kit
from borewright.planning.bore_route.passes import Pass, half_band, over_words, reamer_of
from borewright.planning.bore_route.wanted import Wanted
from borewright.planning.bore_route.ways import Way
from borewright.planning.weighing.figures import figure, given
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, MetrePerSecond
from borewright.reference.library import Tables

MUCH: Metre = 0.002
"""More than this (m on diameter) is roughed out first (ours)."""

GRADE_OF = {"ream": "reaming", "bore": "boring"}
"""What the table process_grades calls a process."""


@dataclass(frozen=True, slots=True)
class _Bench:
    """What every step is written from."""

    way: Way
    want: Wanted
    kit: Kit
    job: Job
    tables: Tables
    show: Show


def bore_steps(way: Way, want: Wanted, kit: Kit, job: Job, tables: Tables) -> tuple[BoreStep, ...]:
    """The passes of a way in order, each with the hole it starts from."""
    bench = _Bench(way, want, kit, job, tables, Show(job.units))
    hole = want.start
    steps = []
    for cut in way.passes:
        steps.append(_step(cut, hole, bench))
        hole = cut.size or hole
    return tuple(steps)


def _step(cut: Pass, hole: Metre, bench: _Bench) -> BoreStep:
    size, stock = cut.figure(), _stock(cut, hole, bench)
    spindle = None if cut.by_hand else _spindle(cut, bench)
    return BoreStep(
        process=cut.process,
        tool=cut.tool,
        owned=cut.owned,
        size=size,
        stock=stock,
        spindle=spindle,
        feed=_feed_words(cut, bench),
        form=_form_words(cut, bench),
        text=_text(cut, hole, bench),
    )


def _stock(cut: Pass, hole: Metre, bench: _Bench) -> Figure | None:
    """Metal taken on diameter; none from solid, nor where the cored hole is not known."""
    if not hole or cut.band is None:
        return None
    inputs = (
        given("size after", cut.size, "m", "bore"),
        given("size before", hole, "m", "bore"),
    )
    return figure("stock_taken", cut.size - hole, "m", "small", "stock_taken", inputs, cut.sources)


def _surface(cut: Pass, bench: _Bench) -> MetrePerSecond:
    """The usual surface speed (m/s): drills at the low end of turning, reamers at half of drilling."""
    t, material = bench.tables, bench.tables.material(bench.job.work.material).id
    usual = t.cutting_speed(material, t.cut_defaults(material).tool)
    if cut.process == "bore":
        return usual.best
    share = t.reaming("speed_of_drilling").best if cut.process == "ream" else 1.0
    return usual.low * share


def _spindle(cut: Pass, bench: _Bench) -> Figure | None:
    """The lathe's next slower speed, with the surface speed that it gives."""
    t, job = bench.tables, bench.job
    material = t.material(job.work.material).id
    turns = spindle_for(_surface(cut, bench), cut.nominal, job.shelf.machine)
    runs = surface_speed(turns, cut.nominal)
    sources = {t.cutting_speed(material, t.cut_defaults(material).tool).source, "od1645"}
    if cut.process == "ream":
        sources.add(t.reaming("speed_of_drilling").source)
    inputs = (
        given("surface speed at it", runs, "m/s"),
        given("diameter", cut.nominal, "m", "bore"),
    )
    return figure(
        f"{cut.process}_spindle", turns, "rev/s", "spindle", "spindle_speed", inputs, tuple(sources)
    )


def _feed_words(cut: Pass, bench: _Bench) -> str:
    deep = bench.job.work.length > 3 * cut.nominal
    if cut.process == "bore":
        usual = bench.tables.cut_defaults(bench.tables.material(bench.job.work.material).id)
        feed = feed_for(usual.finish_feed, bench.job.shelf.machine)
        alike = ", the last two passes alike" if cut.last and bench.want.low is not None else ""
        return f"{bench.show.feed(feed)}{alike}"
    if cut.process == "ream":
        return (
            "turned by hand with a wrench, the tail center in its end, never backwards"
            if cut.by_hand
            else "by the tailstock, steady and about twice the drill's, straight in and out while it turns"
        )
    if cut.process == "spot":
        return "by the tailstock, until its cone is as wide as the next drill's web"
    clear = "; out to clear the chips every turn or two of the hand wheel" if deep else ""
    return f"by the tailstock, steady{clear}; ease it as the point breaks through"


def _form_words(cut: Pass, bench: _Bench) -> str:
    if cut.process in ("spot", "pilot"):
        return ""
    if cut.process == "drill":
        return "rough, seldom round, and it wanders from the axis as it goes deeper"
    width = usual_width(cut, bench.tables)
    share = bench.tables.boring("form_share").best
    about = (
        ""
        if width is None
        else f"; out of round, taper and bell-mouth together usually within {bench.show.small(share * width)}"
    )
    if cut.process == "bore":
        return f"round and on the axis, a little taper where the bar springs{about}"
    return (
        "smooth; it follows the hole it is given, with a bell-mouth where it enters and sometimes lobes, one more "
        f"or one fewer than its flutes, that a two-point gauge cannot see{about}"
    )


def usual_width(cut: Pass, tables: Tables, end: str = "best") -> Metre | None:
    """The width of size (m) that this process usually holds here; None beyond the tables."""
    name = GRADE_OF.get(cut.process)
    if name is None:
        return None
    grade = round(getattr(tables.process(name).grade, end))
    try:
        return tables.tolerance(grade, cut.size)
    except OutsideModel:
        return None


def _text(cut: Pass, hole: Metre, bench: _Bench) -> str:
    if cut.process == "spot":
        return "Spot the face with a center drill, so that the drill starts on the axis."
    if cut.process == "pilot":
        return f"Drill through with {cut.tool}: the web of a large drill does not cut, and it follows a pilot."
    if cut.process == "drill":
        return _drill_text(cut, bench)
    return _ream_text(cut, bench) if cut.process == "ream" else _bore_text(cut, hole, bench)


def _drill_text(cut: Pass, bench: _Bench) -> str:
    said = f"likely {bench.show.bore(cut.size)}, because a drill cuts {over_words(cut, bench.show)}"
    return f"Drill through with {cut.tool}: {said}."


def _ream_text(cut: Pass, bench: _Bench) -> str:
    show = bench.show
    iron = "iron" in bench.tables.material(bench.job.work.material).family
    oil = "dry" if iron else "with oil"
    reamer = reamer_of(cut, bench.kit)
    unknown = reamer is not None and not reamer.told and bench.want.low is not None
    try_it = (
        " Ream a scrap of the same metal first and measure it: what this reamer really cuts is worth more than any table."
        if unknown
        else ""
    )
    if bench.way.trial is not None:
        try_it += " Where the scrap does not land, bore to size instead."
    over = over_words(cut, show)
    return f"Ream with {cut.tool}, {oil}: likely {show.bore(cut.size)}, {over} its mark.{try_it}"


def _bore_text(cut: Pass, hole: Metre, bench: _Bench) -> str:
    show, want = bench.show, bench.want
    skin = bench.tables.allowance("skin_depth").best
    under = (
        f" First pass deep enough to get under the skin, {show.depth(skin)} or more: the sand takes the edge off a "
        "light cut, and a drill or a reamer in a cored hole follows the core."
        if want.cored
        else ""
    )
    if want.low is None:
        return f"Bore until it is clean and round all the way through, no further: any size serves.{under}"
    rough = " Rough it out in passes as deep as the bar bears." if cut.size - hole > MUCH else ""
    light = show.depth(bench.tables.boring("last_pass").best)
    if not cut.last:
        return f"Bore true to {show.bore(cut.size)}, which leaves the reamer its stock; the last pass light.{under}{rough}"
    half = half_band(bench.kit.gauge, bench.tables).best
    return (
        f"Bore to {show.bore(cut.size)}: leave two light passes alike, {light} on diameter or so, measure with "
        f"{bench.kit.gauge.name} after the first, and set the last by what is left. It lands within {show.small(half)} "
        f"of that, 19 times in 20.{under}{rough}"
    )
