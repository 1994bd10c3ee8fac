"""Units, shop fractions, reading and showing: the border between text and SI floats.

    si.py               the SI unit aliases that records and models carry (`Metre`, `Newton` …)
    units.py            the exact unit table of what a shop types
    grammar.py          splitting a typed text into a number and a unit word
    limits.py           the sizes a quantity of this trade can have
    refusals.py         the one-sentence refusals
    read.py             read_length, read_force …: text -> SI float, or UnreadableQuantity
    rounding.py         a number as text, no finer than can be measured
    inch_fractions.py   64ths of an inch
    scales.py           which unit each kind of quantity is shown in
    kinds.py            names of kinds, aliases, and the kind an SI unit means
    show.py             Show("inch").bore(metres) -> "0.6255 in (15.888 mm)"
    plain_text.py       ASCII stand-ins

May import errors only. Standard library only, and light: a refusal loads nothing else.
"""

from borewright.quantities.plain_text import ascii_text
from borewright.quantities.read import (
    Speed,
    length_system,
    read_angle,
    read_feed,
    read_force,
    read_length,
    read_mass,
    read_number,
    read_power,
    read_pressure,
    read_roughness,
    read_speed,
    read_spindle,
    read_taper,
    read_temperature,
    read_temperature_difference,
    read_time,
    read_torque,
)
from borewright.quantities.show import Show

__all__ = [
    "Show",
    "Speed",
    "ascii_text",
    "length_system",
    "read_angle",
    "read_feed",
    "read_force",
    "read_length",
    "read_mass",
    "read_number",
    "read_power",
    "read_pressure",
    "read_roughness",
    "read_speed",
    "read_spindle",
    "read_taper",
    "read_temperature",
    "read_temperature_difference",
    "read_time",
    "read_torque",
]
