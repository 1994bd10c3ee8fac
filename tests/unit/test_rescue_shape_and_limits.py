"""Bores that are no plain cylinder, readings near a limit, notes on a mandrel, and limits that rank.

What a bore wider in the middle is, what a crack is called and what a gauge can tell apart are the
trade's words and plain sums, not our own output.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from tests.cli_run import refused
from tests.jobs_made import wheel_job

from borewright.answer.records import Verdict
from borewright.answer.rescue import DrawingHolds, Rescue
from borewright.job import parse_job
from borewright.job.records import BoreLimits, BoreReading, MandrelNote
from borewright.reference.library import Tables
from borewright.service.rescued import rescue

ROOT = Path(__file__).resolve().parents[2]
WHEEL = str(ROOT / "examples" / "hollow-brook-drive-wheel.toml")
GEARS = (ROOT / "examples" / "twelve" / "10-gear-blanks.toml").read_text(encoding="utf-8")
TABLES = Tables()
LIMITS = BoreLimits(0.016, 0.016018)


def saved(**found: Any) -> Rescue:
    return rescue(wheel_job(), source_tables=TABLES, **found)


def reading(*sizes: float) -> tuple[BoreReading, ...]:
    depths = (0.001, 0.0125, 0.024)
    return tuple(
        BoreReading(z, d, f"{n}") for n, (z, d) in enumerate(zip(depths, sizes, strict=True))
    )


@pytest.mark.parametrize("limits", [None, LIMITS])
def test_a_bore_wider_in_the_middle_is_barrelled_and_not_in_order(
    limits: BoreLimits | None,
) -> None:
    """0.2 mm between the middle and either end, and the ends are alike: no bell, no taper."""
    found = saved(readings=reading(0.016006, 0.016206, 0.016006), wanted=limits)
    shown = {t.id for t in found.trouble}
    assert "barrelled" in shown
    assert not shown & {"tapered", "bell-mouthed"}
    assert next(f.best for f in found.figures if f.name == "barrel_of_bore") == pytest.approx(2e-4)
    assert "nothing is wrong" not in found.headline
    assert found.way("fresh-stub").verdict is not Verdict.YES  # type: ignore[union-attr]


def test_a_straight_bore_and_a_bell_are_not_barrelled() -> None:
    for sizes in ((0.016006,) * 3, (0.0162, 0.016006, 0.0162)):
        assert "barrelled" not in {t.id for t in saved(readings=reading(*sizes)).trouble}


@pytest.mark.parametrize("word", ["split", "fractured", "broken", "fissure", "burst", "blow hole"])
def test_every_word_for_a_crack_stops_it(word: str) -> None:
    found = saved(trouble=(word,))
    assert (found.verdict, found.headline[:5]) == (Verdict.NO, "Stop:")


def test_a_size_and_readings_at_places_are_not_both_taken() -> None:
    said = refused("rescue", WHEEL, "--bore", "0.6252in", "--bore-at", "0.5in", "0.6300in")
    assert "--bore" in said
    assert "--bore-at" in said


def test_a_reading_nearer_to_a_limit_than_its_gauge_knows_is_measured_again() -> None:
    """2 µm from either limit, with a gauge that is 5 µm out either way, tells neither; 30 µm does."""
    job = parse_job(GEARS, "job.toml")
    limits = BoreLimits(0.015, 0.015018)

    def headline(bore: float) -> str:
        return rescue(job, bore=bore, wanted=limits, source_tables=TABLES).headline

    for near in (0.015016, 0.015020):
        assert "measure it again with a better gauge" in headline(near)
    for far in (0.015009, 0.015060):
        assert "better gauge" not in headline(far)


def test_where_limits_were_stated_what_meets_them_comes_before_what_does_not() -> None:
    """Also where the bush is with care and the stub, which leaves the bore as it is, a plain yes."""
    job = parse_job(GEARS, "job.toml")
    found = rescue(job, bore=0.01503, wanted=BoreLimits(0.015, 0.015018), source_tables=TABLES)
    verdicts = {w.id: w.verdict for w in found.ways_out}
    assert (verdicts["bush"], verdicts["fresh-stub"]) == (Verdict.CARE, Verdict.YES)
    at = {w.id: n for n, w in enumerate(found.ways_out)}
    for way in ("fresh-stub", "otherwise", "bonded"):
        assert found.way(way).drawing is DrawingHolds.NO  # type: ignore[union-attr]
        assert at["bush"] < at[way]


def test_a_scored_mandrel_is_never_a_plain_yes() -> None:
    clean, scored = (
        rescue(
            wheel_job(mandrels=(MandrelNote(0.016, condition=condition),)), source_tables=TABLES
        ).way("other-mandrel")
        for condition in ("", "scored near the middle")
    )
    assert clean is not None
    assert scored is not None
    assert (clean.verdict, scored.verdict) == (Verdict.YES, Verdict.CARE)
    assert "scored near the middle" in scored.reason
    assert "scored" not in clean.reason


def test_a_bush_is_pressed_into_a_casting_on_a_plain_yes_only_where_it_was_looked_at() -> None:
    text = (ROOT / "examples" / "twelve" / "08-home-cast-pulley.toml").read_text(encoding="utf-8")
    job = parse_job(text, "job.toml")
    row = rescue(job, bore=job.work.bore.size * 1.01, source_tables=TABLES).way("bush")
    assert row is not None
    assert row.verdict is not Verdict.YES
    assert "ring it" in row.reason


def test_every_hold_it_offers_is_proved_before_it_is_cut() -> None:
    found = saved(bore=0.0162)
    for way in ("fresh-stub", "bonded", "set-true"):
        steps = found.way(way).steps  # type: ignore[union-attr]
        assert any(step.startswith("Pencil line and proof load.") for step in steps), way


def test_a_reamer_is_not_sent_straight_into_a_keyway_and_the_bar_never_cuts_smaller() -> None:
    text = Path(ROOT / "examples" / "twelve" / "05-drive-wheel.toml").read_text(encoding="utf-8")
    job = parse_job(text, "job.toml")
    bore = 0.885 * 0.0254
    row = rescue(job, bore=bore, source_tables=TABLES).way("next-reamer")
    assert row is not None
    assert "0.8850 to" in " ".join(row.steps)
    assert job.work.keyway is not None
    assert "spiral flutes" in " ".join(row.steps)


def test_a_rim_that_is_not_held_is_not_said_to_give_by_an_inch() -> None:
    """0.15 mm of bell at both ends leaves a ring's worth of bore to bear: no spring, but a hinge."""
    found = saved(readings=reading(0.01617, 0.016006, 0.01617))
    row = found.way("other-mandrel")
    assert row is not None
    assert row.verdict is Verdict.NO
    assert "rock freely" in row.reason
    assert "the rim gives by" not in row.reason
