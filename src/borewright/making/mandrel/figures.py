"""The numbers of a mandrel to be made, each with its rule, what went in, and its sources."""

from __future__ import annotations

from borewright.answer.figure import Figure, Input
from borewright.answer.made_mandrel import MadeMandrel
from borewright.reference.library import Tables


def mandrel_figures(made: MadeMandrel, tables: Tables) -> tuple[Figure, ...]:
    """Every figure that the papers print as a pencil line."""
    return (*_stock(made, tables), *_setting(made, tables), *_window(made))


def _stock(made: MadeMandrel, tables: Tables) -> tuple[Figure, ...]:
    form, stock, fact = made.form, made.stock, tables.making_fact
    names = ("grinding_stock_base", "grinding_stock_per_diameter", "grinding_stock_per_length")
    base, per_d, per_l = (fact(name) for name in names)
    old = fact("grinding_stock_old")
    scaled = Figure(
        "grinding_stock_by_size",
        stock.scaled,
        "m",
        formula="grinding_stock_by_size",
        inputs=(
            Input("base", base.best, "m", "small"),
            Input("by diameter", per_d.best, ""),
            Input("diameter", form.nominal, "m", "bore"),
            Input("by length", per_l.best, ""),
            Input("length", form.overall_length, "m", "length"),
        ),
        sources=(base.source,),
        kind="depth",
    )
    rest = fact("bend_share")
    bend = Figure(
        "bend_before_grinding",
        stock.bend_most,
        "m",
        formula="bend_before_grinding",
        inputs=(Input("share", rest.best, ""), Input("stock", stock.taken, "m", "depth")),
        sources=(rest.source,),
        kind="small",
    )
    if not made.grinder:
        return ()
    return (
        Figure("grinding_stock_old", stock.old, "m", sources=(old.source,), kind="depth"),
        scaled,
        bend,
    )


def _setting(made: MadeMandrel, tables: Tables) -> tuple[Figure, ...]:
    form, s = made.form, made.settings
    taper = Input("taper", form.taper, "m/m", "taper")
    differ = Figure(
        "planes_differ",
        s.planes_differ,
        "m",
        formula="planes_differ",
        inputs=(taper, Input("apart", form.apart, "m", "length")),
        kind="small",
    )
    if not made.grinder:
        over = Figure(
            "tailstock_set_over",
            s.set_over,
            "m",
            formula="tailstock_set_over",
            inputs=(taper, Input("between centers", s.between, "m", "length")),
            kind="small",
        )
        return (over, differ)
    angle = Figure(
        "table_angle", s.table_angle, "rad", formula="table_angle", inputs=(taper,), kind="angle"
    )
    rise = Figure(
        "table_reading",
        s.rise,
        "m",
        formula="table_reading",
        inputs=(taper, Input("base", s.base, "m", "length")),
        kind="small",
    )
    return (angle, rise, differ)


def _window(made: MadeMandrel) -> tuple[Figure, ...]:
    if made.takes is None:
        return ()
    form, held = made.form, made.held
    places = (held.low_at, held.high_at(form.ground_length))
    ends = zip(
        ("smallest_bore_taken", "largest_bore_taken"), made.takes, places, (1, 0), strict=True
    )
    return tuple(
        Figure(
            name,
            bore,
            "m",
            formula=name,
            inputs=(
                Input("near B", form.zone.near_small[which], "m", "bore"),
                Input("near A", _at_a(made, which, place), "m", "bore"),
                Input("share", (place - form.zone.at_small) / form.apart, ""),
            ),
            kind="bore",
        )
        for name, bore, place, which in ends
    )


def _at_a(made: MadeMandrel, which: int, place: float) -> float:
    """The limit at A that rules: the other one where the place lies beyond B."""
    beyond = place < made.form.zone.at_small
    return made.form.zone.near_large[1 - which if beyond else which]
