"""Holding tables against the form in `schema`, and saying in one sentence what does not fit."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, Final, TypeVar

from pydantic import ValidationError

from borewright.errors.tree import RefusedInput, UnknownName, one_line
from borewright.job.schema_kinds import PLAIN_TAG, TABLE_TAG, TEXT, Table

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

AnyTable = TypeVar("AnyTable", bound=Table)

_ALLOWED: Final = {
    "a_quantity": 'a number with its unit, such as "16mm"',
    "a_pair": 'a place and the diameter there, such as ["1/4in", "0.6247in"]',
    "a_text": f"one line of text of at most {TEXT} characters",
    "missing": "a value here, it is needed",
    "model_type": "a table of keys",
    "list_type": "a list in square brackets",
    "int_type": "a whole number",
    "bool_type": "true or false",
    "float_type": "a number",
    "greater_than_equal": "{ge} or more",
    "less_than_equal": "{le} or fewer",
    "too_long": "at most {max_length} entries",
    "too_short": "at least {min_length} entries",
    "literal_error": "{expected}",
}


def check_form(tables: Mapping[str, Any], model: type[AnyTable], where: str) -> AnyTable:
    """The tables as a model, or RefusedInput (UnknownName for a key) with file and place."""
    try:
        return model.model_validate(tables)
    except ValidationError as problem:
        raise _refusal(problem.errors(include_url=False)[0], where) from None


def _refusal(error: ErrorDetails, where: str) -> RefusedInput:
    facts = error.get("ctx", {})
    if error["type"] == "unknown_key":
        name = facts["name"][:40]
        place = f"{where}: {_table_name(error['loc'])}{name}"
        return UnknownName(place, name, tuple(facts["known"]))
    allowed = _ALLOWED.get(error["type"], one_line(error["msg"])).format(**facts)
    found = "nothing" if error["type"] == "missing" else shown(error["input"])
    return RefusedInput(f"{where}: {_path(error['loc'])}", found, allowed)


def shown(value: object) -> str:
    """Any TOML value in a few words.

    >>> shown("a" * 100)[-4:], shown([1, 2, 3]), shown({"a": 1}), shown(True)
    ("aa…'", 'a list of 3', 'a table', 'true')
    """
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, list):
        return f"a list of {len(value)}"
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, int) and abs(value) >= 10**30:
        return "a number of more than 30 digits"
    text = one_line(str(value))
    text = text[:40] + "…" if len(text) > 40 else text
    return repr(text) if isinstance(value, str) else text


def _path(loc: tuple[int | str, ...]) -> str:
    path = ""
    for step in loc:
        if isinstance(step, int):
            path += f"[{step + 1}]"
        elif step not in (TABLE_TAG, PLAIN_TAG):
            path += f".{step}" if path else step
    return path


def _table_name(loc: tuple[int | str, ...]) -> str:
    path = _path(loc)
    return f"[{path}] " if path else ""
