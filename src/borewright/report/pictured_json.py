"""The picture of a pressed joint as JSON: SI values, keys with their unit."""

from __future__ import annotations

from dataclasses import is_dataclass
from math import isfinite
from typing import Any

from borewright.answer.pressed import Pictured
from borewright.report.record_keys import typed_fields


def pictured_object(found: Pictured) -> dict[str, Any]:
    """The numbers of the picture as one JSON object; `picture` is null where nothing is drawn."""
    return {
        "verdict": found.verdict.value,
        "headline": found.headline,
        "why_no_picture": found.why,
        "picture": found.picture and _plain(found.picture),
    }


def _plain(value: Any) -> Any:
    if is_dataclass(value):
        return {key: _plain(getattr(value, name)) for name, _, key in typed_fields(type(value))}
    if isinstance(value, tuple):
        return [_plain(each) for each in value]
    if isinstance(value, float):
        return float(value) if isfinite(value) else None
    return value
