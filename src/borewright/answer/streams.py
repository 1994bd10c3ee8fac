"""Which independent stream of draws each uncertain input uses.

One input, one stream, everywhere: so a case in which friction is low is the same case in the grip,
in the push and in the margin formed from both.
"""

from __future__ import annotations

from enum import IntEnum
from functools import lru_cache

from borewright.answer.records import Draws
from borewright.mechanics.spread import lognormal_draws, normal_draws, standard_normals


class Stream(IntEnum):
    """Names of the streams of `mechanics.spread`."""

    BORE = 0
    FRICTION = 1
    SLIP_RATIO = 2
    ROUGHNESS = 3
    MODULUS = 4
    STRENGTH = 5
    WARMING = 6
    CUTTING = 7
    RESULTANT = 8
    EDGE = 9
    CENTERING = 10
    NOTCH = 11
    WALK = 12
    CLAMPING = 13
    TOOL = 14
    SETTING = 15


@lru_cache(maxsize=1024)
def positive(low: float, best: float, high: float, stream: Stream) -> Draws:
    """Draws of a positive range; the likely case first. Not to be written to: they are kept."""
    drawn = lognormal_draws(low, best, high, standard_normals(stream))
    drawn.flags.writeable = False
    return drawn


def around(best: float, half_band: float, stream: Stream) -> Draws:
    """Draws about a value whose 5 % and 95 % ends stand a half band away; the likely case first."""
    return normal_draws(best - half_band, best, best + half_band, standard_normals(stream))
