"""Why a mandrel is made with care, or better not at all: too thin, too heavy, too thick, off its size."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.made_mandrel import MandrelForm, MandrelStock
from borewright.making.mandrel.asked import MandrelAsked
from borewright.mechanics.mandrel_zone import Band
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.reference.mandrels import PlainMandrel


def care_of(
    form: MandrelForm,
    stock: MandrelStock,
    asked: MandrelAsked,
    takes: Band | None,
    row: PlainMandrel,
    tables: Tables,
) -> tuple[str, ...]:
    """Every reason, worst first; none for an everyday mandrel."""
    return (
        *_thin(form, asked, row, tables),
        *_heavy(form, stock, asked, tables),
        *_own_size(form, asked, takes),
        *_cut_short(form, asked, row),
    )


def _thin(
    form: MandrelForm, asked: MandrelAsked, row: PlainMandrel, tables: Tables
) -> Iterator[str]:
    times = form.overall_length / form.nominal
    usual = max(tables.making_fact("too_thin").best, 1.01 * row.overall_length / row.nominal)
    if times <= usual:
        return
    show = Show(asked.units)
    yield (
        f"it is {times:.0f} times as long as it is thick: it bends in the quench, under the wheel and under "
        "the work's own cut"
    )
    if asked.unsure:
        yield (
            f"most of that length is there because the bore is known to {show.small(asked.unsure)} either way only: "
            "measure it first, by plug or bore gauge, and a shorter one does"
        )


def _heavy(
    form: MandrelForm, stock: MandrelStock, asked: MandrelAsked, tables: Tables
) -> Iterator[str]:
    show = Show(asked.units)
    if stock.mass > tables.making_fact("heavy").best:
        yield (
            f"the blank weighs {show.weight(stock.mass)}: for a bore this wide a plate with a spigot, the faceplate "
            "or a stub on a backplate is less work, and `borewright plan` weighs them"
        )
    thick = tables.making_fact("thick")
    if stock.steel.treatment == "through" and form.large_end > thick.best:
        yield (
            f"over {show.length(thick.best)} this steel hardens only near its skin, and cracks more easily: a soft "
            "body with a hard sleeve, or case hardening"
        )


def _own_size(form: MandrelForm, asked: MandrelAsked, takes: Band | None) -> Iterator[str]:
    """A mandrel asked for by its size that does not take that very size, in the middle of its limits."""
    if asked.nominal is None or takes is None or takes[0] <= form.nominal <= takes[1]:
        return
    show = Show(asked.units)
    yield (
        f"a bore of {show.bore(form.nominal)} itself it does not take, only {show.band(*takes, 'bore')}: longer, "
        "pressed less far, or with shorter work it would"
    )


def _cut_short(form: MandrelForm, asked: MandrelAsked, row: PlainMandrel) -> Iterator[str]:
    if asked.overall_length is None and form.overall_length < row.overall_length - 1e-6:
        show = Show(asked.units)
        yield (
            f"the chart would have it {show.length(row.overall_length)} long; it is cut to "
            f"{show.length(form.overall_length)}, the longest that can be made here"
        )
