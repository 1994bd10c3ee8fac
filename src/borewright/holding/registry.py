"""The ways of holding that are computed. A new way is one file and one line here."""

from __future__ import annotations

from borewright.errors import UnknownName
from borewright.holding.plain_taper import PlainTaper
from borewright.holding.way import Way

WAYS: dict[str, Way] = {way.id: way for way in (PlainTaper(),)}


def way_named(name: str) -> Way:
    """The way with this id; UnknownName with the nearest if there is none."""
    if name not in WAYS:
        raise UnknownName("way of holding", name, tuple(WAYS))
    return WAYS[name]
