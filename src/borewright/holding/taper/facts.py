"""What the tables say of this work on a hard ground mandrel, as draws that share their streams."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.answer.records import Draws
from borewright.answer.streams import Stream, positive
from borewright.job.records import Job, Mandrel
from borewright.mechanics.notch import bearing_share, share_beside_hole
from borewright.mechanics.rings import Elastic
from borewright.mechanics.roughness import interference_lost
from borewright.reference.library import Tables
from borewright.reference.materials import Material
from borewright.reference.ranges import Range


@dataclass(frozen=True, slots=True, eq=False)
class Facts:
    """Elastic bodies, friction, strength and what takes interference away. All draws shape (n,)."""

    work: Elastic
    mandrel: Elastic
    brittle: bool
    strength: Draws
    edge_factor: Draws
    notch_factor: Draws
    walk_factor: Draws
    bearing_share: float
    friction_on: Draws
    friction_off: Draws
    friction_slip: Draws
    lost_rough: Draws
    lost_warm_per_metre: Draws
    sources: tuple[str, ...]
    notch_source: str


def gather_facts(job: Job, mandrel: Mandrel, tables: Tables) -> Facts:
    """Facts for one job on one mandrel. UnknownName for a material that is not in the tables."""
    material = tables.material(job.work.material)
    brittle = material.brittle
    friction = tables.friction(material.id, job.lubrication)
    strength = tables.material_range(material.id, "tensile" if brittle else "yield")
    rough = _rough_sum(job, tables)
    ranges = (strength, friction.mu_on, friction.slip_ratio, friction.off_ratio, *rough)
    notch = _notch(job, material, tables)
    on = _draws(friction.mu_on, Stream.FRICTION)
    return Facts(
        work=_elastic(tables, material.id, drawn=True),
        mandrel=_elastic(tables, mandrel.material, drawn=False),
        brittle=brittle,
        strength=_draws(strength, Stream.STRENGTH),
        edge_factor=_draws(tables.allowance("edge_factor"), Stream.EDGE),
        notch_factor=_draws(notch, Stream.NOTCH),
        walk_factor=_draws(tables.allowance("rocking_factor"), Stream.WALK),
        bearing_share=_bearing_share(job),
        friction_on=on,
        friction_off=on * _draws(friction.off_ratio, Stream.SLIP_RATIO),
        friction_slip=on * _draws(friction.slip_ratio, Stream.SLIP_RATIO),
        lost_rough=_lost(rough, tables) * _flattened_already(job, tables),
        lost_warm_per_metre=_warm(tables, material.id),
        sources=tuple(sorted({r.source for r in ranges})),
        notch_source=notch.source,
    )


NO_NOTCH = Range(1.0, 1.0, 1.0, "", "ours")
"""Nothing stated that raises the stress at the bore."""


def _notch(job: Job, material: Material, tables: Tables) -> Range:
    """The worse of keyway and cross hole in this metal."""
    stated = {"keyway_notch": job.work.keyway, "cross_hole_notch": job.work.cross_hole}
    names = [_notch_in(material, name) for name, cut in stated.items() if cut]
    return max((tables.allowance(n) for n in names), key=lambda r: r.best, default=NO_NOTCH)


def _notch_in(material: Material, name: str) -> str:
    """The row for this metal: gray iron hardly feels a notch, ductile metal eases it."""
    if not material.brittle:
        return "notch_ductile"
    return f"{name}_gray_iron" if material.family == "gray-iron" else name


def _bearing_share(job: Job) -> float:
    """Share of the bore's surface beside keyway and cross hole."""
    work, bore = job.work, job.work.bore.size
    beside_key = bearing_share(work.keyway.width if work.keyway else 0.0, bore)
    hole = work.cross_hole.diameter if work.cross_hole else 0.0
    return float(beside_key * share_beside_hole(hole, bore, work.length))


def _elastic(tables: Tables, material: str, *, drawn: bool) -> Elastic:
    modulus = tables.material_range(material, "modulus")
    poisson = tables.material_range(material, "poisson").best
    return Elastic(_draws(modulus, Stream.MODULUS) if drawn else modulus.best, poisson)


def _rough_sum(job: Job, tables: Tables) -> tuple[Range, Range]:
    return tables.roughness(job.work.bore.made_by), tables.roughness("ground-mandrel")


def _lost(rough: tuple[Range, Range], tables: Tables) -> Draws:
    work, mandrel = (_draws(r, Stream.ROUGHNESS) for r in rough)
    return np.asarray(interference_lost(work + mandrel, tables.allowance("roughness_loss").best))


def _flattened_already(job: Job, tables: Tables) -> float:
    """1 at the first pressing; the share that is lost again where it was pressed before."""
    return tables.allowance("roughness_again").best if job.pressed_before else 1.0


def _warm(tables: Tables, material: str) -> Draws:
    """Interference lost per metre of bore when the work runs warmer than the mandrel: α ΔT."""
    warmer = _draws(tables.allowance("warming_difference"), Stream.WARMING)
    return tables.material_range(material, "expansion").best * warmer


def _draws(r: Range, stream: Stream) -> Draws:
    return positive(r.low, r.best, r.high, stream)
