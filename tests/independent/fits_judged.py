"""The fits that CalculiX judges: ten fixed, and four drawn from a seed."""

from __future__ import annotations

from random import Random

from tests.independent.calculix_deck import Fit
from tests.independent.calculix_mesh import BORE, Ring

Metal = tuple[float, float]
ALUMINIUM: Metal = (69e9, 0.33)
IRON: Metal = (100e9, 0.26)
STEEL: Metal = (207e9, 0.29)

RING: tuple[Ring, ...] = ((0.0, 2.0, 0.5, 1.5),)
BUSH: tuple[Ring, ...] = ((0.0, 2.0, 0.5, 0.65),)
WEBBED: tuple[Ring, ...] = ((0.0, 2.0, 0.5, 1.0), (0.8, 1.2, 1.0, 2.5), (0.4, 1.6, 2.5, 3.0))
FLANGED: tuple[Ring, ...] = ((0.0, 2.0, 0.5, 0.9), (0.0, 0.4, 0.9, 3.0))
DISC: tuple[Ring, ...] = ((0.0, 0.5, 0.5, 4.0),)

FIXED = {
    "ring, aluminium, whole": Fit(RING, ALUMINIUM, STEEL, 1.0),
    "ring, aluminium, half": Fit(RING, ALUMINIUM, STEEL, 0.5),
    "ring, iron, whole": Fit(RING, IRON, STEEL, 1.0),
    "ring, iron, half": Fit(RING, IRON, STEEL, 0.5),
    "ring, steel, whole": Fit(RING, STEEL, STEEL, 1.0),
    "ring, steel, half": Fit(RING, STEEL, STEEL, 0.5),
    "thin bush": Fit(BUSH, ALUMINIUM, STEEL, 1.0),
    "webbed and rimmed wheel": Fit(WEBBED, IRON, STEEL, 1.0),
    "flange flush, half": Fit(FLANGED, STEEL, STEEL, 0.5),
    "wide thin disc": Fit(DISC, IRON, STEEL, 0.8),
}


def drawn(random: Random) -> Fit:
    """A hub with perhaps a web and rim, a flange at a face, or a step; any metal, any engagement."""
    length, wall = random.uniform(0.6, 3.0), random.uniform(0.15, 1.0)
    hub = BORE + wall
    rings: list[Ring] = [(0.0, length, BORE, hub)]
    kind = random.choice(["plain", "web", "flange", "step"])
    if kind == "web":
        start = random.uniform(0.1, 0.5) * length
        end = start + random.uniform(0.15, 0.4) * length
        inside = hub + random.uniform(0.4, 1.5)
        rings.append((start, end, hub, inside))
        rings.append((start - 0.08 * length, end + 0.08 * length, inside, inside + 0.4))
    elif kind == "flange":
        thick = random.uniform(0.12, 0.35) * length
        face = random.choice([0.0, length - thick])
        rings.append((face, face + thick, hub, hub + random.uniform(0.3, 2.0)))
    elif kind == "step":
        rings.append((0.0, random.uniform(0.3, 0.7) * length, hub, hub + random.uniform(0.1, 0.5)))
    metal = random.choice([ALUMINIUM, IRON, STEEL])
    return Fit(tuple(rings), metal, STEEL, random.uniform(0.4, 1.5))
