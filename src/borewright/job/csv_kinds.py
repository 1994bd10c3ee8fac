"""What a spreadsheet may list: the columns of each kind of tool, and the names they go by.

The names are plain trade words, US and UK, gathered by us.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Field:
    """One column: its key in the shelf file, the kind of quantity, other names, whether needed.

    `kind` is text where it is no quantity; `many` a list in one cell.
    """

    key: str
    kind: str = "text"
    names: tuple[str, ...] = ()
    needed: bool = False
    many: bool = False


def _field(key: str, kind: str, names: str = "", needed: bool = False, many: bool = False) -> Field:
    return Field(key, kind, tuple(n.strip() for n in names.split(";") if n.strip()), needed, many)


_NAME = _field("name", "text", "no; number; id; tag; called; label; item; description")
KINDS: Final[dict[str, tuple[Field, ...]]] = {
    "mandrels": (
        _field("size", "length", "nominal; nominal size; diameter; dia; marked size", needed=True),
        _NAME,
        _field("small_end", "length", "small; small dia; small end dia; small diameter; toe"),
        _field("large_end", "length", "large; large dia; large end dia; large diameter; big end"),
        _field("taper", "taper", "taper on diameter"),
        _field("ground_length", "length", "ground; taper length; working length"),
        _field("overall_length", "length", "overall; length; total length; oal"),
        _field("hole", "length", "through hole; own bore; bored through"),
        _field("marks", "text", "mark; stamp; stamped; marking"),
        _field("hardness", "text", "hard; hard or soft"),
        _field("flats", "text", "flat; flats on"),
        _field("condition", "text", "state; wear; remarks; notes"),
        _field("place", "text", "where; location; drawer; rack; kept"),
    ),
    "lathes": (
        _NAME,
        _field("speeds", "spindle", "speed; spindle speeds; rpm", many=True),
        _field("feeds", "feed", "feed", many=True),
        _field("swing_over_cross_slide", "length", "swing over slide; swing; swing over carriage"),
        _field("between_centers", "length", "between centres; centers; centres; length"),
        _field("power", "power", "motor; motor power"),
        _field("power_by_gear", "power", "power at each speed", many=True),
        _field("dial", "text", "dial reads; dial counts; cross slide dial"),
    ),
    "presses": (
        _NAME,
        _field("kind", "text", "type; sort"),
        _field("force", "force", "capacity; largest force; load"),
        _field("daylight", "length", "opening; clear height"),
        _field("throat", "length", "throat depth; reach"),
        _field("ram_travel", "length", "travel; stroke; ram stroke"),
        _field("table_slot", "length", "slot; table opening; plate slot"),
    ),
    "dogs": (
        _NAME,
        _field("smallest", "length", "from; min; minimum; smallest round"),
        _field("largest", "length", "to; max; maximum; capacity; size; largest round"),
        _field("tail", "text", "leg; tail shape"),
    ),
    "drills": (
        _field("size", "length", "diameter; dia; drill; drill size"),
        _field("set", "text", "series; step; index"),
        _field("smallest", "length", "from; min; minimum"),
        _field("largest", "length", "to; max; maximum"),
        _NAME,
    ),
    "reamers": (
        _field("size", "length", "nominal; nominal size; diameter; dia", needed=True),
        _NAME,
        _field("cuts", "offset", "really cuts; cuts over; over size; oversize; error"),
    ),
    "gauges": (
        _field("kind", "text", "type; gauge; gage; instrument", needed=True),
        _field("uncertainty", "length", "half band; plus or minus; accuracy; error"),
        _field("range", "length", "capacity; measures; from to", many=True),
    ),
}
"""By what `--as` says."""


def table_of(kind: str) -> str:
    """The table of the shelf file that a kind becomes.

    >>> table_of("presses"), table_of("dogs")
    ('press', 'dog')
    """
    return kind.removesuffix("es") if kind == "presses" else kind.removesuffix("s")
