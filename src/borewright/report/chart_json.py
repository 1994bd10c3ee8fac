"""A wall chart as JSON: SI values, keys with their unit."""

from __future__ import annotations

from dataclasses import is_dataclass
from math import isfinite
from typing import Any

from borewright.answer.chart import Chart
from borewright.report.record_keys import typed_fields


def chart_object(chart: Chart) -> dict[str, Any]:
    """The chart as one JSON object; a bore window is low and high, or null."""
    written: dict[str, Any] = _plain(chart)
    for bar in written["bars"]:
        window = bar["bore_window_m"]
        bar["bore_window_m"] = window and dict(zip(("low", "high"), window, strict=True))
    return written


def _plain(value: Any) -> Any:
    if is_dataclass(value):
        return {key: _plain(getattr(value, name)) for name, _, key in typed_fields(type(value))}
    if isinstance(value, tuple):
        return [_plain(each) for each in value]
    if isinstance(value, float):
        return float(value) if isfinite(value) else None
    return value
