"""The numbers of a shelf's wall chart are those a plan gives for the same mandrel and hub."""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import replace
from itertools import pairwise

import pytest
from tests.on_a_mandrel import plan

from borewright.answer.chart import Chart, ChartBar, ChartCell, ChartColumn
from borewright.answer.records import Verdict
from borewright.cutting.demand import demand_of
from borewright.cutting.schedule import planned_cuts
from borewright.errors import RefusedInput, UnknownName
from borewright.holding.taper.plain_taper import TaperHold, holds
from borewright.job.records import Bore, CutWish, Job, Machine, MandrelNote, Piece, Shelf, Work
from borewright.mechanics.spread import likely, low_end
from borewright.planning.shop.shop import shop_of
from borewright.planning.taper.travel import (
    RULE_STEP,
    crack_share,
    hand_travel,
    press_draws,
    push_share,
)
from borewright.planning.taper.trial import make_trial
from borewright.planning.weighing.judge import judge
from borewright.planning.weighing.margins import slip_margins
from borewright.reference import tables
from borewright.service.shelf_chart import shelf_chart

INCH = 0.0254
ALUMINIUM = "al-6061-t6"
MEASURED = ((0.005, 0.015865), (0.05, 0.015885), (0.1, 0.015915))
SHELF = Shelf(
    (
        MandrelNote(0.5 * INCH, "half"),
        MandrelNote(0.018, "eighteen", 0.01799, ground_length=0.11, overall_length=0.15),
        MandrelNote(0.625 * INCH, "worn", ground_length=0.108, stations=MEASURED),
    ),
    stated=True,
    press="arbor press 1 ton",
)
RULE = tables().allowance("rule_step").low
"""The finest that a rule reads (m). Left out, the hand's own travel would be ten times this."""

NAMES = tuple(m.name for m in SHELF.mandrels)


@pytest.fixture(scope="module")
def chart() -> Chart:
    return shelf_chart(SHELF)


def bar_of(chart: Chart, name: str) -> ChartBar:
    return next(b for b in chart.bars if b.mandrel == name)


def window_of(chart: Chart, name: str) -> tuple[float, float]:
    window = bar_of(chart, name).bore_window
    assert window is not None
    return window


def shelf_with(name: str, press: str = SHELF.press) -> Shelf:
    kept = tuple(m for m in SHELF.mandrels if m.name == name)
    return replace(SHELF, mandrels=kept, press=press)


def hub_job(chart: Chart, name: str, material: str, cuts: tuple[CutWish, ...] = ()) -> Job:
    """The hub that the chart prints, as a job of its own: 2 bores across, 1.5 long, reamed."""
    size = sum(window_of(chart, name)) / 2
    hub = Piece(0.0, 1.5 * size, 2.0 * size)
    bore = Bore(size, 0.0, "plug gauge", "reamed")
    return Job("hub", Work(material, (hub,), bore), "inch", shelf_with(name), cuts=cuts)


def hold_of(job: Job) -> TaperHold:
    (mandrel,) = shop_of(job, tables()).mandrels
    return holds(job, mandrel, tables())[0]


# Which mandrel for this bore


@pytest.mark.parametrize("name", NAMES)
def test_a_window_is_the_plans_own_where_the_plan_presses_as_far_as_is_usual(name: str) -> None:
    drawn = shelf_chart(shelf_with(name), (ALUMINIUM,))

    def job(thou: int) -> Job:
        return hub_job(drawn, name, ALUMINIUM, (CutWish("turn", thou * INCH / 1000, 0.0001),))

    def pressed(thou: int) -> float:
        tried = job(thou)
        shop = shop_of(tried, tables())
        return make_trial(tried, shop, hold_of(tried), tables()).chosen.press

    first = bisect_left(range(1, 200), True, key=lambda k: pressed(k) >= drawn.press - 1e-9)
    assert pressed(first + 1) == pytest.approx(drawn.press), "some cut asks for just this travel"
    assert plan(job(first + 1)).bore_window == pytest.approx(window_of(drawn, name), abs=1e-9)


def test_a_window_is_what_the_windows_of_its_materials_have_in_common(chart: Chart) -> None:
    apart = [shelf_chart(SHELF, (c.material,)) for c in chart.columns[:3]]
    for name in NAMES:
        lows, highs = zip(*(window_of(a, name) for a in apart), strict=True)
        assert window_of(chart, name) == pytest.approx((max(lows), min(highs)), abs=1e-12)


@pytest.mark.parametrize("name", NAMES)
def test_a_mark_reads_what_the_rule_reads_in_a_plan_at_touch(name: str) -> None:
    drawn = shelf_chart(shelf_with(name), (ALUMINIUM,))
    assert 3 <= len(bar_of(drawn, name).marks) <= 5
    for mark in bar_of(drawn, name).marks:
        job = hub_job(drawn, name, ALUMINIUM)
        hub = Piece(0.0, 1.5 * mark.bore, 2.0 * mark.bore)
        bore = replace(job.work.bore, size=mark.bore)
        job = replace(job, work=replace(job.work, bore=bore, pieces=(hub,)))
        trial = make_trial(job, shop_of(job, tables()), hold_of(job), tables())
        at_touch = trial.from_large_end(trial.hold.likely_touch + trial.hand)
        assert mark.reading == pytest.approx(at_touch, abs=RULE)


def test_marks_lie_in_the_window_and_larger_bores_nearer_the_large_end(chart: Chart) -> None:
    for bar in chart.bars:
        low, high = window_of(chart, bar.mandrel)
        assert all(low - 1e-9 <= m.bore <= high + 1e-9 for m in bar.marks)
        assert all(a.bore < b.bore and a.reading > b.reading for a, b in pairwise(bar.marks))


def test_no_mandrel_takes_a_bore_inside_a_gap_and_one_takes_each_end(chart: Chart) -> None:
    windows = [window_of(chart, name) for name in NAMES]
    assert len(chart.gaps) == 2
    for gap in chart.gaps:
        assert all(high <= gap.low or low >= gap.high for low, high in windows)
        assert gap.low in [high for _, high in windows]
        assert gap.high in [low for low, _ in windows]


def test_two_mandrels_that_overlap_leave_no_gap() -> None:
    twins = (MandrelNote(0.016, "one"), MandrelNote(0.016, "two"))
    assert shelf_chart(replace(SHELF, mandrels=twins)).gaps == ()


def test_a_mandrel_too_short_for_the_hub_takes_nothing_and_has_no_depths() -> None:
    short = MandrelNote(0.02, "stubby", ground_length=0.03, overall_length=0.05)
    drawn = shelf_chart(replace(SHELF, mandrels=(*SHELF.mandrels, short)))
    assert bar_of(drawn, "stubby").bore_window is None
    assert "stubby" not in {c.mandrel for c in drawn.columns}


def test_a_mandrel_whose_ends_were_not_stated_is_told_from_one_whose_were(chart: Chart) -> None:
    assert {b.mandrel: b.as_stated for b in chart.bars} == {
        "half": False,
        "eighteen": True,
        "worn": True,
    }


# How deep a cut holds


def slip_says(chart: Chart, cell: ChartCell, depth: float) -> Verdict:
    """The slip verdict of one cut on the hub, by the plan's own grip, cut, demand and judge."""
    column = column_of(chart, cell)
    job = hub_job(chart, cell.mandrel, cell.material)
    hold = hold_of(job)
    grip = hold.grip(hand_travel(hold, tables()) + column.press)
    wheel = replace(job.work, pieces=(Piece(0.0, job.work.length, cell.outside),))
    wish = (CutWish("turn", depth, chart.feed),)
    (cut,) = planned_cuts(replace(job, work=wheel, cuts=wish), tables())
    m = slip_margins(grip, demand_of(cut, cell.material, tables()))
    return judge("slip", likely(m), low_end(m), tables())


def column_of(chart: Chart, cell: ChartCell) -> ChartColumn:
    key = (cell.mandrel, cell.material)
    return next(c for c in chart.columns if (c.mandrel, c.material) == key)


def test_each_cell_is_a_yes_and_the_next_deeper_cut_is_not(chart: Chart) -> None:
    cells = [c for c in chart.cells if c.depth is not None and not c.or_more]
    assert len(cells) > 40
    for cell in cells[::3]:
        assert cell.depth is not None
        assert slip_says(chart, cell, cell.depth) is Verdict.YES, cell
        assert slip_says(chart, cell, cell.depth + chart.depth_step) is not Verdict.YES, cell


def test_a_cell_without_a_depth_has_no_cut_worth_setting() -> None:
    drawn = shelf_chart(shelf_with("half", "hand"))
    empty = [c for c in drawn.cells if c.depth is None and column_of(drawn, c).press > 0]
    assert empty
    assert all(slip_says(drawn, c, 0.05e-3 + drawn.depth_step) is not Verdict.YES for c in empty)


def test_the_smaller_the_outside_the_deeper_the_cut(chart: Chart) -> None:
    for column in chart.columns:
        key = (column.mandrel, column.material)
        depths = [c.depth or 0.0 for c in chart.cells if (c.mandrel, c.material) == key]
        assert len(depths) > 4
        assert all(small >= large for small, large in pairwise(depths))
        assert depths[0] > 3 * depths[-1], "torque grows with the radius"


def test_no_depth_is_given_for_a_wheel_smaller_than_its_hub(chart: Chart) -> None:
    nominal = {c.mandrel: c.nominal for c in chart.columns}
    assert all(c.outside > 2 * nominal[c.mandrel] for c in chart.cells)


def test_a_stronger_press_never_makes_a_cut_shallower() -> None:
    weak, strong = (shelf_chart(shelf_with("eighteen", p)) for p in ("vice", "arbor press 3 ton"))
    pairs = list(zip(weak.cells, strong.cells, strict=True))
    assert all((a.depth or 0.0) <= (b.depth or 0.0) for a, b in pairs)
    assert any((a.depth or 0.0) < (b.depth or 0.0) for a, b in pairs)


def test_the_travel_is_the_usual_or_the_last_that_bore_and_press_answer_yes(chart: Chart) -> None:
    stopped = [c for c in chart.columns if c.limited_by]
    assert {c.limited_by for c in stopped} == {"the bore", "the press"}
    for column in chart.columns:
        assert (column.press == pytest.approx(chart.press)) is (column.limited_by == "")
        assert stays_yes(chart, column, 0)
        assert not column.limited_by or not stays_yes(chart, column, 1)


def stays_yes(chart: Chart, column: ChartColumn, more: int) -> bool:
    """Whether bore and press answer yes at this travel and so many steps of the rule more."""
    job = hub_job(chart, column.mandrel, column.material)
    hold, force = hold_of(job), press_draws(shop_of(job, tables()).press_force)
    travel = hand_travel(hold, tables()) + column.press + more * RULE_STEP["inch"]
    grip = hold.grip(travel)
    return min(crack_share(grip, hold, tables()), push_share(grip, force, tables())) >= 1


def test_where_the_chart_stops_before_the_grip_does_it_says_so() -> None:
    stout = Shelf((MandrelNote(11 / 16 * INCH, "stout"),), True, "hydraulic-shop-press")
    drawn = shelf_chart(stout, ("mild steel",))
    plus = [c for c in drawn.cells if c.or_more]
    assert plus
    assert all(c.depth == pytest.approx(0.1 * INCH) for c in plus)
    assert all((c.margin or 0) >= 2 and (c.margin_low or 0) >= 1 for c in plus)


def test_outsides_that_the_lathe_does_not_swing_are_left_out_and_said() -> None:
    small = replace(SHELF, machine=Machine(swing_over_cross_slide=0.1))
    drawn = shelf_chart(small)
    assert max(drawn.outsides) <= 0.1 < max(shelf_chart(SHELF).outsides)
    assert any("swing" in said for said in drawn.not_shown)


def test_of_several_lathes_the_widest_says_what_is_charted() -> None:
    small, large = Machine(swing_over_cross_slide=0.1), Machine(swing_over_cross_slide=0.22)
    both = shelf_chart(replace(SHELF, machine=small, lathes=(small, large)))
    assert 0.1 < max(both.outsides) <= 0.22
    untold = shelf_chart(replace(SHELF, machine=small, lathes=(small, Machine("untold"))))
    assert max(untold.outsides) > 0.22


def test_a_feed_that_the_lathe_has_is_used() -> None:
    geared = replace(SHELF, machine=Machine(feeds=(0.00005, 0.00009, 0.0002)))
    assert shelf_chart(geared).feed == 0.00009


# What is asked


def test_a_material_by_any_name_and_only_once() -> None:
    drawn = shelf_chart(shelf_with("half"), ("brass", "c360", "Mild Steel"))
    assert [c.material for c in drawn.columns] == ["brass-c360", "steel-1018"]


def test_what_cannot_be_charted_is_refused() -> None:
    with pytest.raises(UnknownName, match="--material: found 'brasss'"):
        shelf_chart(SHELF, ("brasss",))
    with pytest.raises(UnknownName, match="--material"):
        shelf_chart(SHELF, ("mandrel-steel-hard",))
    with pytest.raises(RefusedInput, match="at most 4"):
        shelf_chart(SHELF, ("brass", "copper", "acetal", "1045", "o1"))
    with pytest.raises(RefusedInput, match="no mandrel on this shelf"):
        shelf_chart(Shelf(stated=True))


def test_every_assumption_has_a_source_that_the_tables_know(chart: Chart) -> None:
    known = {*tables().table("sources").column("id"), "stated"}
    assert len(chart.assumed) > 8
    assert {a.source for a in chart.assumed} <= known
    assert {s.partition(": ")[0] for s in chart.sources} <= known
