"""The papers of a set: what it is, in which order it is made, what steel is bought."""

from __future__ import annotations

from typing import Final

from borewright.answer.made_mandrel import MadeMandrel
from borewright.answer.made_set import MandrelSet, SetSize
from borewright.answer.papers import Grid, Papers, Route, RouteStep, Said, Sheet, Warned
from borewright.making.cautioned import cautioned
from borewright.making.mandrel.words import limits_words
from borewright.making.mandrel_set.design import making_order
from borewright.making.mandrel_set.steel import SteelBar
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


def set_papers(
    whole: MandrelSet, steel: tuple[SteelBar, ...], bar_length: Metre, tables: Tables
) -> Papers:
    """All sheets; where a size cannot be made, the headline says which and why."""
    show = Show(whole.units)
    sheets = (
        Sheet("Set", (_counts(whole, show), _sizes(whole, show))),
        Sheet("Order of making", (_cautions(whole, tables), *_order(whole, show))),
        Sheet("Steel to buy", _steel(whole, steel, bar_length, show, tables)),
    )
    return Papers("Set of mandrels", _headline(whole, steel, bar_length, show), whole.units, sheets)


def _headline(whole: MandrelSet, steel: tuple[SteelBar, ...], bar_length: Metre, show: Show) -> str:
    short = [f"{name} ({bar.size} bar)" for bar in steel for name, _ in bar.cuts.missing]
    missing = [size for size in whole.sizes if not size.mandrels]
    if missing:
        said = "; ".join(f"{size.name}: {size.why}" for size in missing)
        return f"No: {said}"
    if short:
        return f"No: bars of {show.length(bar_length)} are too short for {', '.join(short)}."
    several = [size for size in whole.sizes if len(size.mandrels) > 1]
    count, lengths = len(whole.mandrels), [m.form.overall_length for m in whole.mandrels]
    alike = max(lengths) - min(lengths) < 1e-6
    long = show.length(lengths[0]) if alike else show.band(min(lengths), max(lengths), "length")
    said = f"{_many(count, 'mandrel')} for {_many(len(whole.sizes), 'size')}, {long} long."
    if several:
        names = "; ".join(f"{size.name} needs {len(size.mandrels)}" for size in several)
        said += f" {names}: the bores allowed spread further than one mandrel reaches."
    return said


SPOILED: Final = "Where several share a size, one that came out a little under its limits may be the next smaller: stamp last of all."


def _many(count: int, what: str) -> str:
    return f"{count} {what}{'' if count == 1 else 's'}"


def _counts(whole: MandrelSet, show: Show) -> Grid:
    rows = tuple(_count_row(size, show) for size in whole.sizes)
    return Grid(
        "How many of each size",
        ("size", "bores", "band", "one takes", "mandrels"),
        rows,
        (
            "One takes: the band of bores that every mandrel within its limits takes, with room for work, "
            "travel, tool and dog. A longer one takes more, until it bends.",
        ),
    )


def _count_row(size: SetSize, show: Show) -> tuple[str, ...]:
    band = size.bores[1] - size.bores[0]
    takes = show.small(size.one_takes) if size.mandrels else "cannot be made"
    return (
        size.name,
        show.band(*size.bores, "bore"),
        show.small(band),
        takes,
        str(len(size.mandrels)),
    )


def _sizes(whole: MandrelSet, show: Show) -> Grid:
    rows = tuple(
        (
            m.stamp,
            limits_words(m.form.zone.near_large, m.units),
            limits_words(m.form.zone.near_small, m.units),
            show.length(m.form.apart).partition(" (")[0],
            show.length(m.form.overall_length).partition(" (")[0],
            "" if m.takes is None else show.band(*m.takes, "bore"),
        )
        for m in whole.mandrels
    )
    return Grid(
        "What each is to be",
        ("stamp", "at A, near the large end", "at B", "A to B", "overall", "takes"),
        rows,
        ("`borewright make mandrel` gives each one its own drawing, route and acceptance sheet.",),
    )


def _order(whole: MandrelSet, show: Show) -> tuple[Said | Route | Grid, ...]:
    ordered = making_order(whole)
    lengths = list(dict.fromkeys(round(m.form.overall_length, 6) for m in ordered))
    finish = (
        RouteStep(
            "Grind, largest first",
            (f"The table is set once: every one has the same taper. {SPOILED}",),
        )
        if whole.grinder
        else RouteStep(
            "Turn the tapers, largest first within a length",
            (
                f"The set-over goes by the whole length: {_many(len(lengths), 'length')} here, so "
                f"{_many(len(lengths), 'setting')} of the tailstock. Made to one overall length, one setting "
                "serves all: `--overall-length` asks for it.",
                SPOILED,
                "Filed and finished with emery before the next is begun; then the tailstock goes back to parallel, proved "
                "with two bands.",
            ),
        )
    )
    steps = (
        RouteStep(
            "Saw all blanks",
            ("By the cutting list, thickest bar first; stamp or paint each at once.",),
        ),
        RouteStep(
            "Face and center all",
            (
                "One setting of drill and depth for each size of center. Bars that are too long for chuck and drill go "
                "through the spindle, into the fixed steady, or are marked out and drilled upright.",
            ),
        ),
        RouteStep(
            "Rough all, ends to size", ("While the tailstock stands parallel; prove it first.",)
        ),
        RouteStep(
            "Flats on all",
            ("Large end first; stamps where they are told apart last of all, on the flat.",),
        ),
        *(
            (
                RouteStep(
                    "Harden and temper all of one steel",
                    ("A spare blank of the thinnest size first: it tells what this fire does.",),
                ),
                RouteStep("Lap the centers of all", ()),
            )
            if any(m.stock.steel.hard for m in ordered)
            else ()
        ),
        finish,
        RouteStep(
            "Edges and oil", ("Stone the edges of the tapers, no more; caps over the centers.",)
        ),
        RouteStep(
            "Measure all on one day",
            ("Same micrometer, same gauge, same warmth; enter them in the shelf file.",),
        ),
    )
    return (
        Route("Operation by operation, not piece by piece", steps),
        _order_table(ordered, whole, show),
    )


def _order_table(ordered: tuple[MadeMandrel, ...], whole: MandrelSet, show: Show) -> Grid:
    rows = tuple(
        (
            str(k),
            m.stamp,
            show.length(m.form.overall_length).partition(" (")[0],
            show.small(m.settings.set_over)
            if not whole.grinder
            else show.small(m.settings.planes_differ),
            "",
            "",
        )
        for k, m in enumerate(ordered, 1)
    )
    setting = "A less B" if whole.grinder else "set-over"
    return Grid("Order", ("turn", "stamp", "overall", setting, "A found", "B found"), rows)


def _steel(
    whole: MandrelSet, steel: tuple[SteelBar, ...], bar_length: Metre, show: Show, tables: Tables
) -> tuple[Said | Grid, ...]:
    long = {m.stamp: show.length(m.stock.bar_length).partition(" (")[0] for m in whole.mandrels}
    end = tables.making_fact("bar_end").best
    rows = []
    for bar in steel:
        for cut in bar.cuts.bars:
            pieces = ", ".join(f"{name}: {long[name]}" for name, _ in cut.pieces)
            rows.append(
                (
                    bar.size,
                    bar.steel,
                    str(cut.count),
                    pieces,
                    show.length(cut.length - cut.left + end).partition(" (")[0],
                    show.length(cut.left).partition(" (")[0],
                )
            )
    words = (
        f"Bars {show.length(bar_length)} long; a bar may be bought shorter where only its first piece is wanted. "
        "Kerf and what stays in saw or chuck are counted."
    )
    return (
        Said("", (words,)),
        Grid(
            "Bars",
            (
                "bar",
                "steel",
                "bars",
                "cut into: stamp and length",
                "needs of each at least",
                "left of each",
            ),
            tuple(rows),
        ),
    )


def _cautions(whole: MandrelSet, tables: Tables) -> Warned:
    tags = ["making-mandrel", "grinder" if whole.grinder else "file-and-emery"]
    tags += ["hot-work"] if any(m.stock.steel.hard for m in whole.mandrels) else []
    tags += ["quench-oil"] if any(m.stock.steel.medium == "oil" for m in whole.mandrels) else []
    return cautioned(tables, *tags)
