"""The tables themselves: every number has a unit, a source, a band that is a band, and a row."""

from __future__ import annotations

import csv
import tomllib
from typing import get_args

import pytest

from borewright.errors import UnknownName
from borewright.quantities import si
from borewright.reference import SOURCE_KINDS, Tables, describe_table, table_names
from borewright.reference.certificate import read_certificate
from borewright.reference.checks import check_rows
from borewright.reference.library import DATA
from borewright.reference.table import read_rows

LIBRARY = Tables()
SI_SYMBOLS = {
    get_args(alias)[1].symbol
    for alias in vars(si).values()
    if get_args(alias) and isinstance(get_args(alias)[1], si.Unit)
}
# Units that tables need and records do not; N/mm² is how the cutting-force law is written.
TABLE_SYMBOLS = SI_SYMBOLS | {"N/mm²", "J/m³", "1/rad", "min", "N·m/rad"}
NUMBERS = ("number", "number-or-empty")
ALL = LIBRARY.table("materials").column("id")
WORK = LIBRARY.work_materials()
# Hardened work has no speed for high-speed steel: it does not cut it.
HARD = [m for m in WORK if LIBRARY.material(m).cut_class == "hard-steel"]
SOFT = [m for m in WORK if m not in HARD]
PROPERTIES = (
    "modulus",
    "poisson",
    "expansion",
    "density",
    "heat_capacity",
    "conductivity",
    "yield",
    "tensile",
)


def raw(name: str) -> tuple[list[str], list[dict[str, str]]]:
    """Header and rows as the file has them, read without the package's own reader."""
    with (DATA / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        reader = csv.DictReader(file)
        rows = list(reader)
        return list(reader.fieldnames or ()), rows


def certificate(name: str) -> dict:
    return tomllib.loads((DATA / f"{name}.toml").read_text("utf-8"))


SOURCES = {row["id"]: row for row in raw("sources")[1]}


def test_every_table_has_a_certificate_and_no_certificate_stands_alone() -> None:
    assert {p.stem for p in DATA.glob("*.toml")} == {p.stem for p in DATA.glob("*.csv")}


@pytest.mark.parametrize("name", table_names())
def test_certificate_says_what_where_from_how_sure_and_under_which_licence(name: str) -> None:
    stated = certificate(name)
    for field in ("title", "answers", "provenance", "uncertainty", "licence"):
        assert stated[field].strip(), field
    assert stated["kind"] in ("measured", "defined", "practice", "memory", "ours", "mixed")
    assert stated["version"] >= 1


@pytest.mark.parametrize("name", table_names())
def test_certificate_names_every_column_with_its_unit_and_meaning(name: str) -> None:
    header, _ = raw(name)
    columns = certificate(name)["columns"]
    assert [c["name"] for c in columns] == header
    for column in columns:
        assert column["meaning"].strip()
        allowed = TABLE_SYMBOLS | {"see column unit"} if column["kind"] in NUMBERS else {"none"}
        if column["kind"] != "unit":
            assert column["unit"] in allowed or column["name"] == "order", column["name"]


@pytest.mark.parametrize("name", [n for n in table_names() if "unit_of" in certificate(n)])
def test_rows_carry_the_si_unit_that_the_certificate_gives_their_kind(name: str) -> None:
    stated = certificate(name)
    assert set(stated["units"].values()) <= TABLE_SYMBOLS
    for row in raw(name)[1]:
        assert row["unit"] == stated["units"][row[stated["unit_of"]]]


@pytest.mark.parametrize("name", [n for n in table_names() if n != "sources"])
def test_every_row_cites_a_source_that_exists(name: str) -> None:
    header, rows = raw(name)
    cited = [column for column in header if column == "source" or column.endswith("_source")]
    assert cited
    assert {row[column] for row in rows for column in cited} <= set(SOURCES)


@pytest.mark.parametrize("source", SOURCES)
def test_a_source_says_plainly_what_kind_of_word_it_is(source: str) -> None:
    kind, citation = SOURCES[source]["kind"], SOURCES[source]["citation"]
    assert kind in SOURCE_KINDS
    assert (citation == "common practice, no source") == (kind == "practice")
    assert ("from memory" in citation) == (kind == "memory")
    assert citation.startswith("our own") == (kind == "ours")
    assert citation.strip()


def test_no_source_stands_there_for_show() -> None:
    cited = {
        row[column]
        for name in table_names()
        for row in raw(name)[1]
        for column in row
        if column == "source" or column.endswith("_source")
    }
    # Cited in words by rows and sheets, not by a row of numbers yet.
    spoken = {"iso-3002"}
    assert set(SOURCES) - cited == spoken


@pytest.mark.parametrize("name", table_names())
def test_bands_run_from_low_by_best_to_high(name: str) -> None:
    header, rows = raw(name)
    heads = [column[: -len("low")] for column in header if column.endswith("low")]
    for row in rows:
        for head in heads:
            if f"{head}best" in row:
                low, best, high = (float(row[head + end]) for end in ("low", "best", "high"))
                assert low <= best <= high, row


@pytest.mark.parametrize("name", table_names())
def test_no_key_stands_twice(name: str) -> None:
    keys = [tuple(row[part] for part in certificate(name)["key"]) for row in raw(name)[1]]
    assert len(set(keys)) == len(keys)


@pytest.mark.parametrize("name", table_names())
def test_every_table_reads_and_shows_itself_with_the_sources_it_cites(name: str) -> None:
    view = describe_table(name, LIBRARY)
    header, rows = raw(name)
    assert len(view.rows) == len(rows)
    assert len(view.headers) == len(header)
    shown = view.as_dict()
    assert list(shown["rows"][0]) == header
    assert {source["id"] for source in shown["sources"]} <= set(SOURCES)
    assert name == "sources" or shown["sources"]


@pytest.mark.parametrize("material", ALL)
@pytest.mark.parametrize("quantity", PROPERTIES)
def test_every_material_has_every_property(material: str, quantity: str) -> None:
    found = LIBRARY.material_range(material, quantity)
    assert 0 < found.low <= found.best <= found.high


@pytest.mark.parametrize("material", ALL)
def test_tensile_strength_is_above_yield_for_every_material(material: str) -> None:
    yields, parts = (LIBRARY.material_range(material, p) for p in ("yield", "tensile"))
    assert yields.best < parts.best
    assert yields.low < parts.low
    assert yields.high < parts.high


@pytest.mark.parametrize("material", WORK)
def test_every_work_material_can_be_pressed_and_cut(material: str) -> None:
    for lubrication in ("oiled", "dry"):
        assert 0 < LIBRARY.friction(material, lubrication).mu_on.best < 1
    assert LIBRARY.kienzle(material).kc11.unit == "N/mm²"
    assert 0 < LIBRARY.kienzle(material).mc.best < 1
    assert LIBRARY.cutting_ratio(material).resultant.best < 1
    cuts = LIBRARY.cut_defaults(material)
    for tool in {"carbide", cuts.tool}:
        assert LIBRARY.cutting_speed(material, tool).unit == "m/s"
    assert cuts.finish_depth < cuts.rough_depth < 0.0021
    assert cuts.finish_feed < cuts.rough_feed


@pytest.mark.parametrize("material", WORK)
def test_dry_grips_harder_than_oiled(material: str) -> None:
    oiled, dry = (LIBRARY.friction(material, state).mu_on for state in ("oiled", "dry"))
    assert oiled.best < dry.best


@pytest.mark.parametrize("material", SOFT)
def test_carbide_runs_faster_than_hss(material: str) -> None:
    slow, fast = (LIBRARY.cutting_speed(material, tool) for tool in ("hss", "carbide"))
    assert slow.best < fast.best


@pytest.mark.parametrize("material", HARD)
def test_hardened_work_has_no_speed_for_hss_and_is_not_given_it(material: str) -> None:
    assert LIBRARY.cut_defaults(material).tool == "carbide"
    with pytest.raises(UnknownName, match="allowed is one of: carbide"):
        LIBRARY.cutting_speed(material, "hss")


@pytest.mark.parametrize("material", ALL)
def test_poissons_ratio_and_density_are_those_of_a_solid(material: str) -> None:
    assert (
        LIBRARY.material_range(material, "poisson").high < 0.6
    )  # wood passes a half across the grain
    assert 400 < LIBRARY.material_range(material, "density").best < 9000


def test_there_are_enough_materials_for_a_small_shop() -> None:
    assert len(WORK) >= 32


def test_speeds_say_the_same_in_feet_a_minute_and_in_metres_a_second() -> None:
    for row in raw("cutting_speeds")[1]:
        shop = [float(x) for x in row["as_practised"].removesuffix(" ft/min").split(",")]
        metric = [float(row[end]) for end in ("low", "best", "high")]
        assert metric == pytest.approx([x * 0.3048 / 60 for x in shop], rel=1e-9)


def test_cautions_that_materials_call_up_exist() -> None:
    known = {row["id"] for row in raw("cautions")[1]}
    called = {c for row in raw("materials")[1] for c in row["cautions"].split(";")}
    assert called <= known


def test_groups_of_the_published_energy_table_name_known_work_materials() -> None:
    named = [m for row in raw("specific_energy")[1] for m in row["materials"].split(";")]
    assert len(set(named)) == len(named)
    assert set(named) <= set(WORK)


@pytest.mark.parametrize("name", table_names())
def test_every_row_of_ours_is_what_its_certificate_allows(name: str) -> None:
    """The library does not check its own tables at every start: this does."""
    stated = read_certificate(DATA, name)
    known = frozenset() if name == "sources" else frozenset(LIBRARY.table("sources").column("id"))
    check_rows(read_rows(DATA / f"{name}.csv", stated), stated, known)
