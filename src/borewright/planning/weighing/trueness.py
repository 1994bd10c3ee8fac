"""Runout by all its shares: in line, and with high spots anywhere round."""

from __future__ import annotations

from borewright.answer.records import Draws, Figure
from borewright.holding.figured import Throws
from borewright.mechanics.num import Floats
from borewright.mechanics.runout import as_arrows, root_sum_square, spots_anywhere, worst_case
from borewright.mechanics.spread import high_end, likely, low_end
from borewright.planning.weighing.figures import figure, given, spread


def runout_figures(throws: Throws, sources: tuple[str, ...]) -> tuple[Figure, ...]:
    """Root-sum-square, banded by arrows that point anywhere; none where one share is all there is."""
    if len(throws) < 2:
        return ()
    draws = [share for _, share in throws]
    rss = float(root_sum_square([likely(share) for share in draws]))
    round_about: Floats = as_arrows(draws, _angles(draws))  # type: ignore[assignment]
    band = min(low_end(round_about), rss), max(high_end(round_about), rss)
    inputs = tuple(given(name, likely(share), "m", "small") for name, share in throws)
    return (figure("runout_anywhere", rss, "m", "small", "runout_anywhere", inputs, sources, band),)


def worst_figure(throws: Throws, sources: tuple[str, ...]) -> Figure:
    """All high spots in line."""
    worst: Draws = worst_case([share for _, share in throws])  # type: ignore[assignment]
    inputs = tuple(given(name, likely(share), "m", "small") for name, share in throws)
    return spread("runout_worst_case", worst, "m", "small", "runout_worst", inputs, sources)


def _angles(draws: list[Draws]) -> list[Floats]:
    return [spots_anywhere(which, share.size) for which, share in enumerate(draws)]
