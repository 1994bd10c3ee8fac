"""A casting for a job: the finished wheel, stock, mould, core, boss, pattern, melt."""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.drawn_part import Stretch
from borewright.answer.made_casting import Boss, MadeCasting
from borewright.job.records import Job
from borewright.making.blank.boss import boss_of
from borewright.making.blank.casting_asked import CastingAsked
from borewright.making.blank.core import hole_of
from borewright.making.blank.melt import between_spokes, melt_of, volume_of
from borewright.making.blank.mould import mould_of
from borewright.making.blank.rings import Draft, cast_rings, drafted
from borewright.making.blank.shrink import shrink_of
from borewright.making.blank.stock import stocks_of
from borewright.making.blank.wheel import tidy, wheel_of
from borewright.mechanics.cast_metal import draft_adds
from borewright.quantities.si import Metre, Radian
from borewright.reference.library import Tables


def made_casting(job: Job, asked: CastingAsked, tables: Tables) -> MadeCasting:
    """The casting asked for. RefusedInput and UnknownName for what cannot be cast so.

    >>> from borewright.job import parse_job
    >>> from borewright.reference import tables
    >>> text = 'units="mm"\\nwork={material="al-cast", bore=22, outside=127, length=50}'
    >>> made = made_casting(parse_job(text, "job.toml"), CastingAsked(), tables())
    >>> round(made.outside * 1e3, 2), round(made.stock("outside") * 1e3, 2), made.core
    (131.4, 2.2, None)
    """
    wheel = wheel_of(job, tables)
    stocks = stocks_of(job, wheel, asked, tables)
    taken = {s.face: s.taken for s in stocks}
    pieces = cast_rings(wheel, taken["outside"], taken["face A"])
    long = max(p.end for p in pieces)
    hole = hole_of(job, wheel, taken["bore"], long, asked, tables)
    core, size = hole.core, hole.size
    mould = mould_of(job, wheel, pieces, size, asked, tables)
    boss = boss_of(job, pieces, hole, mould, asked, tables)
    draft = Draft(mould.outside_draft, mould.inside_draft, mould.parting)
    rings = drafted(pieces, size, draft, in_sand=hole.sand > 0.0)
    stretches = (*rings, *([_bossed(boss, size, long, mould.outside_draft)] if boss else []))
    if core and boss:
        core = replace(core, between=tidy(long + boss.length))
    volume = volume_of(stretches) - between_spokes(job.work, pieces)
    return MadeCasting(
        job.title,
        job.work.material,
        job.units,
        wheel,
        tuple(s for s in stocks if s.face != "bore" or size),
        asked.stock is not None,
        pieces,
        max(p.outside for p in pieces),
        long,
        tuple(sorted(stretches, key=lambda s: (s.start, s.outside))),
        core,
        hole.sand,
        hole.why,
        boss,
        mould,
        shrink_of(job.work.material, asked, tables),
        volume,
        tables.material_range(job.work.material, "density").best,
        melt_of(job, volume, mould.riser, asked, tables),
        job.work.spokes,
    )


def _bossed(boss: Boss, hole: Metre, long: Metre, angle: Radian) -> Stretch:
    """The boss, smallest at its free end."""
    root = tidy(boss.diameter + 2 * draft_adds(boss.length, angle))
    if boss.face == "A":
        return Stretch(tidy(-boss.length), 0.0, boss.diameter, root, hole, hole)
    return Stretch(long, tidy(long + boss.length), root, boss.diameter, hole, hole)
