"""Every way out of a wrong bore as plain text: the answer first, then each way in its order."""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite

from borewright.answer.records import Figure, Have, Need, Verdict
from borewright.answer.rescue import DrawingHolds, Rescue, WayOut
from borewright.errors import UnknownName
from borewright.quantities.show import Show
from borewright.reference import Tables
from borewright.report.explain import figures_text
from borewright.report.terminal import section
from borewright.report.words import citation, figure_words, show_minutes, spoken

MINUTE = 60.0
_DRAWING = {
    DrawingHolds.YES: "the drawing holds",
    DrawingHolds.ASK: "ask whoever drew it",
    DrawingHolds.NO: "the drawing no longer holds",
}


def rescue_text(rescue: Rescue, way: str = "") -> str:
    """The whole answer for a terminal, no line wider than 90 columns, ending in a newline.

    `way`: the id of the way whose steps are printed; left out, those of the first. UnknownName for
    one that is not there.
    """
    show = _show(rescue)
    chosen = _chosen(rescue, way)
    rows = (_row(n, w, show) for n, w in enumerate(rescue.ways_out, 1))
    parts = (
        ("", (rescue.title, rescue.headline)),
        ("", rescue.echo),
        ("Ways out, best first", rows),
        (f"How: {chosen.name}" if chosen else "", _numbered(chosen)),
        ("Sizes and figures of it", _sizes(chosen, show)),
        ("Cautions of it", chosen.cautions if chosen else ()),
        ("Cautions, worst first", (f"{c.text} ({citation(c.source)})" for c in rescue.cautions)),
        ("Order", (f"Ranked by {rescue.ranked_by}.", _other_steps(rescue, chosen))),
        ("Assumed", (f"{a.what}: {a.taken} ({citation(a.source)})" for a in rescue.assumed)),
        ("Sources", rescue.sources),
    )
    return "\n".join(line for heading, words in parts for line in section(heading, words))


def rescue_explained(rescue: Rescue, source_tables: Tables | None = None) -> str:
    """Every figure of every way as one pencil line, each way under its name."""
    show = _show(rescue)
    told = [figures_text(rescue.figures, show, source_tables)]
    for way in rescue.ways_out:
        figures = [f for f in (*way.figures, way.takes) if isfinite(f.best)]
        told.append(f"{way.name}\n{figures_text(figures, show, source_tables)}")
    return "\n".join(told)


def _show(rescue: Rescue) -> Show:
    return Show("mm" if rescue.units == "mm" else "inch")


def _chosen(rescue: Rescue, way: str) -> WayOut | None:
    if not way:
        return next((w for w in rescue.ways_out if w.steps), None)
    found = rescue.way(way)
    if found is None:
        raise UnknownName("--way", way, tuple(w.id for w in rescue.ways_out))
    return found


def _row(number: int, way: WayOut, show: Show) -> str:
    facts = [_time(way), *_judged(way, show), _DRAWING[way.drawing], *_needs(way.needs)]
    return f"{number}. {way.name} [{way.id}]: {way.verdict}. {way.reason} ({'; '.join(facts)})"


def _time(way: WayOut) -> str:
    minutes = way.takes.best / MINUTE
    return f"about {show_minutes(minutes)}" if isfinite(minutes) else "time not known"


def _judged(way: WayOut, show: Show) -> Iterator[str]:
    if way.verdict is Verdict.NO:
        return
    if way.runout is not None:
        yield f"runs out about {show.small(way.runout.best)}"
    if way.strength is not None and isfinite(way.strength.best):
        yield f"strength {show.ratio(way.strength.best)} times what is asked"


def _needs(needs: tuple[Need, ...]) -> Iterator[str]:
    for have, said in ((Have.MAKE, "to make"), (Have.BUY, "to buy")):
        what = [n.what for n in needs if n.have is have]
        if what:
            yield f"{said}: {', '.join(what)}"


def _numbered(way: WayOut | None) -> Iterator[str]:
    for n, step in enumerate(way.steps if way else (), 1):
        yield f"{n}. {step}"


def _sizes(way: WayOut | None, show: Show) -> tuple[str, ...]:
    if way is None:
        return ()
    said = "; ".join(f"{spoken(f.name)} {_figure(f, show)}" for f in way.figures)
    return (f"{said}." if said else "", way.drawing_why)


def _figure(figure: Figure, show: Show) -> str:
    """Limits where the figure is a size to make, else as every figure is shown."""
    if figure.kind == "bore" and figure.low is not None and figure.high is not None:
        return show.band(figure.low, figure.high, "bore")
    return figure_words(figure, show)


def _other_steps(rescue: Rescue, chosen: WayOut | None) -> str:
    others = [w.id for w in rescue.ways_out if w.steps and w is not chosen]
    return f"The steps of the others: --way {' | '.join(others)}." if others else ""
