"""The finished wheel that a job asks for: its rings from face A as faced, its bore with limits."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Final

from borewright.answer.made_casting import Wheel
from borewright.errors import RefusedInput
from borewright.job.records import BoreLimits, Job, Piece
from borewright.job.web import MEETS
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

FIGURES: Final = 12
"""Decimals of a metre: sums of inch and metric sizes come out as one float, however they went."""


def tidy(size: Metre) -> Metre:
    """A size (m) without what sums of floats leave behind."""
    return round(size, FIGURES) + 0.0


def wheel_of(job: Job, tables: Tables) -> Wheel:
    """The wheel when done. The rings that are the outside now get the finished outside, and each
    face gives half of what comes off the length, as everywhere in a plan.

    RefusedInput where a ring has no metal left, or stands out of the finished outside.

    >>> from borewright.job import parse_job
    >>> from borewright.reference import tables
    >>> text = '''
    ... units = "mm"
    ... [work]
    ... material = "al-cast"
    ... bore = 22
    ... outside = 130
    ... length = 54
    ... finished = {outside = 127, length = 50}
    ... '''
    >>> wheel = wheel_of(parse_job(text, "job.toml"), tables())
    >>> wheel.outside, wheel.pieces[0].end, wheel.bore_taken
    (0.127, 0.05, True)
    """
    work = job.work
    outside = work.finished.outside or work.outside
    length = work.finished.form.length or work.length
    off = (work.length - length) / 2
    pieces = tuple(_ring(p, work.outside, outside, off, length, job) for p in work.pieces)
    _check_cuts(job, pieces)
    bore, taken = work.bore, work.bore.limits is None
    if bore.limits is None:
        half = tables.casting_fact("mandrel_bore").best
        limits = BoreLimits(tidy(bore.size - half), tidy(bore.size + half))
        bore = replace(bore, size=limits.middle, uncertainty=limits.half_band, limits=limits)
    plain = replace(bore, readings=(), measured_with="unknown", made_by="unknown", thread=None)
    return Wheel(pieces, outside, length, plain, taken, _not_cast(job))


def _check_cuts(job: Job, pieces: tuple[Piece, ...]) -> None:
    """RefusedInput for a groove or step that goes right through the metal it is cut from."""
    form, show = job.work.finished.form, Show(job.units)
    cuts = [
        (f"grooves[{n}].bottom", g.start, g.end, g.bottom) for n, g in enumerate(form.grooves, 1)
    ]
    cuts += [
        (f"steps[{n}].outside", s.start, s.end, s.outside) for n, s in enumerate(form.steps, 1)
    ]
    for name, start, end, left in cuts:
        under = _metal_under(pieces, start, end, job.work.bore.size)
        if left <= under + MEETS:
            allowed = f"more than {show.length(under)}, else the cut goes right through its metal"
            raise RefusedInput(f"work.finished.{name}", show.length(left), allowed)


def _metal_under(pieces: tuple[Piece, ...], start: Metre, end: Metre, bore: Metre) -> Metre:
    """Down to which diameter (m) metal goes without a gap from the outside, over this stretch."""
    places = sorted({start, end, *(z for p in pieces for z in (p.start, p.end))})
    inside = [(a + b) / 2 for a, b in pairwise(places) if a >= start - MEETS and b <= end + MEETS]
    return max((_down_to(pieces, z, bore) for z in inside), default=bore)


def _down_to(pieces: tuple[Piece, ...], z: Metre, bore: Metre) -> Metre:
    here = sorted((p for p in pieces if p.start < z < p.end), key=lambda p: -p.outside)
    if not here:
        return bore
    low = here[0].outside
    for ring in here:
        if ring.outside < low - MEETS:
            break
        low = bore if ring.inside is None else min(low, ring.inside)
    return low


def _not_cast(job: Job) -> tuple[str, ...]:
    work, form = job.work, job.work.finished.form
    cut = {
        "keyway": work.keyway,
        "cross hole": work.cross_hole,
        "thread": work.bore.thread,
        "steps": form.steps,
        "grooves": form.grooves,
        "crown": form.crown,
    }
    return tuple(name for name, there in cut.items() if there)


def _ring(piece: Piece, now: Metre, outside: Metre, off: Metre, length: Metre, job: Job) -> Piece:
    """A ring as it is when done."""
    start, end = max(0.0, tidy(piece.start - off)), min(length, tidy(piece.end - off))
    size = outside if piece.outside >= now - MEETS else piece.outside
    inside = job.work.bore.size if piece.inside is None else piece.inside
    if end <= start + MEETS or size <= inside + MEETS or size > outside + MEETS:
        show = Show(job.units)
        found = f"{show.length(outside)} outside, {show.length(length)} long"
        allowed = "sizes that leave metal of every ring, none of them outside it"
        raise RefusedInput("work.finished", found, allowed)
    return Piece(start, end, size, piece.inside)
