"""make blank --by casting: casting and pattern of a job, mould, melt, and the casting's own job."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from borewright.answer.made_casting import MadeCasting
from borewright.job.records import Job
from borewright.making.blank.care import care_of
from borewright.making.blank.casting import made_casting
from borewright.making.blank.casting_asked import CastingAsked
from borewright.making.blank.casting_drawn import drawn_casting
from borewright.making.blank.casting_job import casting_job_text
from borewright.making.blank.casting_papers import casting_papers
from borewright.making.blank.pattern_drawn import drawn_core, drawn_pattern
from borewright.making.blank.stock import lower_face
from borewright.reference.library import Tables
from borewright.service.making.outputs import Made


@dataclass(frozen=True, slots=True)
class Casting:
    """The casting, its papers, and the job it came from."""

    design: MadeCasting
    made: Made
    job: Job

    def job_text(self, where: str) -> str:
        """The job file of the casting, for a plan."""
        return casting_job_text(self.design, self.job, where)


def make_casting(job: Job, asked: CastingAsked, tables: Tables) -> Casting:
    """The casting asked for, with drawings of casting and pattern.

    RefusedInput and OutsideModel where what is asked cannot be.

    >>> from borewright.job import parse_job
    >>> from borewright.reference import tables
    >>> text = 'units="mm"\\nwork={material="al-cast", bore=22, outside=127, length=50}'
    >>> done = make_casting(parse_job(text, "job.toml"), CastingAsked(), tables())
    >>> round(done.made.numbers["pattern_outside_m"] / done.made.numbers["casting_outside_m"] - 1, 6)
    0.015625
    """
    design = made_casting(job, asked, tables)
    lower = lower_face(job, design.wheel, tables)
    papers = casting_papers(design, lower, tables)
    core = drawn_core(design, tables)
    drawn = (drawn_casting(design, tables), drawn_pattern(design, tables))
    parts = (*drawn, *((core,) if core else ()))
    numbers = _numbers(design, lower) | {"with_care": list(care_of(design, tables))}
    return Casting(design, Made(papers, parts, numbers), job)


def by_casting(job: Job) -> bool:
    """Whether a job's blank is cast where nobody says: as its file has it, else where it has hub,
    web and rim of different sizes."""
    if job.work.blank != "unknown":
        return job.work.blank == "casting"
    return len(job.work.pieces) > 1


def _numbers(made: MadeCasting, lower: float) -> dict[str, Any]:
    wheel, mould, melt, shrink = made.wheel, made.mould, made.melt, made.shrink
    limits = wheel.bore.limits
    return {
        "by": "casting",
        "material": made.material,
        "quantity": melt.wanted,
        "finished_outside_m": wheel.outside,
        "finished_length_m": wheel.length,
        "finished_bore_m": None if limits is None else {"low": limits.low, "high": limits.high},
        "bore_limits_taken": wheel.bore_taken,
        "casting_outside_m": made.outside,
        "casting_length_m": made.length,
        "pattern_outside_m": made.pattern(made.outside),
        "pattern_length_m": made.pattern(made.length),
        "shrinkage_m_per_m": shrink.taken,
        "shrinkage_by": shrink.by,
        "shrinkage_least_m_per_m": shrink.low,
        "shrinkage_most_m_per_m": shrink.high,
        "pattern_outside_least_m": made.outside * (1 + shrink.low),
        "pattern_outside_most_m": made.outside * (1 + shrink.high),
        "stock_outside_m": made.stock("outside"),
        "stock_face_a_m": made.stock("face A"),
        "stock_face_b_m": made.stock("face B"),
        "stock_lower_face_would_do_m": lower,
        "stock_bore_m": made.stock("bore") if made.hole else None,
        "face_up": mould.up,
        "parting_from_face_a_m": mould.parting,
        "draft_outside_rad": mould.outside_draft,
        "draft_inside_rad": mould.inside_draft,
        "fillet_m": mould.fillet,
        "round_m": mould.round,
        "stock_stated": made.stock_stated,
        "cored": made.core is not None,
        "hole_as_cast_m": made.hole or None,
        "core_diameter_m": made.core.diameter if made.core else None,
        "core_box_diameter_m": made.pattern(made.core.diameter) if made.core else None,
        "core_print_length_m": made.core.print_length if made.core else None,
        "boss": made.boss.face if made.boss else "none",
        "boss_diameter_m": made.boss.diameter if made.boss else None,
        "boss_length_m": made.boss.length if made.boss else None,
        "heaviest_section": mould.sections[0].name,
        "heaviest_modulus_m": mould.sections[0].modulus,
        "riser_diameter_m": mould.riser.diameter,
        "riser_height_m": mould.riser.height,
        "riser_fits": mould.riser.fits,
        "riser_room_m": mould.riser.room,
        "riser_neck_m": mould.riser.neck or None,
        "riser_neck_longest_m": mould.riser.neck_long or None,
        "riser_kg": melt.riser,
        "volume_m3": made.volume,
        "density_kg_per_m3": made.density,
        "casting_kg": melt.casting,
        "poured_kg": melt.poured,
        "poured_by": "yield" if melt.by_yield else "riser",
        "charge_kg": melt.charge,
        "heats": melt.heats or None,
        "yield": melt.yield_share,
        "melting_loss": melt.loss,
        "scrap": melt.scrap,
        "sure": melt.sure,
        "castings_to_pour": melt.tries,
        "chance_enough": melt.chance,
        "rings": [
            {"from_m": p.start, "to_m": p.end, "outside_m": p.outside, "inside_m": p.inside}
            for p in made.pieces
        ],
    }
