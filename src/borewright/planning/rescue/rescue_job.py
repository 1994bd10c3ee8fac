"""The whole answer for a bore that came out wrong."""

from __future__ import annotations

from dataclasses import dataclass, replace

from borewright.answer.records import Figure, Verdict
from borewright.answer.rescue import FoundTrouble, Rescue
from borewright.errors import RefusedInput
from borewright.holding.bores.bore_reading import better_gauge, bore_half_band
from borewright.job.records import Bore, BoreLimits, BoreReading, Job
from borewright.planning.choice.arrangement import arrange
from borewright.planning.rescue.as_found import as_found, troubles_of
from borewright.planning.rescue.case import CRACKED, Case
from borewright.planning.rescue.entry import between
from borewright.planning.rescue.ranked import RANKED_BY, best_of, ways_out
from borewright.planning.rescue.rescue_words import (
    assumed,
    echo,
    headline,
    rescue_cautions,
    sources,
)
from borewright.planning.rescue.wanted import Wanted, wanted_of
from borewright.planning.shop.names import check_names, material_taken
from borewright.planning.weighing.figures import figure
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

NEAR = 0.25
"""A bore further than this share from the job's own was typed in another unit (ours)."""


@dataclass(frozen=True, slots=True)
class Reported:
    """What is said of the piece: the size read, readings at depths, words for what is wrong, the
    limits of the drawing where the job file has them not, what read it."""

    size: Metre | None = None
    readings: tuple[BoreReading, ...] = ()
    trouble: tuple[str, ...] = ()
    wanted: BoreLimits | None = None
    measured_with: str = ""


def rescue_job(job: Job, reported: Reported, tables: Tables) -> Rescue:
    """Every way out, ranked. RefusedInput where nothing says how the bore was found."""
    check_names(job, tables)
    job, taken = material_taken(job, tables)
    case = case_of(job, reported, tables)
    ways = ways_out(case)
    best = best_of(ways)
    owned = tuple(dict.fromkeys(n.what for w in ways for n in w.needs if n.taken and w.steps))
    return Rescue(
        title=job.title,
        units=job.units,
        trouble=case.trouble,
        verdict=best.verdict if best else Verdict.NO,
        headline=headline(case, ways),
        echo=echo(case),
        ways_out=ways,
        ranked_by=RANKED_BY,
        cautions=rescue_cautions(case),
        figures=_figures(case),
        assumed=(*taken, *assumed(case, owned)),
        sources=sources(case, ways),
    )


def case_of(job: Job, reported: Reported, tables: Tables) -> Case:
    """The one piece as found beside the piece as wanted."""
    bore = _bore(job, reported)
    best = arrange(replace(job, use=_mandrel_of(job)), tables).best
    wanted = wanted_of(job, reported.wanted, best, tables)
    one = replace(job, work=replace(job.work, bore=bore, quantity=1))
    found_job = _read_by_the_shop(one, tables)
    _check(found_job, job.work.bore.size)
    found = as_found(bore, bore_half_band(found_job, tables))
    trouble = troubles_of(found, wanted, _said(job, reported, tables), Show(job.units), tables)
    _check_size_is_said(trouble, wanted)
    if best is None:
        return Case(found_job, tables, wanted, found, trouble)
    chosen = best.trial.mandrel
    note = best.trial.shop.notes_of.get(chosen.name)
    return Case(found_job, tables, wanted, found, trouble, chosen, note)


def _mandrel_of(job: Job) -> str:
    """The mandrel that the job insists on, by its name; else any."""
    wished = job.use.strip().lower()
    named = any(n.name.lower() == wished for n in job.shelf.mandrels if n.name)
    return job.use if named else "plain-taper"


def _said(job: Job, reported: Reported, tables: Tables) -> tuple[str, ...]:
    """The troubles stated, and a crack where the job file has its own doubt."""
    brittle = tables.material(job.work.material).brittle
    flaws = job.work.flaws
    doubt = flaws == "seen" or (flaws == "suspected" and brittle)
    return (*reported.trouble, *((CRACKED,) if doubt else ()))


def _bore(job: Job, reported: Reported) -> Bore:
    """The bore as it was found: as reported, else as the job file reads it."""
    stated = job.work.bore
    sizes = [r.size for r in reported.readings]
    sizes += [] if reported.size is None else [reported.size]
    if reported.size is not None and reported.readings:
        found = f"it and --bore-at, which read {len(reported.readings)} places"
        raise RefusedInput("--bore", found, "one of them: --bore-at for every place that was read")
    if not sizes:
        if stated.limits is not None and not reported.trouble:
            allowed = "the bore as it was measured, or --trouble and a word for it"
            raise RefusedInput("--bore", "nothing", allowed)
        return (
            stated
            if stated.limits is None
            else Bore(stated.size, stated.uncertainty, made_by=stated.made_by)
        )
    own = None if stated.limits is not None or reported.measured_with else stated.uncertainty
    gauge = reported.measured_with or stated.measured_with
    return Bore(min(sizes), own, gauge, stated.made_by, reported.readings)


def _read_by_the_shop(job: Job, tables: Tables) -> Job:
    """The job with the bore read by the closest gauge of the shelf, where nothing says what read it."""
    bore = job.work.bore
    better = better_gauge(job, tables)
    if bore.measured_with != "unknown" or bore.uncertainty is not None or better is None:
        return job
    return replace(job, work=replace(job.work, bore=replace(bore, measured_with=better[0])))


def _check(job: Job, stated: Metre) -> None:
    """RefusedInput for a bore that is no bore of this part, or a depth that is not in it."""
    show, work = Show(job.units), job.work
    sizes = [work.bore.size, *(r.size for r in work.bore.readings)]
    for size in sizes:
        if abs(size - stated) > NEAR * stated or size >= work.outside:
            allowed = f"a size near the job's own, {show.bore(stated)}"
            raise RefusedInput("--bore", show.bore(size), allowed)
    for reading in work.bore.readings:
        if not 0 <= reading.depth <= work.length + 1e-9:
            allowed = f"a depth from 0 to {show.length(work.length)}"
            raise RefusedInput("--bore-at", show.length(reading.depth), allowed)


def _check_size_is_said(trouble: tuple[FoundTrouble, ...], wanted: Wanted) -> None:
    """RefusedInput where the bore is said to be too big or too small and its reading is neither."""
    for t in trouble:
        if t.id in ("too-big", "too-small") and not t.measured:
            found = f"{t.id}, but the bore as read is not, against {wanted.said}"
            allowed = "--bore with the size measured, or --wanted with the drawing's limits"
            raise RefusedInput("--trouble", found, allowed)


def _figures(case: Case) -> tuple[Figure, ...]:
    found, wanted = case.found, case.wanted
    out: tuple[tuple[str, Metre], ...] = (
        ("out_of_round", found.oval),
        ("taper_of_bore", found.taper),
        ("bell_of_bore", found.bell),
        ("barrel_of_bore", found.barrel),
    )
    return (
        between("bore_as_found", found.least, found.largest, ()),
        between("bore_wanted", wanted.low, wanted.high, wanted.sources),
        *(figure(name, size, "m", "small", "") for name, size in out if size > 0),
    )
