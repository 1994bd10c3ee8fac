"""Drills and the boring bars on a shelf: read, refused, shown, out of a spreadsheet."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from borewright.errors import RefusedInput
from borewright.job import OwnBoringBar, OwnDrill, Shelf, parse_shelf, read_shelf
from borewright.job.csv_shelf import read_entries
from borewright.job.csv_table import parse_csv
from borewright.job.write_shelf import shelf_text
from borewright.reference import tables
from borewright.service.shelf_read import ShelfFile
from borewright.service.shelf_shown import shelf_lines

EXAMPLE = Path(__file__).parents[2] / "examples" / "hollow-brook-shelf.toml"


def shelf(text: str) -> Shelf:
    return parse_shelf(f'units = "inch"\n{text}', "shelf.toml")


def test_a_set_is_read_by_any_of_its_names_with_its_ends() -> None:
    read = shelf('[[drill]]\nset = "by sixty-fourths"\nsmallest = "1/16"\nlargest = "1in"').drills
    assert read == (OwnDrill(None, "by 64ths", 0.0015875, 0.0254),)


def test_a_single_drill_is_read_by_size_by_number_and_by_letter() -> None:
    read = shelf('[[drill]]\nsize = "39/64"\n[[drill]]\nsize = "#7"\n[[drill]]\nsize = "letter F"')
    inches = [round(drill.size / 0.0254, 6) for drill in read.drills if drill.size]
    assert inches == [0.609375, 0.201, 0.257]
    assert [drill.name for drill in read.drills] == ["", "#7", "letter F"]


def test_a_numbered_drill_survives_writing_and_reading() -> None:
    once = shelf('[[drill]]\nsize = "#7"')
    assert shelf(shelf_text(once).replace('units = "inch"', "")) == once


def test_the_boring_bars_are_read() -> None:
    bar = shelf('[boring_bar]\nsmallest_bore = "3/8in"\nreach = "3in"').boring_bar
    assert bar == OwnBoringBar(0.009525, 0.0762)
    assert shelf("").boring_bar is None
    assert shelf("[boring_bar]").boring_bar == OwnBoringBar()


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("[[drill]]\nname = 'x'", "drill[1]: found neither size nor set; allowed is a drill by its"),
        ("[[drill]]\nsize = '1/4in'\nset = 'letters'", "drill[1]: found both size and set"),
        ("[[drill]]\nset = 'by 48ths'", "drill[1].set: found 'by 48ths'; allowed is"),
        ("[[drill]]\nsize = '#99'", "drill[1].size: found '#99'; allowed is #1 to #80, or a letter"),
        (
            "[[drill]]\nsize = '1/4in'\nlargest = '1in'",
            "drill[1]: found smallest or largest beside a size; allowed is those beside a set only",
        ),
        (
            "[[drill]]\nset = 'letters'\nsmallest = '1in'\nlargest = '1/2in'",
            "drill[1]: found 25.400 mm (1.0000 in) to 12.700 mm",
        ),
        ("[boring_bar]\nreech = '3in'", "[boring_bar] reech: found 'reech'; allowed is 'reach'"),
    ],
)  # fmt: skip
def test_what_no_drill_is_gets_refused_with_its_place(text: str, says: str) -> None:
    with pytest.raises(RefusedInput) as refused:
        shelf(text)
    assert str(refused.value).removeprefix("shelf.toml: ").startswith(says)


def test_a_spreadsheet_of_drills_becomes_records() -> None:
    read = read_entries(
        parse_csv("Drill (mm),Label\n6.8,tap M8\n#7,\n", "d.csv"), "drills", None, None
    )
    assert read.entries[0] == OwnDrill(0.0068, name="tap M8")
    second = read.entries[1]
    assert isinstance(second, OwnDrill)
    assert math.isclose(second.size or 0.0, 0.201 * 0.0254)


def test_shown_in_one_line_each() -> None:
    said = "\n".join(shelf_lines(ShelfFile(str(EXAMPLE), "inch", read_shelf(EXAMPLE)), tables()))
    assert "a set by 64ths; 1/16 in (1.59 mm) to 3/4 in (19.05 mm)" in said
    assert "goes into 3/8 in (9.53 mm); reaches 3 in (76.2 mm)" in said
