"""Bores that came out wrong, each saved or given up as the trade would (common practice, no source).

A bore a few thou too big wants a stub turned to it, a bush, or the next reamer; one too small is
taken out; an oval one is bored round; a mandrel that is gouged is stoned; and a doubt at a key
corner stops everything. None of these is our own earlier output.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from borewright.answer.records import Verdict
from borewright.answer.rescue import DrawingHolds, Rescue
from borewright.job import BoreReading, Job, parse_job, read_job, read_shelf
from borewright.job.records import BoreLimits
from borewright.reference.library import Tables
from borewright.service.rescued import rescue

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"
TWELVE = EXAMPLES / "twelve"
YES, CARE, NO = Verdict.YES, Verdict.CARE, Verdict.NO
INCH = 0.0254


def twelve(name: str, *change: str) -> Job:
    text = next(TWELVE.glob(f"{name}*.toml")).read_text(encoding="utf-8")
    if change:
        assert text.count(change[0]) == 1
        text = text.replace(*change)
    return parse_job(text, name)


def saved(job: Job, **found: object) -> Rescue:
    return rescue(job, source_tables=Tables(), **found)  # type: ignore[arg-type]


def drive_wheel(**found: object) -> Rescue:
    job = read_job(EXAMPLES / "hollow-brook-drive-wheel.toml")
    shelf = read_shelf(EXAMPLES / "hollow-brook-shelf.toml")
    return rescue(job, shelf, source_tables=Tables(), **found)  # type: ignore[arg-type]


def readings(*typed: tuple[float, float]) -> tuple[BoreReading, ...]:
    return tuple(BoreReading(z * INCH, d * INCH, f"{n}") for n, (z, d) in enumerate(typed))


def verdict(answer: Rescue, way: str) -> Verdict:
    found = answer.way(way)
    assert found is not None, way
    return found.verdict


def ids(answer: Rescue) -> list[str]:
    return [t.id for t in answer.trouble]


# Hollow Brook: the drive wheel, 5/8 mandrel, 5/8 reamer


def test_four_thou_too_big_falls_through_and_a_stub_to_it_saves_it() -> None:
    answer = drive_wheel(bore=0.6291 * INCH)
    assert ids(answer) == ["too-big"]
    assert verdict(answer, "other-mandrel") is NO
    assert verdict(answer, "to-size") is NO
    assert verdict(answer, "fresh-stub") is YES
    assert verdict(answer, "bush") is YES
    assert answer.ways_out[0].id == "fresh-stub"
    stub = answer.ways_out[0].figure("stub_size")
    assert stub is not None
    assert stub.high == pytest.approx(0.6291 * INCH, abs=1e-9)


def test_three_thou_too_small_is_reamed_by_the_reamer_on_the_shelf() -> None:
    """The drawing's limits were not given, so whether it holds is asked, as for leaving it."""
    answer = drive_wheel(bore=0.6220 * INCH)
    best = answer.ways_out[0]
    assert ids(answer) == ["too-small"]
    assert (best.id, best.verdict, best.drawing) == ("to-size", YES, DrawingHolds.ASK)
    assert "hand reamer, 5/8" in best.reason


def test_a_bore_worn_oval_stops_every_round_thing_and_is_bored_round() -> None:
    answer = drive_wheel(readings=readings((0.5, 0.6251), (0.5, 0.6275)))
    assert ids(answer) == ["oval"]
    for way in ("other-mandrel", "fresh-stub", "expanding", "accept"):
        assert verdict(answer, way) is NO, way
    assert answer.ways_out[0].id in ("bush", "bonded-bush", "next-reamer")


def test_a_thou_of_taper_goes_on_the_mandrel_the_right_way_round() -> None:
    """The smaller end leads off the large end: the mandrel's own taper fits the bore's."""
    answer = drive_wheel(readings=readings((0.1, 0.6251), (1.0, 0.6256)))
    assert ids(answer) == ["tapered"]
    assert verdict(answer, "other-mandrel") is YES
    assert "face B" in answer.way("other-mandrel").reason  # type: ignore[union-attr]
    turned = drive_wheel(readings=readings((0.1, 0.6256), (1.0, 0.6251)))
    assert "face A" in turned.way("other-mandrel").reason  # type: ignore[union-attr]


def test_a_bell_mouth_is_told_from_a_taper() -> None:
    both = drive_wheel(readings=readings((0.1, 0.6258), (0.5, 0.6251), (1.0, 0.6257)))
    one = drive_wheel(readings=readings((0.1, 0.6258), (0.5, 0.6251), (1.0, 0.6251)))
    taper = drive_wheel(readings=readings((0.1, 0.6258), (0.5, 0.6254), (1.0, 0.6250)))
    assert (ids(both), ids(one), ids(taper)) == (["bell-mouthed"], ["bell-mouthed"], ["tapered"])


def test_inside_the_drawing_s_limits_it_is_accepted_and_outside_it_is_not() -> None:
    limits = BoreLimits(0.6250 * INCH, 0.6257 * INCH)
    inside = drive_wheel(bore=0.6256 * INCH, wanted=limits)
    outside = drive_wheel(bore=0.6291 * INCH, wanted=limits)
    assert (verdict(inside, "accept"), inside.trouble) == (YES, ())
    assert verdict(outside, "accept") is NO
    assert "only whoever drew it" in outside.way("accept").reason  # type: ignore[union-attr]


def test_a_gouged_mandrel_is_stoned_never_filed_and_left_out_of_the_choice() -> None:
    answer = drive_wheel(trouble=("gouged",))
    best = answer.ways_out[0]
    assert (best.id, best.verdict) == ("dress-mandrel", YES)
    assert "never file" in best.reason
    assert any("between centers, indicator" in step.lower() for step in best.steps)
    assert "5/8" not in answer.way("other-mandrel").reason  # type: ignore[union-attr]


def test_work_that_slipped_is_parted_first_and_nothing_that_goes_into_it_is_a_yes() -> None:
    answer = drive_wheel(trouble=("slipped",))
    assert answer.ways_out[0].id == "free-it"
    assert answer.verdict is CARE
    assert verdict(answer, "other-mandrel") is CARE
    assert "positive drive" in answer.ways_out[0].steps[-1]


# Of the twelve


@pytest.mark.parametrize("size", [18.004e-3, 18.008e-3, 18.012e-3])
def test_the_locomotive_wheels_all_go_on_the_one_mandrel(size: float) -> None:
    answer = saved(twelve("03"), bore=size)
    assert answer.trouble == ()
    assert verdict(answer, "other-mandrel") is YES
    assert verdict(answer, "accept") is YES


def test_a_locomotive_wheel_bored_over_does_not() -> None:
    answer = saved(twelve("03"), bore=18.06e-3)
    assert ids(answer) == ["too-big"]
    assert verdict(answer, "other-mandrel") is NO
    assert verdict(answer, "bush") is not NO


def test_a_thin_bronze_bush_cannot_be_bushed_but_a_stub_turns_it() -> None:
    answer = saved(twelve("06"), bore=22.12e-3)
    assert verdict(answer, "bush") is NO
    assert verdict(answer, "bonded-bush") is NO
    assert "must stand" in answer.way("bush").reason  # type: ignore[union-attr]
    assert verdict(answer, "fresh-stub") is YES


def test_the_home_cast_pulley_bored_over_is_saved_and_bored_under_is_only_opened() -> None:
    over, under = (saved(twelve("08"), bore=d * INCH) for d in (1.006, 0.996))
    assert over.verdict is YES
    assert verdict(over, "to-size") is NO
    assert (under.ways_out[0].id, under.ways_out[0].verdict) == ("to-size", YES)


def test_the_worn_pulley_with_a_doubt_at_its_key_corner_stops_the_job() -> None:
    answer = saved(twelve("11"))
    assert answer.verdict is NO
    assert answer.headline.startswith("Stop")
    assert answer.ways_out[0].id == "look"
    others = [w for w in answer.ways_out if w.id != "look" and not w.last]
    assert {w.verdict for w in others} == {NO}
    assert not any(w.steps for w in others)
    assert not any(w.verdict is YES for w in answer.ways_out)


def test_the_worn_pulley_looked_at_and_found_sound_is_still_oval_and_wants_a_bush() -> None:
    answer = saved(twelve("11", '"suspected"', '"none"'))
    assert "oval" in ids(answer)
    assert verdict(answer, "other-mandrel") is NO
    assert verdict(answer, "accept") is NO
    assert answer.verdict is not NO
    assert verdict(answer, "bonded-bush") is not NO
    assert answer.way("bonded-bush").drawing is DrawingHolds.ASK  # type: ignore[union-attr]


def test_a_large_disc_that_slipped_is_told_that_it_would_slip_again_and_what_helps() -> None:
    text = (Path(__file__).parent / "jobs" / "large-disc.toml").read_text(encoding="utf-8")
    answer = saved(parse_job(text, "large-disc"), trouble=("slipped",))
    first = answer.ways_out[0]
    assert first.id == "free-it"
    assert "it is a no" in first.reason
    assert "What helps" in first.reason


def test_brittle_work_that_is_pressed_carries_the_caution_of_brittle_work() -> None:
    limits = BoreLimits(0.0180, 0.01802)
    answer = saved(twelve("03"), bore=18.06e-3, wanted=limits)
    bush = answer.way("bush")
    assert bush is not None
    assert any("can burst when pressed" in c for c in bush.cautions)
