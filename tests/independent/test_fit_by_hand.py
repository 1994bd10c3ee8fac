"""`fit --json` against the same fit worked from the definitions in `hand_fit`.

A broken model goes red here: see tests/mutants.py, which breaks it on purpose.
"""

from __future__ import annotations

import json

import pytest
from mpmath import mpf
from tests.cli_run import ran
from tests.independent.hand_fit import Hand

SAME = 1e-9
"""Both routes are exact but for rounding: the package adds doubles, the hand integrates 30 digits."""
PUSHED = 1e-7
"""The travel for a push is found by halving, here and there, so it agrees less finely."""

IRON, ALUMINIUM, BRONZE = ("100e9", "0.26"), ("69e9", "0.33"), ("105e9", "0.34")
HARD, SOFT = ("207e9", "0.29"), ("190e9", "0.31")

PLAIN = Hand(
    "0.01801", "0.01799", "0.0005", "0.110", "0.12", "0", IRON, HARD, (("0", "0.030", "0.040"),)
)
ROUGH = Hand(
    "0.01801", "0.01799", "0.0005", "0.110", "0.09", "8", IRON, HARD, (("0", "0.030", "0.040"),)
)
INCHES = Hand(
    "0.0158877", "0.0158623", "0.0005", "0.10795", "0.15", "3", ALUMINIUM, SOFT,
    (("0", "0.028575", "0.066675"),),
)  # fmt: skip
WEBBED = Hand(
    "0.025415", "0.0253746", "0.0005", "0.150", "0.11", "2", IRON, HARD,
    (("0", "0.012", "0.050"), ("0.012", "0.020", "0.180"), ("0.020", "0.040", "0.050")),
)  # fmt: skip
WEBBED_PIECES = "0mm,40mm,50mm; 12mm,20mm,160mm,50mm; 0mm,40mm,180mm,160mm"
"""Hub, web and rim: the rim is continuous with the bore only where the web reaches it."""
FLANGED = Hand(
    "0.012712", "0.0126873", "0.00052", "0.0914", "0.2", "0", BRONZE, HARD,
    (("0", "0.006", "0.060"), ("0.006", "0.022", "0.019")),
)  # fmt: skip
FLANGED_PIECES = "0mm,22mm,19mm; 0mm,6mm,60mm,19mm"
THIN = Hand(
    "0.0300",
    "0.02997",
    "0.001",
    "0.120",
    "0.1",
    "1",
    ALUMINIUM,
    HARD,
    (("0", "0.015", "0.0325"),),
)
OVERHUNG = Hand(
    "0.01801", "0.01799", "0.0005", "0.110", "0.12", "1", IRON, HARD,
    (("0.005", "0.012", "0.040"), ("0.012", "0.018", "0.070"), ("0.018", "0.027", "0.040")),
)  # fmt: skip
OVERHUNG_PIECES = "5mm,27mm,40mm; 12mm,18mm,60mm,40mm; 0mm,32mm,70mm,60mm"
"""A rim wider than its hub on both sides: the bore begins 5 mm in from the leading face."""

CASES = {
    "plain, part of its length gripped": (PLAIN, None, "--travel", "0.025"),
    "plain, all of its length gripped": (PLAIN, None, "--travel", "0.045"),
    "plain, put at a position": (PLAIN, None, "--position", "0.0625"),
    "rough, pressed by force": (ROUGH, None, "--push", "1500"),
    "an inch wheel, pressed by force": (INCHES, None, "--push", "4448.2216152605"),
    "webbed, gripped up to the web": (WEBBED, WEBBED_PIECES, "--travel", "0.021"),
    "webbed, gripped past the web": (WEBBED, WEBBED_PIECES, "--travel", "0.050"),
    "flanged, by position": (FLANGED, FLANGED_PIECES, "--position", "0.0675"),
    "a rim that overhangs its hub": (OVERHUNG, OVERHUNG_PIECES, "--travel", "0.020"),
    "a rim that overhangs the large end": (OVERHUNG, OVERHUNG_PIECES, "--travel", "0.069"),
    "a rim over its hub, by force": (OVERHUNG, OVERHUNG_PIECES, "--push", "2500"),
    "a thin ring on a steeper taper": (THIN, None, "--travel", "0.030"),
    "past the large end, still gripping": (PLAIN, None, "--travel", "0.080"),
}


def fitted(
    hand: Hand, pieces: str | None, setting: str, value: str
) -> tuple[int, dict[str, object]]:
    """`fit --json` with everything given, in units that need no conversion but metres to mm."""
    shape = (
        ["--outline", pieces]
        if pieces
        else ["--outside", f"{hand.rings[0][2]}m", "--length", f"{hand.rings[0][1]}m"]
    )
    asked = [
        "fit", "--model", "rings", "--json", "--bore", f"{hand.bore}m", "--mandrel", f"{hand.small_end}m", *shape,
        "--small-end", f"{hand.small_end}m", "--taper", hand.taper, "--friction", hand.friction,
        "--ground-length", f"{hand.ground}m", "--roughness", f"{hand.rz_um}um",
        "--work-modulus", f"{hand.work[0]}Pa", "--work-poisson", hand.work[1],
        "--mandrel-modulus", f"{hand.mandrel[0]}Pa", "--mandrel-poisson", hand.mandrel[1],
        setting, f"{value}{'N' if setting == '--push' else 'm'}",
    ]  # fmt: skip
    done = ran(*asked)
    assert done.code in (0, 3), done.err
    return done.code, json.loads(done.out)


def travel_by_hand(hand: Hand, setting: str, value: str) -> mpf:
    if setting == "--travel":
        return mpf(value)
    return mpf(value) - hand.touch if setting == "--position" else hand.travel_for(value)


@pytest.mark.parametrize(("hand", "pieces", "setting", "value"), CASES.values(), ids=CASES)
def test_the_fit_is_what_the_definitions_give(
    hand: Hand, pieces: str | None, setting: str, value: str
) -> None:
    code, told = fitted(hand, pieces, setting, value)
    travel = travel_by_hand(hand, setting, value)
    within = PUSHED if setting == "--push" else SAME
    assert told.pop("assumed") == []
    low, high = hand.window(travel)
    window = told.pop("bore_window_m")
    assert window == {
        "low": pytest.approx(float(low), rel=within),
        "high": pytest.approx(float(high), rel=within),
    }
    expected = {key: float(value) for key, value in hand.answer(travel).items()}
    assert told == pytest.approx(expected, rel=within, abs=1e-15)
    near = hand.touch + travel - hand.start
    assert code == (0 if hand.length <= near <= mpf(hand.ground) else 3)


@pytest.mark.parametrize("push", ["1000", "2000", "4000"])
def test_a_push_comes_back_as_the_push_on_force(push: str) -> None:
    _, told = fitted(ROUGH, None, "--push", push)
    assert told["push_on_force_N"] == pytest.approx(float(push), rel=PUSHED)


def test_the_hand_sees_a_webs_stiffness() -> None:
    """So that the webbed cases could not pass with the web left out."""
    hub_only = Hand(*(*list(vars(WEBBED).values())[:-1], (("0", "0.040", "0.050"),)))
    assert WEBBED.normal(mpf("0.05")) > hub_only.normal(mpf("0.05")) * mpf("1.01")
