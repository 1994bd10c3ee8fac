"""The numbers of a casting, each with its rule, what went in, and its sources."""

from __future__ import annotations

from collections.abc import Iterator
from math import pi

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
    if made.hole == 0.0 or limits is None:
        return
    step = tables.casting_fact(f"core_step_{made.units}")
    inputs = (
        Input("bore", limits.low, "m", "bore"),
        Input("stock", made.stock("bore"), "m", "depth"),
        Input("step", step.best, "m", "depth"),
    )
    name = "core_diameter" if made.core else "hole_in_sand"
    yield _length(name, made.hole, "core_size", inputs, (step.source,))


def _riser(made: MadeCasting, tables: Tables) -> Iterator[Figure]:
    riser = made.mould.riser
    share, over = (tables.casting_fact(n) for n in ("riser_share", "riser_over"))
    modulus = Input("modulus", made.mould.sections[0].modulus, "m", "depth")
    if riser.height == riser.diameter:
        inputs = Input("share", share.best, ""), Input("over", over.best, ""), modulus
        sources = share.source, over.source
        yield _length("riser_diameter", riser.diameter, "riser_size", inputs, sources)
    else:
        inputs = (
            Input("over", over.best, ""),
            modulus,
            Input("diameter", riser.diameter, "m", "length"),
        )
        yield _length("riser_height", riser.height, "riser_height", inputs, (over.source,))
    weight = (
        Input("density", made.density, "kg/m³"),
        Input("diameter", riser.diameter, "m", "length"),
        Input("height", riser.height, "m", "length"),
    )
    density = tables.material_range(made.material, "density").sources
    yield _weight("riser_weight", made.melt.riser, "riser_weight", weight, density)


def cope_lift(made: MadeCasting, tables: Tables) -> Figure:
    """Weight that the metal lifts the cope with."""
    head = tables.casting_fact("cope_head")
    inputs = (
        Input("density", made.density, "kg/m³"),
        Input("outside", made.outside, "m", "length"),
        Input("head", head.best, "m", "length"),
    )
    lift = made.density * pi / 4 * made.outside**2 * head.best
    return _weight("cope_lift", lift, "cope_lift", inputs, (head.source,))


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
    yield _poured(made, tables)
    yield cope_lift(made, tables)
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


def _poured(made: MadeCasting, tables: Tables) -> Figure:
    """The larger of what the yield and what the riser asks for."""
    melt, weight = made.melt, Input("weight", made.melt.casting, "kg")
    if melt.by_yield:
        inputs = weight, Input("yield", melt.yield_share, "")
        sources = tables.foundry_metal(made.material).yield_share.sources
        return _weight("poured_weight", melt.poured, "poured_weight", inputs, sources)
    sprue = tables.casting_fact("sprue_share")
    fed = weight, Input("riser", melt.riser, "kg"), Input("sprue", melt.sprue_share, "")
    return _weight("poured_weight", melt.poured, "poured_weight_fed", fed, (sprue.source,))


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
