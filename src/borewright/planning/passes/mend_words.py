"""The changes that unblock a cut, in a sentence; or that none does, and which comes nearest."""

from __future__ import annotations

from dataclasses import replace
from math import ceil, floor, log10

from borewright.planning.passes.least_time import Found, solved
from borewright.planning.passes.search import Mended, Searched
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, Ratio


def lacking(share: Ratio) -> int:
    """What a share lacks of 1, in whole per cent; at least 1."""
    return max(1, ceil((1 - share) * 100))


def mended_words(result: Searched, show: Show) -> str:
    """The cheapest with what it takes, and the next."""
    first, *others = result.mended
    setting = first.found.setting
    quantity = first.change.problem.holding.job.work.quantity
    told = len(setting.depths) == 1 or "more-passes" in first.change.mends
    passes = "" if told else f" in {len(setting.depths)} passes"
    each = " a piece" if quantity > 1 else ""
    cuts = f"{_minutes(setting.seconds / 60)} of cutting{each}{passes}"
    up = f"{_minutes(first.setting_up)} to set up, then " if first.setting_up >= HALF else ""
    other = "".join(f" Or {change_words(m, show)}." for m in others)
    cheapest = "Cheapest" if result.all_pairs else "Cheapest of what was tried"
    return f"{cheapest}: {change_words(first, show)}: {up}{cuts}.{other}"


LONG = 150.0
"""From so many minutes on hours are said (ours)."""

HALF = 0.5
"""Setting up that takes less (minutes) is not said (ours)."""


def change_words(mended: Mended, show: Show) -> str:
    """One change, or two, with the number that was tried."""
    return ", and ".join(says(mended.found.setting, show) for says in mended.change.says)


def _minutes(minutes: float) -> str:
    if minutes >= LONG:
        return f"{minutes / 60:.0f} hours"
    return f"{minutes:.0f} min" if minutes >= 1.5 else "a minute"


def none_words(result: Searched, show: Show) -> str:
    """That nothing tried is enough, with what comes nearest."""
    near = result.nearest
    if near is None:
        return ""
    two = "nor two together" + ("" if result.all_pairs else ", as far as tried")
    return (
        f"No usual change to tool, feed, speed or passes is enough, {two}; nearest comes "
        f"{change_words(near, show)}, still {lacking(near.found.share)} % short."
    )


def accept_words(found: Found, show: Show) -> str:
    """What could be had as it is: a finish or a size that is less fine. Empty where not even that."""
    problem = found.problem
    if problem is None or found.share <= 0 or found.blocked not in ("finish", "bend"):
        return ""
    wanted = problem.wanted
    if found.blocked == "finish" and wanted.ridges is not None:
        ridges = _two_figures_up(wanted.ridges / found.share)
        said, eased = f"Rz {show.small(ridges)}", replace(wanted, ridges=ridges)
    elif found.blocked == "bend" and wanted.allowed is not None:
        allowed = _two_figures_up(wanted.allowed / found.share)
        said, eased = f"{show.small(allowed)} on the diameter", replace(wanted, allowed=allowed)
    else:
        return ""
    return "" if solved(replace(problem, wanted=eased)).blocked else f" Or accept {said}."


def _two_figures_up(value: Metre) -> Metre:
    """Two figures of a value, never less.

    >>> round(_two_figures_up(1.234e-6) * 1e6, 9)
    1.3
    """
    step = 10.0 ** (floor(log10(value)) - 1)
    return ceil(value / step + 1e-9) * step
