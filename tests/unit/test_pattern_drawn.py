"""The drawings of a casting, its pattern and its core: complete enough to work from, and alike."""

from __future__ import annotations

from math import radians, tan
from typing import Any

import pytest
from tests.drawn_parts import measured, read_dxf

from borewright.answer.drawn_part import DrawnPart
from borewright.answer.made_casting import MadeCasting
from borewright.drawing.dxf import dxf
from borewright.drawing.scene import Hatch, Line
from borewright.drawing.workshop.look import look_for
from borewright.drawing.workshop.page import draw_part
from borewright.job import parse_job
from borewright.making.blank.casting import made_casting
from borewright.making.blank.casting_asked import CastingAsked
from borewright.making.blank.casting_drawn import drawn_casting
from borewright.making.blank.pattern_drawn import drawn_core, drawn_pattern
from borewright.reference.library import Tables

TABLES = Tables()
CORED = """title = "Wheel"
units = "mm"
[work]
material = "gray iron"
blank = "casting"
quantity = 20
outside = 200
length = 70
hub = { outside = 80, from = 0, to = 70 }
rim = { inside = 170, from = 0, to = 50 }
web = { from = 19, to = 31 }
bore = "40 H7"
finished = { outside = 200 }
"""
SPOKED = """title = "Flywheel"
units = "inch"
[work]
material = "gray iron"
blank = "casting"
outside = "7 1/2in"
length = "1 1/2in"
hub = { outside = "2in" }
spokes = { number = 5, width = "7/8in", thickness = "1/2in" }
rim = { inside = "6 1/4in", from = "1/4in", to = "1 1/4in" }
finished = { outside = "7.3in" }
bore = { low = "0.7497in", high = "0.7505in" }
"""


def made(text: str) -> MadeCasting:
    return made_casting(parse_job(text, "job.toml"), CastingAsked(), TABLES)


def drawn(part: DrawnPart, units: Any) -> list[tuple[float, str]]:
    scene = draw_part(part, look_for(units))
    return measured(read_dxf(dxf(scene, float(dict(scene.data)["scale"]), units)))


def test_every_dimension_of_the_pattern_is_that_of_the_casting_by_its_shrinkage() -> None:
    """Both drawings read back by ezdxf: but for core and prints, size for size, as often."""
    wheel = made(CORED)
    casting = sorted(
        v for v, text in drawn(drawn_casting(wheel, TABLES), "mm") if "core" not in text
    )
    pattern = sorted(
        v
        for v, text in drawn(drawn_pattern(wheel, TABLES), "mm")
        if "print" not in text and text != "32"
    )
    assert [v / (1 + wheel.shrink.taken) for v in pattern] == pytest.approx(casting, rel=1e-6)


def test_sizes_of_a_pattern_are_said_in_decimals_all_through() -> None:
    said = [text for _, text in drawn(drawn_pattern(made(SPOKED), TABLES), "inch")]
    assert said
    assert not [text for text in said if "/" in text]


def test_a_core_lies_in_its_prints_and_its_upper_end_is_tapered() -> None:
    """By hand: 32 mm by 1 + shrinkage, the prints 0.4 thicker; seven degrees a side over a print."""
    wheel = made(CORED)
    core = drawn_core(wheel, TABLES)
    assert core is not None
    assert wheel.core is not None
    size = wheel.core.diameter * (1 + wheel.shrink.taken)
    (print_,) = [a.limits.size for a in drawn_pattern(wheel, TABLES).across if a.name == "print"]
    assert print_ == pytest.approx(size + 0.4e-3, abs=1e-8)
    long = wheel.core.print_length
    found = {across.name: across.limits.size for across in core.across}
    assert found["core"] == pytest.approx(size, abs=1e-8)
    assert found["upper-print"] == pytest.approx(size - 2 * long * tan(radians(7)), abs=1e-8)
    whole = max(stretch.end for stretch in core.stretches)
    prints = wheel.core.between * (1 + wheel.shrink.taken) + 2 * long
    # Half a millimetre short of its bed, so that the cope does not crush it.
    assert whole == pytest.approx(prints - 0.4e-3, abs=1e-8)


def test_a_solid_casting_has_no_core_to_draw() -> None:
    assert drawn_core(made(SPOKED), TABLES) is None


def test_spokes_are_seen_and_not_cut() -> None:
    wheel = made(SPOKED)
    for part in (drawn_casting(wheel, TABLES), drawn_pattern(wheel, TABLES)):
        assert part.spokes is not None
        assert part.spokes.number == 5
        scene = draw_part(part, look_for("inch"))
        edges = [i for i in scene.items if isinstance(i, Line) and i.name == "end-spoke"]
        assert len(edges) == 2 * 5
        # Nothing is hatched between hub and rim.
        scale = 1000 * float(dict(scene.data)["scale"])
        (axis,) = [i for i in scene.items if isinstance(i, Line) and i.name == "axis"]
        (metal,) = [i for i in scene.items if isinstance(i, Hatch)]
        middle = (part.spokes.inside + part.spokes.outside) / 4 * scale
        for contour in metal.contours:
            reach = [abs(y - axis.y1) for _, y in contour]
            assert not min(reach) < middle < max(reach)


def test_a_spoke_of_the_pattern_is_wider_by_the_shrinkage() -> None:
    wheel = made(SPOKED)
    ring = drawn_pattern(wheel, TABLES).spokes
    assert ring is not None
    assert ring.width == pytest.approx(7 / 8 * 0.0254 * (1 + wheel.shrink.taken), rel=1e-9)


def test_the_pattern_says_its_drafts_corners_parting_halves_and_what_is_machined() -> None:
    part = drawn_pattern(made(CORED), TABLES)
    words = " ".join((*part.notes, *(p.text for p in part.pointed)))
    for said in (
        "draft 1.5°",
        "draft 3°",
        "fillets R",
        "parting",
        "two halves on dowels",
        "Machined",
    ):
        assert said in words, said


def test_a_size_is_dimensioned_at_the_end_where_it_is() -> None:
    """A hub that stands out at B has its thin end there, not at A, where the web is."""
    part = drawn_casting(made(CORED), TABLES)
    (hub,) = [a for a in part.across if a.name == "hub"]
    assert hub.place == "right"
    assert hub.at == pytest.approx(max(s.end for s in part.stretches))
