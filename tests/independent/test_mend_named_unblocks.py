"""With the number that a way out names, the plan made all over again is blocked no more."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from tests.blocked_cuts import COARSE, FINE, TABLES, WEAK, own, text_of

from borewright.answer.schedule import Blocked
from borewright.job import parse_job
from borewright.reference import Tables
from borewright.service.planned import plan


def blocked_in(text: str, tables: Tables = TABLES) -> dict[str, Blocked]:
    schedule = plan(parse_job(text, "job"), source_tables=tables).schedule
    assert schedule is not None
    return {b.cut: b for b in schedule.blocked}


def named(pattern: str, blocked: dict[str, Blocked]) -> list[str]:
    found = (re.search(pattern, b.way_out) for b in blocked.values())
    return [match[1] for match in found if match]


@pytest.mark.parametrize(("lathe", "limit"), [(COARSE, "slip"), (FINE, "finish")])
def test_the_feed_named_given_to_the_lathe_unblocks_every_cut(
    lathe: dict[str, str], limit: str
) -> None:
    blocked = blocked_in(text_of(**lathe))
    assert limit in {b.limit for b in blocked.values()}
    feeds = named(r"Cheapest: a feed of ([0-9.]+) mm/rev", blocked)
    assert len(feeds) == len(blocked)
    more = ", ".join(f'"{feed}mm"' for feed in sorted(set(feeds)))
    assert limit not in {b.limit for b in blocked_in(text_of(**{**lathe, "feeds": more})).values()}


def test_the_speed_named_given_to_the_lathe_unblocks_the_cut() -> None:
    blocked = blocked_in(text_of(**WEAK))
    (rpm,) = named(r"Or ([0-9]+) rpm, by back gear", blocked)
    speeds = f'"{rpm}rpm", {text_of().partition("speeds = [")[2].partition("]")[0]}'
    assert not blocked_in(text_of(**{**WEAK, "speeds": speeds}))


def test_the_nose_named_ground_on_the_tool_unblocks_the_cut(tmp_path: Path) -> None:
    blocked = blocked_in(text_of(**FINE))
    noses = named(r"Or a tool with a nose of ([0-9.]+) mm", blocked)
    assert len(noses) == 3
    metres = float(noses[0]) / 1000
    usual = "nose_radius,0.0002,0.0004,0.0008"
    ground = own(tmp_path, "cutting_corrections", (usual, f"nose_radius,0.0002,{metres},0.0024"))
    assert not blocked_in(text_of(**FINE), ground)


def test_the_finish_to_be_accepted_is_to_be_had() -> None:
    (ridges,) = set(named(r"Or accept Rz ([0-9.]+) µm", blocked_in(text_of(**FINE))))
    assert not blocked_in(text_of(**FINE).replace("0.8um", f"{ridges}um"))
