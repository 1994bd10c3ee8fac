"""shelf chart: a shop's own shelf to one page for the wall by the lathe."""

from __future__ import annotations

from typing import TYPE_CHECKING

from borewright.errors import RefusedInput, UnknownName
from borewright.job.records import Shelf
from borewright.reference.library import Tables, tables
from borewright.service.sums import sums_over

if TYPE_CHECKING:
    from borewright.answer.chart import Chart

ON_HAND = ("gray-iron-30", "steel-1018", "al-6061-t6")
"""The materials commonest on hand: grey iron, mild steel, aluminium (ours)."""


def shelf_chart(
    shelf: Shelf,
    materials: tuple[str, ...] = (),
    units: str = "inch",
    source_tables: Tables | None = None,
) -> Chart:
    """Which bores each mandrel takes and where they touch; the deepest cut that holds, by outside.

    `materials` by any of their names, the commonest three where none is given. RefusedInput for a
    shelf without mandrels and for more materials than a page has room for, UnknownName for one
    that is not in the tables.

    >>> from borewright.job.records import MandrelNote
    >>> chart = shelf_chart(Shelf((MandrelNote(0.016),), True), ("brass",), "mm")
    >>> chart.bars[0].mandrel, chart.columns[0].material
    ('16 mm mandrel', 'brass-c360')
    """
    from borewright.planning.chart.chart import MOST_MATERIALS, chart_of

    used = source_tables or tables()
    ids = tuple(dict.fromkeys(_material(name, used) for name in materials or ON_HAND))
    if len(ids) > MOST_MATERIALS:
        raise RefusedInput("--material", f"{len(ids)} materials", f"at most {MOST_MATERIALS}")
    with sums_over(used):
        return chart_of(shelf, ids, units, used)


def chart_bytes(chart: Chart, paper: str | None = None) -> bytes:
    """The chart as one page of PDF."""
    from borewright.report.chart_sheet import chart_sheet

    return chart_sheet(chart, paper=paper)


def chart_in_words(chart: Chart, written_to: str) -> str:
    """What was charted, and where the page is."""
    from borewright.report.chart_data import gap_lines

    usable = sum(bar.bore_window is not None for bar in chart.bars)
    count = f"{usable} of {len(chart.bars)} mandrels" if len(chart.bars) != 1 else "1 mandrel"
    return "\n".join([*gap_lines(chart), f"Wall chart of {count}: {written_to}"])


def _material(name: str, used: Tables) -> str:
    try:
        found = used.material(name).id
    except UnknownName as unknown:
        raise UnknownName("--material", unknown.name, unknown.known) from None
    if found not in used.work_materials():
        raise UnknownName("--material", name, used.work_materials())
    return found
