"""The paper strip: what its lines say, and that they stand on paper where they should."""

from __future__ import annotations

import io
import json
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from typing import Any, Literal

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pypdf import PdfReader
from pypdf.generic import ContentStream
from tests.cli_run import ran, refused

from borewright.drawing.measure import text_box
from borewright.drawing.scene import Line, Scene, Text
from borewright.drawing.scene import Path as Shape
from borewright.drawing.strip import PAGES, draw_strip
from borewright.errors import RefusedInput
from borewright.job.records import Mandrel, MandrelNote
from borewright.making.strip import APART, strip_of
from borewright.mechanics.taper import bore_from_touch
from borewright.reference.library import Tables
from borewright.service.making.strip import make_strip

POINT = 25.4 / 72
"""Millimetres in a point of PDF."""
PER_MILLE = 1e-3
INCH = 0.0254
TABLES = Tables()
STRAIGHT = Mandrel("m", 0.018, 0.01799, 0.0005, 0.11, 0.15, 0.015, 0.02)
SHELF = """units = "mm"
[[mandrel]]
name = "the long one"
size = 32
ground_length = 270
overall_length = 330
at = [[10, 31.982], [60, 32.007], [110, 32.007], [140, 32.0], [190, 32.047], [260, 32.082]]
"""
FLAT_FROM, FLAT_TO = 0.060, 0.140 + 0.050 * 7 / 47
"""From the first 32.007 to where it is as large again, from the small end (m), by hand."""

Matrix = np.ndarray


# What the lines say


@pytest.mark.parametrize("units", ["inch", "mm"])
@pytest.mark.parametrize("hand", [0.0, 0.005])
def test_each_line_reads_the_bore_that_stops_there(units: Any, hand: float) -> None:
    strip = strip_of(STRAIGHT, units, hand_travel=hand)
    assert len(strip.ticks) > 10
    for tick in strip.ticks:
        face = strip.ground_to - tick.position
        read = bore_from_touch(face, STRAIGHT.small_end, STRAIGHT.taper, hand)
        assert read == pytest.approx(tick.bore, abs=1e-12)
        assert 0.0 <= face <= STRAIGHT.ground_length + 1e-9
        assert float(tick.label) == pytest.approx(tick.bore / (INCH if units == "inch" else 1e-3))


@given(taper=st.floats(0.00005, 0.02), units=st.sampled_from(["inch", "mm"]))
def test_lines_stand_two_to_six_millimetres_apart(taper: float, units: Any) -> None:
    strip = strip_of(Mandrel("m", 0.018, 0.018, taper, 0.1, 0.14, 0.015, 0.02), units)
    gaps = [a.position - b.position for a, b in pairwise(strip.ticks)]
    assert gaps == pytest.approx([strip.step / taper] * len(gaps))
    assert APART[0] - 1e-9 <= strip.step / taper <= APART[1] + 1e-9


def test_every_step_of_the_mandrel_has_its_line() -> None:
    """18 mm at 1:2000 over 110 mm: 17.990 to 18.045 in steps of 2 µm."""
    bores = [t.label for t in strip_of(STRAIGHT, "mm").ticks]
    assert bores == [f"{17.990 + 0.002 * k:.3f}" for k in range(28)]


def test_a_taper_too_steep_for_a_strip_is_refused() -> None:
    with pytest.raises(RefusedInput, match="a taper of which a step of bore is 2 to 6 mm"):
        strip_of(Mandrel("m", 0.018, 0.018, 0.5, 0.1, 0.14, 0.015, 0.02), "mm")


def test_a_push_as_long_as_the_mandrel_leaves_nothing_to_read() -> None:
    with pytest.raises(RefusedInput, match="found room for 0 lines"):
        strip_of(STRAIGHT, "mm", hand_travel=0.12)


def test_it_says_whether_the_push_is_reckoned_with_and_where_to_set_it() -> None:
    plain = " ".join(strip_of(STRAIGHT, "mm").words)
    assert "do not push" in plain
    assert "Set the line marked large-end face" in plain
    pushed = " ".join(strip_of(STRAIGHT, "mm", hand_travel=0.005, end_stated=False).words)
    assert "The lines are moved 5 mm" in pushed
    assert "set the line marked end of ground" in pushed


# On paper


def applied(matrix: Matrix, x: float, y: float) -> tuple[float, float]:
    out = np.array([x, y, 1.0]) @ matrix
    return float(out[0]), float(out[1])


def lines_on(pdf: bytes) -> list[tuple[float, float, float, float]]:
    """Every stroked straight line as the PDF has it, in mm from the top left of the page."""
    (page,) = PdfReader(io.BytesIO(pdf)).pages
    height = float(page.mediabox.height)
    now, kept, points, found = np.eye(3), [], [], []
    for operands, operator in ContentStream(page.get_contents(), page.pdf).operations:
        numbers = [float(v) for v in operands if isinstance(v, int | float)]
        match operator:
            case b"q":
                kept.append(now)
            case b"Q":
                now = kept.pop()
            case b"cm":
                a, b, c, d, e, f = numbers
                now = np.array([[a, b, 0], [c, d, 0], [e, f, 1]]) @ now
            case b"m":
                points = [applied(now, *numbers)]
            case b"l":
                points.append(applied(now, *numbers))
            case b"S":
                if len(points) == 2:
                    (x1, y1), (x2, y2) = points
                    found.append((x1, height - y1, x2, height - y2))
    return [tuple(v * POINT for v in line) for line in found]  # type: ignore[misc]


def made(**more: Any) -> tuple[bytes, dict[str, Any]]:
    note = MandrelNote(0.018, "m", 0.01799, None, 0.0005, 0.11, 0.15)
    strip = make_strip(note, TABLES, units="mm", **more)
    return strip.pdf, strip.as_dict()


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_the_page_is_the_paper_asked_for(paper: str) -> None:
    (page,) = PdfReader(io.BytesIO(made(paper=paper)[0])).pages
    size = float(page.mediabox.width) * POINT, float(page.mediabox.height) * POINT
    assert size == pytest.approx(PAGES[paper], abs=0.05)
    assert sorted(size) == pytest.approx(
        {"letter": [215.9, 279.4], "a4": [210.0, 297.0]}[paper], abs=0.05
    )


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_on_paper_the_lines_stand_where_the_json_says(paper: str) -> None:
    pdf, answer = made(paper=paper)
    upright = sorted(
        (x1, y2 - y1) for x1, y1, x2, y2 in lines_on(pdf) if abs(x1 - x2) < 1e-3 and y2 > y1
    )
    zero = next(x for x, long in upright if long == pytest.approx(13.0, abs=0.01))
    ticks = [
        x - zero for x, long in upright if 3.9 < long < 6.6 and x > zero + 1 and x < zero + 131
    ]
    said = sorted(1000 * t["large_end_face_to_line_m"] for t in answer["ticks"])
    assert len(said) == 28
    for position in said:
        nearest = min(ticks, key=lambda x: abs(x - position))
        assert nearest == pytest.approx(position, rel=PER_MILLE)


def test_the_scale_marks_are_fifty_millimetres_and_two_inches_long() -> None:
    level = [abs(x2 - x1) for x1, y1, x2, y2 in lines_on(made()[0]) if abs(y1 - y2) < 1e-3]
    for length in (50.0, 50.8):
        assert min(abs(x - length) for x in level) < length * PER_MILLE / 10
    assert abs(50.0 - 50.8) > 50.8 * PER_MILLE


def test_the_same_strip_is_the_same_bytes() -> None:
    assert made()[0] == made()[0]


def test_the_words_and_the_mandrel_s_name_are_on_the_page() -> None:
    pdf, _ = made()
    text = "".join(PdfReader(io.BytesIO(pdf)).pages[0].extract_text().split())
    for said in ("Paper strip for m", "large-end face", "end of ground", "18.000", "50 mm", "2 in"):
        assert "".join(said.split()) in text


# A long, worn one


def long_scene(tmp_path: Path, paper: str) -> Scene:
    strip = strip_of(long_mandrel(tmp_path), "mm", flats=((0.06, 0.11),))
    return draw_strip(strip, paper)


def long_mandrel(tmp_path: Path) -> Mandrel:
    from borewright.holding.taper.mandrels import resolve
    from borewright.job import parse_shelf

    note = parse_shelf(SHELF, "shelf.toml").mandrels[0]
    return resolve(note, TABLES, note.name).mandrel


def test_what_stops_nothing_is_left_unread(tmp_path: Path) -> None:
    strip = strip_of(long_mandrel(tmp_path), "mm", flats=((0.06, 0.11),), hand_travel=0.004)
    ((start, end),) = strip.unread
    zero = 0.270 + 0.030
    assert (start, end) == (
        pytest.approx(zero - FLAT_TO - 0.004),
        pytest.approx(zero - FLAT_FROM - 0.004),
    )
    assert not [t for t in strip.ticks if start + 1e-5 < t.position < end - 1e-5]
    larger = [t for t in strip.ticks if t.bore > 0.0320071]
    assert larger
    assert all(t.position <= start + 1e-9 for t in larger)


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_a_long_one_comes_in_two_pieces_with_a_join(tmp_path: Path, paper: str) -> None:
    scene = long_scene(tmp_path, paper)
    pieces = [i for i in scene.items if isinstance(i, Shape) and i.name.startswith("piece-")]
    assert len(pieces) == 2
    assert [i.name for i in scene.items if getattr(i, "name", "") == "join-1"] == ["join-1"]
    lengths = [max(x for x, _ in p.points) - min(x for x, _ in p.points) for p in pieces]
    assert sum(lengths) - 10.0 == pytest.approx(300.0)
    for piece in pieces:
        assert all(0 <= x <= scene.width and 0 <= y <= scene.height for x, y in piece.points)


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_no_words_run_into_each_other_or_off_the_page(tmp_path: Path, paper: str) -> None:
    for scene in (draw_strip(strip_of(STRAIGHT, "inch"), paper), long_scene(tmp_path, paper)):
        boxes = [text_box(i) for i in scene.items if isinstance(i, Text)]
        for k, box in enumerate(boxes):
            assert box.left >= 0
            assert box.right <= scene.width
            assert not [other for other in boxes[:k] if box.overlaps(other)]


@pytest.mark.parametrize("units", ["inch", "mm"])
def test_no_number_runs_over_the_end_of_the_ground(units: Literal["inch", "mm"]) -> None:
    """With ends of many sizes, so that a number falls on the line in some of them."""
    for k in range(20):
        mandrel = replace(STRAIGHT, small_end=STRAIGHT.small_end + 0.4e-6 * k)
        scene = draw_strip(strip_of(mandrel, units), "a4")
        (line,) = [i for i in scene.items if getattr(i, "name", "") == "end-of-ground"]
        assert isinstance(line, Line)
        over = [
            text.text
            for text in (i for i in scene.items if isinstance(i, Text))
            if text_box(text).left < line.x1 < text_box(text).right
            and line.y1 < text_box(text).bottom
            and text_box(text).top < line.y2
        ]
        assert over == []


def test_the_dashed_line_says_that_it_is_folded_there(tmp_path: Path) -> None:
    scene = long_scene(tmp_path, "a4")
    folds = [i for i in scene.items if getattr(i, "name", "").startswith("fold-")]
    said = [i for i in scene.items if isinstance(i, Text) and i.text == "fold here"]
    assert len(folds) == len(said) == 2
    for line, words in zip(folds, said, strict=True):
        assert isinstance(line, Line)
        assert 0 < words.y - line.y1 < 4.0


def test_a_long_name_is_cut_short() -> None:
    named = replace(STRAIGHT, name="the one from the back of the drawer " * 5)
    scene = draw_strip(strip_of(named, "mm"), "a4")
    piece = next(i for i in scene.items if getattr(i, "name", "") == "piece-1")
    said = next(i for i in scene.items if getattr(i, "name", "") == "strip-name")
    assert isinstance(piece, Shape)
    assert isinstance(said, Text)
    assert "…: bore in mm" in said.text
    box = text_box(said)
    assert min(x for x, _ in piece.points) < box.left
    assert box.right < max(x for x, _ in piece.points)


def test_one_too_long_for_a_page_is_refused() -> None:
    endless = Mandrel("m", 0.018, 0.018, 0.0005, 3.0, 3.1, 0.015, 0.05)
    with pytest.raises(RefusedInput, match="one whose strip fits on one page"):
        draw_strip(strip_of(endless, "mm", hand_travel=2.2), "a4")


# The command


def test_the_command_writes_the_strip_of_a_mandrel_on_the_shelf(tmp_path: Path) -> None:
    shelf, out = tmp_path / "shelf.toml", tmp_path / "strip.pdf"
    shelf.write_text(SHELF, encoding="utf-8")
    asked = ["make", "strip", "--mandrel", "the long one", "--shelf", str(shelf), "--out", str(out)]
    done = ran(*asked)
    assert done.code == 0
    assert done.out.startswith("Strip of the long one: bores of ")
    assert out.read_bytes().startswith(b"%PDF")
    answer = json.loads(ran(*asked, "--json").out)
    assert set(answer) == {
        "mandrel", "paper", "step_m", "hand_travel_m", "ground_from_m", "ground_to_m",
        "taper_m_per_m", "ticks", "unread", "assumed",
    }  # fmt: skip
    assert answer["paper"] == "a4"
    assert len(answer["unread"]) == 1


def test_a_size_is_enough_and_what_is_taken_is_said(tmp_path: Path) -> None:
    done = ran("make", "strip", "--size", "5/8in", "--out", str(tmp_path / "s.pdf"))
    assert done.code == 0
    assert "Print at 100 % on letter" in done.out
    assert "Assumed: ends of 5/8in mandrel" in done.out


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        ([], "--out: found nothing"),
        (["--out", "s.pdf"], "--size, --shelf: found neither"),
        (["--out", "s.pdf", "--size", "5/8"], "--size: found 5/8, which could be"),
        (["--out", "s.pdf", "--size", "1in", "--mandrel", "m"], "--size, --shelf: found both"),
        (["--out", "s.pdf", "--mandrel", "m"], "--shelf: found nothing"),
        (["--out", "s.pdf", "--shelf", "no.toml"], "--mandrel: found nothing"),
        (["--out", "s.pdf", "--shelf", "no.toml", "--mandrel", "m"], "no.toml: found"),
        (["--out", "s.pdf", "--size", "1in", "--paper", "a5"], "--paper: found 'a5'"),
        (["--out", "s.pdf", "--size", "1in", "--hand-travel", "-1mm"], "--hand-travel: found"),
        (["--out", "s.pdf", "--size", "1in", "--taper", "1:3"], "strip: found a taper"),
        (["--out", "/no/such/s.pdf", "--size", "1in"], "s.pdf: found"),
    ],
    ids=lambda v: " ".join(v)[-40:] if isinstance(v, list) else "",
)
def test_what_cannot_be_made_is_refused_in_one_line(arguments: list[str], says: str) -> None:
    assert says in refused("make", "strip", *arguments)


def test_a_name_that_is_not_on_the_shelf_or_not_made_is_refused(tmp_path: Path) -> None:
    shelf = tmp_path / "shelf.toml"
    shelf.write_text(SHELF, encoding="utf-8")
    asked = ["--shelf", str(shelf), "--mandrel", "the lon one", "--out", "s.pdf"]
    assert "'the long one'" in refused("make", "strip", *asked)
    assert "make: found 'stripe'; allowed is 'strip'" in refused("make", "stripe")
