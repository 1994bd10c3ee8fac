"""A go and not-go plug for a bore window: its zones, what they take of the window, a stepped plug.

The bore may be from `low` to `high` (m, diameters), a band B = high - low. Each end of the plug has
a tolerance T that lies inside the window, and the going end a wear W besides:
    going end       low + W  to  low + W + T   as made;  worn out at low
    not-going end   high - T to  high
so whatever the true sizes within these zones, also worn, a bore that the going end enters and the
other does not is at least low and less than high. What is lost of the window at the worst is
    (W + 2 T) / B,          about (W + T) / B for a new plug in the middle of both zones.
T is the share of B that gauge makers use, but no less than a shop can make and know: with a micro-
meter that knows a plug to ±u, and a hand that leaves it within h, the readings that keep the true
size in its zone are T - 2 u wide, so T = max(share B, 2 u + h).
A stepped plug of n steps has them at low + k B / (n - 1), k = 0 … n - 1; when the first k enter and
the next does not, the bore lies between those two, each as far off as it is known.
Units: m. Range: 0 < B, T > 0, W >= 0; OutsideModel otherwise, and where no window is left.
Source: geometry; ours in that the zones never lie outside the window. Weakness: a round, straight
bore; a burr or a lobed hole stops a plug that a straight one would let in; feel and force are not
in it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from borewright.errors import OutsideModel
from borewright.mechanics.allowed import above_zero, not_below_zero
from borewright.quantities.si import Metre, Ratio

WHOLE = 1e-9
"""Of a step: what rounding may take from a whole number of steps."""


@dataclass(frozen=True, slots=True)
class PlugZones:
    """True sizes (m) that each end may have as made; the going end is used until `low`."""

    low: Metre
    high: Metre
    go: tuple[Metre, Metre]
    not_go: tuple[Metre, Metre]

    @property
    def lost_worst(self) -> Ratio:
        """Share of the window that good bores lose with a new plug at the bad ends of its zones."""
        return (self.go[1] - self.low + self.high - self.not_go[0]) / (self.high - self.low)

    @property
    def lost_middle(self) -> Ratio:
        """The same with a new plug in the middle of both zones."""
        return (sum(self.go) / 2 - self.low + self.high - sum(self.not_go) / 2) / (
            self.high - self.low
        )

    @property
    def left(self) -> tuple[Metre, Metre]:
        """Bores (m) that every new plug within its zones calls good."""
        return self.go[1], self.not_go[0]


def zone_width(band: Metre, share: Ratio, known: Metre, hit: Metre) -> Metre:
    """Tolerance (m) of each end: a share of the band, or 2 known + hit where that is more.

    OutsideModel unless band and share are above 0, the rest 0 or more.

    >>> [round(zone_width(band, 0.1, 1e-6, 1e-6) * 1e6, 6) for band in (18e-6, 100e-6)]
    [3.0, 10.0]
    """
    above_zero("width of the window", band)
    above_zero("share of the window", share)
    not_below_zero("how well the plug is known", known)
    not_below_zero("how well the plug is made", hit)
    return max(share * band, 2 * known + hit)


def plug_zones(low: Metre, high: Metre, width: Metre, wear: Metre) -> PlugZones:
    """The zones of both ends (m). OutsideModel where they meet: such a plug passes no bore.

    >>> zones = plug_zones(0.016, 0.016018, 3e-6, 1.8e-6)
    >>> [round((x - 0.016) * 1e6, 3) for x in (*zones.go, *zones.not_go)]
    [1.8, 4.8, 15.0, 18.0]
    >>> round(zones.lost_worst, 4), round(zones.lost_middle, 4)
    (0.4333, 0.2667)
    """
    above_zero("width of the window", high - low)
    above_zero("tolerance of the plug", width)
    not_below_zero("wear", wear)
    if not low + wear + width < high - width:
        took, band = f"{(2 * width + wear) * 1e6:.1f} µm", f"{(high - low) * 1e6:.1f} µm"
        raise OutsideModel("two tolerances of the plug and its wear", took, f"below {band}")
    return PlugZones(low, high, (low + wear, low + wear + width), (high - width, high))


def readings_for(zone: tuple[Metre, Metre], known: Metre) -> tuple[Metre, Metre]:
    """Readings (m) of a gauge good to ± known (m) that prove the true size to be in its zone.

    OutsideModel where the zone is no wider than 2 known.

    >>> [round(x * 1e6, 3) for x in readings_for((0.0, 7.5e-6), 2.5e-6)]
    [2.5, 5.0]
    """
    not_below_zero("how well the plug is known", known)
    above_zero("zone less what is not known of the plug", zone[1] - zone[0] - 2 * known)
    return zone[0] + known, zone[1] - known


def plug_shares(band: Metre, least_step: Metre, most_steps: int) -> tuple[Ratio, ...]:
    """Where the steps of a plug stand in the window: shares from 0 to 1, two steps at least.

    As many as `most_steps` and steps of `least_step` (m) allow. OutsideModel unless both are
    above 0.

    >>> plug_shares(18e-6, 5e-6, 4), plug_shares(3e-6, 5e-6, 4)
    ((0.0, 0.3333333333333333, 0.6666666666666666, 1.0), (0.0, 1.0))
    """
    above_zero("width of the window", band)
    above_zero("least step", least_step)
    gaps = max(1, min(most_steps - 1, int(band / least_step)))
    return tuple(k / gaps for k in range(gaps + 1))


def most_plug_steps(band: Metre, least_step: Metre) -> int:
    """The most steps of a plug over a window (m) that stand at least so far (m) apart.

    >>> most_plug_steps(18e-6, 6e-6), most_plug_steps(3e-6, 6e-6)
    (4, 1)
    """
    above_zero("width of the window", band)
    above_zero("least step", least_step)
    return 1 + math.floor(band / least_step * (1 + WHOLE))


def bore_between(
    steps: tuple[tuple[Metre, Metre], ...], entered: int
) -> tuple[Metre | None, Metre | None]:
    """Bore (m) when the first `entered` steps go in and the next does not: at least, less than.

    `steps` are the zones of true size (m), rising; None where no step says anything.
    OutsideModel for a number of steps that the plug has not.

    >>> bore_between(((1.0, 1.1), (2.0, 2.1)), 1), bore_between(((1.0, 1.1),), 0)
    ((1.0, 2.1), (None, 1.1))
    """
    if not 0 <= entered <= len(steps):
        raise OutsideModel("steps that go in", entered, f"0 to {len(steps)}")
    least = steps[entered - 1][0] if entered else None
    below = steps[entered][1] if entered < len(steps) else None
    return least, below
