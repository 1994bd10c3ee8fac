"""Runout by its shares: worst case and root-sum-square beside each other, on every way of holding."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

import numpy as np
import pytest
from tests.jobs_made import turning, wheel_job
from tests.on_a_mandrel import plan as on_a_mandrel

from borewright.answer.held import Held
from borewright.answer.records import Figure, Question
from borewright.holding.registry import WAYS
from borewright.mechanics.spread import likely
from borewright.planning.weighing.trueness import runout_figures, worst_figure
from borewright.reference.library import Tables

TABLES = Tables()
CLOSE = 1e-9
"""Relative: sums of a few doubles."""


def true_of(job) -> Question:  # type: ignore[no-untyped-def]
    answer = on_a_mandrel(job, source_tables=TABLES)
    return next(q for q in answer.questions if q.id == "true")


def figure(question: Question, name: str) -> Figure:
    return next(f for f in question.figures if f.name == name)


def holds() -> Iterator[Held]:
    for material in ("al-6061-t6", "gray-iron-30"):
        job = wheel_job(material=material, cuts=turning(0.3e-3))
        for way in WAYS.values():
            offers = getattr(way, "offer", None)
            if offers is not None:
                yield from (held for held in offers(job, TABLES) if held.grip is not None)


SEVERAL = [h for h in holds() if h.grip is not None and len(h.grip.throws) > 1]


def test_many_ways_show_what_their_runout_is_made_of() -> None:
    assert len({h.way for h in SEVERAL}) >= 5


@pytest.mark.parametrize("held", SEVERAL, ids=lambda h: h.tool[:40])
def test_the_runout_of_a_hold_is_the_root_sum_square_of_its_shares(held: Held) -> None:
    assert held.grip is not None
    squares = sum(share**2 for _, share in held.grip.throws)
    np.testing.assert_allclose(held.grip.runout, np.sqrt(squares), rtol=CLOSE)


@pytest.mark.parametrize("held", SEVERAL, ids=lambda h: h.tool[:40])
def test_high_spots_anywhere_lie_within_the_worst_case(held: Held) -> None:
    assert held.grip is not None
    worst = worst_figure(held.grip.throws, ())
    (anywhere,) = runout_figures(held.grip.throws, ())
    shares = [likely(share) for _, share in held.grip.throws]
    assert worst.best == pytest.approx(sum(shares), rel=CLOSE)
    assert anywhere.best == pytest.approx(math.sqrt(sum(s * s for s in shares)), rel=CLOSE)
    assert anywhere.low is not None
    assert anywhere.high is not None
    assert worst.high is not None
    assert anywhere.low <= anywhere.best <= worst.best
    assert anywhere.high <= worst.high


def test_on_a_taper_the_worst_case_is_said_beside_the_expected_one() -> None:
    question = true_of(wheel_job(cuts=turning(0.3e-3)))
    assert figure(question, "runout").best < figure(question, "runout_worst_case").best
    assert "at worst, all in line" in question.reason


def test_a_bore_that_grips_over_part_of_its_length_may_lean_by_the_gap_at_its_free_end() -> None:
    """A long bore: its worst case holds taper x what stands free, its face taper / 2 x outside."""
    question = true_of(wheel_job(length=0.045, cuts=turning(0.3e-3)))
    shown = {i.label: i.value for i in figure(question, "runout_worst_case").inputs}
    face = figure(question, "face_runout_worst")
    inputs = {i.label: i.value for i in face.inputs}
    assert 0 < shown["lean of the free end"] <= inputs["taper"] * 0.045
    assert face.best == pytest.approx(inputs["taper"] / 2 * inputs["outside"], rel=CLOSE)


def test_the_verdict_stands_on_the_root_sum_square_and_not_on_the_worst_case() -> None:
    job = wheel_job(cuts=turning(0.3e-3))
    question = true_of(job)
    rss, worst = figure(question, "runout").best, figure(question, "runout_worst_case").best
    between = (rss + worst) / 2
    finished = replace(job.work.finished, runout=between)
    tight = true_of(replace(job, work=replace(job.work, finished=finished)))
    assert tight.margin == pytest.approx(between / rss, rel=CLOSE)
    assert tight.margin > 1
