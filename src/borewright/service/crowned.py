"""crown: a flat-belt pulley -> every rule's crown, the one to take, its setting and its stairs."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from typing import Any, Literal

from borewright.answer.crown import PulleyCrown, Shape
from borewright.making.crown import CrownAsked, crown_for
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.service.fit_records import Taken


@dataclass(frozen=True, slots=True)
class CrownInput:
    """What `crown` is given: `diameter` at the middle of the face. None is taken and said.

    `dial` None is one of which it is not known what it counts. `steps` are those in half the face.
    """

    diameter: Metre
    face: Metre
    rule: str | None = None
    height: Metre | None = None
    shape: Shape | None = None
    flat: Metre | None = None
    dial: Literal["radius", "diameter", "unknown"] | None = None
    division: Metre | None = None
    steps: int | None = None
    slide_travel: Metre | None = None
    units: Literal["inch", "mm"] = "inch"


@dataclass(frozen=True, slots=True)
class CrownResult:
    """The crown, and what was not given."""

    crown: PulleyCrown
    assumed: tuple[Taken, ...]

    def as_dict(self) -> dict[str, Any]:
        """As JSON: one flat object of plain numbers, `assumed` apart.

        `height_by_RULE_m` stands for each rule that says something of this pulley; the stairs are
        `cut_1_…`, `cut_2_…` in the order they are made, `_dial_m` as the dial reads.
        """
        return {
            **_form(self.crown),
            **_rules(self.crown),
            **_stairs(self.crown),
            "assumed": [asdict(taken) for taken in self.assumed],
        }


def crown(asked: CrownInput, tables: Tables) -> CrownResult:
    """The crown of one pulley by one rule, beside all the others.

    UnknownName for a rule that is not in the tables; RefusedInput where it says nothing of this
    diameter, and for a crown that no pulley has.

    >>> from borewright.reference import tables
    >>> made = crown(CrownInput(0.127, 0.0508, rule="dooley"), tables()).as_dict()
    >>> round(made["height_m"] / 0.0254, 5), round(made["top_slide_angle_rad"], 5)
    (0.03125, 0.03124)
    """
    wanted = CrownAsked(
        asked.rule,
        asked.height,
        asked.shape or "taper",
        asked.flat or 0.0,
        asked.dial or "unknown",
        asked.division,
        asked.steps,
        asked.slide_travel,
    )
    made = crown_for(asked.diameter, asked.face, wanted, asked.units, tables)
    return CrownResult(made, tuple(_assumed(asked, made)))


def _assumed(asked: CrownInput, made: PulleyCrown) -> list[Taken]:
    taken = []
    if made.rule is not None and asked.rule is None:
        taken.append(Taken("rule", made.rule.rule, "", made.rule.source))
    if asked.shape is None:
        taken.append(Taken("shape", made.shape, "", "ours: the top slide makes it without stairs"))
    if asked.flat is None and made.shape == "taper":
        taken.append(Taken("flat in the middle", 0.0, "m", "ours"))
    if asked.slide_travel is None:
        taken.append(Taken("slide travel", made.slide_travel, "m", "ours"))
    if asked.dial in (None, "unknown"):
        taken.append(Taken("dial", "counts radius", "", "ours: not known"))
    if asked.division is None:
        taken.append(Taken("dial division", made.stepped.division, "m", "ours"))
    if asked.steps is None:
        taken.append(Taken("step of the saddle", made.stepped.step, "m", "ours"))
    return taken


def _form(made: PulleyCrown) -> dict[str, float]:
    return {
        "height_m": made.height,
        "diameter_m": made.diameter,
        "edge_diameter_m": made.edge_diameter,
        "face_m": made.face,
        "flat_m": made.flat,
        "top_slide_angle_rad": made.angle,
        "slide_travel_m": made.slide_travel,
        "slide_reading_m": made.slide_reading,
        "arc_radius_m": made.radius,
    }


def _rules(made: PulleyCrown) -> dict[str, float]:
    heights = {f"height_by_{r.rule.replace('-', '_')}_m": r.height for r in made.rules}
    return {
        "recommended_height_m": made.recommended.height,
        "lowest_rule_height_m": made.rules[0].height,
        "highest_rule_height_m": made.rules[-1].height,
        **heights,
    }


def _stairs(made: PulleyCrown) -> dict[str, float]:
    stepped, stairs = made.stepped, made.stepped.stairs
    said: dict[str, float] = {
        "saddle_step_m": stepped.step,
        "dial_division_m": stepped.division,
        "dial_per_radius": stepped.per_radius,
        "cuts_in_half_the_face": 0 if stairs is None else len(stairs.stops),
    }
    if stairs is None:
        return said
    said |= {"largest_ridge_m": stairs.cusp, "largest_rounding_m": stairs.rounding}
    for k in range(len(stairs.stops)):
        said[f"cut_{k + 1}_from_edge_m"] = float(stairs.stops[k])
        said[f"cut_{k + 1}_dial_m"] = float(stairs.divisions[k]) * stepped.division
        said[f"cut_{k + 1}_wanted_m"] = float(stairs.wanted[k])
        said[f"cut_{k + 1}_ridge_m"] = float(stairs.ridges[k])
    return said
