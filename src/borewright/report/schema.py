"""The JSON schemas of a plan, a wall chart and a rescue, read from the records themselves."""

from __future__ import annotations

import json
from dataclasses import is_dataclass
from enum import StrEnum
from typing import Any, get_args, get_origin

from borewright.answer.change import Change
from borewright.answer.chart import Chart
from borewright.answer.picture import Band
from borewright.answer.plan import Plan
from borewright.answer.records import Figure, Input, PushAdvice
from borewright.answer.rescue import Rescue, WayOut
from borewright.answer.schedule import Schedule
from borewright.report.record_keys import bare, optional_of, typed_fields

DIALECT = "https://json-schema.org/draft/2020-12/schema"
_NUMBER: dict[str, Any] = {"type": ["number", "null"]}
_PLAIN: dict[type, dict[str, Any]] = {
    float: _NUMBER,
    int: {"type": "integer"},
    str: {"type": "string"},
    bool: {"type": "boolean"},
}
_UNITS_OF: dict[type, dict[str, str]] = {
    PushAdvice: {"expected": "N", "look_for": "N", "stop_at": "N", "proves_torque": "Nm"},
    Change: {"time": "s", "depth_before": "m", "depth_after": "m"},
    WayOut: {"takes": "s"},
}
"""Units of figures that are fields of their own."""


def plan_schema() -> dict[str, Any]:
    """The schema that every plan's JSON fits.

    >>> plan_schema()["properties"]["bore_window_m"]["anyOf"][1]
    {'type': 'null'}
    """
    whole = _record(Plan)
    window = _object({"low": _NUMBER, "high": _NUMBER})
    whole["properties"]["bore_window_m"] = {"anyOf": [window, {"type": "null"}]}
    whole["properties"]["schedule"] = {"anyOf": [_schedule(), {"type": "null"}]}
    return {"$schema": DIALECT, "title": "A borewright plan", **whole, "$defs": _shared()}


def _schedule() -> dict[str, Any]:
    """As the JSON names the size to read warm and the warmth it is for."""
    properties = dict(_record(Schedule)["properties"])
    del properties["target_m"]
    warm = _object({"size_m": _NUMBER, "warmth_K": _NUMBER})
    return _object({**properties, "target": {"anyOf": [warm, {"type": "null"}]}})


def chart_schema() -> dict[str, Any]:
    """The schema that every wall chart's JSON fits.

    >>> chart_schema()["properties"]["cells"]["items"]["properties"]["leaves_skin"]
    {'type': 'boolean'}
    """
    whole = _record(Chart)
    window = _object({"low": _NUMBER, "high": _NUMBER})
    bar = whole["properties"]["bars"]["items"]["properties"]
    bar["bore_window_m"] = {"anyOf": [window, {"type": "null"}]}
    return {"$schema": DIALECT, "title": "A borewright wall chart", **whole}


def chart_schema_text() -> str:
    """The schema as the published file holds it.

    >>> chart_schema_text().endswith("}\\n")
    True
    """
    return json.dumps(chart_schema(), ensure_ascii=False, indent=2) + "\n"


def rescue_schema() -> dict[str, Any]:
    """The schema that every rescue's JSON fits.

    >>> rescue_schema()["properties"]["ways_out"]["items"]["properties"]["takes_s"]
    {'$ref': '#/$defs/figure'}
    """
    whole = _record(Rescue)
    return {"$schema": DIALECT, "title": "A borewright rescue", **whole, "$defs": _shared()}


def rescue_schema_text() -> str:
    """The schema as the published file holds it.

    >>> rescue_schema_text().endswith("}\\n")
    True
    """
    return json.dumps(rescue_schema(), ensure_ascii=False, indent=2) + "\n"


def plan_schema_text() -> str:
    """The schema as the published file holds it.

    >>> plan_schema_text().endswith("}\\n")
    True
    """
    return json.dumps(plan_schema(), ensure_ascii=False, indent=2) + "\n"


def _shared() -> dict[str, Any]:
    ends = dict.fromkeys(("low", "best", "high"), _NUMBER)
    texts = {"type": "array", "items": {"type": "string"}}
    inputs = {"type": "array", "items": _record(Input)}
    words = {"formula": {"type": "string"}, "inputs": inputs, "sources": texts}
    return {
        "figure": _object({**ends, **words, "kind": {"type": "string"}}),
        "band": _object(dict(ends)),
    }


def _object(properties: dict[str, Any]) -> dict[str, Any]:
    return {
        "type": "object",
        "properties": properties,
        "required": list(properties),
        "additionalProperties": False,
    }


def _record(record: type) -> dict[str, Any]:
    properties = {}
    for name, hint, key in typed_fields(record):
        unit = _UNITS_OF.get(record, {}).get(name, "")
        properties[f"{key}_{unit}" if unit else key] = (
            _figures() if name == "figures" else _of(hint)
        )
    return _object(properties)


def _figures() -> dict[str, Any]:
    return {"type": "object", "additionalProperties": {"$ref": "#/$defs/figure"}}


def _of(hint: Any) -> dict[str, Any]:
    kind = bare(hint)
    held = optional_of(kind)
    if held is not None:
        return {"anyOf": [_of(held), {"type": "null"}]}
    if get_origin(kind) is tuple:
        return {"type": "array", "items": _of(get_args(kind)[0])}
    return _single(kind)


def _single(kind: Any) -> dict[str, Any]:
    if kind is Figure:
        return {"$ref": "#/$defs/figure"}
    if kind is Band:
        return {"$ref": "#/$defs/band"}
    if is_dataclass(kind) and isinstance(kind, type):
        return _record(kind)
    if issubclass(kind, StrEnum):
        return {"enum": [str(member) for member in kind]}
    return dict(_PLAIN[kind])
