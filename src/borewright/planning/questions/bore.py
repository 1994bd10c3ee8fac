"""Bore: will this mandrel take this bore at all, with room for dog and tool."""

from __future__ import annotations

import math

from borewright.answer.records import Figure, Question, Verdict
from borewright.holding.bores.bore_reading import better_gauge, half_band_of
from borewright.holding.bores.bore_shape import out_of_round
from borewright.holding.taper.measured_mandrel import diameter_of
from borewright.job.records import BoreLimits
from borewright.planning.shop.owned import reamer_between
from borewright.planning.taper.bore_words import limits_name
from borewright.planning.taper.travel import ROOM
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure, given
from borewright.planning.weighing.judge import judge
from borewright.quantities.si import Metre

FINEST_BAND = 1e-6
"""No bore is known closer than this (m), whatever was stated."""


def ask_bore(trial: Trial) -> Question:
    """Margin: distance to the nearer end of the window over the half band of the reading.

    The verdict is the worse of that and of the bore's form: an oval bore bears on two lines only,
    and the margin is then the squeeze at the leading face over the out-of-round.
    """
    if trial.job.work.bore.thread is not None:
        return _threaded(trial)
    band = _half_band(trial)
    margin = _inside(trial) / band
    low = margin - 1
    size, form = _size_verdict(trial, margin), form_verdict(trial)
    oval = form is not Verdict.YES and form.rank >= size.rank
    return Question(
        "bore",
        form if oval else size,
        form_margin(trial) if oval else margin,
        form_margin(trial) if oval else low,
        _oval_reason(trial) if oval else _reason(trial, margin, band),
        "Bore it round, or bush it; or hold it where nothing bears on the bore."
        if oval
        else _changes(trial),
        _figures(trial),
        (
            trial.tables.threshold("bore").source,
            *half_band_of(trial.job, trial.tables).sources,
        ),
    )


def _threaded(trial: Trial) -> Question:
    """A mandrel pressed on the crests of a thread bruises them, and they are no bore."""
    return Question(
        "bore",
        Verdict.NO,
        0.0,
        0.0,
        "The bore is threaded: a plain mandrel would bear on the crests of the thread, and bruise them.",
        "A threaded mandrel, or a hold that nothing in the bore carries.",
        (),
        (trial.tables.threshold("bore").source,),
    )


NARROW = 2.5e-6
"""A window narrower than this (m) holds no bore that anybody makes on purpose (ours)."""


def _size_verdict(trial: Trial, margin: float) -> Verdict:
    """Limits that reach beyond the window are never a plain yes: the bore may be any of them."""
    low, high = trial.window
    if high - low < NARROW:
        return Verdict.NO
    judged = judge("bore", margin, margin - 1, trial.tables)
    loose = trial.job.work.bore.limits is not None and margin < 1
    return max(judged, Verdict.CARE, key=lambda v: v.rank) if loose else judged


def form_margin(trial: Trial) -> float:
    """Squeeze at the leading face over the out-of-round that the readings show; infinite where none."""
    oval = out_of_round(trial.job.work.bore)
    squeeze = trial.mandrel.taper * trial.chosen.travel
    return squeeze / oval if oval > FINEST_BAND else math.inf


def form_verdict(trial: Trial) -> Verdict:
    """Whether the bore is round enough for the squeeze that it gets."""
    margin = form_margin(trial)
    return judge("form", margin, margin, trial.tables)


def _oval_reason(trial: Trial) -> str:
    show = trial.show
    oval = show.small(out_of_round(trial.job.work.bore))
    squeeze = show.small(trial.mandrel.taper * trial.chosen.travel)
    return (
        f"The bore is out of round by {oval}, and the mandrel squeezes it by {squeeze} at most: it bears on two lines, "
        "rocks and runs out, and the sums here take a round bore."
    )


def ruling_bore(trial: Trial) -> Metre:
    """The straight bore (m) that would touch where this one does: the touch read backwards."""
    return float(diameter_of(trial.mandrel, trial.hold.likely_touch)) - trial.behind


def _half_band(trial: Trial) -> Metre:
    return max(half_band_of(trial.job, trial.tables).size, FINEST_BAND)


def _inside(trial: Trial) -> Metre:
    low, high = trial.window
    bore = ruling_bore(trial)
    return min(bore - low, high - bore)


def _reason(trial: Trial, margin: float, band: Metre) -> str:
    show, (low, high) = trial.show, trial.window
    if high - low < NARROW:
        ground = show.length(trial.mandrel.ground_length)
        return f"{trial.mandrel.name} is ground {ground}: too short for this work, its travel, dog and tool."
    takes = f"{_shortened(trial)}{trial.mandrel.name} takes {show.band(low, high, 'bore')} here"
    if trial.job.work.bore.limits is not None:
        return _limits_reason(trial, trial.job.work.bore.limits, margin, takes)
    known = f"the bore is known to {show.small(band)} either way"
    form = _form(trial)
    if margin >= 1:
        return f"{takes}, and {show.bore(ruling_bore(trial))} lies inside; {known}{form}."
    if margin > 0:
        return f"{takes}, and {show.bore(ruling_bore(trial))} lies inside, but {known}: try it on first{form}."
    if margin > -1:
        return f"{takes}; {show.bore(ruling_bore(trial))} lies outside, but {known}: try it on before believing it."
    if ruling_bore(trial) > high:
        return f"{takes}; the bore is larger: it falls through or leaves no room for dog and tool."
    return f"{takes}; the bore is smaller: it will not go on far enough."


def _limits_reason(trial: Trial, limits: BoreLimits, margin: float, takes: str) -> str:
    show, name = trial.show, limits_name(limits, trial.show)
    moves = f"from its smallest to its largest the seat moves {_moved(trial, limits)}"
    if margin >= 1:
        return f"{takes}, and the whole of {name} lies inside; {moves}."
    band = show.band(limits.low, limits.high, "bore")
    spread = f"{name}, {band}," if limits.code else name
    inside = "part" if limits.low < trial.window[1] and limits.high > trial.window[0] else "none"
    return f"{spread} is not a mandrel bore: {moves}. {takes}; {inside} of that lies inside."


def _moved(trial: Trial, limits: BoreLimits) -> str:
    return trial.show.length((limits.high - limits.low) / trial.mandrel.taper)


def _shortened(trial: Trial) -> str:
    """Said where the travel was cut short to suit a bore near the top of the mandrel."""
    if trial.chosen.limited_by != ROOM:
        return ""
    return f"The bore is near the top of this mandrel and leaves only {trial.show.length(trial.chosen.press)} of travel. With that, "


def _form(trial: Trial) -> str:
    show, bore = trial.show, trial.job.work.bore
    oval, taper = out_of_round(bore), trial.hold.shape.change
    said = ""
    if oval > 2e-6:
        said = f"; the readings differ by {show.small(oval)} at one depth, so the smallest rules"
    if taper > 4e-6:
        said += f"; it tapers by {show.small(taper)}, face {trial.hold.leading} leading lets it bear best"
    gauge = trial.tables.gauge(trial.job.work.bore.measured_with)
    unseen = (
        ""
        if gauge.sees_lobes or not _reamed(trial)
        else "; two points cannot see three or five lobes"
    )
    return said + unseen


def _reamed(trial: Trial) -> bool:
    return "ream" in trial.job.work.bore.made_by


def _changes(trial: Trial) -> str:
    low, high = trial.window
    bore = ruling_bore(trial)
    if low >= high:
        return "A longer mandrel, or a stub turned to this bore."
    if trial.job.work.bore.limits is not None and _inside(trial) < _half_band(trial):
        return (
            f"Measure the bore; or ream or bore it to suit, {trial.show.band(low, high, 'bore')}."
        )
    if bore > high:
        return f"A mandrel larger by at least {trial.show.small(bore - high)}, or a stub turned to this bore."
    if bore < low:
        return f"{_opened(trial)}, or use the next smaller mandrel."
    return (
        f"Sliding it on: where it stops under a light push is the bore's true size.{_closer(trial)}"
    )


LEAST_CUT = 2.5e-6
"""The least (m) that a reamer or a lap is asked to take; ours."""


def _opened(trial: Trial) -> str:
    """How to open a bore that is too small: by the shop's own reamer where one cuts inside."""
    (low, high), bore, show = trial.window, ruling_bore(trial), trial.show
    least = f"Open the bore by at least {show.small(max(low - bore, LEAST_CUT))}"
    found = reamer_between(trial.job.shelf.reamers, low, high, bore)
    if found is None:
        return least
    reamer, size = found
    name = reamer.name or f"the {show.length(reamer.size)} reamer"
    told = "as it cuts" if reamer.cuts is not None else "by its marking; try it first"
    return f"{least}: {name} on the shelf makes {show.bore(size)} ({told})"


def _closer(trial: Trial) -> str:
    """The better gauge on the shelf, where there is one."""
    found = better_gauge(trial.job, trial.tables)
    if found is None:
        return ""
    return f" The {found[0]} on the shelf would know it to {trial.show.small(found[1])} either way."


def _figures(trial: Trial) -> tuple[Figure, ...]:
    m, (low, high) = trial.mandrel, trial.window
    inputs = (
        given("small end", m.small_end, "m", "bore"),
        given("taper", m.taper, "m/m"),
        given("ground length", m.ground_length, "m"),
        given("travel", trial.chosen.travel, "m"),
        given("length of bore", trial.hold.length, "m"),
        given("room at the small end", trial.tables.allowance("tool_clearance").best, "m"),
        given("room for dog and tool", trial.tables.allowance("dog_clearance").best, "m"),
        given("free before it bears", trial.hold.free_before, "m"),
    )
    low_in, band = _inside(trial), _half_band(trial)
    margin_in = (given("inside by", low_in, "m", "small"), given("half band", band, "m", "small"))
    return (
        figure("bore_window_low", low, "m", "bore", "bore_window", inputs, m.sources),
        figure("bore_window_high", high, "m", "bore", "bore_window", inputs, m.sources),
        figure(
            "bore_half_band",
            band,
            "m",
            "small",
            "",
            (),
            half_band_of(trial.job, trial.tables).sources or ("stated",),
        ),
        figure("bore_margin", low_in / band, "", "", "bore_margin", margin_in),
    )
