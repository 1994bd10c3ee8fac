"""The numbers of a casting, each with its rule, what went in, and its sources."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.figure import Figure, Input
from borewright.answer.made_casting import MadeCasting
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


def casting_figures(made: MadeCasting, tables: Tables) -> tuple[Figure, ...]:
    """Every figure that the papers print as a pencil line."""
    return (
        *_sizes(made),
        *_shrinkage(made),
        *_core(made, tables),
        *_riser(made, tables),
        *_weights(made, tables),
    )


def _sizes(made: MadeCasting) -> Iterator[Figure]:
    wheel = made.wheel
    pairs = (
        ("outside", wheel.outside, made.outside, "outside"),
        ("length", wheel.length, made.length, "face A"),
    )
    for name, finished, cast, face in pairs:
        stock = next(s for s in made.stocks if s.face == face)
        inputs = (
            Input("finished", finished, "m", "length"),
            Input("stock", stock.taken, "m", "depth"),
        )
        sources = stock.said.sources if stock.said else ()
        yield _length(f"casting_{name}", cast, "cast_size", inputs, sources)
        yield _length(
            f"pattern_{name}", made.pattern(cast), "pattern_size", _to_pattern(made, cast)
        )


def _to_pattern(made: MadeCasting, cast: Metre) -> tuple[Input, ...]:
    return Input("casting", cast, "m", "length"), Input("shrinkage", made.shrink.taken, "")


def _shrinkage(made: MadeCasting) -> Iterator[Figure]:
    shrink = made.shrink
    if shrink.by == "middle of the books":
        ends = Input("least", shrink.low, ""), Input("most", shrink.high, "")
        yield Figure("shrinkage", shrink.taken, "", formula="shrinkage_middle", inputs=ends)


def _core(made: MadeCasting, tables: Tables) -> Iterator[Figure]:
    limits = made.wheel.bore.limits
    if made.core is None or limits is None:
        return
    step = tables.casting_fact(f"core_step_{made.units}")
    inputs = (
        Input("bore", limits.low, "m", "bore"),
        Input("stock", made.stock("bore"), "m", "depth"),
        Input("step", step.best, "m", "depth"),
    )
    yield _length("core_diameter", made.core.diameter, "core_size", inputs, (step.source,))


def _riser(made: MadeCasting, tables: Tables) -> Iterator[Figure]:
    share, over = (tables.casting_fact(n) for n in ("riser_share", "riser_over"))
    inputs = (
        Input("share", share.best, ""),
        Input("over", over.best, ""),
        Input("modulus", made.mould.sections[0].modulus, "m", "depth"),
    )
    yield _length(
        "riser_diameter", made.mould.riser, "riser_size", inputs, (share.source, over.source)
    )


def _weights(made: MadeCasting, tables: Tables) -> Iterator[Figure]:
    melt, metal = made.melt, tables.foundry_metal(made.material)
    density = tables.material_range(made.material, "density")
    yield _weight(
        "casting_weight",
        melt.casting,
        "cast_weight",
        (Input("density", made.density, "kg/m³"), Input("volume", made.volume, "m³")),
        density.sources,
    )
    poured = Input("weight", melt.casting, "kg"), Input("yield", melt.yield_share, "")
    yield _weight("poured_weight", melt.poured, "poured_weight", poured, metal.yield_share.sources)
    charge = (
        Input("poured", melt.poured, "kg"),
        Input("castings", melt.tries, ""),
        Input("loss", melt.loss, ""),
    )
    yield _weight("charge_weight", melt.charge, "charge_weight", charge, metal.loss.sources)
    chance = (
        Input("wanted", melt.wanted, ""),
        Input("spare", melt.tries - melt.wanted, ""),
        Input("scrap", melt.scrap, ""),
    )
    yield Figure("chance_enough", melt.chance, "", formula="chance_enough", inputs=chance)


def _length(
    name: str, size: Metre, formula: str, inputs: tuple[Input, ...], sources: tuple[str, ...] = ()
) -> Figure:
    found = tuple(dict.fromkeys(sources))
    return Figure(name, size, "m", formula=formula, inputs=inputs, sources=found, kind="length")


def _weight(
    name: str, mass: float, formula: str, inputs: tuple[Input, ...], sources: tuple[str, ...]
) -> Figure:
    found = tuple(dict.fromkeys(sources))
    return Figure(name, mass, "kg", formula=formula, inputs=inputs, sources=found)
