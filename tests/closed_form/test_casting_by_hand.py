"""A casting worked with a pencil: a disc 4 in by 2 in, bore 2 in, an eighth left everywhere."""

from __future__ import annotations

from dataclasses import replace

import pytest

from borewright.job import parse_job
from borewright.making.blank.casting import made_casting
from borewright.making.blank.casting_asked import CastingAsked
from borewright.making.blank.mould import sections_of
from borewright.reference.library import Tables

TABLES = Tables()
INCH = 0.0254
DISC = 'units = "inch"\nwork = {material = "gray iron", bore = 2, outside = 4, length = 2, quantity = 4}'
EIGHTH = CastingAsked(stock=INCH / 8)
FLOATS = 1e-9


def cast(asked: CastingAsked = EIGHTH):
    return made_casting(parse_job(DISC, "disc.toml"), asked, TABLES)


def test_an_eighth_on_every_face_makes_it_a_quarter_larger() -> None:
    made = cast()
    assert made.outside / INCH == pytest.approx(4.25, rel=FLOATS)
    assert made.length / INCH == pytest.approx(2.25, rel=FLOATS)


def test_the_pattern_of_iron_is_between_3_32_and_1_8_to_the_foot() -> None:
    """(3/32 + 1/8) / 2 is 7/64 in to the foot: 4.25 in and a 38.7 thousandths."""
    assert cast().pattern(cast().outside) / INCH == pytest.approx(
        4.25 * (1 + 7 / 64 / 12), rel=FLOATS
    )


def test_the_core_is_two_stocks_smaller_then_the_next_box_down() -> None:
    """1.9995 less 1/4 is 1.7495: the box is 1 5/8, because boxes go by eighths."""
    core = cast().core
    assert core is not None
    assert core.diameter / INCH == pytest.approx(1.625, rel=FLOATS)
    thinner = cast(replace(EIGHTH, stock=INCH / 16)).core
    assert thinner is not None
    assert thinner.diameter / INCH == pytest.approx(1.75, rel=FLOATS)


def test_a_solid_disc_cools_over_its_round_and_both_faces() -> None:
    """π r² w over 2 π r w + 2 π r²: r 2, w 2 in give half an inch."""
    made = cast()
    assert sections_of(made.wheel.pieces, made.wheel)[0].modulus / INCH == pytest.approx(0.5)


def test_ten_in_a_hundred_scrap_and_four_wanted_is_six_to_be_95_sure() -> None:
    """By hand: 5 poured give 4 good with .9^5 + 5 x .1 x .9^4 = 0.919; 6 with 0.984."""
    melt = cast(replace(EIGHTH, scrap=0.1, sure=0.95)).melt
    assert melt.tries == 6
    assert melt.chance == pytest.approx(0.98415, abs=1e-5)


def test_weights_follow_from_yield_and_loss() -> None:
    """Iron at a yield of 0.65 and 5 % lost, as the table has it."""
    melt = cast(replace(EIGHTH, scrap=0.0)).melt
    assert melt.poured == pytest.approx(melt.casting / 0.65)
    assert melt.charge == pytest.approx(4 * melt.poured / 0.95)


def test_a_cored_disc_cools_in_its_hole_too() -> None:
    """r 2, hole 1, w 2 in: (4 - 1) 2 over 2 (2 x 2 + 1 x 2 + 3), a third of an inch."""
    made = cast()
    cored = sections_of(made.wheel.pieces, made.wheel, hole=2 * INCH)
    assert cored[0].modulus / INCH == pytest.approx(1 / 3)
