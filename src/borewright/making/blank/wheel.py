"""The finished wheel that a job asks for: its rings from face A as faced, its bore with limits."""

from __future__ import annotations

from dataclasses import replace
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
    bore, taken = work.bore, work.bore.limits is None
    if bore.limits is None:
        half = tables.casting_fact("mandrel_bore").best
        limits = BoreLimits(tidy(bore.size - half), tidy(bore.size + half))
        bore = replace(bore, size=limits.middle, uncertainty=limits.half_band, limits=limits)
    plain = replace(bore, readings=(), measured_with="unknown", made_by="unknown", thread=None)
    return Wheel(pieces, outside, length, plain, taken, _not_cast(job))


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
