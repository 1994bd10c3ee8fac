"""borewright: plans bored work on a manual lathe.

    plan(job, shelf)      the whole plan for one job
    rescue(job, shelf, bore=…)  every way out for a bore that came out wrong
    fit(asked, tables())  one bore on one plain taper mandrel; `asked` is a FitInput
    cut(asked, tables())  one turning cut; `asked` is a CutInput
    read_job, read_shelf, write_job   job and shelf files
    Job, Shelf, Plan, Rescue      what is stated, what is owned, what is answered
    tables, Tables        the reference tables, each number beside its source
    BorewrightError, RefusedInput     what goes wrong on purpose

Public names load on first use, so that importing the package costs nothing.

>>> import borewright as bw
>>> inch = 0.0254
>>> asked = bw.FitInput(0.5005 * inch, ((0.0, inch, 2 * inch, None),), 0.5 * inch, "gray-iron-30",
...                     travel=inch)
>>> round(bw.fit(asked, bw.tables()).touch_position / inch, 3)
2.0
"""

from __future__ import annotations

from importlib import import_module

TYPE_CHECKING = False  # Not from typing, whose import costs more than all the rest here.
if TYPE_CHECKING:
    from borewright.answer.plan import Plan
    from borewright.answer.rescue import Rescue
    from borewright.errors import BorewrightError, RefusedInput
    from borewright.job import Job, Shelf, read_job, read_shelf
    from borewright.job.write import write_job
    from borewright.reference import Tables, tables
    from borewright.service.cut_forces import CutInput, cut
    from borewright.service.fit_records import FitInput
    from borewright.service.fitted import fit
    from borewright.service.planned import plan
    from borewright.service.rescued import rescue

__version__ = "0.1.0"

__all__ = [
    "BorewrightError",
    "CutInput",
    "FitInput",
    "Job",
    "Plan",
    "RefusedInput",
    "Rescue",
    "Shelf",
    "Tables",
    "cut",
    "fit",
    "plan",
    "read_job",
    "read_shelf",
    "rescue",
    "tables",
    "write_job",
]

_HOMES = {
    "BorewrightError": "errors",
    "CutInput": "service.cut_forces",
    "FitInput": "service.fit_records",
    "Job": "job",
    "Plan": "answer.plan",
    "RefusedInput": "errors",
    "Rescue": "answer.rescue",
    "Shelf": "job",
    "Tables": "reference",
    "cut": "service.cut_forces",
    "fit": "service.fitted",
    "plan": "service.planned",
    "read_job": "job",
    "read_shelf": "job",
    "rescue": "service.rescued",
    "tables": "reference",
    "write_job": "job.write",
}


def __getattr__(name: str) -> object:
    """A public name, loaded from its home the first time it is asked for."""
    if name not in _HOMES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    value = getattr(import_module(f"borewright.{_HOMES[name]}"), name)
    globals()[name] = value
    return value


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
