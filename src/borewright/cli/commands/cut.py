"""borewright cut: what one turning cut asks."""

from __future__ import annotations

from math import degrees, isfinite
from typing import TYPE_CHECKING, Any

import click

from borewright.cli.out import record_json, say, say_json
from borewright.cli.typed import (
    ANGLE,
    LENGTH,
    NUMBER,
    PRESSURE,
    SPEED,
    given,
    json_option,
    needed,
    taken_words,
    units_option,
)
from borewright.errors import RefusedInput
from borewright.quantities.read import (
    length_system,
    read_angle,
    read_feed,
    read_length,
    read_number,
    read_pressure,
    read_speed,
)

if TYPE_CHECKING:
    from borewright.service.cut_forces import CutInput, CutResult


@click.command("cut")
@click.option("--material", help="Material of the work.")
@click.option("--diameter", type=LENGTH, help="Diameter before the cut.")
@click.option(
    "--kind",
    type=click.Choice(["turn", "face", "groove"]),
    default="turn",
    help="What is cut; a groove is plunged straight in.",
)
@click.option(
    "--depth", type=LENGTH, help="Depth of cut: on the radius, off a face, or a groove's width."
)
@click.option("--feed", type=LENGTH, help="Feed per revolution.")
@click.option("--speed", type=SPEED, help="Spindle speed (rpm) or cutting speed (ft/min, m/min).")
@click.option(
    "--edge-angle", type=ANGLE, help="Tool cutting edge angle, ISO 3002; 90deg is square."
)
@click.option("--nose-radius", type=LENGTH, help="Radius of the tool's nose.")
@click.option("--rake", type=ANGLE, help="Rake of the tool; 0deg for none, -5deg is negative.")
@click.option("--tool", type=click.Choice(["hss", "carbide"]), help="What the edge is made of.")
@click.option("--worn", is_flag=True, help="The edge is as worn as usual.")
@click.option("--interrupted", is_flag=True, help="Holes, spokes or a rim that is out knock at it.")
@click.option("--shear-strength", type=PRESSURE, help="Of the metal: a second sum, by one plane.")
@click.option("--chip-friction", type=NUMBER, help="Of the chip on the tool, for that sum; 0.5.")
@click.option("--length", type=LENGTH, help="How far the tool goes in one pass, for the time.")
@units_option
@json_option
def command(as_json: bool, **typed: Any) -> int:
    """Forces, torque, power and time of one cut on the lathe."""
    asked = _read(typed)
    from borewright.reference.library import tables
    from borewright.service.cut_forces import cut

    result = cut(asked, tables())
    units = typed["units"] or length_system(typed["diameter"]) or "mm"
    say_json(_record(result)) if as_json else say(_words(result, units))
    return 0


def _record(result: CutResult) -> dict[str, Any]:
    """The result as JSON, without what was not asked for."""
    return {key: value for key, value in record_json(result).items() if value is not None}


def _read(typed: dict[str, Any]) -> CutInput:
    bare = typed["units"]
    diameter = read_length(_typed(typed, "diameter", "2in"), "--diameter", bare=bare)
    depth = read_length(_typed(typed, "depth", "0.030in"), "--depth", bare=bare)
    feed = read_feed(_typed(typed, "feed", "0.004in"), "--feed", bare=bare)
    if depth >= diameter / 2 and typed["kind"] != "groove":
        allowed = f"less than half the diameter, {typed['diameter']}"
        raise RefusedInput("--depth", typed["depth"], allowed)
    speed = read_speed(_typed(typed, "speed", "350rpm or 90ft/min"), "--speed")
    material = _typed(typed, "material", "gray-iron-30")
    angle = given(read_angle, typed["edge_angle"], "--edge-angle")
    if angle is not None and not 0 < degrees(angle) <= 90 + 1e-9:
        raise RefusedInput(
            "--edge-angle",
            typed["edge_angle"],
            "above 0 to 90 deg (ISO 3002; 90deg is a square shoulder)",
        )
    from borewright.service.cut_forces import CutInput

    return CutInput(
        material,
        diameter,
        depth,
        feed,
        surface=speed.surface,
        spindle=speed.spindle,
        edge_angle=angle,
        nose_radius=_nose(typed),
        kind=typed["kind"],
        length=given(read_length, typed["length"], "--length", bare=bare),
        rake=_rake(typed["rake"]),
        tool=typed["tool"] or "",
        worn=typed["worn"],
        shear_strength=given(read_pressure, typed["shear_strength"], "--shear-strength"),
        chip_friction=_friction(typed["chip_friction"]),
        interrupted=typed["interrupted"],
    )


def _friction(text: str | None) -> float:
    if text is None:
        return CHIP_FRICTION
    size = read_number(text, "--chip-friction")
    if not 0 < size <= MOST_FRICTION:
        raise RefusedInput("--chip-friction", text, f"above 0 to {MOST_FRICTION:g}")
    return size


CHIP_FRICTION, MOST_FRICTION = 0.5, 1.5
"""Where none is stated; and the most that a chip was ever measured with (from memory)."""


def _nose(typed: dict[str, Any]) -> float | None:
    """None where not given; a grooving tool is square."""
    if typed["kind"] == "groove":
        if typed["nose_radius"] is not None:
            raise RefusedInput("--nose-radius", typed["nose_radius"], "none for a groove")
        return 0.0
    bare = typed["units"]
    radius: float | None = given(
        read_length, typed["nose_radius"], "--nose-radius", bare=bare, zero=True
    )
    return radius


def _rake(text: str | None) -> float | None:
    """An angle that may be negative, within what the rule for small changes is for."""
    if text is None:
        return None
    angle = read_angle(text, "--rake", zero=True, negative=True)
    if abs(degrees(angle)) > MOST_RAKE:
        raise RefusedInput("--rake", text, f"{-MOST_RAKE} to {MOST_RAKE} deg")
    return float(angle)


MOST_RAKE = 20
"""Degrees either way: the correction is for small changes."""


def _typed(typed: dict[str, Any], name: str, example: str) -> str:
    return needed(typed[name], f"--{name}", f"a {name}, such as {example}")


def _words(r: CutResult, units: Any) -> str:
    from borewright.quantities.show import Show

    s = Show(units)
    return "\n".join(
        [
            f"The cut takes {s.force(r.cutting_force)}, feeds with {s.force(r.feed_force)} and pushes the work "
            f"away with {s.force(r.passive_force)}.",
            f"Along the work {s.force(r.axial_force)}, across it {s.force(r.radial_force)}. "
            f"Torque {s.torque(r.torque)}, {s.power(r.power)} at the tool, at {s.spindle(r.spindle_speed)} "
            f"({s.surface(r.cutting_speed)}).",
            *_more(r, s),
            taken_words(r.assumed, s),
        ]
    )


def _more(r: CutResult, s: Any) -> list[str]:
    """Factors that are not 1, ridges and time, where there are any."""
    named = {
        "rake": r.rake_factor,
        "wear": r.wear_factor,
        "tool": r.tool_factor,
        "knocks": r.knock_factor,
    }
    factors = [f"{name} {value:.3g}" for name, value in named.items() if value != 1]
    lines = [f"Factors of the force: {', '.join(factors)}."] if factors else []
    if isfinite(r.ridge_height):
        lines.append(f"The feed leaves ridges of {s.small(r.ridge_height)} at best.")
    if isfinite(r.shear_plane_force):
        lines.append(
            f"By one shear plane, at {s.angle(r.shear_angle)}, {s.force(r.shear_plane_force)}."
        )
    if isfinite(r.time):
        lines.append(f"One pass takes {s.time(r.time)}.")
    return lines
