"""Go and not-go, the stepped plug, and how well the gauge knows the window."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.figure import Figure
from borewright.job.records import Job
from borewright.mechanics.plug_gauge import plug_shares
from borewright.planning.bore_route.kit import TURNED_PLUG, BoreGauge, Kit
from borewright.planning.bore_route.wanted import Wanted
from borewright.planning.taper.bore_words import limits_name
from borewright.planning.weighing.figures import figure, given
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True)
class Plug:
    """The sizes of the plug and the judgment of the gauge; nothing where any size serves."""

    go: Figure | None
    not_go: Figure | None
    steps: tuple[Figure, ...]
    half_band: Figure | None
    ratio: Figure | None
    words: str


def plug_for(want: Wanted, kit: Kit, job: Job, tables: Tables) -> Plug:
    """The plug for a window, and whether the gauge is good enough for it."""
    gauge = kit.gauge
    if want.window is None:
        return Plug(None, None, (), None, None, _any_size_words(want, gauge, job))
    low, high = want.window
    ratio = (high - low) / (2 * gauge.half_band)
    rule = tables.boring("gauge_rule")
    inputs = (
        given("smallest", low, "m", "bore"),
        given("largest", high, "m", "bore"),
        given("half band", gauge.half_band, "m", "small"),
    )
    sources = (*gauge.sources, rule.source)
    least, most = tables.boring("plug_least_step").best, tables.boring("plug_most_steps").best
    shares = plug_shares(high - low, least, int(most))
    return Plug(
        _size("go", low, high, 0.0),
        _size("not_go", low, high, 1.0),
        tuple(_size(f"plug_step_{n}", low, high, s) for n, s in enumerate(shares, 1)),
        figure("gauge_half_band", gauge.half_band, "m", "small", "", (), gauge.sources),
        figure("gauge_ratio", ratio, "", "", "gauge_ratio", inputs, sources),
        _words(high - low, want, kit, ratio, job, tables),
    )


def _size(name: str, low: Metre, high: Metre, share: float) -> Figure:
    inputs = (
        given("smallest", low, "m", "bore"),
        given("largest", high, "m", "bore"),
        given("share", share),
    )
    return figure(name, low + share * (high - low), "m", "bore", "plug_step", inputs)


def _words(room: Metre, want: Wanted, kit: Kit, ratio: float, job: Job, tables: Tables) -> str:
    show, gauge, rule = Show(job.units), kit.gauge, tables.boring("gauge_rule")
    width = show.small(room)
    knows = f"{gauge.name} knows it to {show.small(gauge.half_band)} either way"
    asked = (
        "ten to one, as the trade asks"
        if ratio >= rule.best
        else "four to one at least, though not the ten that the trade asks"
        if ratio >= rule.low
        else "less than the four to one that the trade asks at least: what it calls good near either end may not be"
    )
    plug = tables.gauge(TURNED_PLUG)
    turn = (
        f" A stepped plug turned for it, {show.small(plug.half_band)}, is its check: the first step goes, the last does not."
        if gauge.owned != "make" and ratio < rule.best
        else " Turn it from a scrap, its steps sized by micrometer, ends marked: the first step goes, the last does not."
        if gauge.owned == "make"
        else ""
    )
    return (
        f"The window is {width} wide and {knows}: {ratio:.1f} to one, {asked}.{turn}{_trade_plug(want, gauge, show)} Wipe bore and gauge, let both cool "
        f"to the room, and look at two depths and two directions.{_mandrel_words(want)}"
    )


def _trade_plug(want: Wanted, gauge: BoreGauge, show: Show) -> str:
    """The gauge to get for a class, where the shop has none that is made for it."""
    if (
        want.limits is None
        or not want.limits.code
        or (gauge.owned == "yes" and "plug" in gauge.name)
    ):
        return ""
    return (
        f" What to get for more of them: a go and not-go plug of {limits_name(want.limits, show)}."
    )


def _mandrel_words(want: Wanted) -> str:
    return (
        ""
        if not want.mandrel
        else " The mandrel is the last gauge: slide it in before the work leaves the chuck."
    )


def _any_size_words(want: Wanted, gauge: BoreGauge, job: Job) -> str:
    known = Show(job.units).small(gauge.half_band)
    return (
        "It is what it is: measure it at two depths and two directions when it is done, and turn the stub or choose the "
        f"mandrel to that. {gauge.name[:1].upper()}{gauge.name[1:]} knows it to {known} either way."
    )
