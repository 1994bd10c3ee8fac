"""Forms on hubs and narrow rims: where a step begins, where a rim stands once faced, room for edges."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from tests.formed_jobs import TABLES, TEXT, formed
from tests.on_a_mandrel import plan

from borewright.cutting.turning import cast_there
from borewright.errors import RefusedInput
from borewright.job import Job, parse_job
from borewright.job.crown_wish import crowned_stretch
from borewright.job.finished_form import FinishedForm, FinishedStep
from borewright.job.records import Piece
from borewright.service import planned

# A hub, a rim, and what comes off the length


def outlined(pieces: tuple[Piece, ...], **form: object) -> Job:
    job = formed(**form)
    work = replace(job.work, pieces=pieces, finished=replace(job.work.finished, outside=0.1))
    return replace(job, work=work)


HUBBED = (Piece(0.0, 0.015, 0.046), Piece(0.015, 0.04, 0.104))


def test_a_step_on_a_hub_begins_at_the_hub() -> None:
    job = outlined(HUBBED, steps=(FinishedStep(0.0, 0.015, 0.042),))
    cuts = {c.id: c for c in plan(job, source_tables=TABLES).cuts}
    assert cuts["step-1-rough"].diameter == pytest.approx(0.046)
    left = cuts["step-1-rough"].depth * cuts["step-1-rough"].passes + cuts["step-1-finish"].depth
    assert left == pytest.approx(0.002)
    assert cuts["rough"].length == pytest.approx(0.025), "the rim, not the hub"


@pytest.mark.parametrize(
    ("rim", "wanted"),
    [((0.0, 0.02), (0.0, 0.015)), ((0.03, 0.05), (0.025, 0.04)), ((0.015, 0.035), (0.010, 0.030))],
)
def test_a_rim_stands_where_facing_leaves_it(rim, wanted) -> None:
    """5 mm come off each face: every place of the blank is 5 mm nearer to face A."""
    hub = Piece(0.0, 0.05, 0.04)
    work = outlined((hub, Piece(*rim, 0.104, 0.04))).work
    form = FinishedForm(length=0.04)
    shorter = replace(work, finished=replace(work.finished, form=form))
    assert crowned_stretch(shorter) == pytest.approx(wanted)


def test_a_hub_behind_a_rim_that_facing_moves_is_still_a_hub() -> None:
    """1 mm comes off face A: the rim that ended at 40 ends at 39, where the step begins."""
    pieces = (Piece(0.0, 0.015, 0.046), Piece(0.015, 0.04, 0.104), Piece(0.04, 0.052, 0.046))
    work = outlined(pieces, steps=(FinishedStep(0.039, 0.05, 0.042),)).work
    form = replace(work.finished.form, length=0.05)
    shorter = replace(work, finished=replace(work.finished, form=form))
    assert cast_there(shorter, form.steps[0]) == pytest.approx(0.046)


def test_a_step_begins_at_the_outside_that_roughing_leaves() -> None:
    job = formed(0.058, steps=(FinishedStep(0.0, 0.01, 0.05),))
    cuts = {c.id: c for c in plan(job, source_tables=TABLES).cuts}
    assert cuts["step-1-rough"].diameter == pytest.approx(cuts["rough"].leaves)


@pytest.mark.parametrize(
    "stated",
    [
        'edges = "13mm"',
        'edges = "3mm"\ngrooves = [{from = "10mm", to = "12mm", bottom = "58mm"}, {from = "14mm", to = "16mm", bottom = "58mm"}]',
        'edges = "2mm"\nsteps = [{from = "0mm", to = "1mm", outside = "60.8mm"}]',
    ],
    ids=["through the wall", "deeper than grooves", "wider than a step"],
)
def test_edges_with_no_metal_for_them_are_refused(stated: str) -> None:
    with pytest.raises(RefusedInput, match=re.escape("work.finished.edges")):
        parse_job(f"{TEXT}{stated}\n", "wheel.toml")


def test_an_edge_beneath_a_washer_is_left_for_later_and_the_hold_stands() -> None:
    text = TEXT.replace("16mm", "20.005mm").replace("63mm", "34mm").replace("61mm", "33mm")
    job = parse_job(f'{text}chamfer = "2.5mm"\n'.replace('"25mm"', '"30mm"'), "wheel.toml")
    answer = planned.plan(job, use="spigot-plate", source_tables=TABLES)
    assert answer.chosen is not None
    assert not [c for c in answer.cuts if c.kind == "edge"]
    assert any("Not reached" in note for note in answer.schedule.notes)
