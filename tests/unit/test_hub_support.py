"""The ring under the hub, what bears on it, and what a keyway or spokes leave of the grip."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from tests.jobs_made import wheel_job
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.answer.records import Verdict
from borewright.holding.taper.plain_taper import holds
from borewright.job import Job, Keyway, MandrelNote, Piece, Spokes
from borewright.planning.shop.shop import shop_of
from borewright.reference.library import Tables

TABLES = Tables()
HUB, WEB = Piece(0.0, 0.025, 0.036), Piece(0.009, 0.017, 0.078, 0.036)
RIM = Piece(0.0, 0.025, 0.090, 0.078)


def planned(job: Job) -> Plan:
    return plan(job, source_tables=TABLES)


def wheel(*pieces: Piece, **stated: object) -> Job:
    job = wheel_job()
    return replace(job, work=replace(job.work, pieces=pieces, **stated))


def support(job: Job) -> str:
    return next(s.text for s in planned(job).steps if s.title == "Support under the hub")


def normal(job: Job, travel: float = 0.03) -> float:
    mandrel = shop_of(job, TABLES).mandrels[0]
    return float(holds(job, mandrel, TABLES)[0].grip(travel).normal_force[0])


def test_the_ring_lets_the_large_end_through_and_is_no_wider_than_the_hub() -> None:
    # the large end of a 16 mm mandrel is some hundredths over 16: next whole mm above 16.8 is 17
    assert "hole 17 mm (0.67 in), outside up to 36 mm (1.42 in)" in support(wheel(HUB, WEB, RIM))
    assert any("hole 17 mm" in line for line in planned(wheel(HUB, WEB, RIM)).have_ready)


def test_a_hub_that_stands_in_behind_its_rim_is_reached_by_a_taller_ring() -> None:
    short = Piece(0.005, 0.025, 0.036)
    deep = wheel(short, WEB, RIM)
    assert "standing up 5 mm (0.20 in) past the rim" in support(deep)
    assert "past the rim" not in support(wheel(HUB, WEB, RIM))


def test_the_hub_s_face_bears_the_push_over_its_ring() -> None:
    answer = planned(wheel(HUB, WEB, RIM))
    figures = {f.name: f.best for f in answer.figures}
    area = math.pi / 4 * (0.036**2 - 0.017**2)
    assert figures["support_pressure"] == pytest.approx(figures["push_on_force"] / area)


def test_a_hub_no_wider_than_the_hole_needs_a_split_ring_and_care() -> None:
    thin = wheel(Piece(0.0, 0.025, 0.0185))  # over a hole of 17 mm
    said = next(q for q in planned(thin).questions if q.id == "push")
    assert "split to close round the small end" in said.reason
    assert said.verdict is Verdict.CARE
    assert "support_pressure" not in {f.name for f in planned(thin).figures}
    stout = next(q for q in planned(wheel(Piece(0.0, 0.025, 0.030))).questions if q.id == "push")
    assert "split" not in stout.reason


def test_a_plain_wheel_has_no_web_to_dish() -> None:
    assert "Held under the rim" not in support(wheel_job())
    assert "Held under the rim" in support(wheel(HUB, WEB, RIM))


def test_a_disc_without_a_rim_is_a_web_to_its_edge() -> None:
    disc = Piece(0.009, 0.013, 0.090, 0.036)
    names = {f.name for f in planned(wheel(HUB, disc)).figures}
    assert {"web_dish", "web_stress"} <= names


def test_a_keyway_takes_its_width_off_the_round_that_bears() -> None:
    plain, keyed = wheel(HUB, WEB, RIM), wheel(HUB, WEB, RIM, keyway=Keyway(0.005, 0.002))
    share = 1 - 5 / (math.pi * 16.006)
    assert normal(keyed) == pytest.approx(normal(plain) * share, rel=1e-9)


def test_a_spoked_wheel_grips_as_its_bare_hub_and_less_than_a_webbed_one() -> None:
    spoked = wheel(HUB, WEB, RIM, spokes=Spokes(5, 0.014, 0.008))
    assert normal(spoked) == pytest.approx(normal(wheel(HUB)), rel=1e-12)
    assert normal(spoked) < normal(wheel(HUB, WEB, RIM))


def test_what_was_stated_is_no_longer_assumed() -> None:
    def taken(job: Job) -> str:
        return next((a.taken for a in planned(job).assumed if a.what == "the work"), "")

    assert taken(wheel_job()) == "sound solid rings: no spokes, keyways, cross holes or flaws"
    keyed = wheel(HUB, WEB, RIM, keyway=Keyway(0.005, 0.002), flaws="none")
    assert taken(keyed) == "solid rings: no spokes or cross holes"


def test_what_was_stated_is_said_back() -> None:
    job = wheel(HUB, WEB, RIM, keyway=Keyway(0.005, 0.002), spokes=Spokes(5, 0.014, 0.008))
    said = " ".join(planned(job).echo)
    assert "5 spokes 14 mm" in said
    assert "keyway 5 mm" in said


def test_a_mandrel_of_another_shop_is_passed_by_its_own_ring() -> None:
    own = MandrelNote(0.016, small_end=0.0159, large_end=0.01605, ground_length=0.15)
    job = wheel_job(mandrels=(own,))
    assert "hole 17 mm" in support(job)
