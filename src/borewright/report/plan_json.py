"""A plan as JSON: SI values, keys with their unit, finite numbers only, same plan same bytes."""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import is_dataclass
from math import isfinite
from typing import Any

from borewright.answer.picture import Band
from borewright.answer.plan import Plan
from borewright.answer.records import Figure
from borewright.answer.schedule import Schedule
from borewright.report.record_keys import key_with_unit, suffix_of_symbol, typed_fields


def plan_json(plan: Plan) -> str:
    """The plan as one JSON object, ending in a newline.

    A figure stands under its name and unit with `low`, `best`, `high` (null where there is no
    band), its formula, inputs and sources. Infinity and not-a-number become null.
    """
    return json.dumps(plan_object(plan), ensure_ascii=False, indent=2, allow_nan=False) + "\n"


def plan_object(plan: Plan) -> dict[str, Any]:
    """The plan as the object that `plan_json` writes."""
    written: dict[str, Any] = _record(plan)
    window = plan.bore_window
    written["bore_window_m"] = window and {"low": _plain(window[0]), "high": _plain(window[1])}
    if plan.schedule is not None:
        written["schedule"] = _schedule(plan.schedule)
    return written


def _schedule(schedule: Schedule) -> dict[str, Any]:
    """The schedule, with the size to read warm and the warmth it is for by name."""
    written = _record(schedule)
    target = written.pop("target_m")
    written["target"] = target and {"size_m": target[0], "warmth_K": target[1]}
    return written


def record_object(record: Any) -> dict[str, Any]:
    """Any record of an answer as JSON would have it, its figures by name and unit."""
    return _record(record)


def _plain(value: Any) -> Any:
    if isinstance(value, Figure):
        return _figure(value)
    if isinstance(value, Band):
        return {end: _plain(getattr(value, end)) for end in ("low", "best", "high")}
    if is_dataclass(value):
        return _record(value)
    if isinstance(value, tuple):
        return _many(value)
    if isinstance(value, float) or hasattr(value, "dtype"):
        return float(value) if isfinite(value) else None
    return value


def _many(values: tuple[Any, ...]) -> Any:
    return [_plain(value) for value in values]


def _record(record: Any) -> dict[str, Any]:
    return dict(
        _entry(key, name, getattr(record, name)) for name, _, key in typed_fields(type(record))
    )


def _entry(key: str, name: str, value: Any) -> tuple[str, Any]:
    if isinstance(value, Figure):
        # A field that names its unit already, so that it has one key with and without a figure.
        named = key != name
        return key if named else key_with_unit(key, suffix_of_symbol(value.unit)), _figure(value)
    if name == "figures":
        return key, figures_object(value)
    return key, _plain(value)


def figures_object(figures: Iterable[Figure]) -> dict[str, Any]:
    """Figures by name and unit; a second one of the same name gets a number after it.

    >>> list(figures_object((Figure("push", 1.0, "N"), Figure("push", 2.0, "N"))))
    ['push_N', 'push_2_N']
    """
    written: dict[str, Any] = {}
    for figure in figures:
        suffix = suffix_of_symbol(figure.unit)
        key, count = key_with_unit(figure.name, suffix), 1
        while key in written:
            count += 1
            key = key_with_unit(f"{figure.name}_{count}", suffix)
        written[key] = _figure(figure)
    return written


def _figure(figure: Figure) -> dict[str, Any]:
    ends = {"low": figure.low, "best": figure.best, "high": figure.high}
    return {
        **{end: _plain(value) for end, value in ends.items()},
        "formula": figure.formula,
        "inputs": _many(figure.inputs),
        "sources": list(figure.sources),
        "kind": figure.kind,
    }
