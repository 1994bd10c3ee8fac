"""What borewright says of a bore that came out wrong: every way out, ranked, as frozen records."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from borewright.answer.records import Assumption, Caution, Figure, Have, Need, Verdict


class DrawingHolds(StrEnum):
    """Whether the part is still what its drawing asks for; `ask`: whoever drew it decides."""

    YES = "yes"
    ASK = "ask"
    NO = "no"

    @property
    def rank(self) -> int:
        """0 for yes, 1 for ask, 2 for no."""
        return (DrawingHolds.YES, DrawingHolds.ASK, DrawingHolds.NO).index(self)


@dataclass(frozen=True, slots=True)
class FoundTrouble:
    """One thing that is wrong: an id of the table `troubles`, and what was found, as a clause.

    `measured` False: it was said, and no reading shows how much.
    """

    id: str
    said: str
    measured: bool


@dataclass(frozen=True, slots=True)
class WayOut:
    """One way to save the piece, or to give it up, with the one reason that decides its row.

    `needs`: each owned, made or bought; `taken` where nobody said so. `figures`: `runout` (whole
    reading), `strength_margin`, and the sizes to make, their limits as low and high. `takes`: the
    time (s) for this one piece. `drawing` says whether the drawing still holds, `drawing_why` why.
    `last`: it gives the piece up.
    """

    id: str
    name: str
    verdict: Verdict
    reason: str
    takes: Figure
    drawing: DrawingHolds
    drawing_why: str
    needs: tuple[Need, ...] = ()
    figures: tuple[Figure, ...] = ()
    steps: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    last: bool = False

    @property
    def runout(self) -> Figure | None:
        """Rim to bore, whole reading (m); None where it is not this way that decides it."""
        return self.figure("runout")

    @property
    def strength(self) -> Figure | None:
        """Margin of the work against cracking or yielding; None where nothing strains it."""
        return self.figure("strength_margin")

    @property
    def bought(self) -> bool:
        """True where something for it must be bought."""
        return any(n.have is Have.BUY for n in self.needs)

    def figure(self, name: str) -> Figure | None:
        """The figure of this name."""
        return next((f for f in self.figures if f.name == name), None)


@dataclass(frozen=True, slots=True, repr=False)
class Rescue:
    """The whole answer for one piece. `verdict` is that of the best way that keeps it.

    `ways_out` stand best first, in the order that `ranked_by` says in words. `figures`: the bore as
    found and as wanted.
    """

    title: str
    units: str
    trouble: tuple[FoundTrouble, ...]
    verdict: Verdict
    headline: str
    echo: tuple[str, ...]
    ways_out: tuple[WayOut, ...]
    ranked_by: str
    cautions: tuple[Caution, ...]
    figures: tuple[Figure, ...]
    assumed: tuple[Assumption, ...]
    sources: tuple[str, ...] = ()

    def way(self, name: str) -> WayOut | None:
        """The way out with this id."""
        return next((w for w in self.ways_out if w.id == name), None)

    def __str__(self) -> str:
        rows = (f"  {w.name}: {w.verdict}. {w.reason}" for w in self.ways_out)
        return "\n".join([self.title, self.headline, *rows])

    def __repr__(self) -> str:
        return f"<Rescue {self.title!r}: {self.verdict}>"
