"""A spreadsheet's rows become tools or are told with line and reason; none is dropped silently."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from borewright.errors import RefusedInput, UnknownName, UnreadableFile
from borewright.job import Machine, MandrelNote, OwnDog, OwnGauge, OwnPress, OwnReamer
from borewright.job.csv_columns import plain_header
from borewright.job.csv_kinds import KINDS
from borewright.job.csv_shelf import CsvRead, read_entries
from borewright.job.csv_table import parse_csv, read_csv
from borewright.quantities.read import System


def read(
    text: str, kind: str = "mandrels", columns: str | None = None, units: System | None = None
) -> CsvRead:
    return read_entries(parse_csv(text, "tools.csv"), kind, columns, units)


def refusal(
    text: str,
    kind: str = "mandrels",
    columns: str | None = None,
    units: System | None = None,
) -> str:
    with pytest.raises(RefusedInput) as caught:
        read(text, kind, columns, units)
    return str(caught.value)


def keys(found: CsvRead) -> dict[str, str]:
    return {m.field.key: m.header for m in found.columns}


# The text


@pytest.mark.parametrize("mark", [",", ";", "\t"])
def test_cells_parted_by_commas_semicolons_or_tabs_read_alike(mark: str) -> None:
    text = f"Name{mark}Size (mm)\nA{mark}12.7\nB{mark}16\n"
    found = read(text)
    assert found.separator == mark
    assert found.entries == (MandrelNote(0.0127, "A"), MandrelNote(0.016, "B"))


def test_a_byte_order_mark_is_no_part_of_the_first_header(tmp_path: Path) -> None:
    path = tmp_path / "tools.csv"
    path.write_bytes("\ufeffSize (mm)\r\n12.7\r\n".encode())
    assert read_csv(path).header == ("Size (mm)",)


def test_quotes_hold_commas_quotes_inches_and_line_ends() -> None:
    text = 'Size,Name,Notes\n"5/8""","the ""old"", long one","worn\nat one end"\n1/2",plain,\n'
    found = read(text)
    assert found.bad == ()
    assert found.entries[0] == MandrelNote(
        0.015875, 'the "old", long one', condition="worn at one end"
    )
    assert found.entries[1].nominal == 0.0127  # type: ignore[union-attr]
    assert found.lines == (2, 4)


def test_with_semicolons_a_comma_is_the_decimal_point() -> None:
    assert read("Size;Name\n12,7mm;A\n").entries == (MandrelNote(0.0127, "A"),)


def test_with_commas_a_comma_in_a_number_stays_doubtful() -> None:
    found = read('Size,Name\n"12,7mm",A\n16mm,B\n')
    assert found.bad[0].line == 2
    assert "which could be 12.7mm" in found.bad[0].reason


def test_empty_rows_are_counted_and_keep_the_line_numbers_true() -> None:
    found = read("Size (mm),Name\n\n12.7,A\n,\n  , \nwide,B\n\n")
    assert found.lines == (3,)
    assert [row.line for row in found.bad] == [6]
    assert found.rows == 2


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "found nothing in it"),
        ("\n\n", "found a first row without names; allowed is a header row"),
        ("Size,Name\n", "found a header and no row under it"),
        ("Size,Name\n,\n\n", "found a header and no row under it"),
        (",,\n1,2,3\n", "found a first row without names"),
        ("Size,Size\n1,2\n", "found two columns named 'Size'"),
        ('Size,Name\n1/2in,"open\n', "found a row that begins on line 2 and cannot be read"),
        ('Size,Name\n"1/2"in,A\n', "found a row that begins on line 2 and cannot be read"),
    ],
)
def test_a_text_that_is_no_table_is_refused(text: str, says: str) -> None:
    with pytest.raises(RefusedInput, match=r"^tools\.csv: ") as caught:
        parse_csv(text, "tools.csv")
    assert says in str(caught.value)


def test_bytes_that_are_not_text_are_refused(tmp_path: Path) -> None:
    path = tmp_path / "tools.csv"
    path.write_bytes("Size\n16mm\n".encode("utf-16"))
    with pytest.raises(UnreadableFile, match="not UTF-8 text"):
        read_csv(path)


# The columns


def test_headers_are_found_exactly_before_nearly() -> None:
    found = read("Small End,Size,Large-End,Groundlength,Where,Price\n,1/2in,,,drawer 1,3\n")
    assert found.guessed
    assert keys(found) == {
        "size": "Size",
        "small_end": "Small End",
        "large_end": "Large-End",
        "ground_length": "Groundlength",
        "place": "Where",
    }
    assert found.unread == ("Price",)


def test_a_header_means_one_thing_only() -> None:
    found = read("Size,Diameter\n1/2in,3/4in\n")
    assert keys(found) == {"size": "Size"}
    assert found.unread == ("Diameter",)


@pytest.mark.parametrize("kind", KINDS)
def test_no_two_keys_of_a_kind_go_by_one_name(kind: str) -> None:
    names = [n for field in KINDS[kind] for n in (field.key.replace("_", " "), *field.names)]
    plain = [plain_header(name)[0] for name in names]
    assert len(set(plain)) == len(plain)


@pytest.mark.parametrize("kind", KINDS)
def test_every_key_is_found_under_its_own_name(kind: str) -> None:
    header = ",".join(field.key for field in KINDS[kind])
    found = read_entries(parse_csv(f"{header}\n{'?,' * 3}x\n", "t.csv"), kind, None, "mm")
    assert keys(found) == {field.key: field.key for field in KINDS[kind]}


def test_a_column_without_a_name_is_told_where_it_says_something() -> None:
    assert read("Size,,\n1/2in,hello,\n").unread == ("column 2, without a name",)


def test_columns_may_be_told_and_no_other_is_read() -> None:
    found = read("A,B,Name\n1/2in,0.4995in,N\n", columns="size=A, small_end=b")
    assert found.entries == (MandrelNote(0.0127, small_end=0.0126873),)
    assert (found.guessed, found.unread) == (False, ("Name",))


@pytest.mark.parametrize(
    ("columns", "says"),
    [
        ("size", "--columns: found 'size'; allowed is key=header, with , between them"),
        ("sise=A", "--columns: found 'sise'; allowed is 'size' or one of"),
        ("size=Z", "--columns size: found 'Z'; allowed is one of: A, B"),
        ("size=", "--columns size: found ''; allowed is one of: A, B"),
        ("size=A,size=B", "--columns: found size twice; allowed is each key once"),
        (
            "name=A",
            "tools.csv: found no column for size among 'A', 'B'; allowed is it in --columns",
        ),
    ],
)
def test_columns_told_wrongly_are_refused(columns: str, says: str) -> None:
    assert refusal("A,B\n1/2in,x\n", columns=columns).startswith(says)


def test_a_file_without_the_needed_column_is_refused() -> None:
    said = refusal("Colour,Price\nred,3\n")
    assert said.startswith("tools.csv: found no column for size among 'Colour', 'Price'")
    assert refusal("Colour\nred\n", "dogs").startswith("tools.csv: found no column that names any")


# The units


def test_a_unit_in_the_header_is_that_of_its_bare_numbers_only() -> None:
    found = read("Size (mm),Small End [in]\n12.7,0.4995\n1/2in,12.69mm\n")
    assert found.entries == (
        MandrelNote(0.0127, small_end=0.0126873),
        MandrelNote(0.0127, small_end=0.01269),
    )


def test_units_mean_what_no_header_says() -> None:
    found = read("Size,Overall (mm)\n1/2,120\n", units="inch")
    assert found.entries == (MandrelNote(0.0127, overall_length=0.12),)


def test_bare_numbers_that_nothing_explains_refuse_the_file_once() -> None:
    said = refusal("Name,Size\nA,16mm\nB,12.7\n")
    assert said == (
        "tools.csv: found 12.7 without a unit in column 'Size', line 3; allowed is "
        "--units inch|mm, or a header with its unit, such as 'Size (mm)'"
    )


def test_a_number_in_brackets_that_is_no_unit_stays_a_name() -> None:
    assert plain_header("Size (new)") == ("size new", "")


# The rows


def test_every_kind_is_read() -> None:
    lathe = read('Name,RPM,Swing (mm)\nold,30/60,\nnew,"30, 60 rpm",240\n', "lathes")
    assert lathe.entries == (Machine("new", (0.5, 1.0), (), 0.24),)
    assert lathe.bad[0].line == 2
    press = read("Name,Type,Capacity,Daylight\nA,arbor press,8.9kN,10in\n", "presses")
    assert press.entries == (OwnPress("A", "arbor press", 8900.0, 0.254),)
    dog = read("Tag,From,To,Tail\n1,6mm,20mm,Bent\n", "dogs")
    assert dog.entries == (OwnDog("1", 0.006, 0.02, "bent"),)
    reamer = read("Size,Cuts Over\n5/8in,+0.0004in\n12mm,-\n", "reamers")
    assert reamer.entries == (OwnReamer(0.015875, cuts=1.016e-05), OwnReamer(0.012))
    gauge = read("Type,Range,Accuracy\nbore gauge,18 to 35 mm,5um\n", "gauges")
    assert gauge.entries == (OwnGauge("bore gauge", 5e-06, 0.018, 0.035),)


@pytest.mark.parametrize(
    ("cell", "ends"),
    [
        ("18 to 35 mm", (0.018, 0.035)),
        ("18mm–35mm", (0.018, 0.035)),
        ("18-35mm", (0.018, 0.035)),
        ("1/2 to 1 1/4 in", (0.0127, 0.03175)),
        ("1/2in … 1-1/4in", (0.0127, 0.03175)),
    ],
)
def test_a_range_is_written_in_many_ways(cell: str, ends: tuple[float, float]) -> None:
    (gauge,) = read(f"Kind;Range\nplug;{cell}\n", "gauges").entries
    assert isinstance(gauge, OwnGauge)
    assert (gauge.smallest, gauge.largest) == ends


@pytest.mark.parametrize("cell", ["", "-", "?", "N/A", "unknown", "–"])
def test_a_cell_with_nothing_to_say_is_not_stated(cell: str) -> None:
    assert read(f"Size,Small End\n1/2in,{cell}\n").entries == (MandrelNote(0.0127),)


@pytest.mark.parametrize(
    ("row", "reason"),
    [
        (",0.4995in,A", "size: found nothing; allowed is a value here, it is needed"),
        ("wide,,A", "mandrel.size: found wide; allowed is a length"),
        ("16N,,A", "mandrel.size: found 16N, which is a force"),
        ("1/2in,0.6in,A", "mandrel: found an end of 15.240 mm (0.6000 in); allowed is an end near"),
        ("1/2in,,A,more", "found 4 cells under 3 headers; allowed is a cell for each header"),
        ('1/2in,,"A\x07"', "name: found 'A?'; allowed is one line of text"),
        (f"1/2in,,{'A' * 201}", "name: found"),
    ],
)
def test_a_bad_row_is_told_with_its_line_and_reason(row: str, reason: str) -> None:
    found = read(f"Size,Small End,Name\n3/4in,,good\n{row}\n5/8in,,good too\n")
    assert found.lines == (2, 4)
    assert [bad.line for bad in found.bad] == [3]
    assert found.bad[0].reason.removeprefix("tools.csv line 3: ").startswith(reason)


def test_of_sixty_two_rows_three_bad_ones_are_told() -> None:
    rows = [f"M{n},{10 + n / 2}mm" for n in range(62)]
    rows[4], rows[30], rows[61] = "M4,ten", "M30,", "M61,41mm,x"
    found = read("Name,Size\n" + "\n".join(rows) + "\n")
    assert [bad.line for bad in found.bad] == [6, 32, 63]
    assert len(found.entries) == 59
    assert found.rows == 62


def test_more_than_a_shelf_lists_are_refused() -> None:
    said = refusal("Size\n" + "16mm\n" * 201)
    assert said == "tools.csv: found 201 mandrels; allowed is at most 200 mandrels"


@given(st.text(max_size=200), st.sampled_from(sorted(KINDS)))
def test_any_text_is_read_or_refused(text: str, kind: str) -> None:
    found = read_or_refusal(text, kind)
    assert found.rows > 0 if isinstance(found, CsvRead) else "\n" not in found


def read_or_refusal(text: str, kind: str) -> CsvRead | str:
    try:
        return read_entries(parse_csv(text, "t.csv"), kind, None, "mm")
    except RefusedInput as refused:
        return str(refused)


@given(
    st.lists(st.text(st.characters(exclude_categories=("C",)), max_size=12), min_size=1), st.data()
)
def test_rows_are_never_lost(cells: list[str], data: st.DataObject) -> None:
    """Good, bad and empty rows add up, whatever stands in the cells."""
    quoted = ['"' + cell.replace('"', '""') + '"' for cell in cells]
    found_empty = sum(not cell.strip() for cell in cells)
    text = "Size (mm),Name\n" + "".join(f"16,{cell}\n" for cell in quoted)
    found = read(text + "\n" * data.draw(st.integers(0, 3)))
    assert found.rows == len(cells)
    text = "Name,Size (mm)\n" + "".join(f"{cell},\n" for cell in quoted) + "x,16\n"
    assert read(text).empty_rows == found_empty


def test_an_unknown_name_is_a_refusal_of_its_own_class() -> None:
    with pytest.raises(UnknownName):
        read("A\n1/2in\n", columns="width=A")
