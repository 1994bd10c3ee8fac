"""The work that stub, soft mandrel and gauge are made for: a job file, or sizes typed in its place."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, Any, TypeVar

import click

from borewright.cli.commands.making.shared import units_of
from borewright.cli.typed import LENGTH, given
from borewright.errors import RefusedInput
from borewright.quantities.read import length_system, read_length

if TYPE_CHECKING:
    from borewright.job.records import BoreLimits
    from borewright.quantities.read import System
    from borewright.quantities.si import Metre
    from borewright.service.making.bored_work import BoredWork

Function = TypeVar("Function", bound=Callable[..., Any])

_OPTIONS = (
    click.argument("job_file", required=False),
    click.option("--bore", help="Size of the bore, measured; or its limits: 16 H7, A to B."),
    click.option("--bore-low", type=LENGTH, help="Smallest bore, beside --bore-high."),
    click.option("--bore-high", type=LENGTH, help="Largest bore, beside --bore-low."),
    click.option("--length", type=LENGTH, help="Length of the bore."),
    click.option("--outside", type=LENGTH, help="Outside of the work, or of its hub."),
    click.option("--material", help="Material of the work, for its cautions."),
    click.option("--measured-with", help="What the bore was read with."),
)
TYPED = ("bore", "bore_low", "bore_high", "length", "outside", "material", "measured_with")


def bored_options(function: Function) -> Function:
    """The options of the work, on a command."""
    for option in reversed(_OPTIONS):
        function = option(function)
    return function


def bored_work(typed: Mapping[str, Any], length: Metre | None = None) -> BoredWork:
    """The work, from the job file or from what was typed; `length` (m) where none is needed."""
    from borewright.reference.library import tables
    from borewright.service.making.bored_work import BoredWork, WorkTyped, work_typed

    if typed["job_file"] is not None:
        _check_alone(typed)
        from borewright.job import read_job

        job = read_job(typed["job_file"])
        shown = replace(job, units=typed["units"]) if typed["units"] else job
        return BoredWork(shown, from_file=True)
    bare = typed["units"]
    size, limits = _bore(typed, bare)
    stated = WorkTyped(
        bore=size,
        limits=limits,
        length=given(read_length, typed["length"], "--length", bare=bare),
        outside=given(read_length, typed["outside"], "--outside", bare=bare),
        material=typed["material"] or "",
        measured_with=typed["measured_with"] or "",
        units=units_of(typed, _typed_size(typed), typed["bore_low"], typed["bore_high"]),
    )
    return work_typed(stated, tables(), length)


def _typed_size(typed: Mapping[str, Any]) -> str | None:
    from borewright.job.bore_text import size_typed

    return size_typed(typed["bore"]) if typed["bore"] else None


def _bore(typed: Mapping[str, Any], bare: System | None) -> tuple[Metre, BoreLimits | None]:
    from borewright.job.bore_text import bore_size, limits_between

    low, high = typed["bore_low"], typed["bore_high"]
    if typed["bore"] is not None:
        if low is not None or high is not None:
            raise RefusedInput("--bore", "--bore-low or --bore-high beside it", "one or the other")
        return bore_size(typed["bore"], "--bore", bare)
    if low is None or high is None:
        found = "nothing" if low is None and high is None else "one of its two limits"
        allowed = "--bore 16mm, --bore '16 H7', --bore-low with --bore-high, or a job file"
        raise RefusedInput("--bore", found, allowed)
    unit = length_system(high) or length_system(low) or bare
    ends = (read_length(low, "--bore-low", bare=unit), read_length(high, "--bore-high", bare=unit))
    limits = limits_between(*ends, "--bore-low, --bore-high")
    return limits.middle, limits


def _check_alone(typed: Mapping[str, Any]) -> None:
    beside = [name for name in TYPED if typed[name] is not None]
    if beside:
        where = f"--{beside[0].replace('_', '-')}"
        raise RefusedInput(where, "a size beside a job file", "the job file's own, or sizes alone")
