"""Standard tolerances, a fit and a reamer, each typed here from its source."""

from __future__ import annotations

import pytest

from borewright.job.bore_text import bore_size
from borewright.reference import Tables

LIBRARY = Tables()
MICROMETRE = 1e-6
TYPED = 1e-9
"""Metres: a thousandth of the last digit printed; covers binary rounding only."""

# ISO 286-1, as quoted: IT5 to IT11 in micrometres, by largest size in mm of the band.
IT = {
    3: (4, 6, 10, 14, 25, 40, 60),
    6: (5, 8, 12, 18, 30, 48, 75),
    10: (6, 9, 15, 22, 36, 58, 90),
    18: (8, 11, 18, 27, 43, 70, 110),
    30: (9, 13, 21, 33, 52, 84, 130),
    50: (11, 16, 25, 39, 62, 100, 160),
    80: (13, 19, 30, 46, 74, 120, 190),
    120: (15, 22, 35, 54, 87, 140, 220),
}
CASES = [
    (grade, top, um) for top, row in IT.items() for grade, um in zip(range(5, 12), row, strict=True)
]
BANDS = [(1, 3), (3, 6), (6, 10), (10, 18), (18, 30), (30, 50), (50, 80), (80, 120)]


@pytest.mark.parametrize(("grade", "top", "um"), CASES, ids=lambda value: str(value))
def test_standard_tolerance_is_that_of_iso_286(grade: int, top: int, um: int) -> None:
    assert LIBRARY.tolerance(grade, top * 1e-3) == pytest.approx(um * MICROMETRE, abs=TYPED)


@pytest.mark.parametrize(("over", "to"), BANDS)
@pytest.mark.parametrize("grade", range(5, 12))
def test_a_band_reaches_from_over_its_lower_end_to_its_upper_end(
    over: int, to: int, grade: int
) -> None:
    just_over = LIBRARY.tolerance(grade, over * 1e-3 + 1e-6)
    assert just_over == LIBRARY.tolerance(grade, to * 1e-3)


def test_a_50_h7_s6_fit_has_18_to_59_micrometres_of_interference() -> None:
    """Bhandari, Design of Machine Elements, Ex. 3.3."""
    hole, shaft = LIBRARY.limits("H7", 0.050), LIBRARY.limits("s6", 0.050)
    assert shaft.lower - hole.upper == pytest.approx(18 * MICROMETRE, abs=TYPED)
    assert shaft.upper - hole.lower == pytest.approx(59 * MICROMETRE, abs=TYPED)


@pytest.mark.parametrize(("grade", "top", "um"), CASES, ids=lambda value: str(value))
def test_a_bore_stated_as_a_hole_of_class_h_is_known_to_half_that_tolerance(
    grade: int, top: int, um: int
) -> None:
    size, limits = bore_size(f"{top} H{grade}", "bore", None)
    assert limits is not None
    assert limits.half_band == pytest.approx(um / 2 * MICROMETRE, abs=TYPED)
    assert size == pytest.approx(top * 1e-3 + um / 2 * MICROMETRE, abs=TYPED)


def test_a_reamer_for_55_plus_35_micrometres_is_55_017_to_55_030() -> None:
    """P. C. Sharma, Production Engineering, Ex. 15.5."""
    reamer = LIBRARY.reamer_for(0.055035, 35e-6)
    assert reamer.smallest == pytest.approx(0.055017, abs=TYPED)
    assert reamer.largest == pytest.approx(0.055030, abs=TYPED)


# Machine Drawing, ch. 15, table 15.2: deviations in micrometres, by largest size in mm.
PRINTED = {
    "n6": {6: 8, 10: 10, 18: 12, 30: 15, 50: 17, 80: 20, 120: 23},
    "p6": {6: 12, 10: 15, 18: 18, 30: 22, 50: 26, 80: 32, 120: 37},
    "r6": {6: 15, 10: 19, 18: 23, 30: 28, 50: 34, 65: 41, 80: 43, 100: 51, 120: 54},
    "s6": {6: 19, 10: 23, 18: 28, 30: 35, 50: 43, 65: 53, 80: 59, 100: 71, 120: 79},
}


@pytest.mark.parametrize(
    ("code", "size", "um"), [(c, s, v) for c, row in PRINTED.items() for s, v in row.items()]
)
def test_lower_deviation_of_a_shaft_is_as_printed(code: str, size: int, um: int) -> None:
    limits = LIBRARY.limits(code, size * 1e-3)
    assert limits.lower == pytest.approx(um * MICROMETRE, abs=TYPED)
    assert "machine-drawing" in limits.sources
