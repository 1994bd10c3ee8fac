"""How much is melted, and how many are poured so that enough are good."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, floor, pi

from borewright.answer.drawn_part import Stretch
from borewright.answer.made_casting import Melt, Riser
from borewright.errors import OutsideModel, RefusedInput
from borewright.job.records import Job, Piece, Work
from borewright.job.web import metal_share
from borewright.making.blank.casting_asked import CastingAsked
from borewright.mechanics.cast_metal import ring_volume
from borewright.mechanics.spares import chance_enough, tries_needed
from borewright.quantities.si import Kilogram
from borewright.reference.library import Tables


def volume_of(stretches: Sequence[Stretch]) -> float:
    """Metal (m³) of rings that are cones outside and inside.

    >>> round(volume_of((Stretch(0.0, 0.02, 0.1, None, 0.06),)) * 1e6, 3)
    100.531
    """
    return sum(
        ring_volume(
            s.end - s.start,
            (s.outside, s.outside if s.outside_end is None else s.outside_end),
            (s.inside, s.inside if s.inside_end is None else s.inside_end),
        )
        for s in stretches
    )


def between_spokes(work: Work, pieces: Sequence[Piece]) -> float:
    """What is no metal between spokes (m³), of the rings as cylinders."""
    return sum(
        (1 - metal_share(now, work))
        * pi
        / 4
        * (cast.outside**2 - (cast.inside or 0.0) ** 2)
        * (cast.end - cast.start)
        for now, cast in zip(work.pieces, pieces, strict=True)
    )


def melt_of(job: Job, volume: float, riser: Riser, asked: CastingAsked, tables: Tables) -> Melt:
    """Weights of one casting and of the batch. RefusedInput for chances that are none.

    A riser that finds no room is not poured.
    """
    metal, fact = tables.foundry_metal(job.work.material), tables.casting_fact
    scrap = metal.scrap.best if asked.scrap is None else asked.scrap
    sure = fact("sure").best if asked.sure is None else asked.sure
    wanted = job.work.quantity
    try:
        tries = tries_needed(wanted, scrap, sure)
    except OutsideModel as outside:
        raise RefusedInput(
            "--scrap, --sure", f"{outside.quantity} {outside.value}", outside.allowed
        ) from None
    density = tables.material_range(job.work.material, "density").best
    casting, fed, sprue = (
        density * volume,
        density * riser.volume * riser.fits,
        fact("sprue_share").best,
    )
    poured = max(casting / metal.yield_share.best, (casting + fed) * (1 + sprue))
    left = 1 - metal.loss.best
    return Melt(
        casting,
        poured,
        poured * tries / left,
        tries,
        wanted,
        metal.yield_share.best,
        metal.loss.best,
        scrap,
        sure,
        chance_enough(wanted, tries, scrap),
        fed,
        sprue,
        heats_of(poured / left, tries, fact("crucible_most").best),
    )


def heats_of(charge: Kilogram, moulds: int, crucible: Kilogram) -> int:
    """Crucibles that a batch takes, each mould filled from one: 0 where one mould takes more.

    >>> heats_of(2.0, 9, 15.0), heats_of(2.0, 7, 15.0), heats_of(16.0, 1, 15.0)
    (2, 1, 0)
    """
    from_one = floor(crucible / charge + 1e-9)
    return ceil(moulds / from_one) if from_one else 0
