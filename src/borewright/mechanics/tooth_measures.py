"""What a finished tooth of a spur gear measures: over a chord, and over several teeth.

    t = m z sin(90°/z)                               chord of one tooth on the pitch circle
    h = m [a + z/2 (1 - cos(90°/z))]                 from the outside down to that chord
    W = m cos α [π (k - 1/2) + z inv α]              span over k teeth, inv α = tan α - α
    k = z α / π + 1/2, to the nearest whole number   teeth to span: the jaws touch nearest the pitch
                                                     circle (z/9 + 1/2 at 20°)
Full-depth teeth without profile shift, each half a circular pitch thick on the pitch circle.
Source: geometry of the circle and of its involute. Weakness: no backlash in any of them, which the
tooth must be thinner by; the height counts from an outside that is truly m (z + 2 a); a form cutter
is made for the fewest teeth of its range, and those of 14 1/2 degrees are not involute all over, so
that the span may be a little off where the chord is not.
"""

from __future__ import annotations

import math

from borewright.quantities.si import Metre, Radian

LEAST_SPANNED = 2
"""Over one tooth the jaws have no two flanks far enough apart to bear on (ours)."""


def chordal_thickness(module: Metre, teeth: int) -> Metre:
    """Thickness (m) of a tooth across the chord of its pitch circle.

    >>> round(chordal_thickness(1.0, 24), 4)  # as tables for one module (or 1 DP) print it
    1.5697
    """
    return module * teeth * math.sin(math.pi / (2 * teeth))


def chordal_height(module: Metre, teeth: int, addendum: float = 1.0) -> Metre:
    """Height (m) from the outside down to that chord: what a gear-tooth caliper is set to.

    >>> round(chordal_height(1.0, 24), 4)
    1.0257
    """
    return module * (addendum + teeth / 2 * (1 - math.cos(math.pi / (2 * teeth))))


def teeth_to_span(teeth: int, angle: Radian) -> int:
    """How many teeth to span so that the jaws touch nearest the pitch circle.

    >>> teeth_to_span(24, math.radians(20)), teeth_to_span(24, math.radians(14.5))
    (3, 2)
    """
    return max(LEAST_SPANNED, math.floor(teeth * angle / math.pi + 1))


def span_over(module: Metre, teeth: int, spanned: int, angle: Radian) -> Metre:
    """Span (m) over so many teeth, by flat jaws that touch both outer flanks.

    >>> round(span_over(1.0, 24, 3, math.radians(20)), 4)
    7.7165
    """
    involute = math.tan(angle) - angle
    return module * math.cos(angle) * (math.pi * (spanned - 0.5) + teeth * involute)


def thinned_by(deeper: Metre, angle: Radian) -> Metre:
    """How much thinner (m) a tooth gets where its spaces are cut so much deeper: 2 d tan α.

    >>> round(thinned_by(0.1, math.radians(20)), 4)
    0.0728
    """
    return 2 * deeper * math.tan(angle)
