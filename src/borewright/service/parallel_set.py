"""parallel: two bands cut at one setting -> how far the tailstock is out, which way, is it enough."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.mechanics.parallel import (
    bands_apart,
    error_over,
    set_over,
    set_over_error,
    taper_found,
)
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, MetrePerMetre
from borewright.reference.library import Tables
from borewright.service.fit_records import Taken


@dataclass(frozen=True, slots=True)
class ParallelInput:
    """The two bands, what they stand apart, the whole length between centers; the work if known."""

    headstock_end: Metre
    tailstock_end: Metre
    apart: Metre
    between_centers: Metre
    work_length: Metre | None = None
    tolerance: Metre | None = None
    reading_error: Metre | None = None


@dataclass(frozen=True, slots=True)
class ParallelResult:
    """`set_over` is + towards the tool; `taper` is + where the tailstock end is the larger.

    `work_error` and `allowed_error` are on diameter over the length of the work; `bands_wanted` is
    how far apart the bands must stand for the readings to show the error allowed.
    """

    taper: MetrePerMetre
    set_over: Metre
    set_over_error: Metre
    work_error: Metre
    work_error_unsure: Metre
    allowed_error: Metre
    bands_wanted: Metre
    assumed: tuple[Taken, ...]

    @property
    def cannot_tell(self) -> bool:
        """True where the readings differ by no more than their own errors."""
        return abs(self.set_over) <= self.set_over_error

    @property
    def enough(self) -> bool:
        return self.work_error <= self.allowed_error


def set_parallel(asked: ParallelInput, tables: Tables) -> ParallelResult:
    """Similar triangles; OutsideModel where the bands stand farther apart than the centers."""
    taken: list[Taken] = []
    length = asked.work_length
    if length is None:
        length = asked.apart
        taken.append(Taken("work_length", length, "m", "the bands' own distance"))
    tolerance = asked.tolerance
    if tolerance is None:
        usual = tables.allowance("usual_tolerance")
        tolerance = usual.best
        taken.append(Taken("tolerance", tolerance, "m", usual.source))
    reading = asked.reading_error
    if reading is None:
        habit = tables.truth_fact("outside_reading")
        reading = habit.best
        taken.append(Taken("reading_error", reading, "m", habit.source))
    share = tables.truth_fact("parallel_share")
    taken.append(Taken("share_of_the_tolerance", share.best, "", share.source))
    unsure = set_over_error(reading, asked.apart, asked.between_centers)
    taper = float(taper_found(asked.headstock_end, asked.tailstock_end, asked.apart))
    allowed = share.best * tolerance
    return ParallelResult(
        taper,
        float(set_over(taper, asked.between_centers)),
        float(unsure),
        float(error_over(taper, length)),
        float(error_over(2 * reading / asked.apart, length)),
        allowed,
        bands_apart(reading, length, allowed),
        tuple(taken),
    )


def parallel_words(r: ParallelResult, show: Show) -> list[str]:
    """What the bands show, what to move and how to see it, and when to stop."""
    return [_shown(r, show), *(_move(r, show) if not r.enough else [_stop(r, show)])]


def _shown(r: ParallelResult, show: Show) -> str:
    larger = "tailstock" if r.taper > 0 else "headstock"
    which = f"larger at the {larger} end" if r.taper else "alike"
    return (
        f"The bands are {which}: {show.small(r.work_error)} over the length of the work, on diameter, of which "
        f"{show.small(r.work_error_unsure)} may be the reading; {show.small(r.allowed_error)} is allowed."
    )


def _stop(r: ParallelResult, show: Show) -> str:
    if r.work_error_unsure <= r.allowed_error:
        return "Parallel enough for this work: leave it."
    return (
        "Parallel enough as far as read, but the reading is no finer than what is allowed: bands at least "
        f"{show.length(r.bands_wanted)} apart would tell."
    )


def _move(r: ParallelResult, show: Show) -> list[str]:
    if r.cannot_tell:
        return [
            "The bands differ by no more than their readings may be out: read again, or cut them at least "
            f"{show.length(r.bands_wanted)} apart, before anything is moved."
        ]
    way = "towards the tool" if r.set_over > 0 else "away from the tool"
    return [
        f"Move the tailstock center {show.small(abs(r.set_over))} {way}, to within {show.small(r.set_over_error)}.",
        "Indicator on the tailstock barrel near its end, level with the centers, plunger square to the bed: slacken the "
        "clamp, bring the needle over by that, clamp, and read it again, because clamping moves it. Then cut both bands again "
        "at one setting of the dial: the bands decide, not the needle.",
    ]
