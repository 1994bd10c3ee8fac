"""A line chart: words apart and inside, lines told apart without color, scales that read true."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests import charts_made as made

from borewright.answer.schedule import Curve, LineChart, Mark
from borewright.drawing.line_axis import place_axis, value_axis
from borewright.drawing.line_chart import HALF, HEIGHT, WIDE, line_chart
from borewright.drawing.measure import Box, text_box
from borewright.drawing.scene import Circle, Hatch, Line, LineKind, Path, Scene, Text
from borewright.drawing.svg import svg
from borewright.quantities.show import Show

PADDING = 0.16
"""The hair of air that a text's box has round it (mm), which may stand over the chart's edge."""
KINDS = (
    "force",
    "torque",
    "temperature difference",
    "temperature",
    "ratio",
    "time",
    "rule",
    "power",
)
WORDS = (
    "seat", "rim", "likely", "in the poor case, 1 in 20", "the hold gives, likely", "stop and wait here",
    "rough the outside asks", "bore strained too far", "turn the step at the hub, rough, all passes",
    "x" * 130, "grip left of the cold grip when the work is warm " * 3, "", "µ°²",
)  # fmt: skip

numbers = (
    st.floats(-1e4, 1e4) | st.floats(-1e-4, 1e-4) | st.sampled_from([0.0, math.inf, math.nan, 1e31])
)
words = st.sampled_from(WORDS)


@st.composite
def curves(draw: st.DrawFn) -> Curve:
    count = draw(st.integers(0, 12))
    x = draw(st.lists(numbers, min_size=count, max_size=count))
    y = draw(st.lists(numbers, min_size=count, max_size=count))
    if draw(st.booleans()):
        x = sorted(x, key=lambda v: (math.isnan(v), v))
    return Curve(draw(words), tuple(x), tuple(y), draw(st.booleans()), draw(st.booleans()))


charts = st.builds(
    LineChart,
    id=st.just("made"),
    title=words,
    x_name=words,
    x_kind=st.sampled_from(KINDS),
    y_name=words,
    y_kind=st.sampled_from(KINDS),
    lines=st.lists(curves(), max_size=5).map(tuple),
    marks=st.lists(st.builds(Mark, words, numbers, st.none() | numbers), max_size=5).map(tuple),
    second_name=words,
    second_kind=st.sampled_from(KINDS),
    second=st.lists(curves(), max_size=3).map(tuple),
)


def texts(scene: Scene) -> list[Text]:
    return [item for item in scene.items if isinstance(item, Text) and item.text]


def overlapping(scene: Scene) -> list[tuple[str, str]]:
    pairs = combinations(texts(scene), 2)
    return [(a.text, b.text) for a, b in pairs if text_box(a).overlaps(text_box(b))]


def outside(scene: Scene) -> list[str]:
    found = []
    for text in texts(scene):
        box = text_box(text)
        across = box.left >= -PADDING and box.right <= scene.width + PADDING
        if not across or box.top < -PADDING or box.bottom > scene.height + PADDING:
            found.append(text.text)
    for item in scene.items:
        places = corners(item)
        if any(not (0 <= x <= scene.width and 0 <= y <= scene.height) for x, y in places):
            found.append(type(item).__name__)
    return found


def corners(item: object) -> list[tuple[float, float]]:
    if isinstance(item, Line):
        return [(item.x1, item.y1), (item.x2, item.y2)]
    if isinstance(item, Path):
        return list(item.points)
    if isinstance(item, Hatch):
        return [place for ring in item.contours for place in ring]
    return [(item.cx, item.cy)] if isinstance(item, Circle) else []


@settings(max_examples=400, deadline=None)
@given(charts, st.sampled_from([WIDE, HALF]), st.sampled_from(["inch", "mm"]))
def test_no_two_texts_overlap_and_nothing_leaves_the_frame(
    chart: LineChart, width: float, units: str
) -> None:
    scene = line_chart(chart, Show("mm" if units == "mm" else "inch"), width)
    assert scene.width == width
    assert scene.height >= HEIGHT
    assert overlapping(scene) == []
    assert outside(scene) == []


# Reading it


def by_name(scene: Scene, name: str) -> list[Path]:
    return [item for item in scene.items if isinstance(item, Path) and item.name == name]


def scale_read_off(scene: Scene, name: str) -> tuple[float, float]:
    """Numbers per mm and the number at 0 mm, from the first and last tick's words as printed.

    Numbers beside a scale stand a third of a letter under their tick.
    """
    found = [t for t in texts(scene) if t.name == name]
    level = name == "place"
    places = [(t.x if level else t.y - 0.33 * t.size, as_number(t.text)) for t in found]
    (a, m), (b, n) = places[0], places[-1]
    return (n - m) / (b - a), m - a * (n - m) / (b - a)


def as_number(words: str) -> float:
    total = 0.0
    for part in words.replace(",", "").split():
        over, _, under = part.partition("/")
        total += float(over) / float(under or 1)
    return total


@pytest.mark.parametrize(
    ("units", "length", "force"), [("inch", 0.0254, 4.4482216), ("mm", 0.001, 1000.0)]
)
def test_values_read_off_its_scales_are_those_put_in(
    units: str, length: float, force: float
) -> None:
    """lbf is 4.4482216 N (from the pound and standard gravity); a rule is read in inches or mm."""
    chart = made.push()
    scene = line_chart(chart, Show("mm" if units == "mm" else "inch"))
    per_x, zero_x = scale_read_off(scene, "place")
    per_y, zero_y = scale_read_off(scene, "value")
    assert per_x < 0, "the reading falls as the work goes on"
    for k, curve in enumerate(chart.lines):
        (path,) = by_name(scene, f"line-{k}")
        assert len(path.points) == len(curve.x)
        for (x, y), at, value in zip(path.points, curve.x, curve.y, strict=True):
            assert (zero_x + per_x * x) * length == pytest.approx(at, rel=1e-6)
            assert (zero_y + per_y * y) * force == pytest.approx(value, abs=0.05)


def test_the_second_lines_are_read_at_the_right() -> None:
    chart = made.warmth()
    scene = line_chart(chart, Show("mm"))
    right = [t for t in texts(scene) if t.name == "value" and t.anchor == "start"]
    assert [t.text for t in right] == ["0", "0.2", "0.4", "0.6", "0.8", "1"]
    (path,) = by_name(scene, "line-2")
    tenth = (right[0].y - right[-1].y) / 10
    lowest = max(y for _, y in path.points)
    share = (right[0].y - 0.33 * right[0].size - lowest) / tenth / 10
    assert share == pytest.approx(min(chart.second[0].y), abs=1e-6)


def test_a_temperature_is_shown_in_degrees_and_its_scale_does_not_begin_at_nothing() -> None:
    """300 K to 320 K is 26.85 to 46.85 °C, 80.33 to 116.33 °F."""
    axis = value_axis("temperature", (300.0, 320.0), Show("mm"), 5).laid(0.0, 100.0)
    assert (axis.symbol, axis.low, axis.high) == ("°C", 25.0, 50.0)
    assert axis.at(273.15 + 37.5) == pytest.approx(50.0)
    inch = value_axis("temperature", (300.0, 320.0), Show("inch"), 5)
    assert (inch.symbol, inch.low, inch.high) == ("°F", 80.0, 120.0)


def test_a_rule_in_inches_is_ticked_in_the_fractions_it_has() -> None:
    axis = place_axis("rule", (0.5 * 0.0254, 2.0 * 0.0254), Show("inch"), 7)
    assert [n for _, n in axis.ticks] == ["1/2", "3/4", "1", "1 1/4", "1 1/2", "1 3/4", "2"]
    long = place_axis("length", (0.0, 40 * 0.0254), Show("inch"), 9)
    assert [n for _, n in long.ticks] == ["0", "5", "10", "15", "20", "25", "30", "35", "40"]


def test_ticks_are_round_and_no_more_than_asked_for() -> None:
    for size in (3.7, 37.0, 1234.0, 9e5):
        steps = value_axis("ratio", (0.0, size), Show("mm"), 5).ticks
        numbers = [as_number(n) for _, n in steps]
        step = numbers[1] - numbers[0]
        assert 2 <= len(steps) <= 6
        assert round(step / 10 ** math.floor(math.log10(step)), 6) in (1, 2, 5)
        assert numbers[-1] >= size > numbers[-2]


# How it looks


def dash(path: Path) -> tuple[float, tuple[float, ...]]:
    return path.kind.weight, path.kind.dashes


@pytest.mark.parametrize("width", [WIDE, HALF])
@pytest.mark.parametrize("chart", made.three(), ids=lambda c: c.id)
def test_lines_are_told_apart_in_black_and_each_says_its_name_once(
    chart: LineChart, width: float
) -> None:
    scene = line_chart(chart, Show("inch"), width)
    curves = (*chart.lines, *chart.second)
    heavy = [dash(by_name(scene, f"line-{k}")[0]) for k, c in enumerate(curves) if not c.thin]
    assert len(set(heavy)) == len(heavy)
    for mark in (*curves, *chart.marks):
        written = " ".join(t.text for t in texts(scene) if t.name.endswith("-words"))
        assert mark.label in written
    assert set(re.findall(r'(?:stroke|fill)="([^"]+)"', svg(scene))) <= {"black", "white", "none"}


@pytest.mark.parametrize("width", [WIDE, HALF])
@pytest.mark.parametrize("chart", made.three(), ids=lambda c: c.id)
def test_words_at_a_line_are_nearer_to_it_than_to_any_other(chart: LineChart, width: float) -> None:
    scene = line_chart(chart, Show("mm"), width)
    lines = [i for i in scene.items if isinstance(i, Path) and i.name.startswith("line-")]
    pointed = {
        i.name.removesuffix("-stem")
        for i in scene.items
        if i.__class__ is Line and i.name.endswith("-stem")
    }
    for words in (t for t in texts(scene) if re.fullmatch(r"line-\d+-words", t.name)):
        name = words.name.removesuffix("-words")
        if name not in pointed:
            distance = {line.name: far(text_box(words), line) for line in lines}
            assert min(distance, key=lambda n: distance[n]) == name


def far(box: Box, line: Path) -> float:
    """From a box to a polyline, by points a twentieth of a mm apart."""
    least = math.inf
    for (x1, y1), (x2, y2) in pairwise(line.points):
        count = max(2, int(20 * math.hypot(x2 - x1, y2 - y1)))
        for k in range(count + 1):
            x, y = x1 + (x2 - x1) * k / count, y1 + (y2 - y1) * k / count
            across = max(box.left - x, x - box.right, 0.0)
            least = min(least, math.hypot(across, max(box.top - y, y - box.bottom, 0.0)))
    return least


def test_a_mark_is_a_thin_upright_and_one_with_a_band_is_hatched_as_far() -> None:
    scene = line_chart(made.warmth(), Show("mm"))
    (band,) = [i for i in scene.items if isinstance(i, Hatch)]
    per, zero = scale_read_off(scene, "place")
    ends = sorted({round((zero + per * x) * 60) for x, _ in band.contours[0]})
    assert ends == [900, 1300]
    (last,) = [i for i in scene.items if isinstance(i, Line) and i.name == "mark-1"]
    assert last.kind is LineKind.THIN
    assert last.x1 == last.x2
    assert (zero + per * last.x1) * 60 == pytest.approx(1320.0)


def test_three_of_them_fit_on_a_page_two_side_by_side() -> None:
    side_by_side = [line_chart(c, Show("inch"), HALF) for c in (made.grip(), made.push())]
    below = line_chart(made.warmth(), Show("inch"), WIDE)
    assert 2 * HALF + 4.0 <= WIDE
    assert max(s.height for s in side_by_side) + below.height < 115.0


@pytest.mark.parametrize("chart", made.three(), ids=lambda c: c.id)
def test_the_same_chart_gives_the_same_bytes(chart: LineChart) -> None:
    assert svg(line_chart(chart, Show("inch"))) == svg(line_chart(replace(chart), Show("inch")))


def test_who_cannot_see_it_is_told_what_it_shows() -> None:
    said = line_chart(made.push(), Show("mm")).description
    assert "push against rule reading" in said
    assert "likely: 0 N (0 lbf) to 5.3 kN (1200 lbf)" in said
    assert "seat at 60 mm (2.36 in)" in said


def test_a_chart_with_nothing_to_draw_is_an_empty_frame() -> None:
    scene = line_chart(LineChart("none", "Nothing", "x", "time", "y", "force", ()), Show("mm"))
    assert not [i for i in scene.items if isinstance(i, Path)]
    assert overlapping(scene) == []
