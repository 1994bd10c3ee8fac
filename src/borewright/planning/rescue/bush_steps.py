"""How a bush is made, held, put in and finished, step by step."""

from __future__ import annotations

from borewright.mechanics.spread import high_end, likely
from borewright.planning.rescue.bush_sums import BushSizes, PressedBush
from borewright.planning.rescue.case import Case
from borewright.quantities.si import Kelvin


def pressed_steps(case: Case, fit: PressedBush, warm: Kelvin | None) -> tuple[str, ...]:
    """For a bush pressed in."""
    show, s = case.show, fit.sizes
    hole = show.band(fit.hole.smallest, fit.hole.largest, "bore")
    shaft = show.band(fit.shaft.smallest, fit.shaft.largest, "bore")
    return (
        _bore_hub(case, f"{hole} ({fit.hole.code})"),
        _make(case, s, f"{shaft} ({fit.shaft.code})"),
        f"Press it in oiled, straight, the hub supported, the lead first. Expect about {show.force(likely(fit.push))} at the end; "
        f"stop at {show.force(high_end(fit.push))}: it has gone in askew.{_warmed(case, warm)}",
        *_finish(case, s),
    )


def _warmed(case: Case, warm: Kelvin | None) -> str:
    if warm is None:
        return ""
    return f" Or warm the hub evenly by about {case.show.temperature_difference(warm)} and drop it in at once."


def bonded_steps(case: Case, s: BushSizes) -> tuple[str, ...]:
    """For a bush bonded in."""
    show, gap = case.show, case.tables.rescue_fact("bonded_bush_gap")
    outside = show.band(s.hub_bore - gap.high, s.hub_bore - gap.low, "bore")
    return (
        _bore_hub(
            case,
            f"about {show.bore(s.hub_bore)}, left as the tool leaves it: a bond likes it rough",
        ),
        _make(case, s, f"{outside} for this hub: measure the hub and take the gap off that"),
        "Clean both with solvent until a white rag stays white; dry. Compound round both, turn the bush as it goes in, wipe "
        "the ends, leave it still for as long as its sheet says.",
        *_finish(case, s),
    )


def _bore_hub(case: Case, to: str) -> str:
    return (
        f"Hold the work by what is not to be turned, the rim or the outside set true by indicator, the face as well. Bore the "
        f"hub to {to}; chamfer its edge."
    )


def _make(case: Case, s: BushSizes, outside: str) -> str:
    show = case.show
    lead = show.length(case.tables.rescue_fact("bush_chamfer").best)
    return (
        f"Turn and bore the bush in one chucking: outside {outside}, bore {show.bore(s.as_pressed)}, which leaves metal to "
        f"finish; length {show.length(s.length)}; a lead of {lead} on the entering end; part it off."
    )


def _finish(case: Case, s: BushSizes) -> tuple[str, ...]:
    bore = case.show.band(s.low, s.high, "bore")
    key = (
        ("Cut the keyway last, in the bush, on the side away from the old one.",)
        if case.has("keyed") or case.job.work.keyway
        else ()
    )
    return (
        f"Bore it in place to {bore}, the work set true by indicator on the rim as before: it has closed in, and only what is "
        "bored in place is true.",
        *key,
    )
