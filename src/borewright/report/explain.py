"""Every figure of a plan as a pencil line: rule, numbers in, number out, source, weakness."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from textwrap import fill

from borewright.answer.plan import Plan
from borewright.answer.records import Figure
from borewright.errors import UnknownName
from borewright.quantities.show import Show
from borewright.reference import Formula, Tables, tables
from borewright.report.bore_route_words import route_figures
from borewright.report.words import citation, figure_words, show_for, spoken

WIDTH = 90


def explain_text(plan: Plan, source_tables: Tables | None = None) -> str:
    """One paragraph a figure, each figure once, ending in a newline.

    `source_tables` are the tables to read formulas from; left out, the ones in use. A formula id
    that no table knows is printed as it is: a figure is never dropped.
    """
    return figures_text(plan_figures(plan), show_for(plan), source_tables)


def figures_text(figures: Iterable[Figure], show: Show, source_tables: Tables | None = None) -> str:
    """One paragraph a figure, in their order, ending in a newline."""
    known = source_tables or tables()
    lines = (_line(figure, known, show) for figure in figures)
    return "".join(fill(line, WIDTH, subsequent_indent="    ") + "\n" for line in lines)


def plan_figures(plan: Plan) -> tuple[Figure, ...]:
    """All figures of a plan in reading order, each once, as its question has it."""
    first: dict[tuple[str, float], Figure] = {}
    for figure in _every(plan):
        first.setdefault((figure.name, figure.best), figure)
    return tuple(first.values())


def _every(plan: Plan) -> Iterator[Figure]:
    yield from plan.figures
    for question in plan.questions:
        yield from question.figures
    if plan.push:
        push = plan.push
        yield from (push.expected, push.look_for, push.stop_at, push.proves_torque)
    for step in plan.steps:
        yield from step.figures
    yield from route_figures(plan.bore_route)
    if plan.first_hold:
        yield from plan.first_hold.figures
        for step in plan.first_hold.steps:
            yield from step.figures
    for change in plan.changes:
        yield from (change.depth_before, change.depth_after, change.time)


def _line(figure: Figure, known: Tables, show: Show) -> str:
    formula = _formula(figure, known)
    parts = [f"{spoken(figure.name)} = {figure_words(figure, show)}", _rule(figure, formula)]
    if figure.inputs:
        values = (f"{i.label} {show.pencil(i.value, i.unit, i.kind)}" for i in figure.inputs)
        parts.append(f"in: {', '.join(values)}")
    parts.append(f"source: {_sources(figure, formula)}")
    parts.append(f"weak: {formula.weakness}" if formula and formula.weakness else "")
    return "; ".join(part.rstrip(".") for part in parts if part) + "."


def _formula(figure: Figure, known: Tables) -> Formula | None:
    try:
        return known.formula(figure.formula) if figure.formula else None
    except UnknownName:
        return None


def _rule(figure: Figure, formula: Formula | None) -> str:
    if formula:
        return f"rule: {formula.rule}"
    return f"rule: {figure.formula}" if figure.formula else ""


def _sources(figure: Figure, formula: Formula | None) -> str:
    ids = [*([formula.source] if formula else []), *figure.sources]
    if not ids:
        return "none stated" if figure.formula else "as stated or chosen"
    return ", ".join(dict.fromkeys(citation(source) for source in ids))
