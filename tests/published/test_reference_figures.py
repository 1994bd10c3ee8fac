"""Printed figures that stand in the tables, each typed here from its source."""

from __future__ import annotations

import pytest

from borewright.reference import Tables

LIBRARY = Tables()
INCH = 0.0254
# Griswold, Amateur Work, vol. 4: overall lengths of a plain set, inches.
GRISWOLD = {1 / 8: 2.0, 1 / 4: 3.0, 3 / 8: 4.0, 1 / 2: 4.5, 5 / 8: 5.0, 3 / 4: 5.5, 1.0: 6.0}


@pytest.mark.parametrize("nominal", GRISWOLD)
def test_overall_length_is_griswolds(nominal: float) -> None:
    mandrel = LIBRARY.mandrel_row(nominal * INCH)
    assert mandrel.overall_length / INCH == pytest.approx(GRISWOLD[nominal])
    assert "griswold" in mandrel.sources


def test_only_the_sizes_griswold_lists_cite_him() -> None:
    rows = LIBRARY.table("plain_mandrels").rows
    citing = [r.number("nominal") / INCH for r in rows if r.text("length_source") == "griswold"]
    assert citing == pytest.approx(sorted(GRISWOLD))


def test_taper_is_six_thou_in_a_foot() -> None:
    """US War Department TM 1-420 C1 (1942)."""
    for row in LIBRARY.table("plain_mandrels").rows:
        assert row.number("taper") == pytest.approx(0.006 / 12, rel=1e-12)
        assert row.text("taper_source") == "tm-1-420"


def test_nominal_size_lies_on_the_ground_part_before_its_middle_or_near_it() -> None:
    """TM 1-420 C1: nominal near the middle of the taper; shops find it elsewhere, never off it."""
    for row in LIBRARY.table("plain_mandrels").rows:
        mandrel = LIBRARY.mandrel_row(row.number("nominal"))
        place = (mandrel.nominal - mandrel.small_end) / mandrel.taper / mandrel.ground_length
        assert 0.15 < place < 0.6, row.text("size")


def test_sizes_of_the_set_step_by_a_sixteenth() -> None:
    """Machine Shop Work, "Mandrels"."""
    sizes = [row.number("nominal") / INCH for row in LIBRARY.table("plain_mandrels").rows]
    assert sizes == pytest.approx([n / 16 for n in range(2, 33)])


@pytest.mark.parametrize(
    ("material", "ppm"), [("al-6061-t6", 23.1), ("steel-1018", 11.5), ("mandrel-steel-hard", 11.5)]
)
def test_typical_expansion_is_that_of_swyt(material: str, ppm: float) -> None:
    """Swyt, J. Res. NIST 99 (1994) 31."""
    expansion = LIBRARY.material_range(material, "expansion")
    assert expansion.best == pytest.approx(ppm * 1e-6)
    assert expansion.source == "swyt-1994"
