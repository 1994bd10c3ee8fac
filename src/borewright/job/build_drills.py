"""From checked tables to the records of drills and of the boring bars."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Final

from borewright.errors import UnknownName
from borewright.errors.tree import RefusedInput
from borewright.job.build_tools import check_rising
from borewright.job.tools import OwnBoringBar, OwnDrill
from borewright.job.typed import Reader, Value, maybe
from borewright.quantities.si import Metre
from borewright.reference.library import tables

if TYPE_CHECKING:
    from borewright.job.schema_tools import BoringBarTable, DrillTable

_BY_NAME: Final = re.compile(r"\s*(#|no\b|number\b|letter\b|[A-Za-z]\s*$)", re.IGNORECASE)
"""A number or letter drill says so: a bare 7 may be 7 mm as well."""


def build_drill(table: DrillTable, place: str, reader: Reader) -> OwnDrill:
    """One drill, or one set of them; both in one table are refused, and so is neither."""
    if (table.size is None) == (not table.set):
        found = "both size and set" if table.set else "neither size nor set"
        raise RefusedInput(reader.at(place), found, "a drill by its size, or a set by its step")
    if table.size is not None:
        return _single(table.size, table, place, reader)
    smallest = maybe(reader.length, table.smallest, f"{place}.smallest")
    largest = maybe(reader.length, table.largest, f"{place}.largest")
    check_rising(smallest, largest, reader.at(place))
    by = _set_id(table.set, reader.at(f"{place}.set"))
    return OwnDrill(by=by, smallest=smallest, largest=largest, name=table.name)


def build_boring_bar(table: BoringBarTable, reader: Reader) -> OwnBoringBar:
    """What is known of the boring bars."""
    return OwnBoringBar(
        maybe(reader.length, table.smallest_bore, "boring_bar.smallest_bore"),
        maybe(reader.length, table.reach, "boring_bar.reach"),
    )


def _single(size: Value, table: DrillTable, place: str, reader: Reader) -> OwnDrill:
    if table.smallest is not None or table.largest is not None:
        found = "smallest or largest beside a size"
        raise RefusedInput(reader.at(place), found, "those beside a set only")
    text = str(size)
    if _BY_NAME.match(text) is None:
        return OwnDrill(reader.length(size, f"{place}.size"), name=table.name)
    return OwnDrill(_by_name(text, reader.at(f"{place}.size")), name=table.name or text.strip())


def _by_name(text: str, where: str) -> Metre:
    try:
        return tables().drill(text).size
    except UnknownName as unknown:
        raise RefusedInput(where, repr(text), "#1 to #80, or a letter A to Z") from unknown


def _set_id(text: str, where: str) -> str:
    try:
        return tables().drill_set(text).id
    except UnknownName as unknown:
        raise UnknownName(where, text, unknown.known) from None
