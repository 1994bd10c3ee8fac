"""Drawings opened by a reader that is not ours: ezdxf's audit, and what its dimensions measure."""

from __future__ import annotations

import re
from typing import Any, Literal
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.drawn_parts import INCH, measured, read_dxf, spindle, wheel

from borewright.answer.drawn_part import Across, Along, DrawnPart, Limits, Stretch
from borewright.drawing.dxf import dxf
from borewright.drawing.svg import svg
from borewright.drawing.workshop.look import Look, look_for
from borewright.drawing.workshop.page import draw_part

UNIT = {"mm": 1e-3, "inch": INCH}
CLOSE = 1e-6
"""Of the drawing's unit: DXF keeps sixteen digits, the scene's sums lose a few."""


def drawn(part: DrawnPart, look: Look) -> Any:
    scene = draw_part(part, look)
    return read_dxf(dxf(scene, float(dict(scene.data)["scale"]), look.units))


@pytest.mark.parametrize("units", ["mm", "inch"])
@pytest.mark.parametrize("part", [spindle(), wheel()], ids=["spindle", "wheel"])
def test_every_dimension_measures_the_size_it_says(part: DrawnPart, units: Any) -> None:
    wanted = sorted(
        [a.limits.size / UNIT[units] for a in part.across]
        + [(a.end - a.start) / UNIT[units] for a in part.along]
    )
    found = sorted(value for value, _ in measured(drawn(part, look_for(units))))
    assert found == pytest.approx(wanted, abs=CLOSE)


@pytest.mark.parametrize("units", ["mm", "inch"])
def test_the_file_says_which_unit_it_is_in(units: Any) -> None:
    code = {"inch": 1, "mm": 4}[units]
    assert drawn(spindle(), look_for(units)).header["$INSUNITS"] == code


def test_the_part_stands_in_its_own_size_whatever_the_scale_on_paper() -> None:
    document = drawn(wheel(), look_for("mm"))
    lines = [e for e in document.modelspace().query("LINE") if e.dxf.layer == "visible"]
    heights = [abs(e.dxf.start.y - e.dxf.end.y) for e in lines]
    reach = max(max(e.dxf.start.y, e.dxf.end.y) for e in lines) - min(
        min(e.dxf.start.y, e.dxf.end.y) for e in lines
    )
    assert reach == pytest.approx(130.0, abs=1e-6)
    assert max(heights) <= 130.0


def test_layers_say_their_line_type_of_iso_128() -> None:
    layers = {layer.dxf.name: layer for layer in drawn(spindle(), look_for("mm")).layers}
    assert layers["visible"].dxf.lineweight == 50
    assert layers["axis"].dxf.linetype == "CENTER"
    assert layers["hidden"].dxf.linetype == "DASHED"
    assert "ISO 128-2 01.2" in layers["visible"].description
    assert "ISO 128-2 04.1" in layers["axis"].description


def test_what_is_drawn_lies_on_the_layer_of_its_kind() -> None:
    space = drawn(spindle(), look_for("mm")).modelspace()
    assert {e.dxf.layer for e in space.query("DIMENSION")} == {"dimensions"}
    assert [e for e in space.query("LINE") if e.dxf.layer == "axis"]
    assert [e for e in space.query("LWPOLYLINE") if e.dxf.layer == "hidden"]
    section = drawn(wheel(), look_for("mm")).modelspace()
    assert [e for e in section.query("LINE") if e.dxf.layer == "section"]


def test_the_same_part_gives_the_same_bytes() -> None:
    scenes = [draw_part(wheel(), look_for("mm")) for _ in range(2)]
    assert dxf(scenes[0], 0.5) == dxf(scenes[1], 0.5)
    assert svg(scenes[0]) == svg(scenes[1])


@settings(max_examples=40, deadline=None)
@given(
    st.floats(0.004, 0.3),
    st.floats(0.01, 0.9),
    st.sampled_from(["inch", "mm"]),
    st.booleans(),
)
def test_a_plain_rod_of_any_size_comes_back_whole(
    size: float, length: float, units: Literal["inch", "mm"], both: bool
) -> None:
    rod = DrawnPart(
        "Rod",
        "steel",
        (Stretch(0.0, length, size),),
        across=(Across(0.0, Limits(size), "left"),),
        along=(Along(0.0, length, Limits(length)),),
        end_view="left",
    )
    scene = draw_part(rod, look_for(units, both=both))
    found = measured(read_dxf(dxf(scene, float(dict(scene.data)["scale"]), units)))
    wanted = sorted([size / UNIT[units], length / UNIT[units]])
    assert sorted(value for value, _ in found) == pytest.approx(wanted, rel=1e-6)
    inside_page(svg(scene))


def inside_page(text: str) -> None:
    """Every line's ends lie on the paper."""
    root = ElementTree.fromstring(text)
    width, height = (float(v) for v in root.attrib["viewBox"].split()[2:])
    for line in root.iter("{http://www.w3.org/2000/svg}line"):
        for key, most in (("x1", width), ("x2", width), ("y1", height), ("y2", height)):
            assert 0.0 <= float(line.attrib[key]) <= most


def test_the_bar_of_the_scale_and_the_marks_of_full_size_are_as_long_as_they_say() -> None:
    scene = draw_part(wheel(), look_for("mm"))
    scale = float(dict(scene.data)["scale"])
    root = ElementTree.fromstring(svg(scene))
    (mark,) = [e for e in root.iter() if e.get("data-name") == "true-50-mm"]
    assert float(mark.attrib["x2"]) - float(mark.attrib["x1"]) == pytest.approx(50.0, abs=1e-3)
    (bar,) = [e for e in root.iter() if e.get("data-name") == "scale-bar"]
    (words,) = [e for e in root.iter() if e.get("data-name") == "scale-bar-words"]
    said = float(re.match(r"[\d.]+", words.text or "").group())  # type: ignore[union-attr]
    long = float(bar.attrib["x2"]) - float(bar.attrib["x1"])
    assert long == pytest.approx(said * scale, abs=1e-3)
