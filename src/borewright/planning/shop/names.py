"""Names in a job held against the tables, each refusal with its place in the job."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from borewright.answer.records import Assumption
from borewright.errors import RefusedInput, UnknownName
from borewright.job.records import Job
from borewright.reference.library import Tables

NOT_A_BORE = ("ground-mandrel",)
"""Rows of the roughness table that no bore is made by."""


def check_names(job: Job, tables: Tables) -> None:
    """UnknownName, with the place in the job, for a name that the tables do not have."""
    work, shelf = job.work, job.shelf
    _at("work.material", lambda: _work_material(work.material, tables))
    _at("work.bore.measured_with", lambda: tables.gauge(work.bore.measured_with))
    _at("work.bore.made_by", lambda: _made_by(work.bore.made_by, tables))
    _check_holding(job, tables)
    if shelf.press and shelf.press_force is None and not untold(job):
        listed = any(p.called == shelf.press for p in shelf.presses)
        _at(
            "press.kind of the shelf" if listed else "hold.press", lambda: tables.press(shelf.press)
        )


def _check_holding(job: Job, tables: Tables) -> None:
    """Every word for what holds work means something, and nothing is both there and not there."""
    have = {}
    for tool in job.shelf.holding:
        _at("hold.have", lambda t=tool: have.update({tables.holding_tool(t.kind).id: t.kind}))  # type: ignore[misc]
    for name in job.shelf.have_not:
        _at("hold.have_not", lambda n=name: tables.holding_tool(n))  # type: ignore[misc]
        if tables.holding_tool(name).id in have:
            raise RefusedInput("hold.have_not", repr(name), "what is not stated as there as well")


def material_taken(job: Job, tables: Tables) -> tuple[Job, tuple[Assumption, ...]]:
    """The job with the material that a broad word is taken for, and that it was taken.

    >>> from borewright.job.records import Bore, Piece, Work
    >>> from borewright.reference.library import tables
    >>> part = Work("aluminium", (Piece(0, 0.025, 0.063),), Bore(0.015885))
    >>> found, said = material_taken(Job("A wheel", part), tables())
    >>> found.work.material, said[0].taken
    ('al-scrap-cast', 'aluminium taken as cast aluminium of unknown scrap, because the alloy was \
not stated')
    """
    work = job.work
    broad = tables.broad_material(work.material)
    if broad is None:
        return job, ()
    material = tables.material(broad.taken(work.blank))
    typed = " ".join(work.material.split())
    said = f"{typed} taken as {material.name}, because the {broad.unsaid} was not stated"
    taken = replace(job, work=replace(work, material=material.id))
    return taken, (Assumption("material", said, broad.source),)


def untold(job: Job) -> bool:
    """True where the press to be used has a name on the shelf and nothing else: a press of unknown kind."""
    named = [p for p in job.shelf.presses if p.name == job.shelf.press]
    return bool(named) and not named[0].kind and named[0].force is None


def _at(place: str, look_up: Callable[[], object]) -> None:
    try:
        look_up()
    except UnknownName as unknown:
        raise UnknownName(place, unknown.name, unknown.known) from None


def _work_material(name: str, tables: Tables) -> None:
    known = tables.work_materials()
    if tables.material(name).id not in known:
        raise UnknownName("material", name, known)


def _made_by(name: str, tables: Tables) -> None:
    if tables.roughness_id(name) in NOT_A_BORE:
        raise RefusedInput(
            "work.bore.made_by", repr(name), "a way of making a bore, such as reamed or bored"
        )
