"""Small jobs with a bore still to be made, in SI, and the route to it; invented."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from borewright.answer.bore_route import BoreRoute
from borewright.job.bore_text import bore_size
from borewright.job.records import Bore, Job, Machine, MandrelNote, Piece, Shelf, Work
from borewright.planning.bore_route.route import bore_route
from borewright.planning.shop.shop import shop_of
from borewright.reference.library import Tables

TABLES = Tables()
INCH = 0.0254
WINDOW = (0.015862, 0.015894)
"""What an ordinary 5/8 in mandrel takes of work 1 in long."""
MANDREL = "the 5/8 in mandrel"
SPEEDS = (70 / 60, 150 / 60, 300 / 60, 550 / 60)

Route = tuple[Job, tuple[float, float] | None]


def bored_job(bore: Bore, units: Any = "inch", **changes: Any) -> Job:
    """A wheel 1 1/4 by 1 in of mild steel with this bore; `changes` of its shelf or its work."""
    work = Work("steel-1018", (Piece(0.0, 0.0254, 0.0635),), bore, "bar")
    of_work = {
        k: changes.pop(k)
        for k in ("blank", "material", "quantity", "chamfers", "pieces")
        if k in changes
    }
    shelf = Shelf(
        (MandrelNote(0.015875, MANDREL),), True, machine=Machine(speeds=SPEEDS), **changes
    )
    return Job("A wheel", replace(work, **of_work), units, shelf)


def solid(window: tuple[float, float] | None = WINDOW, **changes: Any) -> Route:
    """The bore 5/8 in is wanted and nobody says that there is a hole."""
    return bored_job(Bore(0.015875), **changes), window


def drilled(
    size: float, made: str = "drilled", window: tuple[float, float] | None = WINDOW, **changes: Any
) -> Route:
    """A hole of this size (m) as it was made, by caliper."""
    return bored_job(Bore(size, None, "caliper", made), **changes), window


def by_class(text: str = "15 H7", **changes: Any) -> Route:
    """A bore asked for by its class, in mm; no mandrel takes it."""
    size, limits = bore_size(text, "bore", "mm")
    assert limits is not None
    bore = Bore(size, limits.half_band, "unknown", "unknown", (), limits)
    return bored_job(bore, "mm", **changes), None


def route_of(asked: Route) -> BoreRoute | None:
    """The route of a job whose one mandrel takes this window; None takes the mandrel away."""
    job, window = asked
    if window is None:
        job = replace(job, shelf=replace(job.shelf, mandrels=()))
    tried = () if window is None else ((MANDREL, *window),)
    return bore_route(job, shop_of(job, TABLES), TABLES, tried)


def made(asked: Route) -> BoreRoute:
    """The same where there must be a route."""
    route = route_of(asked)
    assert route is not None
    return route
