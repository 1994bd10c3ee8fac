"""What must hold for every route: a narrower window, a better gauge, one tool more."""

from __future__ import annotations

import math
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.bore_jobs import INCH, TABLES, Route, bored_job, by_class, made, route_of, solid

from borewright.job.records import Bore, MandrelNote, Piece
from borewright.job.tools import OwnDrill, OwnGauge, OwnReamer
from borewright.quantities.show import Show
from borewright.report.bore_route_words import route_figures, route_lines

NEARER_DRILL = 1e-3
"""A drill nearer to the printed stock may leave a hole that is too large once in a thousand more."""
ALIKE = 0.05
"""Ways this near to one another count as alike, and then the reamer is taken."""
SUMMED = 2e-3
"""Of the sum over the trials of a reamer."""

SETTINGS = settings(max_examples=60, deadline=None)
MIDDLES = st.floats(0.01583, 0.01592)
HALVES = st.floats(2e-6, 40e-6)
CUTS = st.one_of(st.none(), st.floats(-10e-6, 30e-6))
REAMERS = st.builds(
    OwnReamer,
    st.sampled_from([0.015875, 0.0159, 0.0158, 0.0127]),
    st.sampled_from(["", "hand", "machine"]),
    CUTS,
)
DRILLS = st.builds(OwnDrill, st.sampled_from([k * INCH / 64 for k in range(8, 41)]))
GAUGES = st.builds(OwnGauge, st.just("bore gauge"), st.floats(1e-6, 12e-6))


def asked(middle: float, half: float, **shelf: object) -> Route:
    return solid(window=(middle - half, middle + half), **shelf)


def best(route: Route) -> float:
    return made(route).best_chance or 0.0


@SETTINGS
@given(MIDDLES, HALVES, st.floats(0, 20e-6), st.floats(0, 20e-6), st.lists(REAMERS, max_size=2))
def test_a_narrower_window_never_raises_the_best_chance(
    middle: float, half: float, below: float, above: float, reamers: list[OwnReamer]
) -> None:
    shelf = {"reamers": tuple(reamers)}
    narrow = best(asked(middle, half, **shelf))
    wide = best(solid(window=(middle - half - below, middle + half + above), **shelf))
    assert narrow <= wide + NEARER_DRILL + SUMMED


@SETTINGS
@given(MIDDLES, HALVES, GAUGES, st.floats(0.1, 1.0), st.lists(REAMERS, max_size=2))
def test_a_better_gauge_never_lowers_it(
    middle: float, half: float, gauge: OwnGauge, share: float, reamers: list[OwnReamer]
) -> None:
    finer = OwnGauge("bore gauge", (gauge.uncertainty or 0.0) * share)
    poor, good = (
        best(asked(middle, half, reamers=tuple(reamers), gauges=(g,))) for g in (gauge, finer)
    )
    assert good >= poor - SUMMED


@SETTINGS
@given(MIDDLES, HALVES, st.lists(REAMERS, max_size=2), REAMERS)
def test_one_reamer_more_never_lowers_it(
    middle: float, half: float, reamers: list[OwnReamer], more: OwnReamer
) -> None:
    """Of everything considered; a shop that lists none is taken to have the usual one."""
    fewer, richer = (
        best(asked(middle, half, reamers=tuple(r))) for r in (reamers, [*reamers, more])
    )
    assert richer >= fewer - NEARER_DRILL - SUMMED


@SETTINGS
@given(MIDDLES, HALVES, st.lists(DRILLS, max_size=4), DRILLS, st.lists(REAMERS, max_size=1))
def test_one_drill_more_never_lowers_it(
    middle: float, half: float, drills: list[OwnDrill], more: OwnDrill, reamers: list[OwnReamer]
) -> None:
    fewer, richer = (
        best(asked(middle, half, drills=tuple(d), reamers=tuple(reamers)))
        for d in (drills, [*drills, more])
    )
    if drills:  # a shop that lists none is taken to have a whole set
        assert richer >= fewer - NEARER_DRILL - SUMMED


@SETTINGS
@given(MIDDLES, HALVES, st.lists(REAMERS, max_size=2), st.lists(DRILLS, max_size=3))
def test_what_is_taken_is_within_reach_of_the_best_of_what_is_there(
    middle: float, half: float, reamers: list[OwnReamer], drills: list[OwnDrill]
) -> None:
    route = made(asked(middle, half, reamers=tuple(reamers), drills=tuple(drills)))
    there = [a.chance for a in route.alternatives if a.possible and a.owned != "no" and a.chance]
    if route.chance is None or any(step.owned == "no" for step in route.steps):
        assert there == []
    else:
        assert route.chance.best >= max([0.0, *there]) - ALIKE


MADE = ["drilled", "cored", "cast", "unknown", "reamed", "bored"]


@st.composite
def any_jobs(draw: st.DrawFn) -> Route:
    """Any bore of any metal, at hand or not, on a mandrel near it or none."""
    size, wide = draw(st.floats(1e-3, 0.15)), draw(st.floats(2e-6, 80e-6))
    if draw(st.booleans()):
        code = draw(st.sampled_from(["H6", "H7", "H8", "H9", "H11", "F8"]))
        job = by_class(f"{max(3.0, min(size * 1e3, 110)):.3f} {code}")[0]
        size = job.work.bore.size
    else:
        how = draw(st.sampled_from(["caliper", "unknown", "plug gauge"]))
        bore = Bore(size, None, how, draw(st.sampled_from(MADE)))
        job = bored_job(bore, draw(st.sampled_from(["inch", "mm"])))
    length, metal = draw(st.floats(0.2, 6.0)) * size, draw(st.sampled_from(METALS))
    work = replace(
        job.work,
        material=metal,
        blank=draw(st.sampled_from(["bar", "casting", "unknown"])),
        pieces=(Piece(0.0, length, 3 * size),),
        quantity=draw(st.integers(1, 30)),
    )
    note = MandrelNote(min(max(size, 1e-3), 0.4), "the 5/8 in mandrel")
    middle = size + draw(st.floats(-1e-3, 4e-3))
    window = draw(st.sampled_from([None, (middle - wide, middle + wide)]))
    return replace(job, work=work, shelf=replace(job.shelf, mandrels=(note,))), window


METALS = TABLES.work_materials()


@settings(max_examples=300, deadline=None)
@given(any_jobs())
def test_no_bore_makes_it_stumble(asked_for: Route) -> None:
    route = route_of(asked_for)
    said = " ".join(route_lines(route, Show(asked_for[0].units)))
    assert not {"nan", "None", "inf", ".."} & set(said.replace("..", " .. ").split())
    for figure in route_figures(route):
        assert math.isfinite(figure.best)
        if figure.low is not None and figure.high is not None:
            assert figure.low <= figure.best <= figure.high
    if route is not None and route.chance is not None:
        assert 0.0 <= route.chance.best <= 1.0
        assert route.steps
