"""A bush: the hub bored out, a bush pressed or bonded in, its bore finished in place."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Demand, Figure, Have, Need, Verdict
from borewright.answer.rescue import DrawingHolds, WayOut
from borewright.answer.streams import Stream, positive
from borewright.errors import OutsideModel
from borewright.holding.owned import needed
from borewright.mechanics.bonded_joint import gap_torque
from borewright.mechanics.spread import likely, low_end
from borewright.mechanics.warm_fit import change_to_slide_on
from borewright.planning.rescue.bush_figures import bonded_figures, pressed_figures
from borewright.planning.rescue.bush_steps import bonded_steps, pressed_steps
from borewright.planning.rescue.bush_sums import (
    BushSizes,
    PressedBush,
    bush_material,
    bush_sizes,
    demands_of,
    drives,
    hardest,
    pressed_bush,
)
from borewright.planning.rescue.case import Case
from borewright.planning.rescue.entry import joined, takes, told, worst
from borewright.planning.weighing.figures import times
from borewright.planning.weighing.judge import judge

BUSH, BONDED_BUSH = "bush", "bonded-bush"
UNSEEN = "Nobody has said that the casting was looked at: ring it and look at the bored hub under a lamp before anything is pressed in."
"""A pressed bush strains the hub for good, and a casting hides what the sum does not know."""
WHY = "The bore is its size again, but a bush was not drawn: whoever drew it must agree to one."


def bush(case: Case) -> WayOut:
    """A bush pressed in by the lightest fit of ISO 286 that drives the cut."""
    named, sizes = "bore it out and press in a bush", bush_sizes(case)
    thin = thin_hub(case, sizes)
    if thin:
        return _row(case, BUSH, named, Verdict.NO, thin)
    try:
        demands = demands_of(case)
        fit = pressed_bush(case, sizes, demands)
    except OutsideModel as outside:
        said = f"The fits here go by ISO 286 and do not reach it: {outside}."
        return _row(case, BUSH, named, Verdict.NO, said)
    verdict, said = _judged(case, fit, demands)
    warm = warm_by(case, fit)
    figures = pressed_figures(case, fit, warm)
    steps = () if verdict is Verdict.NO else pressed_steps(case, fit, warm)
    return _row(case, BUSH, named, verdict, said, _needs(case, fit.material), figures, steps)


def bonded_bush(case: Case) -> WayOut:
    """A bush bonded in with a gap: nothing strains the hub."""
    named, sizes = "bore it out and bond in a bush", bush_sizes(case)
    thin = thin_hub(case, sizes)
    if thin:
        return _row(case, BONDED_BUSH, named, Verdict.NO, thin)
    fact, demands = case.tables.rescue_fact, demands_of(case)
    shear = fact("bonded_bush_shear")
    bond = positive(shear.low, shear.best, shear.high, Stream.CLAMPING)
    torque = gap_torque(bond / fact("bond_factor").best, sizes.hub_bore, sizes.length)
    held, said = _driven(case, np.asarray(torque), sizes, demands)
    needs = (
        needed(case.job, case.tables, "retaining-compound"),
        *_needs(case, bush_material(case))[1:],
    )
    figures = bonded_figures(case, sizes, np.asarray(torque))
    lead = "Nothing strains the hub, and the bush slides in. Clean, dry metal is everything."
    return _row(
        case,
        BONDED_BUSH,
        named,
        held,
        joined((lead, said)),
        needs,
        figures,
        bonded_steps(case, sizes),
    )


def thin_hub(case: Case, sizes: BushSizes) -> str:
    """Why the hub leaves no room for a bush; empty where it does."""
    least, show = case.tables.allowance("least_wall").best, case.show
    if sizes.hub_wall >= least:
        return ""
    left = show.length(max(sizes.hub_wall, 0.0))
    return (
        f"The hub would be bored out to {show.bore(sizes.hub_bore)} for a bush of {show.length(sizes.wall)} wall; that leaves "
        f"{left} of hub round it, and at least {show.length(least)} must stand."
    )


def _judged(case: Case, fit: PressedBush, demands: tuple[Demand, ...]) -> tuple[Verdict, str]:
    brittle = fit.facts.brittle
    best, low = likely(fit.strength), low_end(fit.strength)
    strong = judge("crack" if brittle else "yield", best, low, case.tables)
    held, drive = _driven(case, fit.torque, fit.sizes, demands)
    hub = f"The hub stands {times(best)} what {fit.code} asks of it, {times(low)} in the poor case (1 in 20)."
    if strong is Verdict.NO:
        return (
            strong,
            f"{hub} Pressed tight enough to drive the cut, it would strain the hub too far: bond the bush instead.",
        )
    unsaid = case.has("keyed") and case.job.work.keyway is None
    unseen = case.job.work.blank == "casting" and case.job.work.flaws != "none"
    least = Verdict.CARE if unsaid or unseen else Verdict.YES
    look = UNSEEN if unseen else ""
    closing = (
        "The bush closes for good as it goes in; it holds, no harder than its yield."
        if fit.yields
        else ""
    )
    return worst(strong, held, least), joined((hub, drive, closing, look, _key_corner(case, fit)))


def _driven(
    case: Case, torque: np.ndarray, sizes: BushSizes, demands: tuple[Demand, ...]
) -> tuple[Verdict, str]:
    """Whether the joint drives the cut; never a no, because a pin on the joint line drives it."""
    if not demands:
        return Verdict.YES, ""
    hard = hardest(demands, sizes.hub_bore)
    asked = np.hypot(hard.torque, hard.axial * sizes.hub_bore / 2)
    margin = torque / np.maximum(asked, 1e-9)
    said = f"It holds {times(likely(margin))} the hardest usual cut, {times(low_end(margin))} in the poor case; what the shaft asks in service is not known here."
    if drives(margin, case.tables) >= 1:
        return Verdict.YES, said
    return (
        Verdict.CARE,
        f"{said} Cut lighter, or drill and tap a grub screw on the joint line, half in each.",
    )


def _key_corner(case: Case, fit: PressedBush) -> str:
    if not case.has("keyed") and case.job.work.keyway is None:
        return ""
    if case.job.work.keyway is None:
        return "The size of the old keyway was not stated: what it leaves of the hub is not in the sum."
    return (
        "What is left of the old keyway notches the hub; cut the new one in the bush, on the other side."
        if fit.facts.notch_source != "ours" or float(fit.facts.notch_factor[0]) > 1
        else "The old keyway is bored away; the new one is cut in the bush."
    )


ROOM_TEMPERATURE = 293.15


def warm_by(case: Case, fit: PressedBush) -> float | None:
    """How much (K) to warm the hub so that the tightest bush drops in; None where it is too much."""
    room = case.tables.rescue_fact("warm_clearance").best
    grows = case.tables.material_range(case.job.work.material, "expansion").best
    warm = float(change_to_slide_on(fit.limits[1], room, fit.sizes.hub_bore, grows))
    most = case.tables.allowance("warm_limit").high - ROOM_TEMPERATURE
    return warm if warm <= most else None


def _needs(case: Case, material: str) -> tuple[Need, ...]:
    press = Need(case.job.shelf.press or "press or vice", Have.OWN, taken=not case.job.shelf.press)
    bar = Need(f"bar of {case.tables.material(material).name} for the bush", Have.OWN, taken=True)
    tools = (needed(case.job, case.tables, t) for t in ("boring-bar", "indicator"))
    return (press, bar, *tools)


def _row(
    case: Case,
    name: str,
    named: str,
    verdict: Verdict,
    said: str,
    needs: tuple[Need, ...] = (),
    figures: tuple[Figure, ...] = (),
    steps: tuple[str, ...] = (),
) -> WayOut:
    told_of = told(case, *(("bush", "press") if name == BUSH else ("bond",))) if steps else ()
    time = takes(name, case.tables)
    return WayOut(
        name, named, verdict, said, time, DrawingHolds.ASK, WHY, needs, figures, steps, told_of
    )
