"""Friction of the work on a hard ground mandrel."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.errors import UnknownName
from borewright.reference.names import plain
from borewright.reference.ranges import Range, range_of
from borewright.reference.table import Table

LUBRICATIONS = {
    "oiled": "oiled",
    "oil": "oiled",
    "wiped": "oiled",
    "wiped-oil-film": "oiled",
    "dry": "dry",
}


@dataclass(frozen=True, slots=True)
class Friction:
    """`mu_on` while pressing on; slipping (`slip_ratio`) and pressing off (`off_ratio`) over it."""

    family: str
    lubrication: str
    mu_on: Range
    slip_ratio: Range
    off_ratio: Range


def friction_of(table: Table, family: str, lubrication: str) -> Friction:
    """The friction of a material family with a lubrication, from the table `friction`."""
    state = lubrication_id(lubrication)
    mu_on, slip, off = (
        range_of(table.row(family, state, quantity))
        for quantity in ("mu_on", "slip_ratio", "off_ratio")
    )
    return Friction(family, state, mu_on, slip, off)


def lubrication_id(name: str) -> str:
    """oiled or dry, from any word for it.

    >>> lubrication_id("wiped oil film")
    'oiled'
    """
    found = LUBRICATIONS.get(plain(name))
    if found is None:
        raise UnknownName("lubrication", name, tuple(LUBRICATIONS))
    return found
