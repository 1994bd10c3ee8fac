"""Studs and a second dog beside the mandrel: drawn on the side from which they are pushed."""

from __future__ import annotations

from dataclasses import replace
from math import atan2, hypot

import pytest
from tests.sample_plan import SHAPES, sample_layout, sample_plan
from tests.unit.test_drawing_held import all_words, circles, named
from tests.unit.test_drawing_labels import off_the_plate, overlapping, run_through

from borewright.answer.held_picture import HeldMark, HeldPicture, HeldRing, Role
from borewright.drawing import Scene, draw_plan
from borewright.drawing.frame import Scale
from borewright.drawing.held_end import held_end
from borewright.drawing.scene import Circle, Path
from borewright.quantities.show import Show

STUDS = HeldMark(Role.PIN, 0.030, 0.006, 2, 0.3)
SECOND_DOG = HeldMark(Role.DOG, 0.024, 0.0096, 1, -0.6)


def with_drive(mark: HeldMark | None, shape: str = "webbed") -> Scene:
    layout = replace(sample_layout(shape), drive=mark)
    return draw_plan(replace(sample_plan("mm", shape=shape), layout=layout))


def middle(scene: Scene) -> Circle:
    return max(circles(scene, "work-circle"), key=lambda c: c.r)


def corner(path: Path) -> tuple[float, float]:
    xs, ys = zip(*path.points, strict=True)
    return sum(xs) / len(xs), sum(ys) / len(ys)


def test_studs_stand_opposite_each_other_at_their_radius() -> None:
    scene, ratio = with_drive(STUDS), 1000 * 0.25
    center = middle(scene)
    one, two, _ = circles(scene, "mark-pin")
    assert float(dict(scene.data)["scale"]) == 0.25
    assert hypot(one.cx - center.cx, one.cy - center.cy) == pytest.approx(0.030 * ratio)
    assert (one.cx + two.cx) / 2 == pytest.approx(center.cx)
    assert "2 driver studs on a 60 mm" in all_words(scene)


def test_the_mandrels_dog_pushes_the_second_dog_forward() -> None:
    """Clockwise from the headstock, tail up: the second tail is on its right and touches it."""
    scene = with_drive(SECOND_DOG)
    (tail,) = [i for i in named(scene, "dog-tail") if isinstance(i, Path)]
    second = next(i for i in named(scene, "mark-dog") if isinstance(i, Path))
    assert corner(second)[0] > corner(tail)[0]
    right = max(x for x, _ in tail.points)
    assert min(x for x, _ in second.points) == pytest.approx(right, abs=0.6)
    assert min(y for _, y in tail.points) <= corner(second)[1]  # it reaches as far out
    assert "second dog, on the hub" in all_words(scene)


def test_from_the_tailstock_the_second_dog_is_on_the_other_hand() -> None:
    """Forward is counterclockwise there: the pushed tail is on the left of the first."""
    rings = (
        HeldRing(Role.MANDREL, -0.05, 0.09, 0.010),
        HeldRing(Role.DOG, -0.04, -0.03, 0.020, 0.010),
        HeldRing(Role.WORK, 0.0, 0.04, 0.060, 0.010),
    )
    first = HeldMark(Role.DOG, 0.018, 0.008)
    scene = held_end(
        HeldPicture(rings, (first, SECOND_DOG)),
        (None, None),
        None,
        Show("mm"),
        Scale(1, 1),
        200.0,
    )
    center = middle(scene)
    tails = [corner(i) for i in named(scene, "mark-dog") if isinstance(i, Path)]
    second = next(
        p for p in tails if hypot(p[0] - center.cx, p[1] - center.cy) == pytest.approx(24.0)
    )
    assert atan2(second[0] - center.cx, center.cy - second[1]) == pytest.approx(-0.6)


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("mark", [STUDS, SECOND_DOG])
def test_labels_stay_clear_with_a_drive(shape: str, mark: HeldMark) -> None:
    scene = with_drive(mark, shape)
    assert overlapping(scene) == []
    assert off_the_plate(scene) == []
    assert run_through(scene) == []


def test_without_a_drive_nothing_of_it_is_drawn() -> None:
    scene = with_drive(None)
    assert not named(scene, "second-dog")
    assert not named(scene, "mark-dog")
    assert "driver studs" not in all_words(scene)
