"""Work and mandrel as two bodies, each at one temperature, that pass heat to each other.

    C_w dT_w/dt = q − h_w T_w − G (T_w − T_m)
    C_m dT_m/dt = G (T_w − T_m) − h_m T_m
T: warmth over the room; C: m c (J/K); h: losses to air, coolant and centers (W/K); G: what the
joint and the way along the mandrel let through (W/K); q: heat into the work (W).

While nothing but the heat changes the equations are linear with constant coefficients: `Pace`
steps them in closed form, by the two eigenvalues, for any number of drawn cases at once. A plan
uses that, because it asks for some hundreds of cases in a thousandth of a second. `by_integration`
solves the same equations step by step, and also those whose losses grow with the warmth; the two
agree to 1e-9 (tested).
Source: lumped capacities, closed form (any textbook on heat transfer). Weakness: a rim warms before
its hub, and the metal just under the bore before the rest of the mandrel; both are taken as even.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from borewright.errors import OutsideModel
from borewright.mechanics.num import Floats, Num
from borewright.quantities.si import PerKelvin, Second

CLOSE = 1e-11
"""Relative error that the integration keeps to in each step."""


@dataclass(frozen=True, slots=True, eq=False)
class Pair:
    """Two bodies: m c of work and mandrel (J/K), and what the joint lets through (W/K)."""

    work: Num
    mandrel: Num
    across: Num

    def __post_init__(self) -> None:
        for name, value in (("work", self.work), ("mandrel", self.mandrel), ("joint", self.across)):
            if not np.all(np.asarray(value) > 0):
                raise OutsideModel(f"heat of the {name}", float(np.min(value)), "more than 0")


@dataclass(frozen=True, slots=True, eq=False)
class Segment:
    """A stretch of time with steady heat: seconds, W into the work, losses of both bodies (W/K)."""

    seconds: Second
    watts: Num
    work_loss: Num
    mandrel_loss: Num


@dataclass(frozen=True, slots=True, eq=False)
class Pace:
    """How a pair with these losses moves: its slow rate (1/s, negative), the gap to the fast one.

    `work_over` and `mandrel_over` are the diagonal of the equations less the slow rate, `to_work`
    and `to_mandrel` what each feels of the other, all 1/s.
    """

    slow: Num
    gap: Num
    work_over: Num
    mandrel_over: Num
    to_work: Num
    to_mandrel: Num
    capacity: Num

    def after(self, start: Floats, watts: Num, seconds: Num) -> Floats:
        """Warmth (2, n) of work and mandrel so many seconds on from `start`, heated all along."""
        t, q = seconds, watts / self.capacity
        whole = np.exp(self.slow * t)
        fast = self.slow - self.gap
        part = whole * -np.expm1(-self.gap * t) / self.gap
        sum_slow = _sum(self.slow, t)
        sum_part = (sum_slow - _sum(fast, t)) / self.gap
        work, mandrel = start
        return np.array(
            np.broadcast_arrays(
                (whole + part * self.work_over) * work
                + part * self.to_work * mandrel
                + (sum_slow + sum_part * self.work_over) * q,
                part * self.to_mandrel * work
                + (whole + part * self.mandrel_over) * mandrel
                + sum_part * self.to_mandrel * q,
            )
        )


def _sum(rate: Num, seconds: Num) -> Num:
    """Integral of e^(rate t): the time itself where nothing is lost."""
    none = np.asarray(rate) == 0
    safe = np.where(none, -1.0, rate)
    return np.asarray(np.where(none, seconds, np.expm1(safe * seconds) / safe))


def pace_of(pair: Pair, work_loss: Num, mandrel_loss: Num) -> Pace:
    """The pace of a pair with losses (W/K), both 0 or more. OutsideModel for a negative loss.

    >>> pair = Pair(100.0, 50.0, 2.0)
    >>> one = pace_of(pair, 0.0, 0.0).after(np.array([30.0, 0.0]), 0.0, 1e6)
    >>> [round(float(t), 6) for t in one]
    [20.0, 20.0]
    """
    if np.any(np.asarray(work_loss) < 0) or np.any(np.asarray(mandrel_loss) < 0):
        least = float(min(np.min(work_loss), np.min(mandrel_loss)))
        raise OutsideModel("heat lost", least, "0 or more")
    g, cw, cm = pair.across, pair.work, pair.mandrel
    a, d = -(g + work_loss) / cw, -(g + mandrel_loss) / cm
    gap = np.sqrt((a - d) ** 2 + 4 * g * g / (cw * cm))
    fast = (a + d - gap) / 2
    # The product over the fast one: their difference would lose its digits where little is lost.
    slow = (work_loss * mandrel_loss + g * (work_loss + mandrel_loss)) / (cw * cm) / fast
    return Pace(slow, gap, a - slow, d - slow, g / cw, g / cm, cw)


def warmths(pair: Pair, segments: Sequence[Segment], start: Floats | None = None) -> Floats:
    """Warmth (k + 1, 2, n) of both bodies at the start and at the end of every segment.

    `start` (2, n): warmth to begin with, none if not stated.

    >>> run = warmths(Pair(100.0, 50.0, 2.0), [Segment(10.0, 30.0, 0.0, 0.0)])
    >>> round(float(100 * run[-1, 0, 0] + 50 * run[-1, 1, 0]), 6)
    300.0
    """
    shape = np.broadcast_shapes(
        *(np.shape(v) for v in (pair.work, pair.mandrel, pair.across)),
        *(np.shape(v) for s in segments for v in (s.watts, s.work_loss, s.mandrel_loss)),
        (1,) if start is None else np.shape(start)[1:],
    )
    found = [np.zeros((2, *shape)) if start is None else np.broadcast_to(start, (2, *shape))]
    for s in segments:
        pace = pace_of(pair, s.work_loss, s.mandrel_loss)
        found.append(pace.after(found[-1], s.watts, s.seconds))
    return np.array(found)


def by_integration(
    pair: Pair,
    segments: Sequence[Segment],
    times: Floats,
    start: tuple[float, float] = (0.0, 0.0),
    growth: PerKelvin = 0.0,
) -> Floats:
    """Warmth (2, k) of both bodies at rising `times` (s), one case, integrated segment by segment.

    `growth`: share by which the losses grow for each kelvin of warmth; 0 gives the closed form.

    >>> pair, heat = Pair(100.0, 50.0, 2.0), Segment(40.0, 30.0, 0.5, 0.1)
    >>> step = by_integration(pair, [heat], np.array([40.0]))[:, 0]
    >>> bool(np.allclose(step, warmths(pair, [heat])[-1, :, 0], rtol=1e-9))
    True
    """
    from scipy.integrate import solve_ivp  # a plan does without: scipy is slow to load

    found, begin, state = np.zeros((2, len(times))), 0.0, np.array(start, dtype=np.float64)
    for s in segments:
        end = begin + s.seconds
        if s.seconds > 0:
            slope = _slope(pair, s, growth)
            done = solve_ivp(
                slope, (begin, end), state, "DOP853", dense_output=True, rtol=CLOSE, atol=CLOSE
            )
            inside = (times >= begin) & (times <= end)
            if inside.any():
                found[:, inside] = done.sol(times[inside])
            state = done.y[:, -1]
        begin = end
    return found


def _slope(pair: Pair, segment: Segment, growth: PerKelvin) -> Callable[[float, Floats], Floats]:
    """The equations of one segment, as the integrator wants them."""

    def slope(_: float, warmth: Floats) -> Floats:
        work, mandrel = warmth
        crosses = pair.across * (work - mandrel)
        off_work = segment.work_loss * work * (1 + growth * abs(work))
        off_mandrel = segment.mandrel_loss * mandrel * (1 + growth * abs(mandrel))
        rates = (
            (segment.watts - off_work - crosses) / pair.work,
            (crosses - off_mandrel) / pair.mandrel,
        )
        return np.array(rates, dtype=np.float64)

    return slope
