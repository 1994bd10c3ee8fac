"""The SI units that records and models use, each written once.

An alias such as `Metre` is a float that says its unit to software: record fields, forms, JSON keys
and reports all read it from here.

>>> from typing import get_args
>>> get_args(Metre)[1].suffix
'm'
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated


@dataclass(frozen=True, slots=True)
class Unit:
    """An SI unit: how it is printed and how it ends a JSON key."""

    symbol: str
    suffix: str


Metre = Annotated[float, Unit("m", "m")]
MetrePerMetre = Annotated[float, Unit("m/m", "m_per_m")]
SquareMetre = Annotated[float, Unit("m²", "m2")]
CubicMetrePerSecond = Annotated[float, Unit("m³/s", "m3_per_s")]
Newton = Annotated[float, Unit("N", "N")]
NewtonMetre = Annotated[float, Unit("N·m", "Nm")]
NewtonPerMetre = Annotated[float, Unit("N/m", "N_per_m")]
Pascal = Annotated[float, Unit("Pa", "Pa")]
PerPascal = Annotated[float, Unit("1/Pa", "per_Pa")]
Joule = Annotated[float, Unit("J", "J")]
Watt = Annotated[float, Unit("W", "W")]
Kelvin = Annotated[float, Unit("K", "K")]
PerKelvin = Annotated[float, Unit("1/K", "per_K")]
Second = Annotated[float, Unit("s", "s")]
MetrePerSecond = Annotated[float, Unit("m/s", "m_per_s")]
RevPerSecond = Annotated[float, Unit("rev/s", "rev_per_s")]
Radian = Annotated[float, Unit("rad", "rad")]
Kilogram = Annotated[float, Unit("kg", "kg")]
KilogramMetre = Annotated[float, Unit("kg·m", "kg_m")]
KilogramPerCubicMetre = Annotated[float, Unit("kg/m³", "kg_per_m3")]
JoulePerKilogramKelvin = Annotated[float, Unit("J/(kg·K)", "J_per_kg_K")]
WattPerKelvin = Annotated[float, Unit("W/K", "W_per_K")]
WattPerSquareMetreKelvin = Annotated[float, Unit("W/(m²·K)", "W_per_m2_K")]
WattPerMetreKelvin = Annotated[float, Unit("W/(m·K)", "W_per_m_K")]
Ratio = Annotated[float, Unit("", "")]
