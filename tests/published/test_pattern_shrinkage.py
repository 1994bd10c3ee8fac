"""Patterns by printed shrinkage: a foot of casting asks for a foot and the fraction."""

from __future__ import annotations

from fractions import Fraction

import pytest

from borewright.making.blank.casting_asked import CastingAsked
from borewright.making.blank.shrink import shrink_of
from borewright.mechanics.cast_metal import pattern_size, shrinkage_measured
from borewright.reference.library import Tables

TABLES = Tables()
FOOT = 0.3048

PRINTED = [
    ("gray-iron-30", Fraction(3, 32)),
    ("al-cast", Fraction(7, 32)),
    ("brass-c464", Fraction(3, 16)),
    ("bronze-pb1", Fraction(5, 32)),
]
"""Dooley, Applied Science for Metal Workers, section 426: inches to the foot."""


@pytest.mark.parametrize(("material", "inches"), PRINTED, ids=lambda v: str(v))
def test_a_foot_of_casting_by_the_printed_figure(material, inches):
    said = {s.source: s.shrinkage for s in TABLES.shrinkages(material)}
    pattern = pattern_size(FOOT, said["dooley"])
    assert (pattern - FOOT) / 0.0254 == pytest.approx(float(inches), abs=1e-6)


def test_where_books_part_the_middle_is_taken_and_both_ends_are_kept():
    """5/32 and 7/32 in/ft for aluminium: 3/16 between them."""
    shrink = shrink_of("al-cast", CastingAsked(), TABLES)
    found = [12 * s for s in (shrink.low, shrink.taken, shrink.high)]
    assert found == pytest.approx([5 / 32, 6 / 32, 7 / 32], abs=1e-9)


def test_a_first_casting_beats_the_books():
    """5.06 in of pattern, 5.00 in of casting: 12 thou to the inch."""
    asked = CastingAsked(measured=(5.06 * 0.0254, 5.00 * 0.0254))
    assert shrink_of("al-cast", asked, TABLES).taken == pytest.approx(0.012)
    assert shrinkage_measured(5.06, 5.00) == pytest.approx(0.012)
