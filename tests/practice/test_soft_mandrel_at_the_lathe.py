"""What a toolmaker needs of a soft mandrel's papers: a size that grips, no blow, a hub that is said."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest
from tests.cli_run import ran

from borewright.answer.drawn_part import DrawnPart
from borewright.answer.papers import Grid
from borewright.drawing.workshop.limits_text import limits_text
from borewright.drawing.workshop.look import Look
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.service.making.bored_work import WorkTyped, work_typed
from borewright.service.making.soft import make_soft

TABLES = Tables()
INCH = 0.0254
TURNED = ("make", "soft", "--bore", "1in", "--length", "1in", "--outside", "2in")
DRAWN = ("make", "soft", "--bore", "0.6251in", "--length", "1in", "--as-drawn")


def told(*asked: str) -> str:
    done = ran(*asked)
    assert done.code == 0, done.err
    return " ".join(done.out.split())


def part(units: Any, **more: Any) -> DrawnPart:
    typed = WorkTyped(INCH, None, INCH, 2 * INCH, "", "bore-gauge", units)
    return make_soft(work_typed(typed, TABLES), TABLES, **more).parts[0]


def test_the_bar_is_over_the_bore_at_the_leading_face_and_stops_short_by_hand() -> None:
    """A tenth over at half a thou per inch is 0.2 in of the way, two tenths 0.4."""
    words = told(*TURNED)
    assert "1.0001 to 1.0002 in" in words
    assert "stop 0.20 to 0.41 in" in words  # to a 64th


@pytest.mark.parametrize("units", ["inch", "mm"])
def test_the_drawing_finds_the_leading_face_and_has_no_size_finer_than_a_shop_reads(
    units: Any,
) -> None:
    mandrel = part(units)
    assert {"leading face", "flat"} <= {along.name for along in mandrel.along}
    for across in mandrel.across:
        said = limits_text(across.limits, Look(units), across=True)
        decimals = [len(d) for d in re.findall(r"\.(\d+)", said)]
        assert max(decimals, default=0) <= (4 if units == "inch" else 3), said


@pytest.mark.parametrize("units", ["inch", "mm"])
@pytest.mark.parametrize("bore", [0.005, 0.006, 0.0127, 0.0254, 0.050])
@pytest.mark.parametrize("ratio", [0.7, 1.0, 2.0])
def test_no_limits_on_the_drawing_let_the_taper_run_backward(
    units: Any, bore: float, ratio: float
) -> None:
    """Only the seat has limits, those of the sheet; both ends are that and the taper of 1 in 2000."""
    typed = WorkTyped(bore, None, ratio * bore, 2 * bore, "", "bore-gauge", units)
    made = make_soft(work_typed(typed, TABLES), TABLES)
    across = {a.name: a.limits for a in made.parts[0].across}
    large, seat, small = (across[n] for n in ("large end", "at the leading face", "small end"))
    assert (large.reference, seat.reference, small.reference) == (True, False, True)
    ends = [(x.size + x.lower, x.size + x.upper) for x in (large, seat, small)]
    for low, high in ends:
        assert high - low >= (2.54e-6 if units == "inch" else 2e-6) - 1e-12
    tick = 2.54e-6 if units == "inch" else 1e-6
    falls = (ends[0][0] - ends[2][0], made.numbers["taper_length_m"] / 2000)
    assert falls[0] == pytest.approx(falls[1], abs=tick + 1e-12)
    show = Show(units)
    (grid,) = (
        b
        for s in made.papers.sheets
        for b in s.blocks
        if isinstance(b, Grid) and b.heading == "What is measured"
    )
    wanted = {row[0]: row[1] for row in grid.rows}
    assert wanted["at the leading face"] == show.band(*ends[1], "bore")


def test_short_work_is_with_care_because_its_window_is_a_hands() -> None:
    """8 mm at 1 in 2000: 2 µm over the bore and it starts by hand by 4 mm, half of it."""
    asked = ("make", "soft", "--bore", "6mm", "--json", "--length")
    short, long = (json.loads(ran(*asked, length).out) for length in ("8mm", "30mm"))
    assert short["verdict"] == "with care"
    assert "2 µm" in short["reason"]
    assert short["grip_high_m"] - short["grip_low_m"] >= 2e-6 - 1e-12
    assert short["grip_low_m"] > 0
    assert long["verdict"] == "yes"


def test_lengths_in_an_inch_shop_are_fractions_on_the_drawing_and_in_the_route() -> None:
    for along in part("inch").along:
        assert "." not in limits_text(along.limits, Look("inch")), along
    assert re.search(r"Ends turned to \d+/\d+ in", told(*TURNED))


def test_no_hammer_is_told_a_force_and_none_strikes_what_the_chuck_holds() -> None:
    between, chucked = told(*TURNED), told(*TURNED, "--held", "chuck")
    assert "hammer with no more than" not in between
    assert "soft hammer" in between
    assert "soft hammer" not in chucked
    assert "No hammer" in chucked
    assert "tailstock" in chucked
    assert "hangs on one screw" not in chucked


def test_a_larger_hub_never_loses_the_screw_that_a_smaller_one_had() -> None:
    codes = [
        ran(*DRAWN, "--outside", f"{outside}in").code
        for outside in (0.65, 0.75, 0.9, 1.0, 1.5, 2.5, 4, 6)
    ]
    assert codes == sorted(codes, reverse=True)  # 3, the answer no, then 0
    assert {codes[0], codes[-1]} == {3, 0}
    assert "open the hole from outside" in told(*DRAWN, "--outside", "6in")


def test_a_hub_without_room_is_told_the_least_that_has_room_and_that_one_has() -> None:
    done = ran(*DRAWN, "--outside", "0.65in", "--json")
    assert done.code == 3
    reason = json.loads(done.out)["reason"]
    found = re.search(r"a hub ([0-9.]+|(?:\d+ )?\d+/\d+) in .* across", reason)
    assert found, reason
    least = float(found[1]) if "/" not in found[1] else 0.0
    assert least > 0.65
    assert ran(*DRAWN, "--outside", f"{least + 0.01:.3f}in").code == 0


def test_a_bar_that_was_measured_is_told_its_size_and_one_runout(tmp_path: Path) -> None:
    words = told(*DRAWN, "--outside", "1.5in", "--bar", "0.6245in")
    assert "is its name" not in words
    assert "Use 0.6245 in" in words
    assert not re.search(r"(\d+\.\d+) to \1 in", words)
    assert "scaled from the listed" not in words
    assert "is its name, not its size" in told(*DRAWN, "--outside", "1.5in")


def test_a_step_of_the_staircase_is_an_inch_in_both_units() -> None:
    words = told(*TURNED)
    assert "1 in (25.4 mm)" in words
    assert "25.5 mm" not in words
