"""The whole schedule of a trial: its cuts set in the least time, what limits each, and how long."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from borewright.answer.cut_words import depth_words, feed_words
from borewright.answer.records import Cut
from borewright.answer.schedule import Blocked, Schedule, Taken
from borewright.mechanics.spread import likely
from borewright.planning.held.held_trial import HeldTrial
from borewright.planning.passes.bench import Bench, Set, power_is_known
from borewright.planning.passes.holding import Holding, holding_of
from borewright.planning.passes.least_time import Found
from borewright.planning.passes.left_over import left_over
from borewright.planning.passes.runs import runs
from borewright.planning.passes.setting import Setting
from borewright.planning.passes.shift_up import long_words, shift_words, step_words
from borewright.planning.passes.stops import second_face_words, stops
from borewright.planning.passes.way_out import LIMITS, way_out
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.chatter import chatter_of
from borewright.planning.weighing.warmed import seconds_of, work_body
from borewright.quantities.show import Show
from borewright.quantities.si import Second


@dataclass(frozen=True, slots=True, eq=False)
class Scheduled:
    """A trial with its cuts set, and how they are taken."""

    trial: Trial | HeldTrial
    schedule: Schedule
    floor: Second = 0.0
    """Seconds of cutting that no other hold goes under either."""


def scheduled(trial: Trial | HeldTrial, *, cool: bool = False, keep: bool = False) -> Scheduled:
    """The trial with every cut that the plan chooses set to take the least time within all limits.

    `cool`: its passes one after another keep the heat question at yes; else waits may come between.
    `keep`: a cut that is past a limit whatever is set stays as it was planned.
    """
    holding = holding_of(trial)
    bench = Bench(holding, work_body(trial), cool=cool)
    sets = [_kept(s, holding) if keep else s for s in runs(bench)]
    after = holding.taken(tuple(c for s in sets for c in s.cuts))
    taken = tuple(t for s in sets for t in _taken(s, holding))
    blocked = tuple(b for s in sets for b in _blocked(s, holding))
    placed = tuple(
        replace(t, stops=stops(after, c)) for t, c in zip(taken, after.cuts, strict=True)
    )
    seconds = sum(t.seconds for t in taken)
    said = (
        *_skin(sets, holding),
        *_sings(after, holding),
        *_notes(after),
        *long_words(after, seconds),
        *_tame(sets, bench),
    )
    floor = sum(_floor(s) for s in sets)
    return Scheduled(after, Schedule(placed, seconds, blocked, notes=said), floor)


def _floor(one: Set) -> Second:
    """Of one setting. A skin may be cut in other passes elsewhere, so nothing is sure of that."""
    if one.found is None or one.cuts[0].id.endswith("skin"):
        return 0.0
    return one.found.floor


def _kept(one: Set, holding: Holding) -> Set:
    """A single cut that nothing takes within its limits, as planned; it stays blocked."""
    planned = next((c for c in holding.cuts if c.id == one.cuts[0].id), None)
    if one.found is None or not one.found.blocked or planned is None or planned.kind == "turn":
        return one
    return replace(one, cuts=(planned,))


def _skin(sets: list[Set], holding: Holding) -> Iterator[str]:
    """Where the first pass of a casting that is out does not get under the skin on its low side."""
    for one in sets:
        if one.instead is not None:
            deep = holding.show.depth(one.instead.setting.deepest)
            why = LIMITS[one.instead.blocked].what
            if one.instead.blocked == "tool" and not power_is_known(holding.job):
                why = "more than is usual while the lathe's power is not stated"
            if one.cuts[0].kind == "face":
                yield (
                    f"To {one.cuts[0].name}: passes under the skin of the casting would be {deep} deep, and are not taken: {why}. Face it "
                    "where it is held stronger, or expect the skin to take the edge off the tool."
                )
                continue
            yield (
                f"A first pass under the skin all round would be {deep} deep from the high spot, and is not taken: {why}. "
                "So the tool meets the skin once a turn until it cuts all round: slow, a keen spare edge or carbide; or take the skin "
                "off first in a stronger hold, such as the chucking that bores it."
            )


def _sings(trial: Trial | HeldTrial, holding: Holding) -> Iterator[str]:
    """Plunges that the work itself may not bear quietly, in one sentence."""
    if holding.swing is None:
        return
    found = []
    for cut, demand in zip(trial.cuts, trial.demands, strict=True):
        if cut.kind in ("groove", "edge"):
            chatter = chatter_of(cut, demand, holding.swing, holding.tables)
            if chatter is not None and likely(chatter.margin) < 1:
                found.append("groove" if cut.kind == "groove" else "edge")
    if found:
        what = " and ".join(f"{word}s" for word in dict.fromkeys(found))
        yield (
            f"The {what} may chatter by what gives in the work alone: slower still, a keen narrow tool, the feed kept up and never "
            "left to rub, in short bites with the tool moved sideways between them."
        )


def _tame(sets: list[Set], bench: Bench) -> Iterator[str]:
    """Where habit alone keeps the heavy cuts of long work as light as they are."""
    heavy = [s.found for s in sets if s.found is not None and len(s.found.setting.depths) > 1]
    usual = [f for f in heavy if not f.blocked and f.limit in ("", "tool")]
    if not bench.power_known and sum(f.setting.seconds for f in usual) > WORTH_ASKING:
        yield (
            "The lathe's power is not stated, so no cut is deeper than is usual for this metal: with it, cuts may be up to twice as "
            "deep where lathe and hold bear it."
        )


WORTH_ASKING: Second = 1200.0
"""Heavy cutting shorter than this is not worth asking for the lathe's power (ours)."""


def _notes(trial: Trial | HeldTrial) -> tuple[str, ...]:
    second = isinstance(trial, Trial) and any(c.id == "face-leading" for c in trial.cuts)
    faced = (second_face_words(trial),) if isinstance(trial, Trial) and second else ()
    return (*faced, *left_over(trial), *shift_words(trial), *step_words(trial))


def as_planned(trial: Trial | HeldTrial, blocked: tuple[Blocked, ...] = ()) -> Schedule:
    """The times of a trial's cuts as they stand; `blocked`: what could not be set, of which only
    that is told which these cuts do not meet either."""
    holding = holding_of(trial)
    blocked = tuple(b for b in blocked if b.limit == "finish")
    taken = tuple(t for c in trial.cuts for t in _taken(Set((c,)), holding))
    placed = tuple(
        replace(t, stops=stops(trial, c)) for t, c in zip(taken, trial.cuts, strict=True)
    )
    seconds = sum(t.seconds for t in taken)
    return Schedule(placed, seconds, blocked, notes=(*_notes(trial), *long_words(trial, seconds)))


def _taken(one: Set, holding: Holding) -> Iterator[Taken]:
    between = holding.tables.allowance("between_passes").best
    for cut in one.cuts:
        times = 2 if cut.spring_pass else 1
        seconds = times * (seconds_of(holding, cut) + _settings(cut, between))
        if one.found is None:
            asked = cut.id.startswith("cut-") or not cut.on_lathe
            limit, said = ("", AS_ASKED) if asked else ("kept", KEPT)
            yield Taken(cut.id, seconds, limit, said)
        else:
            limit = one.found.blocked or one.found.limit or "lathe"
            yield Taken(cut.id, seconds, limit, _said(one.found, cut, holding))


AS_ASKED = "As asked for."

KEPT = "Every faster setting that was tried would make another answer worse."


def _settings(cut: Cut, between: Second) -> Second:
    """What the passes cost beside cutting; a dividing head and a grinder have their own pace."""
    return between * cut.passes if cut.on_lathe else 0.0


def _said(found: Found, cut: Cut, holding: Holding) -> str:
    if found.blocked:
        return f"Past a limit whatever is set: {LIMITS[found.blocked].what}."
    if found.refused is None:
        return "As deep, coarse and fast as is usual for this metal."
    stops = LIMITS[found.limit].stops
    if found.limit == "tool" and not power_is_known(holding.job):
        stops = "is more than is usual while the lathe's power is not stated"
    return f"Quicker, {_set_to(found.refused, cut, holding.show)}, {stops}."


def _set_to(setting: Setting, cut: Cut, show: Show) -> str:
    other = replace(cut, depth=setting.deepest, feed=setting.feed, spindle_speed=setting.spindle)
    said = f"{len(setting.depths)} × {depth_words(other, show)}"
    return f"{said} at {feed_words(other, show)} and {show.spindle(setting.spindle)}"


def _blocked(one: Set, holding: Holding) -> Iterator[Blocked]:
    if one.found is not None and one.found.blocked:
        cut = one.cuts[-1]
        yield Blocked(cut.id, one.found.blocked, way_out(one.found, cut, holding))
