"""The sheet of melt and spares: weights, heats, how many to pour, what to know of the metal."""

from __future__ import annotations

from borewright.answer.made_casting import MadeCasting
from borewright.answer.papers import Grid, Said, Sheet
from borewright.mechanics.spares import chance_enough
from borewright.quantities.show import Show
from borewright.reference.library import Tables


def melt_sheet(made: MadeCasting, show: Show, tables: Tables) -> Sheet:
    """The sheet that stands by the furnace."""
    melt, metal = made.melt, tables.foundry_metal(made.material)
    rows = (
        ("one casting, as sawn off", show.weight(melt.casting)),
        ("its riser", show.weight(melt.riser) if melt.riser else "none"),
        (f"poured for one, {_by(made)}", show.weight(melt.poured)),
        (f"poured for {melt.tries}", show.weight(melt.poured * melt.tries)),
        (f"to melt, {melt.loss:.0%} lost", show.weight(melt.charge)),
    )
    low, high = metal.yield_share.low, metal.yield_share.high
    return Sheet(
        "Melt and spares",
        (
            Grid("Weights", ("of", "weight"), rows, (f"Yield runs from {low:.0%} to {high:.0%}; fillets are left out of the sum.",)),
            Said("Heats", (_heats(made, show, tables),)),
            Said("Spares", _spares(made, tables)),
            Said("This metal", (metal.note, *_other_alloy(made, tables))),
            Grid("Count kept", ("heat", "date", "poured", "good", "what spoiled the rest"), tuple((str(n), "", "", "", "") for n in (1, 2, 3))),
        ),
    )  # fmt: skip


def _by(made: MadeCasting) -> str:
    """Which of the two rules asks for more."""
    melt = made.melt
    if melt.by_yield:
        fed = "casting and riser come" if melt.riser else "the casting comes"
        return f"by a yield of {melt.yield_share:.0%}, which is more than {fed} to"
    return f"casting and riser and {melt.sprue_share:.0%} for the sprue, more than a yield of {melt.yield_share:.0%} gives"


def _heats(made: MadeCasting, show: Show, tables: Tables) -> str:
    crucible = tables.casting_fact("crucible_most")
    most = f"a crucible of {show.weight(crucible.best)} ({tables.source(crucible.source).citation})"
    if made.melt.heats == 0:
        return f"One mould takes more than {most}: no work for one crucible lifted by hand. Have it cast."
    if made.melt.heats == 1:
        return f"All of it goes into {most}: one heat."
    return f"At {most}, and each mould filled from one crucible, {made.melt.heats} heats: weigh the charge of each, and mark the castings by heat."


def _spares(made: MadeCasting, tables: Tables) -> tuple[str, ...]:
    melt, scrap = made.melt, tables.foundry_metal(made.material).scrap
    less = (
        f", {melt.tries - 1} only {100 * _one_less(made):.0f}" if melt.tries > melt.wanted else ""
    )
    return (
        f"For {melt.wanted} good, pour {melt.tries}: with {melt.scrap:.0%} scrap that is enough {100 * melt.chance:.0f} times in 100{less}; "
        f"{100 * melt.sure:.0f} was wanted. That is for castings that fail each by itself; castings of one heat fail together, so "
        "that a bad heat wants all of them again.",
        f"Scrap in a shop that casts now and then: {scrap.low:.0%} to {scrap.high:.0%} ({tables.source(scrap.source).citation}); `--scrap` "
        "takes the shop's own count.",
    )  # fmt: skip


def _one_less(made: MadeCasting) -> float:
    return chance_enough(made.melt.wanted, made.melt.tries - 1, made.melt.scrap)


def _other_alloy(made: MadeCasting, tables: Tables) -> tuple[str, ...]:
    other = tables.not_for_casting(made.material)
    if other is None:
        return ()
    near = tables.material(other.instead).name
    return (
        f"The job says {tables.material(made.material).name}. {other.note} Near it and made to be cast: {near} "
        f"({tables.source(other.source).citation}).",
    )
