"""One tool through the hole: the size it leaves, and the rule and the numbers behind that size."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.figure import Figure, Input
from borewright.job.records import Job
from borewright.mechanics.bore_sizes import SizeBand, band_of_half, bored_half_band
from borewright.planning.bore_route.kit import Bar, BoreGauge, Drill, Kit, Reamer
from borewright.planning.weighing.figures import figure, given
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

SMALL_DRILL: Metre = 0.0127
"""Up to here the table reaming speaks of small drills."""


@dataclass(frozen=True, slots=True)
class Pass:
    """A tool, the band of sizes (m) it leaves, and its figure; `nominal` is what sets its speed."""

    process: str
    tool: str
    owned: str
    nominal: Metre
    band: SizeBand | None = None
    rule: str = ""
    given: tuple[Input, ...] = ()
    sources: tuple[str, ...] = ()
    last: bool = False
    by_hand: bool = False

    @property
    def size(self) -> Metre:
        """The likely size (m); 0 where none is left."""
        return 0.0 if self.band is None else self.band[1]

    def is_by(self, tool: Drill | Reamer) -> bool:
        """True for the tool that makes this pass; two may have one name."""
        return (self.tool, self.nominal) == (tool.name, tool.size)

    @property
    def bands(self) -> tuple[SizeBand, ...]:
        """The band, where a size is left."""
        return () if self.band is None else (self.band,)

    def figure(self) -> Figure | None:
        """The size as a figure with its band."""
        if self.band is None:
            return None
        low, likely, high = self.band
        return figure(
            self.rule, likely, "m", "bore", self.rule, self.given, self.sources, (low, high)
        )


def drilled(drill: Drill, tables: Tables) -> Pass:
    """A drill at its size and over."""
    small = drill.size <= SMALL_DRILL * (1 + 1e-9)
    over = tables.reaming("drill_over_small" if small else "drill_over_large")
    band = (drill.size + over.low, drill.size + over.best, drill.size + over.high)
    inputs = (given("drill", drill.size, "m", "bore"), given("over", over.best, "m", "small"))
    return Pass(
        "drill", drill.name, drill.owned, drill.size, band, "drilled_size", inputs, over.sources
    )


def spotted(job: Job) -> Pass:
    """The center drill that makes the drill start true."""
    return Pass("spot", "a center drill", "unknown", 0.006)


def piloted(drill: Drill) -> Pass:
    """A pilot hole for the web of the drill that follows."""
    return Pass("pilot", drill.name, drill.owned, drill.size)


def reamed(reamer: Reamer) -> Pass:
    """A reamer, as it is known or usually found to cut."""
    over = reamer.cuts[1] - reamer.size
    inputs = (given("marked size", reamer.size, "m", "bore"), given("over", over, "m", "small"))
    return Pass(
        "ream",
        reamer.name,
        reamer.owned,
        reamer.size,
        reamer.cuts,
        "reamed_size",
        inputs,
        reamer.sources,
        last=True,
        by_hand=reamer.by_hand,
    )


def reamer_of(cut: Pass, kit: Kit) -> Reamer | None:
    """The reamer that makes a pass; None for another tool."""
    if cut.process != "ream":
        return None
    return next((r for r in kit.reamers if cut.is_by(r) and cut.band == r.cuts), None)


def bored_to_size(low: Metre, high: Metre, bar: Bar, gauge: BoreGauge, tables: Tables) -> Pass:
    """The bar, its last pass set by a measurement, to the middle of the window (m)."""
    middle = (low + high) / 2
    inputs = (given("smallest", low, "m", "bore"), given("largest", high, "m", "bore"))
    half = half_band(gauge, tables)
    sources = (*gauge.sources, *half.sources, *bar.sources)
    band = band_of_half(middle, half.best)
    return Pass(
        "bore", "a boring bar", bar.owned, middle, band, "bored_size", inputs, sources, last=True
    )


def bored_before_reaming(
    reamer: Reamer, stock: Metre, bar: Bar, gauge: BoreGauge, tables: Tables
) -> Pass:
    """The bar, to leave the reamer its stock (m)."""
    aim = reamer.cuts[1] - stock
    inputs = (
        given("reamed size", reamer.cuts[1], "m", "bore"),
        given("stock", stock, "m", "small"),
    )
    half = half_band(gauge, tables)
    band = band_of_half(aim, half.best)
    rule = "bored_before_reaming"
    return Pass("bore", "a boring bar", bar.owned, aim, band, rule, inputs, half.sources)


def bored_clean(start: Metre, bar: Bar, tables: Tables) -> Pass:
    """The bar, until the hole is clean all round: no size to hit."""
    stock = tables.boring("true_up")
    band = (start + stock.low, start + stock.best, start + stock.high)
    inputs = (given("hole as it is", start, "m", "bore"), given("stock", stock.best, "m", "small"))
    return Pass(
        "bore",
        "a boring bar",
        bar.owned,
        band[1],
        band,
        "bored_clean",
        inputs,
        stock.sources,
        last=True,
    )


def half_band(gauge: BoreGauge, tables: Tables) -> Figure:
    """How far off a bored size is, either way (m)."""
    dial, spring = tables.boring("dial_setting"), tables.boring("bar_spring")
    half = bored_half_band(gauge.half_band, dial.best, spring.best)
    inputs = (
        given("gauge", gauge.half_band, "m", "small"),
        given("dial", dial.best, "m", "small"),
        given("spring", spring.best, "m", "small"),
    )
    sources = (*gauge.sources, *dial.sources, *spring.sources)
    return figure("bored_half_band", half, "m", "small", "bored_half_band", inputs, sources)


def over_words(tool: Pass, show: Show) -> str:
    """How far over its mark a tool is taken to cut."""
    over = tool.size - tool.nominal
    return f"{show.small(abs(over))} {'over' if over >= 0 else 'under'}"
