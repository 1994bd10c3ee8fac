"""Forces of grinding and gear-cutting passes as figures, with the numbers they are worked from."""

from __future__ import annotations

from borewright.answer.records import Cut, Demand, Figure
from borewright.cutting.demand import form_cutter_factors
from borewright.cutting.load_demand import engaged, space_cut
from borewright.mechanics.milling import peak_force
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure, given, spread


def load_force(trial: Trial, cut: Cut, demand: Demand) -> tuple[Figure, ...]:
    """The force of a wheel or form cutter, and the torque it asks."""
    if cut.kind == "grind":
        return _wheel(trial, cut, demand)
    return _cutter(trial, cut, demand)


def _wheel(trial: Trial, cut: Cut, demand: Demand) -> tuple[Figure, ...]:
    t, material = trial.tables, trial.job.work.material
    energy, ratio = t.grinding_energy(material), t.grinding("force_ratio")
    force = float(demand.tangential[0])
    return (
        spread(
            "grinding_force",
            demand.tangential,
            "N",
            "force",
            "grinding_force",
            (
                given("u (J/mm³)", energy.best * 1e-9),
                given("work", cut.diameter, "m"),
                given("infeed", cut.depth, "m", "small"),
                given("traverse", cut.feed, "m", "feed"),
                given("work turns", cut.spindle_speed, "rev/s"),
                given("wheel speed", cut.wheel_speed or 0.0, "m/s"),
            ),
            (energy.source,),
        ),
        spread(
            "grinding_push",
            demand.radial,
            "N",
            "force",
            "grinding_push",
            (given("force", force, "N"), given("ratio", ratio.best)),
            (ratio.source,),
        ),
        spread(
            "cut_torque",
            demand.torque,
            "N·m",
            "torque",
            "cut_torque",
            (given("force", force, "N"), given("diameter", cut.diameter, "m")),
        ),
    )


def _cutter(trial: Trial, cut: Cut, demand: Demand) -> tuple[Figure, ...]:
    t, material, space = trial.tables, trial.job.work.material, space_cut(cut)
    k, (_, width, edge) = t.kienzle(material), engaged(cut)
    share, impact = t.gear_cutting("out_of_center"), t.gear_cutting("impact")
    factors = form_cutter_factors(t)
    inputs = (
        given("kc11 (N/mm²)", k.kc11.best),
        given("mc", k.mc.best),
        given("b (mm)", width * 1e3),
        given("L (mm)", edge * 1e3),
        given("feed a tooth", cut.feed, "m", "small"),
        given("depth", cut.depth, "m", "depth"),
        given("cutter", space.cutter_diameter, "m"),
        given("teeth of the cutter", space.cutter_teeth),
        given("worn tool and its kind", factors),
        given("impact", impact.best),
    )
    peak = likely_peak(trial, cut)
    root = cut.diameter - 2 * space.whole_depth
    return (
        figure(
            "grip_left",
            demand.grip_left,
            "",
            "",
            "grip_left",
            (
                given("bore", trial.job.work.bore.size, "m", "bore"),
                given("root of the teeth", root, "m"),
            ),
        ),
        figure(
            "milling_force", peak, "N", "force", "milling_force", inputs, (k.source, impact.source)
        ),
        spread(
            "cut_torque",
            demand.torque,
            "N·m",
            "torque",
            "milling_torque",
            (
                given("share", share.best),
                given("force", peak, "N"),
                given("diameter", cut.diameter, "m"),
            ),
            (share.source,),
        ),
    )


def likely_peak(trial: Trial, cut: Cut) -> float:
    """Peak force (N) of the form cutter along its rim in the likely case, impact in it."""
    space, k = space_cut(cut), trial.tables.kienzle(trial.job.work.material)
    arc, width, edge = engaged(cut)
    kc11 = k.kc11.best * 1e6 * form_cutter_factors(trial.tables)
    steady = peak_force(cut.feed, arc, space.cutter_teeth, width, edge, kc11, k.mc.best)
    return float(steady) * trial.tables.gear_cutting("impact").best
