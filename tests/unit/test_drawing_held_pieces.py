"""Pieces of other holds that want care: blanks, bars, cones, dogs, chucks."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from tests.sample_held import MM, sample_picture
from tests.unit.test_drawing_held import all_words, lines, named, side
from tests.unit.test_drawing_labels import struck

from borewright.answer.held_picture import HeldPicture, HeldRing, Role
from borewright.drawing.frame import Scale
from borewright.drawing.held_shape import settled
from borewright.drawing.held_view import held_view
from borewright.drawing.measure import text_box
from borewright.drawing.scene import Path, Text
from borewright.quantities.show import Show


def test_blanks_of_a_gang_are_parted_and_pieces_of_one_body_are_not() -> None:
    blanks = tuple(
        HeldRing(Role.WORK, k * 10 * MM, (k + 1) * 10 * MM, 20 * MM, 5 * MM) for k in range(3)
    )
    scene = held_view(HeldPicture(blanks), "A", Show("mm"), Scale(1, 1), 120.0)
    parted = lines(scene, "work-joint")
    assert sorted(line.x1 for line in parted) == pytest.approx([55.0, 65.0])
    assert {abs(line.y2 - line.y1) for line in parted} == {15.0}
    assert not lines(side("webbed wheel on a plate"), "work-joint")


def test_work_still_on_its_bar_is_measured_without_the_bar() -> None:
    rings = (
        HeldRing(Role.JAW, -30 * MM, 0.0, 40 * MM, 25 * MM),
        HeldRing(Role.WORK, -30 * MM, 5 * MM, 25 * MM),
        HeldRing(Role.WORK, 5 * MM, 25 * MM, 25 * MM, 8 * MM),
    )
    scene = held_view(HeldPicture(rings), "B", Show("mm"), Scale(1, 1), 120.0)
    assert "work 20 mm" in all_words(scene)
    assert "stands out 25 mm" in all_words(scene)
    (parting,) = lines(scene, "parting-line")
    assert max(e.x2 for e in lines(scene, "work-edge")) - parting.x1 == pytest.approx(20.0)


def test_a_center_among_the_rings_is_left_open_and_named() -> None:
    picture = replace(
        sample_picture("nut mandrel"),
        rings=(
            *sample_picture("nut mandrel").rings,
            HeldRing(Role.CENTER, 105 * MM, 125 * MM, 1 * MM, 0.0, 9 * MM),
        ),
    )
    scene = held_view(picture, "B", Show("mm"), Scale(1, 1), 180.0)
    assert not named(scene, "tailstock-center")
    assert all_words(scene).count("tailstock center") == 1
    far = max(x for i in named(scene, "center-edge") if isinstance(i, Path) for x, _ in i.points)
    upright = [
        (a, b)
        for i in named(scene, "center-edge")
        if isinstance(i, Path)
        for a, b in pairwise(i.points)
        if a[0] == b[0] == far
    ]
    assert upright == []


def test_a_dog_sits_on_its_mandrel_and_a_chuck_is_drawn_no_larger_than_it_need_be() -> None:
    rings = (
        HeldRing(Role.SPINDLE, -200 * MM, -30 * MM, 300 * MM),
        HeldRing(Role.MANDREL, -30 * MM, 60 * MM, 8 * MM),
        HeldRing(Role.DOG, -20 * MM, -10 * MM, 20 * MM, 14 * MM),
        HeldRing(Role.WORK, 10 * MM, 40 * MM, 50 * MM, 8 * MM),
    )
    drawn_so = settled(HeldPicture(rings))
    assert drawn_so.rings[2].inner == 8 * MM
    assert drawn_so.rings[0].outer == pytest.approx(55 * MM)
    assert drawn_so.rings[0].end == -30 * MM
    assert drawn_so.rings[1:2] == rings[1:2]
    assert drawn_so.rings[3] == rings[3]


def test_a_letter_stands_off_the_slant_of_a_cone() -> None:
    """A thin ring between cones: the slant goes down 30 degrees past both faces."""
    rings = (
        HeldRing(Role.CENTER, -50 * MM, 10 * MM, 80 * MM, 0.0, 45 * MM),
        HeldRing(Role.CENTER, 0.0, 60 * MM, 45 * MM, 0.0, 80 * MM),
        HeldRing(Role.WORK, 0.0, 8 * MM, 56 * MM, 50 * MM),
    )
    scene = held_view(HeldPicture(rings), "B", Show("mm"), Scale(1, 5), 120.0)
    axis = lines(scene, "axis")[0].y1
    for name, slope in (("face-leading", -35 / 60), ("face-far", 35 / 60)):
        (letter,) = named(scene, name)
        assert isinstance(letter, Text)
        box = text_box(letter)
        start = (-50, 80) if slope < 0 else (0, 45)
        zero = min(e.x1 for e in lines(scene, "work-edge"))
        heights = [
            axis + 0.2 * (start[1] + slope * ((x - zero) / 0.2 - start[0]))
            for x in (box.left, box.right)
        ]
        assert box.bottom < min(heights) or box.top > max(heights), name


def test_a_stub_in_its_chuck_is_no_mandrel_between_centers_though_a_center_helps_it() -> None:
    picture = replace(sample_picture("tiny bush on a stub"), tailstock=True)
    said = all_words(held_view(picture, "B", Show("mm"), Scale(2, 1), 120.0))
    assert "tailstock center" in said
    assert "long" in said
    assert "mandrel 1" not in said


def test_a_letter_on_a_hub_keeps_off_the_rim_beside_it() -> None:
    """A hub that stands 3 mm on paper proud of its rim on both sides, between shoulder and washer."""
    rings = (
        HeldRing(Role.MANDREL, -30 * MM, 0.0, 12 * MM),
        HeldRing(Role.WORK, 0.0, 30 * MM, 14 * MM, 8 * MM),
        HeldRing(Role.WORK, 3 * MM, 27 * MM, 24 * MM, 8 * MM),
        HeldRing(Role.WASHER, 30 * MM, 34 * MM, 13 * MM, 4 * MM),
    )
    scene = held_view(HeldPicture(rings), "B", Show("mm"), Scale(1, 1), 120.0)
    assert struck(scene) == []
