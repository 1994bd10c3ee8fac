"""What grinding and gear cutting take where nothing was said, and what to have ready for them."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.records import Assumption, Cut
from borewright.cutting.loads import cuts_gear, grinds, space_of, system_of
from borewright.job.records import CutWish, Job
from borewright.quantities.show import Show
from borewright.reference.library import Tables


def load_tags(job: Job) -> tuple[str, ...]:
    """The tags of cautions that the loads of a job call up."""
    return tuple(dict.fromkeys(w.kind for w in job.cuts if w.kind in ("grind", "gear")))


def assumed_loads(job: Job, tables: Tables) -> tuple[Assumption, ...]:
    """Everything about wheels and form cutters that was not stated."""
    said: list[Assumption] = []
    for wish in job.cuts:
        if grinds(wish):
            said += _of_grinding(wish, Show(job.units), tables)
        elif cuts_gear(wish):
            said += _of_gear(wish, Show(job.units), tables)
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
    teeth = "14 1/2" if form.pressure_angle < 0.3 else "20"
    yield Assumption("shape of the teeth", f"full depth of {teeth} degrees", form.source)
    if wish.cutter_diameter is None or wish.cutter_teeth is None:
        size = f"{show.length(space.cutter_diameter)}, {space.cutter_teeth} teeth"
        yield Assumption("form cutter", size, cutter.source)
    if wish.feed is None:
        feed = tables.gear_cutting("feed_per_tooth")
        yield Assumption("feed a tooth of the cutter", show.length(feed.best), feed.source)
    share = tables.gear_cutting("out_of_center")
    taken = f"{100 * share.best:.0f} % of the cutter's force turns the work"
    yield Assumption("cutter out of center, uneven flanks", taken, share.source)


def loads_ready(cuts: tuple[Cut, ...], show: Show) -> Iterator[str]:
    """What to fetch for the loads."""
    for cut in cuts:
        if cut.kind == "grind":
            wheel = show.surface(cut.wheel_speed or 0.0)
            yield f"grinding wheel marked for {wheel} at its rim or more, dresser"
        elif cut.space is not None:
            yield (
                f"dividing head that divides {cut.space.teeth}, tailstock, form cutter marked for "
                f"{cut.space.teeth} teeth"
            )
