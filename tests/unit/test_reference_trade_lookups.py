"""Looking up what the trade sells: names in any spelling, what is unknown, sizes beyond a table."""

from __future__ import annotations

from math import nan

import pytest

from borewright.errors import OutsideModel, UnknownName, UnreadableQuantity
from borewright.reference import Tables

LIBRARY = Tables()
INCH = 0.0254


@pytest.mark.parametrize(
    ("name", "means"),
    [
        ("1/4", "1/4 in"),
        ('1/4"', "1/4 in"),
        ("1 in", "1 in"),
        ("1", "#1"),
        ("No. 7", "#7"),
        ("letter f", "F"),
        ("6.8mm", "6.8 mm"),
        ("6.0 mm", "6 mm"),
    ],
)
def test_a_drill_is_found_however_it_is_written(name: str, means: str) -> None:
    assert LIBRARY.drill(name).id == means


def test_there_is_every_drill_of_every_series() -> None:
    counts = {s: len(LIBRARY.drills(s)) for s in ("fraction", "number", "letter", "metric")}
    assert counts == {"fraction": 64, "number": 80, "letter": 26, "metric": 126}
    assert len(LIBRARY.drills()) == sum(counts.values())


def test_drills_and_reamers_come_small_to_large() -> None:
    for tools in (LIBRARY.drills(), LIBRARY.reamers(), LIBRARY.reamers("metric")):
        assert [t.size for t in tools] == sorted(t.size for t in tools)


def test_a_name_in_millimetres_or_inches_is_the_size() -> None:
    for tool in (*LIBRARY.drills("metric"), *LIBRARY.reamers("metric")):
        assert tool.size == pytest.approx(float(tool.id.removesuffix(" mm")) * 1e-3)


@pytest.mark.parametrize(
    ("ask", "says"),
    [
        (lambda: LIBRARY.drill("#81"), "drill: found '#81'"),
        (lambda: LIBRARY.drills("wire"), "drill series: found 'wire'"),
        (lambda: LIBRARY.reamer("1/3 in"), "reamer: found '1/3 in'"),
        (lambda: LIBRARY.reaming("hand_reamer_ovr"), "allowed is 'hand_reamer_over'"),
        (lambda: LIBRARY.process("polishing by cat"), "process: found"),
        (lambda: LIBRARY.crown("dolly", 0.1, 0.05), "crown rule: found 'dolly'"),
        (lambda: LIBRARY.set_screw("#7"), "table set_screws, id"),
        (lambda: LIBRARY.dog("9 in"), "dog: found '9 in'"),
        (lambda: LIBRARY.center("C 2"), "table centers, id"),
        (lambda: LIBRARY.centers("iso-c"), "center series: found 'iso-c'"),
        (lambda: LIBRARY.shrinkages("acetal"), "pattern shrinkage of: found 'plastic'"),
        (lambda: LIBRARY.force_points("brass"), "raw force points of: found 'brass-c360'"),
        (lambda: LIBRARY.limits("z7", 0.05), "letter: found 'z'"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_an_unknown_name_is_one_sentence(ask, says: str) -> None:
    with pytest.raises(UnknownName) as refusal:
        ask()
    assert says in str(refusal.value)
    assert "\n" not in str(refusal.value)


@pytest.mark.parametrize("code", ["", "7", "H", "H7x", "50 H7"])
def test_a_tolerance_that_does_not_read_as_one_is_refused(code: str) -> None:
    with pytest.raises(UnreadableQuantity, match="such as H7 or s6"):
        LIBRARY.limits(code, 0.05)


@pytest.mark.parametrize(
    "ask",
    [
        lambda: LIBRARY.limits("H7", 0.1201),
        lambda: LIBRARY.limits("H7", 0.0),
        lambda: LIBRARY.limits("H7", nan),
        lambda: LIBRARY.limits("H12", 0.05),
        lambda: LIBRARY.limits("s4", 0.05),
        lambda: LIBRARY.crown("iso-22", 0.8, 0.05),
        lambda: LIBRARY.crown("iso-22", 0.03, 0.05),
        lambda: LIBRARY.crown("dooley", 0.1, -0.05),
        lambda: LIBRARY.crowns(nan, 0.05),
        lambda: LIBRARY.expanding(0.3),
        lambda: LIBRARY.expanding(nan),
        lambda: LIBRARY.reamer_for(0.05, 0.0),
        lambda: LIBRARY.metric_mandrel_row(0.0),
    ],
)
def test_a_size_beyond_the_table_is_refused(ask) -> None:
    with pytest.raises(OutsideModel):
        ask()


@pytest.mark.parametrize("size", [0.002, 0.0059, 0.02, 0.055, 0.09, 0.12])
def test_holes_mirror_shafts(size: float) -> None:
    for letter in "FGH":
        hole, shaft = (LIBRARY.limits(f"{case}7", size) for case in (letter, letter.lower()))
        assert (hole.lower, hole.upper) == pytest.approx((-shaft.upper, -shaft.lower))


@pytest.mark.parametrize("size", [0.004, 0.012, 0.025, 0.045, 0.06, 0.07, 0.09, 0.11])
def test_letters_run_from_loose_to_tight(size: float) -> None:
    lower = [LIBRARY.limits(f"{letter}6", size).lower for letter in "fghknprs"]
    assert lower == sorted(lower)
    assert len(set(lower)) == len(lower)


def test_k_is_on_the_line_from_grade_eight_on() -> None:
    assert LIBRARY.limits("k8", 0.05).lower == 0.0
    assert LIBRARY.limits("k7", 0.05).lower > 0.0


def test_limits_say_the_sizes_and_both_sources() -> None:
    limits = LIBRARY.limits(" s 6 ", 0.05)
    assert (limits.code, limits.sources) == ("s6", ("iso-286", "machine-drawing"))
    assert limits.largest - limits.smallest == pytest.approx(16e-6)


def test_every_crown_rule_is_found_by_any_of_its_names_and_rises_with_the_face() -> None:
    for row in LIBRARY.table("crowns").rows:
        for name in (row.text("rule"), *row.names("names")):
            narrow, wide = (LIBRARY.crown(name, 0.1, face) for face in (0.04, 0.08))
            assert narrow.rule == row.text("rule")
            assert wide.height == pytest.approx(narrow.height * (2 if row.text("slope") else 1))


def test_a_dog_takes_what_lies_between_its_ends() -> None:
    fitting = LIBRARY.dogs_for(0.5 * INCH)
    assert fitting[0].id == "1/2 in"
    assert all(dog.smallest <= 0.5 * INCH <= dog.largest for dog in fitting)
    assert LIBRARY.dogs_for(1.0) == ()


def test_a_screw_holds_more_the_larger_it_is() -> None:
    names = LIBRARY.table("set_screws").column("id")
    screws = sorted(map(LIBRARY.set_screw, names), key=lambda screw: screw.diameter)
    held = [screw.holding.best for screw in screws]
    assert held == sorted(held)


@pytest.mark.parametrize("size", LIBRARY.table("plain_mandrels_metric").column("size"))
def test_a_metric_mandrel_is_listed_with_its_nominal_on_the_ground_part(size: str) -> None:
    mandrel = LIBRARY.metric_mandrel_row(float(size.removesuffix(" mm")) * 1e-3)
    assert mandrel.how == "listed"
    assert mandrel.end_diameter < mandrel.small_end < mandrel.nominal < mandrel.large_end
    assert mandrel.ground_length + 2 * mandrel.end_length == pytest.approx(mandrel.overall_length)
    assert "no metric standard" in mandrel.note
    assert set(mandrel.sources) == {"practice", "ours"}


def test_magnesium_is_handed_out_with_its_fire_caution() -> None:
    for name in ("az31", "magnesium casting"):
        said = {caution.id: caution.text for caution in LIBRARY.cautions(material=name)}
        assert "no water" in said["magnesium-fire"]
        assert "class D" in said["magnesium-fire"]


def test_one_word_for_a_tool_steel_hard_and_soft_tells_them_apart() -> None:
    soft, hard = LIBRARY.material("o1"), LIBRARY.material("hardened O1")
    assert (soft.id, hard.id) == ("tool-steel-o1-annealed", "tool-steel-o1-hardened")
    assert "hard-work" in {c.id for c in LIBRARY.cautions("turning", material="hardened O1")}
