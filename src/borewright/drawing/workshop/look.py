"""How a workshop drawing looks: units, both or one, angle of projection, paper."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

PAGES = {"letter": (279.4, 215.9), "a4": (297.0, 210.0)}
"""Width and height of a level page, mm."""


@dataclass(frozen=True, slots=True)
class Look:
    """`both`: the other unit in brackets behind every size. `angle`: that of the projection."""

    units: Literal["inch", "mm"] = "mm"
    both: bool = False
    angle: Literal["third", "first"] = "first"
    paper: Literal["letter", "a4"] = "a4"
    date: str = ""

    @property
    def page(self) -> tuple[float, float]:
        """Width and height of the paper, mm."""
        return PAGES[self.paper]


def look_for(
    units: Literal["inch", "mm"],
    *,
    both: bool = False,
    angle: str | None = None,
    paper: str | None = None,
    date: str = "",
) -> Look:
    """A look with what is usual for the units where nothing is said: inch third angle on letter.

    >>> look_for("inch").angle, look_for("mm").paper, look_for("mm", angle="third").angle
    ('third', 'a4', 'third')
    """
    inch = units == "inch"
    return Look(
        units,
        both,
        "third" if (angle or ("third" if inch else "first")) == "third" else "first",
        "letter" if (paper or ("letter" if inch else "a4")) == "letter" else "a4",
        date,
    )
