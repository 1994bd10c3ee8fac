"""A wheel with a finished form, as a record and as the text of its file; invented."""

from __future__ import annotations

from dataclasses import replace

from tests.jobs_made import wheel_job

from borewright.job.finished_form import FinishedForm
from borewright.job.records import Job
from borewright.reference.library import Tables

TABLES = Tables()

TEXT = """units = "mm"
[work]
material = "al-6061-t6"
bore = "16mm"
outside = "63mm"
length = "25mm"
[work.finished]
outside = "61mm"
"""


def formed(finished: float | None = 0.061, length: float = 0.025, **form: object) -> Job:
    job = wheel_job(length=length)
    sizes = replace(job.work.finished, outside=finished, form=FinishedForm(**form))
    return replace(job, work=replace(job.work, finished=sizes))
