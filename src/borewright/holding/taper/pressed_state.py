"""What a joint does at one setting, for every drawn case, whichever model says it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.answer.records import Draws
from borewright.quantities.si import Metre


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

    def within(self, bears: Metre) -> PressedState:
        """The same where no more than this length (m) of bore can bear."""
        contact = np.minimum(self.contact_length, bears)
        # Named one by one: hundreds are asked for each hold, and `replace` is slow.
        return PressedState(
            self.normal_force, contact, self.tension, self.equivalent, self.pressure, self.growth
        )
