"""Reversal: two runout readings, half a turn apart, split into the mandrel's share and the work's.

The rim is read as it stands: whole reading a, high spot at an angle from a mark on the mandrel (the
dog's tail, say). Then the work alone is turned half round on the mandrel and read again: b, its
high spot from the same mark. As arrows (whole reading, towards the high spot)
    first = mandrel + work,   second = mandrel − work
    mandrel = (first + second) / 2,   work = (first − second) / 2
so a high spot that stays by the mark is the mandrel's (with centers and spindle), one that goes
round with the work is the work's: its bore, its seat, its rim.
With the amounts alone the angle between the shares is not known. What is known exactly is
    sqrt(mandrel² + work²) = sqrt((a² + b²) / 2)
    (a − b)/2 ≤ either share ≤ (a + b)/2, a the larger
and, where both shares lie in one line, that one of them is (a + b)/2 and the other (a − b)/2; which
is which, only the place of the high spot tells.
Units: m and rad. Range: readings 0 or more; OutsideModel otherwise. Weakness: one high spot a turn
(an oval or a lobed rim does not reverse); the work must seat the second time as it did the first.
Source: plane geometry, closed form.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass

from borewright.mechanics.allowed import not_below_zero, refuse_unless
from borewright.quantities.si import Metre, Radian


@dataclass(frozen=True, slots=True)
class Share:
    """A whole reading (m) and where its high spot is, 0 up to 2 π rad from the mark."""

    reading: Metre
    at: Radian


@dataclass(frozen=True, slots=True)
class Bounds:
    """Amounts alone: `least` and `most` of either share, `together` their root-sum-square (m)."""

    least: Metre
    most: Metre
    together: Metre


def split(first: Share, second: Share) -> tuple[Share, Share]:
    """The mandrel's share and the work's, as the work sat for the first reading.

    >>> mandrel, work = split(Share(5e-5, 0.0), Share(1e-5, math.pi))
    >>> round(mandrel.reading * 1e6, 6), round(work.reading * 1e6, 6)
    (20.0, 30.0)
    """
    a, b = _arrow(first), _arrow(second)
    return _share((a + b) / 2), _share((a - b) / 2)


def bounds(first: Metre, second: Metre) -> Bounds:
    """What two whole readings (m) say of the shares when nobody marked the high spots.

    >>> b = bounds(5e-5, 1e-5)
    >>> round(b.least * 1e6, 6), round(b.most * 1e6, 6), round(b.together * 1e6, 3)
    (20.0, 30.0, 36.056)
    """
    not_below_zero("first reading", first, "m")
    not_below_zero("second reading", second, "m")
    apart, both = abs(first - second) / 2, (first + second) / 2
    return Bounds(apart, both, math.sqrt((first**2 + second**2) / 2))


def share_error(
    first: Metre, second: Metre, reading_error: Metre, angle_error: Radian = 0.0
) -> Metre:
    """How far (m) either share may be out, at worst.

    Each arrow may be out by the error of its amount, and sideways by its amount × the error of its
    angle; a share is half the sum of two arrows.

    >>> round(share_error(4e-5, 2e-5, 2e-6, 0.1) * 1e6, 6)
    5.0
    """
    not_below_zero("error of a reading", reading_error, "m")
    refuse_unless(0 <= angle_error <= math.pi, "error of an angle", angle_error, "rad", "0 to pi")
    return reading_error + (first + second) / 2 * angle_error


def _arrow(share: Share) -> complex:
    not_below_zero("reading", share.reading, "m")
    return cmath.rect(share.reading, share.at)


def _share(arrow: complex) -> Share:
    """An arrow as amount and angle; one too short to have a direction points to the mark."""
    size, angle = cmath.polar(arrow)
    turned = angle % math.tau
    return Share(size, turned if size > TOO_SHORT and turned < math.tau else 0.0)


TOO_SHORT = 1e-12
"""An arrow (m) below this is rounding of the sum, and points nowhere."""
