"""The picture, the sheet and the JSON of one plan say the same."""

from __future__ import annotations

import json
import re
from io import BytesIO
from pathlib import Path
from xml.etree import ElementTree

import pytest
from pypdf import PdfReader
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.drawing.frame import Scale
from borewright.drawing.side_view import side_view
from borewright.drawing.svg import svg
from borewright.job import parse_job, read_job, read_shelf
from borewright.report.plan_json import plan_json
from borewright.report.sheet_data import sheet_data
from borewright.report.taken_words import schedule_of
from borewright.report.words import figure_words, show_for
from borewright.service.files import drawing_text, sheet_bytes

ROOT = Path(__file__).resolve().parents[2]
JOBS = sorted((ROOT / "tests" / "golden" / "jobs").glob("*.toml"))
EXAMPLES = sorted((ROOT / "examples").glob("hollow-brook-drive-wheel*.toml"))
HALF_PER_CENT = 0.005


def planned(path: Path) -> Plan:
    shelf = ROOT / "examples" / "hollow-brook-shelf.toml"
    return plan(read_job(path), read_shelf(shelf) if path.parent.name == "examples" else None)


def ids(path: Path) -> str:
    return path.stem


@pytest.mark.parametrize("path", [*JOBS, *EXAMPLES], ids=ids)
def test_every_step_figure_is_on_the_first_page_and_one_more_is_there_where_a_bore_asks(
    path: Path,
) -> None:
    """`no-mandrel` is the one job of these whose bore has still to be brought to a mandrel. What a
    cut is set to is said in full on the page of the cutting, where there is one."""
    answer = planned(path)
    cutting = schedule_of(answer) is not None
    pages = PdfReader(BytesIO(sheet_bytes(answer))).pages
    assert len(pages) == 1 + (path.stem == "no-mandrel") + cutting
    read = [pages[0], *([pages[-1]] if cutting else [])]
    text = "".join("".join(page.extract_text().split()) for page in read)
    show = show_for(answer)
    for step in answer.steps:
        for figure in step.figures:
            best = figure_words(figure, show).split(", ")[0]
            assert "".join(best.split()) in text, (step.title, figure.name)
        for blank in step.blanks:
            assert "".join(f"{blank}:".split()) in text


@pytest.mark.parametrize("scale", [Scale(1, 2), Scale(1, 1), Scale(2, 1)], ids=lambda s: s.words)
@pytest.mark.parametrize("path", EXAMPLES, ids=ids)
def test_the_picture_read_back_gives_the_json_s_seat_and_diameters(
    path: Path, scale: Scale
) -> None:
    """Every length on paper over the scale, against the plan's JSON."""
    answer = planned(path)
    assert answer.layout is not None
    drawn = ElementTree.fromstring(
        svg(side_view(answer.layout, show_for(answer), scale, width=400.0))
    )
    layout = json.loads(plan_json(answer))["layout"]
    ends = layout["ground_length_m"] + layout["end_length_m"]
    left = min(points_of(drawn, "mandrel-large-end")[0])
    for name, position in (("seat-low", "low"), ("seat-high", "high")):
        paper = points_of(drawn, name)[0][0]
        metres = ends - (paper - left) / 1000 / scale.ratio
        assert metres == pytest.approx(layout["seat_m"][position], rel=HALF_PER_CENT)
    heights = points_of(drawn, "work-outside")[1]
    axis = points_of(drawn, "axis")[1][0]
    outside = max(ring["outside_m"] for ring in layout["rings"])
    assert 2 * (max(heights) - axis) / 1000 / scale.ratio == pytest.approx(
        outside, rel=HALF_PER_CENT
    )


def points_of(drawn: ElementTree.Element, name: str) -> tuple[list[float], list[float]]:
    """All x and all y of the parts whose data-name begins with this name."""
    xs: list[float] = []
    ys: list[float] = []
    for part in drawn.iter():
        if part.get("data-name", "").startswith(name):
            x, y = _coordinates(part)
            xs += x
            ys += y
    assert xs, name
    return xs, ys


def _coordinates(part: ElementTree.Element) -> tuple[list[float], list[float]]:
    if part.get("x1"):
        return [float(part.get(k, 0)) for k in ("x1", "x2")], [
            float(part.get(k, 0)) for k in ("y1", "y2")
        ]
    numbers = [
        float(n) for n in re.findall(r"-?\d+\.?\d*", part.get("d") or part.get("points") or "")
    ]
    return numbers[0::2], numbers[1::2]


def test_the_drawing_is_the_one_on_the_sheet() -> None:
    answer = planned(EXAMPLES[0])
    words = re.findall(r">([^<>]*face [AB] may sit[^<>]*)<", drawing_text(answer))
    text = "".join(PdfReader(BytesIO(sheet_bytes(answer))).pages[0].extract_text().split())
    assert words
    assert all("".join(w.split()) in text for w in words)


JOB = """
title = "pulley"
units = "inch"
[work]
material = "6061"
blank = "bar"
outside = "2 5/8in"
length = "1 1/8in"
bore = { size = "0.6251in", measured_with = "bore gauge", made_by = "reamed" }
finished = { outside = "2.5in", tolerance = "0.002in" }
[hold]
mandrels = ["5/8in"]
press = "one-ton arbor press"
"""


def of_text(text: str) -> Plan:
    return plan(parse_job(text, "job.toml"), None)


def test_the_last_step_says_the_size_and_its_limits_half_the_band_each_way() -> None:
    answer = of_text(JOB)
    (step,) = [s for s in answer.steps if s.title == "Cool, then the last size"]
    size = "2.500 in (63.50 mm), 2.499 to 2.501 in (63.475 to 63.525 mm)"
    assert f"Finish to {size}." in step.text
    assert f"to finish at {size}" in answer.echo
    assert answer.finished_outside == pytest.approx(0.0635)


def test_without_a_tolerance_only_the_size_is_said_and_without_a_size_nothing() -> None:
    (step,) = [
        s
        for s in of_text(JOB.replace(', tolerance = "0.002in"', "")).steps
        if s.title.startswith("Cool")
    ]
    assert "Finish to 2.500 in (63.50 mm). On the mandrel" in step.text
    unsaid = of_text("\n".join(x for x in JOB.splitlines() if not x.startswith("finished")))
    assert unsaid.finished_outside is None
    assert not [s for s in unsaid.steps if "Finish to" in s.text]


def test_before_the_wheel_the_tool_leaves_the_wheel_its_stock() -> None:
    """The turning cut leaves 2.625 - 2 x passes x 0.02 in; the wheel takes the rest."""
    ground = (
        JOB
        + """
[[cut]]
kind = "turn"
depth = "0.02in"
[[cut]]
kind = "grind"
depth = "0.0005in"
coolant = true
"""
    )
    answer = of_text(ground)
    (turned,) = [c for c in answer.cuts if c.kind == "turn"]
    (step,) = [s for s in answer.steps if s.title.startswith("Cool")]
    left = 2.625 - 2 * turned.passes * 0.02
    assert f"Turn to {left:.3f} in" in step.text
    assert "only: the wheel takes it to 2.500 in" in step.text


def test_every_turned_row_of_the_table_says_what_it_leaves() -> None:
    """0.125 in of stock on diameter, of which twice the finishing depth is left by the roughing."""
    answer = of_text(JOB)
    depth = {c.id: c.depth / 0.0254 for c in answer.cuts}
    names = {c.id: row[0] for c, row in zip(answer.cuts, sheet_data(answer)["cuts"], strict=True)}
    said = {k: v.replace("\N{NO-BREAK SPACE}", " ") for k, v in names.items()}
    assert said["finish"] == "finish the outside, to 2.500 in"
    assert said["rough"] == f"rough the outside, to {2.5 + 2 * depth['finish']:.3f} in"


def test_the_press_by_a_rule_is_not_said_to_hundredths_of_a_millimetre() -> None:
    answer = of_text(JOB)
    (step,) = [s for s in answer.steps if s.title == "Press"]
    found = re.match(r"\d[\d /]* in \(([\d.]+) mm\) further", step.text)
    assert found is not None
    assert float(found[1]) * 2 == round(float(found[1]) * 2)
    (press,) = [f for f in step.figures if f.name == "press_distance"]
    assert float(found[1]) == pytest.approx(1000 * press.best, abs=0.26)


@pytest.mark.parametrize(
    ("press", "blows"), [("soft hammer", True), ("one-ton arbor press", False)]
)
def test_the_push_says_whether_blows_take_its_place(press: str, blows: bool) -> None:
    answer = of_text(JOB.replace("one-ton arbor press", press))
    assert answer.push is not None
    assert answer.push.by_blows is blows


@pytest.mark.parametrize("driver", ["collet", "three-jaw"])
def test_the_picture_shows_what_the_job_says_drives_the_mandrel(driver: str) -> None:
    answer = of_text(JOB + f'driven_by = "{driver}"\n')
    assert answer.layout is not None
    assert answer.layout.driven_by == driver
    drawn = drawing_text(answer)
    assert f">{driver}<" in drawn
    assert 'data-name="dog' not in drawn
    assert 'data-name="dog' in drawing_text(of_text(JOB))
