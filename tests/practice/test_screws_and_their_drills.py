"""Coarse screws, tap drills and clearance holes against rules of the trade, not against the table."""

from __future__ import annotations

import pytest

from borewright.reference.library import Tables
from borewright.reference.screws import Screw

TABLES = Tables()
SCREWS = [*TABLES.screws("inch"), *TABLES.screws("mm")]
SIZES = {drill.id: drill.size for drill in TABLES.drills()}
EVERY = pytest.mark.parametrize("screw", SCREWS, ids=[s.id for s in SCREWS])
BEYOND_A_SET = 0.0131
"""Metric drills larger than this (m) are not in the usual set, nor inch ones above an inch."""


@EVERY
def test_the_tap_drill_is_the_screw_less_its_pitch_to_a_tenth_of_the_pitch_or_two(
    screw: Screw,
) -> None:
    """Common practice, no source: nominal less pitch leaves about three quarters of the thread."""
    assert screw.tap_drill_size == pytest.approx(
        screw.diameter - screw.pitch, abs=0.25 * screw.pitch
    )


@EVERY
def test_the_thread_in_the_hole_is_60_to_85_parts_in_a_hundred_of_a_full_one(
    screw: Screw,
) -> None:
    """A full 60 degree thread is 0.6495 pitches deep on radius, 1.299 on diameter: geometry."""
    share = (screw.diameter - screw.tap_drill_size) / (1.299 * screw.pitch)
    assert 0.60 <= share <= 0.85


@EVERY
def test_a_clearance_hole_lets_the_screw_through_and_not_its_neighbour(screw: Screw) -> None:
    assert 1.01 * screw.diameter < screw.clearance < 1.16 * screw.diameter
    larger = [s.diameter for s in SCREWS if s.system == screw.system and s.pitch > screw.pitch]
    assert all(screw.clearance < size for size in larger)


@EVERY
def test_a_drill_that_is_named_is_the_drill_that_is_sold(screw: Screw) -> None:
    for name, size in (
        (screw.tap_drill, screw.tap_drill_size),
        (screw.clearance_drill, screw.clearance),
    ):
        if screw.system == "mm" and size > BEYOND_A_SET:
            assert name == f"{size * 1e3:g} mm"
        elif size <= 0.0254:
            assert SIZES[name] == pytest.approx(size, abs=1e-9), name


@pytest.mark.parametrize(
    ("name", "drill"), [("1/4-20", "#7"), ("3/8-16", "5/16 in"), ("M6", "5 mm"), ("M8", "6.8 mm")]
)
def test_the_drills_that_everybody_knows(name: str, drill: str) -> None:
    """Common practice, no source; every shop's wall chart has them."""
    assert next(s for s in SCREWS if s.id == name).tap_drill == drill
