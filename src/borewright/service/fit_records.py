"""fit: what it is given, what it took, and what it answers."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.job.records import BoreReading, Mandrel
from borewright.job.stations import Stations
from borewright.quantities.si import Metre, MetrePerMetre, Newton, NewtonMetre, Pascal, Ratio
from borewright.reference.library import Tables

Piece = tuple[Metre, Metre, Metre, Metre | None]


@dataclass(frozen=True, slots=True)
class FitInput:
    """What `fit` is given; None takes the best value of the tables and is listed as assumed.

    Exactly one of `travel`, `position` and `push` says how far it is pressed. `stations` are (x,
    diameter) along the mandrel, x from either end of its ground length: then `taper` and
    `small_end` are left out. `model` is contact, or rings for the pencil check. `bore_readings` have their depth from the leading face.
    `chamfer` is the leg at either edge of the bore, at 45 degrees; `mandrel_bore` the diameter of the
    mandrel's own bore, from end to end, 0 for a solid one.
    """

    bore: Metre
    pieces: tuple[Piece, ...]
    mandrel: Metre
    material: str | None = None
    travel: Metre | None = None
    position: Metre | None = None
    push: Newton | None = None
    taper: MetrePerMetre | None = None
    small_end: Metre | None = None
    ground_length: Metre | None = None
    friction: Ratio | None = None
    roughness: Metre | None = None
    work_modulus: Pascal | None = None
    work_poisson: Ratio | None = None
    mandrel_modulus: Pascal | None = None
    mandrel_poisson: Ratio | None = None
    stations: Stations = ()
    bore_readings: tuple[BoreReading, ...] = ()
    model: str = "contact"
    chamfer: Metre = 0.0
    mandrel_bore: Metre = 0.0


@dataclass(frozen=True, slots=True)
class Taken:
    """A value that was not given, and where the one taken comes from; a name where it is no number."""

    what: str
    taken: float | str
    unit: str
    source: str


def material_taken(name: str | None, tables: Tables) -> tuple[Taken, ...]:
    """What was taken for a word that leaves the material open; nothing for one that does not."""
    broad = tables.broad_material(name) if name is not None else None
    if broad is None:
        return ()
    return (Taken("material", tables.material(broad.taken("unknown")).id, "", broad.source),)


@dataclass(frozen=True, slots=True)
class FitResult:
    """Where it sits and what the fit does. `trouble` is empty where the answer is not no.

    `body` is the mandrel as taken, for the words; JSON leaves both out.
    """

    touch_position: Metre
    seat_position: Metre
    large_end_to_face: Metre
    travel: Metre
    contact_length: Metre
    normal_force: Newton
    mean_pressure: Pascal
    largest_bore_tension: Pascal
    largest_tension: Pascal
    push_on_force: Newton
    push_off_force: Newton
    slip_torque: NewtonMetre
    outside_growth: Metre
    bore_window: tuple[Metre, Metre]
    assumed: tuple[Taken, ...]
    trouble: str = ""
    body: Mandrel | None = None
