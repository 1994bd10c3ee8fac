"""What a close fit takes of a tilt by itself: long work cannot rock on a bar that fits it.

The two ends of the fit bear on opposite sides (`mechanics.fitted_moment`). A disc too short for its
bore leans by the clearance first, so nothing is counted for it: there the clamp must do it.
"""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Draws
from borewright.holding.part import Part, none_at_all
from borewright.mechanics.fitted_moment import moment_of_fit
from borewright.quantities.si import Metre


def fitted_length(part: Part) -> Metre:
    """Length (m) over which the bore fits a bar turned to it, its chamfers and mouths left out."""
    straight = part.length - sum(part.work.chamfers.legs)
    return max(0.0, straight) * part.tables.holding_fact("fit_length_share").best


def fit_tilt(part: Part, length: Metre | None = None) -> Draws:
    """Moment (N·m) that the fit takes before the bore bruises; none where it is too short for that.

    `length` (m): over which it fits; None: `fitted_length`.
    """
    fact = part.tables.holding_fact
    fits = fitted_length(part) if length is None else length
    if fits < fact("fit_square_share").best * part.bore:
        return none_at_all()
    pressure = fact("fit_bearing_share").best * part.strength
    return np.asarray(moment_of_fit(pressure, part.bore, fits))
