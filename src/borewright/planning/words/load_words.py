"""What grinding and gear cutting take where nothing was said, and what to have ready for them."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.records import Assumption, Cut
from borewright.cutting.loads import cuts_gear, grinds, pitch_words, space_of, system_of
from borewright.job.records import CutWish, Job
from borewright.planning.taper.trial import Trial
from borewright.quantities.show import Show
from borewright.reference.gears import MODULE, GearTeeth
from borewright.reference.library import Tables


def turns(trial: Trial) -> bool:
    """True where anything is turned or faced."""
    return any(c.on_lathe for c in trial.cuts)


def load_tags(job: Job) -> tuple[str, ...]:
    """The tags of cautions that the loads of a job call up."""
    return tuple(dict.fromkeys(w.kind for w in job.cuts if w.kind in ("grind", "gear")))


def assumed_loads(job: Job, cuts: tuple[Cut, ...], tables: Tables) -> tuple[Assumption, ...]:
    """Everything about wheels and form cutters that was not stated; `cuts` as they are planned."""
    said: list[Assumption] = []
    for number, wish in enumerate(job.cuts, 1):
        if grinds(wish):
            said += _of_grinding(wish, Show(job.units), tables)
        elif cuts_gear(wish):
            said += _of_gear(wish, Show(job.units), tables)
            said += (a for c in cuts if c.id == f"cut-{number}" for a in _passes(wish, c))
    return tuple(dict.fromkeys(said))


def _of_grinding(wish: CutWish, show: Show, tables: Tables) -> Iterator[Assumption]:
    usual = tables.grinding
    if wish.depth is None:
        yield Assumption("infeed", show.small(usual("infeed").best), usual("infeed").source)
    if wish.feed is None:
        yield Assumption("traverse", show.feed(usual("traverse").best), usual("traverse").source)
    if wish.speed is None and wish.spindle_speed is None:
        speed = usual("work_speed")
        yield Assumption(
            "speed of the work under the wheel", show.surface(speed.best), speed.source
        )
    if wish.wheel_speed is None:
        rim = usual("wheel_speed")
        yield Assumption("speed of the wheel", show.surface(rim.best), rim.source)
    if wish.coolant is None:
        yield Assumption("coolant on the wheel", "none: ground dry", "ours")


def _of_gear(wish: CutWish, show: Show, tables: Tables) -> Iterator[Assumption]:
    space, form = space_of(wish, tables), tables.gear_teeth(system_of(wish))
    cutter = tables.gear_cutter(system_of(wish), space.module)
    yield Assumption("shape of the teeth", f"full depth of {_angle(form)} degrees", form.source)
    if wish.cutter_diameter is None or wish.cutter_teeth is None:
        size = f"{show.length(space.cutter_diameter)}, {space.cutter_teeth} teeth"
        yield Assumption("form cutter", size, cutter.source)
    if wish.feed is None:
        feed = tables.gear_cutting("feed_per_tooth")
        yield Assumption("feed a tooth of the cutter", show.length(feed.best), feed.source)
    share = tables.gear_cutting("out_of_center")
    taken = f"{100 * share.best:.0f} % of the cutter's force turns the work"
    yield Assumption("cutter out of center, uneven flanks", taken, share.source)


def _passes(wish: CutWish, cut: Cut) -> Iterator[Assumption]:
    """How often the cutter goes through each space, where the job does not say how deep each time."""
    if wish.depth is None and cut.space is not None:
        each = cut.passes // cut.space.teeth
        taken = (
            "one"
            if each == 1
            else f"{each} equal ones: with fewer the teeth ask too much of the grip"
        )
        yield Assumption("passes through each space", taken, "ours")


def loads_ready(trial: Trial) -> Iterator[str]:
    """What to fetch for the loads."""
    show = trial.show
    for cut in trial.cuts:
        if cut.kind == "grind":
            wheel = show.surface(cut.wheel_speed or 0.0)
            yield "cylindrical grinder"
            yield f"grinding wheel marked for {wheel} at its rim or more, dresser"
        elif cut.space is not None:
            wish = trial.job.cuts[int(cut.id.removeprefix("cut-")) - 1]
            yield f"milling machine, dividing head that divides {cut.space.teeth}, tailstock"
            yield cutter_words(wish, trial.tables)
            yield "gear-tooth caliper, or a micrometer with disc anvils to span teeth"


def cutter_words(wish: CutWish, tables: Tables) -> str:
    """The form cutter as it is marked: number, teeth that it serves, pitch and pressure angle.

    >>> from borewright.reference.library import Tables
    >>> cutter_words(CutWish("gear", teeth=24, diametral_pitch=16), Tables())
    'form cutter No. 5 (21 to 25 teeth; module cutters are numbered the other way: No. 4), 16 DP, 14 1/2 degrees'
    """
    teeth = wish.teeth or 0
    number = tables.gear_cutter_number(teeth)
    of = f"{pitch_words(wish)}, {_angle(tables.gear_teeth(system_of(wish)))} degrees"
    if number is None:
        return f"form cutter made for {teeth} teeth (the set of eight begins at 12), {of}"
    serves = (
        f"{number.fewest} teeth to a rack"
        if number.most is None
        else f"{number.fewest} to {number.most} teeth"
    )
    own, other, others = number.inch_number, number.module_number, "module"
    if system_of(wish) == MODULE:
        own, other, others = other, own, "inch"
    return f"form cutter No. {own} ({serves}; {others} cutters are numbered the other way: No. {other}), {of}"


def _angle(form: GearTeeth) -> str:
    return "14 1/2" if form.pressure_angle < 0.3 else "20"
