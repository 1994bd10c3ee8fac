"""Steps where the mandrel goes between the centers of a grinder or of a dividing head."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.cut_words import depth_words
from borewright.answer.records import Cut, Figure
from borewright.cutting.load_demand import space_cut
from borewright.mechanics.milling import table_feed
from borewright.planning.steps.load_tooth import tooth_figures, tooth_words, whole_depth
from borewright.planning.taper.bending import push_of_a_kelvin
from borewright.planning.taper.mouths import mouth_leg
from borewright.planning.taper.trial import Trial
from borewright.quantities.show import Show

Line = tuple[str, str, tuple[Figure, ...], tuple[str, ...]]


DRIVEN = {
    "dog": "to the headstock, dog (carrier) on it, tail guarded",
    "collet": "in the collet, small end on the tailstock center",
    "three-jaw": "in the three-jaw, small end on the tailstock center; clock it, and take light cuts",
}
"""How the mandrel is turned, by what drives it."""


def between_centers(trial: Trial) -> Line:
    """The first setting up: on the lathe where anything is turned, else on the first load's machine."""
    if any(c.on_lathe for c in trial.cuts):
        return (
            "Between centers" if trial.job.driven_by == "dog" else "On the lathe",
            f"Power off. Large end {DRIVEN[trial.job.driven_by]}. Oil the tailstock center; ease it as "
            f"the mandrel warms: {_gained(trial)}. Turn once by hand: everything must clear.",
            (),
            (),
        )
    return set_up(trial.cuts[0], trial.show)


WARMER = 10.0
"""Warmth (K) for which the push of a center that is not eased is said; ours."""


def _gained(trial: Trial) -> str:
    """What a plain center gains where nobody eases it."""
    push, show = push_of_a_kelvin(trial) * WARMER, trial.show
    return f"not eased, it pushes about {show.force(push)} more for each {show.temperature_difference(WARMER)}"


def mouths_words(trial: Trial) -> str:
    """What the mouths of the bore want: a chamfer only where a tool faces towards them."""
    if any(c.on_lathe for c in trial.cuts):
        if all(trial.job.work.chamfers.legs):
            return "Its chamfers are as stated: facing stops in them."
        leg = trial.show.length(mouth_leg(trial))
        return (
            f"Chamfer both ends of the bore by about {leg}, no more: facing stops in the chamfer."
        )
    return "No burr at either end of the bore."


def set_up(cut: Cut, show: Show) -> Line:
    """The mandrel on the grinder, or on the dividing head."""
    return _on_grinder(cut, show) if cut.kind == "grind" else _on_dividing_head(cut)


def loads(trial: Trial, set_already: bool) -> Iterator[tuple[Line, Cut | None]]:
    """Setting up and cutting for every load in its order; the first is set up where nothing is turned."""
    kinds: list[str] = [trial.cuts[0].kind] if set_already else []
    for cut in (c for c in trial.cuts if not c.on_lathe):
        if kinds[-1:] != [cut.kind]:
            yield set_up(cut, trial.show), None
        kinds.append(cut.kind)
        yield (_grind(cut, trial) if cut.kind == "grind" else _teeth(cut, trial)), cut


def _on_grinder(cut: Cut, show: Show) -> Line:
    return (
        "Between the grinder's centers",
        f"Power off. Wheel rung, marked for {show.surface(cut.wheel_speed or 0.0)} at its rim or more, guard closed. Both "
        "centers dead if the machine allows, oiled. Large end to the headstock, dog (carrier) on it, no slack at its "
        "driver. Turn once by hand: wheel and dog must clear at both ends of the traverse.",
        (),
        ("runs out",),
    )


def _on_dividing_head(cut: Cut) -> Line:
    return (
        "Between dividing head and tailstock",
        "Power off. Large end to the dividing head, dog (carrier) on it, its tail clamped in the driver so that it cannot "
        "rattle. By indicator: the ground part runs true, and lies level and along the table. Cutter on the center line. "
        f"Count {space_cut(cut).teeth} divisions round with light witness marks: the last must meet the first.",
        (),
        ("runs out", "marks meet"),
    )


def _grind(cut: Cut, trial: Trial) -> Line:
    size = trial.job.work.finished.outside
    to = f" to {trial.show.length(size)}" if size is not None else ""
    wet = "Coolant on before the wheel touches." if cut.coolant else "Dry: wait until it is cool."
    return (
        "Grind",
        f"Dress the wheel. Come up by hand until it sparks. Traverse the whole length, the wheel a third off each face, infeed "
        f"{depth_words(cut, trial.show)} at the end{to}. {wet} The stroke towards the tailstock pushes it off the taper: watch "
        "the pencil line. Measure cool; last passes with no infeed until the sparks die.",
        (),
        ("finished outside",),
    )


def _teeth(cut: Cut, trial: Trial) -> Line:
    space, show = space_cut(cut), trial.show
    each = cut.passes // space.teeth
    passes = "one pass" if each == 1 else f"{each} equal passes"
    minute = 60 * table_feed(cut.feed, space.cutter_teeth, cut.spindle_speed)
    return (
        "Cut the teeth",
        f"Depth from touching the outside: {show.depth(space.whole_depth)}, in {passes}. Feed {show.length(cut.feed)} a tooth "
        f"of the cutter, {show.length(minute)} a minute. Clamp the head, start at the tailstock side, feed towards the head "
        "and against the turn of the cutter: it then pushes the work up the taper. Drop the table before running back. "
        f"Watch the pencil line at each index. {tooth_words(cut, trial)}",
        (whole_depth(cut, trial.job, trial.tables), *tooth_figures(cut, trial)),
        ("tooth measured",),
    )
