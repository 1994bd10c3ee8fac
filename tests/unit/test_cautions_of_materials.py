"""A material's cautions are said for the operation they belong to, and for no other."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.jobs_made import wheel_job

from borewright.planning.words.cautions import held_cautions
from borewright.reference.library import Tables

TABLES = Tables()
ON_A_TAPER = ("mandrel", "taper", "press", "dog", "not-soft")
ON_A_PLATE = ("endwise",)
MATERIALS = TABLES.work_materials()


def said(material: str, held: tuple[str, ...]) -> dict[str, str]:
    job = wheel_job()
    job = replace(job, work=replace(job.work, material=material))
    return {c.id: c.text for c in held_cautions(job, held, TABLES)}


@pytest.mark.parametrize("material", MATERIALS)
def test_what_is_not_pressed_is_told_nothing_of_presses_and_mandrels(material: str) -> None:
    for text in said(material, ON_A_PLATE).values():
        assert "pressing" not in text
        assert "when pressed" not in text
        assert "mandrel" not in text


@pytest.mark.parametrize("material", MATERIALS)
def test_what_a_material_names_is_said_somewhere(material: str) -> None:
    """On the taper every caution that a material names is called, as it was bought to be."""
    named = set(TABLES.material(material).cautions)
    assert named <= set(said(material, ON_A_TAPER))


@pytest.mark.parametrize(
    ("material", "taper", "plate"),
    [
        ("al-6061-t6", "aluminium-warms", "aluminium-measures"),
        ("al-scrap-cast", "aluminium-warms", "aluminium-measures"),
        ("mg-az91", "magnesium-warms", "magnesium-measures"),
        ("acetal", "creeps", "creeps-in-clamps"),
    ],
)
def test_warmth_and_creep_are_told_by_how_it_is_held(material: str, taper: str, plate: str) -> None:
    on_taper, on_plate = said(material, ON_A_TAPER), said(material, ON_A_PLATE)
    assert taper in on_taper
    assert plate not in on_taper
    assert plate in on_plate
    assert taper not in on_plate


def test_stainless_galls_only_where_it_is_pressed() -> None:
    assert "stainless-galls" in said("stainless-303", ON_A_TAPER)
    assert "stainless-galls" not in said("stainless-303", ON_A_PLATE)
    assert "stainless-hardens" in said("stainless-303", ON_A_PLATE)
