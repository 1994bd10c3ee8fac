"""What the views show: slip circles, rotation, proof load, section lines, the inset, SVG safety."""

from __future__ import annotations

import os
import subprocess
import sys
from dataclasses import replace
from math import atan2, hypot, pi, sqrt
from xml.etree import ElementTree

import pytest
from tests.sample_plan import SHAPES, sample_layout, sample_plan

from borewright.answer.picture import Band, Layout, Ring
from borewright.drawing import Scene, draw_plan, end_view, inset, svg
from borewright.drawing.frame import Scale
from borewright.drawing.hatch import hatch_lines
from borewright.drawing.measure import text_box
from borewright.drawing.outline import front_edges, section
from borewright.drawing.scene import Arc, Arrow, Circle, Hatch, Item, Line, LineKind, Path, Text
from borewright.quantities.show import Show

HATCH_SPACING_SHARE = 0.05
"""Lines a spacing apart cover an area to about a spacing over its size: 5 % when it is fine."""


def named(scene: Scene, name: str) -> list[Item]:
    return [item for item in scene.items if item.name == name]


def one_circle(scene: Scene, name: str) -> Circle:
    (found,) = named(scene, name)
    assert isinstance(found, Circle)
    return found


def all_words(scene: Scene) -> str:
    return " ".join(item.text for item in scene.items if isinstance(item, Text))


def seen_from_headstock(shape: str, **changes: float | None) -> Scene:
    layout = replace(sample_layout(shape), **changes)  # type: ignore[arg-type]
    return end_view(layout, sample_plan().proof, Show("mm"), Scale(1, 5), 90.0)


def test_slip_circles_stand_at_their_radius() -> None:
    scene, layout = seen_from_headstock("disc"), sample_layout("disc")
    assert layout.slip_radius is not None
    assert layout.slip_radius_low is not None
    assert one_circle(scene, "slip-circle").r == pytest.approx(200 * layout.slip_radius)
    assert one_circle(scene, "slip-low-circle").r == pytest.approx(200 * layout.slip_radius_low)


def test_from_the_front_the_edges_of_hub_and_rim_are_seen() -> None:
    """The webbed wheel: rim 150 and its inner edge 130, hub 45; the web's own edges lie hidden."""
    edges = front_edges(sample_layout("webbed"))
    assert edges == pytest.approx((0.150, 0.130, 0.045))


def test_a_small_shoulder_behind_a_large_disc_is_not_seen() -> None:
    layout = replace(
        sample_layout("disc"), rings=(Ring(0.0, 0.02, 0.3, 0.0), Ring(0.02, 0.04, 0.06, 0.0))
    )
    assert front_edges(layout) == pytest.approx((0.3,))


def test_the_two_slip_circles_are_told_apart_by_their_line() -> None:
    scene = seen_from_headstock("disc")
    kinds = {one_circle(scene, name).kind for name in ("slip-circle", "slip-low-circle")}
    assert len(kinds) == 2


def test_each_slip_circle_is_said_with_twice_its_radius() -> None:
    """The disc's radii are 80 mm (likely) and 50 mm (poor grip)."""
    words = all_words(seen_from_headstock("disc"))
    assert "likely slips outside 160 mm (6.30 in) diameter" in words
    assert (
        "if the grip is poor, this cut slips anywhere outside the dashed circle, "
        "100 mm (3.94 in) diameter" in words
    )


def test_the_circle_of_a_poor_grip_is_dashed_as_its_words_say() -> None:
    assert one_circle(seen_from_headstock("disc"), "slip-low-circle").kind is LineKind.HIDDEN


def test_a_slip_circle_larger_than_the_rim_is_said_in_words() -> None:
    scene = seen_from_headstock("wheel")
    assert not named(scene, "slip-circle")
    assert "likely holds this cut out to 90 mm (3.54 in) diameter, beyond" in all_words(scene)


def test_when_even_the_low_case_holds_to_the_rim_one_sentence_says_so() -> None:
    words = all_words(seen_from_headstock("wheel", slip_radius=0.09, slip_radius_low=0.05))
    assert words.count("beyond this rim") == 1
    assert "even a poor grip holds this cut out to 100 mm (3.94 in) diameter, beyond" in words


def test_work_that_never_slips_has_no_slip_circle_and_no_words_of_it() -> None:
    scene = seen_from_headstock("bush")
    assert not named(scene, "slip-circle")
    assert "slips" not in all_words(scene)


def test_the_rotation_arrow_points_clockwise_on_paper() -> None:
    """Forward is counterclockwise from the tailstock, hence clockwise from the headstock."""
    scene = seen_from_headstock("wheel")
    (arc,) = named(scene, "rotation")
    (arrow,) = named(scene, "rotation-arrow")
    assert isinstance(arc, Arc)
    assert isinstance(arrow, Arrow)
    tip = atan2(arrow.y - arc.cy, arrow.x - arc.cx)
    # On paper y runs down, so clockwise is the way of growing angle.
    assert arc.start < tip == pytest.approx(arc.end)
    assert arrow.angle == pytest.approx(tip + pi / 2, abs=0.2)


def test_the_weight_hangs_on_the_side_where_the_cut_would_pull() -> None:
    """The tool lifts at the right; a weight that twists the same way hangs at the left."""
    scene = seen_from_headstock("wheel")
    (arm,), (weight,) = named(scene, "arm"), named(scene, "weight")
    assert isinstance(arm, Path)
    assert isinstance(weight, Path)
    rim = max((c for c in named(scene, "work-circle")), key=lambda c: c.r)  # type: ignore[union-attr]
    assert isinstance(rim, Circle)
    assert max(x for x, _ in weight.points) < rim.cx - rim.r
    assert min(y for _, y in weight.points) > max(y for _, y in arm.points)


def test_the_proof_load_stands_on_the_drawing_with_its_values() -> None:
    words = all_words(draw_plan(sample_plan("mm")))
    assert "45.9 N" in words
    assert "304.8 mm" in words


def test_without_a_proof_load_no_arm_is_drawn() -> None:
    scene = draw_plan(replace(sample_plan(), proof=None))
    assert not named(scene, "arm")
    assert "Proof load" not in all_words(scene)


@pytest.mark.parametrize("shape", SHAPES)
def test_section_lines_stay_in_metal_and_cover_it(shape: str) -> None:
    layout = sample_layout(shape)
    cells = section(layout).cells()
    corners = tuple(((a, b), (c, b), (c, d), (a, d)) for a, b, c, d in cells)
    spacing = sqrt(_area(layout)) / 200
    pieces = hatch_lines(Hatch(corners, spacing))
    length = sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in pieces)
    assert length * spacing == pytest.approx(_area(layout), rel=HATCH_SPACING_SHARE)
    for a, b in pieces:
        assert _in_metal(layout, (a[0] + b[0]) / 2, (a[1] + b[1]) / 2)


def _in_metal(layout: Layout, z: float, r: float) -> bool:
    return any(k.start <= z <= k.end and k.inside <= 2 * r <= k.outside for k in layout.rings)


def _area(layout: Layout) -> float:
    """Metal in the half section, counted on a fine grid: a second route to the union of rings."""
    n, rim = 400, max(ring.outside for ring in layout.rings) / 2
    dz, dr = layout.work_length / n, rim / n
    grid = (((i + 0.5) * dz, (j + 0.5) * dr) for i in range(n) for j in range(n))
    return sum(_in_metal(layout, z, r) for z, r in grid) * dz * dr


def test_the_inset_says_where_grip_ends() -> None:
    """The kept interference of the bush falls 18 µm to −2.5 µm; straight lines give 25 mm."""
    layout = sample_layout("bush")
    step = 0.0005
    expected = (layout.interference_kept[0]) / step
    scene = inset(layout, Show("mm"), 62.0)
    (end,) = named(scene, "contact-end")
    (zero,) = named(scene, "inset-zero")
    assert isinstance(end, Line)
    assert isinstance(zero, Line)
    share = (end.x1 - zero.x1) / (zero.x2 - zero.x1)
    assert share * layout.work_length == pytest.approx(expected, rel=0.005)
    assert f"grips the first {Show('mm').length(expected)}" in all_words(scene)


def test_the_end_of_grip_is_exact_where_a_plan_stops_at_zero() -> None:
    layout = sample_layout("bush")
    clipped = replace(
        layout, interference_kept=tuple(max(v, 0.0) for v in layout.interference_kept)
    )
    ends = [named(inset(x, Show("mm"), 62.0), "contact-end")[0] for x in (layout, clipped)]
    assert isinstance(ends[0], Line)
    assert isinstance(ends[1], Line)
    assert ends[0].x1 == pytest.approx(ends[1].x1)


def test_the_inset_says_when_no_grip_is_left() -> None:
    layout = sample_layout("bush")
    worn = replace(layout, interference_kept=tuple(-1e-6 for _ in layout.interference_z))
    assert "no grip is left" in all_words(inset(worn, Show("mm"), 62.0))


def test_the_inset_without_interference_is_words() -> None:
    loose = replace(sample_layout("bush"), interference_z=(), interference=(), interference_kept=())
    assert "No interference" in all_words(inset(loose, Show("mm"), 62.0))


@pytest.mark.parametrize(
    "title", ['<b> & "quoted" \']]>', "bell \x07 and nul \x00", "🛞 wheel", ""]
)
def test_any_title_gives_a_well_formed_picture(title: str) -> None:
    root = ElementTree.fromstring(svg(draw_plan(replace(sample_plan(), title=title))))
    printable = "".join(c if c.isprintable() else " " for c in title)
    assert root[0].text == f"Workshop drawing: {printable}"


def test_words_stay_words_in_the_picture() -> None:
    root = ElementTree.fromstring(svg(draw_plan(sample_plan())))
    texts = [e.text or "" for e in root.iter() if e.tag.endswith("text")]
    assert any("may sit between these two lines" in text for text in texts)


def test_the_picture_says_the_taper_and_both_end_diameters_in_words() -> None:
    words, layout, show = all_words(draw_plan(sample_plan())), sample_layout(), Show("inch")
    assert "too small to see" in words
    assert show.bore(layout.large_end) in words
    assert show.bore(layout.small_end) in words


def test_a_seat_that_may_be_anywhere_is_said_as_a_must() -> None:
    """The lines leave 5 mm for the tool at each face (table allowances, tool_clearance)."""
    plan, layout = sample_plan("mm"), sample_layout()
    room = 0.005
    lines = (layout.tool_limit_small + layout.work_length + room, layout.tool_limit_large - room)
    seat = Band(lines[0], layout.seat.best, lines[1])
    words = all_words(draw_plan(replace(plan, layout=replace(layout, seat=seat))))
    assert "face A must end between these two lines" in words
    narrower = replace(layout, seat=replace(seat, high=lines[1] - 0.001))
    words = all_words(draw_plan(replace(plan, layout=narrower)))
    assert "face A may sit between these two lines" in words


def test_a_plan_with_nothing_laid_out_is_drawn_in_words() -> None:
    plan = replace(sample_plan(), layout=None)
    scene = draw_plan(plan)
    assert "No mandrel to draw" in all_words(scene)
    assert plan.headline.split()[-1] in all_words(scene)


PICTURE = (
    "import hashlib, sys; sys.path.insert(0, '.');"
    "from tests.sample_plan import sample_plan; from borewright.drawing import draw_plan, svg;"
    "print(hashlib.sha256(svg(draw_plan(sample_plan(shape='webbed'))).encode()).hexdigest())"
)


def test_the_same_plan_gives_the_same_bytes_in_another_process() -> None:
    digests = {
        subprocess.run(
            [sys.executable, "-c", PICTURE],
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert len(digests) == 1


@pytest.mark.parametrize("driver", ["collet", "three-jaw"])
@pytest.mark.parametrize("shape", SHAPES)
def test_a_collet_or_chuck_stands_where_dog_and_headstock_center_would(
    driver: str, shape: str
) -> None:
    plan = sample_plan("mm", shape=shape)
    plan = replace(plan, layout=replace(sample_layout(shape), driven_by=driver))
    scene = draw_plan(plan)
    for absent in ("dog", "dog-tail", "dog-screw", "headstock-center"):
        assert named(scene, absent) == []
    assert named(scene, "tailstock-center")
    assert len(named(scene, f"{driver}-label")) == 2
    assert len(named(scene, f"{driver}-body")) == 2
    grips = [item for item in named(scene, f"{driver}-grip") if isinstance(item, Path)]
    (large,) = [p for p in named(scene, "mandrel-large-end") if isinstance(p, Path)]
    ends = (min(x for x, _ in large.points), max(x for x, _ in large.points))
    in_side_view = [g for g in grips if len({x for x, _ in g.points}) == 2]
    assert len(in_side_view) >= 2
    for grip in in_side_view[:2]:
        assert max(x for x, _ in grip.points) <= ends[1] + 1e-9, "it grips the end, not the ground"


@pytest.mark.parametrize("driver", ["collet", "three-jaw"])
@pytest.mark.parametrize("shape", SHAPES)
def test_its_name_stands_on_the_paper_clear_of_other_words(driver: str, shape: str) -> None:
    plan = sample_plan("mm", shape=shape)
    scene = draw_plan(replace(plan, layout=replace(sample_layout(shape), driven_by=driver)))
    words = [item for item in scene.items if isinstance(item, Text)]
    for label in (item for item in words if item.name == f"{driver}-label"):
        box = text_box(label)
        assert box.left >= 0
        assert box.right <= scene.width
        assert [w.text for w in words if w is not label and text_box(w).overlaps(box)] == []


def test_a_plan_between_chuck_and_center_does_not_say_between_centers() -> None:
    plan = sample_plan()
    held = draw_plan(replace(plan, layout=replace(sample_layout(), driven_by="collet")))
    assert "between collet and tailstock center" in held.description
    assert "between centers" in draw_plan(plan).description


def test_where_the_plan_tells_how_far_it_grips_the_inset_says_that() -> None:
    """Two bodies that give way part elsewhere than where the squeeze ends."""
    told = replace(sample_layout("bush"), grips=0.021)
    scene = inset(told, Show("mm"), 62.0)
    (end,), (zero,) = named(scene, "contact-end"), named(scene, "inset-zero")
    assert isinstance(end, Line)
    assert isinstance(zero, Line)
    share = (end.x1 - zero.x1) / (zero.x2 - zero.x1)
    assert share * told.work_length == pytest.approx(0.021, rel=0.005)
    assert "grips the first 21 mm" in all_words(scene)
    whole = inset(replace(told, grips=told.work_length), Show("mm"), 62.0)
    assert "grips along the whole bore" in all_words(whole)
