"""How many castings to pour, against scipy's binomial distribution."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binom

from borewright.errors import OutsideModel
from borewright.mechanics.spares import chance_enough, tries_needed

SUMS_OF_LOGARITHMS = 1e-9


@given(st.integers(1, 300), st.integers(0, 60), st.floats(0.0, 0.9))
def test_the_chance_that_enough_are_good_is_the_binomial_one(wanted, spare, scrap):
    tries = wanted + spare
    truth = binom.sf(wanted - 1, tries, 1 - scrap)
    assert chance_enough(wanted, tries, scrap) == pytest.approx(truth, abs=SUMS_OF_LOGARITHMS)


@given(st.integers(1, 200), st.floats(0.001, 0.6), st.floats(0.5, 0.999))
def test_the_number_is_the_least_that_is_sure_enough(wanted, scrap, sure):
    tries = tries_needed(wanted, scrap, sure)
    assert binom.sf(wanted - 1, tries, 1 - scrap) >= sure - SUMS_OF_LOGARITHMS
    if tries > wanted:
        assert binom.sf(wanted - 1, tries - 1, 1 - scrap) < sure + SUMS_OF_LOGARITHMS


@given(st.integers(1, 100), st.floats(0.0, 0.5), st.floats(0.5, 0.95))
def test_more_wanted_more_scrap_or_surer_never_asks_for_fewer(wanted, scrap, sure):
    tries = tries_needed(wanted, scrap, sure)
    assert tries_needed(wanted + 1, scrap, sure) > tries
    assert tries_needed(wanted, scrap + 0.05, sure) >= tries
    assert tries_needed(wanted, scrap, sure + 0.04) >= tries


def test_without_scrap_none_is_spare():
    assert tries_needed(7, 0.0, 0.999) == 7


@pytest.mark.parametrize(("scrap", "sure"), [(1.0, 0.9), (-0.1, 0.9), (0.1, 1.0), (0.1, 0.0)])
def test_a_chance_that_is_none_is_refused(scrap, sure):
    with pytest.raises(OutsideModel):
        tries_needed(3, scrap, sure)
