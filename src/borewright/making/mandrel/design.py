"""A mandrel to be made, whole: form, stock, settings, and whether one takes the bores asked for."""

from __future__ import annotations

from math import pi
from typing import Final

from borewright.answer.made_mandrel import (
    MadeMandrel,
    MandrelForm,
    MandrelSettings,
    MandrelStock,
)
from borewright.errors import RefusedInput
from borewright.making.mandrel.asked import MandrelAsked
from borewright.making.mandrel.care import care_of
from borewright.making.mandrel.form import Chosen, form_of, held_for, longest_of, row_for
from borewright.making.shop_sizes import to_rule
from borewright.mechanics.fine_angle import angle_of_taper
from borewright.mechanics.mandrel_zone import Band, Held
from borewright.mechanics.parallel import set_over
from borewright.mechanics.taper import bore_window
from borewright.quantities.inch_fractions import mixed_text, sixty_fourth
from borewright.quantities.show import Show, inch_number
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.reference.making import Steel

SEVERAL: Final = "`borewright make set` says how many share them."

BASE: Final[dict[str, Metre]] = {"inch": 0.254, "mm": 0.25}
"""Along the grinder's table: what an indicator is run over."""

HARD_STEEL: Final = "tool-steel-o1"
SOFT_STEEL: Final = "steel-4140"
"""Taken where no steel is stated: with a grinder, without one (ours)."""


def made_mandrel(asked: MandrelAsked, tables: Tables) -> MadeMandrel:
    """The mandrel. RefusedInput for a steel that wants a grinder where there is none.

    >>> from borewright.reference import tables
    >>> made = made_mandrel(MandrelAsked(nominal=0.015875, units="inch"), tables())
    >>> made.stamp, round(made.settings.set_over / 0.0254, 5)
    ('5/8', 0.00125)
    """
    steel = _steel(asked, tables)
    row = row_for(_size(asked), tables, asked.units)
    held = held_for(asked, row, tables)
    chosen = form_of(asked, row, held, tables)
    form = chosen.form
    takes = form.zone.takes(held, form.ground_length)
    middle = _takes_middle(form, held)
    stock = _stock(form, steel, asked, tables)
    why = _why_not(asked, chosen, held, takes, tables)
    return MadeMandrel(
        asked.units,
        _stamp(row.nominal, asked),
        form,
        stock,
        _settings(form, asked, tables),
        asked.grinder,
        held,
        row,
        asked.bores,
        takes,
        middle,
        not why,
        why,
        care_of(form, stock, asked, middle, row, tables),
        _notes(form, asked),
    )


def _takes_middle(form: MandrelForm, held: Held) -> Band | None:
    """The bores that a mandrel in the middle of its limits takes."""
    low, high = bore_window(
        form.small_end,
        form.taper,
        held.length,
        form.ground_length,
        held.travel,
        held.free_small,
        held.free_large,
    )
    return (float(low), float(high)) if low < high else None


def _size(asked: MandrelAsked) -> Metre:
    """As stated, else the middle of the bores."""
    if asked.nominal is not None:
        return asked.nominal
    if asked.bores is None:
        raise RefusedInput("mandrel", "neither a size nor a bore", "one of them")
    return sum(asked.bores) / 2


def _stamp(nominal: Metre, asked: MandrelAsked) -> str:
    """The size as it is stamped: a fraction or a decimal of an inch, or mm with its unit."""
    if asked.units == "inch":
        inches = inch_number(nominal)
        fraction = sixty_fourth(inches)
        return mixed_text(fraction) if fraction else f"{inches:.4f}"
    return f"{1000 * nominal:.3f}".rstrip("0").rstrip(".")


def _steel(asked: MandrelAsked, tables: Tables) -> Steel:
    steel = tables.mandrel_steel(asked.steel or (HARD_STEEL if asked.grinder else SOFT_STEEL))
    if steel.hard and not asked.grinder:
        found = f"{steel.id}, which is hardened, and no grinder to finish it"
        allowed = f"a steel left as it is, such as {SOFT_STEEL}, or a grinder"
        raise RefusedInput("steel", found, allowed)
    return steel


def _stock(form: MandrelForm, steel: Steel, asked: MandrelAsked, tables: Tables) -> MandrelStock:
    fact = tables.making_fact
    old, scaled = fact("grinding_stock_old").best, scaled_stock(form, tables)
    taken = scaled if asked.grinder else fact("turning_stock").best
    largest = form.zone.ends(form.ground_length)[1]
    rough = largest + taken
    bar = tables.bar_for(rough + fact("bar_over").best, asked.units)
    length = form.overall_length + 2 * to_rule(fact("face_stock").best, asked.units)
    density = tables.material_range(steel.material, "density").best
    mass = density * pi / 4 * bar.diameter**2 * length
    bend = fact("bend_share").best * taken
    return MandrelStock(steel, bar, length, old, scaled, taken, rough, bend, mass)


def scaled_stock(form: MandrelForm, tables: Tables) -> Metre:
    """Stock for grinding (m on diameter) that grows with thickness and length."""
    fact = tables.making_fact
    return (
        fact("grinding_stock_base").best
        + fact("grinding_stock_per_diameter").best * form.nominal
        + fact("grinding_stock_per_length").best * form.overall_length
    )


def _settings(form: MandrelForm, asked: MandrelAsked, tables: Tables) -> MandrelSettings:
    base = BASE[asked.units]
    return MandrelSettings(
        table_angle=float(angle_of_taper(form.taper)),
        base=base,
        rise=base * form.taper / 2,
        set_over=float(set_over(form.taper, form.overall_length)),
        between=form.overall_length,
        planes_differ=form.taper * form.apart,
        runout=tables.making_fact("runout_ground" if asked.grinder else "runout_turned").best,
    )


def _why_not(
    asked: MandrelAsked, chosen: Chosen, held: Held, takes: Band | None, tables: Tables
) -> str:
    """Why one mandrel does not do; empty where it does."""
    show, form = Show(asked.units), chosen.form
    longest = longest_of(asked, tables)
    if form.overall_length > longest + 1e-9:
        return (
            f"It would be {show.length(form.overall_length)} long, and {show.length(longest)} is "
            f"the longest {'stated' if asked.longest else 'taken for a small shop'}. {SEVERAL if asked.bores else ''}".rstrip()
        )
    if form.taper * form.apart <= form.tolerance * (1 + 1e-9):  # A less B could be nothing, or less
        return (
            f"Between its planes it tapers {show.small(form.taper * form.apart)} only, and its limits are "
            f"{show.small(form.tolerance)} wide: within them it might as well be parallel. Make it longer, or grind it."
        )
    if _takes_middle(form, held) is None:
        return (
            "Its ground length leaves no room for this bore, its travel, tool and dog: make it "
            "longer, or press less far."
        )
    if asked.bores and takes is None:
        return (
            f"Its limits, {show.small(form.tolerance)} wide, are wider than what so short a taper "
            "takes: make it longer, or hold it closer."
        )
    if (
        asked.bores
        and takes
        and not (takes[0] <= asked.bores[0] + 1e-12 and asked.bores[1] <= takes[1] + 1e-12)
    ):
        needed = f" It would need {show.length(chosen.needed)} of taper." if chosen.needed else ""
        return (
            f"At its limits it takes {show.band(*takes, 'bore')} only, not the whole of "
            f"{show.band(*asked.bores, 'bore')}.{needed} {SEVERAL}"
        )
    return ""


def _notes(form: MandrelForm, asked: MandrelAsked) -> tuple[str, ...]:
    """What a careful maker would say beside it."""
    said = []
    if form.center is None:
        said.append(
            "Its ends are too thin for any center of the series: turn a 60 degree point on both "
            "ends and run it in hollow centers."
        )
    elif form.center.bell is None and form.center.series != "inch-bell":
        said.append(
            "Its ends are too thin for a protected center: keep a cap over them on the shelf."
        )
    if asked.units == "mm":
        said.append("1:2000 is what inch sets have; it is no metric standard.")
    return tuple(said)
