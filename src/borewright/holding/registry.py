"""The ways of holding that are computed. A new way is one file and one line here."""

from __future__ import annotations

from borewright.holding.plain_taper import PlainTaper
from borewright.holding.way import Way

WAYS: dict[str, Way] = {way.id: way for way in (PlainTaper(),)}
