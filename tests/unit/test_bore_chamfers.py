"""A chamfer at the bore's edges: read, written, refused; where the work then sits; how it is drawn."""

from __future__ import annotations

import json
from dataclasses import replace

import numpy as np
import pytest
from tests.cli_run import FIT, ran, words
from tests.on_a_mandrel import plan
from tests.sample_plan import SHAPES, sample_layout
from tests.unit.job_refused import changed, refusal
from tests.unit.job_texts import WHEEL

from borewright.drawing import inset, side_view
from borewright.drawing.frame import Scale
from borewright.drawing.outline import section
from borewright.drawing.scene import Hatch, Line, Text
from borewright.holding.taper.plain_taper import holds
from borewright.job import Chamfers, Job, Mandrel, parse_job
from borewright.job.web import gripping
from borewright.job.write import job_text
from borewright.planning.taper.soundness import stated_words
from borewright.quantities.show import Show
from borewright.reference.library import Tables

LEG = 0.5e-3
EXACT = 1e-9
"""Metres: positions that follow from geometry alone."""


def job(chamfer: str, text: str = WHEEL) -> Job:
    return parse_job(f"{text}chamfer = {chamfer}\n" if chamfer else text, "job.toml")


# Job file


@pytest.mark.parametrize(
    ("typed", "legs"),
    [
        ('"0.5mm"', (LEG, LEG)),
        ('"0mm"', (0.0, 0.0)),
        ('{a = "0.5mm"}', (LEG, 0.0)),
        ('{b = "1mm", a = "0.5mm"}', (LEG, 1e-3)),
        ("{}", (0.0, 0.0)),
    ],
)
def test_a_chamfer_is_read_and_written_back(typed: str, legs: tuple[float, float]) -> None:
    read = job(typed)
    assert read.work.chamfers == Chamfers(*legs)
    assert parse_job(job_text(read), "written") == read


def test_a_job_that_states_none_has_none_and_says_none() -> None:
    assert job("").work.chamfers == Chamfers()
    assert gripping(job("").work) == job("").work.pieces
    assert "chamfer" not in job_text(job(""))
    assert not any("chamfer" in line for line in stated_words(job("")))


def test_what_was_stated_is_said_back() -> None:
    assert stated_words(job('"0.5mm"')) == ("bore chamfered 0.5 mm (0.020 in)",)
    (said,) = stated_words(job('{b = "1mm"}'))
    assert said == "bore chamfered none at A, 1 mm (0.039 in) at B"


RECESSED = """[work]
material = "gray-iron-30"
bore = "16.01mm"
outline = [
  {from = "0mm", to = "4mm", outside = "40mm", inside = "18mm"},
  {from = "4mm", to = "20mm", outside = "40mm"},
]
"""


@pytest.mark.parametrize(
    ("text", "typed", "says"),
    [
        (WHEEL, '"10mm"', "work.chamfer: found 10 mm (0.39 in); allowed is a leg below half of"),
        (WHEEL, '"7mm"', "work.chamfer: found 7 mm (0.28 in); allowed is a leg below the wall"),
        (WHEEL, '{b = "7mm"}', "work.chamfer: found 7 mm (0.28 in); allowed is a leg below the"),
        (WHEEL, '"-0.5mm"', "work.chamfer: found -0.5mm; allowed is a length of zero or more"),
        (WHEEL, '{c = "1mm"}', "[work.chamfer] c: found 'c'; allowed is one of: a, b"),
        (RECESSED, '"1mm"', "work.chamfer: found 1 mm (0.039 in); allowed is a leg up to the step"),
    ],
)
def test_a_chamfer_with_no_metal_for_it_is_refused(text: str, typed: str, says: str) -> None:
    assert says in refusal(f"{text}chamfer = {typed}\n")


def test_one_beside_a_counterbore_that_is_refused_at_its_step_fits_at_the_other_face() -> None:
    assert job('{a = "0.9mm", b = "1mm"}', RECESSED).work.chamfers == Chamfers(0.9e-3, 1e-3)


# Plan


SHELF = '[hold]\nmandrels = ["16mm"]\n'


MANDREL = Mandrel("16 mm", 0.016, 0.01599, 0.0005, 0.1, 0.14, 0.012, 0.02)
WORN = replace(MANDREL, stations=((0.0, 0.01599), (0.05, 0.01601), (0.1, 0.01604)))


@pytest.mark.parametrize("mandrel", [MANDREL, WORN], ids=["straight", "as measured"])
@pytest.mark.parametrize("face", ["a", "b"])
def test_the_bore_touches_where_it_begins_a_leg_behind_the_leading_face(
    mandrel: Mandrel, face: str
) -> None:
    (plain,) = holds(job(""), mandrel, Tables())
    both = {h.leading: h for h in holds(job(f'{{{face} = "0.5mm"}}'), mandrel, Tables())}
    cut, whole = both[face.upper()], both["B" if face == "a" else "A"]
    assert cut.touch - plain.touch == pytest.approx(np.full(len(plain.touch), LEG), abs=EXACT)
    assert whole.touch == pytest.approx(plain.touch, abs=EXACT)
    assert cut.joint.work.strips[0, 0] * cut.joint.bore == pytest.approx(LEG, abs=EXACT)


def test_the_plan_draws_the_squeeze_only_where_the_bore_bears() -> None:
    planned = plan(parse_job(f'{WHEEL}chamfer = "0.5mm"\n{SHELF}', "job.toml"))
    assert planned.layout is not None
    assert planned.layout.chamfers == (LEG, LEG)
    assert planned.layout.interference_z[0] == pytest.approx(LEG)
    assert planned.layout.interference_z[-1] == pytest.approx(0.020 - LEG)


def test_unlike_chamfers_make_the_two_faces_two_ways_to_hold_it() -> None:
    planned = plan(parse_job(f'{WHEEL}chamfer = {{a = "2mm"}}\n{SHELF}', "job.toml"))
    assert {c.leading_face for c in planned.candidates} >= {"A", "B"}
    assert planned.layout
    legs = (2e-3, 0.0) if planned.layout.leading_face == "A" else (0.0, 2e-3)
    assert planned.layout.chamfers == legs


def test_a_chamfered_bore_is_not_told_to_be_chamfered() -> None:
    for chamfer, told in (
        ("", True),
        ('chamfer = {a = "0.5mm"}\n', True),
        ('chamfer = "0.5mm"\n', False),
    ):
        planned = plan(parse_job(f"{WHEEL}{chamfer}{SHELF}", "job.toml"))
        (crack,) = (q for q in planned.questions if q.id == "crack")
        assert ("a chamfered bore edge" in crack.changes_it) is told


# fit


def fitted(**changes: str | None) -> dict:
    done = ran("fit", *words(FIT, **changes), "--json")
    assert done.code == 0, done.err
    return json.loads(done.out)


@pytest.mark.parametrize("model", ["rings", "contact"])
def test_fit_seats_a_chamfered_bore_one_leg_further_on(model: str) -> None:
    plain, cut = fitted(model=model), fitted(model=model, chamfer="0.5mm")
    for name in ("touch_position_m", "seat_position_m"):
        assert cut[name] - plain[name] == pytest.approx(LEG, abs=EXACT)


def test_fully_engaged_it_bears_on_its_length_less_two_legs() -> None:
    for model in ("rings", "contact"):
        cut = fitted(model=model, chamfer="0.5mm", travel="45mm")
        assert cut["contact_length_m"] == pytest.approx(0.030 - 2 * LEG, abs=EXACT)


def test_rings_side_by_side_hold_a_chamfered_bore_as_one_shorter_by_two_legs() -> None:
    cut = fitted(model="rings", chamfer="0.5mm", roughness="0um")
    shorter = fitted(model="rings", length="29mm", roughness="0um")
    assert cut["normal_force_N"] == pytest.approx(shorter["normal_force_N"], rel=1e-9)


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("15mm", "--chamfer: found 15 mm (0.59 in); allowed is a leg below half of the bore's"),
        ("11mm", "--chamfer: found 11 mm (0.43 in); allowed is a leg below the wall at that face"),
        ("-1mm", "--chamfer: found -1mm; allowed is a length of zero or more"),
    ],
)
def test_fit_refuses_a_chamfer_with_no_metal_for_it(typed: str, says: str) -> None:
    done = ran("fit", *words(FIT, chamfer=typed))
    assert (done.code, done.out) == (2, "")
    assert says in done.err


# Drawing


@pytest.mark.parametrize("shape", SHAPES)
def test_a_chamfer_is_a_slant_at_either_edge_of_the_bore(shape: str) -> None:
    plain = sample_layout(shape)
    layout = replace(plain, chamfers=(LEG, 2 * LEG))
    bore, end = layout.bore / 2, layout.work_length
    near, far = section(layout).slants
    assert near == pytest.approx((0.0, bore + LEG, LEG, bore))
    assert far == pytest.approx((end - 2 * LEG, bore, end, bore + 2 * LEG))
    on_bore = [edge for edge in section(layout).edges() if edge[1] == edge[3] == bore]
    assert min(edge[0] for edge in on_bore) == pytest.approx(LEG)
    assert max(edge[2] for edge in on_bore) == pytest.approx(end - 2 * LEG)
    assert section(plain).slants == ()


def test_the_slant_is_drawn_at_45_degrees_and_hatched_up_to() -> None:
    layout = replace(sample_layout("webbed"), chamfers=(2e-3, 2e-3))
    scene = side_view(layout, Show("mm"), Scale(1, 1), width=400.0)
    slants = [i for i in scene.items if isinstance(i, Line) and i.name == "work-edge"
              and i.x1 != i.x2 and i.y1 != i.y2]  # fmt: skip
    assert len(slants) == 2
    for line in slants:
        assert abs(line.x2 - line.x1) == pytest.approx(2.0)
        assert abs(line.y2 - line.y1) == pytest.approx(2.0)
    (hatch,) = (i for i in scene.items if isinstance(i, Hatch) and i.name == "section")
    assert sum(len(contour) == 3 for contour in hatch.contours) == 2


def test_the_inset_begins_where_the_bore_does_and_says_so() -> None:
    layout = sample_layout("wheel")
    zs = layout.interference_z
    assert any(
        i.text == f"face {layout.leading_face}" for i in texts(inset(layout, Show("mm")).items)
    )
    later = replace(layout, interference_z=tuple(LEG + z * 0.9 for z in zs))
    said = [i.text for i in texts(inset(later, Show("mm")).items)]
    assert any(f"from face {layout.leading_face}" in text for text in said)
    assert any(text.startswith("bore ends") for text in said)


def texts(items: tuple) -> list[Text]:
    return [item for item in items if isinstance(item, Text)]


def test_a_keyway_deeper_than_the_chamfer_leaves_no_slant_in_its_plane() -> None:
    keyed = changed(
        WHEEL, 'bore = "16.01mm"', 'bore = "16.01mm"\nkeyway = {width = "4mm", depth = "2mm"}'
    )
    planned = plan(parse_job(f'{keyed}chamfer = "0.5mm"\n{SHELF}', "job.toml"))
    assert planned.layout
    assert section(planned.layout).slants == ()
