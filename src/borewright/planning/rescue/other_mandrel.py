"""Another mandrel, or the same: the bore as found weighed on every plain mandrel of the shelf."""

from __future__ import annotations

from borewright.answer.records import Figure, Have, Need, Verdict
from borewright.answer.rescue import DrawingHolds, WayOut
from borewright.planning.choice.candidates import Weighed
from borewright.planning.rescue.case import OUT_OF_SQUARE, Case
from borewright.planning.rescue.entry import (
    beyond_general,
    capital,
    held_back,
    joined,
    later,
    strength_of,
    takes,
    worst,
)
from borewright.planning.taper.trial import Trial
from borewright.planning.words.cautions import cautions

ID = "other-mandrel"


def other_mandrel(case: Case) -> WayOut:
    """The best of the plain mandrels for the bore as found."""
    best = case.on_mandrels.best
    holds, why = case.bore_stays()
    if best is None:
        return _none(case, holds, why)
    trial = best.trial
    back = (*held_back(case), *filter(None, (noted(trial),)))
    verdict = worst(best.verdict, Verdict.CARE if back else Verdict.YES)
    no = verdict is Verdict.NO
    true = best.question("true").figures
    return WayOut(
        ID,
        "the mandrel that was chosen" if trial.mandrel == case.chosen else "another mandrel",
        verdict,
        joined((_reason(best), _square(case), *back)),
        _takes(case, trial),
        holds,
        why,
        (_need(case, trial.mandrel.name), *(trial.drive.needs if trial.drive else ())),
        ()
        if no
        else (*(f for f in true if f.name == "runout"), strength_of(best.question("crack"))),
        () if no else _steps(best),
        () if no else _cautions(case, trial),
    )


def _takes(case: Case, trial: Trial) -> Figure:
    """The time (s), with that of a positive drive where it takes one."""
    alone = takes(ID, case.tables)
    if trial.drive is None:
        return alone
    made = sum(n.minutes for n in trial.drive.needs if n.have is Have.MAKE)
    return later(alone, case.tables.holding_fact("drive_setting"), made)


def _cautions(case: Case, trial: Trial) -> tuple[str, ...]:
    drive = trial.drive
    tags = drive.caution_tags if drive else ()
    called = cautions(case.job, trial.shop, case.tables, trial.mandrel, tags)
    marks = (drive.marks,) if drive and drive.marks else ()
    return (*beyond_general(case, called), *marks)


def _reason(best: Weighed) -> str:
    trial = best.trial
    if best.verdict is Verdict.NO:
        return capital(best.deciding.reason)
    where = (
        f"{capital(trial.mandrel.name)}, face {trial.hold.leading} towards the large end, pressed "
        f"{trial.show.rule(trial.chosen.press)} past touch{with_drive(trial)}."
    )
    return where if best.verdict is Verdict.YES else f"{where} {best.deciding.reason}"


def noted(trial: Trial) -> str:
    """What the owner noted of the mandrel, and what that asks; empty where nothing was."""
    note = trial.shop.notes_of.get(trial.mandrel.name)
    if note is None or not note.condition:
        return ""
    return f'Its owner noted: "{note.condition}". Look first and stone down what stands up: it scores every bore.'


def with_drive(trial: Trial) -> str:
    """The positive drive beside it, as the end of a clause; empty where it has none."""
    return f", with {trial.drive.tool}" if trial.drive else ""


def _square(case: Case) -> str:
    if not case.has(OUT_OF_SQUARE):
        return ""
    return "Turn rim and faces from the bore: what was finished before does not run true with it."


def _steps(best: Weighed) -> tuple[str, ...]:
    trial = best.trial
    near, far = trial.touch_gate
    gate = trial.show.band(min(near, far), max(near, far), "length")
    return (
        f"Clean bore and mandrel, oil, slide it on face {trial.hold.leading} towards the large end.",
        f"A rule from the large-end face must read {gate} to the leading face: else it is not this mandrel.",
        f"Press {trial.show.rule(trial.chosen.press)} past touch, the hub supported; prove it, clock the rim.",
        *_driven(trial),
    )


def _driven(trial: Trial) -> tuple[str, ...]:
    mount = trial.drive.mount if trial.drive else None
    return (f"{mount.title}. {mount.text}",) if mount else ()


def _need(case: Case, name: str) -> Need:
    return Need(name, Have.OWN, taken=not case.job.shelf.stated)


def _none(case: Case, holds: DrawingHolds, why: str) -> WayOut:
    near = case.on_mandrels.weighing.nearest
    if near is None:
        said = "There is no mandrel to try."
    else:
        ground = case.show.band(near.small_end, near.large_end, "bore")
        fits = case.found.least > near.large_end
        how = "falls through" if fits else "does not go on"
        said = f"The nearest, {near.name}, is ground {ground}: this bore {how}."
    return WayOut(ID, "another mandrel", Verdict.NO, said, takes(ID, case.tables), holds, why)
