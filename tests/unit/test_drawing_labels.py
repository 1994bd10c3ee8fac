"""Labels: none on another, none struck by a thick line, all on the plate, all large enough."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.sample_plan import SHAPES, sample_layout, sample_plan

from borewright.answer.picture import Band, Layout, Ring
from borewright.answer.plan import Plan
from borewright.drawing import Scene, draw_plan
from borewright.drawing.breaks import broken
from borewright.drawing.dimension import Span, level_dimension
from borewright.drawing.measure import Box, text_box, text_width, wrapped
from borewright.drawing.scene import Circle, Line, LineKind, Path, Text

LEAST_LETTER = 2.2  # mm; the steps below need the room, and are set smaller still
ROUNDING = 0.25
"""A label's own padding, mm: how far a box may stand over the plate's edge."""

Corners = tuple[float, float, float, float]


def words(scene: Scene) -> list[Text]:
    return [item for item in scene.items if isinstance(item, Text)]


def overlapping(scene: Scene) -> list[tuple[str, str]]:
    pairs = combinations(words(scene), 2)
    return [(a.text, b.text) for a, b in pairs if text_box(a).overlaps(text_box(b))]


def off_the_plate(scene: Scene) -> list[str]:
    return [label.text for label in words(scene) if not _within(text_box(label), scene)]


def _within(box: Box, scene: Scene) -> bool:
    sides = box.left >= -ROUNDING and box.right <= scene.width + ROUNDING
    return sides and box.top >= -ROUNDING and box.bottom <= scene.height + ROUNDING


def thick_pieces(scene: Scene) -> list[Corners]:
    """Every straight piece of a visible edge; all that matter are upright or level."""
    lines = [i for i in scene.items if isinstance(i, Line) and i.kind is LineKind.VISIBLE]
    paths = [i for i in scene.items if isinstance(i, Path) and i.kind is LineKind.VISIBLE]
    pieces = [(i.x1, i.y1, i.x2, i.y2) for i in lines]
    return pieces + [(*a, *b) for path in paths for a, b in pairwise(path.points)]


def struck(scene: Scene) -> list[str]:
    pieces = [p for p in thick_pieces(scene) if p[0] == p[2] or p[1] == p[3]]
    return [
        label.text
        for label in words(scene)
        if any(text_box(label).overlaps(_thin_box(piece)) for piece in pieces)
    ]


def _thin_box(piece: Corners) -> Box:
    x1, y1, x2, y2 = piece
    return Box(min(x1, x2) - 0.01, min(y1, y2) - 0.01, max(x1, x2) + 0.01, max(y1, y2) + 0.01)


def upright(scene: Scene) -> list[Line]:
    return [i for i in scene.items if isinstance(i, Line) and i.x1 == i.x2]


def run_through(scene: Scene) -> list[str]:
    """Labels that an upright line of any kind runs through."""
    strokes = [_thin_box((i.x1, i.y1, i.x2, i.y2)) for i in upright(scene)]
    return [
        label.text
        for label in words(scene)
        if any(text_box(label).overlaps(stroke) for stroke in strokes)
    ]


every_shape = pytest.mark.parametrize("shape", SHAPES)
both_units = pytest.mark.parametrize("units", ["inch", "mm"])


@every_shape
@both_units
def test_no_label_lies_on_another(shape: str, units: str) -> None:
    assert overlapping(draw_plan(sample_plan(units, shape=shape))) == []


@every_shape
@both_units
def test_every_label_is_on_the_plate(shape: str, units: str) -> None:
    assert off_the_plate(draw_plan(sample_plan(units, shape=shape))) == []


@every_shape
@both_units
def test_no_thick_line_strikes_a_label(shape: str, units: str) -> None:
    assert struck(draw_plan(sample_plan(units, shape=shape))) == []


@every_shape
@both_units
def test_no_upright_line_runs_through_a_label(shape: str, units: str) -> None:
    assert run_through(draw_plan(sample_plan(units, shape=shape))) == []


@every_shape
@both_units
@pytest.mark.parametrize(
    ("begin", "stem"),
    [
        ("keep the tool right", "tool-limit-large"),
        ("keep the tool left", "tool-limit-small"),
        ("first touch", "first-touch"),
    ],
)
def test_a_label_stands_at_its_own_line(shape: str, units: str, begin: str, stem: str) -> None:
    """Its line runs up beside the whole height of the words, less than 1.5 mm from them."""
    scene = draw_plan(sample_plan(units, shape=shape))
    (label,) = [label for label in words(scene) if label.text.startswith(begin)]
    box = text_box(label)
    beside = [
        line
        for line in upright(scene)
        if line.name == stem and line.y1 <= box.top + 0.5 and line.y2 >= box.bottom
    ]
    (line,) = beside
    assert min(abs(line.x1 - box.left), abs(line.x1 - box.right)) < 1.5


@every_shape
def test_both_faces_carry_their_letter_on_their_own_side(shape: str) -> None:
    """The large end is at the left and the leading face looks to it."""
    plan = sample_plan(shape=shape)
    assert plan.layout is not None
    for leading, far in (("A", "B"), ("B", "A")):
        layout = replace(plan.layout, leading_face=leading)
        scene = draw_plan(replace(plan, layout=layout))
        xs = [x for i in scene.items if i.name == "work-edge" for x in (i.x1, i.x2)]  # type: ignore[union-attr]
        letters = {label.name: label for label in words(scene) if label.name.startswith("face-")}
        near, back = letters["face-leading"], letters["face-far"]
        assert (near.text, back.text) == (leading, far)
        assert 0 < min(xs) - text_box(near).right < 2.0
        assert 0 < text_box(back).left - max(xs) < 2.0


def test_a_line_through_words_would_be_caught() -> None:
    line, label = Line(12.0, 0.0, 12.0, 20.0, LineKind.THIN), Text(10.0, 10.0, "here", 3.5)
    assert run_through(Scene(50.0, 20.0, (line, label))) == ["here"]


def test_a_broken_line_keeps_its_ends_and_its_place() -> None:
    line, label = Line(12.0, 0.0, 12.0, 20.0, LineKind.THIN, "a"), Text(10.0, 10.0, "here", 3.5)
    pieces = [item for item in broken((line, label)) if isinstance(item, Line)]
    assert len(pieces) == 2
    assert (pieces[0].y1, pieces[-1].y2) == (0.0, 20.0)
    assert {piece.x1 for piece in pieces} == {12.0}


def test_words_of_a_dimension_go_where_no_line_passes() -> None:
    """Beside the span a line passes at 40; from 41 there is room."""
    span = Span(10.0, 0.0, 20.0, 0.0, ("work 1 in (25.4 mm) long", "work 1 in"), "work")
    (label,) = [i for i in level_dimension(span, 10.0, 0.0, 100.0, (40.0,)) if isinstance(i, Text)]
    assert label.text == span.words[0]
    assert text_box(label).left > 40.0


@every_shape
def test_labels_are_large_enough_to_read_on_the_wall(shape: str) -> None:
    """Ascenders of Source Sans Pro stand 0.712 em high: the size must carry them to the least height."""
    sizes = {label.size for label in words(draw_plan(sample_plan(shape=shape)))}
    assert min(sizes) * 0.712 >= LEAST_LETTER


def test_two_labels_at_one_place_would_be_caught() -> None:
    label = Text(10.0, 10.0, "here", 3.5)
    assert overlapping(Scene(50.0, 20.0, (label, replace(label, text="there"))))


def test_widths_are_those_of_the_font() -> None:
    """The space of Source Sans Pro Regular is 200/1000 em, a digit 497/1000, read off the font."""
    assert text_width(" ", 10.0) == pytest.approx(2.0)
    assert text_width("0000", 10.0) == pytest.approx(4 * 4.97)


def test_wrapping_keeps_a_number_with_its_unit() -> None:
    lines = wrapped("would let go only past 3.54 in (90 mm), beyond", 3.55, 40.0)
    assert not any(line.startswith(("in", "mm", "(")) for line in lines)
    assert " ".join(lines) == "would let go only past 3.54 in (90 mm), beyond"


@st.composite
def layouts(draw: st.DrawFn) -> Layout:
    """Work of any proportion on a mandrel that it fits."""
    bore = draw(st.floats(0.006, 0.050))
    ground = bore * draw(st.floats(5.0, 12.0))
    length = ground * draw(st.floats(0.05, 0.6))
    rim = bore * draw(st.floats(1.2, 18.0))
    seat = length + (ground - length) * draw(st.floats(0.2, 0.9))
    band, travel = ground * draw(st.floats(0.005, 0.06)), ground * draw(st.floats(0.02, 0.3))
    slip = draw(st.none() | st.floats(bore, 2 * rim))
    return replace(
        sample_layout("wheel"),
        small_end=bore - 1e-5,
        large_end=bore + 4e-5,
        bore=bore,
        ground_length=ground,
        overall_length=ground + 2 * bore,
        end_length=bore,
        end_diameter=0.9 * bore,
        work_length=length,
        rings=(Ring(0.0, length, rim, bore),),
        seat=Band(seat - band, seat, seat + band),
        touch=Band(seat - travel - band, seat - travel, seat - travel + band),
        travel=travel,
        tool_limit_large=seat + 2 * band,
        tool_limit_small=seat - length - 2 * band,
        slip_radius=slip,
        slip_radius_low=slip and slip / 2,
    )


@settings(max_examples=40, deadline=None, derandomize=True)
@given(layout=layouts(), units=st.sampled_from(["inch", "mm"]))
def test_any_proportion_is_drawn_without_labels_on_each_other(layout: Layout, units: str) -> None:
    plan: Plan = replace(sample_plan(units), layout=layout)
    scene = draw_plan(plan)
    assert overlapping(scene) == []
    assert off_the_plate(scene) == []
    assert run_through(scene) == []
    assert scene.height < 125.0, "the sheet would have no room for words"


def test_circles_of_the_end_view_stay_on_the_plate() -> None:
    for shape in SHAPES:
        scene = draw_plan(sample_plan(shape=shape))
        rounds = [c for c in scene.items if isinstance(c, Circle)]
        assert all(c.cx + c.r <= scene.width and c.cx - c.r >= 0 for c in rounds)
