"""A plug gauge never passes a bad bore, whatever its true sizes: by trying, not by its own rule."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from borewright.errors import OutsideModel, RefusedInput
from borewright.making.cannot import Cannot
from borewright.making.gauge.asked import GaugeAsked
from borewright.making.gauge.steps import plug_steps, read_off
from borewright.making.gauge.worth import Worth, worth_of
from borewright.mechanics.plug_gauge import (
    bore_between,
    most_plug_steps,
    plug_shares,
    plug_zones,
    readings_for,
    zone_width,
)
from borewright.reference.library import Tables

TABLES = Tables()
BORES = st.floats(2e-3, 80e-3)
BANDS = st.floats(4e-6, 500e-6)
SHARES = st.floats(0.0, 1.0)
HAIR = 1e-12
"""Rounding of a size in metres."""


def between(zone: tuple[float, float], share: float) -> float:
    return zone[0] + share * (zone[1] - zone[0])


def asked(low: float, band: float, **more: object) -> GaugeAsked:
    return GaugeAsked(low, low + band, "", "mm", **more)  # type: ignore[arg-type]


# Go and not-go


@given(low=BORES, band=BANDS, go=SHARES, not_go=SHARES, worn=SHARES, bore=st.floats(-1.0, 2.0))
def test_no_plug_within_its_limits_new_or_worn_passes_a_bore_outside_the_window(
    low: float, band: float, go: float, not_go: float, worn: float, bore: float
) -> None:
    worth = worth_of(asked(low, band), TABLES)
    assume(isinstance(worth, Worth))
    assert isinstance(worth, Worth)
    new = between(worth.zones.go, go)
    goes = new - worn * (new - low)  # worn anywhere between new and worn out
    stays = between(worth.zones.not_go, not_go)
    hole = low + bore * band
    if goes <= hole < stays:
        assert low - HAIR <= hole <= low + band + HAIR


@given(low=BORES, band=BANDS, read=SHARES, error=st.floats(-1.0, 1.0))
def test_a_reading_that_is_accepted_proves_the_true_size_to_be_within_its_limits(
    low: float, band: float, read: float, error: float
) -> None:
    worth = worth_of(asked(low, band), TABLES)
    assume(isinstance(worth, Worth))
    assert isinstance(worth, Worth)
    for zone, reads in (
        (worth.zones.go, worth.go_reads),
        (worth.zones.not_go, worth.not_go_reads),
    ):
        true = between(reads, read) + error * worth.known
        assert zone[0] - HAIR <= true <= zone[1] + HAIR
        assert reads[1] - reads[0] >= worth.hit - HAIR


@given(low=BORES, band=BANDS, go=SHARES, not_go=SHARES, inside=SHARES)
def test_bores_that_are_said_to_pass_every_new_plug_do(
    low: float, band: float, go: float, not_go: float, inside: float
) -> None:
    worth = worth_of(asked(low, band), TABLES)
    assume(isinstance(worth, Worth))
    assert isinstance(worth, Worth)
    hole = between(worth.zones.left, inside * 0.999)
    assert between(worth.zones.go, go) <= hole + HAIR
    assert hole < between(worth.zones.not_go, not_go) + HAIR


def test_what_is_lost_is_counted_by_trying_bores() -> None:
    """A hundred thousand bores across the window against the worst plug: the share called bad."""
    zones = plug_zones(0.016, 0.016018, 3e-6, 1.8e-6)
    tried = [0.016 + 18e-6 * (k + 0.5) / 100_000 for k in range(100_000)]
    bad = sum(not zones.go[1] <= bore < zones.not_go[0] for bore in tried)
    assert zones.lost_worst == pytest.approx(bad / 100_000, abs=2e-5)
    middle_go, middle_not = sum(zones.go) / 2, sum(zones.not_go) / 2
    bad = sum(not middle_go <= bore < middle_not for bore in tried)
    assert zones.lost_middle == pytest.approx(bad / 100_000, abs=2e-5)


def test_a_wide_window_pays_a_tenth_at_each_end_and_a_tenth_of_wear() -> None:
    """0.1 + 0.1 + 0.1 of it: practice, a tenth to the gauge."""
    worth = worth_of(asked(0.050, 200e-6), TABLES)
    assert isinstance(worth, Worth)
    assert (worth.finish, worth.coarser) == ("turned", False)
    assert worth.zones.lost_worst == pytest.approx(0.3)
    assert worth.zones.go == pytest.approx((0.050020, 0.050040))
    assert worth.zones.not_go == pytest.approx((0.050180, 0.050200))


def test_a_narrow_window_is_lapped_and_a_narrower_one_is_refused() -> None:
    wide, narrow = worth_of(asked(0.016, 50e-6), TABLES), worth_of(asked(0.016, 18e-6), TABLES)
    assert isinstance(wide, Worth)
    assert isinstance(narrow, Worth)
    assert (wide.finish, narrow.finish) == ("turned", "lapped")
    assert narrow.coarser
    none = worth_of(asked(0.016, 6e-6), TABLES)
    assert isinstance(none, Cannot)
    assert "bore gauge" in none.instead


def test_zones_that_meet_are_no_plug() -> None:
    with pytest.raises(OutsideModel, match="two tolerances"):
        plug_zones(0.016, 0.016010, 4.6e-6, 1e-6)
    with pytest.raises(OutsideModel):
        readings_for((0.0, 2e-6), 1e-6)
    with pytest.raises(OutsideModel):
        zone_width(0.0, 0.1, 1e-6, 1e-6)


# Stepped


@given(
    low=BORES,
    band=st.floats(12e-6, 500e-6),
    steps=st.integers(2, 8),
    made=st.lists(SHARES, min_size=8, max_size=8),
    bore=st.floats(-0.5, 1.5),
)
def test_what_a_stepped_plug_says_is_true_of_every_plug_within_its_limits(
    low: float, band: float, steps: int, made: list[float], bore: float
) -> None:
    stated = asked(low, band, stepped=True)
    worth = worth_of(stated, TABLES)
    assume(isinstance(worth, Worth))
    assert isinstance(worth, Worth)
    least = max(5e-6, 1.5 * worth.width)
    assume(steps <= most_plug_steps(band, least))
    plug = plug_steps(asked(low, band, stepped=True, steps=steps), worth, TABLES)
    assert not isinstance(plug, Cannot)
    true = [between(step.zone, share) for step, share in zip(plug, made, strict=False)]
    assert true == sorted(true)  # no step is ever the size of its neighbour's other side
    hole = low + bore * band
    entered = sum(size <= hole for size in true)
    said = read_off(plug)[entered]
    assert said.least is None or said.least <= hole + HAIR
    assert said.below is None or hole <= said.below + HAIR
    if said.word == "good":
        assert low - HAIR <= hole <= low + band + HAIR


def test_steps_stand_evenly_from_the_smallest_bore_to_the_largest() -> None:
    assert plug_shares(18e-6, 5e-6, 4) == pytest.approx((0, 1 / 3, 2 / 3, 1))
    assert plug_shares(11e-6, 5e-6, 4) == pytest.approx((0, 1 / 2, 1))
    assert plug_shares(1e-6, 5e-6, 4) == (0.0, 1.0)


def test_more_steps_than_the_plug_has_cannot_go_in() -> None:
    with pytest.raises(OutsideModel, match="steps that go in"):
        bore_between(((1.0, 1.1),), 2)


@pytest.mark.parametrize("band", [18e-6, 40e-6, 100e-6])
@pytest.mark.parametrize("finish", ["turned", "lapped"])
def test_as_many_steps_as_are_taken_have_zones_that_do_not_meet(finish: str, band: float) -> None:
    taken = 0
    for number in range(2, 40):
        stated = asked(0.016, band, stepped=True, steps=number, finish=finish)
        worth = worth_of(stated, TABLES)
        if isinstance(worth, Cannot):
            continue
        try:
            plug = plug_steps(stated, worth, TABLES)
        except RefusedInput:
            continue
        if isinstance(plug, Cannot):
            continue
        taken += 1
        for one, next_one in pairwise(plug):
            assert one.zone[1] <= next_one.zone[0] + HAIR, number
    assert taken or (finish == "turned" and band < 20e-6)
