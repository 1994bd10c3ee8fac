"""The hazards of this work and these operations, worst first."""

from __future__ import annotations

from borewright.answer.records import Caution
from borewright.cutting.schedule import turning_is_planned
from borewright.job.records import Job
from borewright.planning.load_words import load_tags
from borewright.planning.shop import Shop
from borewright.reference.library import Tables

LARGE_OUTSIDE = 0.2
LARGE_RATIO = 8.0
"""A disc is called large from 200 mm outside, or from 8 bores across (ours)."""


def cautions(job: Job, shop: Shop, tables: Tables) -> tuple[Caution, ...]:
    """Cautions for pressing, turning between centers and facing this material."""
    tags = ["always", "mandrel", "press", *load_tags(job)]
    if any(w.kind not in ("grind", "gear") for w in job.cuts) or turning_is_planned(job, tables):
        tags += ["turning", "facing"]
    if job.driven_by != "dog":
        tags += ["chuck", job.driven_by]
    if shop.hammers:
        tags.append("hammer")
    if job.work.spokes or job.work.cross_hole:
        tags.append("interrupted")
    if job.work.outside >= LARGE_OUTSIDE or job.work.outside >= LARGE_RATIO * job.work.bore.size:
        tags.append("large-disc")
    called = tables.cautions(*tags, material=job.work.material)
    found = [h for h in called if "turning" not in h.applies_to or "turning" in tags]
    return tuple(Caution(h.id, h.text, h.source) for h in found)
