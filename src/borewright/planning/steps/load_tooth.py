"""What to measure a finished tooth against: chord and its height, or a span over several teeth."""

from __future__ import annotations

from borewright.answer.records import Cut, Figure
from borewright.cutting.load_demand import space_cut
from borewright.cutting.loads import system_of
from borewright.job.records import Job
from borewright.mechanics.tooth_measures import (
    chordal_height,
    chordal_thickness,
    span_over,
    teeth_to_span,
    thinned_by,
)
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure, given
from borewright.reference.gears import GearTeeth
from borewright.reference.library import Tables

DEEPER = {"inch": 25.4e-6, "mm": 0.01e-3}
"""A thou, or a hundredth of a mm (m): the step in which a space is deepened to thin its tooth."""


def form_of(cut: Cut, job: Job, tables: Tables) -> GearTeeth:
    """Proportions of the teeth of a gear cut."""
    wish = job.cuts[int(cut.id.removeprefix("cut-")) - 1]
    return tables.gear_teeth(system_of(wish))


def tooth_words(cut: Cut, trial: Trial) -> str:
    """The figures to measure against, and what is not in them."""
    show, (chord, height, span) = trial.show, tooth_figures(cut, trial)
    space, k = space_cut(cut), spanned(cut)
    finer = DEEPER[show.units]
    thinner = thinned_by(finer, space.pressure_angle)
    return (
        f"After the second space measure a tooth: {show.bore(chord.best)} thick with the caliper set {show.bore(height.best)} "
        f"high (counted from {show.bore(cut.diameter)} outside: add half of what the blank is over); or, after {k + 1} spaces, {show.bore(span.best)} over {k} teeth. No backlash is in these: "
        f"thinner by this gear's share of the play. Each {show.small(finer)} deeper thins a tooth by {show.small(thinner)}."
    )


def spanned(cut: Cut) -> int:
    """How many teeth the span goes over."""
    space = space_cut(cut)
    return teeth_to_span(space.teeth, space.pressure_angle)


def tooth_figures(cut: Cut, trial: Trial) -> tuple[Figure, Figure, Figure]:
    """Chord, its height and the span, with the numbers that they are worked from."""
    space, form, k = space_cut(cut), form_of(cut, trial.job, trial.tables), spanned(cut)
    module = given("m", space.module, "m", "small")
    z, angle = given("z", space.teeth), given("angle", space.pressure_angle, "rad")
    chord = chordal_thickness(space.module, space.teeth)
    height = chordal_height(space.module, space.teeth, form.addendum)
    span = span_over(space.module, space.teeth, k, space.pressure_angle)
    source = (form.source,)
    return (
        figure("tooth_chord", chord, "m", "bore", "tooth_chord", (module, z), source),
        figure(
            "tooth_height",
            height,
            "m",
            "bore",
            "tooth_height",
            (module, given("a", form.addendum), z),
            source,
        ),
        figure(
            "tooth_span", span, "m", "bore", "tooth_span", (module, angle, given("k", k), z), source
        ),
    )


def whole_depth(cut: Cut, job: Job, tables: Tables) -> Figure:
    """Depth of the teeth from the outside."""
    source = form_of(cut, job, tables).source
    return figure("tooth_depth", space_cut(cut).whole_depth, "m", "depth", "", sources=(source,))
