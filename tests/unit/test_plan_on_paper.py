"""The picture, the sheet and the JSON of one plan say the same."""

from __future__ import annotations

import json
import re
from io import BytesIO
from pathlib import Path
from xml.etree import ElementTree

import pytest
from pypdf import PdfReader

from borewright.answer.records import Plan
from borewright.drawing.frame import Scale
from borewright.drawing.side_view import side_view
from borewright.drawing.svg import svg
from borewright.job import read_job, read_shelf
from borewright.report.plan_json import plan_json
from borewright.report.words import figure_words, show_for
from borewright.service.files import drawing_text, sheet_bytes
from borewright.service.planned import plan

ROOT = Path(__file__).resolve().parents[2]
JOBS = sorted((ROOT / "tests" / "golden" / "jobs").glob("*.toml"))
EXAMPLES = sorted((ROOT / "examples").glob("hollow-brook-*wheel*.toml"))
HALF_PER_CENT = 0.005


def planned(path: Path) -> Plan:
    shelf = ROOT / "examples" / "hollow-brook-shelf.toml"
    return plan(read_job(path), read_shelf(shelf) if path.parent.name == "examples" else None)


def ids(path: Path) -> str:
    return path.stem


@pytest.mark.parametrize("path", [*JOBS, *EXAMPLES], ids=ids)
def test_the_sheet_is_one_page_with_every_step_figure(path: Path) -> None:
    answer = planned(path)
    pages = PdfReader(BytesIO(sheet_bytes(answer))).pages
    assert len(pages) == 1
    text = "".join(pages[0].extract_text().split())
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
