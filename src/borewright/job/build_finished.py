"""The finished sizes of a job file as records; refusals where they contradict the blank."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from borewright.errors import RefusedInput
from borewright.job.build_chamfers import read_chamfers
from borewright.job.build_crown import build_crown
from borewright.job.finished_form import FinishedForm, FinishedStep, Groove
from borewright.job.records import Finished, Piece
from borewright.job.typed import Reader, maybe
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

if TYPE_CHECKING:
    from borewright.job.schema import FinishedTable, GrooveTable, StepTable

SLACK = 1e-9
"""Sizes this close (m) are one: what is left of sums."""


def build_finished(
    table: FinishedTable, reader: Reader, pieces: tuple[Piece, ...], bore: Metre
) -> Finished:
    """The sizes wanted; RefusedInput for one that the blank has no metal for."""
    now = max(p.outside for p in pieces)
    outside = maybe(reader.length, table.outside, "work.finished.outside")
    if outside is not None and outside > now + SLACK:
        _refuse(reader, "work.finished.outside", outside, "at most the outside now", now)
    if outside is not None and outside <= bore + SLACK:
        _refuse(reader, "work.finished.outside", outside, "more than the bore", bore)
    return Finished(
        outside,
        maybe(reader.length, table.tolerance, "work.finished.tolerance"),
        maybe(reader.length, table.runout, "work.finished.runout"),
        _form(table, reader, pieces, bore, now if outside is None else outside),
        maybe(reader.spindle, table.service_speed, "work.finished.service_speed"),
    )


def _form(
    table: FinishedTable, reader: Reader, pieces: tuple[Piece, ...], bore: Metre, outside: Metre
) -> FinishedForm:
    whole = max(p.end for p in pieces) - min(p.start for p in pieces)
    length = maybe(reader.length, table.length, "work.finished.length")
    if length is not None and length > whole + SLACK:
        _refuse(reader, "work.finished.length", length, "at most the length now", whole)
    if length is not None and length < whole / 4:
        _refuse(
            reader,
            "work.finished.length",
            length,
            "at least a quarter of the length now",
            whole / 4,
        )
    long = whole if length is None else length
    room = _Room(reader, long, outside, bore)
    steps = tuple(room.step(s, n) for n, s in enumerate(table.steps, 1))
    grooves = tuple(room.groove(g, n) for n, g in enumerate(table.grooves, 1))
    check_places(steps, grooves, reader)
    if (steps or grooves) and table.outside is None:
        allowed = "the finished outside beside its steps and grooves"
        raise RefusedInput(reader.at("work.finished.outside"), "nothing", allowed)
    edges = maybe(reader.length, table.edges, "work.finished.edges")
    if edges is not None and edges > long / 4:
        _refuse(reader, "work.finished.edges", edges, "at most a quarter of the length", long / 4)
    return FinishedForm(
        length,
        maybe(reader.length, table.roughness, "work.finished.roughness"),
        steps,
        grooves,
        edges,
        build_crown(table.crown, reader),
        read_chamfers(table.chamfer, "work.finished.chamfer", reader),
    )


class _Room:
    """Checks that steps and grooves lie in the finished part."""

    def __init__(self, reader: Reader, length: Metre, outside: Metre, bore: Metre) -> None:
        self._reader, self._length, self._outside, self._bore = reader, length, outside, bore

    def step(self, table: StepTable, number: int) -> FinishedStep:
        place = f"work.finished.steps[{number}]"
        start, end = self._along(table, place)
        size = self._reader.length(table.outside, f"{place}.outside")
        return FinishedStep(start, end, self._across(size, f"{place}.outside"))

    def groove(self, table: GrooveTable, number: int) -> Groove:
        place = f"work.finished.grooves[{number}]"
        start, end = self._along(table, place)
        size = self._reader.length(table.bottom, f"{place}.bottom")
        return Groove(start, end, self._across(size, f"{place}.bottom"))

    def _along(self, table: StepTable | GrooveTable, place: str) -> tuple[Metre, Metre]:
        start = self._reader.length(table.from_, f"{place}.from", zero=True)
        end = self._reader.length(table.to, f"{place}.to")
        if end > self._length + SLACK:
            _refuse(self._reader, f"{place}.to", end, "at most the finished length", self._length)
        if end <= start + SLACK:
            _refuse(self._reader, f"{place}.to", end, "more than its `from`", start)
        return start, end

    def _across(self, size: Metre, place: str) -> Metre:
        if size >= self._outside - SLACK:
            _refuse(self._reader, place, size, "less than the finished outside", self._outside)
        if size <= self._bore + SLACK:
            _refuse(self._reader, place, size, "more than the bore", self._bore)
        return size


def check_places(
    steps: tuple[FinishedStep, ...], grooves: tuple[Groove, ...], reader: Reader
) -> None:
    """RefusedInput where steps or grooves overlap, or a groove is no deeper than its step."""
    _apart([(s.start, s.end) for s in steps], "work.finished.steps", reader)
    _apart([(g.start, g.end) for g in grooves], "work.finished.grooves", reader)
    for number, groove in enumerate(grooves, 1):
        for step in steps:
            if step.start < groove.end - SLACK and step.end > groove.start + SLACK:
                _check_groove(groove, step, f"work.finished.grooves[{number}]", reader)


def _apart(spans: list[tuple[Metre, Metre]], where: str, reader: Reader) -> None:
    ordered = sorted((*span, number) for number, span in enumerate(spans, 1))
    for one, other in pairwise(ordered):
        if other[0] < one[1] - SLACK:
            place = f"{where}[{other[2]}].from"
            _refuse(reader, place, other[0], "at least the end of the one before it", one[1])


def _check_groove(groove: Groove, step: FinishedStep, where: str, reader: Reader) -> None:
    """A groove that touches a step lies in it whole, and deeper."""
    if groove.start < step.start - SLACK or groove.end > step.end + SLACK:
        edge = step.start if groove.start < step.start - SLACK else step.end
        _refuse(
            reader,
            f"{where}.from",
            groove.start,
            "a groove that does not cross the end of its step",
            edge,
        )
    if groove.bottom >= step.outside - SLACK:
        _refuse(
            reader,
            f"{where}.bottom",
            groove.bottom,
            "less than the outside of its step",
            step.outside,
        )


def _refuse(reader: Reader, place: str, size: Metre, allowed: str, limit: Metre) -> None:
    show = Show(reader.bare or "mm")
    raise RefusedInput(reader.at(place), show.length(size), f"{allowed}, {show.length(limit)}")
