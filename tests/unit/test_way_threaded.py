"""A thread in the bore: read, refused, written back; the mandrel cut to it and which cut tightens it."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from tests.jobs_made import wheel_job

from borewright.answer.held import HEAD_FACE, Held
from borewright.answer.records import Verdict
from borewright.errors import BorewrightError
from borewright.holding.ways.threaded import Threaded
from borewright.job import parse_job
from borewright.job.bore_thread import bore_thread
from borewright.job.records import Job
from borewright.job.write import job_text
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables
from borewright.service.planned import plan

TABLES = Tables()
TEXT = """
title = "Back plate"
units = "{units}"
[work]
material = "mild steel"
outside = "100mm"
length = "25mm"
bore = {{ size = "{size}", thread = "{thread}" }}
"""


def job_of(thread: str = "M20 x 1.5", size: str = "18.4mm", units: str = "mm") -> Job:
    return parse_job(TEXT.format(thread=thread, size=size, units=units), "job.toml")


def held(job: Job) -> Held:
    (only,) = Threaded().offer(job, TABLES)
    return only


@pytest.mark.parametrize(
    ("text", "size", "pitch", "left"),
    [
        ("1in x 8", 25.4, 25.4 / 8, False),
        ("1 1/2in x 8 tpi", 38.1, 25.4 / 8, False),
        ("3/4 x 16 LH", 19.05, 25.4 / 16, True),
        ("M20 x 1.5", 20.0, 1.5, False),
        ("m39x4", 39.0, 4.0, False),
        ("M12 x 1.75 left", 12.0, 1.75, True),
    ],
)
def test_a_thread_is_read_as_it_is_said(text: str, size: float, pitch: float, left: bool) -> None:
    found = bore_thread(text, "work.bore.thread")
    assert found.size * 1e3 == pytest.approx(size)
    assert found.pitch * 1e3 == pytest.approx(pitch)
    assert found.left is left


@pytest.mark.parametrize(
    "text", ["M20", "8", "1in x 0", "x 8", "M20 x 15", "1in x 500", "nonsense"]
)
def test_what_is_no_thread_is_refused(text: str) -> None:
    with pytest.raises(BorewrightError):
        bore_thread(text, "work.bore.thread")


@pytest.mark.parametrize("size", ["17mm", "20mm", "25mm"])
def test_a_bore_that_such_a_thread_was_not_cut_in_is_refused(size: str) -> None:
    with pytest.raises(BorewrightError, match="thread"):
        job_of(size=size)


def test_it_is_written_back_and_read_again() -> None:
    job = job_of("M20 x 1.5 LH")
    again = parse_job(job_text(job), "job.toml")
    assert again.work.bore.thread == job.work.bore.thread


def test_without_a_thread_it_cannot() -> None:
    assert held(wheel_job()).cannot == "The bore has no thread."


def test_the_usual_cut_tightens_a_right_hand_thread_and_turns_a_left_hand_one_off() -> None:
    right, left = held(job_of()).grip, held(job_of("M20 x 1.5 LH")).grip
    assert right is not None
    assert left is not None
    assert likely(right.torque) > 10 * likely(left.torque)
    slips = plan(replace(job_of("M20 x 1.5 LH"), use="threaded"), source_tables=TABLES)
    holds = plan(replace(job_of(), use="threaded"), source_tables=TABLES)
    assert next(q.margin for q in holds.questions if q.id == "slip") > 10
    assert next(q.margin for q in slips.questions if q.id == "slip") < 10
    assert holds.verdict is Verdict.YES


def test_a_left_hand_thread_has_what_turns_it_off_by_hand() -> None:
    """M20 x 1.5: core 18.38, mean radius 9.595 mm; shoulder 28 mm, mean radius 12 mm; a hand 25 N·m,
    friction 0.12: tan l = 1.5 / (2 pi 9.595) = 0.024881, m = 0.138564."""
    rise, m = 1.5 / (2 * math.pi * 9.595), 0.12 / math.cos(math.pi / 6)
    on = 9.595e-3 * (m + rise) / (1 - m * rise) + 0.12 * 12e-3
    off = 9.595e-3 * (m - rise) / (1 + m * rise) + 0.12 * 12e-3
    grip = held(job_of("M20 x 1.5 LH")).grip
    assert grip is not None
    assert likely(grip.torque) == pytest.approx(25.0 * off / on, rel=1e-6)


def test_a_thin_wall_has_no_face_and_a_plain_disc_hides_its_leading_face() -> None:
    job = job_of()
    piece = replace(job.work.pieces[0], outside=0.0205)
    assert "no face" in held(replace(job, work=replace(job.work, pieces=(piece,)))).cannot
    assert HEAD_FACE not in held(job).reaches
