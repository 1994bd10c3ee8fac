"""The wall chart is one page with its words in it, the same twice, whatever the shelf is called."""

from __future__ import annotations

import io
import json
from dataclasses import replace
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator, ValidationError
from pypdf import PdfReader
from tests.cli_run import ran, refused

from borewright.answer.chart import Chart
from borewright.errors import RefusedInput
from borewright.job.records import MandrelNote, Shelf
from borewright.report.chart_data import bore_number, chart_data, depth_number, rule_reading
from borewright.report.chart_json import chart_object
from borewright.report.schema import chart_schema_text
from borewright.service.shelf_chart import chart_bytes, shelf_chart

SCHEMA_FILE = Path(__file__).parents[2] / "docs" / "schemas" / "chart.schema.json"
POINT = 25.4 / 72
SIZES_MM = {"letter": (215.9, 279.4), "a4": (210.0, 297.0)}
HOSTILE = (
    '#panic("x") $1+1$ [a](b) \\ *b* _i_ `r` <l> @cite',
    "a name that never ends " * 40,
    "🛞 磨",
    "tab\tand\nnew line",
)


def shelf_of(count: int, name: str = "no. {}") -> Shelf:
    notes = (MandrelNote((6 + k) * 0.0254 / 16, name.format(k + 1)) for k in range(count))
    return Shelf(tuple(notes), True, "arbor press 3 ton")


def squeezed(text: str) -> str:
    return "".join(text.split())


def only_page(pdf: bytes) -> str:
    (page,) = PdfReader(io.BytesIO(pdf)).pages
    return page.extract_text()


@pytest.fixture(scope="module", params=[(6, "inch"), (6, "mm"), (40, "inch"), (40, "mm")], ids=str)
def drawn(request: pytest.FixtureRequest) -> Chart:
    count, units = request.param
    return shelf_chart(shelf_of(count), units=units)


@pytest.mark.parametrize("paper", SIZES_MM)
def test_it_is_one_page_of_the_paper_asked_for(drawn: Chart, paper: str) -> None:
    (page,) = PdfReader(io.BytesIO(chart_bytes(drawn, paper))).pages
    size = (float(page.mediabox.width) * POINT, float(page.mediabox.height) * POINT)
    assert size == pytest.approx(SIZES_MM[paper], abs=0.2)


@pytest.mark.parametrize("paper", SIZES_MM)
def test_every_mandrel_stands_on_it_with_its_marks_or_is_said_to_be_left_out(
    drawn: Chart, paper: str
) -> None:
    text = only_page(chart_bytes(drawn, paper))
    shown, _, left_out = text.partition("Left out for room")
    for bar in drawn.bars:
        here = squeezed(f"{bar.mandrel}*") in squeezed(shown)
        assert here or bar.mandrel in left_out, bar.mandrel
        for mark in bar.marks if here else ():
            assert bore_number(mark.bore, drawn.units) in shown
            assert rule_reading(mark.reading, drawn.units) in shown.replace("\u00a0", " ")


def test_every_depth_stands_on_it(drawn: Chart) -> None:
    text = only_page(chart_bytes(drawn))
    depths = [depth_number(c.depth, drawn.units) for c in drawn.cells if c.depth is not None]
    assert len(depths) > 20
    assert [d for d in depths if d not in text] == []


def test_gaps_assumptions_and_sources_stand_on_it(drawn: Chart) -> None:
    found = squeezed(only_page(chart_bytes(drawn)))
    said = ("No mandrel shown takes a bore below", "a wiped film of oil", "TM 1-420", "1 in 20",
            "common practice, no source")  # fmt: skip
    assert [words for words in said if squeezed(words) not in found] == []
    assert all(squeezed(a.taken) in found for a in drawn.assumed)


def test_six_mandrels_say_each_gap_where_it_lies() -> None:
    text = only_page(chart_bytes(shelf_chart(shelf_of(6))))
    assert text.count("no mandrel takes") == 5


def test_a_shelf_too_large_for_a_page_says_what_is_left_out() -> None:
    notes = tuple(MandrelNote(0.008 + 0.0001 * k, f"piece {k}") for k in range(150))
    text = only_page(chart_bytes(shelf_chart(Shelf(notes, True), ("brass",))))
    assert "Left out for room" in text


def test_the_feed_stands_in_the_head_of_the_table_of_depths() -> None:
    """The chart's own feed, cut here to 0.05 mm: 0.05/25.4 = 0.0020 in."""
    chart = replace(shelf_chart(shelf_of(2), ("brass",), units="mm"), feed=0.05e-3)
    assert "deepest cut at 0.05 mm a turn" in only_page(chart_bytes(chart))
    assert "deepest cut at 0.002 in a turn" in only_page(chart_bytes(replace(chart, units="inch")))


def test_the_same_shelf_gives_the_same_bytes() -> None:
    first, second = (chart_bytes(shelf_chart(shelf_of(3))) for _ in range(2))
    assert first == second
    assert "/CreationDate" not in (PdfReader(io.BytesIO(first)).metadata or {})


@pytest.mark.parametrize("name", HOSTILE)
def test_no_name_breaks_it(name: str) -> None:
    shelf = Shelf((MandrelNote(0.016, name),), True)
    text = only_page(chart_bytes(shelf_chart(shelf, ("brass",))))
    printed = squeezed("".join(c if c.isascii() else "?" for c in name))[:12]
    assert printed in squeezed(text)


def test_forty_long_names_still_make_one_page() -> None:
    chart = shelf_chart(shelf_of(40, "number {} of a very long row of names that go on and on"))
    assert "number 1 of" in only_page(chart_bytes(chart))


def test_a_shelf_where_nothing_is_long_enough_is_a_page_that_says_so() -> None:
    stub = MandrelNote(0.02, "stubby", ground_length=0.03, overall_length=0.05)
    text = only_page(chart_bytes(shelf_chart(Shelf((stub,), True))))
    assert "Too short" in text
    assert "stubby" in text
    assert "How deep a cut holds" not in text


def test_another_paper_is_refused() -> None:
    with pytest.raises(RefusedInput, match="letter or a4"):
        chart_bytes(shelf_chart(shelf_of(1), ("brass",)), "a3")


# The command


@pytest.fixture
def shelf_file(tmp_path: Path) -> str:
    path = tmp_path / "shelf.toml"
    path.write_text('units = "mm"\nmandrel = ["16mm", "20mm"]\n', encoding="utf-8")
    return str(path)


def test_the_command_writes_the_page_and_says_where(shelf_file: str, tmp_path: Path) -> None:
    out = tmp_path / "chart.pdf"
    done = ran("shelf", "chart", shelf_file, "--out", str(out), "--material", "brass")
    assert (done.code, done.err) == (0, "")
    assert "No mandrel takes 16." in done.out
    assert f"Wall chart of 2 of 2 mandrels: {out}" in done.out
    assert "free-cutting brass" in only_page(out.read_bytes()).replace("\n", " ")


def test_the_json_has_units_in_its_keys(shelf_file: str, tmp_path: Path) -> None:
    out = str(tmp_path / "chart.pdf")
    done = ran("shelf", "chart", shelf_file, "--out", out, "--json")
    said = json.loads(done.out)
    assert said["units"] == "mm"
    assert set(said["bars"][0]["bore_window_m"]) == {"low", "high"}
    assert {"bore_m", "reading_m"} == set(said["bars"][0]["marks"][0])
    assert {"outside_m", "depth_m", "margin", "margin_low"} < set(said["cells"][0])
    assert {"press_m", "push_N", "limited_by"} < set(said["columns"][0])


def test_the_command_refuses_in_one_line_and_writes_nothing(
    shelf_file: str, tmp_path: Path
) -> None:
    out = str(tmp_path / "chart.pdf")
    none = tmp_path / "none.toml"
    none.write_text('mandrel = "none"\n', encoding="utf-8")
    assert "--out" in refused("shelf", "chart", shelf_file)
    assert "found 'unobtainium'" in refused(
        "shelf", "chart", shelf_file, "--out", out, "--material", "unobtainium"
    )
    assert "letter or a4" in refused("shelf", "chart", shelf_file, "--out", out, "--paper", "a3")
    assert "mandrel" in refused("shelf", "chart", str(none), "--out", out)
    assert "twice" in refused("shelf", "chart", shelf_file, "--out", shelf_file)
    assert "no/such" in refused("shelf", "chart", "no/such.toml", "--out", out)
    assert not Path(out).exists()


# The skin of a casting


def test_a_depth_that_leaves_the_skin_of_a_casting_is_marked_in_its_cell(drawn: Chart) -> None:
    """The least depth under the skin is 0.4 mm, common practice; 0.016 in is deeper, 0.015 is not."""
    least = 0.4e-3
    depths = [c for c in drawn.cells if c.depth is not None]
    assert {c.leaves_skin for c in depths} == {True, False}
    for cell in depths:
        assert cell.depth is not None
        assert cell.leaves_skin == (cell.depth < least - 1e-9)
    assert not any(c.leaves_skin for c in drawn.cells if c.depth is None)
    shown = [text for row in chart_data(drawn)["cuts"]["rows"] for text, _ in row["cells"]]
    assert {text.endswith("†") for text in shown if text[:1].isdigit()} == {True, False}
    for text in shown:
        if text[:1].isdigit():
            depth = float(text.rstrip("+†")) * (0.0254 if drawn.units == "inch" else 1e-3)
            assert text.endswith("†") == (depth < least - 1e-9), text


def test_the_mark_is_explained_at_the_head_of_the_table_and_only_where_it_stands(
    drawn: Chart,
) -> None:
    text = squeezed(only_page(chart_bytes(drawn)))
    assert squeezed("†: does not get under the skin of a casting") in text
    deep = replace(drawn, cells=tuple(replace(c, leaves_skin=False) for c in drawn.cells))
    assert "†" not in only_page(chart_bytes(deep))


# The schema


@pytest.mark.parametrize(("count", "units"), [(1, "mm"), (6, "inch")])
def test_a_chart_as_json_fits_the_published_schema(count: int, units: str) -> None:
    schema = json.loads(SCHEMA_FILE.read_text(encoding="utf-8"))
    Draft202012Validator.check_schema(schema)
    written = json.loads(json.dumps(chart_object(shelf_chart(shelf_of(count), units=units))))
    Draft202012Validator(schema).validate(written)
    assert schema["required"] == list(written)


def test_a_chart_with_nothing_long_enough_fits_it_too() -> None:
    schema = json.loads(SCHEMA_FILE.read_text(encoding="utf-8"))
    short = Shelf((MandrelNote(0.016, ground_length=0.02, overall_length=0.05),), stated=True)
    written = chart_object(shelf_chart(short, units="mm"))
    assert written["bars"][0]["bore_window_m"] is None
    Draft202012Validator(schema).validate(json.loads(json.dumps(written)))


@pytest.mark.parametrize(
    "broken",
    [{"title": 3}, {"bars": [{}]}, {"cells": None}, {"extra": 1}, {"skin_depth_m": "0.4 mm"}],
    ids=str,
)
def test_another_object_does_not_fit_it(broken: dict[str, object]) -> None:
    schema = json.loads(SCHEMA_FILE.read_text(encoding="utf-8"))
    written = json.loads(json.dumps(chart_object(shelf_chart(shelf_of(1), ("brass",)))))
    with pytest.raises(ValidationError):
        Draft202012Validator(schema).validate({**written, **broken})


def test_the_published_schema_of_a_chart_is_up_to_date() -> None:
    """Write it anew with `chart_schema_text()` of `borewright.report`."""
    assert SCHEMA_FILE.read_text(encoding="utf-8") == chart_schema_text()
