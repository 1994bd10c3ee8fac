"""How far a setting is from every limit: 1 at the limit, more within it.

least_chip  the chip is thick enough to cut and not to rub
tool        depth times feed is what a tool usually bears in this metal
finish      no pass is shallower than the ridges of its feed, which would stand like a thread; ridges of the feed, f² / (8 r) and what a real edge adds, within the finish wanted
slip        likely and poor case
rock        the same of the tilt
bend        the last cut: size within its tolerance; before it: no deeper than what is left
power       the lathe pulls it in that gear
chatter     the work itself stays quiet at that speed, as far as one mode tells
heat        slip and rock with the warmth of one pass in the work
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import inf, isfinite

import numpy as np

from borewright.answer.records import Cut, Demand
from borewright.cutting.demand import chip_taken
from borewright.job.records import Machine
from borewright.mechanics.roughness import ridge_height
from borewright.mechanics.spread import high_end, likely, low_end
from borewright.mechanics.turning import surface_speed
from borewright.mechanics.warmth import temperature_rise
from borewright.planning.passes.holding import Holding
from borewright.planning.passes.limit import Limit
from borewright.planning.passes.setting import Run, Setting
from borewright.planning.weighing.chatter import chatter_of
from borewright.planning.weighing.judge import share_of_yes
from borewright.planning.weighing.power import motor_power
from borewright.planning.weighing.warmed import Body, loss_to, warmth_after
from borewright.quantities.si import Kelvin, Metre, Ratio


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a run is for. `left` (m): metal that the next cut needs, 0 for the last; `allowed` (m, on
    diameter) and `ridges` (m) of the last one; `sprung`: the share of bending that a spring pass
    leaves, 1 without. `cool`: all passes of the run one after another leave half of the grip, with
    the reserve that the heat question asks; else it may wait between them. `quiet`: the work side's
    limit of chatter is asked too."""

    left: Metre = 0.0
    allowed: Metre | None = None
    ridges: Metre | None = None
    sprung: Ratio = 1.0
    cool: bool = False
    quiet: bool = True


class Asked:
    """A run on a hold: every setting's cut and demand, worked out once for each depth and feed.

    `eased`: the share of the usual force that a keener tool asks; `machine`: that of the job where
    none is given.
    """

    def __init__(
        self,
        holding: Holding,
        model: Cut,
        run: Run,
        body: Body,
        eased: Ratio = 1.0,
        machine: Machine | None = None,
    ) -> None:
        self.holding, self.model, self.run, self.body = holding, model, run, body
        self.machine = machine or holding.job.shelf.machine
        self._eased = eased
        self._known: dict[tuple[Metre, Metre], Demand] = {}
        tables = holding.tables
        self._share = tables.allowance("heat_share").best
        self._loss = loss_to(holding, coolant=model.coolant).best

    def cut(self, setting: Setting) -> Cut:
        """The deepest pass of a setting."""
        speed = surface_speed(setting.spindle, self.model.diameter)
        return replace(
            self.model,
            depth=setting.deepest,
            feed=setting.feed,
            spindle_speed=setting.spindle,
            cutting_speed=speed,
        )

    def demand(self, setting: Setting) -> Demand:
        key = setting.deepest, setting.feed
        if key not in self._known:
            self._known[key] = _eased(self.holding.demand(self.cut(setting)), self._eased)
        return self._known[key]

    def power(self, setting: Setting) -> float:
        """Likely power at the tool (W)."""
        speed = surface_speed(setting.spindle, self.model.diameter)
        return likely(self.demand(setting).tangential) * speed

    def warmth(self, setting: Setting) -> Kelvin:
        """Likely warmth of the work (K) at the end of one pass, begun cool: passes can wait."""
        cutting = setting.seconds / len(setting.depths) - self.run.between
        into = self._share * self.power(setting)
        return float(
            temperature_rise(into, cutting, self.body.heat_capacity, self._loss, self.body.area)
        )


def limits_of(asked: Asked, wanted: Wanted) -> list[Limit]:
    """Every limit of a run, those that are cheap to ask first."""
    found = []
    if isfinite(asked.run.bears):
        found.append(Limit("tool", _tool(asked.run.bears)))
    found.append(Limit("least_chip", _least_chip(asked)))
    if wanted.ridges is not None:
        found.append(Limit("finish", _finish(asked, wanted.ridges)))
    if asked.model.nose_radius > 0:
        found.append(Limit("finish", _clean(asked.model.nose_radius)))
    return [
        *found,
        Limit("slip", _margin(asked, "slip", cool=True), by_load=True),
        Limit("rock", _margin(asked, "rock", cool=True), by_load=True),
        Limit("bend", _bend(asked, wanted), by_load=True),
        Limit("power", _power(asked)),
        *([Limit("chatter", _chatter(asked))] if wanted.quiet else []),
        Limit("heat", _cool(asked) if wanted.cool else _warm(asked)),
    ]


def _eased(demand: Demand, share: Ratio) -> Demand:
    """The demand of a tool that asks only this share of the usual force."""
    if share == 1.0:
        return demand
    asked = demand.drive_asked
    return replace(
        demand,
        torque=demand.torque * share,
        axial=demand.axial * share,
        radial=demand.radial * share,
        tangential=demand.tangential * share,
        power=demand.power * share,
        drive_asked=None if asked is None else asked * share,
    )


def _cool(asked: Asked) -> Callable[[Setting], Ratio]:
    """As the heat question has it, of all passes without a pause."""
    holding = asked.holding

    def share(setting: Setting) -> Ratio:
        cut = replace(asked.cut(setting), passes=len(setting.depths))
        demand = asked.demand(setting)
        power = np.asarray(demand.tangential * cut.cutting_speed)
        rise = warmth_after(holding, cut, replace(demand, power=power), asked.body)
        half = holding.half_warm
        best, low = half / max(likely(rise), 1e-3), half / max(high_end(rise), 1e-3)
        return share_of_yes("heat", best, low, holding.tables)

    return share


def _least_chip(asked: Asked) -> Callable[[Setting], Ratio]:
    least = asked.holding.tables.allowance("least_thickness").best
    model = asked.model
    known: dict[tuple[Metre, Metre], Ratio] = {}

    def share(setting: Setting) -> Ratio:
        key = min(setting.depths), setting.feed
        if key not in known:
            shallow = replace(model, depth=key[0], feed=key[1])
            known[key] = chip_taken(shallow).thickness / least
        return known[key]

    return share


def _tool(bears: float) -> Callable[[Setting], Ratio]:
    return lambda s: bears * (1 + 1e-9) / (s.deepest * s.feed)


def _finish(asked: Asked, ridges: Metre) -> Callable[[Setting], Ratio]:
    nose, more = asked.model.nose_radius, asked.holding.tables.allowance("ridges_in_practice").best
    return lambda s: ridges / (more * float(ridge_height(s.feed, nose))) if nose > 0 else inf


def _clean(nose: Metre) -> Callable[[Setting], Ratio]:
    return lambda s: min(s.depths) / float(ridge_height(s.feed, nose))


def _power(asked: Asked) -> Callable[[Setting], Ratio]:
    machine, tables = asked.machine, asked.holding.tables
    arrives = tables.allowance("drive_share").best

    def share(setting: Setting) -> Ratio:
        motor = motor_power(machine, setting.spindle)
        if motor is None:
            return inf
        margin = motor * arrives / max(asked.power(setting), 1e-9)
        return share_of_yes("power", margin, margin, tables)

    return share


def _margin(asked: Asked, question: str, *, cool: bool) -> Callable[[Setting], Ratio]:
    holding = asked.holding
    ask = holding.slip if question == "slip" else holding.rock

    def share(setting: Setting) -> Ratio:
        left = 1.0 if cool else holding.left_at(asked.warmth(setting))
        margin = ask(asked.demand(setting), left)
        return share_of_yes(question, likely(margin), low_end(margin), holding.tables)

    return share


def _warm(asked: Asked) -> Callable[[Setting], Ratio]:
    """Slip and rock once more with the warmth of the run in the work, the hold still cool."""
    both = [_margin(asked, q, cool=False) for q in ("slip", "rock")]

    def share(setting: Setting) -> Ratio:
        if asked.holding.left_at(asked.warmth(setting)) >= 1.0:
            return inf
        return min(ask(setting) for ask in both)

    return share


def _chatter(asked: Asked) -> Callable[[Setting], Ratio]:
    """The work side only, at this speed: top slide, saddle and spindle chatter too."""
    holding = asked.holding

    def share(setting: Setting) -> Ratio:
        swing = holding.swing
        if swing is None:
            return inf
        found = chatter_of(asked.cut(setting), asked.demand(setting), swing, holding.tables)
        if found is None:
            return inf
        margin = found.margin
        return share_of_yes("chatter", likely(margin), low_end(margin), holding.tables)

    return share


def _bend(asked: Asked, wanted: Wanted) -> Callable[[Setting], Ratio]:
    holding = asked.holding

    def share(setting: Setting) -> Ratio:
        bent = holding.bends(asked.demand(setting))
        if wanted.allowed is None:
            return 2 * wanted.left / max(likely(bent), 1e-12) if wanted.left > 0 else inf
        left = wanted.sprung * bent + holding.springs
        margin = wanted.allowed / np.maximum(left, 1e-12)
        return share_of_yes("bend", likely(margin), low_end(margin), holding.tables)

    return share
