"""The form of what else a shelf file lists: presses, vice, hammer, dogs, drills …"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from borewright.job.schema_kinds import Table, Text, Typed


class PressTable(Table):
    """A press: what it is called, what kind it is, how hard it presses, what it has room for."""

    name: Text = ""
    kind: Text = ""
    force: Typed | None = None
    daylight: Typed | None = None
    throat: Typed | None = None
    ram_travel: Typed | None = None
    table_slot: Typed | None = None


class ViceTable(Table):
    """The bench vice."""

    opening: Typed | None = None
    force: Typed | None = None


class HammerTable(Table):
    """The hammer that drives work on or off."""

    mass: Typed | None = None
    face: Text = ""


class DogTable(Table):
    """A lathe dog (carrier) and the rounds it takes."""

    name: Text = ""
    smallest: Typed | None = None
    largest: Typed | None = None
    tail: Literal["bent", "straight", "unknown"] = "unknown"


class ReamerTable(Table):
    """A reamer: the size marked on it, and how much over or under that it really cuts."""

    size: Typed
    name: Text = ""
    cuts: Typed | None = None


class HoldingTable(Table):
    """What else holds work: chucks, faceplate, collets …, and the sizes that they take."""

    kind: Text
    name: Text = ""
    smallest: Typed | None = None
    largest: Typed | None = None


class DrillTable(Table):
    """A drill by its size or its number or letter, or a whole set by its step and its two ends."""

    size: Typed | None = None
    set: Text = ""
    smallest: Typed | None = None
    largest: Typed | None = None
    name: Text = ""


class BoringBarTable(Table):
    """The boring bars together."""

    smallest_bore: Typed | None = None
    reach: Typed | None = None


class GaugeTable(Table):
    """What measures a bore, how well, and from which size to which."""

    kind: Text
    uncertainty: Typed | None = None
    range: Annotated[list[Typed], Field(min_length=2, max_length=2)] | None = None
