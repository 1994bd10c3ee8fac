"""fit: what the readings of the mandrel say of this seat, in sentences."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.holding.taper.measured_words import wear_words
from borewright.quantities.show import Show
from borewright.service.fit_records import FitResult


def measured_lines(result: FitResult, show: Show) -> Iterator[str]:
    """That it is not straight, and where the leading face meets a stretch that does not grow."""
    if result.body is not None:
        passed = result.touch_position, result.seat_position
        for said in wear_words(result.body, show, passed):
            yield f"The mandrel is {said}."
