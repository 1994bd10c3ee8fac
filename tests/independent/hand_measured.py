"""A fit on a measured mandrel worked again from the definitions; imports nothing of borewright.

Both diameters are straight between their readings: the mandrel's runs on beyond its outermost
stations with the least-squares taper, the bore's stays as it was at the last reading. `x` runs
from the small end, `z` from the leading face; thin rings by Lamé on the mean bore.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from mpmath import mp, mpf, pi, quad

mp.dps = 30
STEP = mpf("0.001")
"""Metres of mandrel between two looks for the first meeting of metal and metal."""


def between(places: list[tuple[mpf, mpf]], at: mpf, beyond: mpf) -> mpf:
    """The straight line between the two places around `at`; slope `beyond` outside them all."""
    first, last = places[0], places[-1]
    if at <= first[0]:
        return first[1] + beyond * (at - first[0])
    if at >= last[0]:
        return last[1] + beyond * (at - last[0])
    a, b = next((a, b) for a, b in pairwise(places) if a[0] <= at <= b[0])
    return a[1] + (b[1] - a[1]) * (at - a[0]) / (b[0] - a[0])


@dataclass(frozen=True)
class HandMeasured:
    """In metres, as text; `bore` is (depth, diameter), `outside` and `length` those of a plain ring."""

    mandrel: tuple[tuple[str, str], ...]
    bore: tuple[tuple[str, str], ...]
    outside: str
    length: str
    ground: str
    friction: str
    lost_um: str
    work: tuple[str, str] = ("100e9", "0.26")
    steel: tuple[str, str] = ("207e9", "0.29")

    @property
    def stations(self) -> list[tuple[mpf, mpf]]:
        return sorted((mpf(x), mpf(d)) for x, d in self.mandrel)

    @property
    def readings(self) -> list[tuple[mpf, mpf]]:
        return sorted((mpf(z), mpf(d)) for z, d in self.bore)

    @property
    def taper(self) -> mpf:
        xs, ds = zip(*self.stations, strict=True)
        n = len(xs)
        top = n * sum(x * d for x, d in self.stations) - sum(xs) * sum(ds)
        return top / (n * sum(x * x for x in xs) - sum(xs) ** 2)

    @property
    def smallest(self) -> mpf:
        return min(d for _, d in self.readings)

    @property
    def mean_bore(self) -> mpf:
        """Of the diameters at both faces and at every reading in between."""
        marks = sorted({mpf(0), mpf(self.length), *(z for z, _ in self.readings)})
        return sum(between(self.readings, z, mpf(0)) for z in marks) / len(marks)

    def over(self, z: mpf, seat: mpf) -> mpf:
        """Mandrel less bore at a depth; the mandrel taken as without ends."""
        return between(self.stations, seat - z, self.taper) - between(self.readings, z, mpf(0))

    def kinks(self, seat: mpf) -> list[mpf]:
        length = mpf(self.length)
        inner = [seat - x for x, _ in self.stations] + [z for z, _ in self.readings]
        inner += [seat, seat - mpf(self.ground)]
        return sorted({mpf(0), length, *(z for z in inner if 0 < z < length)})

    @property
    def touch(self) -> mpf:
        """The first seat at which metal meets metal: looked for from far off, then halved."""

        def most(u: mpf) -> mpf:
            return max(self.over(z, u) for z in self.kinks(u))

        low = mpf("-0.1")
        while most(low + STEP) < 0:
            low += STEP
        high = low + STEP
        for _ in range(80):
            middle = (low + high) / 2
            low, high = (low, middle) if most(middle) >= 0 else (middle, high)
        return high

    def pressure(self, z: mpf, seat: mpf, lost: mpf) -> mpf:
        x = seat - z
        if not 0 <= x <= mpf(self.ground):
            return mpf(0)
        (ew, vw), (em, vm) = map(mpf, self.work), map(mpf, self.steel)
        a, b = self.mean_bore / 2, mpf(self.outside) / 2
        ring = a / ew * ((b**2 + a**2) / (b**2 - a**2) + vw)
        return max(mpf(0), self.over(z, seat) - lost) / 2 / (ring + a / em * (1 - vm))

    def answer(self, seat: mpf) -> dict[str, mpf]:
        lost = mpf("0.8") * mpf(self.lost_um) / 10**6
        normal = contact = mpf(0)
        for near, far in pairwise(self.kinks(seat)):
            ends = [self.over(z, seat) - lost for z in (near, far)]
            cross = []
            if ends[0] * ends[1] < 0:
                cross = [near + (far - near) * ends[0] / (ends[0] - ends[1])]
            for a, b in pairwise([near, *cross, far]):
                if self.pressure((a + b) / 2, seat, lost) > 0:
                    contact += b - a
                    normal += quad(lambda z: self.pressure(z, seat, lost), [a, b])
        normal *= pi * self.mean_bore
        f, t = mpf(self.friction), self.taper / 2
        return {
            "touch_position_m": self.touch,
            "seat_position_m": seat,
            "large_end_to_face_m": mpf(self.ground) - seat,
            "contact_length_m": contact,
            "normal_force_N": normal,
            "push_on_force_N": normal * (f + t) / (1 - f * t),
            "push_off_force_N": normal * (f - t) / (1 + f * t),
            "slip_torque_Nm": f * normal * self.smallest / 2,
            "mean_pressure_Pa": normal / (pi * self.smallest * contact),
        }

    def window(self, travel: mpf) -> tuple[mpf, mpf]:
        """Straight bores stop at the first place as large as they are: the largest one before."""

        def largest_before(x: mpf) -> mpf:
            nodes = [d for at, d in self.stations if at <= x]
            return max([between(self.stations, x, self.taper), *nodes])

        low = max(mpf(0), mpf(self.length) - travel)
        return largest_before(low), largest_before(mpf(self.ground) - travel)
