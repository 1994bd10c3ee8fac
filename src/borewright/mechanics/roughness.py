"""Surface peaks: what they cost an interference, and what a nose radius leaves."""

from __future__ import annotations

from borewright.errors import OutsideModel
from borewright.mechanics.num import Num


def interference_lost(roughness: Num, share: Num) -> Num:
    """Interference on diameter (m) lost to flattened peaks; `roughness` is Rz of work + mandrel.

    `share` is the part of Rz that comes off, 0.8 in DIN 7190-1 (from memory), which is written for
    permanent fits. A ground hard mandrel hardly flattens, and a reamed bore flattens far less on
    its second pressing than on its first.

    >>> round(interference_lost(8e-6, 0.8), 9)
    6.4e-06
    """
    return share * roughness


def ridge_height(feed: Num, nose_radius: float) -> Num:
    """Theoretical peak-to-valley height (m) left by a round nose: f² / (8 r).

    Source: Ghosh & Mallik, Manufacturing Science, prob. 24. Weakness: real finishes are rougher.
    Raises OutsideModel if the nose radius is not positive.

    >>> round(ridge_height(0.125e-3, 0.7e-3) * 1e6, 2)
    2.79
    """
    if not nose_radius > 0:
        raise OutsideModel("nose radius", nose_radius, "above 0")
    return feed**2 / (8 * nose_radius)
