"""The figures of a bush, each with the rule and the numbers that a pencil needs to check it."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Draws, Figure, Input
from borewright.mechanics.spread import likely, low_end
from borewright.planning.rescue.bush_sums import BushSizes, PressedBush
from borewright.planning.rescue.case import Case
from borewright.planning.rescue.entry import between, of_range
from borewright.planning.weighing.figures import figure, given, spread
from borewright.quantities.si import Kelvin


def pressed_figures(case: Case, fit: PressedBush, warm: Kelvin | None) -> tuple[Figure, ...]:
    """Sizes and fit, then what it does to hub and bush, then how it is put in."""
    return (*_common(case, fit.sizes), *_fit(fit), *_strains(fit), *_put_in(case, fit, warm))


def bonded_figures(case: Case, s: BushSizes, torque: Draws) -> tuple[Figure, ...]:
    """Sizes with the gap, and what the bond holds."""
    fact = case.tables.rescue_fact
    gap, shear = fact("bonded_bush_gap"), fact("bonded_bush_shear")
    inputs = (
        given("shear strength", shear.best, "Pa"),
        given("outside of the bush", s.hub_bore, "m", "bore"),
        given("length", s.length, "m", "length"),
        given("kept in hand", fact("bond_factor").best),
    )
    return (
        *_common(case, s),
        between("hub_bore", s.hub_bore, s.hub_bore + gap.low, ("ours",)),
        between("bush_outside", s.hub_bore - gap.high, s.hub_bore - gap.low, gap.sources),
        spread("bonded_torque", torque, "N·m", "torque", "bonded_torque", inputs, shear.sources),
    )


def _common(case: Case, s: BushSizes) -> tuple[Figure, ...]:
    walls = {"hub_wall_left": (s.hub_outside, s.hub_bore), "bush_wall": (s.hub_bore, s.high)}
    return (
        of_range("runout", case.tables.holding_fact("indicator_care"), "small"),
        between("bush_bore", s.low, s.high, case.wanted.sources),
        figure("bush_bore_as_pressed", s.as_pressed, "m", "bore", ""),
        *(
            figure(
                name,
                (outside - bore) / 2,
                "m",
                "length",
                "wall_left",
                (given("outside", outside, "m", "length"), given("bore", bore, "m", "bore")),
            )
            for name, (outside, bore) in walls.items()
        ),
    )


def _fit(fit: PressedBush) -> tuple[Figure, ...]:
    hole, shaft = fit.hole, fit.shaft
    low, high = fit.limits
    middles = (
        given("bush outside", (shaft.smallest + shaft.largest) / 2, "m", "bore"),
        given("hub bore", (hole.smallest + hole.largest) / 2, "m", "bore"),
    )
    sources = tuple(dict.fromkeys((*hole.sources, *shaft.sources)))
    return (
        between("hub_bore", hole.smallest, hole.largest, hole.sources),
        between("bush_outside", shaft.smallest, shaft.largest, shaft.sources),
        figure(
            "bush_interference",
            (low + high) / 2,
            "m",
            "small",
            "bush_interference",
            middles,
            sources,
            (low, high),
        ),
    )


def _strains(fit: PressedBush) -> tuple[Figure, ...]:
    f, s = fit.facts, fit.sizes
    pressure = given("pressure", likely(fit.pressure), "Pa")
    sizes = (
        given("hub bore", s.hub_bore, "m", "bore"),
        given("hub outside", s.hub_outside, "m", "length"),
    )
    raised = (
        given("edge", float(f.edge_factor[0])),
        given("notch", float(f.notch_factor[0])),
    )
    best, low = likely(fit.strength), low_end(fit.strength)
    return (
        spread("bush_pressure", fit.pressure, "Pa", "pressure", "bush_pressure", _bodies(fit)),
        spread(
            "bush_tension",
            fit.tension,
            "Pa",
            "pressure",
            "bush_tension",
            (pressure, *sizes, *raised),
        ),
        figure("strength_margin", best, "", "ratio", "", (), f.sources, (min(low, best), best)),
        figure("bush_yields_at", fit.yields_at, "Pa", "pressure", "bush_yield", _yielding(fit)),
        figure("bush_closes", fit.closes, "m", "small", "bush_closes", _closing(fit)),
    )


def _bodies(fit: PressedBush) -> tuple[Input, ...]:
    f, s = fit.facts, fit.sizes
    e_hub, e_bush = (float(np.atleast_1d(b.modulus)[0]) for b in (f.work, f.mandrel))
    return (
        given("interference", likely(fit.interference), "m", "small"),
        given("hub bore", s.hub_bore, "m", "bore"),
        given("hub outside", s.hub_outside, "m", "length"),
        given("bush bore", s.as_pressed, "m", "bore"),
        given("E hub", e_hub, "Pa"),
        given("v hub", float(np.atleast_1d(f.work.poisson)[0])),
        given("E bush", e_bush, "Pa"),
        given("v bush", float(np.atleast_1d(f.mandrel.poisson)[0])),
    )


def _yielding(fit: PressedBush) -> tuple[Input, ...]:
    wanted = ("hub bore", "bush bore")
    stands = given("yield of the bush", fit.bush_yield, "Pa")
    return (stands, *(i for i in _bodies(fit) if i.label in wanted))


def _closing(fit: PressedBush) -> tuple[Input, ...]:
    wanted = ("hub bore", "bush bore", "E bush")
    return (
        given("pressure", likely(fit.pressure), "Pa"),
        *(i for i in _bodies(fit) if i.label in wanted),
    )


def _put_in(case: Case, fit: PressedBush, warm: Kelvin | None) -> tuple[Figure, ...]:
    f, s = fit.facts, fit.sizes
    share = f.bearing_share
    gripped = (
        given("pressure less peaks", likely(fit.grip_pressure), "Pa"),
        given("length", s.length, "m", "length"),
        given("hub bore", s.hub_bore, "m", "bore"),
        given("share of the round that bears", share),
    )
    on, slip = (given("friction", float(mu[0])) for mu in (f.friction_on, f.friction_slip))
    turns = spread(
        "bush_torque", fit.torque, "N·m", "torque", "bush_torque", (slip, *gripped), f.sources
    )
    push = spread("bush_press", fit.push, "N", "force", "bush_press", (on, *gripped), f.sources)
    return (turns, push, *(() if warm is None else (_warming(case, fit, warm),)))


def _warming(case: Case, fit: PressedBush, warm: Kelvin) -> Figure:
    room = case.tables.rescue_fact("warm_clearance").best
    grows = case.tables.material_range(case.job.work.material, "expansion").best
    inputs = (
        given("largest interference", fit.limits[1], "m", "small"),
        given("room", room, "m", "small"),
        given("expansion x hub bore (nm/K)", grows * fit.sizes.hub_bore * 1e9),
    )
    return figure("warm_hub_by", warm, "K", "temperature difference", "bush_warm", inputs)
