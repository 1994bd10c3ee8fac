"""End views of work held in other ways: marks, slip circles, proof load, what hides what."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import hypot, pi

import pytest
from tests.sample_held import MM, sample_held, sample_picture
from tests.unit.test_drawing_held import all_words, circles, drawn, lines, named, side

from borewright.answer.held_picture import HeldMark, HeldPicture, HeldRing, Role
from borewright.drawing import Scene, draw_plan
from borewright.drawing.frame import Scale
from borewright.drawing.held_end import held_end
from borewright.drawing.held_shape import seen_circles
from borewright.drawing.scene import Arrow, LineKind, Path
from borewright.quantities.show import Show

NONE = (None, None)


def end(picture: HeldPicture, radii: tuple[float | None, float | None] = NONE) -> Scene:
    return held_end(picture, radii, None, Show("mm"), Scale(1, 1), 300.0)


def test_marks_stand_evenly_round_the_axis_at_their_radius() -> None:
    picture = sample_picture("webbed wheel on a plate")
    scene = end(picture)
    (axis,) = [i for i in lines(scene, "axis") if i.y1 == i.y2]
    x, y = (axis.x1 + axis.x2) / 2, axis.y1
    screws = circles(scene, "mark-screw")[:4]  # the fifth is in the key
    assert [hypot(c.cx - x, c.cy - y) for c in screws] == pytest.approx([80.0] * 4)
    assert sorted((c.cx > x, c.cy > y) for c in screws) == [
        (False, False), (False, True), (True, False), (True, True),
    ]  # fmt: skip
    assert "4 screws on a 160 mm" in all_words(scene)
    assert "2 pins on a 116 mm" in all_words(scene)


def test_a_weight_at_the_foot_is_drawn_at_the_foot_in_both_views() -> None:
    scene = end(sample_picture("strapped faceplate"))
    (axis,) = [i for i in lines(scene, "axis") if i.y1 == i.y2]
    weight, _ = (i for i in named(scene, "mark-weight") if isinstance(i, Path))
    assert min(y for _, y in weight.points) == pytest.approx(axis.y1 + 104)
    below = side("strapped faceplate")
    assert not named(below, "weight-edge")
    (block,) = (i for i in named(below, "weight-outside") if isinstance(i, Path))
    assert min(y for _, y in block.points) == pytest.approx(lines(below, "axis")[0].y1 + 52)


def test_jaws_behind_the_work_are_dashed_and_said_to_be_behind() -> None:
    scene = end(sample_picture("jaws on a hub"))
    jaws = [i for i in named(scene, "mark-jaw") if isinstance(i, Path)]
    assert [j.kind for j in jaws].count(LineKind.HIDDEN) == 3
    assert "3 jaws, behind the work" in all_words(scene)
    ring = end(sample_picture("thin ring in soft jaws"))
    assert all(i.kind is LineKind.EDGE for i in named(ring, "mark-jaw") if isinstance(i, Path))
    assert "behind" not in all_words(ring)


def test_forward_is_counterclockwise_from_the_tailstock() -> None:
    """The house's end view is from the headstock, where it is clockwise; from here it is not."""
    scene = end(sample_picture("jaws on a hub"))
    (tip,) = named(scene, "rotation-arrow")
    assert isinstance(tip, Arrow)
    (axis,) = [i for i in lines(scene, "axis") if i.x1 == i.x2]
    assert tip.x < axis.x1  # above left of the axis …
    assert abs(tip.angle % (2 * pi) - 2 * pi * 0.34) < 0.4  # … it points down and to the left
    assert "counterclockwise" in all_words(scene)


def test_the_weight_that_proves_the_grip_pulls_as_the_cut_does() -> None:
    """Forward is counterclockwise from here, the cut pulls clockwise: the weight hangs right."""
    plan = sample_held("jaws on a hub", "mm")
    scene = draw_plan(plan)
    (weight,) = [i for i in named(scene, "weight") if isinstance(i, Path)]
    circle = max(circles(scene, "work-circle"), key=lambda c: c.r)
    assert min(x for x, _ in weight.points) > circle.cx + circle.r
    assert plan.proof is not None
    by_hand = replace(plan, proof=replace(plan.proof, by_hand=True))
    assert not named(draw_plan(by_hand), "weight")


def test_the_slip_circles_are_those_of_the_slip_question() -> None:
    scene = drawn("jaws on a hub")
    ratio = float(dict(scene.data)["scale"])
    (likely,), (low,) = circles(scene, "slip-circle"), circles(scene, "slip-low-circle")
    assert (likely.kind, low.kind) == (LineKind.LIMIT, LineKind.HIDDEN)
    assert [likely.r / ratio, low.r / ratio] == pytest.approx([0.8 * 65, 0.55 * 65], rel=1e-4)
    assert "likely slips outside 104 mm" in all_words(scene)
    beyond = end(sample_picture("jaws on a hub"), (0.2, 0.1))
    assert not circles(beyond, "slip-circle")
    assert "even a poor grip holds this cut out to 200 mm" in all_words(beyond)
    far = end(sample_picture("jaws on a hub"), (0.9, 0.5))
    assert "even a poor grip holds this cut at the rim and far beyond" in all_words(far)
    assert "slip" not in all_words(end(sample_picture("jaws on a hub")))


def test_a_nut_is_six_sided_from_the_end() -> None:
    (nut,) = named(end(sample_picture("nut mandrel")), "nut-circle")[:1]
    assert isinstance(nut, Path)
    sides = [hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(nut.points)]
    assert sides == pytest.approx([13.0] * 5)


def test_what_stands_in_front_hides_what_is_behind_it_from_the_tailstock() -> None:
    """A washer of 17 mm before a bore of 10 mm: the bore is not seen."""
    seen = seen_circles(sample_picture("nut mandrel"))
    assert (17 * MM, Role.WASHER) in [(pytest.approx(r), role) for r, role in seen]
    assert not [r for r, role in seen if role is Role.WORK and r < 40 * MM]
    assert [r for r, _ in seen] == sorted((r for r, _ in seen), reverse=True)


def test_a_mark_of_nothing_at_the_axis_has_no_circle_to_stand_on() -> None:
    marks = (HeldMark(Role.SCREW, 0.0, 10 * MM),)
    scene = end(replace(sample_picture("ring clamped endwise"), marks=marks))
    assert " circle" not in all_words(scene)


def test_a_counterweight_on_the_plate_is_behind_the_work() -> None:
    picture = sample_picture("webbed wheel on a plate")
    weight = HeldMark(Role.WEIGHT, 110 * MM, 20 * MM)
    scene = end(replace(picture, marks=(weight,)))
    assert "counterweight, 110 mm (4.33 in) from the axis, behind the work" in all_words(scene)
    kinds = [i.kind for i in named(scene, "mark-weight") if isinstance(i, Path)]
    assert LineKind.HIDDEN in kinds


def test_slots_of_a_sleeve_are_lines_across_its_wall() -> None:
    slots = HeldMark(Role.SLEEVE, 11 * MM, 3 * MM, 12)
    scene = end(replace(sample_picture("expanding sleeve"), marks=(slots,)))
    drawn_slots = lines(scene, "mark-sleeve")
    assert [hypot(s.x2 - s.x1, s.y2 - s.y1) for s in drawn_slots[:12]] == pytest.approx([3.0] * 12)
    assert "12 slots in the sleeve" in all_words(scene)


def test_a_second_dog_is_called_so() -> None:
    picture = sample_picture("nut mandrel")
    second = HeldMark(Role.DOG, 30 * MM, 12 * MM, 1, 0.6)
    said = all_words(end(replace(picture, marks=(*picture.marks, second))))
    assert "second dog, on the hub" in said


def test_centers_hide_nothing_of_the_work_from_the_end() -> None:
    cone = HeldRing(Role.CENTER, 20 * MM, 80 * MM, 5 * MM, 0.0, 60 * MM)
    work = HeldRing(Role.WORK, 0.0, 30 * MM, 40 * MM, 10 * MM)
    seen = seen_circles(HeldPicture((work, cone)))
    assert seen == ((40 * MM, Role.WORK), (10 * MM, Role.WORK))
