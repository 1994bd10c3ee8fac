"""The picture of a pressed joint as JSON: SI values, keys with their unit."""

from __future__ import annotations

from typing import Any

from borewright.answer.pressed import Pictured
from borewright.report.record_keys import as_plain


def pictured_object(found: Pictured) -> dict[str, Any]:
    """The numbers of the picture as one JSON object; `picture` is null where nothing is drawn."""
    return {
        "verdict": found.verdict.value,
        "headline": found.headline,
        "why_no_picture": found.why,
        "picture": found.picture and as_plain(found.picture),
    }
