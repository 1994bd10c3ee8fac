"""What broke `make` when it was tried hard, and does no more."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from tests.cli_run import ran, refused

from borewright.drawing.measure import text_width
from borewright.mechanics.spares import chance_enough, tries_needed

ROOT = Path(__file__).parents[2]
CAST = str(ROOT / "examples" / "hollow-brook-cast-wheel.toml")
DRIVE = str(ROOT / "examples" / "hollow-brook-drive-wheel.toml")


def said(*arguments: str, code: int = 0) -> dict[str, Any]:
    done = ran(*arguments, "--json")
    assert done.code == code, done.err
    found: dict[str, Any] = json.loads(done.out)
    return found


@pytest.mark.parametrize(
    ("first", "second", "names"),
    [
        (("make", "blank", CAST), ("--out", "--drawing"), ("p.pdf", "p.pdf")),
        (("make", "blank", CAST), ("--out", "--drawing"), ("p-2.pdf", "p.pdf")),
        (("make", "mandrel", "--size", "16mm"), ("--out", "--drawing"), ("p.pdf", "p.pdf")),
    ],
)
def test_one_name_for_two_files_is_refused_and_nothing_is_written(
    tmp_path: Path, first: tuple[str, ...], second: tuple[str, str], names: tuple[str, str]
) -> None:
    options = [w for o, n in zip(second, names, strict=True) for w in (o, str(tmp_path / n))]
    assert "the same file twice" in refused(*first, *options)
    assert list(tmp_path.iterdir()) == []


def test_files_of_other_kinds_keep_their_endings(tmp_path: Path) -> None:
    assert ".toml" in refused("make", "blank", CAST, "--job", str(tmp_path / "j.svg"))
    assert ".toml" in refused(
        "make", "mandrel", "--size", "16mm", "--try-shelf", str(tmp_path / "s.svg")
    )
    assert ".pdf" in refused("make", "strip", "--size", "16mm", "--out", str(tmp_path / "s.toml"))
    assert list(tmp_path.iterdir()) == []


def test_a_set_without_bars_long_enough_is_a_no_that_names_them() -> None:
    done = ran("make", "set", "--bores", "16mm, 25mm", "--bar-length", "130mm")
    assert done.code == 3
    assert done.out.startswith("No: bars of 130 mm")
    assert "25 (" in done.out.splitlines()[0] + done.out.splitlines()[1]


def test_two_sizes_of_one_name_are_told_apart_and_one_size_twice_is_refused() -> None:
    stamps = [m["stamp"] for m in said("make", "set", "--bores", "16mm, 16.05mm")["mandrels"]]
    assert len(set(stamps)) == 2
    assert "one size twice" in refused("make", "set", "--bores", "16mm, 16mm")
    assert "one size twice" in refused("make", "set", "--bores", "5/8in, 0.625in")


def test_a_set_says_a_reason_and_no_advice_to_make_a_set() -> None:
    done = ran("make", "set", "--bores", "16mm", "--between-centers", "60mm", "--length", "40mm")
    first = " ".join(done.out.split("SET")[0].split())
    assert done.code == 3
    assert not first.endswith(":")
    assert "make set" not in first


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("--bores", "16mm", "--band", "40mm"), "--band"),
        (("--bores", "16mm", "--class", "to 17mm"), "--class"),
        (("--bores", "16mm,"), "an empty size"),
    ],
)
def test_a_set_refuses_by_the_option_that_is_wrong(arguments: tuple[str, ...], words: str) -> None:
    assert words in refused("make", "set", *arguments)


def test_a_great_many_spares_are_counted_to_the_last_one() -> None:
    tries = tries_needed(150, 0.99, 0.95)
    assert chance_enough(150, tries, 0.99) >= 0.95 > chance_enough(150, tries - 1, 0.99)


@pytest.mark.parametrize("size", ["16.4mm", "28/16in", "5/8in", "1.013in"])
def test_every_station_of_the_sheet_is_as_narrow_as_the_limits(size: str) -> None:
    """Each station's limits lie on whole tenths or µm, so that the sheet need not round them."""
    numbers = said("make", "mandrel", "--size", size)
    grid = 2.54e-6 if "in" in size else 1e-6
    width = numbers["a_largest_m"] - numbers["a_smallest_m"]
    for station in numbers["stations"]:
        for end in ("smallest_m", "largest_m"):
            assert station[end] / grid == pytest.approx(round(station[end] / grid), abs=1e-3)
        assert station["largest_m"] - station["smallest_m"] == pytest.approx(width, abs=1e-9)


def test_limits_that_let_a_mandrel_be_parallel_are_a_no() -> None:
    done = ran("make", "mandrel", "--size", "0.087in", "--no-grinder")
    assert done.code == 3
    assert "might as well be parallel" in " ".join(done.out.split())


def test_a_flat_never_goes_near_the_middle_of_a_thin_end() -> None:
    for size in ("3mm", "1/8in", "1/4in"):
        numbers = said("make", "mandrel", "--size", size)
        assert numbers["flat_depth_m"] <= 0.15 * numbers["end_diameter_m"] + 1e-9


def test_units_asked_for_beside_a_job_are_obeyed(tmp_path: Path) -> None:
    name = tmp_path / "m.svg"
    done = ran("make", "mandrel", DRIVE, "--units", "mm", "--drawing", str(name))
    assert done.code == 0, done.err
    assert 'data-units="mm"' in name.read_text(encoding="utf-8")
    assert re.search(r"\d+ mm \(\d", done.out)
    assert not re.search(r"\d+ in \(\d", done.out)


@pytest.mark.parametrize("thing", ["stub", "soft"])
def test_units_asked_for_beside_a_job_are_obeyed_by_what_is_turned(thing: str) -> None:
    assert re.search(
        r"to \d+\.\d+ (to \d+\.\d+ )?mm", ran("make", thing, DRIVE, "--units", "mm").out
    )
    assert re.search(r"to \d+\.\d+ (to \d+\.\d+ )?in", ran("make", thing, DRIVE).out)


def test_too_small_a_mandrel_is_refused_by_its_size() -> None:
    for size in ("0.3mm", "0.1mm"):
        assert "size of a mandrel" in refused("make", "mandrel", "--size", size)


def test_a_title_too_long_for_its_field_ends_in_it(tmp_path: Path) -> None:
    job, name = tmp_path / "job.toml", tmp_path / "k.svg"
    title = "W" * 120
    job.write_text(
        f'title = "{title}"\nunits = "mm"\n[work]\nmaterial = "gray iron"\noutside = 120\nlength = 40\nbore = 20\n',
        encoding="utf-8",
    )
    done = ran("make", "blank", str(job), "--by", "casting", "--drawing", str(name))
    assert done.code == 0, done.err
    root = ElementTree.parse(name).getroot()
    (words,) = [e for e in root.iter() if e.get("data-name") == "block-what"]
    left, size = float(words.attrib["x"]), float(words.attrib["font-size"])
    right = float(root.attrib["viewBox"].split()[2]) - 8.0
    assert left + text_width(words.text or "", size, True) < right - 0.1 * 134.0


def test_a_thin_wheels_casting_has_its_job(tmp_path: Path) -> None:
    job, cast = tmp_path / "job.toml", tmp_path / "cast.toml"
    job.write_text(
        'units = "mm"\nwork = {material = "gray iron", bore = 20, outside = 120, length = 6}\n',
        encoding="utf-8",
    )
    done = ran("make", "blank", str(job), "--by", "casting", "--job", str(cast))
    assert done.code == 0, done.err
    assert cast.exists()


@pytest.mark.parametrize(
    "arguments",
    [
        ("make", "set", "--bores", "1/4in, 3/8in, 1/2in, 5/8in, 3/4in", "--length", "1in"),
        ("make", "mandrel", "--size", "1 1/16in"),
        ("make", "blank", CAST),
    ],
)
def test_no_line_of_the_terminal_runs_far_past_its_edge(arguments: tuple[str, ...]) -> None:
    longest = max(ran(*arguments).out.splitlines(), key=len)
    assert len(longest) <= 110, longest
