"""runout split: two readings, the work turned half round between them -> whose share is which."""

from __future__ import annotations

from dataclasses import dataclass
from math import degrees, nan

from borewright.mechanics.reversal import Share, bounds, share_error, split
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, Radian
from borewright.reference.library import Tables
from borewright.service.fit_records import Taken


@dataclass(frozen=True, slots=True)
class SplitInput:
    """Whole readings, and where from the mark their high spots stood: both places or neither."""

    first: Metre
    second: Metre
    first_at: Radian | None = None
    second_at: Radian | None = None
    reading_error: Metre | None = None
    angle_error: Radian | None = None


@dataclass(frozen=True, slots=True)
class SplitResult:
    """The two shares as whole readings, NaN where amounts alone do not tell them apart.

    `least_share` and `most_share` bound either of them by amounts alone; `together` is their
    root-sum-square, known exactly; `share_error` is how far the shares may be out.
    """

    mandrel_share: Metre
    mandrel_at: Radian
    work_share: Metre
    work_at: Radian
    least_share: Metre
    most_share: Metre
    together: Metre
    share_error: Metre
    assumed: tuple[Taken, ...]


def split_runout(asked: SplitInput, tables: Tables) -> SplitResult:
    """By arrows where the high spots were marked, else the bounds that the amounts give.

    OutsideModel for a reading below zero or an error that is none.
    """
    taken: list[Taken] = []
    known = asked.first_at is not None and asked.second_at is not None
    reading = _or("reversal_reading", asked.reading_error, "m", tables, taken)
    angle = _or("reversal_angle", asked.angle_error, "rad", tables, taken) if known else 0.0
    found = bounds(asked.first, asked.second)
    nowhere = Share(nan, nan)
    mandrel, work = _by_arrows(asked) if known else (nowhere, nowhere)
    return SplitResult(
        mandrel.reading,
        mandrel.at,
        work.reading,
        work.at,
        found.least,
        found.most,
        found.together,
        share_error(asked.first, asked.second, reading, angle),
        tuple(taken),
    )


def _by_arrows(asked: SplitInput) -> tuple[Share, Share]:
    return split(
        Share(asked.first, asked.first_at or 0.0), Share(asked.second, asked.second_at or 0.0)
    )


def _or(what: str, given: float | None, unit: str, tables: Tables, taken: list[Taken]) -> float:
    if given is not None:
        return given
    usual = tables.truth_fact(what)
    taken.append(Taken(WORDS[what], usual.best, unit, usual.source))
    return usual.best


WORDS = {"reversal_reading": "error_of_a_reading", "reversal_angle": "error_of_a_place"}


def split_words(r: SplitResult, show: Show) -> list[str]:
    """The answer in sentences, and what to do with it."""
    return _amounts_words(r, show) if r.mandrel_share != r.mandrel_share else _shares_words(r, show)


def _shares_words(r: SplitResult, show: Show) -> list[str]:
    near = f"each may be {show.small(r.share_error)} out"
    return [
        f"The mandrel with its centers runs out {show.small(r.mandrel_share)}{_at(r.mandrel_share, r.mandrel_at, r)}; "
        f"the work to its bore {show.small(r.work_share)}{_at(r.work_share, r.work_at, r)}; {near}.",
        _whose(r),
    ]


def _at(share: Metre, at: Radian, r: SplitResult) -> str:
    """Where the high spot is, where the share is more than its error."""
    return f", high at about {degrees(at):.0f}° from the mark" if share > r.share_error else ""


def _whose(r: SplitResult) -> str:
    if abs(r.mandrel_share - r.work_share) <= r.share_error:
        return "Both have a like share: first the mandrel and its centers, then read again."
    if r.mandrel_share > r.work_share:
        return "Most of it is the mandrel's: wipe and look into both center holes, read its ground part, true or change it."
    return "Most of it is the work's: rim to bore, or its seat. Turning the rim on this mandrel leaves only the mandrel's share in it."


def _amounts_words(r: SplitResult, show: Show) -> list[str]:
    low, high = show.small(r.least_share), show.small(r.most_share)
    return [
        f"Amounts alone do not say which is whose: either share lies between {low} and {high}, and the two together "
        f"(root-sum-square) are {show.small(r.together)}; each end may be {show.small(r.share_error)} out.",
        f"If the high spots lay in one line, one share is {high} and the other {low}. Pencil the high spot, on the mandrel "
        "and on the work, before the work is turned: where it stays by the mandrel's mark the larger is the mandrel's, where "
        "it goes round with the work the larger is the work's. With --first-at and --second-at, both from a mark on the "
        "mandrel, both shares come out by themselves.",
    ]
