"""Pattern shrinkage, pulley crown, expanding pins and reaming, each typed here from its source."""

from __future__ import annotations

import pytest

from borewright.reference import Tables

LIBRARY = Tables()
INCH = 0.0254

# Dooley, Applied Science for Metal Workers, section 426: inches per foot.
DOOLEY = {
    "gray-iron": 3 / 32,
    "steel": 3 / 16,
    "brass": 3 / 16,
    "bronze": 5 / 32,
    "aluminium": 7 / 32,
    "zinc": 7 / 32,
}


@pytest.mark.parametrize("family", DOOLEY)
def test_pattern_shrinkage_is_dooleys_where_he_is_cited(family: str) -> None:
    said = {s.source: s.shrinkage for s in LIBRARY.shrinkages(family)}
    assert said["dooley"] * 12 == pytest.approx(DOOLEY[family])


def test_three_quarters_in_a_foot_is_0_031_in_over_a_two_inch_face() -> None:
    """Dooley's taper on diameter, as height on radius."""
    crown = LIBRARY.crown("dooley", 6 * INCH, 2 * INCH)
    assert crown.height / INCH == pytest.approx(0.03125)
    one = LIBRARY.crown("dooley-one", 6 * INCH, 2 * INCH)
    assert one.height / crown.height == pytest.approx(4 / 3)


def test_pin_of_an_expanding_mandrel_tapers_a_sixteenth_in_an_inch() -> None:
    """US Army OD1645 (1988)."""
    found = LIBRARY.expanding(1 * INCH)
    assert (found.pin_taper, found.pin_taper_source) == (1 / 16, "od1645")


def test_five_to_ten_thou_are_left_for_the_reamer_at_half_speed() -> None:
    """TM 1-420."""
    left = LIBRARY.reaming("stock_to_leave")
    assert (left.low / INCH, left.high / INCH) == pytest.approx((0.005, 0.010))
    assert LIBRARY.reaming("speed_of_drilling").best == 0.5
