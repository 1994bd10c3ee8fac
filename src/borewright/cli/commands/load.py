"""borewright load: what a grinding or gear-cutting pass asks of work on its mandrel."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Literal

import click

from borewright.cli.out import record_json, say, say_json
from borewright.cli.typed import (
    LENGTH,
    NUMBER,
    SPEED,
    given,
    json_option,
    needed,
    taken_words,
    units_option,
)
from borewright.errors import RefusedInput, UnknownName
from borewright.quantities.read import (
    Speed,
    length_system,
    read_feed,
    read_length,
    read_number,
    read_speed,
)

if TYPE_CHECKING:
    from borewright.job.records import CutWish
    from borewright.service.load_forces import GearResult, GrindResult

ENERGY = "J/m³"
"""Said in J/mm³, as a shop's books print it."""

MOST_TEETH, MOST_CUTTER_TEETH = 400, 60


class Known(click.Group):
    """A group whose refusals of a name read as every other refusal."""

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        if args and args[0] not in self.commands and not args[0].startswith("-"):
            raise UnknownName(self.name or "command", args[0], tuple(self.commands))
        return super().resolve_command(ctx, args)


@click.group("load", cls=Known)
def command() -> None:
    """Forces of one grinding or gear-cutting pass on the mandrel."""


@command.command("grind")
@click.option("--material", help="Material of the work.")
@click.option("--diameter", type=LENGTH, help="Outside diameter of the work.")
@click.option("--depth", type=LENGTH, help="Infeed of one pass, on the radius.")
@click.option("--feed", type=LENGTH, help="Traverse per revolution of the work.")
@click.option("--speed", type=SPEED, help="Speed of the work: rpm, or ft/min, m/min at its rim.")
@click.option("--wheel-speed", type=SPEED, help="Speed of the wheel's rim (m/s, ft/min).")
@units_option
@json_option
def grind(as_json: bool, **typed: Any) -> int:
    """Forces, torque, power and heat of a traverse grinding pass."""
    bare = typed["units"]
    material = _typed(typed, "material", "o1 hardened")
    diameter = read_length(_typed(typed, "diameter", "40mm"), "--diameter", bare=bare)
    depth = read_length(_typed(typed, "depth", "0.005mm"), "--depth", bare=bare)
    feed = read_feed(_typed(typed, "feed", "3mm"), "--feed", bare=bare)
    if depth >= diameter / 2:
        allowed = f"less than half the diameter, {typed['diameter']}"
        raise RefusedInput("--depth", typed["depth"], allowed)
    speed = read_speed(_typed(typed, "speed", "120rpm or 15m/min"), "--speed")
    wheel = _wheel_speed(typed["wheel_speed"])
    from borewright.job.records import CutWish
    from borewright.reference.library import tables
    from borewright.service.load_forces import grind as ground

    wish = CutWish(
        "grind", depth, feed, speed=speed.surface, spindle_speed=speed.spindle, wheel_speed=wheel
    )
    result = ground(wish, material, diameter, tables())
    _say(result, _ground_words, as_json, bare or length_system(typed["diameter"]) or "mm")
    return 0


@command.command("gear")
@click.option("--material", help="Material of the blank.")
@click.option("--teeth", type=NUMBER, help="Teeth of the gear.")
@click.option("--module", type=LENGTH, help="Module, in mm; this or --diametral-pitch.")
@click.option("--diametral-pitch", type=NUMBER, help="Teeth for each inch of pitch diameter.")
@click.option("--cutter-diameter", type=LENGTH, help="Outside diameter of the form cutter.")
@click.option("--cutter-teeth", type=NUMBER, help="Teeth of the form cutter.")
@click.option("--depth", type=LENGTH, help="Depth of one pass; left out, the whole depth.")
@click.option("--feed", type=LENGTH, help="Feed for each tooth of the cutter.")
@click.option("--speed", type=SPEED, help="Speed of the cutter: rpm, or ft/min, m/min at its rim.")
@units_option
@json_option
def gear(as_json: bool, **typed: Any) -> int:
    """Forces, torque and power of a form cutter in one tooth space."""
    material = _typed(typed, "material", "mild steel")
    wish = _gear_wish(typed)
    from borewright.reference.library import tables
    from borewright.service.load_forces import gear as geared

    units: Literal["inch", "mm"] = typed["units"] or ("mm" if wish.module else "inch")
    _say(geared(wish, material, tables(), units), _gear_words, as_json, units)
    return 0


def _gear_wish(typed: dict[str, Any]) -> CutWish:
    bare = typed["units"]
    teeth = _whole(_typed(typed, "teeth", "24"), "--teeth", 6, MOST_TEETH)
    module, pitch = _pitch(typed)
    cutter = given(read_length, typed["cutter_diameter"], "--cutter-diameter", bare=bare)
    count = typed["cutter_teeth"]
    cutter_teeth = None if count is None else _whole(count, "--cutter-teeth", 4, MOST_CUTTER_TEETH)
    depth = given(read_length, typed["depth"], "--depth", bare=bare)
    feed = given(read_feed, typed["feed"], "--feed", bare=bare)
    speed = given(read_speed, typed["speed"], "--speed") or Speed()
    from borewright.job.records import CutWish

    return CutWish(
        "gear",
        depth,
        feed,
        speed=speed.surface,
        spindle_speed=speed.spindle,
        teeth=teeth,
        module=module,
        diametral_pitch=pitch,
        cutter_diameter=cutter,
        cutter_teeth=cutter_teeth,
    )


def _pitch(typed: dict[str, Any]) -> tuple[float | None, float | None]:
    """Module (m) or diametral pitch, whichever is typed; RefusedInput for both or neither."""
    module, pitch = typed["module"], typed["diametral_pitch"]
    if (module is None) == (pitch is None):
        found = "neither of them" if module is None else "both"
        raise RefusedInput("--module, --diametral-pitch", found, "one of the two")
    if module is not None:
        size = read_length(module, "--module", bare="mm")
        if not 0.2e-3 <= size <= 13e-3:
            raise RefusedInput("--module", module, "a module from 0.2mm to 13mm")
        return size, None
    value = read_number(pitch, "--diametral-pitch")
    if not 2 <= value <= 120:
        raise RefusedInput("--diametral-pitch", pitch, "a number from 2 to 120")
    return None, value


def _whole(text: str, where: str, least: int, most: int) -> int:
    value = read_number(text, where)
    if value != int(value) or not least <= value <= most:
        raise RefusedInput(where, text, f"a whole number from {least} to {most}")
    return int(value)


def _wheel_speed(text: str | None) -> float | None:
    if text is None:
        return None
    surface = read_speed(text, "--wheel-speed").surface
    if surface is None or not 1 <= surface <= 80:
        allowed = "the speed of the wheel's rim, such as 30m/s or 6000ft/min"
        raise RefusedInput("--wheel-speed", text, allowed)
    return surface


def _typed(typed: dict[str, Any], name: str, example: str) -> str:
    return needed(typed[name], f"--{name}", f"a {name}, such as {example}")


def _say(result: Any, words: Any, as_json: bool, units: str) -> None:
    if as_json:
        say_json(record_json(result))
        return
    from borewright.quantities.show import Show

    show = Show("mm" if units == "mm" else "inch")
    said = [t for t in result.assumed if t.unit != ENERGY]
    energy = [
        f"Specific grinding energy {t.taken * 1e-9:g} J/mm³ ({t.source})."
        for t in result.assumed
        if t.unit == ENERGY
    ]
    say("\n".join([*words(result, show), " ".join([taken_words(said, show), *energy])]))


def _ground_words(r: GrindResult, s: Any) -> list[str]:
    return [
        f"The wheel drags with {s.force(r.tangential_force)}, pushes the work away with {s.force(r.normal_force)}, "
        f"and along the mandrel with {s.force(r.axial_force)}, both ways.",
        f"Torque {s.torque(r.torque)}; {s.power(r.power)} at the wheel ({s.surface(r.wheel_speed)}), of which "
        f"{s.power(r.heat_in_work)} warms the work at {s.spindle(r.spindle_speed)}.",
    ]


def _gear_words(r: GearResult, s: Any) -> list[str]:
    return [
        f"Outside {s.length(r.outside_diameter)}, whole depth {s.depth(r.whole_depth)}; the cutter "
        f"({s.length(r.cutter_diameter)}) is in the cut for {s.quantity(r.engagement_angle, 'rad')} of its turn, "
        f"{r.teeth_in_cut:.1f} teeth at once.",
        f"It takes up to {s.force(r.peak_force)} ({s.force(r.mean_force)} on the average), pushes {s.force(r.axial_force)} "
        f"along the mandrel, and {s.force(abs(r.radial_force))} {'away from' if r.radial_force > 0 else 'towards'} it "
        f"({s.force(abs(r.climbing_radial_force))} towards it if it climbs).",
        "That is a sharp cutter that does not strike; a plan counts a worn one and its blow, likely "
        f"{s.force(r.planned_peak_force)}.",
        f"Out of center it turns the work with about {s.torque(r.torque)}. {s.power(r.power)} at the cutter, "
        f"{s.spindle(r.spindle_speed)}, table {s.length(60 * r.table_feed)} a minute.",
    ]
