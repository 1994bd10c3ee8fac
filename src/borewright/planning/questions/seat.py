"""Seat: does the work bear on enough of its bore, and where will it sit."""

from __future__ import annotations

import math
from collections.abc import Iterator

from borewright.answer.records import Figure, Question, Verdict
from borewright.holding.taper.measured_words import beyond_use, wear_words
from borewright.mechanics.inverse import where_it_reaches
from borewright.mechanics.spread import likely, low_end
from borewright.planning.taper.rings_check import over_rings, rings_check
from borewright.planning.taper.trial import Trial, past_what
from borewright.planning.weighing.figures import figure, given, spread
from borewright.planning.weighing.judge import judge
from borewright.quantities.si import Metre

FILLED = 0.99
"""Ours: share of the bore that counts as all of it."""


def ask_seat(trial: Trial) -> Question:
    """Margin: the length that bears over what is wanted. Figures: touch, seat, rule reading.

    No, with no margin at all, on a measured mandrel that is parallel or worn beyond use.
    """
    margin = trial.grip.contact_length / wanted_length(trial)
    best, low = likely(margin), low_end(margin)
    useless = beyond_use(trial.mandrel)
    verdict = Verdict.NO if useless else judge("seat", best, low, trial.tables)
    reason = _reason(trial, likely(trial.grip.contact_length) / trial.hold.bears)
    return Question(
        "seat",
        verdict,
        0.0 if useless else best,
        0.0 if useless else low,
        f"The mandrel is {useless}."
        if useless
        else " ".join((reason, *wear_under_the_work(trial))),
        _changes(trial),
        _figures(trial),
        (trial.tables.threshold("seat").source,),
    )


def wanted_length(trial: Trial) -> Metre:
    """The length (m) of bore that should bear: all of it, between a least and enough."""
    bore, a = trial.job.work.bore.size, trial.tables.allowance
    least, enough = a("least_bearing").best * bore, a("enough_bearing").best * bore
    return min(max(trial.hold.bears, least), enough)


def _reason(trial: Trial, share: float) -> str:
    show, band = trial.show, trial.within_lines(*trial.seat_band)
    rule = show.band(trial.from_large_end(band[1]), trial.from_large_end(band[0]), "length")
    where = f"the leading face sits {rule} from the mandrel's large-end face"
    if not trial.touch_is_known:
        known = "bore reading is" if trial.job.work.bore.limits is None else "bore's limits are"
        where = f"the {known} too loose to say where it sits; the touch on the mandrel tells"
    whole = share > FILLED
    held = "its whole bore" if whole else f"{share:.0%} of its bore, the rest is free"
    said = f"Pressed {_press(trial)} past touch it bears on {held}; {where}."
    return " ".join((said, *_short_words(trial)))


def is_short(trial: Trial) -> bool:
    """Whether the bore is too short for its diameter to be sure of seating square."""
    wanted = trial.tables.threshold("seat").yes_likely * wanted_length(trial)
    return trial.hold.bears < wanted


def _short_words(trial: Trial) -> Iterator[str]:
    """Said of work so short for its bore that it may not seat square."""
    bears = likely(trial.grip.contact_length) / trial.job.work.bore.size
    if is_short(trial):
        yield (
            f"That is {bears:.2g} of the bore's diameter: so short a bore may sit out of square, and "
            "its faces wobble."
        )


def wear_under_the_work(trial: Trial) -> tuple[str, ...]:
    """Sentences on what is not a straight taper where the work slides on, sits and bears."""
    return tuple(_wear(trial, trial.seat_band[0] - trial.chosen.travel, trial.seat_band[1]))


def wear_elsewhere(trial: Trial) -> tuple[str, ...]:
    """The same for the rest of the mandrel."""
    here = wear_under_the_work(trial)
    whole = _wear(trial, -math.inf, math.inf)
    return tuple(said for said in whole if said not in here)


def _wear(trial: Trial, touch: Metre, seat: Metre) -> Iterator[str]:
    """Flats that the leading face passes between touch and seat, and a bend that the bore covers."""
    end = "its large-end face", trial.mandrel.end_length
    covered = touch - trial.hold.length, seat
    clauses = wear_words(trial.mandrel, trial.show, (touch, seat), covered, end)
    return (f"The mandrel is {said}." for said in clauses)


def _press(trial: Trial) -> str:
    return trial.show.rule(trial.chosen.press)


def _changes(trial: Trial) -> str:
    step = 2.54e-6 if trial.show.units == "inch" else 0.01e-3
    moves = f"{trial.show.small(step)} of bore moves the seat {trial.show.length(step / trial.mandrel.taper)}"
    return f"{_fills(trial)}; {moves}."


def _fills(trial: Trial) -> str:
    """The travel that fills the bore, and what forbids it where something does."""
    if is_short(trial):
        return (
            "A longer hub, or several side by side; between a shoulder and a nut so short a piece "
            "seats by its faces"
        )
    if likely(trial.grip.contact_length) >= FILLED * trial.hold.bears:
        return "Nothing needs to"
    full = _travel_that_fills(trial)
    stopped = past_what(trial, full)
    if stopped:
        return f"Not more travel: {stopped} short of the {trial.show.length(full)} that would fill the bore"
    return f"About {trial.show.length(full)} of travel would fill the bore"


def _travel_that_fills(trial: Trial) -> Metre:
    """Travel (m) past touch, by hand's push and press, at which the whole bore bears, likely case."""
    hold, whole = trial.hold, FILLED * trial.hold.bears
    lost = hold.facts.lost_rough[:1]

    def bears(travel: Metre) -> float:
        return float(hold.state(travel, lost, likely_only=True).contact_length[0])

    most = 2 * hold.length + float(lost[0]) / trial.mandrel.taper
    found = where_it_reaches(bears, whole, 0.0, most, steps=8)
    return most if found is None else found


def _figures(trial: Trial) -> tuple[Figure, ...]:
    m = trial.mandrel
    # Readings that differ, a chamfer or counterbore, a mandrel as measured: all move the touch.
    bore = trial.job.work.bore.size
    straight = (bore - m.small_end) / m.taper
    ends = (
        given("bore", bore, "m", "bore"),
        given("small end", m.small_end, "m", "bore"),
        given("taper", m.taper, "m/m"),
        given("further by", trial.hold.likely_touch - straight, "m"),
    )
    seat = trial.seat
    large = m.ground_length + m.end_length
    return (
        spread(
            "touch_position", trial.hold.touch, "m", "length", "touch_position", ends, m.sources
        ),
        figure(
            "press_distance",
            trial.chosen.press,
            "m",
            "length",
            "press_distance",
            (given("travel", trial.chosen.travel, "m"), given("hand's share", trial.hand, "m")),
        ),
        figure(
            "travel",
            trial.chosen.travel,
            "m",
            "length",
            "travel_chosen",
            (given("past touch", trial.chosen.press, "m"),),
        ),
        spread(
            "seat_position",
            seat,
            "m",
            "length",
            "seat_position",
            (
                given("touch", trial.hold.likely_touch, "m"),
                given("travel", trial.chosen.travel, "m"),
            ),
        ),
        spread(
            "rule_reading",
            large - seat,
            "m",
            "length",
            "rule_reading",
            (given("large-end face", large, "m"), given("seat", likely(seat), "m")),
        ),
        spread(
            "seat_margin",
            trial.grip.contact_length / wanted_length(trial),
            "",
            "",
            "seat_margin",
            (
                given("contact length", likely(trial.grip.contact_length), "m"),
                given("length wanted", wanted_length(trial), "m"),
            ),
        ),
        spread(
            "contact_length",
            trial.grip.contact_length,
            "m",
            "length",
            "contact_length",
            (
                given("travel", trial.chosen.travel, "m"),
                given("length that can bear", trial.hold.bears, "m"),
                given("lost to peaks", likely(trial.hold.facts.lost_rough), "m", "small"),
                given("taper", m.taper, "m/m"),
                over_rings(
                    likely(trial.grip.contact_length),
                    likely(rings_check(trial).pressed.contact_length),
                ),
            ),
        ),
    )
