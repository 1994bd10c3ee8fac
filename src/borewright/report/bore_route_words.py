"""A bore route as lines of text: what to aim at, its steps, its chance, how it is measured."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.bore_route import BoreAlternative, BoreRoute, BoreStep
from borewright.answer.figure import Figure
from borewright.quantities.show import Show
from borewright.report.words import citation


def route_lines(route: BoreRoute | None, show: Show) -> Iterator[str]:
    """Every line of the part; none without a route.

    >>> list(route_lines(None, Show("inch")))
    []
    """
    if route is None:
        return
    yield f"From {route.starts_from}. {aim_words(route, show)}"
    yield f"{route.ream_or_bore} {chance_words(route)}".strip()
    yield from (_step(n, step, show) for n, step in enumerate(route.steps, 1))
    yield " ".join(w for w in ("Measure.", plug_words(route, show), route.measure) if w)
    yield route.before_mounting
    yield from (f"Or {alternative_words(other)}" for other in route.alternatives)
    yield from (f"Taken: {a.what}: {a.taken} ({citation(a.source)})." for a in route.assumed)
    yield from (f"Mind: {c.text} ({citation(c.source)})" for c in route.cautions)


def route_figures(route: BoreRoute | None) -> Iterator[Figure]:
    """Every figure of a route in reading order."""
    if route is None:
        return
    of_steps = [f for s in route.steps for f in (s.size, s.stock, s.spindle)]
    plug = (route.go, route.not_go, *route.plug_steps, route.gauge_half_band, route.ratio)
    found = [*of_steps, *route.figures, route.chance, *plug]
    yield from (f for f in found if f is not None)


def chance_words(route: BoreRoute) -> str:
    """The chance with its ends; empty where any size serves."""
    chance = route.chance
    if chance is None:
        return ""
    ends = (chance.low, chance.high)
    band = "" if None in ends else f" ({_hundred(chance.low)} to {_hundred(chance.high)})"
    alone = next((f for f in route.figures if f.name == "window_chance"), None)
    trial = f"; straight off, with no trial, {_hundred(alone.best)}" if alone else ""
    first = ", tried in scrap first" if alone else ""
    return (
        f"Chance of landing in the window{first}: {_hundred(chance.best)} in 100{band}{trial}. "
        "The ends are those of a careless and of a careful shop, by the usual grades; no error of "
        "sampling, because nothing is sampled."
    )


def _hundred(share: float | None) -> str:
    if share is None:
        return ""
    if share >= 0.995:
        return "better than 99"
    return "less than 1" if share < 0.01 else f"{100 * share:.0f}"


def aim_words(route: BoreRoute, show: Show) -> str:
    """The band aimed at and what set it, as a sentence."""
    return _sentence(_aim(route, show))


def _aim(route: BoreRoute, show: Show) -> str:
    aim = route.aims_at
    if aim.low is None or aim.high is None:
        return aim.set_by
    band = show.band(aim.low, aim.high, "bore")
    return f"aim at {band}: {aim.set_by}" if band not in aim.set_by else f"aim: {aim.set_by}"


def _sentence(said: str) -> str:
    return f"{said[:1].upper()}{said[1:]}."


def _step(number: int, step: BoreStep, show: Show) -> str:
    owned = " It is not on the shelf." if step.owned == "no" else ""
    size = _band_words(step.size, show)
    stock = f" Takes {show.depth(step.stock.best)} on diameter." if step.stock else ""
    feed = f"{show.spindle(step.spindle.best)}, {step.feed}" if step.spindle else step.feed
    form = f" Expect it {step.form}." if step.form else ""
    return f"{number}. {step.text}{owned}{size}{stock} {_sentence(feed)}{form}"


def _band_words(size: Figure | None, show: Show) -> str:
    band = size_band(size, show)
    return f" 9 in 10 lie within {band}." if band else ""


def size_band(size: Figure | None, show: Show) -> str:
    """The 5 % and 95 % ends of a size as a band; empty where the tool leaves none that matters."""
    if size is None or size.low is None or size.high is None or size.formula == "bored_clean":
        return ""
    return show.band(size.low, size.high, "bore")


def plug_words(route: BoreRoute, show: Show) -> str:
    """The go and not-go sizes and the steps of a plug; empty where any size serves."""
    if route.go is None or route.not_go is None:
        return ""
    steps = ", ".join(show.bore(f.best) for f in route.plug_steps)
    go, not_go = show.bore(route.go.best), show.bore(route.not_go.best)
    return f"Go {go}, not-go {not_go}; a plug in steps of {steps}."


def alternative_words(other: BoreAlternative) -> str:
    """Another way to the same bore: what, its chance, why it is not taken."""
    chance = "" if other.chance is None else f", {_hundred(other.chance)} in 100"
    return f"{other.way}{chance}: {other.reason}."
