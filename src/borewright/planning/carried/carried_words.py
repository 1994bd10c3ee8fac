"""The sentence that comes first, what to have ready and what was assumed, for any way but the taper."""

from __future__ import annotations

from borewright.answer.held import Held
from borewright.answer.records import Assumption, Have, Need, Question, Verdict
from borewright.cutting.stock import finished_outside
from borewright.holding.bores.bore_reading import half_band_of
from borewright.job.records import Job
from borewright.planning.held.held_trial import HeldTrial
from borewright.planning.shop.owned import lathe_words
from borewright.planning.taper.soundness import taken_as_sound
from borewright.quantities.show import Show
from borewright.reference.library import Tables


def carried_headline(trial: HeldTrial, verdict: Verdict, deciding: Question) -> str:
    """The answer in one or two sentences."""
    in_doubt = trial.job.work.flaws == "suspected"
    do_it = (
        f"look first, and only if no crack is found {trial.held.do_it}"
        if in_doubt
        else trial.held.do_it
    )
    casting = trial.job.work.blank == "casting"
    if verdict is Verdict.YES:
        stated = "as sound as stated" if trial.job.work.flaws == "none" else "sound"
        sound = f", if the casting is {stated}" if casting else ""
        return f"Yes{sound}: {do_it}.{_bought(trial.held)}"
    if verdict is Verdict.NO:
        return f"No, not by this: {do_it}. {deciding.reason}{_bought(trial.held)}"
    helps = deciding.changes_it.partition(". ")[0].rstrip(".")
    what = "" if helps == "Nothing needs to" else f" What helps: {helps[0].lower()}{helps[1:]}."
    return f"With care: {do_it}. {deciding.reason}{what}{_bought(trial.held)}"


def _bought(held: Held) -> str:
    """Said where a way was insisted on that the shelf has not got."""
    listed = ", ".join(n.what for n in held.to_buy)
    return f" Not on the shelf: {listed}." if listed else ""


def carried_ready(trial: HeldTrial) -> tuple[str, ...]:
    """What to fetch before starting, what is made or bought named as such."""
    needs = (_need_words(n) for n in trial.held.needs)
    return (*needs, *lathe_words(trial.job.shelf.machine), *trial.held.ready)


def _need_words(need: Need) -> str:
    said = {Have.MAKE: " (to be made)", Have.BUY: " (to be bought)", Have.OWN: ""}
    return f"{need.what}{said[need.have]}"


def carried_assumed(trial: HeldTrial, tables: Tables) -> tuple[Assumption, ...]:
    """Everything that was not stated, and what was taken."""
    job, show = trial.job, trial.show
    said = [
        Assumption(need.what, "taken as owned", "ours") for need in trial.held.needs if need.taken
    ]
    unsaid = taken_as_sound(job)
    if unsaid:
        said.append(Assumption("the work", unsaid, "ours"))
    return (*said, *_of_the_bore(job, show, tables), *_of_the_size(job, show, tables))


def _of_the_bore(job: Job, show: Show, tables: Tables) -> tuple[Assumption, ...]:
    if job.work.bore.uncertainty is not None:
        return ()
    known = half_band_of(job, tables)
    taken = f"{show.small(known.size)} either way"
    return tuple(Assumption("how well the bore is known", taken, s) for s in known.sources)


def _of_the_size(job: Job, show: Show, tables: Tables) -> tuple[Assumption, ...]:
    finished, said = job.work.finished, []
    if finished_outside(job, tables) is None:
        said.append(Assumption("finished size", "one cleaning cut, then a finishing cut", "ours"))
    if finished.tolerance is None:
        usual = tables.allowance("usual_tolerance")
        said.append(Assumption("tolerance of the outside", show.small(usual.best), usual.source))
    if finished.runout is None:
        usual = tables.allowance("usual_runout")
        taken = f"{show.small(usual.best)}, whole"
        said.append(Assumption("runout of rim to bore", taken, usual.source))
    if not job.shelf.machine.speeds:
        taken = "the speed wanted; take the next slower you have"
        said.append(Assumption("speeds of the lathe", taken, "od1645"))
    return tuple(said)
