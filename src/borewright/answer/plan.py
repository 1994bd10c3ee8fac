"""The whole answer for one job."""

from __future__ import annotations

from dataclasses import dataclass, field

from borewright.answer.bore_route import BoreRoute
from borewright.answer.change import Change
from borewright.answer.first_hold import FirstHold
from borewright.answer.held_picture import HeldPicture
from borewright.answer.picture import Layout
from borewright.answer.records import (
    PRESSING,
    Assumption,
    Candidate,
    Caution,
    Cut,
    Figure,
    ProofLoad,
    PushAdvice,
    Question,
    Step,
    Verdict,
)
from borewright.answer.schedule import Schedule
from borewright.quantities.si import Metre


@dataclass(frozen=True, slots=True, repr=False)
class Plan:
    """The whole answer for one job. `headline` is the sentence that comes first.

    `str` gives the answer in a few lines; a notebook shows the same as a list.
    """

    title: str
    units: str
    verdict: Verdict
    headline: str
    echo: tuple[str, ...]
    chosen: Candidate | None
    questions: tuple[Question, ...]
    candidates: tuple[Candidate, ...]
    better_ways: tuple[Candidate, ...]
    steps: tuple[Step, ...]
    cautions: tuple[Caution, ...]
    cuts: tuple[Cut, ...]
    have_ready: tuple[str, ...]
    figures: tuple[Figure, ...]
    bore_window: tuple[Metre, Metre] | None
    push: PushAdvice | None
    proof: ProofLoad | None
    layout: Layout | None
    assumed: tuple[Assumption, ...]
    not_judged: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
    notes: tuple[str, ...] = field(default=())
    held: HeldPicture | None = None
    bore_route: BoreRoute | None = None
    first_hold: FirstHold | None = None
    changes: tuple[Change, ...] = ()
    schedule: Schedule | None = None

    @property
    def finished_outside(self) -> Metre | None:
        """The diameter that the last step of turning asks for; None where nobody said."""
        figures = (f for step in self.steps for f in step.figures)
        return next((f.best for f in figures if f.name == "finished_outside"), None)

    @property
    def goes_on(self) -> bool:
        """False where bore, crack, seat or push forbid it: nothing is then drawn pressed on."""
        refused = {q.id for q in self.questions if q.verdict is Verdict.NO}
        return self.verdict is not Verdict.NO or bool(refused and refused.isdisjoint(PRESSING))

    def __str__(self) -> str:
        asked = [f"  {q.id}: {q.verdict}. {q.reason}" for q in self.questions]
        return "\n".join([self.title, self.headline, *asked])

    def __repr__(self) -> str:
        return f"<Plan {self.title!r}: {self.verdict}>"

    def _repr_markdown_(self) -> str:
        asked = [f"- **{q.id}**: {q.verdict}. {q.reason}" for q in self.questions]
        return "\n".join([f"**{self.title}**", "", self.headline, "", *asked])
