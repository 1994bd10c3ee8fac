"""The workshop drawing: what it says, where its views stand, that nothing lies on anything."""

from __future__ import annotations

from itertools import combinations
from typing import Any

import pytest
from tests.drawn_parts import spindle, wheel

from borewright.answer.drawn_part import DrawnPart, Limits
from borewright.drawing.dimension_parts import dimension_parts
from borewright.drawing.measure import Box, text_box, text_width
from borewright.drawing.scene import Circle, Dimension, Line, Path, Scene, Text
from borewright.drawing.workshop.limits_text import limits_text
from borewright.drawing.workshop.look import Look, look_for
from borewright.drawing.workshop.page import draw_part

PARTS = {"spindle": spindle(), "wheel": wheel()}


def words_of(scene: Scene) -> list[Text]:
    parts = [
        p for i in scene.items for p in (dimension_parts(i) if isinstance(i, Dimension) else (i,))
    ]
    return [p for p in parts if isinstance(p, Text)]


def box_of(words: Text) -> Box:
    """The box of level words; of upright ones, turned about their anchor."""
    if words.rotation == 0.0:
        return text_box(words)
    wide, high = text_width(words.text, words.size, words.bold), words.size
    return Box(words.x - 0.73 * high, words.y - wide / 2, words.x + 0.21 * high, words.y + wide / 2)


@pytest.mark.parametrize("both", [False, True])
@pytest.mark.parametrize("units", ["inch", "mm"])
@pytest.mark.parametrize("angle", ["third", "first"])
@pytest.mark.parametrize("part", PARTS.values(), ids=PARTS)
def test_no_words_lie_on_others_or_off_the_page(
    part: DrawnPart, angle: str, units: Any, both: bool
) -> None:
    scene = draw_part(part, look_for(units, both=both, angle=angle))
    boxes = [(w.text, box_of(w)) for w in words_of(scene) if w.text]
    for (one, a), (other, b) in combinations(boxes, 2):
        assert not a.overlaps(b), (one, other)
    for text, box in boxes:
        assert 8.0 <= box.left < box.right <= scene.width - 8.0, text
        assert 8.0 <= box.top < box.bottom <= scene.height - 7.0, text


@pytest.mark.parametrize(
    ("angle", "seen_from", "before"),
    [
        ("third", "left", True),
        ("first", "left", False),
        ("third", "right", False),
        ("first", "right", True),
    ],
)
def test_the_end_view_stands_where_its_projection_puts_it(
    angle: str, seen_from: Any, before: bool
) -> None:
    """Third angle: on the side from which it is seen. First angle: on the far side."""
    scene = draw_part(spindle(end_view=seen_from), look_for("mm", angle=angle))
    (circle, *_) = [i for i in scene.items if isinstance(i, Circle) and i.name == "end-circle"]
    outline = [i.x1 for i in scene.items if isinstance(i, Line) and i.name == "outline"]
    assert (circle.cx < min(outline)) == before


def test_the_symbol_shows_the_narrow_end_in_its_place() -> None:
    for angle, before in (("third", True), ("first", False)):
        scene = draw_part(spindle(), look_for("mm", angle=angle))
        view = [i for i in scene.items if isinstance(i, Circle) and i.name == "projection-view"]
        cone = [i for i in scene.items if isinstance(i, Line) and i.name == "projection"]
        assert (view[0].cx < min(line.x1 for line in cone)) == before


def test_the_flat_looks_to_the_side_from_which_the_side_view_is_seen() -> None:
    for end, right in (("left", True), ("right", False)):
        part = spindle(end_view=end, flats=spindle().flats if end == "left" else ())
        scene = draw_part(part, look_for("mm"))
        chords = [i for i in scene.items if isinstance(i, Line) and i.name == "end-flat"]
        circles = [i for i in scene.items if isinstance(i, Circle) and i.name == "end-circle"]
        if right:
            assert chords[0].x1 > circles[0].cx
        else:
            assert not chords


def test_center_holes_are_drawn_to_their_sizes() -> None:
    scene = draw_part(spindle(), look_for("mm"))
    scale = float(dict(scene.data)["scale"])
    holes = [i for i in scene.items if isinstance(i, Path) and i.name == "center-hole"]
    assert len(holes) == 4
    mouth = abs(holes[0].points[0][1] - holes[1].points[0][1])
    assert mouth == pytest.approx(8.0 * scale, abs=1e-6)


def test_a_section_hatches_metal_and_not_the_hole() -> None:
    from borewright.drawing.hatch import hatch_lines
    from borewright.drawing.scene import Hatch

    scene = draw_part(wheel(), look_for("mm"))
    (metal,) = [i for i in scene.items if isinstance(i, Hatch)]
    (axis,) = [i for i in scene.items if isinstance(i, Line) and i.name == "axis"]
    scale = float(dict(scene.data)["scale"])
    nearest = min(abs(y - axis.y1) for line in hatch_lines(metal) for _, y in line)
    assert nearest >= 9.0 * scale - 1e-6


@pytest.mark.parametrize(
    ("limits", "look", "said"),
    [
        (Limits(0.016, 0.0, 5e-6), Look("mm"), "16.000 to 16.005"),
        (Limits(0.0158623, 0.0, 5.08e-6), Look("inch"), "0.6245 to 0.6247"),
        (Limits(0.015875), Look("inch"), "5/8"),
        (Limits(0.012, prefix="R"), Look("mm"), "R12"),
        (Limits(0.012, reference=True), Look("mm"), "(12)"),
        # 16.0000 mm is 0.629921 in, 16.0050 mm 0.630118: inwards 0.62993 to 0.63011.
        (Limits(0.016, 0.0, 5e-6), Look("mm", both=True), "16.000 to 16.005 [0.62993 to 0.63011]"),
    ],
)
def test_limits_are_said_in_full_and_never_wider(limits: Limits, look: Look, said: str) -> None:
    assert limits_text(limits, look) == said


def test_the_block_names_what_scale_units_and_treatment() -> None:
    scene = draw_part(spindle(treatment="harden"), look_for("inch", both=True, date="2026-11-29"))
    said = {w.name: w.text for w in words_of(scene)}
    assert said["block-what"] == "Spindle"
    assert said["block-treatment"] == "harden"
    assert said["block-sizes in"] == "inches [millimetres]"
    assert said["block-views"] == "third angle"
    assert said["block-drawn"] == "2026-11-29"


@pytest.mark.parametrize("part", PARTS.values(), ids=PARTS)
def test_no_circle_is_filled_with_anything_but_paper_or_ink(part: DrawnPart) -> None:
    from borewright.answer.drawn_part import Slit

    slit = Slit(0.0, 0.02, 0.001, 4, hole=0.002)
    for drawn in (part, spindle(slits=(slit,))):
        scene = draw_part(drawn, look_for("mm"))
        circles = [i for i in scene.items if isinstance(i, Circle)]
        assert {c.fill for c in circles} <= {"none", "white"}
