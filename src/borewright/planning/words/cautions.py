"""The hazards of this work and these operations, worst first."""

from __future__ import annotations

from borewright.answer.records import Caution
from borewright.cutting.schedule import turning_is_planned
from borewright.job.records import Job, Mandrel
from borewright.planning.shop.shop import Shop
from borewright.planning.words.load_words import load_tags
from borewright.reference.library import Tables

LARGE_OUTSIDE = 0.2
LARGE_RATIO = 8.0
"""A disc is called large from 200 mm outside, or from 8 bores across (ours)."""


def cautions(
    job: Job,
    shop: Shop,
    tables: Tables,
    mandrel: Mandrel | None,
    drive: tuple[str, ...] = (),
) -> tuple[Caution, ...]:
    """Cautions for pressing on this mandrel, turning between centers and facing this material.

    `drive`: tags of a positive drive. Without a mandrel: those of the work itself, and of the chuck that will hold it.
    """
    return held_cautions(job, (*_of_mandrel(job, shop, mandrel), *drive), tables)


def held_cautions(job: Job, held: tuple[str, ...], tables: Tables) -> tuple[Caution, ...]:
    """Cautions for turning and facing this material, and those tagged for what holds it."""
    tags = ["always", *load_tags(job), *held]
    if "taper" not in held:
        tags.append("no-taper")
    if any(w.kind not in ("grind", "gear") for w in job.cuts) or turning_is_planned(job, tables):
        tags += ["turning", "facing"]
    if job.work.finished.form.crown:
        tags.append("crown")
    if job.work.spokes or job.work.cross_hole:
        tags.append("interrupted")
    if job.work.outside >= LARGE_OUTSIDE or job.work.outside >= LARGE_RATIO * job.work.bore.size:
        tags.append("large-disc")
    called = tables.cautions(*tags, material=job.work.material)
    return tuple(Caution(h.id, h.text, h.source) for h in called)


def _of_mandrel(job: Job, shop: Shop, mandrel: Mandrel | None) -> list[str]:
    """Tags of the mandrel, of what drives it and of what presses the work on it."""
    if mandrel is None:
        return ["chuck"]
    note = shop.notes_of.get(mandrel.name)
    driver = ["chuck", "three-jaw"] if job.driven_by == "three-jaw" else [job.driven_by]
    soft = note is not None and note.hardness == "soft"
    hammer = ["hammer"] if shop.hammers else []
    return ["mandrel", "taper", "press", *driver, *hammer, *([] if soft else ["not-soft"])]
