"""Soft bars between centers: the push, the screw that throws the work over, the bond."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from tests.held_ways import figures_of, grip_of, inputs_of
from tests.jobs_made import wheel_job

from borewright.answer.held import Held
from borewright.answer.records import Have, Verdict
from borewright.holding.bars.flatted_bar import flatted_bar
from borewright.holding.fits.pressed_ring import PressedRing
from borewright.holding.part import Part
from borewright.holding.ways.soft_mandrel import SoftMandrel
from borewright.job import CrossHole, Job, Piece
from borewright.job.records import BoreReading, Finished
from borewright.mechanics.spread import COUNT, likely
from borewright.reference.library import Tables
from borewright.service import planned

TABLES = Tables()
SAME = 1e-9
"""Sums written out again: rounding only."""


def offered(job: Job) -> tuple[Held, ...]:
    return SoftMandrel().offer(job, TABLES)


def hubbed(bore: float = 0.0161, hub: float = 0.032) -> Job:
    """A wheel whose hub stands out 14 mm at face B."""
    job = wheel_job(bore=bore)
    pieces = Piece(0.0, 0.012, 0.080), Piece(0.012, 0.026, hub)
    return replace(job, work=replace(job.work, pieces=pieces))


def screwed(job: Job) -> Held:
    return next(h for h in offered(job) if "set screw" in h.tool)


def test_the_push_becomes_the_wedge_force_of_its_slight_taper() -> None:
    figure = figures_of(offered(wheel_job())[0])["pushed_normal"]
    given = inputs_of(figure)
    lean, mu = math.atan(given["taper"] / 2), given["friction on"]
    on_slope = given["push"] / (math.sin(lean) + mu * math.cos(lean))
    pressed = on_slope * (math.cos(lean) - mu * math.sin(lean))
    assert figure.best == pytest.approx(pressed, rel=SAME)


def test_the_torque_is_friction_at_the_bore_and_the_push_proves_it() -> None:
    """Torque over push is d / 2 x slip ratio, whatever the friction is, but for the slight taper."""
    found = offered(wheel_job())[0]
    figure = figures_of(found)["fit_torque"]
    given = inputs_of(figure)
    by_hand = given["slip friction"] * given["normal force"] * given["bore"] / 2
    assert figure.best == pytest.approx(by_hand, rel=SAME)
    push = inputs_of(figures_of(found)["pushed_normal"])["push"]
    ratio = TABLES.friction("al-6061-t6").slip_ratio.best
    assert figure.best == pytest.approx(push * 0.016006 / 2 * ratio, rel=0.005)


def test_thin_work_is_pushed_less_and_never_springs_more_than_half_its_tolerance() -> None:
    def thin(tolerance: float) -> Job:
        job = wheel_job(bore=0.030, outside=0.035)
        return replace(job, work=replace(job.work, finished=Finished(tolerance=tolerance)))

    close, open_ = offered(thin(10e-6))[0], offered(thin(1.0))[0]
    assert likely(grip_of(close).springs) == pytest.approx(5e-6, rel=0.02)
    assert likely(grip_of(close).torque) < likely(grip_of(open_).torque)


def test_the_screw_throws_the_work_over_so_that_the_indicator_shows_the_clearance() -> None:
    figure = figures_of(screwed(hubbed(bore=0.0164)))["thrown_runout"]
    given = inputs_of(figure)
    assert figure.best == pytest.approx(given["bore"] - given["bar"], rel=SAME)
    assert 0.0004 <= figure.best <= 0.00043  # 16 mm bar, drawn a little under, in 16.4 mm
    runout = grip_of(screwed(hubbed(bore=0.0164))).runout
    assert likely(runout) >= figure.best


def test_a_looser_bar_never_runs_truer() -> None:
    found = [likely(grip_of(screwed(hubbed(bore=b))).runout) for b in (0.01602, 0.0162, 0.0166)]
    assert found == sorted(found)


def test_the_screw_holds_by_its_listed_force_on_the_lowered_flat_by_hand() -> None:
    """H (q h + (1 - q) d / 2) + N a / 2 with q a half, N from the seating torque over 0.2 d."""
    bar = flatted_bar(Part(hubbed(), TABLES))
    assert bar is not None
    assert bar.nominal == pytest.approx(0.016)
    force, screw = bar.screw.holding.best, bar.screw.diameter
    push = bar.screw.seating_torque / (0.2 * screw)
    lowered = 0.008 - bar.flat
    by_hand = force * (0.5 * lowered + 0.5 * 0.008) + push * (0.5 * screw) / 2
    assert likely(bar.torque) == pytest.approx(by_hand, rel=SAME)


def test_a_tapped_hole_is_asked_for_unless_the_hub_has_one() -> None:
    job = hubbed()
    drilled = replace(job, work=replace(job.work, cross_hole=CrossHole(0.004, 0.02)))
    asked, there = screwed(job).seat, screwed(drilled).seat
    assert asked is not None
    assert there is not None
    assert asked.margin < 1 < there.margin
    assert "where the drawing allows" in asked.reason
    assert "hole" in screwed(job).marks


def test_a_disc_with_no_hub_and_a_hub_too_thin_to_tap_are_offered_no_screw() -> None:
    assert flatted_bar(Part(wheel_job(), TABLES)) is None
    assert flatted_bar(Part(hubbed(hub=0.0165), TABLES)) is None


def test_a_larger_hub_takes_no_smaller_screw() -> None:
    sizes = []
    for hub in (0.020, 0.024, 0.032):
        bar = flatted_bar(Part(hubbed(hub=hub), TABLES))
        assert bar is not None
        sizes.append(bar.screw.diameter)
    assert sizes == sorted(sizes)


def test_bonded_it_squeezes_nothing_and_must_be_bought() -> None:
    stuck = offered(wheel_job())[-1]
    assert "retaining" in stuck.tool
    assert np.all(np.isinf(grip_of(stuck).strength))
    assert [n.have for n in stuck.to_buy] == [Have.BUY]


def test_turned_to_the_bore_it_needs_nothing_that_a_shop_has_not() -> None:
    turned = offered(wheel_job())[0]
    assert not turned.to_buy
    assert turned.making > 0


def test_a_thicker_bar_is_never_less_stiff() -> None:
    found = [
        grip_of(offered(wheel_job(bore=b, outside=0.09))[0]).stiffness for b in (0.01, 0.02, 0.04)
    ]
    assert found == sorted(found)


@pytest.mark.parametrize(
    ("job", "said"),
    [
        (wheel_job(bore=0.1, outside=0.2), "heavy"),
        (
            wheel_job(readings=(BoreReading(0.01, 0.016, "x"), BoreReading(0.01, 0.0162, "y"))),
            "oval",
        ),
    ],
)
def test_what_it_cannot_hold_is_told(job: Job, said: str) -> None:
    (only,) = offered(job)
    assert only.grip is None
    assert said in only.cannot


def test_warmth_that_the_bar_follows_takes_only_what_it_lags() -> None:
    """Half of the squeeze over expansion x lag x bore where work and bar are alike in kind; a metal
    that grows more loses the difference as well."""
    mild = wheel_job(material="steel-1018")
    part = Part(mild, TABLES)
    ring, normal = PressedRing(part, 0.015), np.full(COUNT + 1, 5e3)
    squeeze = likely(ring.squeeze(normal))
    steel, lag = TABLES.material_range("steel-1018", "expansion").best, 0.25
    by_hand = squeeze / (2 * steel * lag * part.bore)
    assert likely(ring.half_warm(normal, lag)) == pytest.approx(by_hand, rel=SAME)
    assert likely(ring.half_warm(normal)) == pytest.approx(by_hand * lag, rel=SAME)
    iron = PressedRing(Part(wheel_job(material="gray-iron-30"), TABLES), 0.015)
    assert np.isinf(likely(iron.half_warm(normal, 0.0)))


def test_a_push_fit_on_a_long_sleeve_is_never_a_plain_no_for_its_warmth() -> None:
    job = wheel_job(outside=0.042, length=0.16, bore=0.02502, material="steel-1018")
    answer = planned.plan(job, use="soft-mandrel")
    heat = next(q for q in answer.questions if q.id == "heat")
    assert heat.verdict is not Verdict.NO
    assert any("second dog" in note for note in answer.notes)
