"""`borewright shelf import | show | check`: codes, streams and files."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest
from tests.cli_run import ran, refused

from borewright.job import parse_shelf, read_shelf
from borewright.reference import tables
from borewright.service.shelf_units import SIZES

ROOT = Path(__file__).parents[2]
SHELF = str(ROOT / "examples" / "hollow-brook-shelf.toml")
GOOD = "Size,Small End,Name\n1/2in,0.4995in,A\n16mm,,B\n"
BAD = "Size,Name\n1/2in,A\nwide,B\n16mm,C\n,D\n"


@pytest.fixture(autouse=True)
def _here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)


def saved(text: str, name: str = "tools.csv") -> str:
    Path(name).write_text(text, encoding="utf-8")
    return name


def take(text: str, *more: str) -> list[str]:
    return ["shelf", "import", saved(text), "--as", "mandrels", *more]


# import


def test_without_into_the_shelf_file_is_printed_and_reads() -> None:
    done = ran(*take(GOOD))
    assert (done.code, done.err) == (0, "")
    read = parse_shelf(done.out, "stdout")
    assert [m.name for m in read.mandrels] == ["A", "B"]
    assert done.out.startswith("# tools.csv, cells parted by comma: 2 rows, 2 mandrels read.\n")
    assert "# Columns, guessed: size from 'Size', small_end from 'Small End', name from" in done.out
    assert os.listdir() == ["tools.csv"]


def test_with_into_the_file_is_written_and_the_report_printed() -> None:
    done = ran(*take(GOOD, "--into", "shelf.toml"))
    assert (done.code, done.err) == (0, "")
    assert done.out.splitlines()[-1] == "Shelf file: shelf.toml"
    assert read_shelf("shelf.toml").mandrels[0].small_end == 0.0126873
    assert sorted(os.listdir()) == ["shelf.toml", "tools.csv"]


def test_a_bad_row_refuses_the_file_in_one_line_and_writes_nothing() -> None:
    line = refused(*take(BAD, "--into", "shelf.toml"))
    assert line == (
        "borewright: tools.csv: found 2 bad rows of 4, on lines 3, 5, the first for its "
        "mandrel.size (found wide; allowed is a length as a number with its unit, such as 5/8in, "
        "0.6255in or 16mm); allowed is "
        "rows that all read, or --keep-good to take the other 2 and list every bad row"
    )
    assert os.listdir() == ["tools.csv"]


def test_keep_good_takes_the_good_rows_and_tells_each_bad_one() -> None:
    done = ran(*take(BAD, "--into", "shelf.toml", "--keep-good"))
    assert done.code == 0
    assert [line[: len("borewright: tools.csv line 3")] for line in done.error_lines] == [
        "borewright: tools.csv line 3",
        "borewright: tools.csv line 5",
    ]
    assert "4 rows, 2 mandrels read, 2 bad" in done.out
    assert [m.name for m in read_shelf("shelf.toml").mandrels] == ["A", "C"]


def test_keep_good_with_nothing_good_is_refused() -> None:
    line = refused(*take("Size\nwide\n", "--keep-good"))
    assert "found 1 bad row of 1, on line 2" in line
    assert line.endswith("allowed is at least one row that reads")


def test_an_existing_file_is_left_alone_without_overwrite() -> None:
    Path("shelf.toml").write_text("# mine\n", encoding="utf-8")
    line = refused(*take(GOOD, "--into", "shelf.toml"))
    assert "--into: found 'shelf.toml', which is there already; allowed is a new name" in line
    assert Path("shelf.toml").read_text(encoding="utf-8") == "# mine\n"


def test_overwrite_replaces_one_list_and_keeps_the_rest() -> None:
    Path("shelf.toml").write_text(Path(SHELF).read_text(encoding="utf-8"), encoding="utf-8")
    before = read_shelf("shelf.toml")
    assert ran(*take(GOOD, "--into", "shelf.toml", "--overwrite")).code == 0
    after = read_shelf("shelf.toml")
    assert [m.name for m in after.mandrels] == ["A", "B"]
    assert (after.lathes, after.presses, after.dogs) == (
        before.lathes,
        before.presses,
        before.dogs,
    )


def test_overwrite_of_a_file_that_is_no_shelf_is_refused() -> None:
    Path("shelf.toml").write_text("drawer = 3", encoding="utf-8")
    assert "drawer" in refused(*take(GOOD, "--into", "shelf.toml", "--overwrite"))
    assert Path("shelf.toml").read_text(encoding="utf-8") == "drawer = 3"


@pytest.mark.parametrize(
    ("kind", "text", "field"),
    [
        ("lathes", "Name,Speeds (rpm)\nL,60 120\n", "lathes"),
        ("presses", "Name,Kind\nP,arbor press\n", "presses"),
        ("dogs", "Name,Largest\nD,1in\n", "dogs"),
        ("reamers", "Size\n1/2in\n", "reamers"),
        ("gauges", "Kind\nbore gauge\n", "gauges"),
    ],
)
def test_each_kind_goes_into_an_existing_shelf(kind: str, text: str, field: str) -> None:
    Path("shelf.toml").write_text(Path(SHELF).read_text(encoding="utf-8"), encoding="utf-8")
    asked = ["shelf", "import", saved(text), "--as", kind, "--into", "shelf.toml", "--overwrite"]
    assert ran(*asked).code == 0
    after = read_shelf("shelf.toml")
    assert len(getattr(after, field)) == 1
    assert len(after.mandrels) == 4
    if kind == "lathes":
        assert after.machine.speeds == (1.0, 2.0)
    if kind == "presses":
        assert after.press == "arbor press"


def test_sizes_in_millimeters_in_an_inch_file_are_doubted_and_kept() -> None:
    text = "Size,Name\n1/2,A\n12.7,B\n5/8,C\n"
    done = ran(*take(text, "--units", "inch", "--into", "shelf.toml"))
    assert done.code == 0
    doubts = [line for line in done.out.splitlines() if line.startswith("Doubt")]
    assert len(doubts) == 1
    assert "size of mandrel: 1 of 3 looks like mm read as inches: line 3 (12.7000 in" in doubts[0]
    assert read_shelf("shelf.toml").mandrels[1].nominal == pytest.approx(0.32258)


def test_sizes_in_inches_in_a_metric_file_are_doubted() -> None:
    done = ran(*take("Size (mm)\n0.5\n0.625\n16\n"))
    assert "2 of 3 look like inches read as mm: line 2 (0.0197 in" in done.out


def test_sizes_of_a_usual_set_are_not_doubted_in_either_unit() -> None:
    inch = "Size (in)\n" + "".join(f"{k}/16\n" for k in range(2, 33))
    metric = "Size (mm)\n" + "".join(f"{k}\n" for k in range(3, 51))
    assert "Doubt" not in ran(*take(inch)).out
    assert "Doubt" not in ran(*take(metric)).out


def test_headers_over_two_lines_leave_the_printed_file_readable() -> None:
    done = ran(*take('Size,"Price\nwith tax"\n1/2in,3\n'))
    assert len(parse_shelf(done.out, "stdout").mandrels) == 1
    assert "# Not read: Price with tax.\n" in done.out


def test_every_size_that_is_doubted_has_its_row_and_every_row_its_size() -> None:
    rows = {f"{kind} {name}" for kind, names in SIZES.items() for name in names.values()}
    assert rows == set(tables().table("shelf_sizes").column("id"))


def test_the_json_of_an_import() -> None:
    done = ran(*take(BAD, "--keep-good", "--json"))
    said = json.loads(done.out)
    assert (said["kind"], said["rows"], said["good"], said["written"]) == ("mandrels", 4, 2, None)
    assert [bad["line"] for bad in said["bad"]] == [3, 5]
    assert said["columns"] == {"size": "Size", "name": "Name"}
    assert len(parse_shelf(said["shelf_file"], "json").mandrels) == 2


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ([], "CSV_FILE: found nothing"),
        (["tools.csv"], "--as: found nothing"),
        (["tools.csv", "--as", "hammers"], "--as: found 'hammers'; allowed is mandrels or lathes"),
        (["none.csv", "--as", "dogs"], "none.csv: found no such file; allowed is a spreadsheet"),
        ([".", "--as", "dogs"], ".: found a directory"),
        (["tools.csv", "--as", "mandrels", "--overwrite"], "--overwrite: found no --into beside"),
        (["tools.csv", "--as", "mandrels", "--units", "cm"], "--units: found 'cm'; allowed is inc"),
        (["tools.csv", "--as", "mandrels", "--columns", "x"], "--columns: found 'x'"),
        (["tools.csv", "--as", "mandrels", "--into", "no/dir.toml"], "dir.toml: found"),
        (["tools.csv", "--as", "mandrels", "--into", ""], "found an empty name"),
        (
            ["tools.csv", "--as", "mandrels", "--into", "tools.csv", "--overwrite"],
            "tools.csv: found text that is not TOML",
        ),
    ],
)
def test_import_refuses(words: list[str], says: str) -> None:
    saved(GOOD)
    assert says in refused("shelf", "import", *words)
    assert os.listdir() == ["tools.csv"]


# show


def test_show_says_what_is_there_in_both_units_and_what_is_taken_for_the_rest() -> None:
    done = ran("shelf", "show", SHELF)
    assert (done.code, done.err) == (0, "")
    for said in (
        "small end 0.6246 in (15.864 mm)",
        "marked '5/8 H'",
        "Lathes, the small lathe is used:",
        "cross-slide dial counts diameter",
        "the shop press: hydraulic shop press; force 22000 lbf (100 kN)",
        "cuts 0.0004 in (10 µm) over",
        "Not stated, and what a plan takes instead:",
        "ends of the 1/2 in mandrel: the usual small end and taper (listed)",
    ):
        assert said in done.out, said


def test_an_empty_shelf_says_what_is_taken() -> None:
    Path("shelf.toml").write_text("", encoding="utf-8")
    done = ran("shelf", "show", "shelf.toml")
    assert "Mandrels: not stated" in done.out
    assert "mandrels: a usual set of plain mandrels" in done.out
    assert "press: a bench vice or a small arbor press" in done.out
    Path("shelf.toml").write_text('mandrel = "none"', encoding="utf-8")
    assert "Mandrels: none" in ran("shelf", "show", "shelf.toml").out


def test_the_json_of_a_shelf_carries_units_in_its_keys() -> None:
    said = json.loads(ran("shelf", "show", SHELF, "--json").out)
    shelf = said["shelf"]
    assert shelf["mandrels"][1]["small_end_m"] == read_shelf(SHELF).mandrels[1].small_end
    assert shelf["lathes"][1]["power_by_gear_W"] == [900, 900, 900, 1300, 1300, 1300]
    assert shelf["presses"][1]["force_N"] == 100e3
    assert shelf["hammer"]["mass_kg"] == 2 * 0.45359237
    assert {"what", "taken", "source"} == set(said["missing"][0])


# check


DOUBTED = {
    "two mandrels of one name": (
        "mandrel = [{size='1/2in', name='Old'}, {size='5/8in', name='old '}]",
        "mandrel 'old': 2 mandrels of this name.",
    ),
    "two dogs of one name": (
        "[[dog]]\nname='a'\n[[dog]]\nname='a'",
        "dog 'a': 2 dogs of this name.",
    ),
    "ends that contradict the taper": (
        "mandrel = [{size='16mm', small_end='15.99mm', large_end='16.04mm', ground_length='100mm',"
        " taper='1:1000'}]",
        "mandrel 1: a taper of 1:1000",
    ),
    "a small end above the size": (
        "mandrel = [{size='16mm', small_end='16.02mm'}]",
        "mandrel 1: the small end, 0.6307 in (16.020 mm), is above the size",
    ),
    "a large end below the size": (
        "mandrel = [{size='16mm', large_end='15.9mm'}]",
        "mandrel 1: the large end, 0.6260 in (15.900 mm), is below the size",
    ),
    "a press stronger than its kind": (
        "[[press]]\nname='p'\nkind='arbor press 1 ton'\nforce='90kN'",
        "press 'p': 20000 lbf (90 kN) is not what a one-ton arbor press gives, 1000 to 2000 lbf",
    ),
    "a press of no known kind": (
        "[[press]]\nkind='arbor pres 1 ton'",
        "press 1: its kind is not in the table presses: 'arbor pres 1 ton'; 'arbor-press-1-ton'",
    ),
    "speeds that fall": (
        "[[lathe]]\nspeeds=['60rpm', '200rpm', '110rpm']",
        "lathe 1: its speeds do not rise: 110 rpm after 200 rpm.",
    ),
    "a speed twice on the only lathe": (
        "[machine]\nname='m'\nspeeds=['60rpm', '60rpm']",
        "lathe 'm': its speeds do not rise: 60 rpm after 60 rpm.",
    ),
    "feeds that fall": (
        "[[lathe]]\nfeeds=['0.2mm', '0.1mm']",
        "lathe 1: its feeds do not rise: 0.0039 in/rev (0.1 mm/rev) after 0.0079 in/rev",
    ),
    "mm read as inches": (
        "units='inch'\n[[dog]]\nname='d'\nlargest=25",
        "largest of dog: 1 of 1 looks like mm read as inches: dog 'd' (25.0000 in (635.000 mm)).",
    ),
    "inches read as mm": (
        "units='mm'\n[[lathe]]\nbetween_centers=20",
        "between centers of lathe: 1 of 1 looks like inches read as mm: lathe 1",
    ),
    "a gauge of no known kind": ("[[gauge]]\nkind='eyesight'", "gauge 1: its kind is not in the"),
    "a gauge too good": (
        "[[gauge]]\nkind='caliper'\nuncertainty='1um'",
        "gauge 1: 0.00004 in (1 µm) is far better than",
    ),
}


@pytest.mark.parametrize(("text", "says"), DOUBTED.values(), ids=DOUBTED)
def test_check_doubts(text: str, says: str) -> None:
    Path("shelf.toml").write_text(text, encoding="utf-8")
    done = ran("shelf", "check", "shelf.toml")
    assert (done.code, done.err) == (3, "")
    assert done.out.startswith(says), done.out
    assert len(done.out.splitlines()) == 1
    said = json.loads(ran("shelf", "check", "shelf.toml", "--json").out)
    assert len(said["doubts"]) == 1


@pytest.mark.parametrize("text", ["", 'mandrel = "none"', "[vice]\n[hammer]\n[[dog]]", None])
def test_check_finds_nothing_where_nothing_is(text: str | None) -> None:
    shelf = Path(SHELF).read_text(encoding="utf-8") if text is None else text
    Path("shelf.toml").write_text(shelf, encoding="utf-8")
    done = ran("shelf", "check", "shelf.toml")
    assert (done.code, done.out, done.err) == (0, "Nothing on this shelf is doubted.\n", "")
    assert json.loads(ran("shelf", "check", "shelf.toml", "--json").out)["doubts"] == []


@pytest.mark.parametrize("command", ["show", "check"])
def test_a_shelf_that_cannot_be_read_is_refused(command: str) -> None:
    assert "none.toml: found no such file" in refused("shelf", command, "none.toml")
    Path("shelf.toml").write_text("[[lathe]]\nspeed = 1", encoding="utf-8")
    assert "[lathe[1]] speed: found 'speed'" in refused("shelf", command, "shelf.toml")


def test_a_word_that_is_no_command_is_refused_with_the_nearest() -> None:
    assert "shelf: found 'chek'; allowed is 'check' or one of" in refused("shelf", "chek")


def test_shelf_alone_shows_its_commands() -> None:
    done = ran("shelf")
    assert done.code == 0
    for word in ("check", "import", "show"):
        assert word in done.out
