"""The wall chart on paper: one page, Letter or A4, black on white, to pin up by the lathe.

Same chart, same bytes. The letters shrink first; then the strips become lines of words; at last
mandrels are left out, and the page says which.
"""

from __future__ import annotations

from pathlib import Path

from borewright.answer.chart import Chart
from borewright.errors import RefusedInput
from borewright.report.bench_sheet import PAPERS
from borewright.report.chart_data import chart_data
from borewright.report.one_page import Words, first_on_one_page

TEMPLATE = Path(__file__).with_name("chart_sheet.typ")
STRIP_SIZES = (9.5, 9.0, 8.5, 8.0, 7.5, 7.0)
LINE_SIZES = (9.0, 8.0, 7.5, 7.0, 6.5, 6.0)
"""Letter sizes tried with strips, and with lines of words instead, points."""
KEPT = (0.85, 0.7, 0.55, 0.4, 0.3, 0.2, 0.1, 0.05)
"""Shares of the mandrels kept when the smallest letters do not make room."""


def chart_sheet(chart: Chart, *, paper: str | None = None) -> bytes:
    """One PDF page: which mandrel takes which bore and where it touches; how deep a cut holds.

    `paper` is letter or a4; left out, inch charts go on letter and mm charts on a4. RefusedInput
    for any other paper, and for a chart that nothing brings onto one page.
    """
    page = first_on_one_page(TEMPLATE, _attempts(chart, _setting(chart, paper)))
    if page is None:
        raise RefusedInput("chart", "more than one page holds", "a shelf with shorter words")
    return page


def _setting(chart: Chart, paper: str | None) -> Words:
    name = (paper or ("a4" if chart.units == "mm" else "letter")).lower()
    if name not in PAPERS:
        raise RefusedInput("paper", repr(paper), " or ".join(PAPERS))
    return {"paper": PAPERS[name].typst_name, "margin_mm": PAPERS[name].margin_mm}


def _attempts(chart: Chart, setting: Words) -> list[Words]:
    whole, count = chart_data(chart), len(chart.bars)
    strips = [{**whole, **setting, "strips": True, "size": s} for s in STRIP_SIZES]
    lines = [{**whole, **setting, "strips": False, "size": s} for s in LINE_SIZES]
    fewer = [
        {**chart_data(chart, max(1, int(share * count))), **setting, "strips": False, "size": s}
        for share in KEPT
        for s in LINE_SIZES[-1:]
    ]
    return [*strips, *lines, *fewer]
