"""A plan's charts drawn: each by itself, and in rows for its sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from borewright.answer.plan import Plan
    from borewright.report.sheet_cutting import ChartPicture


def chart_texts(plan: Plan) -> dict[str, str]:
    """The charts of a plan as SVG text, by the name of their file; empty where there are none."""
    if plan.schedule is None:
        return {}
    from borewright.drawing.line_chart import ALONE, line_chart
    from borewright.drawing.svg import svg
    from borewright.report.words import show_for

    charts, show = plan.schedule.charts, show_for(plan)
    return {f"{chart.id}.svg": svg(line_chart(chart, show, ALONE)) for chart in charts}


def charts_in_rows(plan: Plan) -> list[list[ChartPicture]]:
    """The same for the sheet: two side by side are each half as wide."""
    if plan.schedule is None or not plan.schedule.charts:
        return []
    from borewright.drawing.line_chart import HALF, WIDE, in_rows, line_chart
    from borewright.drawing.svg import svg
    from borewright.report.sheet_cutting import ChartPicture
    from borewright.report.words import show_for

    show, rows = show_for(plan), []
    for charts in in_rows(plan.schedule.charts):
        width = WIDE if len(charts) == 1 else HALF
        drawn = [line_chart(chart, show, width) for chart in charts]
        rows.append([ChartPicture(svg(scene), width, scene.description) for scene in drawn])
    return rows
