"""A rescue as JSON: SI values, keys with their unit, as `rescue_schema` says."""

from __future__ import annotations

from typing import Any

from borewright.answer.rescue import Rescue
from borewright.report.plan_json import record_object


def rescue_object(rescue: Rescue) -> dict[str, Any]:
    """The rescue as one object; what nobody can say (how long another casting takes) is null."""
    return record_object(rescue)
