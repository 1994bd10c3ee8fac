"""Wheels that small foundries cast every day come out as everyday work: common practice, no source."""

from __future__ import annotations

import pytest

from borewright.job import parse_job
from borewright.making.blank.care import care_of
from borewright.making.blank.casting import made_casting
from borewright.making.blank.casting_asked import CastingAsked
from borewright.reference.library import Tables

TABLES = Tables()


def wheel(material: str, outside: float, length: float, hub: float, bore: float) -> str:
    """A webbed wheel, sizes in mm, its rim a tenth of its outside thick on diameter."""
    return (
        f'units = "mm"\n[work]\nmaterial = "{material}"\nblank = "casting"\noutside = {outside}\nlength = {length}\n'
        f"hub = {{ outside = {hub} }}\nweb = {{ thickness = {max(8, length / 5):.0f} }}\n"
        f'rim = {{ inside = {0.88 * outside:.0f} }}\nbore = "{bore:g} H8"\nfinished = {{ outside = {outside} }}\n'
    )


@pytest.mark.parametrize("material", ["gray iron", "al-cast", "al-lm4"])
@pytest.mark.parametrize(
    ("outside", "length", "hub", "bore"),
    [(100, 30, 35, 12), (125, 40, 40, 16), (150, 40, 45, 20), (200, 50, 55, 22)],
)
def test_a_usual_belt_wheel_is_cast_without_a_warning(
    material: str, outside: float, length: float, hub: float, bore: float
) -> None:
    made = made_casting(
        parse_job(wheel(material, outside, length, hub, bore), "job.toml"), CastingAsked(), TABLES
    )
    assert care_of(made, TABLES) == ()
    assert made.core is None, "bores under an inch are drilled"


def test_an_iron_wheel_with_a_cored_hub_feeds_itself() -> None:
    """200 mm, hub 80, bore 40: no riser fits beside the core, and none is wanted of gray iron."""
    made = made_casting(
        parse_job(wheel("gray iron", 200, 60, 80, 40), "job.toml"), CastingAsked(), TABLES
    )
    assert made.core is not None
    assert care_of(made, TABLES) == ()


@pytest.mark.parametrize("material", ["steel-1018", "mg-az91", "ductile-iron-65-45-12"])
def test_what_is_work_for_a_foundry_says_so_first(material: str) -> None:
    made = made_casting(
        parse_job(wheel(material, 150, 40, 45, 20), "job.toml"), CastingAsked(), TABLES
    )
    assert "foundry" in care_of(made, TABLES)[0]


def test_what_is_not_poured_is_not_weighed() -> None:
    """Where no riser fits none is poured: the melt is that of the casting and its sprue, by yield."""
    made = made_casting(
        parse_job(wheel("gray iron", 200, 60, 80, 40), "job.toml"), CastingAsked(), TABLES
    )
    assert not made.mould.riser.fits
    assert made.melt.riser == 0.0
    assert made.melt.poured == pytest.approx(made.melt.casting / made.melt.yield_share)
