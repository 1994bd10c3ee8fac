"""Stubs and soft mandrels against habits of the trade, over all sizes they are made for."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from borewright.making.cannot import Cannot
from borewright.making.soft.as_drawn import DrawnBar, drawn_bar
from borewright.making.soft.asked import SoftAsked
from borewright.making.soft.turned import TurnedBar, turned_bar
from borewright.making.stub.asked import StubAsked
from borewright.making.stub.sizes import StubSizes, stub_sizes
from borewright.reference.library import Tables

TABLES = Tables()
TENTH = 2.54e-6
"""0.0001 in."""
UNITS = st.sampled_from(["inch", "mm"])


def stub(bore: float, length: float, units: Any = "mm", room: float = 1.0) -> StubSizes | Cannot:
    asked = StubAsked(bore, bore, 3e-6, False, length, room, room, bore, "gray-iron-30", units)
    return stub_sizes(asked, TABLES)


@given(bore=st.floats(0.001, 0.15), length=st.floats(0.001, 0.3), units=UNITS)
def test_a_stub_wrings_into_its_bore_and_its_washer_bears_on_the_work(
    bore: float, length: float, units: str
) -> None:
    """Common practice, no source: none to two tenths under the bore, a thread of half at most,
    one and a half diameters of it engaged, and the work standing out past the stub."""
    made = stub(bore, length, units)
    if isinstance(made, Cannot):
        assert made.words.count(".") >= 2
        return
    assert made.clamp is not None
    assert bore - 2.5 * TENTH < made.spigot_low < made.spigot < made.spigot_high <= bore
    assert made.spigot_length < length
    assert made.clamp.screw.diameter <= bore / 2 * (1 + 1e-9)
    past = length - made.spigot_length
    screwed_in = made.clamp.length - made.clamp.washer_thick - past
    # As sold it holds one and a half of itself, and ends half a turn before the full thread does.
    assert screwed_in >= 1.5 * made.clamp.screw.diameter * (1 - 1e-9)
    assert screwed_in + made.clamp.screw.pitch / 2 <= made.clamp.thread_depth
    engaged = made.clamp.shank_least - made.clamp.washer_thick - (length - made.spigot_length)
    assert engaged == pytest.approx(1.5 * made.clamp.screw.diameter)
    reaches = made.clamp.shank_most - made.clamp.washer_thick - (length - made.spigot_length)
    assert reaches <= made.clamp.thread_depth < made.clamp.drill_depth
    assert made.clamp.washer_outside > bore > made.clamp.screw.clearance
    assert made.stock > made.shoulder > bore
    assert made.overhang_ratio <= 8 + 1e-9


def test_a_stub_bends_more_the_further_it_stands_out_and_the_thinner_it_is() -> None:
    longer = [stub(0.016, length) for length in (0.01, 0.02, 0.04)]
    thicker = [stub(bore, 0.02) for bore in (0.012, 0.016, 0.03)]
    soft = [made.stiffness for made in longer if isinstance(made, StubSizes)]
    stiff = [made.stiffness for made in thicker if isinstance(made, StubSizes)]
    assert len(soft) == len(stiff) == 3
    assert soft == sorted(soft, reverse=True)
    assert stiff == sorted(stiff)


@pytest.mark.parametrize(
    ("bore", "length", "room", "word"),
    [
        (0.080, 0.020, 1.0, "plate"),
        (0.004, 0.010, 1.0, "bond"),
        (0.016, 0.0015, 1.0, "Bond"),
        (0.016, 0.200, 1.0, "between centers"),
        (0.016, 0.020, 0.0155, "soft mandrel"),
    ],
)
def test_who_is_sent_elsewhere(bore: float, length: float, room: float, word: str) -> None:
    made = stub(bore, length, room=room)
    assert isinstance(made, Cannot)
    assert word in made.instead


def test_work_with_a_shoulder_but_no_face_for_a_washer_is_sent_to_the_expanding_stub() -> None:
    asked = StubAsked(0.016, 0.016, 3e-6, False, 0.02, 1.0, 0.0165, 0.016, "", "mm")
    made = stub_sizes(asked, TABLES)
    assert isinstance(made, Cannot)
    assert "expanding" in made.instead
    assert isinstance(stub_sizes(replace(asked, plug="taper"), TABLES), StubSizes)


# Soft mandrels

SOFT = SoftAsked(0.016, 0.016, False, 0.03, 0.06, 0.04, 0.012, "gray-iron-30", "mm")


@given(bore=st.floats(0.003, 0.09), length=st.floats(0.3, 3.0), units=UNITS)
def test_a_turned_bar_starts_in_the_bore_and_stops_in_it(
    bore: float, length: float, units: Any
) -> None:
    """Common practice, no source: smaller than the bore at the free end, larger at the other."""
    asked = replace(SOFT, bore=bore, bore_high=bore, length=length * bore, units=units)
    bar = turned_bar(asked, TABLES)
    if isinstance(bar, Cannot):
        return
    assert bar.ends.tail < bar.small < bore < bar.large < bar.stock
    assert bar.leading_face + asked.length < bar.length
    assert bar.ends.tail_center is None or bar.ends.tail_center.cone < bar.ends.tail


@given(bore=st.floats(0.006, 0.08), units=UNITS)
def test_a_drawn_bar_from_stock_enters_and_its_flat_takes_the_point_of_its_screw(
    bore: float, units: Any
) -> None:
    bar = drawn_bar(
        replace(SOFT, bore=bore, bore_high=bore, hub=3 * bore, units=units, as_drawn=True), TABLES
    )
    if isinstance(bar, Cannot):
        return
    assert bar.nominal <= bore
    assert bar.runout[1] <= 0.25e-3
    assert bar.runout[0] <= bar.runout[1] <= bar.runout[2]
    # The point of a cup screw is half of it wide; the bruise must lie within the flat.
    assert bar.flat_width > bar.screw.diameter / 2
    assert 0 < bar.flat_depth < bar.nominal / 4


def test_a_bar_that_was_measured_has_one_clearance_and_a_thicker_one_does_not_enter() -> None:
    asked = replace(SOFT, bore=0.01602, bore_high=0.01602, as_drawn=True)
    known, loose = drawn_bar(replace(asked, bar=0.01599), TABLES), drawn_bar(asked, TABLES)
    assert isinstance(known, DrawnBar)
    assert isinstance(loose, DrawnBar)
    assert known.runout[0] == known.runout[2]
    assert loose.runout[0] < loose.runout[2]
    assert isinstance(drawn_bar(replace(asked, bar=0.01603), TABLES), Cannot)


def test_a_chuck_needs_no_flat_for_a_dog_and_a_shorter_bar() -> None:
    between, chucked = turned_bar(SOFT, TABLES), turned_bar(replace(SOFT, held="chuck"), TABLES)
    assert isinstance(between, TurnedBar)
    assert isinstance(chucked, TurnedBar)
    assert between.ends.dog_flat[0] > 0
    assert chucked.ends.dog_flat == (0.0, 0.0)
    assert chucked.length < between.length
