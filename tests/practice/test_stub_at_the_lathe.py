"""What a toolmaker needs of a stub's papers: an order that can be worked, sizes that can be turned."""

from __future__ import annotations

import json
import math
import re
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.cli_run import ran

from borewright.answer.drawn_part import DrawnPart
from borewright.answer.papers import Grid, Route
from borewright.making.cannot import Cannot
from borewright.making.stub.asked import StubAsked
from borewright.making.stub.sizes import stub_sizes
from borewright.making.stub.slit import slit_of
from borewright.reference.library import Tables
from borewright.service.making.bored_work import WorkTyped, work_typed
from borewright.service.making.outputs import Made
from borewright.service.making.stub import make_stub

TABLES = Tables()
INCH = 0.0254
CONE = (
    "--expanding", "--plug", "cone", "--bore", "2in", "--length", "2 1/4in", "--outside", "4in",
)  # fmt: skip


def made(bore: float = 0.025, length: float = 0.04, plug: Any = None, units: Any = "mm") -> Made:
    typed = WorkTyped(bore, None, length, 2 * bore, "", "bore-gauge", units)
    return make_stub(work_typed(typed, TABLES), TABLES, plug)


def steps(thing: Made) -> list[tuple[str, str]]:
    (route,) = (b for s in thing.papers.sheets for b in s.blocks if isinstance(b, Route))
    return [(step.title, " ".join(step.lines)) for step in route.steps]


def told(*asked: str) -> str:
    done = ran("make", "stub", *asked)
    assert done.code == 0, done.err
    return " ".join(done.out.split())


def sized(bore: float, length: float, plug: str, units: Any) -> StubAsked:
    return StubAsked(
        bore, bore, 3e-6, False, length, 1.0, 1.0, bore, "gray-iron-30", units, plug=plug
    )  # type: ignore[arg-type]


# The order


@pytest.mark.parametrize("plug", [None, "taper", "cone"])
def test_nothing_else_is_turned_once_the_stub_is_in_the_chuck(plug: str | None) -> None:
    titles = [title for title, _ in steps(made(0.05, 0.06, plug=plug))]
    chucked = titles.index("Bar in the chuck")
    others = [k for k, title in enumerate(titles) if "washer" in title or "Turn the plug" in title]
    assert len(others) == (2 if plug else 1)
    assert max(others) < chucked


def test_the_plug_is_turned_large_end_free_and_the_slide_stays_till_the_mouth_is_bored() -> None:
    words = dict(steps(made(plug="taper")))
    assert "Large end free" in words["Turn the plug first"]
    assert "not touched again" in words["Turn the plug first"]
    assert "stands out 3 mm" in words["Bore the inside"]


def test_the_angle_of_the_plug_is_set_by_what_an_indicator_moves() -> None:
    """1 in 16 on diameter: 25 mm of slide moves it 25 x sin(atan(1 / 32)) = 0.781 mm."""
    moved = 25 * math.sin(math.atan(1 / 32))
    assert f"{moved:.2f} mm" in dict(steps(made(plug="taper")))["Turn the plug first"]


def test_the_saw_meets_a_filler_and_never_the_plug() -> None:
    """Two opposite slits in one cut go right across the bore: what stands in it is sawn."""
    told_in = steps(made(plug="taper"))
    titles, words = [title for title, _ in told_in], dict(told_in)
    sawn = words["Saw the slits"]
    assert sawn.index("Plug out") < sawn.index("filler in its place") < sawn.index("saw from")
    assert sawn.index("saw from") < sawn.index("filler out") < sawn.index("burr")
    assert "Plug in" not in sawn
    assert "20 mm" in words["Turn a filler for the saw"]
    assert titles.index("Turn a filler for the saw") < titles.index("Bar in the chuck")


# The plug


@given(
    bore=st.floats(0.010, 0.060),
    length=st.floats(0.6, 2.5),
    plug=st.sampled_from(["taper", "cone"]),
    units=st.sampled_from(["inch", "mm"]),
)
def test_the_work_goes_on_over_the_plug_and_the_plug_has_room_to_be_drawn_in(
    bore: float, length: float, plug: str, units: str
) -> None:
    asked = sized(bore, length * bore, plug, units)
    stub = stub_sizes(asked, TABLES)
    if isinstance(stub, Cannot):
        return
    found = slit_of(asked, stub, TABLES)
    if isinstance(found, Cannot):
        return
    assert found.plug_large <= bore - 0.0005 + 1e-9
    assert found.mouth < found.plug_large
    # Drawn in all the way, the small end must still stand in the cone, not in the straight hole.
    small_end_at = found.plug_length - found.stands_out + found.travel_most
    assert small_end_at <= found.cone_length + 1e-9
    assert found.plug_small > found.hole
    # The screw still holds one and a half of itself, and never meets the half cut threads.
    engaged = found.screw_length - found.washer_thick - found.stands_out - found.length
    assert engaged >= 1.5 * found.screw.diameter - 1e-9
    assert engaged + found.travel_most < found.thread_depth < found.drill_depth
    assert found.screw.diameter < found.washer_outside <= found.plug_large + 1e-9
    if found.puller:
        assert found.washer_outside > found.puller.diameter


def test_a_plug_that_opens_all_it_may_in_a_hair_of_a_turn_is_said_to_give_no_control() -> None:
    done = ran("make", "stub", *CONE, "--json")
    answer = json.loads(done.out)
    assert answer["verdict"] == "with care"
    assert "no control" in answer["reason"]
    words = told(*CONE)
    assert "by feel" in words
    assert not re.search(r"\b[0-9]° of the screw", words)


@pytest.mark.parametrize("bore", [0.040, 0.045, 0.05, 0.06])
@pytest.mark.parametrize("bores_long", [1.25, 1.75])
def test_a_plug_that_does_its_work_in_thirty_degrees_gives_no_control(
    bore: float, bores_long: float
) -> None:
    """60 degrees on a coarse thread: 21 µm is 3 to 5 degrees, however much the fingers bear."""
    said = made(bore, bores_long * bore, "cone").numbers
    needed = 360 * said["opening_needed_m"] / said["opening_per_turn_m"]
    assert needed < 30
    assert "no control" in said["reason"]
    usual = made(bore, bores_long * bore, "taper").numbers
    assert 360 * usual["opening_needed_m"] / usual["opening_per_turn_m"] > 30
    assert "no control" not in usual["reason"]


def test_a_plug_that_bears_on_less_than_two_millimetres_is_answered_no() -> None:
    asked = ("make", "stub", "--bore", "25mm", "--length", "40mm", "--expanding")
    done = ran(*asked, "--plug", "cone", "--json")
    assert done.code == 3
    reason = json.loads(done.out)["reason"]
    assert "1.3 mm" in reason
    assert "--plug taper" in reason
    assert ran(*asked, "--plug", "taper").code == 0


def test_a_thin_ring_on_fingers_is_told_that_it_springs() -> None:
    """25 mm of bore: an eighth is 3.1 mm. 30 mm outside leaves 2.5, 32 mm leaves 3.5."""
    asked = ("make", "stub", "--bore", "25mm", "--length", "40mm", "--outside")
    thin, thick, plain = (
        json.loads(ran(*asked, *more, "--json").out)
        for more in (("30mm", "--expanding"), ("32mm", "--expanding"), ("30mm",))
    )
    assert thin["verdict"] == "with care"
    assert "2.5 mm" in thin["reason"]
    assert "no longer round when let go" in thin["reason"]
    assert "plain stub with a washer" in thin["reason"]
    assert "no longer round" not in thick["reason"] + plain["reason"]
    head = told("--bore", "25mm", "--length", "40mm", "--outside", "30mm", "--expanding")
    assert "no longer round when let go" in head[: head.index("ROUTE")]


def test_the_rows_of_what_the_plug_opens_differ_in_an_inch_shop() -> None:
    words = told(*CONE)
    table = words[words.index("What the plug opens") :]
    drawn = re.findall(r"\) (\d\.\d{4}) in \(\d", table)[:4]
    assert len(set(drawn)) == 4
    assert [float(d) / float(drawn[3]) for d in drawn] == pytest.approx(
        [0.25, 0.5, 0.75, 1.0], abs=0.02
    )


def test_the_expanding_stubs_cautions_are_its_own() -> None:
    words = told(*CONE)
    assert "choose the one that just goes into the bore" not in words
    assert "never start the spindle without the work" not in words
    assert "only to finish the spigot" in words


@pytest.mark.parametrize("plug", ["taper", "cone"])
def test_nobody_is_told_to_tighten_the_screw_that_opens_the_fingers(plug: str) -> None:
    plain = ("--bore", "50 H7", "--length", "60mm")
    words = told(*plain, "--expanding", "--plug", plug)
    assert "tighten it by wrench" not in words
    assert "to the turns on this sheet and no further" in words
    assert "tighten it by wrench" in told(*plain)
    assert "and no further" not in told(*plain)


# Sizes


@pytest.mark.parametrize("units", ["inch", "mm"])
@pytest.mark.parametrize("bore", [0.012, 0.0158775, 0.0254, 0.06])
def test_depths_and_screws_are_those_of_a_shop(units: str, bore: float) -> None:
    said = made(bore, 1.2 * bore, None, units).numbers
    step = INCH / 64 if units == "inch" else 1e-4
    for name in (
        "shoulder_diameter_m", "washer_outside_m", "washer_thickness_m", "thread_depth_m", "drill_depth_m",
        "groove_width_m", "groove_depth_m", "bar_length_m", "screw_length_m",
    ):  # fmt: skip
        assert said[name] / step == pytest.approx(round(said[name] / step), abs=1e-5), name
    lengths = {1 / 2, 5 / 8, 3 / 4, 7 / 8, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.5}
    whole = said["screw_length_m"] / (INCH if units == "inch" else 1e-3)
    assert round(whole, 6) in (
        lengths if units == "inch" else {*range(6, 21, 2), *range(20, 121, 5)}
    )
    # Every day's screws: none over 3/8 in or M12.
    assert said["screw_diameter_m"] <= (0.375 * INCH if units == "inch" else 0.012) + 1e-9
    assert said["grip_in_jaws_m"] >= min(said["stock_diameter_m"], 0.059) - 1e-9


def test_an_expanding_stub_says_sizes_that_a_caliper_reads() -> None:
    words = dict(steps(made(plug="taper")))
    assert "Drill and bore 20 mm" in words["Bore the inside"]
    for text in words.values():
        assert "19.998" not in text
        assert "20.711" not in text


def test_a_ring_too_narrow_to_bear_is_refused_with_the_width_that_would_do() -> None:
    done = ran("make", "stub", "--bore", "25mm", "--length", "15mm", "--outside", "26mm", "--json")
    assert done.code == 3
    reason = json.loads(done.out)["reason"]
    assert "asks for 0.8 mm" in reason or "asks for 0.75 mm" in reason
    wider = ran("make", "stub", "--bore", "25mm", "--length", "15mm", "--outside", "32mm")
    assert wider.code == 0


def test_a_bar_is_as_long_as_what_is_told_to_be_done_with_it() -> None:
    assert "pull the bar out" not in told("--bore", "16.01mm", "--length", "20mm")


def test_the_shake_of_a_batch_is_said_once() -> None:
    words = told("--bore", "8 H7", "--length", "12mm")
    assert words.count("shakes on it by") == 1
    assert "sort the pieces" in words


@pytest.mark.parametrize("plug", [None, "taper"])
def test_the_work_accepts_the_spigot_and_the_number_is_only_expected(plug: str | None) -> None:
    """A bore known to 3 µm cannot refuse, by a number, a spigot that wrings on."""
    (grid,) = (
        block
        for sheet in made(plug=plug).papers.sheets
        for block in sheet.blocks
        if isinstance(block, Grid) and block.heading == "What is measured"
    )
    spigot = f"spigot{', plug nipped' if plug else ''}"
    wanted = {row[0]: row[1] for row in grid.rows}
    assert wanted[spigot] == "the work wrings on, no shake"
    assert wanted[f"{spigot}, size as found"].startswith("expected 24.994 to 25.000 mm")
    assert not [what for what, size in wanted.items() if size.startswith("24.99")]


# Drawings


def parts(thing: Made) -> dict[str, DrawnPart]:
    return {part.title: part for part in thing.parts}


def test_the_drilled_hole_ends_in_the_cone_of_its_drill() -> None:
    stub = parts(made())["Stub"]
    first, second, third = sorted(stub.hollows, key=lambda h: h.start)
    assert (first.size, first.size_end) == (0.0, second.size)
    for one, other in pairwise((first, second, third)):
        assert one.end == pytest.approx(other.start)
    # A drill of 118 degrees: its point is 0.3 of its diameter.
    assert first.end - first.start == pytest.approx(0.3 * second.size)
    assert any("deep to its point" in note for note in stub.notes)


def test_washer_and_screw_stand_beside_the_stub() -> None:
    for plug in (None, "taper"):
        thing = made(plug=plug)
        stub = next(p for t, p in parts(thing).items() if t.endswith("tub"))
        washer, head = stub.phantom
        assert washer.outside == pytest.approx(thing.numbers["washer_outside_m"])
        assert head.outside == pytest.approx(1.5 * thing.numbers["screw_diameter_m"])
        assert any("under its head" in note for note in stub.notes)


def test_slits_holes_bore_and_their_depth_are_on_the_expanding_stubs_drawing() -> None:
    thing = made(plug="taper")
    stub = parts(thing)["Expanding stub"]
    assert {"bore and slits", "spigot length"} <= {a.name for a in stub.along}
    assert "bore" in {a.name for a in stub.across}
    (slit,) = stub.slits
    assert slit.hole == pytest.approx(thing.numbers["slit_end_hole_m"])
    assert any("4 slits, 4 holes 2 mm" in p.text for p in stub.pointed)


def test_the_general_tolerance_is_either_way_and_the_same_in_both_units(tmp_path: Path) -> None:
    for units, first in (("mm", "±0.1 mm (0.004 in)"), ("inch", "±0.005 in (0.13 mm)")):
        for part in made(units=units).parts:
            assert part.general.startswith(first)
