"""What interrupts the metal of a part, as frozen records: keyway, cross hole … SI units."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.quantities.si import Metre


@dataclass(frozen=True, slots=True)
class Keyway:
    """A keyway along the whole bore; `depth` counts from the surface of the bore."""

    width: Metre
    depth: Metre


@dataclass(frozen=True, slots=True)
class CrossHole:
    """A radial hole from the bore out through the hub; `at`: face A to its middle, if said."""

    diameter: Metre
    at: Metre | None = None


@dataclass(frozen=True, slots=True)
class Spokes:
    """Spokes between hub and rim: each so wide (round the wheel) and so thick (along it)."""

    number: int
    width: Metre
    thickness: Metre


@dataclass(frozen=True, slots=True)
class Chamfers:
    """Legs, at 45 degrees, of the chamfers at the bore's edges towards face A and face B."""

    a: Metre = 0.0
    b: Metre = 0.0

    @property
    def legs(self) -> tuple[Metre, Metre]:
        """Both, in the order of z."""
        return self.a, self.b
