"""How the twelve jobs are cut, each with a twin that turns what limits it.

Where the grip is ample the habit of the metal limits; a big rim on a small bore slips first, a weak
motor pulls less, a fine finish asks a fine feed, a thin hub on a warm mandrel asks patience.

The limits and the numbers of passes were read from our own answer first and argued afterwards. They keep
a change from going by unseen; they do not show that the answer is right.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from borewright.answer.plan import Plan
from borewright.job import parse_job
from borewright.reference.library import Tables
from borewright.service.planned import plan

TABLES = Tables()
TWELVE = Path(__file__).parents[2] / "examples" / "twelve"

USUAL, BORNE = "lathe", "tool"
JOBS = [
    # job, cut, what limits it and in how many passes; what is changed, and what limits it then
    ("01-beginner-pulley", "finish", USUAL, 1, ('"3in"', '"3in"\nfinished = { roughness = "3um" }'), "finish", 1),
    ("02-class-blanks", "rough", BORNE, 1, ('"550rpm"]', '"550rpm"]\npower = "40W"'), "power", 1),
    ("03-locomotive-wheels", "rough", BORNE, 1, ('"112mm"', '"118mm"'), BORNE, 7),
    ("04-flywheel", "rough", BORNE, 1, ('"7.3in"', '"7.4in"'), BORNE, 3),
    ("05-drive-wheel", "rough", BORNE, 3, ('"350rpm"]', '"350rpm"]\npower = "750W"'), "slip", 1),
    ("06-bronze-bush", "rough", BORNE, 1, ('"900rpm"]', '"900rpm"]\npower = "30W"'), "power", 1),
    ("07-thin-ring", "rough", USUAL, 1, ('"113mm"', '"116mm"'), BORNE, 3),
    ("08-home-cast-pulley", "rough", "slip", 1, ('"200rpm"]', '"200rpm"]\npower = "60W"'), "power", 1),
    ("09-no-mandrels", "rough", "slip", 1, ('"60mm"', '"60mm"\nfinished = { outside = "50mm" }'), BORNE, 11),
    ("10-gear-blanks", "rough", "slip", 1, ('"63mm"', '"58mm"'), BORNE, 5),
    ("12-job-shop", "rough", BORNE, 2, ('"2 1/8in"', '"2 1/32in"'), USUAL, 1),
]  # fmt: skip


def planned(name: str, change: tuple[str, str] | None = None) -> Plan:
    text = (TWELVE / f"{name}.toml").read_text(encoding="utf-8")
    if change is not None:
        assert text.count(change[0]) == 1, change
        text = text.replace(*change)
    return plan(parse_job(text, name), source_tables=TABLES)


def limited(answer: Plan, cut: str) -> tuple[str, int]:
    assert answer.schedule is not None
    (taken,) = (t for t in answer.schedule.taken if t.cut == cut)
    (found,) = (c for c in answer.cuts if c.id == cut)
    return taken.limit, found.passes


@pytest.mark.parametrize(("name", "cut", "limit", "passes", "change", "then", "in_passes"), JOBS)
def test_what_limits_each_job_and_its_twin(
    name: str,
    cut: str,
    limit: str,
    passes: int,
    change: tuple[str, str],
    then: str,
    in_passes: int,
) -> None:
    assert limited(planned(name), cut) == (limit, passes)
    assert limited(planned(name, change), cut) == (then, in_passes)


@pytest.mark.parametrize("name", [job[0] for job in JOBS])
def test_no_cut_of_an_everyday_job_is_blocked_and_the_finish_is_the_lightest_feed(
    name: str,
) -> None:
    answer = planned(name)
    assert answer.schedule is not None
    assert not answer.schedule.blocked
    turned = {c.id: c for c in answer.cuts if c.kind == "turn"}
    if {"rough", "finish"} <= set(turned):
        assert turned["finish"].feed <= turned["rough"].feed
        assert turned["finish"].depth <= turned["rough"].depth * (1 + 1e-9)


def test_the_pulley_that_nobody_dares_to_press_is_faced_only() -> None:
    """Its rim is held, so nothing of it is turned; a face is a face."""
    assert [c.kind for c in planned("11-worn-pulley").cuts] == ["face"]


def test_its_twin_sound_and_round_is_turned_and_needs_no_chuck() -> None:
    text = (TWELVE / "11-worn-pulley.toml").read_text(encoding="utf-8")
    text = text.replace('"suspected"', '"none"').replace('size = "1.2580in"', 'size = "1.2505in"')
    text = text.replace('outside = "10in"', 'outside = "10in"\nfinished = { outside = "9.9in" }')
    answer = plan(parse_job(text, "twin"), source_tables=TABLES)
    assert {"rough", "finish"} <= {c.id for c in answer.cuts}
    assert answer.chosen is not None
    assert answer.chosen.way != "four-jaw"


def test_no_job_takes_longer_than_a_morning() -> None:
    for name, *_ in JOBS:
        answer = planned(name)
        assert answer.schedule is not None
        assert 60 < answer.schedule.seconds < 3 * 3600, name
