"""The sentence that comes first, what was found said back, cautions, assumptions, sources."""

from __future__ import annotations

from borewright.answer.records import Assumption, Caution, Verdict
from borewright.answer.rescue import DrawingHolds, WayOut
from borewright.holding.bores.bore_reading import half_band_of
from borewright.planning.rescue.case import CRACKED, Case
from borewright.planning.rescue.entry import capital, general_cautions, joined
from borewright.planning.rescue.ranked import best_of, keeps
from borewright.planning.rescue.wanted import Whose
from borewright.planning.taper.soundness import stated_words
from borewright.planning.words.cautions import held_cautions

STOP = (
    "Stop: do not press it, do not spin it. A crack is suspected, and no sum says at what push or speed it opens. Look for it "
    "first; until then nothing here is a yes."
)


def headline(case: Case, ways: tuple[WayOut, ...]) -> str:
    """The answer in a few sentences: what is found, and the way that comes first."""
    if case.has(CRACKED):
        return STOP
    found = found_words(case)
    best = best_of(ways)
    if best is None:
        return f"No: {found} Nothing here saves it: {ways[-1].name}."
    lead = {Verdict.YES: "Yes", Verdict.CARE: "With care"}[best.verdict]
    asks = _drawing_words(best)
    others = [w.name for w in ways if w.verdict is Verdict.YES and w is not best and keeps(w)][:2]
    also = f" Also: {'; '.join(others)}." if others else ""
    do_it = f"{capital(best.name)}: {best.reason[:1].lower()}{best.reason[1:]}"
    first = (_measure_first(case), too_close(case))
    return joined((f"{lead}: {found}", *first, do_it, asks)) + also


def too_close(case: Case) -> str:
    """That a reading lies too near a limit for what the gauge knows; empty where it does not."""
    known, wanted, found = half_band_of(case.job, case.tables).size, case.wanted, case.found
    top = found.least if wanted.whose is Whose.MANDREL else found.largest
    if wanted.whose is Whose.STATED:
        return ""
    near = min(abs(found.least - wanted.low), abs(top - wanted.high))
    if near >= known:
        return ""
    return (
        f"It is known to {case.show.small(known)} either way, and {case.show.small(near)} from the limit: measure it again with a "
        "better gauge before anything is cut or thrown away."
    )


def _measure_first(case: Case) -> str:
    """What to measure where a fault of form was only said."""
    how = {
        "oval": "in two directions",
        "tapered": "at both ends",
        "bell-mouthed": "at both ends and the middle",
        "barrelled": "at both ends and the middle",
    }
    asked = [how[name] for name in case.unmeasured()]
    return (
        f"By how much was not said: measure it {', '.join(asked)}, and ask again." if asked else ""
    )


def _drawing_words(best: WayOut) -> str:
    return {
        DrawingHolds.YES: "",
        DrawingHolds.ASK: "Ask whoever drew it.",
        DrawingHolds.NO: "The drawing no longer holds.",
    }[best.drawing]


def found_words(case: Case) -> str:
    """What is wrong, as one sentence."""
    if not case.trouble:
        size = case.show.bore(case.found.least)
        return f"nothing is wrong with it: {size}, inside {case.wanted.said}."
    said = "; ".join(t.said for t in case.trouble)
    return f"{said}."


def echo(case: Case) -> tuple[str, ...]:
    """What was understood."""
    show, work, tables = case.show, case.job.work, case.tables
    size = f"{show.length(work.outside)} outside, {show.length(work.length)} long"
    known = show.small(half_band_of(case.job, tables).size)
    read = [f"{show.bore(r.size)} at {show.length(r.depth)}" for r in work.bore.readings] or [
        show.bore(work.bore.size)
    ]
    return (
        f"{tables.material(work.material).name}, {work.blank if work.blank != 'unknown' else 'blank'}: {size}, hub "
        f"{show.length(case.hub_outside)}",
        f"bore as found: {', '.join(read)}; known to {known} either way",
        f"wanted: {case.wanted.said}",
        *stated_words(case.job),
    )


def rescue_cautions(case: Case) -> tuple[Caution, ...]:
    """Hazards of this work whichever way is taken, worst first; a doubt before most others."""
    if case.has(CRACKED):
        return held_cautions(case.job, ("chuck", "doubt"), case.tables)
    return general_cautions(case)


def assumed(case: Case, named: tuple[str, ...]) -> tuple[Assumption, ...]:
    """What nobody stated; `named`: the needs that were taken as owned."""
    said = [Assumption(what, "taken as owned", "ours") for what in named]
    if case.job.work.bore.uncertainty is None:
        known = half_band_of(case.job, case.tables)
        taken = f"{case.show.small(known.size)} either way"
        said += [Assumption("how well the bore is known", taken, s) for s in known.sources]
    if case.wanted.whose is not Whose.DRAWING:
        said.append(Assumption("the bore wanted", case.wanted.said, "ours"))
    said.append(Assumption("times", "for this one piece, guesses", "ours"))
    return tuple(said)


def sources(case: Case, ways: tuple[WayOut, ...]) -> tuple[str, ...]:
    """Every source that a figure stands on, cited."""
    figures = [f for w in ways for f in (*w.figures, w.takes)]
    ids = {s for f in figures for s in f.sources} | {"ours", "practice"} | set(case.wanted.sources)
    ids |= {case.tables.formula(f.formula).source for f in figures if f.formula}
    ids.discard("stated")
    return tuple(f"{i}: {case.tables.source(i).citation}" for i in sorted(ids))
