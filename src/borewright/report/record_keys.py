"""How the records of an answer become JSON keys: the field's name and its unit's suffix.

Both the JSON of a plan and the schema of that JSON read the records through this file, so that
they cannot disagree.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from functools import lru_cache
from math import isfinite
from types import NoneType, UnionType
from typing import Annotated, Any, Union, get_args, get_origin, get_type_hints

from borewright.answer.picture import Band
from borewright.quantities import si
from borewright.quantities.si import Unit


def typed_fields(record: type) -> tuple[tuple[str, Any, str], ...]:
    """Name, type and JSON key of every field of a record.

    >>> from borewright.answer.records import ProofLoad
    >>> [key for _, _, key in typed_fields(ProofLoad)][:3]
    ['torque_Nm', 'arm_m', 'force_N']
    """
    return _typed_fields(record)


def as_plain(value: Any) -> Any:
    """A record as JSON would have it: its fields by key, tuples as lists, no infinite number."""
    if is_dataclass(value):
        return {key: as_plain(getattr(value, name)) for name, _, key in typed_fields(type(value))}
    if isinstance(value, tuple):
        return [as_plain(each) for each in value]
    if isinstance(value, float):
        return float(value) if isfinite(value) else None
    return value


def key_with_unit(name: str, suffix: str) -> str:
    """A name and its unit's suffix; a number without a unit has none.

    >>> key_with_unit("arm", "m"), key_with_unit("factor", "")
    ('arm_m', 'factor')
    """
    return f"{name}_{suffix}" if suffix else name


def suffix_of_symbol(symbol: str) -> str:
    """The suffix of an SI symbol as `quantities.si` writes it.

    >>> suffix_of_symbol("N·m"), suffix_of_symbol("")
    ('Nm', '')
    """
    return _suffixes().get(symbol, symbol.replace("/", "_per_"))


def bare(hint: Any) -> Any:
    """A type without its `Annotated` notes."""
    return get_args(hint)[0] if get_origin(hint) is Annotated else hint


def optional_of(hint: Any) -> Any:
    """The type that an optional one holds, or None when it is not optional."""
    if get_origin(hint) not in (Union, UnionType):
        return None
    held = [part for part in get_args(hint) if part is not NoneType]
    return held[0] if len(held) == 1 else None


@lru_cache(maxsize=64)
def _typed_fields(record: type) -> tuple[tuple[str, Any, str], ...]:
    hints = get_type_hints(record, include_extras=True)
    return tuple(
        (field.name, hints[field.name], key_with_unit(field.name, _suffix(hints[field.name])))
        for field in fields(record)
    )


def _suffix(hint: Any) -> str:
    return next((unit.suffix for unit in _units(hint)), "")


def _units(hint: Any) -> Iterator[Unit]:
    """The units noted in a type, looking through optional and tuple, and into a band of lengths."""
    if hint is Band:
        yield from _units(si.Metre)
    if get_origin(hint) is Annotated:
        yield from (note for note in get_args(hint) if isinstance(note, Unit))
    elif get_origin(hint) in (Union, UnionType, tuple):
        for part in get_args(hint):
            yield from _units(part)


@lru_cache(maxsize=1)
def _suffixes() -> dict[str, str]:
    notes = [get_args(alias)[1:] for alias in vars(si).values() if get_origin(alias) is Annotated]
    return {unit.symbol: unit.suffix for found in notes for unit in found}
