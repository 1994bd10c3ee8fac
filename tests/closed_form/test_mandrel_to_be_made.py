"""A mandrel to be made, worked again by hand: settings, limits, and the bores that fit at any limit."""

from __future__ import annotations

import math
from itertools import product
from typing import Any, Literal

import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from borewright.answer.made_mandrel import MadeMandrel
from borewright.errors import BorewrightError
from borewright.making.mandrel.asked import MandrelAsked
from borewright.making.mandrel.design import made_mandrel
from borewright.making.mandrel.route_finish import last_steps
from borewright.mechanics.mandrel_zone import Held, Zone, ground_for, taper_between
from borewright.quantities.show import Show
from borewright.reference.library import Tables

INCH = 0.0254
TABLES = Tables()
FLOAT = 1e-9
"""Metres: a thousandth of what any micrometer reads."""


def made(**asked: Any) -> MadeMandrel:
    return made_mandrel(MandrelAsked(**asked), TABLES)


def test_the_set_over_counts_the_whole_length_between_centers() -> None:
    """5 in at 0.006 in/ft: 0.0005 x 5 / 2 = 0.00125 in, not 0.0005 x 4 / 2 over the taper alone."""
    settings_of = made(nominal=5 / 8 * INCH, units="inch", grinder=False).settings
    assert settings_of.set_over / INCH == pytest.approx(0.00125, rel=1e-9)


def test_the_grinders_table_stands_at_half_the_tapers_angle() -> None:
    """1:2000 on diameter is atan(0.00025) = 0.0143 degrees a side; 10 in of table read 0.0025 in."""
    set_up = made(nominal=INCH, units="inch").settings
    assert math.degrees(set_up.table_angle) == pytest.approx(0.014324, abs=1e-6)
    assert set_up.rise / INCH == pytest.approx(0.0025, rel=1e-9)


@pytest.mark.parametrize(("size", "overall"), [(1 / 8, 2), (1 / 4, 3), (1 / 2, 4.5), (1, 6)])
def test_the_scaling_stock_lies_beside_the_old_figure(size: float, overall: float) -> None:
    """By hand: 0.15 mm + 0.006 of the diameter + 0.001 of the length; the old one is 0.025 in."""
    stock = made(nominal=size * INCH, units="inch").stock
    by_hand = 0.15e-3 + 0.006 * size * INCH + 0.001 * overall * INCH
    assert stock.scaled == pytest.approx(by_hand, rel=1e-6)
    assert stock.old / INCH == pytest.approx(0.025, rel=1e-6)
    assert stock.taken == stock.scaled


def test_a_bend_at_the_limit_still_cleans_up() -> None:
    """Runout e on an axis displaces a side by e/2: what is left of the radial stock is more."""
    stock = made(nominal=0.02).stock
    assert stock.taken / 2 - stock.bend_most / 2 > 0.2 * stock.taken


def test_the_bar_has_metal_for_roughing_and_for_facing() -> None:
    design = made(nominal=0.02)
    assert design.stock.bar.diameter >= design.stock.rough + 0.0007
    assert design.stock.bar_length >= design.form.overall_length + 0.0015


def test_a_correction_by_the_step_said_puts_the_difference_right() -> None:
    """Setting moved by what the route says for a step changes A less B by that step."""
    design = made(nominal=0.016, units="mm", grinder=False)
    (line,) = [
        line
        for step in last_steps(design, Show("mm"), TABLES)
        for line in step.lines
        if "move the tailstock" in line and "further" in line
    ]
    said = float(line.split("move the tailstock ")[1].split(" µm")[0]) * 1e-6
    taper_change = 2 * said / design.settings.between
    assert taper_change * design.form.apart == pytest.approx(5e-6, rel=0.02)


# The drawing's limits


def test_a_zone_without_width_is_the_one_mandrel() -> None:
    """d(x) = 17.98 + x/2000: at 40 mm 18.000; window of a 30 mm bore by hand 17.9925 to 18.0325."""
    zone = Zone(0.01, 0.09, (0.017985, 0.017985), (0.018025, 0.018025))
    assert zone.ends(0.04) == pytest.approx((0.018, 0.018), abs=FLOAT)
    small, taper = taper_between(0.017985, 0.018025, 0.01, 0.09)
    assert (small, taper) == pytest.approx((0.01798, 0.0005), abs=FLOAT)


@settings(max_examples=200, deadline=None)
@example(0.006, 0.0, 3.0, "inch", False, 0.0, 0.5, 1.0)
@given(
    st.floats(0.006, 0.06),
    st.floats(0.0, 25e-6),
    st.floats(0.3, 3.0),
    st.sampled_from(["inch", "mm"]),
    st.booleans(),
    st.floats(0.0, 1.0),
    st.floats(0.0, 1.0),
    st.floats(0.0, 1.0),
)
def test_a_mandrel_anywhere_in_its_limits_seats_the_bores_it_was_made_for(
    bore: float,
    band: float,
    long: float,
    units: Literal["inch", "mm"],
    grinder: bool,
    at_a: float,
    at_b: float,
    at_bore: float,
) -> None:
    """Worked from the two diameters it came out at: it touches, is pressed, and stays on the taper.

    The sums are written out here: where a straight taper has the bore's diameter, a travel further.
    """
    try:
        design = made(
            bores=(bore, bore + band), length=long * bore, units=units, grinder=grinder, longest=1.0
        )
    except BorewrightError:
        assume(False)
        return
    assert design.fits, design.why
    form, zone, held = design.form, design.form.zone, design.held
    a = zone.near_large[0] + at_a * (zone.near_large[1] - zone.near_large[0])
    b = zone.near_small[0] + at_b * (zone.near_small[1] - zone.near_small[0])
    taper = (a - b) / (zone.at_large - zone.at_small)
    small_end = b - taper * zone.at_small
    wanted = bore + at_bore * band
    touch = (wanted - small_end) / taper
    seat = touch + held.travel
    assert seat <= form.ground_length - held.free_large + FLOAT / taper
    assert seat - held.length >= held.free_small - FLOAT / taper
    assert touch >= -FLOAT / taper


@settings(max_examples=60, deadline=None)
@given(st.floats(1e-6, 40e-6), st.floats(0.005, 0.08), st.floats(0.01, 0.05))
def test_the_shortest_length_takes_the_band_and_no_shorter_one_does(
    band: float, length: float, travel: float
) -> None:
    """Without tolerance the length is band / T and what tool, dog, travel and work take, by hand."""
    held = Held(length, travel, 0.005, 0.010)
    plane, taper = 0.006, 0.0005
    found = ground_for(band, taper, 0.0, plane, held)
    by_hand = band / taper + held.low_at + travel + 0.010
    assert found == pytest.approx(max(by_hand, travel + 0.010 + held.low_at + 2 * plane), abs=3e-7)


@settings(max_examples=80, deadline=None)
@given(st.floats(0.0, 0.12), st.floats(0.0, 6e-6), st.floats(0.0, 6e-6))
def test_the_ends_of_a_zone_are_those_of_its_four_corners(x: float, a: float, b: float) -> None:
    zone = Zone(0.006, 0.1, (0.016, 0.016 + b), (0.016047, 0.016047 + a))
    corners = [
        small + (large - small) * (x - 0.006) / 0.094
        for small, large in product(zone.near_small, zone.near_large)
    ]
    assert zone.ends(x) == pytest.approx((min(corners), max(corners)), abs=FLOAT)


def test_one_mandrel_for_a_wide_class_is_longer_than_a_lathe_and_says_no() -> None:
    """16 H9 is 43 µm wide: at 1:2000 that alone is 86 mm of taper."""
    design = made(bores=(0.016, 0.016043), length=0.03, longest=0.15)
    assert not design.fits
    assert "longest" in design.why


@pytest.mark.parametrize(("size", "units"), [(5 / 8 * INCH, "inch"), (0.016, "mm"), (0.025, "mm")])
def test_the_ends_of_what_it_takes_are_reached_at_a_corner_of_its_limits(
    size: float, units: Literal["inch", "mm"]
) -> None:
    """At every corner both ends still seat; at one corner each, they have no length to spare."""
    design = made(nominal=size, units=units)
    zone, held, form = design.form.zone, design.held, design.form
    assert design.takes is not None
    spare: list[tuple[float, float]] = []
    for a, b in product(zone.near_large, zone.near_small):
        taper = (a - b) / (zone.at_large - zone.at_small)
        small_end = b - taper * zone.at_small
        low, high = ((bore - small_end) / taper for bore in design.takes)
        spare.append(
            (
                low - max(0.0, held.length + held.free_small - held.travel),
                form.ground_length - held.free_large - held.travel - high,
            )
        )
    assert min(s[0] for s in spare) == pytest.approx(0.0, abs=1e-6)
    assert min(s[1] for s in spare) == pytest.approx(0.0, abs=1e-6)
