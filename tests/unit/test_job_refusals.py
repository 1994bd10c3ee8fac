"""Every way a job or shelf file can be wrong: one sentence with the file, the place and a way out."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.unit.job_texts import FULL, SHELF, SMALL, WHEEL

from borewright.errors import RefusedInput, UnknownName, UnreadableFile, UnreadableQuantity
from borewright.job import parse_job, parse_shelf, read_job, read_shelf
from borewright.job.toml_text import LARGEST


def refusal(text: str, kind: type[RefusedInput] = RefusedInput) -> str:
    with pytest.raises(kind) as caught:
        parse_job(text, "job.toml")
    message = str(caught.value)
    assert message.startswith("job.toml: ")
    assert message.isprintable()
    return message


def changed(text: str, old: str, new: str) -> str:
    assert text.count(old) == 1, old
    return text.replace(old, new)


@pytest.mark.parametrize(
    ("old", "new", "place", "nearest"),
    [
        ("[work]", "titel = 'x'\n[work]", "job.toml: titel", "title"),
        ("bore =", "bor =", "job.toml: [work] bor", "bore"),
        ('bore = "16.01mm"', 'bore = {sise = "16mm"}', "job.toml: [work.bore] sise", "size"),
        ('thickness = "6mm"', 'thicknes = "6mm"', "job.toml: [work.web] thicknes", "thickness"),
        ('inside = "65mm"', 'insid = "65mm"', "job.toml: [work.rim] insid", "inside"),
        ("hub = {outside", "hub = {outsid", "job.toml: [work.hub] outsid", "outside"),
        ("[work]", "[machine]\nspeed = []\n[work]", "job.toml: [machine] speed", "speeds"),
        ("[work]", "[hold]\nuses = 'any'\n[work]", "job.toml: [hold] uses", "use"),
        ("[work]", "[[cut]]\nfeeed = '1mm'\n[work]", "job.toml: [cut[1]] feeed", "feed"),
        ("[work]", "[hold]\nmandrels = [{siz = 1}]\n[work]", "[hold.mandrels[1]] siz", "size"),
        (
            'bore = "16.01mm"',
            'bore = {readings = [{dept = 0, size = "16mm"}]}',
            "job.toml: [work.bore.readings[1]] dept",
            "depth",
        ),
    ],
)
def test_an_unknown_key_is_named_with_the_nearest(
    old: str, new: str, place: str, nearest: str
) -> None:
    message = refusal(changed(WHEEL, old, new), UnknownName)
    assert place in message
    assert f"allowed is '{nearest}' or one of: " in message


def test_a_very_long_unknown_key_is_cut_short() -> None:
    assert len(refusal(f"{'k' * 5000} = 1", UnknownName)) < 300


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('bore = "16.01mm"\n', "", "work.bore: found nothing; allowed is a value here"),
        ('material = "gray-iron-30"\n', "", "work.material: found nothing"),
        ('"gray-iron-30"', "30", "work.material: found 30; allowed is one line of text"),
        (
            '"gray-iron-30"',
            '"two\\nlines"',
            "work.material: found 'two lines'; allowed is one line",
        ),
        ('"gray-iron-30"', f'"{"x" * 201}"', "work.material: found 'xxx"),
        ('length = "20mm"', "length = true", "work.length: found true; allowed is a number with"),
        ('length = "20mm"', "length = []", "work.length: found a list of 0; allowed is a number"),
        ('length = "20mm"', "length = 1979-05-27", "work.length: found 1979-05-27; allowed is"),
        ('bore = "16.01mm"', "bore = [1]", "work.bore: found a list of 1; allowed is a number"),
        ('hub = {outside = "30mm"}', 'hub = "30mm"', "work.hub: found '30mm'; allowed is a table"),
        ("[work]", "[work]\nblank = 'forged'", "work.blank: found 'forged'; allowed is 'bar', "),
        ("[work]", "[work]\nquantity = 0", "work.quantity: found 0; allowed is 1 or more"),
        ("[work]", "[work]\nquantity = 10001", "work.quantity: found 10001; allowed is 10000 or"),
        ("[work]", "[work]\nquantity = 2.5", "work.quantity: found 2.5; allowed is a whole number"),
        ("[work]", "[work]\nquantity = '2'", "work.quantity: found '2'; allowed is a whole number"),
        ("[work]", "units = 'cm'\n[work]", "units: found 'cm'; allowed is 'inch' or 'mm'"),
        ("[work]", "cut = 3\n[work]", "cut: found 3; allowed is a list in square brackets"),
        ("[work]", "machine = 3\n[work]", "machine: found 3; allowed is a table of keys"),
        ("[work]", "hold = {mandrels = 'some'}\n[work]", "hold.mandrels: found 'some'; allowed is"),
        ("[work]", "hold = {lubrication = 'wet'}\n[work]", "hold.lubrication: found 'wet'; allow"),
        (
            "[work]",
            "[[cut]]\nkind = 'bore'\n[work]",
            "cut[1].kind: found 'bore'; allowed is 'turn'",
        ),
    ],
)
def test_a_value_of_the_wrong_kind_is_refused_where_it_stands(
    old: str, new: str, says: str
) -> None:
    assert refusal(changed(WHEEL, old, new)).startswith(f"job.toml: {says}")


def test_no_work_at_all_is_refused() -> None:
    assert refusal("").startswith("job.toml: work: found nothing; allowed is a value here")


@pytest.mark.parametrize(
    ("old", "new", "place"),
    [
        ('size = "18.01mm"', 'size = "18,01mm"', "work.bore.size: found 18,01mm, which could be"),
        ('uncertainty = "4um"', 'uncertainty = "4"', None),
        ('uncertainty = "4um"', 'uncertainty = "?"', "work.bore.uncertainty: found ?"),
        ('size = "18.006mm"', 'size = "x"', "work.bore.readings[2].size: found x"),
        ('depth = "15mm"', 'depth = "-1mm"', "work.bore.readings[2].depth: found -1mm"),
        ('to = "20mm"', 'to = "2 0mm"', "work.outline[2].to: found 2 0mm"),
        ('from = "10mm"', "from = nan", "work.outline[2].from: found nan"),
        ('outside = "90mm"', "outside = inf", "work.outline[2].outside: found inf"),
        ('inside = "32mm"', 'inside = "0mm"', "work.outline[2].inside: found 0mm"),
        ('outside = "108mm"', 'outside = "a"', "work.finished.outside: found a"),
        ('tolerance = "0.05mm"', 'tolerance = "a"', "work.finished.tolerance: found a"),
        ('"2 rev/s"', '"30m/min"', "machine.speeds[2]: found 30m/min, which is a cutting speed"),
        ('"0.004in"', '"0.004N"', "machine.feeds[2]: found 0.004N, which is a force"),
        ('"120mm"', '"a"', "machine.swing_over_cross_slide: found a"),
        ('"500mm"', '"a"', "machine.between_centres: found a"),
        ('"550W"', '"550N"', "machine.power: found 550N, which is a force"),
        ('"1000kgf"', '"1000kg"', "hold.press_force: found 1000kg, which is a mass"),
        ('"1/2in"', '"1/0in"', "hold.mandrels[2]: found 1/0in"),
        ('size = "18mm"', 'size = "a"', "hold.mandrels[1].size: found a"),
        ('small_end = "17.985mm"', 'small_end = "a"', "hold.mandrels[1].small_end: found a"),
        ('large_end = "18.04mm"', 'large_end = "a"', "hold.mandrels[1].large_end: found a"),
        ('"1:2000"', '"1:0"', "hold.mandrels[1].taper: found 1:0"),
        ('ground_length = "110mm"', 'ground_length = "a"', "hold.mandrels[1].ground_length: found"),
        ('"150mm"', '"a"', "hold.mandrels[1].overall_length: found a"),
        ('depth = "0.5mm"', 'depth = "0mm"', "cut[1].depth: found 0mm"),
        ('"0.1mm/rev"', '"1m"', "cut[1].feed: found 1m"),
        ('"30m/min"', '"30"', "cut[1].speed: found 30, which could be 30 rpm or 30 ft/min"),
        ('"90deg"', '"90"', "cut[1].edge_angle: found 90, which could be 90 deg"),
        ('nose_radius = "0.4mm"', 'nose_radius = "a"', "cut[1].nose_radius: found a"),
        ('to = "20mm"', f"to = 0x{'f' * 6000}", "work.outline[2].to: found a number of more than"),
    ],
)
def test_a_quantity_that_does_not_read_is_refused_where_it_stands(
    old: str, new: str, place: str | None
) -> None:
    if place is None:
        assert parse_job(changed(FULL, old, new), "job.toml").work.bore.uncertainty == 0.004
    else:
        message = refusal(changed(FULL, old, new), UnreadableQuantity)
        assert message.startswith(f"job.toml: {place}")


@pytest.mark.parametrize("typed", ["3.0", "3", '"3"'])
def test_a_bare_number_without_units_shows_both_readings(typed: str) -> None:
    message = refusal(changed(SMALL, '"3in"', typed), UnreadableQuantity)
    assert "work.outside: found 3" in message
    assert 'or units = "inch" or "mm" in the file' in message


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('length = "20mm"\n', "", "work: found no `length` and no `outline`"),
        ('outside = "80mm"\n', "", "work: found no `outside` and no `outline`"),
        ('outside = "80mm"', 'outside = "16mm"', "work.rim.inside: found 65 mm"),
        ('web = {thickness = "6mm"}\n', "", "work: found no `web`; allowed is a `web` together"),
        ('inside = "65mm"', 'inside = "80mm"', "work.rim.inside: found 80 mm"),
        ('outside = "30mm"', 'outside = "65mm"', "work.hub.outside: found 65 mm"),
        ('outside = "30mm"', 'outside = "16.01mm"', "work ring 1: found outside 16.01 mm"),
        ('thickness = "6mm"', 'thickness = "21mm"', "work.web.thickness: found 21 mm"),
        ('thickness = "6mm"', "", "work.web: found no thickness; allowed is `thickness`, or"),
        ('thickness = "6mm"', 'thickness = "6mm", to = "9mm"', "work.web: found both a thickness"),
        ('thickness = "6mm"', 'from = "9mm", to = "9mm"', "work.web: found from 9 mm to 9 mm"),
        ('inside = "65mm"', 'inside = "65mm", to = "21mm"', "work.rim: found from 0 mm to 21 mm"),
        ('outside = "30mm"', 'outside = "30mm", from = "25mm"', "work.hub: found from 25 mm to"),
        (
            'hub = {outside = "30mm"}\nweb = {thickness = "6mm"}\nrim = {inside = "65mm"}',
            'hub = {outside = "30mm", to = "5mm"}\nweb = {from = "8mm", to = "9mm"}\n'
            'rim = {inside = "65mm"}',
            "work: found 2 of 3 rings not joined to the first",
        ),
        (
            'hub = {outside = "30mm"}\nweb = {thickness = "6mm"}\nrim = {inside = "65mm"}',
            'hub = {outside = "30mm", to = "15mm"}\nweb = {thickness = "6mm"}\n'
            'rim = {inside = "65mm", to = "15mm"}',
            "work: found hub, web and rim that end at 15 mm",
        ),
        ("[work]", "[work]\noutline = []", "work.outline: found a list of 0; allowed is at least"),
        (
            "[work]",
            "[work]\noutline = [{from = '0mm', to = '20mm', outside = '80mm'}]",
            "work: found `outline` together with `outside`, `length`, `hub`, `web`, `rim`",
        ),
        ('bore = "16.01mm"', "bore = {}", "work.bore: found no size; allowed is a `size`, or"),
        (
            'bore = "16.01mm"',
            'bore = {readings = [{depth = "21mm", size = "16mm"}]}',
            "work: found a bore reading at depth 21 mm; allowed is a depth within the work",
        ),
        (
            'bore = "16.01mm"',
            'bore = {size = "16mm", readings = [{depth = "1mm", size = "0.016mm"}]}',
            "work: found a bore reading of 0.016 mm",
        ),
        ("[work]", "[work]\nfinished = {outside = '81mm'}", "work.finished.outside: found 81 mm"),
        (
            "[work]",
            "machine = {between_centers = '1m', between_centres = '1m'}\n[work]",
            "machine: found both `between_centers` and `between_centres`",
        ),
    ],
)
def test_a_part_that_cannot_be_is_refused(old: str, new: str, says: str) -> None:
    assert refusal(changed(WHEEL, old, new)).startswith(f"job.toml: {says}")


def test_a_web_alone_is_refused() -> None:
    text = f'{SMALL}web = {{thickness = "1/4in"}}\n'
    assert "work: found a `web` alone; allowed is a `web` together with" in refusal(text)


def outline(*rings: str) -> str:
    rows = ", ".join(f"{{{ring}}}" for ring in rings)
    work = f'[work]\nmaterial = "brass-c360"\nbore = 16\noutline = [{rows}]\n'
    return f'units = "mm"\n{work}'


@pytest.mark.parametrize(
    ("rings", "says"),
    [
        (
            ["from = 1, to = 9, outside = 40"],
            "work.outline: found a first face at 1 mm; allowed is",
        ),
        (["from = 9, to = 9, outside = 40"], "work.outline ring 1: found from 9 mm to 9 mm"),
        (["from = 9, to = 3, outside = 40"], "work.outline ring 1: found from 9 mm to 3 mm"),
        (["from = 0, to = 9, outside = 16"], "work.outline ring 1: found outside 16 mm"),
        (
            ["from = 0, to = 9, outside = 40, inside = 15"],
            "work.outline ring 1: found inside 15 mm",
        ),
        (
            ["from = 0, to = 9, outside = 40, inside = 40"],
            "work.outline ring 1: found inside 40 mm",
        ),
        (
            ["from = 0, to = 9, outside = 40, inside = 20"],
            "work.outline: found no ring that reaches",
        ),
        (
            ["from = 0, to = 9, outside = 40", "from = 8, to = 12, outside = 30"],
            "work.outline: found rings 1 and 2 in the same place",
        ),
        (
            ["from = 0, to = 9, outside = 40", "from = 0, to = 9, outside = 60, inside = 39"],
            "work.outline: found rings 1 and 2 in the same place",
        ),
        (
            ["from = 0, to = 9, outside = 40", "from = 10, to = 12, outside = 30"],
            "work.outline: found 1 of 2 rings not joined to the first",
        ),
        (
            ["from = 0, to = 9, outside = 40", "from = 0, to = 9, outside = 60, inside = 41"],
            "work.outline: found 1 of 2 rings not joined to the first",
        ),
        (
            ["from = 0, to = 9, outside = 40", "from = 9, to = 12, outside = 60, inside = 40"],
            "work.outline: found 1 of 2 rings not joined to the first",
        ),
    ],
)
def test_rings_that_make_no_part_are_refused(rings: list[str], says: str) -> None:
    assert refusal(outline(*rings)).startswith(f"job.toml: {says}")


def test_rings_that_meet_within_the_rounding_of_inch_and_metric_are_one_part() -> None:
    rings = ["from = 0, to = '1/2in', outside = 40", "from = 12.7, to = 20, outside = 30"]
    assert len(parse_job(outline(*rings), "job.toml").work.pieces) == 2


@pytest.mark.parametrize(
    ("text", "place"),
    [
        (outline(*["from = 0, to = 9, outside = 40"] * 201), "work.outline"),
        (
            changed(SMALL, '"0.5005in"', f"{{readings = [{'{depth = 0, size = 1},' * 201}]}}"),
            "work.bore.readings",
        ),
        (f"{SMALL}[hold]\nmandrels = [{'1,' * 201}]", "hold.mandrels"),
        (f"{SMALL}[machine]\nspeeds = [{'1,' * 201}]", "machine.speeds"),
        (f"{SMALL}[machine]\nfeeds = [{'1,' * 201}]", "machine.feeds"),
        (SMALL + "[[cut]]\n" * 201, "cut"),
    ],
)
def test_more_than_200_of_anything_is_refused(text: str, place: str) -> None:
    says = f"job.toml: {place}: found a list of 201; allowed is at most 200 entries"
    assert refusal(text) == says


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('size = "18mm"', 'size = "18in"', "hold.mandrels[1]: found an end of 17.986 mm"),
        ('"18.04mm"', '"17.98mm"', "hold.mandrels[1]: found a small end of 17.986 mm"),
        ('"150mm"', '"100mm"', "hold.mandrels[1]: found a ground length of 110 mm"),
    ],
)
def test_a_mandrel_that_cannot_be_is_refused(old: str, new: str, says: str) -> None:
    assert refusal(changed(FULL, old, new)).startswith(f"job.toml: {says}")


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('name = "long one"', 'nam = "long one"', "shelf.toml: [mandrel[2]] nam: found 'nam'"),
        ('size = "16mm"', 'size = "16N"', "shelf.toml: mandrel[2].size: found 16N, which is a for"),
        ("power = 1.5", 'power = "1.5"\nforce = 2', "shelf.toml: [machine] force: found 'force'"),
        ('force = "5kN"', 'force = "5bar"', "shelf.toml: press.force: found 5bar, which is a pres"),
    ],
)
def test_a_shelf_file_is_refused_in_the_same_way(old: str, new: str, says: str) -> None:
    with pytest.raises(RefusedInput) as caught:
        parse_shelf(changed(SHELF, old, new), "shelf.toml")
    assert str(caught.value).startswith(says)


BOTH_READERS = pytest.mark.parametrize("read", [read_job, read_shelf], ids=["job", "shelf"])


@BOTH_READERS
def test_a_file_that_is_not_there_is_refused(
    read: Callable[[Path], object], tmp_path: Path
) -> None:
    with pytest.raises(UnreadableFile, match="found no such file; allowed is a"):
        read(tmp_path / "none.toml")


@BOTH_READERS
def test_a_directory_is_refused(read: Callable[[Path], object], tmp_path: Path) -> None:
    with pytest.raises(UnreadableFile, match="found a directory"):
        read(tmp_path)


@BOTH_READERS
def test_a_path_no_file_can_have_is_refused(read: Callable[[str], object]) -> None:
    with pytest.raises(UnreadableFile, match="a path that cannot be opened"):
        read("a\0b")
    with pytest.raises(UnreadableFile, match="a path that cannot be opened"):
        read("x" * 5000)


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read every file")
def test_a_file_that_may_not_be_read_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "job.toml"
    path.write_text(SMALL)
    path.chmod(0)
    with pytest.raises(UnreadableFile, match="a file that may not be read"):
        read_job(path)


@pytest.mark.parametrize(
    ("raw", "found"),
    [
        (b"\xff\xfe[\x00", "a byte that is not UTF-8 text at position 0"),
        (b"title = 'caf\xe9'", "a byte that is not UTF-8 text at position 12"),
        (b"#" * (LARGEST + 1), "more than 256 kB"),
        (b"title = ", "text that is not TOML"),
        (b"title = 1\ntitle = 2", "text that is not TOML"),
        (b"PK\x03\x04", "text that is not TOML"),
        (b"a = " + b"[" * 5000, "text that is not TOML (tables nested too deeply)"),
        (b"a = " + b"1" * 5000, "text that is not TOML"),
    ],
)
def test_a_file_that_is_not_toml_is_refused(raw: bytes, found: str, tmp_path: Path) -> None:
    path = tmp_path / "job.toml"
    path.write_bytes(raw)
    with pytest.raises(UnreadableFile) as caught:
        read_job(path)
    assert caught.value.found.startswith(found)
    assert len(str(caught.value)) < 500


def test_a_text_that_is_too_large_is_refused_before_it_is_parsed() -> None:
    with pytest.raises(UnreadableFile, match="more than 256 kB"):
        parse_job("#" * (LARGEST + 1), "job.toml")


def test_deeply_dotted_keys_are_refused_as_unknown() -> None:
    refusal(".".join("a" * 900) + " = 1", UnknownName)
    assert refusal(f"work.length{'.a' * 500} = 1")


@given(st.one_of(st.text(), st.text(alphabet="[]=\n.{}'\" work1bmln_", max_size=60)))
def test_any_text_is_a_job_or_is_refused(text: str) -> None:
    for body in (text, f"{SMALL}{text}"):
        try:
            parse_job(body, "job.toml")
        except RefusedInput as refused:
            assert str(refused).startswith("job.toml: ")
            assert str(refused).isprintable()
