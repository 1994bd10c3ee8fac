"""Looking up: names in any spelling, what is unknown, mandrels between sizes, cautions in order."""

from __future__ import annotations

import re
import subprocess
import sys
from math import inf

import pytest

from borewright.errors import OutsideModel, UnknownName
from borewright.reference import Tables, describe_table, table_lines, tables
from borewright.reference.shown_sizes import in_shop_units

LIBRARY = Tables()
INCH = 0.0254


@pytest.mark.parametrize(
    ("name", "means"),
    [
        ("gray-iron-30", "gray-iron-30"),
        ("Grey Cast Iron", "gray-iron-30"),
        ("cast_iron", "gray-iron-30"),
        ("mild steel", "steel-1018"),
        ("EN3B", "steel-1018"),
        ("080M15", "steel-1018"),
        ("EN1A leaded", "steel-12l14"),
        ("6061-T6", "al-6061-t6"),
        ("cast aluminum", "al-cast"),
        ("scrap aluminium", "al-scrap-cast"),
        ("CZ121", "brass-c360"),
        ("SAE 660", "bronze-sae-660"),
        ("EN8", "steel-1045"),
        ("EN19T", "steel-4140-hardened"),
        ("gauge plate", "tool-steel-o1-annealed"),
        ("Drill Rod", "silver-steel"),
        ("EN58E", "stainless-304"),
        ("HE30", "al-6082-t6"),
        ("A356-T6", "al-cast"),
        ("AZ91D", "mg-az91"),
        ("SG iron", "ductile-iron-65-45-12"),
        ("class 40", "gray-iron-40"),
        ("PB1", "bronze-pb1"),
        ("Gunmetal", "gunmetal-lg2"),
        ("CZ112", "brass-c464"),
        ("POM", "acetal"),
        ("beech", "hardwood-maple"),
    ],
)
def test_trade_and_uk_names_find_the_material(name: str, means: str) -> None:
    assert LIBRARY.material(name).id == means


def test_an_unknown_material_is_refused_with_the_nearest() -> None:
    with pytest.raises(
        UnknownName, match="allowed is 'gray-iron-30' or one of: acetal, al-2011-t3"
    ):
        LIBRARY.material("gray-irn-30")


def test_plain_aluminium_is_the_careful_one_and_known_to_be_a_broad_word() -> None:
    assert LIBRARY.material("aluminium").id == "al-scrap-cast"
    assert LIBRARY.broad_material("aluminium") is not None


@pytest.mark.parametrize(
    ("ask", "says"),
    [
        (lambda: LIBRARY.table("frictoin"), "table: found 'frictoin'; allowed is 'friction'"),
        (lambda: LIBRARY.material_range("brass", "modulos"), "property of brass-c360"),
        (lambda: LIBRARY.friction("brass", "greased"), "lubrication: found 'greased'"),
        (lambda: LIBRARY.cutting_speed("brass", "hs"), "allowed is 'hss'"),
        (
            lambda: LIBRARY.gauge("calliper"),
            "measured with: found 'calliper'; allowed is 'caliper'",
        ),
        (lambda: LIBRARY.press("arber press"), "allowed is 'arbor-press'"),
        (lambda: LIBRARY.roughness("polished by cat"), "made by: found 'polished by cat'"),
        (lambda: LIBRARY.allowance("touch_posh"), "allowed is 'touch_push'"),
        (lambda: LIBRARY.formula("push_no"), "allowed is 'push_on'"),
        (lambda: LIBRARY.kienzle("hard mandrel"), "table kienzle, material"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_an_unknown_name_is_one_sentence_with_where_and_the_nearest(ask, says: str) -> None:
    with pytest.raises(UnknownName) as refusal:
        ask()
    assert says in str(refusal.value)
    assert "\n" not in str(refusal.value)


@pytest.mark.parametrize("name", ["guess", "Don't know", "unknown", "by eye"])
def test_not_knowing_how_it_was_measured_is_an_answer(name: str) -> None:
    assert LIBRARY.gauge(name).half_band > LIBRARY.gauge("caliper").half_band


def test_two_points_cannot_see_lobes_and_a_plug_can() -> None:
    assert not LIBRARY.gauge("dial bore gauge").sees_lobes
    assert LIBRARY.gauge("plug").sees_lobes
    assert LIBRARY.gauge("three point").sees_lobes


def test_friction_is_found_by_material_or_by_family() -> None:
    assert LIBRARY.friction("al-6061-t6", "wiped oil film") == LIBRARY.friction("aluminium")


def test_a_range_tells_the_source_of_its_ends_apart_from_that_of_its_middle() -> None:
    expansion = LIBRARY.material_range("al-6061-t6", "expansion")
    assert expansion.sources == ("swyt-1994", "handbook-memory")


def test_no_low_end_margin_asked_reads_as_minus_infinity() -> None:
    assert LIBRARY.threshold("bore").care_low == -inf
    assert LIBRARY.threshold("push").care_low > 0


def test_a_listed_mandrel_is_said_to_be_listed() -> None:
    mandrel = LIBRARY.mandrel_row(5 / 8 * INCH)
    assert mandrel.how == "listed"
    assert mandrel.note == ""
    assert mandrel.large_end == pytest.approx(
        mandrel.small_end + mandrel.ground_length * mandrel.taper
    )
    assert mandrel.ground_length + 2 * mandrel.end_length == pytest.approx(mandrel.overall_length)


def test_a_mandrel_between_sizes_lies_between_them_and_says_so() -> None:
    below, mandrel, above = (LIBRARY.mandrel_row(d) for d in (0.6875 * INCH, 0.018, 0.75 * INCH))
    assert below.overall_length < mandrel.overall_length < above.overall_length
    assert mandrel.how == "interpolated"
    assert "11/16 in and 3/4 in" in mandrel.note
    assert "ours-interpolated" in mandrel.sources


def test_the_amount_under_size_is_never_blended_across_one_inch() -> None:
    almost, one, over = (LIBRARY.mandrel_row(d * INCH) for d in (0.99, 1.0, 1.01))
    under = [(m.nominal - m.small_end) / INCH for m in (almost, one, over)]
    assert under == pytest.approx([0.0005, 0.001, 0.001])


@pytest.mark.parametrize(("nominal", "end"), [(0.002, 0.125 * INCH), (0.06, 2 * INCH)])
def test_a_mandrel_beyond_the_list_is_scaled_and_says_so(nominal: float, end: float) -> None:
    mandrel, last = LIBRARY.mandrel_row(nominal), LIBRARY.mandrel_row(end)
    assert mandrel.how == "scaled"
    assert mandrel.note.startswith("assumed")
    assert mandrel.ground_length / mandrel.nominal == pytest.approx(last.ground_length / end)
    assert mandrel.taper == last.taper


@pytest.mark.parametrize("nominal", [0.0, -0.01, float("nan"), float("inf")])
def test_a_mandrel_of_no_size_is_refused(nominal: float) -> None:
    with pytest.raises(OutsideModel, match="nominal size"):
        LIBRARY.mandrel_row(nominal)


@pytest.mark.parametrize("size", LIBRARY.table("plain_mandrels").column("size"))
def test_every_listed_mandrel_has_ends_that_clear_the_bore(size: str) -> None:
    nominal = LIBRARY.table("plain_mandrels").row(size).number("nominal")
    mandrel = LIBRARY.mandrel_row(nominal)
    assert mandrel.how == "listed"
    assert mandrel.end_diameter < mandrel.small_end < mandrel.nominal < mandrel.large_end


def test_cautions_come_worst_first_and_codes_stand_above_all() -> None:
    said = LIBRARY.cautions("mandrel", "dog", "press", material="cast iron")
    assert said[0].text.startswith("Local codes and licensed practice come first")
    assert [c.order for c in said] == sorted(c.order for c in said)
    assert {"press-brittle", "iron-dust", "dog-sweeps"} <= {c.id for c in said}


def test_a_caution_of_two_tags_needs_both() -> None:
    assert "press-brittle" not in {c.id for c in LIBRARY.cautions("mandrel", material="iron")}
    assert "press-brittle" not in {c.id for c in LIBRARY.cautions("press", material="steel")}


def test_every_way_is_computed_and_all_but_the_mandrel_say_when_they_serve_better() -> None:
    ways = LIBRARY.ways()
    assert all(way.computed for way in ways)
    assert all("better" in way.serves_better for way in ways if way.id != "plain-taper")


@pytest.mark.parametrize("formula", LIBRARY.table("formulas").column("id"))
def test_every_rule_has_a_sum_symbols_a_source_and_a_weakness(formula: str) -> None:
    found = LIBRARY.formula(formula)
    assert "=" in found.rule
    assert found.symbols
    assert found.weakness.endswith(".")
    assert LIBRARY.source(found.source).citation


def test_a_view_prints_units_in_its_headers_and_sources_below() -> None:
    lines = table_lines(describe_table("plain_mandrels", LIBRARY))
    assert any("ground_length [in]" in line for line in lines)
    assert any("Griswold" in line for line in lines)
    assert any("size [m]" in line for line in table_lines(describe_table("drills", LIBRARY)))


def shown_sizes(name: str) -> dict[str, tuple[str, ...]]:
    view = describe_table(name, LIBRARY)
    columns, rows = in_shop_units(view.certificate.columns, view.rows)
    by_column = zip(*rows, strict=True)
    return {f"{c.name} [{c.unit}]": cells for c, cells in zip(columns, by_column, strict=True)}


def test_inch_mandrels_show_nominals_as_fractions_and_all_other_sizes_as_decimals() -> None:
    shown = shown_sizes("plain_mandrels")
    lengths = [head for head in shown if head.endswith("[in]") and head != "nominal [in]"]
    assert len(lengths) == 5
    for size, nominal in zip(shown["size [none]"], shown["nominal [in]"], strict=True):
        assert nominal == size.removesuffix(" in")
    for head in lengths:
        assert len({len(cell.partition(".")[2]) for cell in shown[head]}) == 1, head
        assert all(re.fullmatch(r"\d+\.\d+", cell) for cell in shown[head]), head
    assert not [head for head in shown if head.endswith("[m]")]


@pytest.mark.parametrize(
    ("name", "metres"), [("plain_mandrels", 0.0254), ("plain_mandrels_metric", 0.001)]
)
def test_shown_sizes_are_those_of_the_table_and_its_json_keeps_metres(
    name: str, metres: float
) -> None:
    view, shown = describe_table(name, LIBRARY), shown_sizes(name)
    unit = "in" if metres == 0.0254 else "mm"
    for column in ("overall_length", "ground_length", "small_end_under", "end_diameter"):
        stored = [row[column] for row in view.as_dict()["rows"]]
        read = [float(cell) * metres for cell in shown[f"{column} [{unit}]"]]
        assert read == pytest.approx(stored, rel=1e-9), column
    assert view.headers[1] == "nominal [m]"


def test_rows_named_in_two_units_stay_in_metres() -> None:
    columns = describe_table("plain_mandrels", LIBRARY).certificate.columns[:2]
    mixed = (("1/2 in", "0.0127"), ("16 mm", "0.016"))
    assert in_shop_units(columns, mixed) == (columns, mixed)


@pytest.mark.parametrize("name", ["plain-mandrels", "plain mandrels", "Plain_Mandrels"])
def test_a_table_s_name_may_be_typed_as_words(name: str) -> None:
    assert describe_table(name, LIBRARY).name == "plain_mandrels"


def test_tables_in_use_are_read_once() -> None:
    assert tables() is tables()


def test_looking_up_needs_neither_numpy_nor_pydantic() -> None:
    code = (
        "import sys, borewright.reference as r; r.tables().material('steel');"
        "sys.exit(any(m in sys.modules for m in ('numpy', 'pydantic')))"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
