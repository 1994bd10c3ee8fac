"""What spans the bore under one bolt: a washer off the shelf, a stout one turned, or a clamp plate.

A washer made for a bolt is about three threads across. What must be wider is turned, as thick as
the bolt's pull asks of mild steel; from PLATE_FROM up it is a plate to be made for the job.
Sources: three threads, ISO 7093-1 (from memory); thickness, `mechanics.clamp_plate`.
"""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Draws, Figure, Input, Need
from borewright.holding.owned import made
from borewright.holding.part import Part
from borewright.mechanics.clamp_plate import thickness_for
from borewright.mechanics.spread import high_end
from borewright.quantities.si import Metre

PLATE_FROM = 0.05
"""Across (m): wider than this it is a plate, not a washer (ours)."""

HOLE = 1.1
"""Hole for the bolt, in threads (ours)."""

POISSON = 0.3
"""Of mild steel (textbook value, from memory)."""

THICK: dict[str, tuple[Metre, ...]] = {
    "inch": tuple(0.0254 * s for s in (0.125, 0.1875, 0.25, 0.375, 0.5, 0.625, 0.75, 1.0, 1.25)),
    "mm": tuple(1e-3 * s for s in (3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 30)),
}
"""Flat stock in common thicknesses (m; common practice, no source)."""


@dataclass(frozen=True, slots=True, eq=False)
class Cap:
    """`across` and `thick` (m); `least` is the thickness that the pull asks for."""

    across: Metre
    thick: Metre
    least: Metre
    figure: Figure

    @property
    def is_plate(self) -> bool:
        """Whether it is made as a plate, not turned as a washer."""
        return self.across > PLATE_FROM

    @property
    def name(self) -> str:
        return "clamp plate" if self.is_plate else "stout washer"


def cap_over(part: Part, thread: Metre, inside: Metre, outside: Metre, pull: Draws) -> Cap | None:
    """What presses on a ring from `inside` to `outside` (m, diameters) under a pull (N, draws).

    None where no common thickness stands it.
    """
    hole, ring = HOLE * thread / 2, (inside + outside) / 4
    stress, hard = part.tables.holding_fact("clamp_plate_stress"), high_end(pull)
    least = float(thickness_for(stress.best, hard, hole, ring, POISSON))
    thick = min((t for t in THICK[part.job.units] if t >= least), default=None)
    if thick is None:
        return None
    figure = Figure(
        "cap_thickness",
        least,
        "m",
        formula="cap_thickness",
        inputs=(
            Input("pull, poor case", hard, "N"),
            Input("hole, radius", hole, "m"),
            Input("ring, radius", ring, "m"),
            Input("Poisson's ratio", POISSON, ""),
            Input("bending", stress.best, "Pa"),
        ),
        sources=("plate-memory", stress.source),
        kind="depth",
    )
    return Cap(outside, thick, least, figure)


def cap_size(part: Part, cap: Cap) -> str:
    """Its size, as a clause."""
    show = part.show
    return f"{show.length(cap.across)} across and {show.length(cap.thick)} thick"


def cap_needs(part: Part, cap: Cap) -> tuple[Need, ...]:
    """The plate, where it is one: a washer is had with its screw."""
    if not cap.is_plate:
        return ()
    minutes = part.tables.holding_fact("clamp_plate_making").best
    return (made(f"a clamp plate {cap_size(part, cap)}", minutes),)
