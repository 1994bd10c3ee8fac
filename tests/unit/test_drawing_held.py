"""Drawings of work held in other ways: sizes true to scale, every piece drawn and named."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest
from tests.sample_held import HELD, MM, sample_held, sample_picture
from tests.unit.test_drawing_labels import off_the_plate, overlapping, run_through, struck, words

from borewright.answer.held_picture import HeldNote, HeldPicture, HeldRing, Role
from borewright.answer.plan import Plan
from borewright.answer.records import Candidate, Verdict
from borewright.drawing import Scene, draw_plan, svg
from borewright.drawing.frame import SCALES, Scale
from borewright.drawing.held_shape import open_stretch
from borewright.drawing.held_view import held_view
from borewright.drawing.measure import text_box
from borewright.drawing.scene import Arrow, Circle, Hatch, Item, Line, LineKind, Path, Text
from borewright.quantities.show import Show

READ_OFF = 1e-6
"""Coordinates are exact before they are printed; only floating point is between."""
LEAST_LETTER = 2.2  # mm on paper at full width; 0.78 of it still stands 1.7 mm high

every_hold = pytest.mark.parametrize("shape", HELD)
both_units = pytest.mark.parametrize("units", ["inch", "mm"])


def drawn(shape: str, units: str = "mm") -> Scene:
    return draw_plan(sample_held(shape, units))


def side(shape: str, ratio: float = 0.5) -> Scene:
    return held_view(sample_picture(shape), "B", Show("mm"), Scale(ratio, 1), 300.0)


def named(scene: Scene, name: str) -> list[Item]:
    return [item for item in scene.items if getattr(item, "name", "") == name]


def lines(scene: Scene, name: str) -> list[Line]:
    return [item for item in named(scene, name) if isinstance(item, Line)]


def circles(scene: Scene, name: str) -> list[Circle]:
    return [item for item in named(scene, name) if isinstance(item, Circle)]


def all_words(scene: Scene) -> str:
    return " ".join(label.text for label in words(scene))


@every_hold
@both_units
def test_no_label_lies_on_another(shape: str, units: str) -> None:
    assert overlapping(drawn(shape, units)) == []


@every_hold
@both_units
def test_every_label_is_on_the_plate(shape: str, units: str) -> None:
    assert off_the_plate(drawn(shape, units)) == []


@every_hold
@both_units
def test_no_line_runs_through_a_label(shape: str, units: str) -> None:
    scene = drawn(shape, units)
    assert struck(scene) == []
    assert run_through(scene) == []


@every_hold
def test_letters_are_large_enough_to_read_on_the_wall(shape: str) -> None:
    assert min(label.size for label in words(drawn(shape))) * 0.712 >= LEAST_LETTER


@every_hold
@pytest.mark.parametrize("ratio", [0.1, 0.5, 2.0])
def test_length_outside_and_bore_of_the_work_read_back(shape: str, ratio: float) -> None:
    scene, work = side(shape, ratio), _work(sample_picture(shape))
    edges, axis = lines(scene, "work-edge"), lines(scene, "axis")[0].y1
    xs = [x for e in edges for x in (e.x1, e.x2)]
    heights = [axis - y for e in edges for y in (e.y1, e.y2)]
    read = [max(xs) - min(xs), max(heights), min(heights)]
    stated = [
        max(g.end for g in work) - min(g.start for g in work),
        max(g.outer for g in work),
        min(g.inner for g in work),
    ]
    assert [v / 1000 / ratio for v in read] == pytest.approx(stated, rel=READ_OFF)


def _work(picture: HeldPicture) -> list[HeldRing]:
    return [ring for ring in picture.rings if ring.role is Role.WORK]


@every_hold
def test_both_views_stand_at_the_scale_that_is_written(shape: str) -> None:
    scene = drawn(shape)
    ratio = float(dict(scene.data)["scale"])
    (caption,) = named(scene, "side-caption")
    assert isinstance(caption, Text)
    (scale,) = [s for s in SCALES if f"{s.words}," in caption.text]
    assert scale.ratio == pytest.approx(ratio, rel=1e-5)
    outside = max(g.outer for g in _work(sample_picture(shape)))
    radii = [c.r for c in circles(scene, "work-circle")]
    assert max(radii) == pytest.approx(1000 * outside * scale.ratio, rel=READ_OFF)


@every_hold
def test_every_piece_is_drawn_from_both_sides_of_the_axis_and_named(shape: str) -> None:
    picture, scene = sample_picture(shape), drawn(shape)
    axis = lines(scene, "axis")[0].y1
    said = all_words(scene)
    for role in {ring.role for ring in picture.rings}:
        above = [i for i in named(scene, f"{role}-edge") if isinstance(i, Line | Path)]
        if role is not Role.WEIGHT:  # its one mark stands at the foot
            assert above, role
            assert min(_top(i) for i in above) < axis
        if role is not Role.DOG:  # its one tail stands at the top
            assert named(scene, f"{role}-outside"), role
    plain = {Role.SPINDLE: ("chuck", "headstock"), Role.JAW: ("jaws",), Role.MANDREL: ("mandrel", "stub"),
             Role.BOND: ("glue",), Role.WASHER: ("washer", "disc")}  # fmt: skip
    for role in {part.role for part in (*picture.rings, *picture.marks)}:
        names = plain.get(role, (role.value,))
        assert any(name in said for name in names), role


def _top(item: Line | Path) -> float:
    return min(item.y1, item.y2) if isinstance(item, Line) else min(y for _, y in item.points)


def test_the_work_is_drawn_strong_and_its_section_leans_the_other_way() -> None:
    scene = side("jaws on a hub")
    assert {e.kind for e in lines(scene, "work-edge")} == {LineKind.VISIBLE}
    assert {e.kind for e in lines(scene, "jaw-edge")} == {LineKind.EDGE}
    leans = {i.name: i.falling for i in scene.items if isinstance(i, Hatch)}
    assert leans == {"work-section": False, "jaw-section": True}
    assert LineKind.THIN.weight < LineKind.EDGE.weight < LineKind.VISIBLE.weight


def test_pieces_of_one_body_are_joined_and_no_line_parts_them() -> None:
    """Hub, web and rim of the wheel: the hub's bore runs through unbroken, 50 mm at 0.5."""
    scene = side("webbed wheel on a plate")
    axis = lines(scene, "axis")[0].y1
    bore = [e for e in lines(scene, "work-edge") if e.y1 == e.y2 and axis - e.y1 < 6.5]
    assert [e.x2 - e.x1 for e in bore] == [pytest.approx(25.0)]


def test_a_wide_piece_hides_what_it_surrounds_below_the_axis() -> None:
    """The lower half is seen from outside: work over mandrel, the wider painted last."""
    scene = side("nut mandrel")
    outsides = [i for i in scene.items if isinstance(i, Path) and i.name.endswith("-outside")]
    depth = [max(y for _, y in path.points) for path in outsides]
    assert depth == sorted(depth)


def test_what_the_tool_reaches_is_marked_from_end_to_end_over_the_work() -> None:
    picture, scene = sample_picture("thin ring in soft jaws"), side("thin ring in soft jaws")
    (line,), (arrow,) = lines(scene, "turn-line"), named(scene, "turn-arrow")
    assert isinstance(arrow, Arrow)
    assert arrow.angle == pytest.approx(pi)  # towards the headstock
    assert line.x2 - line.x1 == pytest.approx(13 * 0.5)
    assert line.x2 == max(e.x2 for e in lines(scene, "work-edge"))
    assert "turn here" in all_words(scene)
    nothing = held_view(replace(picture, turned=None), "B", Show("mm"), Scale(1, 2), 300.0)
    assert not lines(nothing, "turn-line")
    assert "turn here" not in all_words(nothing)


def test_a_tailstock_center_is_drawn_where_one_supports_and_only_there() -> None:
    scene = side("nut mandrel")
    (center,) = named(scene, "tailstock-center")
    assert isinstance(center, Path)
    mandrel = [i for i in named(scene, "mandrel-edge") if isinstance(i, Path)]
    assert min(x for x, _ in center.points) == max(x for p in mandrel for x, _ in p.points)
    (x1, y1), (x2, y2) = center.points[1:3]
    assert abs(y2 - y1) / abs(x2 - x1) == pytest.approx(3**-0.5)  # 60 degrees, half above the axis
    assert "tailstock center" in all_words(scene)
    assert not named(side("jaws on a hub"), "tailstock-center")


@every_hold
def test_each_face_has_its_letter_on_the_side_of_the_lathe_it_looks_to(shape: str) -> None:
    picture = sample_picture(shape)
    for leading, far in (("A", "B"), ("B", "A")):
        scene = held_view(picture, leading, Show("mm"), Scale(1, 4), 120.0)
        near, back = (named(scene, n)[0] for n in ("face-leading", "face-far"))
        assert isinstance(near, Text)
        assert isinstance(back, Text)
        assert (near.text, back.text) == (leading, far)
        assert near.x < back.x
    assert not named(held_view(picture, "", Show("mm"), Scale(1, 4), 120.0), "face-leading")


def test_dimensions_say_length_overhang_and_bore() -> None:
    said = all_words(drawn("tiny bush on a stub"))
    for size in ("work 6 mm", "stands out 8 mm", "outside 8 mm", "Bore 4.000 mm"):
        assert size in said
    between = all_words(drawn("nut mandrel"))
    assert "mandrel 105 mm" in between
    assert "stands out" not in between


def test_a_stem_points_at_a_stretch_that_nothing_covers() -> None:
    picture = sample_picture("tiny bush on a stub")
    first, second = [g for g in picture.rings if g.role is Role.MANDREL]
    assert open_stretch(first, picture) == (0.0, 2 * MM)  # in the jaws before that
    assert open_stretch(second, picture) is None  # inside the work


def test_a_note_takes_the_place_of_the_plain_name_and_no_piece_is_named_twice() -> None:
    picture = replace(
        sample_picture("tiny bush on a stub"), notes=(HeldNote(Role.WASHER, "washer and screw"),)
    )
    said = all_words(held_view(picture, "B", Show("mm"), Scale(2, 1), 120.0))
    assert said.count("washer") == 1
    assert said.count("screw") == 1


def test_many_pieces_in_little_room_keep_their_names_apart() -> None:
    """Fourteen roles along 28 mm of paper."""
    rings = tuple(
        HeldRing(role, k * 2 * MM, (k * 2 + 2) * MM, 20 * MM - k * MM, 2 * MM)
        for k, role in enumerate(r for r in Role if r is not Role.BOND)
    )
    scene = held_view(HeldPicture(rings), "A", Show("mm"), Scale(1, 1), 120.0)
    assert overlapping(scene) == []
    assert run_through(scene) == []
    assert len([t for t in words(scene) if t.name.endswith("-label")]) == len(rings) - 1


def test_a_stem_ends_at_its_own_piece() -> None:
    scene, picture = side("nut mandrel"), sample_picture("nut mandrel")
    (stem,) = lines(scene, "washer-label-stem")[-1:]
    first = min(g.start for g in picture.rings)
    left = min(x for i in scene.items if isinstance(i, Path) for x, _ in i.points)
    z = first + (stem.x2 - left) / 500
    assert 72 * MM <= z <= 75 * MM


def no_verdict(plan: Plan) -> Plan:
    seat = replace(plan.questions[0], verdict=Verdict.NO)
    return replace(plan, verdict=Verdict.NO, questions=(seat,), chosen=None)


def test_work_that_cannot_be_held_so_is_not_drawn_held() -> None:
    scene = draw_plan(no_verdict(sample_held("jaws on a hub")))
    assert not named(scene, "work-edge")
    assert "Not drawn held" in all_words(scene)


def test_a_description_says_what_is_seen() -> None:
    assert "held by: stub turned to 0.6251 in" in drawn("tiny bush on a stub").description
    assert "tailstock's center" in drawn("nut mandrel").description


def test_words_are_escaped_in_the_drawing() -> None:
    plan = sample_held("jaws on a hub")
    assert plan.held is not None
    note = HeldNote(Role.JAW, "<b> & jaws")
    chosen = Candidate("x", '"><script>', "A", Verdict.YES, "")
    nasty = replace(plan, held=replace(plan.held, notes=(note,)), chosen=chosen)
    text = svg(draw_plan(nasty))
    assert "&lt;b&gt; &amp; jaws" in text
    assert "<script>" not in text


@every_hold
def test_the_same_plan_gives_the_same_bytes(shape: str) -> None:
    assert svg(drawn(shape)) == svg(drawn(shape))


def test_text_boxes_see_an_overlap_that_is_there() -> None:
    """The tests above can fail: the same words moved onto each other do overlap."""
    scene = drawn("nut mandrel")
    label = named(scene, "nut-label")[0]
    assert isinstance(label, Text)
    moved = replace(scene, items=(*scene.items, replace(label, text="here")))
    assert overlapping(moved)
    assert text_box(label).right > text_box(label).left
