"""Blanks from bar, worked again by hand."""

from __future__ import annotations

from math import floor, pi
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from borewright.answer.made_bar import BarBlanks
from borewright.errors import RefusedInput
from borewright.job import parse_job
from borewright.making.bars.bar_blanks import BarAsked, bar_blanks
from borewright.reference.library import Tables
from borewright.service.making.bar_blank import bars_typed

TABLES = Tables()


def blanks(outside: float, length: float, quantity: int, **asked: Any) -> BarBlanks:
    """Blanks of a plain steel disc; sizes in mm."""
    text = (
        f'units = "mm"\nwork = {{material = "steel-1018", bore = 8, outside = {outside}, '
        f"length = {length}, quantity = {quantity}}}"
    )
    return bar_blanks(parse_job(text, "job.toml"), BarAsked(**asked), TABLES)


def test_twenty_sawn_discs_by_hand() -> None:
    """63 x 8 mm: 65 mm bar; 8 + 2 x 0.8 + 65/100 = 10.25, up to a tenth 10.3; order by the sum."""
    made = blanks(63, 8, 20)
    assert made.bar_size == "65 mm"
    assert made.piece == pytest.approx(10.3e-3, abs=1e-9)
    assert made.order == pytest.approx(20 * (10.3e-3 + 1.6e-3) + 30e-3, abs=1e-9)
    assert made.mass == pytest.approx(7850 * pi / 4 * 0.065**2 * 0.268, rel=0.01)


def test_a_thin_bar_is_parted_and_leaves_its_end_in_the_chuck() -> None:
    """30 mm: blade 0.04 x 32 = 1.28, at least 2 mm; half of 32 mm stays in the jaws, 16 mm."""
    made = blanks(30, 12, 5)
    assert (made.cut, made.bar_size) == ("parted", "32 mm")
    assert made.kerf == pytest.approx(2e-3)
    assert made.end == pytest.approx(16e-3)
    assert made.piece == pytest.approx(13.6e-3, abs=1e-9)


@settings(max_examples=60, deadline=None)
@given(st.integers(1, 60), st.floats(5.0, 60.0), st.floats(0.2, 2.0))
def test_one_length_of_bar_is_cut_into_as_many_as_fit_by_division(
    quantity: int, length: float, bar: float
) -> None:
    """Each piece with its cut, the end kept: floor((bar − end) / (piece + cut)) from each."""
    made = blanks(30, round(length, 1), quantity, bars=(("bar", bar, None),))
    from_each = floor((bar - made.end) / (made.piece + made.kerf) + 1e-9)
    if from_each == 0:
        assert not made.whole
        return
    assert made.whole
    assert sum(lot.count for lot in made.lots) == -(-quantity // from_each)
    assert sum(lot.count * lot.pieces for lot in made.lots) == quantity


def test_bars_that_do_not_give_all_say_how_many_are_short() -> None:
    made = blanks(63, 8, 20, bars=bars_typed("100mm, 2 x 60mm", "mm"))
    # (100 - 30) / 11.9 is 5, (60 - 30) / 11.9 is 2, twice: 9 of 20.
    assert made.missing == 11


def test_a_bar_thinner_than_the_part_is_refused() -> None:
    with pytest.raises(RefusedInput, match="at least"):
        blanks(63, 8, 20, bar=0.06)


def test_what_is_too_thick_to_part_is_sawn_and_not_parted_when_asked() -> None:
    assert blanks(100, 20, 2).cut == "sawn"
    with pytest.raises(RefusedInput, match="sawn"):
        blanks(100, 20, 2, cut="parted")
