"""What the push would do to a web, or to spokes, if the rim were held instead of the hub."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.answer.records import Draws, Figure
from borewright.job.interrupted import Spokes
from borewright.job.web import Web, web_of
from borewright.mechanics.plate import dish, dish_stress
from borewright.mechanics.spokes import spokes_give, spokes_stress
from borewright.mechanics.spread import likely, low_end
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import given, spread
from borewright.quantities.si import Metre

COARSE = 1e-3
"""A dish from 1 mm on is said as a length, not in thousandths."""


@dataclass(frozen=True, slots=True, eq=False)
class Dishing:
    """Dish (m) and stress (Pa) with a rim that tilts freely; `stress_held` with one that cannot."""

    what: str
    dish: Draws
    stress: Draws
    stress_held: Draws


def dishing(trial: Trial) -> Dishing | None:
    """Of the web or the spokes at the push of this travel; None where the hub carries no thinner ring."""
    web, spokes = web_of(trial.job.work), trial.job.work.spokes
    if web is None:
        return None
    return _spokes(trial, web, spokes) if spokes else _web(trial, web)


def _web(trial: Trial, web: Web) -> Dishing:
    push, work = trial.grip.push_on, trial.hold.facts.work
    size, poisson = (web.inner / 2, web.outer / 2, web.thickness), float(work.poisson)
    free, held = (np.asarray(dish_stress(push, *size, poisson, clamped=c)) for c in (False, True))
    sunk = np.asarray(dish(push, *size, work.modulus, poisson))
    return Dishing("web", sunk, free, held if web.rimmed else free)


def _spokes(trial: Trial, web: Web, spokes: Spokes) -> Dishing:
    push, work = trial.grip.push_on, trial.hold.facts.work
    size = spokes.number, _length(web), spokes.width, spokes.thickness
    free, held = (np.asarray(spokes_stress(push, *size, clamped=c)) for c in (False, True))
    return Dishing("spokes", np.asarray(spokes_give(push, *size, work.modulus)), free, held)


def _length(web: Web) -> Metre:
    return (web.outer - web.inner) / 2


def dish_words(trial: Trial) -> str:
    """Why the rim is not to be held, as a sentence; empty where there is no web."""
    d = dishing(trial)
    if d is None:
        return ""
    if trial.hold.facts.brittle:
        return f"Never under the rim: {_cracks(trial, d)}."
    sunk = likely(d.dish)
    size = trial.show.length(sunk) if sunk >= COARSE else trial.show.small(sunk)
    return f"Held under the rim instead, this push would dish the {d.what} by about {size}{_outcome(trial, d)}."


def _cracks(trial: Trial, d: Dishing) -> str:
    """What becomes of brittle work: sure where even a rim that cannot tilt does not save it."""
    if likely(trial.hold.facts.strength) < likely(d.stress_held):
        return f"this push would break the {d.what} there"
    return f"the push bends the {d.what}, and brittle work cracks there without warning"


def _outcome(trial: Trial, d: Dishing) -> str:
    """What becomes of ductile work: sure where even a rim that cannot tilt does not save it."""
    strength = trial.hold.facts.strength
    it = "it" if d.what == "web" else "them"
    if likely(strength) < likely(d.stress_held):
        return f" and bend {it} for good"
    if low_end(strength / np.maximum(d.stress, 1.0)) < 1:
        return f" and could bend {it} for good"
    return ", and the hub would go on out of square"


def dish_figures(trial: Trial) -> tuple[Figure, ...]:
    """Dish and stress with the numbers behind them; none where there is no web."""
    d, web, spokes = dishing(trial), web_of(trial.job.work), trial.job.work.spokes
    if d is None or web is None:
        return ()
    f, push = trial.hold.facts, given("push", likely(trial.grip.push_on), "N")
    modulus = given("E", likely(np.atleast_1d(f.work.modulus)), "Pa")
    size = (
        (
            given("spokes", spokes.number),
            given("length", _length(web), "m"),
            given("width", spokes.width, "m"),
            given("thickness", spokes.thickness, "m"),
        )
        if spokes
        else (
            given("hub outside", web.inner, "m"),
            given("rim inside", web.outer, "m"),
            given("web", web.thickness, "m"),
            given("v", float(f.work.poisson)),
        )
    )
    name = "spoke" if spokes else "web"
    return (
        spread(f"{name}_dish", d.dish, "m", "small", f"{name}_dish", (push, *size, modulus)),
        spread(f"{name}_stress", d.stress, "Pa", "pressure", f"{name}_stress", (push, *size)),
    )
