"""The job of the casting: what a plan needs to turn it into the finished wheel."""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.made_casting import MadeCasting
from borewright.errors import RefusedInput
from borewright.job.file import parse_job
from borewright.job.interrupted import Chamfers
from borewright.job.records import Job
from borewright.job.write import job_text
from borewright.quantities.show import Show


def casting_job(made: MadeCasting, job: Job) -> Job:
    """The job with the casting as its work: rings as cast, bore cored or solid, finished sizes.

    A keyway, a cross hole, a thread and chamfers of the bore are cut, not cast: they are left out.
    """
    work, wheel = job.work, made.wheel
    bore = replace(wheel.bore, made_by="as-cast" if made.hole else "solid")
    form = replace(work.finished.form, length=wheel.length)
    finished = replace(work.finished, outside=wheel.outside, form=form)
    cast = replace(
        work,
        pieces=made.pieces,
        bore=bore,
        blank="casting",
        finished=finished,
        keyway=None,
        cross_hole=None,
        chamfers=Chamfers(),
    )
    return replace(job, work=cast)


def casting_job_text(made: MadeCasting, job: Job, where: str) -> str:
    """The job file of the casting; RefusedInput where it would not read back as the same job."""
    cast = casting_job(made, job)
    text = "\n".join([*(f"# {line}" for line in _heading(made)), job_text(cast)])
    if parse_job(text, where) != cast:
        raise RefusedInput(where, "a casting that no job file says in full", "a job as read")
    return text


def _heading(made: MadeCasting) -> list[str]:
    """What the rings of the file leave out."""
    show = Show(made.units)
    said = ["The casting, as rings without draft; its finished sizes stand below."]
    if made.hole:
        how = "Cored" if made.core else "Cast open in the sand"
        said.append(f"{how}, {show.length(made.hole)}; the bore below is that to finish to.")
    if made.boss:
        boss = made.boss
        size = f"{show.length(boss.diameter)} thick, {show.length(boss.length)} long"
        said.append(
            f"Not in the rings: a boss at face {boss.face}, {size}. A plan reads the casting as it is once "
            "the boss is cut off;"
        )
        said.append("the first hold by the boss is not in that plan.")
    return said
