"""borewright cut: what one turning cut asks."""

from __future__ import annotations

from math import degrees
from typing import TYPE_CHECKING, Any

import click

from borewright.cli.out import record_json, say, say_json
from borewright.cli.typed import (
    ANGLE,
    LENGTH,
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
    read_speed,
)

if TYPE_CHECKING:
    from borewright.service.cut_forces import CutInput, CutResult


@click.command("cut")
@click.option("--material", help="Material of the work.")
@click.option("--diameter", type=LENGTH, help="Diameter before the cut.")
@click.option("--depth", type=LENGTH, help="Depth of cut, on the radius.")
@click.option("--feed", type=LENGTH, help="Feed per revolution.")
@click.option("--speed", type=SPEED, help="Spindle speed (rpm) or cutting speed (ft/min, m/min).")
@click.option(
    "--edge-angle", type=ANGLE, help="Tool cutting edge angle, ISO 3002; 90deg is square."
)
@click.option("--nose-radius", type=LENGTH, help="Radius of the tool's nose.")
@units_option
@json_option
def command(as_json: bool, **typed: Any) -> int:
    """Forces, torque and power of one turning cut."""
    asked = _read(typed)
    from borewright.reference.library import tables
    from borewright.service.cut_forces import cut

    result = cut(asked, tables())
    units = typed["units"] or length_system(typed["diameter"]) or "mm"
    say_json(record_json(result)) if as_json else say(_words(result, units))
    return 0


def _read(typed: dict[str, Any]) -> CutInput:
    bare = typed["units"]
    diameter = read_length(_typed(typed, "diameter", "2in"), "--diameter", bare=bare)
    depth = read_length(_typed(typed, "depth", "0.030in"), "--depth", bare=bare)
    feed = read_feed(_typed(typed, "feed", "0.004in"), "--feed", bare=bare)
    if depth >= diameter / 2:
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
        nose_radius=given(read_length, typed["nose_radius"], "--nose-radius", bare=bare, zero=True),
    )


def _typed(typed: dict[str, Any], name: str, example: str) -> str:
    return needed(typed[name], f"--{name}", f"a {name}, such as {example}")


def _words(r: CutResult, units: Any) -> str:
    from borewright.quantities.show import Show

    s = Show(units)
    return "\n".join(
        [
            f"The cut takes {s.force(r.cutting_force)}, feeds with {s.force(r.feed_force)} and pushes the work "
            f"away with {s.force(r.passive_force)}.",
            f"Torque {s.torque(r.torque)}, {s.power(r.power)} at the tool, at {s.spindle(r.spindle_speed)} "
            f"({s.surface(r.cutting_speed)}).",
            taken_words(r.assumed, s),
        ]
    )
