"""The crown's template at full size, measured again where it was written: SVG, DXF and PDF."""

from __future__ import annotations

import math
import re
import subprocess
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import ezdxf
import numpy as np
import pytest
from tests.cli_run import ran, words
from tests.tools import system_tool

FACE, HEIGHT = 60.0, 6.0
"""In mm: a crown as steep as none, so that a pixel is little of it."""
PULLEY = {
    "--diameter": "200mm",
    "--face": "60mm",
    "--height": "6mm",
    "--dial": "diameter",
}
RADIUS = (FACE**2 / 4 + HEIGHT**2) / (2 * HEIGHT)
SVG_ROUNDING = 2e-4
"""mm: an SVG number has four decimals."""
PER_MM = 20
"""Pixels in a mm of the rendered page."""
LINE = 0.5
"""mm: width of the pieces' line; its middle is what is measured."""


def written(folder: Path, ending: str, **changes: str | None) -> Path:
    path = folder / f"crown.{ending}"
    done = ran("crown", *words(PULLEY, template=str(path), **changes), "--json")
    assert done.code == 0, done.err
    return path


def named(root: ElementTree.Element, name: str) -> list[ElementTree.Element]:
    return [e for e in root.iter() if e.get("data-name") == name]


def points(element: ElementTree.Element) -> np.ndarray:
    return np.array([[float(v) for v in p.split(",")] for p in element.get("points", "").split()])


# SVG


def test_the_svg_is_as_large_on_paper_as_it_says(tmp_path: Path) -> None:
    root = ElementTree.parse(written(tmp_path, "svg", height=None)).getroot()
    assert (root.get("width"), root.get("height")) == ("297mm", "210mm")
    assert root.get("viewBox") == "0 0 297 210"
    assert not named(root, "larger-paper")
    assert root.get("data-scale") == "1"


def test_a_page_larger_than_its_paper_says_so(tmp_path: Path) -> None:
    root = ElementTree.parse(written(tmp_path, "svg", face="300mm")).getroot()
    assert root.get("width") == "328mm"
    assert named(root, "larger-paper")


def test_the_taper_in_the_svg_has_its_face_height_and_flat(tmp_path: Path) -> None:
    root = ElementTree.parse(written(tmp_path, "svg", flat="10mm")).getroot()
    for name in ("gauge", "form"):
        (piece,) = named(root, name)
        left, flat_from, flat_to, right = points(piece)[:4]
        assert right[0] - left[0] == pytest.approx(FACE, abs=SVG_ROUNDING)
        assert flat_to[0] - flat_from[0] == pytest.approx(10.0, abs=SVG_ROUNDING)
        assert left[1] - flat_from[1] == pytest.approx(HEIGHT, abs=SVG_ROUNDING)
        assert right[1] - flat_to[1] == pytest.approx(HEIGHT, abs=SVG_ROUNDING)


def test_the_gauge_is_hollow_where_the_form_stands_out(tmp_path: Path) -> None:
    """The same line, the gauge's back over it and the form's under it."""
    root = ElementTree.parse(written(tmp_path, "svg")).getroot()
    gauge, form = (points(named(root, name)[0]) for name in ("gauge", "form"))
    assert gauge[:3] - gauge[0] == pytest.approx(form[:3] - form[0], abs=SVG_ROUNDING)
    assert gauge[3:, 1].max() < gauge[:3, 1].min()
    assert form[3:, 1].min() > form[:3, 1].max()


def test_the_arc_in_the_svg_is_the_circle_through_both_edges_and_the_middle(tmp_path: Path) -> None:
    root = ElementTree.parse(written(tmp_path, "svg", shape="arc")).getroot()
    for name in ("gauge", "form"):
        (piece,) = named(root, name)
        number = r"(-?[\d.]+)"
        found = re.fullmatch(
            rf"M{number} {number}A{number} {number} 0 (\d) (\d) {number} {number}",
            piece.get("d", ""),
        )
        assert found
        x1, y1, rx, ry, large, sweep, x2, y2 = map(float, found.groups())
        assert (large, sweep) == (0, 1), "short way over the top, y being down"
        assert (rx, ry) == pytest.approx((RADIUS, RADIUS), abs=SVG_ROUNDING)
        assert (x2 - x1, y2 - y1) == pytest.approx((FACE, 0.0), abs=SVG_ROUNDING)


def test_the_stretched_view_says_by_how_much_and_is_that_high(tmp_path: Path) -> None:
    root = ElementTree.parse(written(tmp_path, "svg", shape="arc")).getroot()
    (line,) = named(root, "stretched")
    times = float(root.get("data-heights", "0"))
    heights = points(line)[:, 1]
    assert heights.max() - heights.min() == pytest.approx(times * HEIGHT, abs=SVG_ROUNDING)
    said = named(root, "stretched-words")[0].text or ""
    assert f"its heights drawn {times:g} times" in said


def test_the_list_on_the_page_is_the_list_of_the_answer(tmp_path: Path) -> None:
    import json

    changes = {"shape": "arc", "steps": "12", "division": "0.05mm"}
    root = ElementTree.parse(written(tmp_path, "svg", **changes)).getroot()
    cells = [e.text or "" for e in named(root, "cut")]
    answer = json.loads(ran("crown", *words(PULLEY, **changes), "--json").out)
    assert len(cells) == answer["cuts_in_half_the_face"]
    for k, cell in enumerate(cells, 1):
        stop, reading = (float(v.split()[0]) for v in cell.partition(". ")[2].split(": "))
        assert stop == pytest.approx(1e3 * answer[f"cut_{k}_from_edge_m"], abs=0.051)
        assert reading == pytest.approx(1e3 * answer[f"cut_{k}_dial_m"], abs=1e-6)


def test_words_stay_on_the_page_and_off_one_another(tmp_path: Path) -> None:
    from borewright.drawing.crown_sheet import draw_crown
    from borewright.drawing.measure import text_box
    from borewright.drawing.scene import Text
    from borewright.making.crown import CrownAsked, crown_for
    from borewright.making.crown_words import checked, setting, stepping, taken
    from borewright.quantities.show import Show
    from borewright.reference import tables

    show = Show("inch")
    for asked, face in (
        (CrownAsked(), 0.012),
        (CrownAsked(shape="arc", dial="diameter"), 0.0508),
        (CrownAsked(flat=0.00635, rule="dooley"), 0.0508),
        (CrownAsked(shape="arc", rule="dooley-one"), 0.24),
        (CrownAsked(steps=40), 0.1),
    ):
        crown = crown_for(0.127, face, asked, "inch", tables())
        said = (
            taken(crown, show),
            *setting(crown, show),
            *stepping(crown, show),
            checked(crown, show),
        )
        scene = draw_crown(crown, "inch", "letter", said)
        boxes = [text_box(t) for t in scene.items if isinstance(t, Text) and not t.rotation]
        for k, box in enumerate(boxes):
            assert box.left >= 5.0
            assert box.right <= scene.width - 5.0
            assert 5.0 <= box.top < box.bottom <= scene.height - 5.0
            assert not any(box.overlaps(other) for other in boxes[:k])
        if asked.steps is None:
            assert (scene.width, scene.height) == (279.4, 215.9), "one sheet takes it"


# DXF, read by its own library


def read_dxf(path: Path) -> Any:
    drawing = ezdxf.readfile(path)
    assert drawing.audit().errors == []
    assert drawing.audit().fixes == []
    assert drawing.header["$INSUNITS"] == 4, "millimetres"
    return drawing


def test_the_taper_in_the_dxf_is_two_closed_lines_in_real_size(tmp_path: Path) -> None:
    space = read_dxf(written(tmp_path, "dxf", flat="10mm")).modelspace()
    outlines = list(space.query("LWPOLYLINE[layer=='visible']"))
    assert len(outlines) == 2
    for outline in outlines:
        assert outline.closed
        left, flat_from, flat_to, right = list(outline.get_points("xy"))[:4]
        assert right[0] - left[0] == pytest.approx(FACE)
        assert flat_to[0] - flat_from[0] == pytest.approx(10.0)
        assert flat_from[1] - left[1] == pytest.approx(HEIGHT), "up, as DXF counts"
        slope = math.atan2(flat_from[1] - left[1], flat_from[0] - left[0])
        assert slope == pytest.approx(math.atan(HEIGHT / (FACE / 2 - 5.0)))


def test_the_arc_in_the_dxf_is_a_true_arc_that_meets_its_sides(tmp_path: Path) -> None:
    space = read_dxf(written(tmp_path, "dxf", shape="arc")).modelspace()
    arcs, sides = space.query("ARC[layer=='visible']"), space.query("LINE[layer=='visible']")
    assert (len(arcs), len(sides)) == (2, 6)
    ends = {tuple(round(v, 6) for v in (*s.dxf.start, *s.dxf.end)) for s in sides}
    corners = {e[:2] for e in ends} | {e[3:5] for e in ends}
    for arc in arcs:
        assert arc.dxf.radius == pytest.approx(RADIUS)
        start, end = arc.start_point, arc.end_point
        assert abs(start.x - end.x) == pytest.approx(FACE)
        top = arc.dxf.center.y + arc.dxf.radius
        assert top - start.y == pytest.approx(HEIGHT)
        assert {(round(p.x, 6), round(p.y, 6)) for p in (start, end)} <= corners


def test_layers_are_called_what_the_lines_are(tmp_path: Path) -> None:
    drawing = read_dxf(written(tmp_path, "dxf"))
    used = {entity.dxf.layer for entity in drawing.modelspace()}
    assert used == {"visible", "axis", "words"}
    assert drawing.layers.get("axis").dxf.linetype == "CENTER"
    assert drawing.layers.get("visible").dxf.lineweight == 50


@pytest.mark.parametrize("ending", ["svg", "dxf", "pdf"])
def test_the_same_crown_is_the_same_bytes(tmp_path: Path, ending: str) -> None:
    first = written(tmp_path, ending).read_bytes()
    assert written(tmp_path, ending).read_bytes() == first


def test_no_dxf_library_is_loaded_where_no_dxf_is_written(tmp_path: Path) -> None:
    import sys

    code = (
        "import sys; from borewright.cli.app import run;"
        f"run(['crown', '--diameter', '5in', '--face', '2in', '--template', {str(tmp_path / 'a.svg')!r}]);"
        "sys.exit('ezdxf' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code], capture_output=True).returncode == 0


# PDF, rendered and measured in pixels


def rendered(pdf: Path) -> np.ndarray:
    """The page as rows of gray, dark below half."""
    tool, stem = system_tool("pdftoppm"), pdf.with_suffix("")
    command = [tool, "-gray", "-singlefile", "-r", str(25.4 * PER_MM), str(pdf), str(stem)]
    subprocess.run(command, check=True, capture_output=True)
    magic, size, _, pixels = stem.with_suffix(".pgm").read_bytes().split(b"\n", 3)
    assert magic == b"P5"
    width, height = map(int, size.split())
    return np.frombuffer(pixels, np.uint8).reshape(height, width) < 128


def runs(dark: np.ndarray) -> list[tuple[int, int]]:
    """Where stretches of dark begin and end, along a row."""
    edges = np.flatnonzero(np.diff(np.concatenate([[0], dark.astype(np.int8), [0]])))
    return list(zip(edges[::2].tolist(), edges[1::2].tolist(), strict=True))


def longest_near(page: np.ndarray, y: float) -> list[float]:
    """Lengths in mm of level lines within half a mm of a height, longest first."""
    rows = page[round((y - 0.5) * PER_MM) : round((y + 0.5) * PER_MM)]
    return sorted(((b - a) / PER_MM for row in rows for a, b in runs(row)), reverse=True)


def test_the_scale_bars_of_the_printed_page_are_as_long_as_they_say(tmp_path: Path) -> None:
    page = rendered(written(tmp_path, "pdf", height=None))
    assert page.shape == pytest.approx((210 * PER_MM, 297 * PER_MM), abs=1)
    pixel = 1.5 / PER_MM
    level = longest_near(page, 210.0 - 20.0)
    thin = 0.25  # an end mark is that wide, half of it beyond the line's end at either side
    assert level[0] == pytest.approx(50.8 + thin, abs=pixel)
    assert any(length == pytest.approx(50.0 + thin, abs=pixel) for length in level)
    x = 297.0 - 14.0 - 4.0
    upright = longest_near(page.T, x)
    assert upright[0] == pytest.approx(25.0 + thin, abs=pixel)


def test_the_form_on_the_printed_page_is_the_arc(tmp_path: Path) -> None:
    """Every column of the form's upper line against the circle, to a pixel."""
    svg = ElementTree.parse(written(tmp_path, "svg", shape="arc")).getroot()
    path = named(svg, "form")[0].get("d", "")
    left, low = (float(v) for v in path[1:].split("A")[0].split())
    page = rendered(written(tmp_path, "pdf", shape="arc"))
    top = low - HEIGHT
    for share in (0.05, 0.2, 0.35, 0.65, 0.8, 0.95):
        z = (share - 0.5) * FACE
        wanted = top + RADIUS - math.sqrt(RADIUS**2 - z**2)
        column = page[:, round((left + share * FACE) * PER_MM)]
        near = column[round((wanted - 1.0) * PER_MM) : round((wanted + 1.0) * PER_MM)]
        ((a, b),) = runs(near)
        found = wanted - 1.0 + (a + b) / 2 / PER_MM
        assert found == pytest.approx(wanted, abs=1.5 / PER_MM), share
        assert (b - a) / PER_MM == pytest.approx(LINE, abs=3 / PER_MM)
