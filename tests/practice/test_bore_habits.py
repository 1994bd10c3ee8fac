"""What shops do to a bore daily, by common practice and the army's old book, against our route."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.bore_jobs import INCH, TABLES, drilled, made, solid

from borewright.job.records import MandrelNote, Piece
from borewright.mechanics.bore_sizes import share_below
from borewright.planning.bore_route.kit import BoreGauge
from borewright.planning.bore_route.passes import half_band

# ISO 286-1 at 10 to 18 mm (checks.md, row 9): the whole width in um.
IT7, IT8, IT9 = 18e-6, 27e-6, 43e-6


def test_reamers_cut_over_more_often_than_under() -> None:
    """Common practice, no source: reamers cut over, seldom under."""
    for name in ("hand_reamer_over", "machine_reamer_over"):
        over = TABLES.reaming(name)
        assert share_below(0.0, (over.low, over.best, over.high)) < 0.15


@pytest.mark.parametrize(
    ("gauge", "finer", "coarser"), [(5e-6, IT7 / 2, IT9), (8e-6, IT7, IT9), (15e-6, IT8, 2 * IT9)]
)
def test_a_bored_hole_holds_about_the_grade_that_boring_is_known_for(
    gauge: float, finer: float, coarser: float
) -> None:
    """Handbooks, from memory: a bar holds IT7 in a careful shop, IT8 usually, IT10 in a careless."""
    width = 2 * half_band(BoreGauge("a gauge", gauge, "yes", ()), TABLES).best
    assert finer <= width <= coarser


@pytest.mark.parametrize("size", [1 / 2, 9 / 16, 5 / 8, 3 / 4, 7 / 8, 1])
def test_the_drill_one_64th_under_goes_before_the_reamer(size: float) -> None:
    """Common practice: 5/8 is reamed after 39/64, and so with its like."""
    size *= INCH
    window = (size - 0.0005 * INCH, size + 0.0010 * INCH)
    job, _ = solid()
    bore = job.work.bore
    work = replace(job.work, bore=replace(bore, size=size), pieces=(Piece(0.0, 0.0254, 4 * size),))
    shelf = replace(job.shelf, mandrels=(MandrelNote(size, "the 5/8 in mandrel"),))
    route = made((replace(job, work=work, shelf=shelf), window))
    drill = next(step for step in route.steps if step.process == "drill")
    assert drill.size is not None
    named = next(i.value for i in drill.size.inputs if i.label == "drill")
    assert named == pytest.approx(size - INCH / 64)
    assert route.steps[-1].process == "ream"


def test_stock_for_the_reamer_is_that_of_the_old_book_where_a_bar_leaves_it() -> None:
    """US War Department, TM 1-420 C1 (1942): leave 0.005 to 0.010 in."""
    route = made(solid(blank="casting"))
    stock = route.steps[-1].stock
    assert stock is not None
    assert 0.005 * INCH <= stock.best <= 0.010 * INCH


def test_a_cored_hole_meets_the_bar_first() -> None:
    """Common practice: a drill or a reamer follows the core."""
    assert made(drilled(0.0140, "as cast", blank="casting")).steps[0].process == "bore"
