"""What every machinist knows of a plain mandrel (common practice, no source)."""

from dataclasses import replace

import numpy as np
import pytest
from tests.jobs_made import turning, wheel_job
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.answer.records import Verdict
from borewright.cutting.demand import demand_of
from borewright.cutting.directions import LOOSENS, TIGHTENS
from borewright.cutting.schedule import planned_cuts
from borewright.holding.taper.mandrels import resolve
from borewright.holding.taper.plain_taper import holds
from borewright.job.records import MandrelNote
from borewright.mechanics.slip import axial_on_friction
from borewright.mechanics.spread import likely, low_end
from borewright.planning.weighing.judge import judge
from borewright.planning.weighing.margins import slip_margins
from borewright.reference.library import Tables
from borewright.service import planned as service

TABLES = Tables()


def margins_of(outside: float, travel: float = 0.04) -> np.ndarray:
    job = wheel_job(outside, cuts=turning(0.8e-3, 0.12e-3))
    mandrel = resolve(MandrelNote(0.016), TABLES, "16").mandrel
    grip = holds(job, mandrel, TABLES)[0].grip(travel)
    demand = demand_of(planned_cuts(job, TABLES)[0], job.work.material, TABLES)
    return slip_margins(grip, demand)


def test_a_large_disc_slips_where_a_small_wheel_is_everyday_work() -> None:
    """Same mandrel, same travel, same cut."""
    small, disc = margins_of(0.063), margins_of(0.310)
    assert judge("slip", likely(small), low_end(small), TABLES) is Verdict.YES
    assert judge("slip", likely(disc), low_end(disc), TABLES) is Verdict.NO
    assert likely(small) / likely(disc) == pytest.approx(
        310 / 63, rel=0.12
    )  # torque grows with the radius


def test_a_brittle_casting_cracks_if_forced() -> None:
    job = wheel_job(0.020, material="gray-iron-30")
    mandrel = resolve(MandrelNote(0.016), TABLES, "16").mandrel
    hold = holds(job, mandrel, TABLES)[0]
    eased, forced = (hold.facts.strength / hold.grip(s).tension for s in (0.012, 0.075))
    assert float(eased[0]) > 2
    assert float(forced[0]) < 1


@pytest.mark.parametrize("cut_id", ["rough", "finish", "face-trailing"])
def test_cuts_that_push_towards_the_large_end_tighten(cut_id: str) -> None:
    cut = next(c for c in planned_cuts(wheel_job(), TABLES) if c.id == cut_id)
    assert cut.seat_effect == TIGHTENS
    assert np.all(demand_of(cut, "al-6061-t6", TABLES).axial > 0)


def test_facing_the_headstock_side_pushes_away_from_the_large_end_and_loosens() -> None:
    cut = next(c for c in planned_cuts(wheel_job(), TABLES) if c.id == "face-leading")
    assert cut.seat_effect == LOOSENS
    assert np.all(demand_of(cut, "al-6061-t6", TABLES).axial < 0)


def test_the_same_face_cut_asks_more_of_friction_when_it_loosens() -> None:
    cut = next(c for c in planned_cuts(wheel_job(), TABLES) if c.id == "face-leading")
    loosens = demand_of(cut, "al-6061-t6", TABLES).axial
    tightens = demand_of(replace(cut, seat_effect=TIGHTENS), "al-6061-t6", TABLES).axial
    normal, taper = 20e3, 0.0005
    away, towards = (axial_on_friction(a, normal, taper) for a in (loosens, tightens))
    assert np.all(away > towards)


def test_a_small_wheel_with_a_modest_cut_is_a_yes() -> None:
    assert plan(wheel_job(cuts=turning()), source_tables=TABLES).verdict is Verdict.YES


def test_hands_end_up_between_one_and_two_inches() -> None:
    layout = plan(wheel_job(), source_tables=TABLES).layout
    assert layout is not None
    assert 0.9 * 0.0254 <= layout.travel <= 2 * 0.0254


def test_nothing_stated_still_gives_an_answer() -> None:
    answer = plan(wheel_job(mandrels=None, press="", uncertainty=50e-6), source_tables=TABLES)
    assert answer.verdict is Verdict.CARE
    assert {"mandrels on the shelf", "what presses the work on"} <= {a.what for a in answer.assumed}


def driven(by: str) -> Plan:
    return plan(replace(wheel_job(cuts=turning()), driven_by=by), source_tables=TABLES)


def test_a_scroll_chuck_holds_a_hardened_taper_badly_and_a_collet_holds_it_well() -> None:
    """Row 32 of the facts of the trade: common practice, no source."""
    verdicts = {by: driven(by).verdict for by in ("dog", "collet", "three-jaw")}
    assert (verdicts["dog"], verdicts["collet"]) == (Verdict.YES, Verdict.YES)
    assert verdicts["three-jaw"] is not Verdict.YES
    said = {by: {c.id for c in driven(by).cautions} for by in verdicts}
    assert "scroll-chuck-taper" in said["three-jaw"]
    assert "scroll-chuck-taper" not in said["collet"] | said["dog"]


@pytest.mark.parametrize(
    ("length", "outside", "verdict"),
    [(0.0032, 0.127, Verdict.CARE), (0.012, 0.06, Verdict.YES), (0.060, 0.06, Verdict.YES)],
    ids=["a plate disc", "a short wheel", "a long hub that bears on a diameter of its bore"],
)
def test_a_plate_disc_wants_another_way_and_a_long_hub_does_not(
    length: float, outside: float, verdict: Verdict
) -> None:
    """A plate a sixth of its bore thick is clamped by its faces in the trade (common practice)."""
    job = wheel_job(outside, length, material="steel-1018", cuts=turning(0.2e-3))
    answer = plan(job, source_tables=TABLES)
    seat = next(q for q in answer.questions if q.id == "seat")
    assert seat.verdict is verdict
    chosen = service.plan(job, source_tables=TABLES).chosen
    assert chosen is not None
    clamps = chosen.way in ("nut-mandrel", "turned-stub", "spigot-plate", "endwise")
    assert clamps == (verdict is Verdict.CARE)
