"""A shop's own tables replace the built-in ones; a broken one is refused in one sentence."""

from __future__ import annotations

from pathlib import Path

import pytest

from borewright.errors import RefusedInput, UnknownName, UnreadableFile
from borewright.reference import Tables, describe_table, tables
from borewright.reference.library import DATA


def own(folder: Path, name: str, old: str = "", new: str = "") -> Tables:
    """The built-in table with one text changed, in a folder of its own."""
    text = (DATA / f"{name}.csv").read_text("utf-8")
    assert old in text
    (folder / f"{name}.csv").write_text(text.replace(old, new, 1) if old else text, "utf-8")
    return Tables(folder)


TOUCH = "touch_push,10,20,40,N"


def test_an_own_table_replaces_the_built_in_one_and_no_other(tmp_path: Path) -> None:
    library = own(tmp_path, "allowances", TOUCH, "touch_push,15,25,45,N")
    assert library.allowance("touch_push").best == 25
    assert Tables().allowance("touch_push").best == 20
    assert library.material("brass") == Tables().material("brass")
    assert describe_table("allowances", library).own
    assert not describe_table("friction", library).own


def test_the_setting_names_the_folder_of_own_tables(tmp_path: Path, monkeypatch) -> None:
    own(tmp_path, "allowances", TOUCH, "touch_push,15,25,45,N")
    monkeypatch.setenv("BOREWRIGHT_TABLES", str(tmp_path))
    assert tables().allowance("touch_push").best == 25
    monkeypatch.delenv("BOREWRIGHT_TABLES")
    assert tables().allowance("touch_push").best == 20


def test_own_sources_add_to_the_built_in_list(tmp_path: Path) -> None:
    (tmp_path / "sources.csv").write_text(
        "id,kind,citation,note\nour-bench,ours,our own bench,measured here\n", "utf-8"
    )
    library = own(tmp_path, "allowances", f"{TOUCH},5 lbf,ours", f"{TOUCH},5 lbf,our-bench")
    assert library.allowance("touch_push").source == "our-bench"
    assert library.source("griswold").kind == "published"


def test_own_columns_may_stand_in_another_order(tmp_path: Path) -> None:
    (tmp_path / "thresholds.csv").write_text(
        "note,source,care_low,care_likely,yes_low,yes_likely,question\nx,ours,.4,1,2,3,slip\n"
    )
    assert Tables(tmp_path).threshold("slip").yes_likely == 3


BROKEN = [
    ("allowances", "id,low", "id,lowest", "header: found no column low"),
    ("allowances", "unit,", "unit,colour,", "header: found column colour"),
    ("allowances", TOUCH, "touch_push,10,twenty,40,N", "column best: found 'twenty'"),
    ("allowances", TOUCH, "touch_push,10,nan,40,N", "column best: found nan"),
    ("allowances", TOUCH, "touch_push,-10,20,40,N", "number of 0 or more"),
    ("allowances", TOUCH, "touch_push,30,20,40,N", "found 30, 20, 40; allowed is low <= best"),
    ("allowances", TOUCH, "touch_push,10,50,40,N", "found 10, 50, 40; allowed is low <= best"),
    ("allowances", TOUCH, "touch_push,10,20,40,lbf", "column unit: found 'lbf'; allowed is 'N'"),
    ("allowances", TOUCH, "touch_posh,10,20,40,N", "column id: found 'touch_posh'"),
    ("allowances", TOUCH, "touch_push,10,20", "cells; allowed is 8 cells"),
    ("allowances", f"{TOUCH},5 lbf,ours", f"{TOUCH},5 lbf,hearsay", "found 'hearsay'"),
    ("allowances", "dog_clearance,0.006", "tool_clearance,0.006", "a second time"),
    ("materials", ",brittle,", ",crumbly,", "found 'crumbly'; allowed is one of: brittle"),
    ("materials", ",gray-iron,brittle", ",,brittle", "column family: found an empty cell"),
    ("gauges", ",no,no,no,", ",no,maybe,no,", "found 'maybe'; allowed is yes or no"),
    ("kienzle", "850,1100,1400", "0,1100,1400", "column kc11_low"),
    ("sources", "griswold,published", "griswold,rumour", "one of: published"),
]


@pytest.mark.parametrize(("name", "old", "new", "says"), BROKEN, ids=[row[3] for row in BROKEN])
def test_a_broken_table_is_refused_in_one_sentence(
    tmp_path: Path, name: str, old: str, new: str, says: str
) -> None:
    with pytest.raises(UnreadableFile) as refusal:
        own(tmp_path, name, old, new).table(name)
    said = str(refusal.value)
    assert says in said
    assert said.startswith(f"{name}.csv")
    assert "\n" not in said


def test_the_refusal_names_the_line(tmp_path: Path) -> None:
    library = own(tmp_path, "allowances", TOUCH, "touch_push,30,20,40,N")
    lines = (tmp_path / "allowances.csv").read_text("utf-8").splitlines()
    number = 1 + next(i for i, line in enumerate(lines) if line.startswith("touch_push"))
    with pytest.raises(UnreadableFile, match=f"line {number}"):
        library.allowance("touch_push")


@pytest.mark.parametrize("content", [b"", b"id,low\xff", b'id,"low', b"\n\n"])
def test_a_file_that_is_no_table_is_refused(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "allowances.csv").write_bytes(content)
    with pytest.raises(UnreadableFile, match=r"allowances\.csv"):
        Tables(tmp_path).allowance("touch_push")


def test_a_table_of_no_rows_is_refused(tmp_path: Path) -> None:
    header = (DATA / "allowances.csv").read_text("utf-8").splitlines()[0]
    (tmp_path / "allowances.csv").write_text(header + "\n", "utf-8")
    with pytest.raises(UnreadableFile, match="no rows"):
        Tables(tmp_path).allowance("touch_push")


def test_one_name_for_two_rows_is_refused(tmp_path: Path) -> None:
    library = own(tmp_path, "presses", "vice;vise", "vice;vise;hand push")
    with pytest.raises(UnreadableFile, match="'hand push' again"):
        library.press("vice")


def test_a_misspelt_file_name_is_refused_with_the_nearest(tmp_path: Path) -> None:
    (tmp_path / "frictoin.csv").write_text("family\n", "utf-8")
    with pytest.raises(UnknownName, match="allowed is 'friction'"):
        Tables(tmp_path)


def test_a_folder_that_is_not_there_is_refused(tmp_path: Path) -> None:
    with pytest.raises(RefusedInput, match="an existing folder"):
        Tables(tmp_path / "nowhere")
