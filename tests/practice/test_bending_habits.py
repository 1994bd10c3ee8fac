"""What hands know of slender work and chatter (common practice, no source): the sums must agree."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import pytest
from tests.jobs_made import turning, wheel_job

from borewright.holding.taper.mandrels import resolve
from borewright.holding.taper.plain_taper import holds
from borewright.job import Job, parse_job
from borewright.job.records import CutWish, MandrelNote
from borewright.mechanics.spread import likely, low_end
from borewright.planning.shop.shop import shop_of
from borewright.planning.taper.bending import swing_of, tool_stiffness
from borewright.planning.taper.trial import Trial, make_trial
from borewright.planning.weighing.chatter import Chatter, tightest
from borewright.reference.library import Tables

TABLES = Tables()
JOBS = Path(__file__).parents[1] / "golden" / "jobs"


def trial_of(job: Job) -> Trial:
    mandrel = resolve(job.shelf.mandrels[0], TABLES, "mandrel").mandrel
    return make_trial(job, shop_of(job, TABLES), holds(job, mandrel, TABLES)[0], TABLES)


def chatter(trial: Trial) -> Chatter:
    found = tightest(zip(trial.cuts, trial.demands, strict=True), swing_of(trial), TABLES)
    assert found is not None
    return found


def test_a_small_wheel_at_an_everyday_cut_runs_without_a_thought_of_the_mandrel() -> None:
    job = parse_job((JOBS / "everyday-wheel.toml").read_text(encoding="utf-8"), "everyday-wheel")
    assert low_end(chatter(trial_of(job)).margin) > 1


def slender(cut: CutWish, material: str = "steel-1018") -> Trial:
    """A 6 mm bore in a 40 mm wheel."""
    return trial_of(
        wheel_job(0.040, 0.020, 0.006002, material, cuts=(cut,), mandrels=(MandrelNote(0.006),))
    )


def test_a_thin_mandrel_sings_at_a_carbide_tool_s_speed_and_not_at_a_slow_one() -> None:
    """Slow down: the first thing that a hand does about chatter."""
    fast, slow = (slender(CutWish("turn", 0.5e-3, 0.1e-3, v)) for v in (2.5, 0.2))
    assert likely(chatter(fast).margin) < 1
    assert low_end(chatter(slow).margin) > low_end(chatter(fast).margin)
    assert likely(chatter(slow).margin) > 1


def test_a_large_nose_chatters_sooner_than_a_small_one() -> None:
    """The other thing a hand does: a sharper nose."""
    cut = CutWish("turn", 0.5e-3, 0.1e-3, 2.5)
    small, large = (chatter(slender(replace(cut, nose_radius=r))) for r in (0.2e-3, 1.5e-3))
    assert likely(small.margin) > 1.5 * likely(large.margin)


def test_a_side_tool_square_to_the_work_pushes_a_slender_bar_least() -> None:
    cut = CutWish("turn", 0.5e-3, 0.1e-3, 2.5)
    square, pointed = (
        chatter(slender(replace(cut, edge_angle=a))) for a in (math.pi / 2, math.pi / 4)
    )
    assert likely(square.margin) > likely(pointed.margin)


def test_a_coarser_feed_steadies_the_same_depth() -> None:
    """Feed it harder: a thin chip is the stiffest."""
    cut = CutWish("turn", 0.5e-3, 0.05e-3, 2.5)
    fine, coarse = (chatter(slender(replace(cut, feed=f))) for f in (0.03e-3, 0.15e-3))
    assert likely(fine.width / fine.chip.width) < likely(coarse.width / coarse.chip.width)


@pytest.mark.parametrize("size", [0.006, 0.010, 0.016, 0.025])
def test_no_mandrel_in_use_is_softer_than_a_file_handle_or_stiffer_than_its_lathe(
    size: float,
) -> None:
    """Between 0.3 and 60 N/µm at the tool: 100 N of radial force bends it 2 to 300 µm."""
    job = wheel_job(5 * size, size, size + 2e-6, mandrels=(MandrelNote(size),), cuts=turning())
    assert 0.3e6 < tool_stiffness(trial_of(job)) < 60e6
