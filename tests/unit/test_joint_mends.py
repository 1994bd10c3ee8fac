"""What a trial meant to break it found in joints, outlines and kept shapes, mended."""

from __future__ import annotations

import json
import os
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from tests.cli_run import ran, refused
from tests.jobs_made import turning, wheel_job
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.answer.records import Question, Verdict
from borewright.job.interrupted import Chamfers
from borewright.job.records import Job, Piece
from borewright.mechanics.revolved import BORE, revolved
from borewright.planning.weighing.figures import spread
from borewright.reference.library import Tables
from borewright.shapes import store
from borewright.shapes.find import forget, mandrel_shape, work_shape
from borewright.shapes.key import work_key

TABLES = Tables()
HUB = revolved([(0.0, 1.0, 0.5, 1.0)])
FIT = ("fit", "--bore", "18.01mm", "--material", "gray-iron-30", "--mandrel", "18mm")
SIZED = ("--small-end", "17.99mm", "--ground-length", "120mm", "--travel", "26mm")


def asked(job: Job, name: str) -> Question:
    return next(q for q in planned(job).questions if q.id == name)


def planned(job: Job) -> Plan:
    return plan(job, source_tables=TABLES)


@pytest.mark.parametrize("relief", ["18.02mm", "18.06mm", "18.1mm", "19mm"])
def test_a_relief_however_shallow_never_bears(relief: str) -> None:
    done = ran(*FIT, *SIZED, "--outline", f"0mm,10mm,60mm;10mm,30mm,60mm,{relief}", "--json")
    assert json.loads(done.out)["contact_length_m"] == pytest.approx(0.010, abs=1e-9)


def test_a_shallow_relief_is_made_a_sliver_deep_and_said() -> None:
    found = revolved([(0.0, 1.0, 0.5, 1.0), (1.0, 2.0, 0.5003, 1.0)])
    assert found.bearing == ((0.0, 1.0),)
    assert found.healed
    assert min(ring[2] for ring in found.rings if ring[0] == 1.0) > BORE + 1e-3


@pytest.mark.parametrize("option", ["--work-poisson", "--mandrel-poisson"])
def test_a_body_that_keeps_its_volume_is_refused_for_contact_and_served_by_rings(
    option: str,
) -> None:
    words = (*FIT, *SIZED, "--outside", "40mm", "--length", "30mm", option, "0.5")
    assert refused(*words) == f"borewright: {option}: found 0.5; allowed is up to 0.499"
    assert ran(*words, "--model", "rings").code == 0


def test_a_wall_too_thin_names_what_was_asked() -> None:
    said = refused(*FIT, *SIZED, "--outside", "18.02mm", "--length", "30mm")
    assert said.startswith("borewright: the outline: found the ring round the bore")


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv(store.SETTING, str(tmp_path))
    forget()
    return tmp_path


def test_a_file_under_anothers_name_is_not_that_other(folder: Path) -> None:
    other = revolved([(0.0, 1.0, 0.5, 2.0)])
    truth = work_shape(HUB, 0.26).gives
    work_shape(other, 0.26)
    bar = mandrel_shape(work_shape(HUB, 0.26).strips, 0.29, (0.5, 0.5))
    assert bar.gives.shape == truth.shape
    names = sorted(folder.glob("*.shape"))
    mine = folder / f"{work_key(HUB, 0.26)}.shape"
    for foreign in (name for name in names if name != mine):
        mine.write_bytes(foreign.read_bytes())
        forget()
        assert np.array_equal(work_shape(HUB, 0.26).gives, truth)


def test_neither_a_right_checksum_over_nonsense_nor_a_pipe_is_read(folder: Path) -> None:
    truth = work_shape(HUB, 0.26).gives
    key = work_key(HUB, 0.26)
    mine = folder / f"{key}.shape"
    mine.write_bytes(store._checksum(key, b"nonsense") + b"\n" + b"nonsense")
    forget()
    assert np.array_equal(work_shape(HUB, 0.26).gives, truth)
    mine.unlink()
    os.mkfifo(mine)
    forget()
    assert np.array_equal(work_shape(HUB, 0.26).gives, truth)


def test_a_chamfer_through_the_wall_that_the_cuts_leave_is_a_no() -> None:
    job = wheel_job(0.030, 0.030, cuts=turning(2e-3))
    work = replace(job.work, finished=replace(job.work.finished, outside=0.026))
    for leg, verdict in ((0.0051, Verdict.NO), (0.001, Verdict.YES)):
        cut = replace(job, work=replace(work, chamfers=Chamfers(leg, leg)))
        question = asked(cut, "crack")
        assert (question.verdict is Verdict.NO) == (verdict is Verdict.NO)
        assert ("chamfer" in question.reason) == (verdict is Verdict.NO)


@pytest.mark.parametrize("leg", [0.00002, 0.0003])
def test_no_more_bears_than_can(leg: float) -> None:
    job = wheel_job(0.033, 0.0033, bore=0.016006, material="brass-c360")
    cut = replace(job, work=replace(job.work, chamfers=Chamfers(leg, 0.0)))
    question = asked(cut, "seat")
    bears = next(f for f in question.figures if f.name == "contact_length")
    assert bears.best <= 0.0033 - (leg if leg > 1e-4 else 0.0) + 1e-12


def test_the_likely_case_lies_in_its_own_band() -> None:
    found = spread("lift_moment", np.array([9.0, *np.linspace(1, 5, 100)]), "N·m", "", "")
    assert found.low is not None
    assert found.low <= found.best == found.high


def test_a_counterbored_hub_bears_only_where_it_can() -> None:
    """A relief of a hair in the far half: the plan grips on the near half, as with a deep one."""
    job = wheel_job(0.06, 0.030, material="gray-iron-30", cuts=turning(0.2e-3))
    margins = []
    for inside in (0.01602, 0.0165):
        pieces = (Piece(0.0, 0.010, 0.06), Piece(0.010, 0.030, 0.06, inside))
        relieved = replace(job, work=replace(job.work, pieces=pieces))
        margins.append(asked(relieved, "rock").margin)
    assert margins[0] == pytest.approx(margins[1], rel=0.1)
