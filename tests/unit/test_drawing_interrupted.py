"""Spokes, keyway and cross hole are drawn where they are, and can be measured off the picture."""

from __future__ import annotations

from dataclasses import replace
from math import hypot

import pytest
from tests.sample_plan import sample_layout

from borewright.answer.picture import Layout
from borewright.drawing import end_view, side_view
from borewright.drawing.frame import Scale
from borewright.drawing.outline import section
from borewright.drawing.scene import Line, LineKind, Path, Scene
from borewright.job import CrossHole, Keyway, Spokes
from borewright.quantities.show import Show

SCALE = Scale(1, 2)
SHOW = Show("mm")
MM = 1000 * SCALE.ratio


def spoked() -> Layout:
    layout = sample_layout("webbed")
    hub, web, rim = layout.rings
    return replace(
        layout, rings=(hub, replace(web, spoked=True), rim), spokes=Spokes(5, 0.02, 0.009)
    )


def named(scene: Scene, name: str) -> list[Line | Path]:
    return [i for i in scene.items if isinstance(i, Line | Path) and i.name == name]


def center(scene: Scene) -> tuple[float, float]:
    upright = next(i for i in named(scene, "axis") if isinstance(i, Line) and i.x1 == i.x2)
    return upright.x1, (upright.y1 + upright.y2) / 2


def test_every_spoke_has_two_sides_from_hub_to_rim() -> None:
    scene = end_view(spoked(), None, SHOW, SCALE)
    x, y = center(scene)
    sides = [i for i in named(scene, "spoke") if isinstance(i, Line)]
    assert len(sides) == 10
    for side in sides:
        assert hypot(side.x1 - x, side.y1 - y) == pytest.approx(0.045 / 2 * MM)
        assert hypot(side.x2 - x, side.y2 - y) == pytest.approx(0.130 / 2 * MM)
    one, other = sides[:2]
    assert hypot(one.x1 - other.x1, one.y1 - other.y1) == pytest.approx(0.02 * MM)


def test_spokes_are_outlined_and_not_hatched_in_the_side_view() -> None:
    webbed, between = section(sample_layout("webbed")), section(spoked())
    assert any(r2 == 0.065 and z1 == 0.015 for z1, _, _, r2 in webbed.cells())
    assert not any(r1 >= 0.0225 and r2 <= 0.065 for _, r1, _, r2 in between.cells())
    scene = side_view(spoked(), SHOW, SCALE, width=400.0)
    (outline,) = (p for p in named(scene, "spoke") if isinstance(p, Path))
    xs, ys = [p[0] for p in outline.points], [p[1] for p in outline.points]
    assert max(xs) - min(xs) == pytest.approx(0.009 * MM)
    assert max(ys) - min(ys) == pytest.approx((0.130 - 0.045) / 2 * MM)


def test_the_keyway_is_cut_out_of_the_section_and_dashed_in_the_end_view() -> None:
    layout = replace(sample_layout("webbed"), keyway=Keyway(0.006, 0.0028))
    lowest = min(r1 for _, r1, _, _ in section(layout).cells())
    assert lowest == pytest.approx(layout.bore / 2 + 0.0028)
    scene = end_view(layout, None, SHOW, SCALE)
    (slot,) = (p for p in named(scene, "keyway") if isinstance(p, Path))
    x, y = center(scene)
    assert slot.kind is LineKind.HIDDEN
    assert max(p[0] for p in slot.points) - x == pytest.approx((layout.bore / 2 + 0.0028) * MM)
    assert max(p[1] for p in slot.points) - y == pytest.approx(0.003 * MM)


def test_a_cross_hole_goes_through_the_hub_where_it_is_and_no_farther() -> None:
    layout = replace(sample_layout("webbed"), cross_hole=CrossHole(0.006, 0.040))
    at = [cell for cell in section(layout).cells() if cell[0] < 0.040 < cell[2]]
    assert at == []
    beside = [cell for cell in section(layout).cells() if cell[0] < 0.036 < cell[2]]
    assert beside
    assert len(named(end_view(layout, None, SHOW, SCALE), "cross-hole")) == 2


def test_a_cross_hole_of_unknown_place_is_left_out_of_the_side_view() -> None:
    layout = sample_layout("webbed")
    unknown = replace(layout, cross_hole=CrossHole(0.006))
    assert section(unknown) == section(layout)


def test_solid_work_shows_none_of_them() -> None:
    scene = end_view(sample_layout("webbed"), None, SHOW, SCALE)
    assert not any(named(scene, n) for n in ("spoke", "keyway", "cross-hole"))
