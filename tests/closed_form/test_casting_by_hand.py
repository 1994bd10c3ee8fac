"""A casting worked with a pencil: a disc 4 in by 2 in, bore 2 in, an eighth left everywhere."""

from __future__ import annotations

from dataclasses import replace

import pytest

from borewright.job import parse_job
from borewright.making.blank.casting import made_casting
from borewright.making.blank.casting_asked import CastingAsked
from borewright.making.blank.casting_figures import cope_lift
from borewright.making.blank.melt import heats_of
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


def test_a_cored_disc_does_not_cool_in_its_hole() -> None:
    """r 2, hole 1, w 2 in: (4 - 1) 2 over 2 (2 x 2 + 3), three sevenths of an inch."""
    made = cast()
    cored = sections_of(made.wheel.pieces, made.wheel, hole=2 * INCH)
    assert cored[0].modulus / INCH == pytest.approx(3 / 7)


WHEEL = """
units = "mm"
[work]
material = "gray iron"
quantity = 20
bore = "40 H7"
outline = [
    { from = 0, to = 70, outside = 80 },
    { from = 19, to = 31, outside = 170, inside = 80 },
    { from = 0, to = 50, outside = 200, inside = 170 },
]
"""


def test_the_hub_of_an_iron_wheel_by_pencil() -> None:
    """79.6 long, cored 32, a web of 12 on it: (80² - 32²) π/4 x 79.6 is 336 cm³; the outside without
    the web, π x 8.0 x 6.76, is 169.9 cm² and both faces 84.4 cm²: 336.1 / 254.3 is 1.32 cm. A riser six times
    that is 79 mm; on a wall of 24 less 12 of sand it has no room, nor between hub and rim, 45 wide."""
    made = made_casting(parse_job(WHEEL, "wheel.toml"), CastingAsked(), TABLES)
    assert (made.length, made.hole) == (pytest.approx(79.6e-3), pytest.approx(32e-3))
    hub = made.mould.sections[0]
    assert hub.name == "hub"
    assert hub.modulus * 1e3 == pytest.approx(336.1 / 254.3 * 10, rel=1e-3)
    riser = made.mould.riser
    assert riser.diameter * 1e3 == pytest.approx(79.3, abs=0.05)
    assert not riser.fits
    assert riser.room * 1e3 == pytest.approx((80 - 32) / 2 - 12, abs=0.01)


def test_weights_follow_from_yield_and_loss() -> None:
    """Iron at a yield of 0.65 and 5 % lost, as the table has it: a wheel's riser is the lesser part."""
    melt = made_casting(parse_job(WHEEL, "wheel.toml"), CastingAsked(scrap=0.0), TABLES).melt
    assert melt.by_yield
    assert melt.poured == pytest.approx(melt.casting / 0.65)
    assert melt.charge == pytest.approx(20 * melt.poured / 0.95)


def bush(bore: str, outside: str, finished: str):
    sizes = f'material = "bearing bronze"\nquantity = 6\nlength = 40\noutside = {outside}\nbore = {bore}'
    text = f'units = "mm"\n[work]\n{sizes}\nfinished = {{ outside = {finished} }}'
    return made_casting(parse_job(text, "bush.toml"), CastingAsked(), TABLES)


def test_a_cored_bush_pours_more_than_its_yield_says() -> None:
    """43.2 by 44.8, cored 26: 13332 / (2 (967.7 + 297.6)) is 5.27 mm, a riser 31.6 thick and high,
    24.8 cm³ and 0.218 kg; casting and riser and 15 % are more than casting / 0.6."""
    made = bush("30.004", "42", "40")
    assert made.mould.sections[0].modulus * 1e3 == pytest.approx(5.268, abs=2e-3)
    assert made.mould.riser.diameter * 1e3 == pytest.approx(31.6, abs=0.05)
    assert made.melt.riser == pytest.approx(24.8e-6 * made.density, rel=3e-3)
    by_hand = (made.melt.casting + made.melt.riser) * 1.15
    assert by_hand > made.melt.casting / 0.6
    assert made.melt.poured == pytest.approx(by_hand)
    assert not made.melt.by_yield


def test_beside_a_bush_the_neck_is_short() -> None:
    """A wall of 8.6 takes a neck of six tenths, 5.16, no longer than half of that."""
    riser = bush("30.004", "42", "40").mould.riser
    assert riser.fits
    assert riser.place == "rim outside"
    assert riser.neck * 1e3 == pytest.approx(5.16)
    assert riser.neck_long * 1e3 == pytest.approx(2.58)


def test_a_riser_as_wide_as_a_solid_bush_is_taller() -> None:
    """31.8 by 44.8 solid: 15.9 x 44.8 / (2 (15.9 + 44.8)) is 5.868, needed 7.041; D h / (4 h + D) is that
    at a height of 7.041 x 31.8 / (31.8 - 28.165), 61.6."""
    riser = bush("22.004", "30", "28.6").mould.riser
    assert riser.diameter * 1e3 == pytest.approx(31.8)
    assert riser.height * 1e3 == pytest.approx(61.6, abs=0.1)
    high, wide = riser.height, riser.diameter
    assert wide * high / (4 * high + wide) * 1e3 == pytest.approx(7.041, abs=1e-3)


def test_a_hole_half_as_wide_again_as_long_stands_in_sand() -> None:
    """A disc 160 by 30, bore 100, stock 4 and 4.8: a hole of 92 over 39.6 long, and 3 degrees of draft
    make it 2 x 39.6 x 0.0524 narrower at the joint."""
    text = (
        'units = "mm"\nwork = {material = "gray iron", bore = "100 H7", outside = 160, length = 30}'
    )
    made = made_casting(parse_job(text, "disc.toml"), CastingAsked(), TABLES)
    assert made.core is None
    assert made.sand_hole * 1e3 == pytest.approx(92)
    sizes = {round(e * 1e3, 2) for s in made.stretches for e in (s.inside, s.inside_end)}
    assert sizes == {92.0, round(92 - 2 * 39.6 * 0.0524078, 2)}
    cored = made_casting(parse_job(text, "disc.toml"), CastingAsked(bore="cored"), TABLES).core
    assert cored is not None
    assert cored.print_length * 1e3 == pytest.approx(40)  # not as long as thick


@pytest.mark.parametrize(("long", "cored"), [(130, True), (140, False)])
def test_stepping_down_to_a_core_box_does_not_make_a_core_too_slender(
    long: int, cored: bool
) -> None:
    """29.987 less twice 3 is 23.987: 136 as cast is 5.67 of that, and 6.2 of the box of 22; 146 is 6.09."""
    sizes = f"bore = 30, outside = 100, length = {long}"
    job = parse_job(f'units = "mm"\nwork = {{material = "gray iron", {sizes}}}', "long.toml")
    core = made_casting(job, CastingAsked(stock=3e-3), TABLES).core
    assert (core is not None) is cored
    if core:
        assert core.diameter * 1e3 == pytest.approx(22)
        assert core.between * 1e3 == pytest.approx(136)


def test_a_cope_is_lifted_by_the_metal_over_it() -> None:
    """Iron over 4.25 in, 100 mm of it: 9152 mm² x 100 mm is 915 cm³."""
    lift = cope_lift(cast(), TABLES).best
    assert lift == pytest.approx(915.2e-6 * cast().density, rel=1e-3)


def test_heats_are_whole_moulds_from_one_crucible() -> None:
    """A crucible of 15 kg fills 7 moulds of 2 kg: 25 take four. None of 16 kg."""
    assert heats_of(2.0, 25, 15.0) == 4
    assert heats_of(15.0, 3, 15.0) == 3
    assert heats_of(16.0, 1, 15.0) == 0
