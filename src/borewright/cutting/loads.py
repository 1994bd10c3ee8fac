"""Grinding and gear-cutting passes on the mandrel, as a job file asks for them.

A grinding traverse pushes along the mandrel both ways, so one of its strokes loosens: it is judged
by that one. A gear is cut with the large end at the dividing head, from the tailstock side towards
the head, against the turn of the cutter: the cutter then pushes the work up the taper and tightens.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from borewright.answer.records import Cut, ToothSpace
from borewright.cutting.directions import LOOSENS, TIGHTENS
from borewright.errors import RefusedInput, UnknownName
from borewright.job.records import CutWish, Job
from borewright.mechanics.gear_teeth import blank_outside, module_of_pitch, root_width
from borewright.mechanics.turning import spindle_speed, surface_speed
from borewright.quantities.read import System
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, MetrePerSecond
from borewright.reference.gears import MODULE, PITCH
from borewright.reference.library import Tables
from borewright.reference.ranges import Range

SIZE_SLACK = 0.25
"""A blank may differ from the gear's outside by this share of a module (ours)."""

MOST_FEED = 0.5e-3
"""A feed a tooth (m) above which a figure is taken for one a turn or a minute (ours)."""


def grinds(wish: CutWish) -> bool:
    """True for a grinding cut."""
    return wish.kind == "grind"


def cuts_gear(wish: CutWish) -> bool:
    """True for a gear-cutting one."""
    return wish.kind == "gear"


def infeed_of(wish: CutWish, tables: Tables) -> Metre:
    """Infeed (m) on radius of a grinding pass, stated or usual."""
    return wish.depth if wish.depth is not None else tables.grinding("infeed").best


def check_grind(wish: CutWish, number: int, job: Job, tables: Tables) -> None:
    """RefusedInput for a metal that is not planned for grinding, or an infeed no wheel takes."""
    ground_energy(job.work.material, tables, f"cut[{number}].kind")
    most, show = tables.grinding("most_infeed").best, Show(job.units)
    if infeed_of(wish, tables) > most * (1 + 1e-9):
        found, allowed = show.depth(infeed_of(wish, tables)), f"at most {show.depth(most)}"
        raise RefusedInput(f"cut[{number}].depth", found, f"{allowed} of infeed on the radius")


def ground_energy(material: str, tables: Tables, where: str) -> Range:
    """Specific grinding energy (J/m³); RefusedInput, with its place, where none is known."""
    try:
        return tables.grinding_energy(material)
    except UnknownName as unknown:
        name = tables.material(material).name
        allowed = f"a metal of these classes: {', '.join(unknown.known)}"
        raise RefusedInput(where, f"grinding of {name}", allowed) from None


def grind_cut(wish: CutWish, number: int, passes: int, diameter: Metre, tables: Tables) -> Cut:
    """A traverse grinding cut."""
    speed = wish.speed if wish.speed is not None else tables.grinding("work_speed").best
    spindle = wish.spindle_speed or spindle_speed(speed, diameter)
    return Cut(
        id=f"cut-{number}",
        kind="grind",
        name=f"grind the outside, as asked (cut {number})",
        diameter=diameter,
        depth=infeed_of(wish, tables),
        feed=wish.feed if wish.feed is not None else tables.grinding("traverse").best,
        passes=passes,
        cutting_speed=surface_speed(spindle, diameter),
        spindle_speed=spindle,
        edge_angle=math.pi / 2,
        nose_radius=0.0,
        direction="both ways along the work",
        seat_effect=LOOSENS,
        wheel_speed=wish.wheel_speed or tables.grinding("wheel_speed").best,
        coolant=bool(wish.coolant),
    )


def system_of(wish: CutWish) -> str:
    """The system of pitch a gear is stated in."""
    return MODULE if wish.module is not None else PITCH


def module_of(wish: CutWish) -> Metre:
    """Module (m) of a gear, by whichever pitch it is stated."""
    return wish.module or module_of_pitch(wish.diametral_pitch or math.inf)


def gear_outside(wish: CutWish, tables: Tables) -> Metre:
    """Outside (m) of the finished gear."""
    teeth = tables.gear_teeth(system_of(wish))
    return blank_outside(module_of(wish), wish.teeth or 0, teeth.addendum)


def space_of(wish: CutWish, tables: Tables) -> ToothSpace:
    """The space between two teeth, and the cutter that mills it."""
    form, module = tables.gear_teeth(system_of(wish)), module_of(wish)
    usual = tables.gear_cutter(system_of(wish), module)
    whole = form.whole_depth * module
    return ToothSpace(
        teeth=wish.teeth or 0,
        module=module,
        whole_depth=whole,
        pressure_angle=form.pressure_angle,
        root_width=root_width(module, whole, form.addendum * module, form.pressure_angle),
        cutter_diameter=wish.cutter_diameter or usual.diameter,
        cutter_teeth=wish.cutter_teeth or usual.teeth,
    )


def gear_cut(wish: CutWish, number: int, job: Job, tables: Tables) -> Cut:
    """All spaces of a gear on the blank of a job; RefusedInput for a blank of another size."""
    _check_blank(wish, f"cut[{number}]", gear_outside(wish, tables), job)
    return gear_for(wish, number, job.work.material, tables, job.units)


def _in_file(number: int) -> Callable[[str], str]:
    return lambda key: f"cut[{number}].{key}"


def gear_for(
    wish: CutWish,
    number: int,
    material: str,
    tables: Tables,
    units: System = "mm",
    place: Callable[[str], str] | None = None,
) -> Cut:
    """All spaces of a gear, each in equal passes no deeper than the depth asked for.

    `place` says where a key stands in a refusal; left out, in the job file.
    """
    space, at = space_of(wish, tables), place or _in_file(number)
    _check_gear(wish, at, space, Show(units), tables)
    each = max(1, math.ceil(space.whole_depth / (wish.depth or math.inf) - 1e-9))
    surface = _cutter_speed(wish, at, space, material, tables)
    return Cut(
        id=f"cut-{number}",
        kind="gear",
        name=f"cut {space.teeth} teeth of {pitch_words(wish)}, as asked (cut {number})",
        diameter=gear_outside(wish, tables),
        depth=space.whole_depth / each,
        feed=wish.feed if wish.feed is not None else tables.gear_cutting("feed_per_tooth").best,
        passes=space.teeth * each,
        cutting_speed=surface,
        spindle_speed=spindle_speed(surface, space.cutter_diameter),
        edge_angle=math.pi / 2,
        nose_radius=0.0,
        direction="from the tailstock side towards the dividing head",
        seat_effect=TIGHTENS,
        space=space,
    )


def pitch_words(wish: CutWish) -> str:
    """The pitch as it is stated.

    >>> pitch_words(CutWish("gear", module=0.002)), pitch_words(CutWish("gear", diametral_pitch=10))
    ('module 2', '10 DP')
    """
    if wish.module is not None:
        return f"module {1e3 * wish.module:.4g}"
    return f"{wish.diametral_pitch:g} DP"


def _cutter_speed(
    wish: CutWish, at: Callable[[str], str], space: ToothSpace, material: str, tables: Tables
) -> MetrePerSecond:
    try:
        turning = tables.cutting_speed(material, "hss").best
    except UnknownName:
        found = f"a form cutter in {tables.material(material).name}"
        allowed = "a metal that high-speed steel cuts: cut the teeth before hardening"
        raise RefusedInput(at("kind"), found, allowed) from None
    if wish.spindle_speed is not None:
        return surface_speed(wish.spindle_speed, space.cutter_diameter)
    return wish.speed or turning * tables.gear_cutting("speed_share").best


def _check_gear(
    wish: CutWish, at: Callable[[str], str], space: ToothSpace, show: Show, tables: Tables
) -> None:
    least = tables.gear_cutting("depth_over_cutter").best * space.whole_depth
    if space.cutter_diameter < least:
        found = show.length(space.cutter_diameter)
        allowed = f"{show.length(least)} or more: three times the depth of the teeth"
        raise RefusedInput(at("cutter_diameter"), found, allowed)
    if wish.feed is not None and wish.feed > MOST_FEED:
        allowed = f"at most {show.length(MOST_FEED)} for each tooth of the cutter"
        raise RefusedInput(at("feed"), show.length(wish.feed), allowed)
    if wish.depth is not None and wish.depth > space.whole_depth * (1 + 1e-6):
        allowed = f"at most the whole depth of the teeth, {show.depth(space.whole_depth)}"
        raise RefusedInput(at("depth"), show.depth(wish.depth), allowed)


def _check_blank(wish: CutWish, place: str, needed: Metre, job: Job) -> None:
    show, slack = Show(job.units), SIZE_SLACK * module_of(wish)
    work = job.work
    has = work.outside if work.finished.outside is None else work.finished.outside
    off = has - needed
    if off < -slack or (work.finished.outside is not None and off > slack):
        allowed = f"a blank of {show.length(needed)}, which is (teeth + 2) modules"
        raise RefusedInput(
            f"{place}.teeth",
            f"{wish.teeth} teeth of {pitch_words(wish)} on an outside of {show.length(has)}",
            allowed,
        )
