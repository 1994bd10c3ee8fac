"""One piece to be saved: the job with its bore as found, and what every way out asks of it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

from borewright.answer.rescue import DrawingHolds, FoundTrouble
from borewright.holding.part import Part
from borewright.job.records import Job, Mandrel, MandrelNote, Shelf
from borewright.job.web import gripping
from borewright.mechanics.outline import bore_line
from borewright.planning.choice.arrangement import Arranged, arrange
from borewright.planning.rescue.as_found import AsFound
from borewright.planning.rescue.wanted import Wanted, Whose
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

CRACKED, SLIPPED, GOUGED, SCORED, KEYED = "cracked", "slipped", "gouged", "scored", "keyed"
OUT_OF_SQUARE = "out-of-square"
FORMS = ("oval", "tapered", "bell-mouthed", "barrelled")
OF_THE_BORE = ("too-big", "too-small", *FORMS, OUT_OF_SQUARE, SCORED, KEYED)
"""Troubles that stand in the bore itself."""


@dataclass(frozen=True)
class Case:
    """`job` has the bore as found; `chosen` is the mandrel that the job as stated was planned on."""

    job: Job
    tables: Tables
    wanted: Wanted
    found: AsFound
    trouble: tuple[FoundTrouble, ...]
    chosen: Mandrel | None = None
    chosen_note: MandrelNote | None = None

    @property
    def show(self) -> Show:
        return Show(self.job.units)

    def has(self, *names: str) -> bool:
        """True where any of these troubles is there."""
        return any(t.id in names for t in self.trouble)

    def unmeasured(self) -> tuple[str, ...]:
        """The faults of form that were said and that no reading shows."""
        return tuple(t.id for t in self.trouble if t.id in FORMS and not t.measured)

    @property
    def worn_oval(self) -> bool:
        """True where the bore is read so far out of round that it is bored round, not held."""
        return Part(self.job, self.tables).oval

    @property
    def hub_outside(self) -> Metre:
        """Least outside (m) of the metal round the bore, as it will stand when it is turned."""
        work = self.job.work
        pieces = [(p.start, p.end, p.outside, p.inside) for p in gripping(work)]
        outside = bore_line(pieces, work.bore.size).outside
        now = float(outside[outside > 0].min(initial=work.outside))
        turned = work.finished.outside if len(work.pieces) == 1 else None
        return min(now, turned or now)

    @cached_property
    def on_mandrels(self) -> Arranged:
        """The bore as found on every plain mandrel of the shelf but a gouged one."""
        return arrange(replace(self.job, use="plain-taper", shelf=self._shelf()), self.tables)

    def _shelf(self) -> Shelf:
        shelf, chosen = self.job.shelf, self.chosen
        if not (self.has(GOUGED) and chosen and shelf.stated):
            return shelf
        left = tuple(n for n in shelf.mandrels if n != self.chosen_note)
        return replace(shelf, mandrels=left)

    def bore_grows(self) -> tuple[DrawingHolds, str]:
        """The same where the bore comes out larger than was wanted."""
        why = "The bore is then another size: the shaft, or the drawing, must follow it."
        return DrawingHolds.NO, why

    def bore_stays(self) -> tuple[DrawingHolds, str]:
        """Whether the drawing holds where the bore is left as it was found, and why."""
        if self.wanted.whose is not Whose.DRAWING and not self.trouble:
            return (
                DrawingHolds.YES,
                "No limits of the bore were stated, and nothing is wrong with it.",
            )
        if self.wanted.whose is not Whose.DRAWING:
            return DrawingHolds.ASK, "No limits of the bore were stated; the bore stays as found."
        if self.wanted.takes(self.found.least, self.found.largest):
            return DrawingHolds.YES, f"The bore stays as found, within {self.wanted.said}."
        return DrawingHolds.NO, (
            f"The bore stays as found, outside {self.wanted.said}: only whoever drew it can take it so."
        )
