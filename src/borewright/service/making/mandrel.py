"""make mandrel: a mandrel of a size, for a bore or for a job -> drawing, route, acceptance, strip."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any, Literal

from borewright.answer.made_mandrel import MadeMandrel
from borewright.holding.bores.bore_reading import bore_half_band
from borewright.job.records import Job, MandrelNote, Shelf
from borewright.job.write_shelf import checked_shelf_text
from borewright.making.mandrel.accepted import stations_of
from borewright.making.mandrel.asked import MandrelAsked
from borewright.making.mandrel.design import made_mandrel
from borewright.making.mandrel.drawn import drawn_mandrel
from borewright.making.mandrel.papers import mandrel_papers
from borewright.mechanics.mandrel_zone import Band
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.service.making.outputs import Made
from borewright.service.making.strip import strip_scene


@dataclass(frozen=True, slots=True)
class Mandrel:
    """The mandrel to be made, with its papers."""

    design: MadeMandrel
    made: Made


def make_mandrel(
    asked: MandrelAsked, tables: Tables, paper: str = "a4", job: Job | None = None
) -> Mandrel:
    """The mandrel asked for. `paper`: that of the strip. With a job: to its bore.

    RefusedInput and OutsideModel where what is asked cannot be.

    >>> from borewright.reference import tables
    >>> made = make_mandrel(MandrelAsked(nominal=0.015875, units="inch"), tables())
    >>> round(made.made.numbers["tailstock_set_over_m"] / 0.0254, 5)
    0.00125
    """
    first = () if job is None else (_for_job(job, asked),)
    design = made_mandrel(asked, tables)
    papers = mandrel_papers(design, tables, first)
    pages = (strip_scene(note_of(design), tables, design.units, paper),) if design.fits else ()
    parts = (drawn_mandrel(design, tables),) if design.fits else ()
    return Mandrel(design, Made(papers, parts, _numbers(design), pages, design.fits))


def asked_of_job(job: Job, asked: MandrelAsked, tables: Tables) -> MandrelAsked:
    """What a job asks: its bore with its band, its length, and the room between the centers."""
    return replace(
        asked,
        bores=bores_of(job, tables) if asked.nominal is None else None,
        unsure=None if job.work.bore.limits else bore_half_band(job, tables),
        length=asked.length or job.work.length,
        longest=asked.longest or job.shelf.machine.between_centers,
    )


def bores_of(job: Job, tables: Tables) -> Band:
    """The bores that a job's work may have: its limits, or its size with what the gauge knows."""
    bore = job.work.bore
    if bore.limits is not None:
        return bore.limits.low, bore.limits.high
    half = bore_half_band(job, tables)
    return bore.size - half, bore.size + half


def _for_job(job: Job, asked: MandrelAsked) -> str:
    show = Show(asked.units)
    bores = "" if asked.bores is None else f", bore {show.band(*asked.bores, 'bore')}"
    return f"For {job.title or 'the job'}: {show.length(job.work.length)} long{bores}."


def note_of(design: MadeMandrel) -> MandrelNote:
    """The mandrel as a shelf holds it, with what is wanted in place of what was measured."""
    form = design.form
    unit = "in" if design.units == "inch" else "mm"
    return MandrelNote(
        nominal=form.nominal,
        name=f"{design.stamp} {unit}, to be made",
        small_end=form.small_end,
        large_end=form.large_end,
        ground_length=form.ground_length,
        overall_length=form.overall_length,
        marks=f"{design.stamp} and L at the large end",
        hardness="hard" if design.stock.steel.hard else "soft",
        flats=form.flats,
        condition="to be made: sizes are those of the drawing",
    )


def shelf_with(design: MadeMandrel, shelf: Shelf, where: str) -> str:
    """The text of a shelf file with the mandrel on it, so that a plan can try it before it is made."""
    grown = replace(shelf, mandrels=(*shelf.mandrels, note_of(design)), stated=True)
    return checked_shelf_text(grown, where, design.units)


def _numbers(design: MadeMandrel) -> dict[str, Any]:
    form, stock, s = design.form, design.stock, design.settings
    zone, center = form.zone, form.center
    return {
        "fits": design.fits,
        "why_not": design.why,
        "stamp": design.stamp,
        "steel": stock.steel.id,
        "grinder": design.grinder,
        "nominal_m": form.nominal,
        "small_end_m": form.small_end,
        "large_end_m": form.large_end,
        "taper_m_per_m": form.taper,
        "ground_length_m": form.ground_length,
        "overall_length_m": form.overall_length,
        "end_diameter_m": form.end_diameter,
        "end_length_m": form.end_length,
        "plane_a_to_small_end_m": zone.at_large,
        "plane_b_to_small_end_m": zone.at_small,
        "a_smallest_m": zone.near_large[0],
        "a_largest_m": zone.near_large[1],
        "b_smallest_m": zone.near_small[0],
        "b_largest_m": zone.near_small[1],
        "planes_differ_m": s.planes_differ,
        "bores_wanted_m": _band(design.wanted),
        "bores_taken_m": _band(design.takes),
        "bores_taken_in_the_middle_m": _band(design.takes_middle),
        "bore_length_m": design.held.length,
        "travel_m": design.held.travel,
        "center": center.id if center else None,
        "center_depth_m": form.center_depth,
        "flat_depth_m": form.flat_depth,
        "flat_length_m": form.flat_length,
        "bar": stock.bar.size,
        "bar_diameter_m": stock.bar.diameter,
        "bar_length_m": stock.bar_length,
        "grinding_stock_old_m": stock.old,
        "grinding_stock_by_size_m": stock.scaled,
        "stock_taken_m": stock.taken,
        "roughed_m": stock.rough,
        "bend_most_m": stock.bend_most,
        "blank_kg": stock.mass,
        "with_care": list(design.care),
        "table_angle_rad": s.table_angle,
        "table_base_m": s.base,
        "table_reading_m": s.rise,
        "tailstock_set_over_m": s.set_over,
        "between_centers_m": s.between,
        "runout_most_m": s.runout,
        "stations": [
            {"name": name, "from_large_end_face_m": face, "smallest_m": low, "largest_m": high}
            for name, _, face, low, high in stations_of(design)
        ],
    }


def _band(band: Band | None) -> dict[Literal["low", "high"], float] | None:
    return None if band is None else {"low": band[0], "high": band[1]}
