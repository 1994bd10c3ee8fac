"""What the readings of a mandrel show of its straightness, in words said alike everywhere."""

from __future__ import annotations

import math
from collections.abc import Iterator

from borewright.holding.taper.measured_mandrel import (
    Straightness,
    flats_of,
    is_parallel,
    profile_of,
    straightness,
)
from borewright.job.records import Mandrel
from borewright.mechanics.measured import growing_share
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

PARALLEL = "parallel as far as these readings tell: nothing stops the work on it"

NO_STOP = "work does not tighten there, travel has no stop"


LEAST_GROWING = 0.5
"""A mandrel that grows over less than this share of its length is beyond use (ours)."""


def beyond_use(mandrel: Mandrel) -> str:
    """Why a measured mandrel is of no use at all, after "it is"; empty where it is of some.

    The same in every command: nothing is pressed on it.
    """
    if is_parallel(mandrel.stations, mandrel.station_uncertainty):
        return PARALLEL
    along = profile_of(mandrel)
    growing = 1.0 if along is None else growing_share(along)
    if growing >= LEAST_GROWING:
        return ""
    return f"worn beyond use: only {growing:.0%} of it grows towards the large end"


def bent_words(worst: Straightness, where: str, show: Show) -> str:
    """How far a mandrel is from straight, and what that may be; `where` says the place.

    >>> bent_words(Straightness(0.05, -7e-6, 2e-6), "40 mm in", Show("mm"))
    '40 mm in it is 7 µm (0.0003 in) too small: worn or scored there; a diameter \
is known to 2 µm (0.00008 in) either way'
    """
    wear = (
        "small: worn or scored there" if worst.off < 0 else "large: proud there, or worn beside it"
    )
    off, known = show.small(abs(worst.off)), show.small(worst.known)
    return f"{where} it is {off} too {wear}; a diameter is known to {known} either way"


def wear_words(
    mandrel: Mandrel,
    show: Show,
    passed: tuple[Metre, Metre] = (-math.inf, math.inf),
    covered: tuple[Metre, Metre] = (-math.inf, math.inf),
    from_end: tuple[str, Metre] = ("the large end", 0.0),
) -> Iterator[str]:
    """What is not a straight taper, as clauses after "it is"; none for a straight one.

    Flat stretches that the leading face meets between the two places `passed` (x, m), and the
    worst station where it lies between the two `covered` by the bore. Places are told from the end
    named in `from_end`, which stands so far (m) beyond the ground length.
    """
    if is_parallel(mandrel.stations, mandrel.station_uncertainty):
        yield PARALLEL
        return
    end, beyond = from_end
    ground = mandrel.ground_length + beyond
    worst = straightness(mandrel)
    if worst is not None and worst.bent and covered[0] < worst.at < covered[1]:
        where = f"{show.length(ground - worst.at)} from {end}"
        yield f"not straight: {bent_words(worst, where, show)}"
    for start, stop in flats_of(mandrel):
        if start < passed[1] and stop > passed[0]:
            where = show.band(ground - stop, ground - start, "length")
            yield f"flat {where} from {end}: {NO_STOP}"
