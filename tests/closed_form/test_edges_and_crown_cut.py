"""Broken edges, chamfers and the crown as cuts: where they are, what they ask, how long they take."""

from __future__ import annotations

import math
import re
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.formed_jobs import TABLES, TEXT, formed
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.answer.records import Cut
from borewright.cutting.demand import demand_of
from borewright.cutting.edges import edge_cuts
from borewright.cutting.led import led
from borewright.cutting.turning import turning as turning_cuts
from borewright.errors import RefusedInput
from borewright.job import Chamfers, CrownWish, Job, parse_job
from borewright.job.finished_edges import leg_of, outer_edges
from borewright.job.finished_form import FinishedStep, Groove
from borewright.job.records import Piece
from borewright.job.write import job_text
from borewright.planning.choice.arrangement import arrange
from borewright.planning.choice.recommended import recommended
from borewright.planning.passes.bench import Bench, Set
from borewright.planning.passes.holding import holding_of
from borewright.planning.passes.runs import runs
from borewright.planning.weighing.chatter import Swing, chatter_of
from borewright.planning.weighing.crown_cut import crown_wanted
from borewright.planning.weighing.warmed import work_body
from borewright.service import planned

STEPPED = formed(
    steps=(FinishedStep(0.0, 0.006, 0.05),),
    grooves=(Groove(0.006, 0.008, 0.046), Groove(0.015, 0.017, 0.055)),
    edges=0.3e-3,
    chamfers=Chamfers(0.0, 1e-3),
)


# Where the edges are


def test_every_corner_of_the_finished_outside_is_an_edge_that_looks_out() -> None:
    """Drawn by hand: step to 6, groove to 8, full to 15, groove to 17, full to the end."""
    found = [
        (round(1e3 * e.at), round(1e3 * e.outside), e.looks) for e in outer_edges(STEPPED.work)
    ]
    assert found == [
        (0, 50, "A"), (6, 50, "B"), (8, 61, "A"), (15, 61, "B"), (17, 61, "A"), (25, 61, "B"),
    ]  # fmt: skip


def test_a_rim_narrower_than_its_hub_has_edges_at_the_rim_only() -> None:
    pieces = (Piece(0.0, 0.03, 0.03), Piece(0.005, 0.025, 0.063, 0.03))
    work = replace(formed(edges=0.3e-3).work, pieces=pieces)
    assert [(e.at, e.looks, e.end) for e in outer_edges(work)] == [
        (0.005, "A", True),
        (0.025, "B", True),
    ]


def test_a_chamfer_is_of_the_end_and_the_rest_are_broken() -> None:
    legs = [leg_of(e, STEPPED.work) for e in outer_edges(STEPPED.work)]
    assert legs == [0.3e-3] * 5 + [1e-3]
    rows = {row.id: row for row in edge_cuts(STEPPED, TABLES)}
    assert {k: (r.depth, r.passes) for k, r in rows.items()} == {
        "chamfer-b": (1e-3, 1),
        "edges-a": (0.3e-3, 3),
        "edges-b": (0.3e-3, 2),
    }


@pytest.mark.parametrize(
    ("stated", "legs"),
    [
        ('"2mm"', (2e-3, 2e-3)),
        ('{a = "1mm"}', (1e-3, 0.0)),
        ('{a = "1mm", b = "2mm"}', (1e-3, 2e-3)),
    ],
)
def test_chamfers_are_read_and_written_as_stated(stated: str, legs: tuple[float, float]) -> None:
    job = parse_job(f"{TEXT}chamfer = {stated}\n", "wheel.toml")
    assert job.work.finished.form.chamfers.legs == pytest.approx(legs)
    assert parse_job(job_text(job), "again.toml") == job


@pytest.mark.parametrize("stated", ['"13mm"', '{a = "22.5mm"}', '{a = "15mm", b = "10mm"}'])
def test_a_chamfer_with_no_metal_for_it_is_refused_with_its_place(stated: str) -> None:
    with pytest.raises(RefusedInput, match=re.escape("work.finished.chamfer.")):
        parse_job(f"{TEXT}chamfer = {stated}\n", "wheel.toml")


# What an edge asks


@given(leg=st.floats(0.1e-3, 3e-3), feed=st.floats(0.01e-3, 0.1e-3))
def test_an_edge_asks_what_a_plunge_as_wide_as_its_slope_asks_half_of_it_each_way(
    leg: float, feed: float
) -> None:
    """Closed form: the slope of a leg a is a √2 wide, and its push stands at 45 degrees."""
    row = replace(next(edge_cuts(formed(edges=0.3e-3), TABLES)), depth=leg, feed=feed)
    plunge = replace(row, kind="groove", depth=math.sqrt(2) * leg)
    edge, groove = (demand_of(c, "al-6061-t6", TABLES) for c in (row, plunge))
    assert np.allclose(edge.tangential, groove.tangential)
    assert np.allclose(edge.radial, groove.radial / math.sqrt(2))
    assert np.allclose(abs(edge.axial), groove.radial / math.sqrt(2))
    assert np.allclose(edge.torque, edge.tangential * row.diameter / 2)


@pytest.mark.parametrize(("leading", "loosens"), [("A", "edges-a"), ("B", "edges-b")])
def test_edges_on_the_side_of_the_headstock_push_the_work_off(leading: str, loosens: str) -> None:
    job = formed(edges=0.3e-3)
    rows = led(edge_cuts(job, TABLES), job.work, leading)
    pushed = {r.id: float(np.mean(demand_of(r, "al-6061-t6", TABLES).axial)) for r in rows}
    assert pushed.pop(loosens) < 0
    assert all(axial > 0 for axial in pushed.values())


@pytest.mark.parametrize(
    ("leading", "step", "loosens"),
    [("A", (0.0, 0.008), True), ("B", (0.0, 0.008), False), ("B", (0.017, 0.025), True)],
)
def test_a_step_walled_off_from_the_tailstock_is_entered_from_the_headstock_and_pushes_off(
    leading: str, step: tuple[float, float], loosens: bool
) -> None:
    job = formed(steps=(FinishedStep(*step, 0.05),))
    cuts = led(
        (c for c in turning_cuts(job, TABLES, 1.0) if c.id == "step-1-rough"), job.work, leading
    )
    (pushed,) = (float(np.mean(demand_of(c, "al-6061-t6", TABLES).axial)) for c in cuts)
    assert (pushed < 0) == loosens
    assert (cuts[0].direction == "away from the headstock") == loosens


def test_a_step_between_two_shoulders_is_plunged_and_fed_as_all_else() -> None:
    job = formed(steps=(FinishedStep(0.008, 0.016, 0.05),))
    (cut,) = led(
        (c for c in turning_cuts(job, TABLES, 1.0) if c.id == "step-1-rough"), job.work, "A"
    )
    assert cut.seat_effect == "tightens"


def test_an_edge_takes_half_of_the_waves_that_a_groove_as_wide_takes() -> None:
    """Across the bar stands 1/√2 of its push, and 1/√2 of the motion changes its chip."""
    row = replace(next(edge_cuts(formed(edges=0.5e-3), TABLES)), depth=0.5e-3)
    plunge = replace(row, kind="groove", depth=math.sqrt(2) * 0.5e-3)
    swing = Swing(1e7, 400.0, "al-6061-t6")
    across = []
    for cut in (row, plunge):
        found = chatter_of(cut, demand_of(cut, "al-6061-t6", TABLES), swing, TABLES)
        assert found is not None
        across.append(found.direction)
    assert np.allclose(across[0], across[1] / 2)


# In the plan


def by_id(answer: Plan) -> dict[str, Cut]:
    return {cut.id: cut for cut in answer.cuts}


def seconds(answer: Plan, cut: str) -> float:
    assert answer.schedule is not None
    return next(t.seconds for t in answer.schedule.taken if t.cut == cut)


BETWEEN = TABLES.allowance("between_passes").best


def test_edges_are_rows_of_the_table_after_all_else_with_their_time() -> None:
    answer = plan(STEPPED, source_tables=TABLES)
    ids = [c.id for c in answer.cuts]
    assert ids[-3:] == ["chamfer-b", "edges-a", "edges-b"]
    for name, edges, leg in (
        ("chamfer-b", 1, 1e-3),
        ("edges-a", 3, 0.3e-3),
        ("edges-b", 2, 0.3e-3),
    ):
        cut = by_id(answer)[name]
        assert cut.passes % edges == 0
        assert cut.depth * cut.passes == pytest.approx(edges * leg), "all of every slope"
        each = leg / math.sqrt(2) / (cut.feed * cut.spindle_speed) + BETWEEN
        assert seconds(answer, name) == pytest.approx(cut.passes * each)


def test_each_edge_loosens_or_tightens_by_the_face_that_leads() -> None:
    answer = plan(STEPPED, source_tables=TABLES)
    leads = answer.chosen.leading_face.lower()
    for cut in answer.cuts:
        if cut.kind == "edge":
            assert (cut.seat_effect == "loosens") == cut.id.endswith(leads)


def test_edges_that_a_hold_does_not_reach_are_said() -> None:
    """Clamped against a spigot plate the face towards the headstock is covered."""
    answer = planned.plan(formed(edges=0.5e-3), use="spigot-plate", source_tables=TABLES)
    broken = [c for c in answer.cuts if c.kind == "edge"]
    assert len(broken) == 1
    assert broken[0].seat_effect == "tightens"
    assert any("Not reached in this hold" in note for note in answer.schedule.notes)


@pytest.mark.parametrize("flat", [0.0, 0.005])
def test_a_double_taper_is_a_row_of_two_halves_as_long_as_its_slopes(flat: float) -> None:
    job = formed(crown=CrownWish(height=0.5e-3, flat=flat))
    answer = plan(job, source_tables=TABLES)
    cut = by_id(answer)["crown"]
    assert answer.cuts[-1].id == "crown"
    assert cut.length == pytest.approx((0.025 - flat) / 2)
    assert cut.passes % 2 == 0
    assert cut.depth * cut.passes / 2 == pytest.approx(0.5e-3)
    each = cut.length / (cut.feed * cut.spindle_speed) + BETWEEN
    assert seconds(answer, "crown") == pytest.approx(cut.passes * each)


def test_an_arc_takes_every_stop_of_both_halves() -> None:
    job = formed(crown=CrownWish(height=0.5e-3, shape="arc"))
    stairs = crown_wanted(job, job.work.finished.form.crown, TABLES).stepped.stairs
    assert stairs is not None
    answer = plan(job, source_tables=TABLES)
    cut = by_id(answer)["crown"]
    path = 2 * float(stairs.stops.sum())
    whole = path / (cut.feed * cut.spindle_speed) + 2 * len(stairs.stops) * BETWEEN
    assert seconds(answer, "crown") == pytest.approx(whole)
    deepest = max(np.diff(stairs.depths, prepend=0.0))
    assert cut.depth == pytest.approx(deepest)


def test_a_crown_is_judged_like_every_cut() -> None:
    """A lathe with hardly any power takes it lighter or slower, and that is what limits it."""
    strong, weak = (
        plan(powered(formed(crown=CrownWish(height=1e-3)), watts), source_tables=TABLES)
        for watts in (750.0, 12.0)
    )
    limits = []
    for answer in (strong, weak):
        assert answer.schedule is not None
        limits.append(next(t.limit for t in answer.schedule.taken if t.cut == "crown"))
    assert limits[0] != "power"
    assert limits[1] == "power"
    assert seconds(weak, "crown") > seconds(strong, "crown")


def powered(job: Job, watts: float) -> Job:
    machine = replace(job.shelf.machine, power=watts)
    return replace(job, shelf=replace(job.shelf, machine=machine))


def test_the_last_size_is_that_of_the_middle_and_not_of_the_crown() -> None:
    answer = plan(formed(crown=CrownWish(height=0.5e-3), edges=0.3e-3), source_tables=TABLES)
    assert by_id(answer)["finish"].leaves == pytest.approx(0.061)
    assert by_id(answer)["crown"].leaves == pytest.approx(0.060)


def test_a_part_with_nothing_but_edges_to_break_is_planned() -> None:
    answer = plan(formed(None, edges=0.3e-3), source_tables=TABLES)
    assert {"edges-a", "edges-b"} <= {c.id for c in answer.cuts}


def test_of_two_settings_alike_but_for_the_length_the_whole_crown_counts() -> None:
    """Found for both halves and every pass: seconds of the run are seconds of the row."""
    job = formed(crown=CrownWish(height=0.5e-3))
    answer = plan(job, source_tables=TABLES)
    taken, settings = [], []
    for crown in crowns_found(job):
        assert crown.found is not None
        (cut,) = crown.cuts
        settings.append(crown.found.setting.seconds)
        taken.append(cut.passes * (cut.length / (cut.feed * cut.spindle_speed) + BETWEEN))
    assert taken == pytest.approx(settings)
    assert seconds(answer, "crown") > 0


def crowns_found(job: Job) -> list[Set]:
    row = recommended(arrange(replace(job, use="plain-taper"), TABLES))
    assert row is not None
    assert row.weighed.trial is not None
    holding = holding_of(row.weighed.trial)
    bench = Bench(holding, work_body(row.weighed.trial))
    return [s for s in runs(bench) if s.cuts[0].kind == "crown"]
