"""Sizes of the trade: from memory or common practice, so never called published."""

from __future__ import annotations

import pytest

from borewright.reference import Tables

LIBRARY = Tables()
INCH = 0.0254
POUND_FORCE = 4.4482216152605

# From memory: drills that tap charts and pin sizes use every day, inches.
DRILLS = {"#1": 0.2280, "#7": 0.2010, "#21": 0.1590, "#29": 0.1360, "#36": 0.1065, "#43": 0.0890,
          "#50": 0.0700, "#60": 0.0400, "#80": 0.0135, "A": 0.234, "F": 0.257, "Q": 0.332,
          "U": 0.368, "Z": 0.413}  # fmt: skip


@pytest.mark.parametrize("name", DRILLS)
def test_a_number_or_letter_drill_has_its_size(name: str) -> None:
    assert LIBRARY.drill(name).size / INCH == pytest.approx(DRILLS[name])


def test_letter_e_is_a_quarter_inch() -> None:
    assert LIBRARY.drill("E").size == pytest.approx(LIBRARY.drill("1/4 in").size)


@pytest.mark.parametrize("series", ["number", "letter"])
def test_sizes_run_one_way_through_a_series(series: str) -> None:
    rows = [r for r in LIBRARY.table("drills").rows if r.text("series") == series]
    sizes = [row.number("size") for row in rows]
    assert sizes == sorted(sizes, reverse=series == "number")
    assert len(set(sizes)) == len(sizes)


@pytest.mark.parametrize(("name", "pounds"), [("1/4 in", 1000), ("3/8 in", 2000)])
def test_a_set_screw_holds_what_one_book_says_and_half_of_it_by_others(
    name: str, pounds: int
) -> None:
    """Shigley table 7-4, from memory; other charts give 2 to 2.5 times less."""
    held = LIBRARY.set_screw(name).holding
    assert held.high == pytest.approx(pounds * POUND_FORCE)
    assert 2.0 <= held.high / held.best <= held.high / held.low <= 2.5 * (1 + 1e-9)


def test_an_expanding_mandrel_covers_a_sixteenth_at_the_small_sizes_and_more_at_the_large() -> None:
    sizes = [0.5, 0.9, 1.2, 2.0, 3.0]
    covers = [LIBRARY.expanding(bore * INCH).covers.best / INCH for bore in sizes]
    assert covers[0] == pytest.approx(1 / 16)
    assert covers == sorted(covers)
    assert covers[-1] > covers[0]


def test_the_protecting_bell_is_wider_than_the_cone_and_the_cone_than_the_pilot() -> None:
    """ISO 6411 from memory: type B."""
    for center in LIBRARY.centers("iso-b"):
        assert center.cone is not None
        assert center.bell is not None
        assert center.pilot < center.cone < center.bell


@pytest.mark.parametrize(("diameter", "height"), [(63, 0.3), (112, 0.3), (200, 0.6), (355, 1.0)])
def test_crown_of_a_power_belt_pulley_by_the_remembered_standard(
    diameter: float, height: float
) -> None:
    """ISO 22, from memory: 0.3 mm at 40 to 112 mm, 1.0 mm at 315 to 355 mm."""
    assert LIBRARY.crown("iso 22", diameter * 1e-3, 0.05).height == pytest.approx(height * 1e-3)


@pytest.mark.parametrize(("face", "height"), [(0.1, 1.0), (0.15, 1.5), (0.2, 2.0)])
def test_above_355_mm_a_wider_face_takes_a_higher_crown(face: float, height: float) -> None:
    """ISO 22, from memory, for 600 mm."""
    assert LIBRARY.crown("iso-22", 0.6, face).height == pytest.approx(height * 1e-3)


def test_crown_rules_differ_three_to_ten_times_and_the_oldest_by_more() -> None:
    crowns = LIBRARY.crowns(0.127, 0.0508)
    heights = [crown.height for crown in crowns if crown.rule != "face-24th"]
    assert 3.0 <= heights[-1] / heights[0] <= 10.0
    assert crowns[-1].rule == "face-24th"
    assert 10.0 < crowns[-1].height / heights[0] < 20.0


def test_one_crown_of_each_rule_that_covers_the_pulley_is_listed_lowest_first() -> None:
    for diameter, face in ((0.03, 0.02), (0.127, 0.0508), (0.6, 0.1), (0.6, 0.2)):
        crowns = LIBRARY.crowns(diameter, face)
        assert len({c.rule for c in crowns}) == len(crowns)
        assert [c.height for c in crowns] == sorted(c.height for c in crowns)
        assert all(c.belt for c in crowns)


def test_the_crown_by_diameter_is_recommended_but_on_a_face_too_narrow_for_it() -> None:
    """Ours: 0.3 mm in half of 12 mm is steeper than 1 in per ft on diameter."""
    assert LIBRARY.recommended_crown(0.127, 0.0508).rule == "iso-22"
    assert LIBRARY.recommended_crown(0.05, 0.012).rule == "eighth-on-radius"
    assert LIBRARY.recommended_crown(0.03, 0.02).rule == "eighth-on-radius"


def test_founders_disagree_about_aluminium() -> None:
    """5/32 and 7/32 in a foot."""
    said = [s.shrinkage * 12 * 32 for s in LIBRARY.shrinkages("aluminium")]
    assert said == pytest.approx([5, 7])


def test_a_ream_is_finer_than_a_drilled_hole_and_a_lapped_one_finest() -> None:
    order = ["lapping", "grinding", "reaming", "turning", "drilling", "sand-casting"]
    grades = [LIBRARY.process(name).grade.best for name in order]
    assert grades == sorted(grades)
    assert len(set(grades)) > 4
