"""A bore that is stated by its limits, in words: what it is called, and what its band is."""

from __future__ import annotations

from borewright.job.records import BoreLimits
from borewright.quantities.inch_fractions import mixed_text, sixty_fourth
from borewright.quantities.show import Show
from borewright.quantities.si import Metre


def limits_name(limits: BoreLimits, show: Show) -> str:
    """The class as the trade writes it, else the two sizes.

    >>> limits_name(BoreLimits(0.015, 0.015018, "H7", 0.015), Show("mm"))
    '15 H7'
    >>> limits_name(BoreLimits(0.015875, 0.015893, "H7", 0.015875), Show("inch"))
    '5/8 in H7'
    """
    if not limits.code or limits.nominal is None:
        return show.band(limits.low, limits.high, "bore")
    return f"{_plain(limits.nominal)} {limits.code}"


def limits_echo(limits: BoreLimits, show: Show) -> str:
    """The band said back, and whose it is.

    >>> limits_echo(BoreLimits(0.015, 0.015018, "H7", 0.015), Show("mm"))
    '15 H7: 15.000 to 15.018 mm (0.5906 to 0.5913 in) (ISO 286)'
    """
    band = show.band(limits.low, limits.high, "bore")
    return (
        f"{limits_name(limits, show)}: {band} (ISO 286)"
        if limits.code
        else f"{band}, by its limits"
    )


def _plain(size: Metre) -> str:
    inches = sixty_fourth(size / 0.0254)
    return f"{mixed_text(inches)} in" if inches is not None else f"{size * 1e3:.6g}"
