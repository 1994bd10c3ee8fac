"""From a checked [[cut]] table to the record of a wished cut; keys of another kind are refused."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from borewright.errors.tree import RefusedInput
from borewright.job.records import CutWish
from borewright.job.typed import Reader, Value, maybe
from borewright.quantities.read import Speed
from borewright.quantities.si import Metre, MetrePerSecond, Radian

if TYPE_CHECKING:
    from borewright.job.schema import CutTable

SQUARE = math.pi / 2 * (1 + 1e-12)
"""A square shoulder, with the rounding of a degree typed in full."""

_TURNED = ("depth", "feed", "speed", "edge_angle", "nose_radius")
KEYS: Final = {
    "turn": _TURNED,
    "face": _TURNED,
    "grind": ("depth", "feed", "speed", "wheel_speed", "coolant"),
    "gear": (
        "teeth",
        "module",
        "diametral_pitch",
        "cutter_diameter",
        "cutter_teeth",
        "depth",
        "feed",
        "speed",
    ),
}
"""The keys that each kind of cut takes."""

MODULES: Final = (0.2e-3, 13e-3)
"""Modules (m) that a small shop's cutters have, finest and coarsest, with room (ours)."""

WHEEL_SPEEDS: Final = (1.0, 80.0)
"""Rim speeds (m/s) between which a figure is taken for that of a grinding wheel (ours)."""


def build_cut(table: CutTable, number: int, reader: Reader) -> CutWish:
    """A cut that is insisted on."""
    place = f"cut[{number}]"
    _check_keys(table, reader.at(place))
    speed = maybe(reader.speed, table.speed, f"{place}.speed") or Speed()
    return CutWish(
        kind=table.kind,
        depth=maybe(reader.length, table.depth, f"{place}.depth"),
        feed=maybe(reader.feed, table.feed, f"{place}.feed"),
        speed=speed.surface,
        spindle_speed=speed.spindle,
        edge_angle=_edge_angle(table, place, reader),
        nose_radius=_nose_radius(table, place, reader),
        wheel_speed=_wheel_speed(table, place, reader),
        coolant=table.coolant,
        teeth=table.teeth,
        module=_module(table.module, f"{place}.module", reader),
        diametral_pitch=table.diametral_pitch,
        cutter_diameter=maybe(reader.length, table.cutter_diameter, f"{place}.cutter_diameter"),
        cutter_teeth=table.cutter_teeth,
    )


def _check_keys(table: CutTable, where: str) -> None:
    """RefusedInput for a key of another kind of cut, and for a gear without its teeth or pitch."""
    allowed = KEYS[table.kind]
    every = dict.fromkeys(key for keys in KEYS.values() for key in keys)
    for key in every:
        if getattr(table, key) is not None and key not in allowed:
            found = f"{key} in a cut of kind {table.kind}"
            raise RefusedInput(f"{where}.{key}", found, f"one of: {', '.join(allowed)}")
    if table.kind == "gear":
        _check_gear(table, where)


def _check_gear(table: CutTable, where: str) -> None:
    if table.teeth is None:
        raise RefusedInput(f"{where}.teeth", "nothing", "the number of teeth of the gear")
    stated = [key for key in ("module", "diametral_pitch") if getattr(table, key) is not None]
    if len(stated) != 1:
        found = "both module and diametral_pitch" if stated else "neither module nor pitch"
        raise RefusedInput(where, found, "one of module and diametral_pitch")


def _edge_angle(table: CutTable, place: str, reader: Reader) -> Radian | None:
    angle = maybe(reader.angle, table.edge_angle, f"{place}.edge_angle")
    if angle is not None and angle > SQUARE:
        allowed = "above 0 to 90 deg (ISO 3002; 90deg is a square shoulder)"
        raise RefusedInput(reader.at(f"{place}.edge_angle"), str(table.edge_angle), allowed)
    return angle


def _nose_radius(table: CutTable, place: str, reader: Reader) -> Metre | None:
    if table.nose_radius is None:
        return None
    return reader.length(table.nose_radius, f"{place}.nose_radius", zero=True)


def _module(value: Value | None, place: str, reader: Reader) -> Metre | None:
    """A module; a bare number is in millimetres, because modules are."""
    if value is None:
        return None
    module = Reader(reader.file, "mm").length(value, place)
    if not MODULES[0] <= module <= MODULES[1]:
        raise RefusedInput(reader.at(place), str(value), "a module from 0.2mm to 13mm")
    return module


def _wheel_speed(table: CutTable, place: str, reader: Reader) -> MetrePerSecond | None:
    if table.wheel_speed is None:
        return None
    where = f"{place}.wheel_speed"
    surface = reader.speed(table.wheel_speed, where).surface
    if surface is None or not WHEEL_SPEEDS[0] <= surface <= WHEEL_SPEEDS[1]:
        allowed = "the speed of the wheel's rim, such as 30m/s or 6000ft/min"
        raise RefusedInput(reader.at(where), str(table.wheel_speed), allowed)
    return surface
