"""What a joint does at one setting, for every drawn case, whichever model says it."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Draws


@dataclass(frozen=True, slots=True, eq=False)
class PressedState:
    """Draws (n,), the likely case first: N, m, Pa, Pa, Pa and m.

    `tension`: greatest principal tension; `equivalent`: von Mises at the bore; `pressure`: the
    greatest; all of them but at sharp edges, where there is no greatest. `growth` is on diameter.
    """

    normal_force: Draws
    contact_length: Draws
    tension: Draws
    equivalent: Draws
    pressure: Draws
    growth: Draws
