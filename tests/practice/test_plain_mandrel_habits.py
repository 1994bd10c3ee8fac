"""Common practice, no source: what hands know of plain mandrels and of the work on them."""

from __future__ import annotations

import pytest

from borewright.reference import Tables

LIBRARY = Tables()
INCH = 0.0254


@pytest.mark.parametrize(("nominal", "thou"), [(0.25, 0.5), (0.9375, 0.5), (1.0, 1.0), (1.5, 1.0)])
def test_small_end_is_half_a_thou_under_below_one_inch_and_one_from_there(
    nominal: float, thou: float
) -> None:
    mandrel = LIBRARY.mandrel_row(nominal * INCH)
    assert (mandrel.nominal - mandrel.small_end) / INCH * 1000 == pytest.approx(thou)
    assert "practice" in mandrel.sources


def test_hands_press_between_one_and_two_inches() -> None:
    travel = LIBRARY.allowance("press_travel")
    assert (travel.low / INCH, travel.high / INCH) == pytest.approx((1.0, 2.0))


def test_castings_crack_and_bar_yields() -> None:
    brittle = {m for m in LIBRARY.work_materials() if LIBRARY.material(m).brittle}
    assert {"gray-iron-20", "gray-iron-30", "gray-iron-40", "al-cast", "al-scrap-cast"} <= brittle
    assert not brittle & {"ductile-iron-65-45-12", "malleable-iron", "steel-1018", "al-6061-t6"}


def test_unknown_scrap_is_trusted_least() -> None:
    scrap, known = (LIBRARY.material_range(m, "tensile") for m in ("al-scrap-cast", "al-cast"))
    assert scrap.low < known.low
    assert scrap.high / scrap.low > known.high / known.low
