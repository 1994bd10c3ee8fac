"""What every way of holding offers to the plan."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

from borewright.answer.records import Assumption, Draws, Grip
from borewright.job.records import Job, Mandrel
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


class Hold(Protocol):
    """One tool, one way round, ready to be asked for its grip at any setting."""

    @property
    def way(self) -> str:
        """Id of the way of holding."""

    @property
    def mandrel(self) -> Mandrel:
        """The tool."""

    @property
    def leading(self) -> str:
        """Face that looks to the large end, A or B."""

    @property
    def touch(self) -> Draws:
        """Where the work first touches (m)."""

    def grip(self, setting: Metre) -> Grip:
        """What the hold gives at this setting (for a taper: travel past first touch, m)."""


@dataclass(frozen=True, slots=True)
class Offer:
    """What a way makes of the shelf: the holds it can try, and what it had to assume."""

    holds: tuple[Hold, ...]
    assumed: tuple[Assumption, ...]


class Way(Protocol):
    """A way of holding, as the registry keeps it."""

    id: str

    def offer(self, job: Job, mandrels: Sequence[Mandrel], tables: Tables) -> Offer:
        """Every tool that this way can use for the job, each way round that differs."""
