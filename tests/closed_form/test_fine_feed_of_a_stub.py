"""The fine feed of a stub, the travel of its plug, the throw of a screw: geometry, by hand."""

from __future__ import annotations

import math
from dataclasses import replace

import mpmath as mp
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from borewright.making.cannot import Cannot
from borewright.making.fine_feed import divisions, fine_feeds, usual_feed
from borewright.making.soft.as_drawn import drawn_bar
from borewright.making.soft.asked import SoftAsked
from borewright.making.soft.turned import TurnedBar, turned_bar
from borewright.making.stub.asked import StubAsked
from borewright.making.stub.sizes import StubSizes, stub_sizes
from borewright.making.stub.slit import Slit, slit_of
from borewright.reference.library import Tables

TABLES = Tables()
SAME = 1e-9
INCH = 0.0254
STUB = StubAsked(
    0.025, 0.025, 3e-6, False, 0.040, 0.1, 0.1, 0.025, "gray-iron-30", "mm", plug="taper"
)
SOFT = SoftAsked(0.01602, 0.01602, False, 0.03, 0.06, 0.04, 0.012, "gray-iron-30", "mm")


def feeds() -> dict[str, float]:
    """Change of diameter per travel by the name of the setting."""
    return {feed.id: feed.diameter_per_slide for feed in fine_feeds(TABLES)}


def slit(asked: StubAsked = STUB) -> tuple[StubSizes, Slit]:
    stub = stub_sizes(asked, TABLES)
    assert isinstance(stub, StubSizes)
    found = slit_of(asked, stub, TABLES)
    assert isinstance(found, Slit), found
    return stub, found


def sized(bore: float, largest: float, length: float, plug: str) -> StubAsked:
    """A stub for other work than the usual one."""
    return replace(STUB, bore=bore, bore_high=largest, face_inside=bore, length=length, plug=plug)  # type: ignore[arg-type]


# The table


def test_each_setting_gives_what_its_name_says() -> None:
    """By the sine in 50 digits, not by the function that made the table."""
    exact = {
        "1 in 100": mp.mpf(1) / 100,
        "half a degree": 2 * mp.sin(mp.pi / 360),
        "1 in 10": mp.mpf(1) / 10,
        "1 in 5": mp.mpf(1) / 5,
    }
    assert feeds() == {name: pytest.approx(float(value), rel=SAME) for name, value in exact.items()}


def test_half_a_degree_turns_a_tenth_of_a_millimetre_into_17_ten_thousandths() -> None:
    """Geometry, as the trade says it: 0.1 mm of slide is 0.0017 mm on diameter."""
    assert round(feeds()["half a degree"] * 0.1, 4) == 0.0017


def test_the_usual_setting_takes_a_tenth_for_a_thou() -> None:
    """2.866 degrees from the lathe's axis: asin(1 / 20)."""
    feed = usual_feed(TABLES)
    assert math.degrees(feed.angle) == pytest.approx(2.866, abs=5e-4)
    assert feed.on_diameter(0.001 * INCH) == pytest.approx(0.0001 * INCH, rel=SAME)
    assert feed.slide_for(0.0005 * INCH) == pytest.approx(0.005 * INCH, rel=SAME)


def test_at_5_739_degrees_a_tenth_of_slide_is_a_hundredth_on_radius() -> None:
    feed = fine_feeds(TABLES)[-1]
    assert math.degrees(feed.angle) == pytest.approx(5.739, abs=5e-4)
    assert feed.on_diameter(0.1e-3) / 2 == pytest.approx(0.01e-3, rel=SAME)
    assert feed.indicator(0.1e-3) == pytest.approx(0.01e-3, rel=SAME)


def test_across_and_along_are_the_two_sides_of_a_right_angle() -> None:
    for feed in fine_feeds(TABLES):
        across = feed.diameter_per_slide / 2
        assert math.hypot(across, feed.along_per_slide) == pytest.approx(1.0, rel=SAME)


def test_the_three_dials_are_the_ones_on_lathes() -> None:
    for units in ("inch", "mm"):
        assert sorted(divisions(units, TABLES)) == pytest.approx([20e-6, 25.4e-6, 50e-6])


# The plug


def test_the_plug_opens_a_sixteenth_of_its_travel_and_a_turn_of_m8_a_sixteenth_of_its_pitch() -> (
    None
):
    """OD1645: the pin of an expanding mandrel tapers 1/16 in per in."""
    _, s = slit()
    assert s.travel * 0.0625 == pytest.approx(s.opens, rel=SAME)
    assert s.screw.id == "M8"
    assert s.per_turn == pytest.approx(0.00125 / 16, rel=SAME)
    assert math.degrees(s.slide_angle) == pytest.approx(1.78991, abs=5e-6)


def test_a_cone_of_sixty_degrees_opens_two_tangents_of_thirty() -> None:
    _, s = slit(sized(0.05, 0.05, 0.06, "cone"))
    assert s.screw.id == "M16"  # its pitch 2 mm
    assert s.per_turn == pytest.approx(0.002 * 2 / math.sqrt(3), rel=1e-8)
    assert math.degrees(s.slide_angle) == pytest.approx(30.0)


def test_the_cone_of_the_mouth_thins_the_wall_by_no_more_than_half() -> None:
    for plug in ("taper", "cone"):
        for bore in (0.012, 0.025, 0.05) if plug == "taper" else (0.04, 0.05, 0.06):
            asked = sized(bore, bore, 1.5 * bore, plug)
            stub, s = slit(asked)
            assert (stub.spigot - s.mouth) / 2 >= s.wall / 2 - 1e-12
            assert s.mouth - s.hole == pytest.approx(s.taper * s.cone_length, rel=SAME)


def test_the_largest_opening_is_that_of_a_cantilever_whose_root_bears_the_stress() -> None:
    """Section of a finger by integration over the sector; deflection F L³ / 3 E I, root F L c / I."""
    stub, s = slit()
    far, near = stub.spigot / 2, s.hole / 2
    half = math.pi / s.number - s.width / (far + near)
    area = quad(lambda r: 2 * half * r, near, far)[0]
    middle = quad(lambda r: 2 * r * r * math.sin(half), near, far)[0] / area
    fiber = max(far - middle, middle - near * math.cos(half))
    modulus = TABLES.material_range("steel-1018", "modulus").best
    free = s.length - s.cone_length / 2
    # σ = F L c / I and y = F L³ / (3 E I): y = σ L² / (3 E c), twice that on diameter.
    by_hand = 2 * s.bears * free**2 / (3 * modulus * fiber)
    assert s.opens_most == pytest.approx(by_hand, rel=1e-8)


@given(
    bore=st.floats(0.010, 0.060),
    length=st.floats(0.5, 2.5),
    band=st.floats(0.0, 40e-6),
    plug=st.sampled_from(["taper", "cone"]),
)
def test_no_expanding_stub_is_told_that_needs_more_than_its_fingers_bear(
    bore: float, length: float, band: float, plug: str
) -> None:
    asked = replace(sized(bore, bore + band, length * bore, plug), batch=True)
    stub = stub_sizes(asked, TABLES)
    if isinstance(stub, Cannot):
        return
    found = slit_of(asked, stub, TABLES)
    if isinstance(found, Cannot):
        assert found.reason.endswith(".")
        return
    assert found.opens <= found.opens_most
    assert found.stress <= found.bears * (1 + 1e-9)
    assert found.opens >= band  # from the smallest bore to the largest at least
    assert found.number * found.width < math.pi * found.hole
    assert found.hole > found.plug_hole


# A soft mandrel


def test_a_bar_20_micrometres_loose_throws_the_work_over_by_10_and_reads_20() -> None:
    bar = drawn_bar(replace(SOFT, bar=0.016, as_drawn=True), TABLES)
    assert not isinstance(bar, Cannot)
    assert bar.thrown == pytest.approx(10e-6, rel=1e-6)
    assert bar.runout == pytest.approx((20e-6, 20e-6, 20e-6), rel=1e-6)
    # Turned half round by the screw, a point of the rim stands twice the throw further in.
    assert bar.runout[1] == pytest.approx(2 * bar.thrown, rel=SAME)


def test_the_flat_is_the_chord_at_its_depth() -> None:
    bar = drawn_bar(replace(SOFT, as_drawn=True), TABLES)
    assert not isinstance(bar, Cannot)
    half = math.sqrt(0.008**2 - (0.008 - bar.flat_depth) ** 2)
    assert bar.flat_width == pytest.approx(2 * half, rel=SAME)


def test_a_soft_mandrel_is_a_hair_over_the_bore_at_the_face_and_half_a_thou_per_inch_beside_it() -> (
    None
):
    """0.0001 to 0.0002 in over it, or nothing but the friction of no push would hold."""
    bar = turned_bar(SOFT, TABLES)
    assert isinstance(bar, TurnedBar)
    assert bar.grip[0] == pytest.approx(0.0001 * INCH)
    assert bar.grip[2] == pytest.approx(0.0002 * INCH)
    assert SOFT.bore + bar.grip[0] < bar.seat < SOFT.bore + bar.grip[2]
    assert (bar.large - bar.small) / bar.body == pytest.approx(0.0005, rel=SAME)
    assert bar.large - bar.seat == pytest.approx(0.0005 * bar.room, rel=1e-6)
    # Half of the taper over the whole length between centers.
    assert bar.set_over == pytest.approx(bar.length * 0.0005 / 2, rel=SAME)
    assert math.degrees(bar.slide_angle) == pytest.approx(0.0143, abs=5e-5)


def test_a_batch_comes_to_sit_as_far_apart_as_its_bores_differ_over_the_taper() -> None:
    """Half a thou of bore moves the seat an inch at half a thou per inch."""
    asked = replace(SOFT, bore=0.025, bore_high=0.025 + 0.0005 * INCH, batch=True)
    bar = turned_bar(asked, TABLES)
    assert isinstance(bar, TurnedBar)
    assert INCH <= bar.spread + 1e-9 < INCH + 1e-4
    at_largest = bar.large - bar.taper * bar.room
    # The room for the batch is said to a tenth of a millimetre, never less than it takes.
    over = at_largest - bar.grip[1] - asked.bore_high
    assert -1e-12 <= over <= 0.0005 * 1e-4


def test_the_staircase_never_cuts_under_the_taper() -> None:
    bar = turned_bar(SOFT, TABLES)
    assert isinstance(bar, TurnedBar)
    for stop, depth in zip(bar.stops, bar.depths, strict=True):
        assert depth <= bar.taper * stop * (1 + 1e-9)
        assert 0 < stop < bar.body
