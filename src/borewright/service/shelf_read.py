"""shelf: a shelf file with the units it speaks in, and what is on it as JSON."""

from __future__ import annotations

from dataclasses import dataclass, is_dataclass
from pathlib import Path
from typing import Any, Literal

from borewright.job.records import Machine, Shelf
from borewright.job.shelf_file import WHAT, parse_shelf
from borewright.job.toml_text import load_text, parse_tables
from borewright.job.tools import OwnPress


@dataclass(frozen=True, slots=True)
class ShelfFile:
    """A shelf, where it was read from, and the units to show first."""

    path: str
    units: Literal["inch", "mm"]
    shelf: Shelf


def load_shelf(path: str) -> ShelfFile:
    """The shelf of a file; refusals as `read_shelf`."""
    text = load_text(Path(path), WHAT)
    shelf = parse_shelf(text, path)
    stated = parse_tables(text, path, WHAT).get("units")
    return ShelfFile(path, "mm" if stated == "mm" else "inch", shelf)


def lathes_of(shelf: Shelf) -> tuple[Machine, ...]:
    """Every lathe, the only one included; none where nothing was said of any."""
    single = () if shelf.machine == Machine() else (shelf.machine,)
    return shelf.lathes or single


def presses_of(shelf: Shelf) -> tuple[OwnPress, ...]:
    """Every press, the only one included."""
    named = shelf.press or shelf.press_force is not None
    return shelf.presses or ((OwnPress(shelf.press, force=shelf.press_force),) if named else ())


def shelf_object(shelf: Shelf) -> dict[str, Any]:
    """The shelf as JSON: SI values, each key its field's name and unit; null is not stated.

    >>> shelf_object(Shelf(press="arbor press", press_force=5000.0))["press_force_N"]
    5000.0
    """
    return _record(shelf)


def _record(record: Any) -> dict[str, Any]:
    from borewright.report.record_keys import typed_fields

    return {key: _plain(getattr(record, name)) for name, _, key in typed_fields(type(record))}


def _plain(value: Any) -> Any:
    if is_dataclass(value):
        return _record(value)
    return [_plain(one) for one in value] if isinstance(value, tuple) else value
