"""All papers of a mandrel to be made: route sheet, acceptance sheet, numbers."""

from __future__ import annotations

from borewright.answer.made_mandrel import MadeMandrel
from borewright.answer.papers import Grid, Papers, Route, Said, Sheet, Warned
from borewright.making.cautioned import cautioned
from borewright.making.mandrel.accepted import acceptance_sheet
from borewright.making.mandrel.figures import mandrel_figures
from borewright.making.mandrel.route_finish import last_steps
from borewright.making.mandrel.route_hard import hard_steps
from borewright.making.mandrel.route_start import first_steps
from borewright.making.mandrel.words import hardness_words, planes_words, takes_words
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.reference.mandrels import PlainMandrel, mandrel_of


def mandrel_papers(made: MadeMandrel, tables: Tables, first: tuple[str, ...] = ()) -> Papers:
    """The papers; `first` are lines said before all others, such as what it is made for."""
    show = Show(made.units)
    title = f"Mandrel {made.stamp}{' in' if made.units == 'inch' else ' mm'}"
    if not made.fits:
        return Papers(title, f"No: {made.why}", made.units, ())
    return Papers(
        title,
        _headline(made, show),
        made.units,
        (
            _route(made, show, tables, first),
            acceptance_sheet(made, show),
        ),
        mandrel_figures(made, tables),
    )


def _headline(made: MadeMandrel, show: Show) -> str:
    form, stock = made.form, made.stock
    how = "ground" if made.grinder else "turned with the tailstock set over"
    care = f"With care: {'; '.join(made.care)}. " if made.care else ""
    return care + (
        f"{show.length(form.overall_length)} of {stock.bar.size} {stock.steel.name}, "
        f"{hardness_words(stock.steel)}, {how} to {planes_words(made)}. {takes_words(made, show)}"
    )


def _route(made: MadeMandrel, show: Show, tables: Tables, first: tuple[str, ...]) -> Sheet:
    steps = (
        *first_steps(made, show, tables),
        *hard_steps(made, show, tables),
        *last_steps(made, show, tables),
    )
    said = (*first, *made.notes)
    return Sheet(
        "Route",
        (
            *((Said("Before all", said),) if said else ()),
            _cautions(made, tables),
            Route("Steps", steps),
            _chart(made, show, tables),
        ),
    )


def _cautions(made: MadeMandrel, tables: Tables) -> Warned:
    tags = ["making-mandrel"]
    tags += ["hot-work"] if made.stock.steel.hard else []
    tags += ["quench-oil"] if made.stock.steel.medium == "oil" else []
    tags += ["grinder"] if made.grinder else ["file-and-emery"]
    return cautioned(tables, *tags)


def _chart(made: MadeMandrel, show: Show, tables: Tables) -> Grid:
    """The chart of proportions around this size, with the source of each column's figures."""
    name = "plain_mandrels" if made.units == "inch" else "plain_mandrels_metric"
    sizes = sorted(row.number("nominal") for row in tables.table(name).rows)
    near = sorted(sorted(sizes, key=lambda s: abs(s - made.row.nominal))[:5])
    rows = [mandrel_of(tables.table(name), size) for size in near]
    sources = dict.fromkeys(source for row in (*rows, made.row) for source in row.sources)
    said = "; ".join(f"{s}: {tables.source(s).citation}" for s in sources)
    return Grid(
        "Proportions by size",
        ("size", "overall", "taper's length", "ends", "each end", "small end under size", "taper"),
        tuple(_row(row, made.row.nominal, show) for row in rows),
        (
            f"From {said}.",
            made.row.note.capitalize() if made.row.note else "Sets vary; trade sets run longer.",
        ),
    )


def _row(row: PlainMandrel, nominal: Metre, show: Show) -> tuple[str, ...]:
    def short(words: str) -> str:
        return words.partition(" (")[0]

    mark = " (this one)" if abs(row.nominal - nominal) < 1e-9 else ""
    return (
        short(show.length(row.nominal)) + mark,
        short(show.length(row.overall_length)),
        short(show.length(row.ground_length)),
        short(show.length(row.end_diameter)),
        short(show.length(row.end_length)),
        short(show.small(row.nominal - row.small_end)),
        short(show.taper(row.taper)),
    )
