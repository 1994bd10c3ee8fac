"""The paper strip that makes a bore gauge of a mandrel: what stands on it, and where."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.quantities.si import Metre


@dataclass(frozen=True, slots=True)
class Tick:
    """One line of the strip: a straight bore, and where its leading face stops.

    `position` is from the mandrel's large-end face; `count` is the bore in steps of the strip, by
    which a drawing chooses the round ones to label.
    """

    bore: Metre
    position: Metre
    count: int
    label: str


@dataclass(frozen=True, slots=True)
class Strip:
    """The strip of one mandrel, from its large-end face. `unread`: stretches where no bore stops.

    `ground_from` and `ground_to` are the ends of the ground length, large end first; `end_stated`
    is False where the length of the reduced end is a guess. `hand_travel` is how far the push of
    the hand is taken to move the work past first touch; the ticks are moved by it.
    """

    name: str
    units: Literal["inch", "mm"]
    step: Metre
    ticks: tuple[Tick, ...]
    unread: tuple[tuple[Metre, Metre], ...]
    ground_from: Metre
    ground_to: Metre
    end_stated: bool
    hand_travel: Metre
    words: tuple[str, ...]
