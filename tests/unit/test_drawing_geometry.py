"""The side view can be measured: seat, limits and diameters come back from the SVG's coordinates."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest
from tests.sample_plan import SHAPES, sample_layout

from borewright.answer.picture import Layout
from borewright.drawing import side_view, svg
from borewright.drawing.frame import Scale
from borewright.quantities.show import Show

READ_OFF = 0.005
"""How near a reading off the drawing comes to the layout: half a per cent."""
SCALES = (Scale(2, 1), Scale(1, 2.5), Scale(1, 7.5))


class Drawn:
    """A side view as SVG, with its named parts."""

    def __init__(self, layout: Layout, scale: Scale) -> None:
        text = svg(side_view(layout, Show("mm"), scale, width=400.0))
        self.root = ElementTree.fromstring(text)
        self.per_metre = 1000 * float(self.root.attrib["data-scale"])

    def parts(self, name: str) -> list[ElementTree.Element]:
        found = [e for e in self.root.iter() if e.attrib.get("data-name") == name]
        assert found, f"nothing named {name} is drawn"
        return found

    def points(self, name: str) -> list[tuple[float, float]]:
        words = self.parts(name)[0].attrib["points"].split()
        return [(float(x), float(y)) for x, y in (word.split(",") for word in words)]

    def line(self, name: str) -> tuple[float, float, float, float]:
        x1, y1, x2, y2 = (float(self.parts(name)[0].attrib[k]) for k in ("x1", "y1", "x2", "y2"))
        return x1, y1, x2, y2

    def position(self, name: str) -> float:
        """Metres from the small end of the ground length, read off an upright line."""
        x1, _, x2, _ = self.line(name)
        assert x1 == x2
        small_end = max(x for x, _ in self.points("mandrel-ground"))
        return (small_end - x1) / self.per_metre


@pytest.fixture(
    params=[(s, k) for s in SHAPES for k in SCALES], ids=lambda p: f"{p[0]} {p[1].words}"
)
def case(request: pytest.FixtureRequest) -> tuple[Layout, Drawn]:
    shape, scale = request.param
    layout = sample_layout(shape)
    return layout, Drawn(layout, scale)


def test_the_seat_reads_back(case: tuple[Layout, Drawn]) -> None:
    layout, drawn = case
    assert drawn.position("leading-face") == pytest.approx(layout.seat.best, rel=READ_OFF)


@pytest.mark.parametrize("end", ["low", "high"])
def test_the_two_limit_lines_read_back(case: tuple[Layout, Drawn], end: str) -> None:
    layout, drawn = case
    stated = getattr(layout.seat, end)
    assert drawn.position(f"seat-{end}") == pytest.approx(stated, rel=READ_OFF)


def test_first_touch_and_tool_limits_read_back(case: tuple[Layout, Drawn]) -> None:
    layout, drawn = case
    stated = {
        "touch-low": layout.touch.low,
        "touch-high": layout.touch.high,
        "tool-limit-large": layout.tool_limit_large,
        "tool-limit-small": layout.tool_limit_small,
    }
    read = {name: drawn.position(name) for name in stated}
    assert read == pytest.approx(stated, rel=READ_OFF)


def test_the_line_marked_first_touch_stands_where_it_is_likely(case: tuple[Layout, Drawn]) -> None:
    layout, drawn = case
    assert drawn.position("first-touch") == pytest.approx(layout.touch.best, rel=READ_OFF)


def test_mandrel_diameters_and_ground_length_read_back(case: tuple[Layout, Drawn]) -> None:
    layout, drawn = case
    (xl, top_l), (xr, top_r), (_, foot_r), (_, foot_l) = drawn.points("mandrel-ground")
    read = [foot_l - top_l, foot_r - top_r, xr - xl]
    stated = [layout.large_end, layout.small_end, layout.ground_length]
    assert [v / drawn.per_metre for v in read] == pytest.approx(stated, rel=READ_OFF)


def test_the_large_end_is_at_the_left_and_larger(case: tuple[Layout, Drawn]) -> None:
    _, drawn = case
    left, right, low_right, low_left = drawn.points("mandrel-ground")
    assert left[0] < right[0]
    assert low_left[1] - left[1] > low_right[1] - right[1]


def test_work_length_outside_and_bore_read_back(case: tuple[Layout, Drawn]) -> None:
    layout, drawn = case
    axis = drawn.line("axis")[1]
    edges = drawn.parts("work-edge")
    xs = [float(e.attrib[k]) for e in edges for k in ("x1", "x2")]
    rim = max(axis - float(e.attrib[k]) for e in edges for k in ("y1", "y2"))
    bore = axis - drawn.line("bore-line")[1]
    read = [v / drawn.per_metre for v in (max(xs) - min(xs), 2 * rim, 2 * bore)]
    stated = [layout.work_length, max(r.outside for r in layout.rings), layout.bore]
    assert read == pytest.approx(stated, rel=READ_OFF)


def test_the_leading_face_looks_to_the_large_end(case: tuple[Layout, Drawn]) -> None:
    _, drawn = case
    xs = [float(e.attrib[k]) for e in drawn.parts("work-edge") for k in ("x1", "x2")]
    assert drawn.line("leading-face")[0] == min(xs)


def test_overall_length_and_reduced_ends_read_back(case: tuple[Layout, Drawn]) -> None:
    layout, drawn = case
    large, small = drawn.points("mandrel-large-end"), drawn.points("mandrel-small-end")
    overall = max(x for x, _ in small) - min(x for x, _ in large)
    height = large[2][1] - large[1][1]
    read = [overall / drawn.per_metre, height / drawn.per_metre]
    assert read == pytest.approx([layout.overall_length, layout.end_diameter], rel=READ_OFF)


@pytest.mark.parametrize(
    ("shape", "name"), [("wheel", "slip-low"), ("disc", "slip"), ("long hub", "slip")]
)
def test_a_slip_radius_on_the_work_is_drawn_at_its_height(shape: str, name: str) -> None:
    layout = sample_layout(shape)
    drawn = Drawn(layout, Scale(1, 1))
    height = drawn.line("axis")[1] - drawn.line(f"{name}-above")[1]
    stated = layout.slip_radius if name == "slip" else layout.slip_radius_low
    assert height / drawn.per_metre == pytest.approx(stated, rel=READ_OFF)


def test_a_slip_radius_beyond_the_rim_is_not_drawn_on_the_work() -> None:
    drawn = Drawn(sample_layout("wheel"), Scale(1, 1))
    assert not [e for e in drawn.root.iter() if e.attrib.get("data-name") == "slip-above"]


def test_centers_have_sixty_degrees() -> None:
    """Inclined edges of both centres make 30 degrees with the axis: tan 30 = 1/sqrt 3."""
    drawn = Drawn(sample_layout("wheel"), Scale(1, 1))
    for name in ("headstock-center", "tailstock-center"):
        _, (x1, y1), (x2, y2), *_ = drawn.points(name)
        assert abs(y2 - y1) / abs(x2 - x1) == pytest.approx(3**-0.5, rel=READ_OFF)
