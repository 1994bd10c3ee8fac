"""A wall chart as JSON: SI values, keys with their unit."""

from __future__ import annotations

from typing import Any

from borewright.answer.chart import Chart
from borewright.report.record_keys import as_plain


def chart_object(chart: Chart) -> dict[str, Any]:
    """The chart as one JSON object; a bore window is low and high, or null."""
    written: dict[str, Any] = as_plain(chart)
    for bar in written["bars"]:
        window = bar["bore_window_m"]
        bar["bore_window_m"] = window and dict(zip(("low", "high"), window, strict=True))
    return written
