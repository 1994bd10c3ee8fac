"""The sentence that comes first, what was typed said back, and what to have ready."""

from __future__ import annotations

from borewright.answer.records import Assumption, Candidate, PushAdvice, Verdict
from borewright.cutting.stock import finished_outside
from borewright.holding.bores.bore_reading import half_band_of
from borewright.job.records import Job
from borewright.planning.choice.candidates import Weighed
from borewright.planning.questions.true import DRIVERS
from borewright.planning.shop.owned import dog_words, lathe_words, mandrel_words
from borewright.planning.shop.shop import Shop
from borewright.planning.steps.finished_words import size_words
from borewright.planning.taper.bore_words import limits_echo
from borewright.planning.taper.soundness import flaw_forbids, stated_words, taken_as_sound
from borewright.planning.taper.support import ring_words
from borewright.planning.taper.trial import Trial
from borewright.planning.words.load_words import assumed_loads, loads_ready, turns
from borewright.quantities.show import Show
from borewright.reference.library import Tables


def headline(best: Weighed | None, better: tuple[Candidate, ...], missing: str = "") -> str:
    """The answer in one or two sentences; `missing`: why no mandrel of the shelf can be tried."""
    other = f" {better[0].reason}" if better else ""
    if best is None:
        return f"No: {missing}{other}"
    t = best.trial
    on = f"{t.mandrel.name}, face {t.hold.leading} towards the large end"
    press = f"{t.show.rule(t.chosen.press)} past touch{_drive_words(t)}"
    if best.verdict is Verdict.YES:
        stated = "as sound as stated" if t.job.work.flaws == "none" else "sound"
        sound = f", if the casting is {stated}" if t.job.work.blank == "casting" else ""
        return f"Yes{sound}: press it on {on}, {press}."
    if best.verdict is Verdict.NO:
        if flaw_forbids(t.job, brittle=t.hold.facts.brittle):
            return f"No: {best.deciding.reason}{other}"
        return f"No, not on {t.mandrel.name}: {best.deciding.reason}{other}"
    if best.question("bore").verdict is Verdict.CARE and not t.touch_is_known:
        gate = t.show.band(*t.touch_gate, "length")
        what = "reading" if t.job.work.bore.limits is None else "bore's limits"
        return (
            f"With care: the {what} cannot tell, the mandrel can. Slide it on {on}; only if the rule then reads "
            f"{gate} from the large-end face, press it {press}. {best.deciding.reason}"
        )
    safer = (
        " Strapped to the faceplate it is held near the rim, where the cut pulls."
        if "faceplate" in [b.way for b in better]
        else ""
    )
    return f"With care: press it on {on}, {press}. {best.deciding.reason}{safer}{_what_helps(best)}"


def _drive_words(t: Trial) -> str:
    return f", with {t.drive.tool}" if t.drive else ""


def _what_helps(best: Weighed) -> str:
    """What the care is, in a sentence; empty where nothing is named."""
    # A period within a number ends no sentence.
    sentence = best.deciding.changes_it.partition(". ")[0].rstrip(".") + "."
    return (
        ""
        if sentence == "Nothing needs to."
        else f" What helps: {sentence[0].lower()}{sentence[1:]}"
    )


def echo(job: Job, tables: Tables) -> tuple[str, ...]:
    """What was understood of the job, in the units typed with the other beside it."""
    show, w = Show(job.units), job.work
    size = f"{show.length(w.outside)} outside, {show.length(w.length)} long"
    band = show.small(half_band_of(job, tables).size)
    how = w.bore.measured_with
    how = "how it was measured is not stated" if how == "unknown" else how
    alike = f", {w.quantity} alike" if w.quantity > 1 else ""
    lines = [
        f"{tables.material(w.material).name}, {w.blank if w.blank != 'unknown' else 'blank'}: {size}{alike}",
        f"bore {limits_echo(w.bore.limits, show)}"
        if w.bore.limits
        else f"bore {show.bore(w.bore.size)}, known to {band} either way ({how})",
    ]
    if w.finished.outside is not None:
        lines.append(f"to finish at {size_words(job, w.finished.outside, show)}")
    if w.finished.service_speed is not None:
        lines.append(f"in service at {show.spindle(w.finished.service_speed)}")
    return (*lines, *stated_words(job))


def have_ready(best: Weighed, shop: Shop, push: PushAdvice, by_hand: bool) -> tuple[str, ...]:
    """What to fetch before starting; `by_hand`: a twist of the hand is the proof load."""
    show, m = best.trial.show, best.trial.mandrel
    job = best.trial.job
    shelf, note = job.shelf, shop.notes_of.get(m.name)
    return (
        mandrel_words(m, note, show),
        f"{shop.press_name}, for about {show.force(push.expected.best)}",
        f"to support the hub: {ring_words(best.trial)}",
        *(lathe_words(shelf.machine) if turns(best.trial) else ()),
        dog_words(shelf, m, note, show)
        if job.driven_by == "dog"
        else f"{DRIVERS[job.driven_by]} for {show.length(m.end_diameter)}",
        "oil, rag, pencil, rule, micrometer, indicator",
        *(need.what for need in (best.trial.drive.needs if best.trial.drive else ())),
        *(() if by_hand else ("lever or cord and a known weight for the proof load",)),
        *loads_ready(best.trial),
    )


def assumed(job: Job, shop: Shop, best: Weighed | None, tables: Tables) -> tuple[Assumption, ...]:
    """Everything that was not stated, and what was taken."""
    show, w = Show(job.units), job.work
    said = list(shop.assumed)
    if best is not None:
        said += shop.assumed_of[best.trial.mandrel.name]
    unsaid = taken_as_sound(job)
    if unsaid:
        said.append(Assumption("the work", unsaid, "ours"))
    if best is not None and best.trial.hold.joint.healed:
        said.append(Assumption("the outline", "edges a hair apart as one", "ours"))
    known = half_band_of(job, tables)
    said += [
        Assumption("how well the bore is known", f"{show.small(known.size)} either way", source)
        for source in known.sources
        if w.bore.uncertainty is None
    ]
    if w.bore.made_by == "unknown":
        source = tables.roughness("unknown").source
        said.append(
            Assumption("how the bore was made", "something between reamed and bored", source)
        )
    if finished_outside(job, tables) is None:
        said.append(Assumption("finished size", "one cleaning cut, then a finishing cut", "ours"))
    if w.finished.tolerance is None:
        tolerance = tables.allowance("usual_tolerance")
        said.append(
            Assumption("tolerance of the outside", show.small(tolerance.best), tolerance.source)
        )
    if w.finished.runout is None:
        runout = tables.allowance("usual_runout")
        said.append(
            Assumption("runout of rim to bore", f"{show.small(runout.best)}, whole", runout.source)
        )
    turned = best is None or turns(best.trial)
    if turned and not job.shelf.machine.speeds:
        said.append(
            Assumption(
                "speeds of the lathe", "the speed wanted; take the next slower you have", "od1645"
            )
        )
    said += assumed_loads(job, best.trial.cuts if best else (), tables)
    if not job.pressed_before:
        loss = tables.allowance("roughness_loss")
        said.append(
            Assumption("pressing", "the first: the peaks of the bore still flatten", loss.source)
        )
    lubrication = "a wiped film of oil" if job.lubrication == "oiled" else "dry"
    said.append(
        Assumption(
            "bore and mandrel",
            lubrication,
            tables.friction(w.material, job.lubrication).mu_on.source,
        )
    )
    return tuple(said)
