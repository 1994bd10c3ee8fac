"""A fit worked again from the definitions, with mpmath's quadrature; imports nothing of borewright.

Straight bore, straight taper, thin rings by Lamé (plane stress), Coulomb friction on a wedge.
`z` runs from the leading face, the mandrel's diameter there is d_small + T (u - z).
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from mpmath import findroot, mp, mpf, pi, quad

mp.dps = 30
ROUGHNESS_SHARE = mpf("0.8")
"""Of Rz of work + mandrel: the interface contract's words for `--roughness`."""


@dataclass(frozen=True)
class Hand:
    """The given numbers, in SI (Rz in um), as text so that no binary rounding enters."""

    bore: str
    small_end: str
    taper: str
    ground: str
    friction: str
    rz_um: str
    work: tuple[str, str]
    mandrel: tuple[str, str]
    rings: tuple[tuple[str, str, str], ...]
    """(from, to, outside of the metal that is continuous from the bore), with no overlap."""

    @property
    def lost(self) -> mpf:
        """Interference that flattened peaks cost, in m."""
        return ROUGHNESS_SHARE * mpf(self.rz_um) / 10**6

    @property
    def length(self) -> mpf:
        """Of the bore: a rim may overhang it."""
        return mpf(self.rings[-1][1]) - self.start

    @property
    def start(self) -> mpf:
        """From the leading face to where the bore begins."""
        return mpf(self.rings[0][0])

    @property
    def touch(self) -> mpf:
        return (mpf(self.bore) - mpf(self.small_end)) / mpf(self.taper) + self.start

    def interference(self, z: mpf, travel: mpf, lost: mpf) -> mpf:
        """On diameter; zero where the mandrel is ground away or does not reach."""
        x = self.touch + travel - z
        if not 0 <= x <= mpf(self.ground):
            return mpf(0)
        return max(mpf(0), mpf(self.small_end) + mpf(self.taper) * x - mpf(self.bore) - lost)

    def pressure(self, z: mpf, outside: mpf, travel: mpf, lost: mpf) -> mpf:
        d, (ew, vw), (em, vm) = mpf(self.bore), map(mpf, self.work), map(mpf, self.mandrel)
        a, b = d / 2, outside / 2
        # Lamé displacements at r = a of a ring and of a solid shaft under the same pressure.
        ring = a / ew * ((b**2 + a**2) / (b**2 - a**2) + vw)
        shaft = a / em * (1 - vm)
        return self.interference(z, travel, lost) / 2 / (ring + shaft)

    def stretches(self, travel: mpf, lost: mpf) -> list[tuple[mpf, mpf, mpf]]:
        """The rings cut where the pressure starts or ends, so that each is smooth."""
        seat, t = self.touch + travel, mpf(self.taper)
        kinks = {seat, seat - mpf(self.ground), travel + self.start - lost / t}
        out = []
        for start, end, outside in (tuple(map(mpf, r)) for r in self.rings):
            marks = sorted({start, end, *(k for k in kinks if start < k < end)})
            out += [(a, b, outside) for a, b in pairwise(marks)]
        return out

    def normal(self, travel: mpf) -> mpf:
        lost = self.lost
        return sum(
            quad(lambda z, o=o: self.pressure(z, o, travel, lost), [a, b]) * pi * mpf(self.bore)
            for a, b, o in self.stretches(travel, lost)
        )

    def contact(self, travel: mpf) -> mpf:
        lost = self.lost
        gripped = [
            b - a
            for a, b, o in self.stretches(travel, lost)
            if self.pressure((a + b) / 2, o, travel, lost) > 0
        ]
        return sum(gripped, mpf(0))

    def hoop(self, travel: mpf, share: str) -> mpf:
        """Largest hoop tension at the bore, without the roughness, `share` of the length in."""
        low, high = (self.start + part * self.length for part in (mpf(share), 1 - mpf(share)))
        found = mpf(0)
        for a, b, o in self.stretches(travel, mpf(0)):
            left, right = max(a, low), min(b, high)
            if left >= right:
                continue
            d = mpf(self.bore)
            factor = (o**2 + d**2) / (o**2 - d**2)
            inner = [left + (right - left) * k / 40 for k in range(41)]
            found = max(found, *(self.pressure(z, o, travel, mpf(0)) * factor for z in inner))
        return found

    def growth(self, travel: mpf) -> mpf:
        lost, d, ew = self.lost, mpf(self.bore), mpf(self.work[0])
        grown = [
            self.pressure(z, o, travel, lost) * 2 * d**2 / (o**2 - d**2) * o / ew
            for a, b, o in self.stretches(travel, lost)
            for z in (a, b)
        ]
        return max(grown)

    def push_on(self, travel: mpf) -> mpf:
        """A wedge: forces along and across the surface, tilted by T/2, resolved along the axis."""
        f, t = mpf(self.friction), mpf(self.taper) / 2
        return self.normal(travel) * (f + t) / (1 - f * t)

    def push_off(self, travel: mpf) -> mpf:
        f, t = mpf(self.friction), mpf(self.taper) / 2
        return self.normal(travel) * (f - t) / (1 + f * t)

    def travel_for(self, push: str) -> mpf:
        room = mpf(self.ground) + self.start - self.touch
        return findroot(
            lambda s: self.push_on(s) - mpf(push),
            (room / 100, room),
            solver="anderson",
            tol=mpf("1e-12"),
        )

    def answer(self, travel: mpf) -> dict[str, mpf]:
        """Every key of `fit --json` that is one number."""
        normal, contact, seat = self.normal(travel), self.contact(travel), self.touch + travel
        d, f = mpf(self.bore), mpf(self.friction)
        return {
            "touch_position_m": self.touch,
            "seat_position_m": seat,
            "large_end_to_face_m": mpf(self.ground) - seat,
            "travel_m": travel,
            "contact_length_m": contact,
            "normal_force_N": normal,
            "mean_pressure_Pa": normal / (pi * d * contact),
            "largest_bore_tension_Pa": self.hoop(travel, "0.05"),
            "largest_tension_Pa": self.hoop(travel, "0.01"),
            "push_on_force_N": self.push_on(travel),
            "push_off_force_N": self.push_off(travel),
            "slip_torque_Nm": f * normal * d / 2,
            "outside_growth_m": self.growth(travel),
        }

    def window(self, travel: mpf) -> tuple[mpf, mpf]:
        """Far end on the small end; leading face at the large end."""
        small, t = mpf(self.small_end), mpf(self.taper)
        return small + t * max(mpf(0), self.length - travel), small + t * (
            mpf(self.ground) - travel
        )
