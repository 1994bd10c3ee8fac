"""Constants and signs of the sizes that drill, bar and reamer leave, each broken once."""

from __future__ import annotations

from tests.mutant import Mutant

BORES = (
    Mutant(
        "the ends of a size read as one standard deviation",
        "mechanics/bore_sizes.py",
        "_Z95 = _NORMAL.inv_cdf(0.95)",
        "_Z95 = 1.0",
    ),
    Mutant(
        "the short half of a size used on both sides",
        "mechanics/bore_sizes.py",
        "half = high - likely if size > likely else likely - low",
        "half = likely - low",
    ),
    Mutant(
        "a gauge's band read as three standard deviations",
        "mechanics/bore_sizes.py",
        "reach = half_band * _Z95 / 2.0",
        "reach = half_band * _Z95 / 3.0",
    ),
    Mutant(
        "a hole that was larger already forgotten",
        "mechanics/bore_sizes.py",
        "math.prod(share_below(end, band) for band in bands) for end",
        "share_below(end, bands[-1]) for end",
    ),
)
